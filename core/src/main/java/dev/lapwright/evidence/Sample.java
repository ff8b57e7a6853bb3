package dev.lapwright.evidence;

import org.apache.commons.math3.stat.StatUtils;

/** What a test of means needs of some lap times: their number, mean (s) and standard deviation (s). */
record Sample(int count, double mean, double deviation) {
    static Sample of(double[] values) {
        return new Sample(values.length, StatUtils.mean(values), Math.sqrt(StatUtils.variance(values)));
    }

    /** The same with its variance multiplied. */
    Sample inflated(double factor) {
        return new Sample(count, mean, deviation * Math.sqrt(factor));
    }

    /** Standard deviation within two samples, taken to scatter alike. */
    static double pooled(Sample a, Sample b) {
        double squares = squares(a) + squares(b);
        return Math.sqrt(squares / (a.count + b.count - 2));
    }

    private static double squares(Sample sample) {
        return sample.count > 1 ? (sample.count - 1) * sample.deviation * sample.deviation : 0;
    }
}
