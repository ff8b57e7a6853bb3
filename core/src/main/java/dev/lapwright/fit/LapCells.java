package dev.lapwright.fit;

import java.util.Arrays;

/**
 * Cell means of one logged lap: the lap divided into cells of even length in its own distance, each with the mean of what was
 * logged in it. Cells lie along the track by
 * <pre>place = x + offset + stretch · (x / length − ½),  x = scale · (distance − first distance)</pre>
 * with the scale that makes the log as long as the track, and an offset and a stretch (both m) that the fit finds: the means
 * never change, only where the cells lie.
 */
final class LapCells {
    /** A stretch without samples this many times the usual spacing, and this long (m), is a gap. */
    private static final double GAP_TIMES = 4;

    private static final double LEAST_GAP = 25;

    final DrivenLap lap;
    /** The run it was driven in, counted from 0. */
    final int run;

    final int count;
    final double trackLength;
    final double scale;
    final double first;
    /** Mean logged speed of each cell, m/s. */
    final double[] speed;
    /** Whether the cell has samples near enough. */
    final boolean[] sampled;

    final LoggedChannel speedCurve;

    LapCells(DrivenLap lap, int run, int count, double trackLength) {
        this.lap = lap;
        this.run = run;
        this.count = count;
        this.trackLength = trackLength;
        double[] distance = lap.distance();
        first = distance[0];
        scale = trackLength / lap.length();
        speedCurve = new LoggedChannel(distance, lap.speed());
        speed = means(speedCurve);
        sampled = new boolean[count];
        Arrays.fill(sampled, true);
        double gap = Math.max(GAP_TIMES * spacing(lap, 0.5), LEAST_GAP);
        double cell = lap.length() / count;
        for (int i = 1; i < distance.length; i++) {
            if (distance[i] - distance[i - 1] > gap) {
                int from = (int) Math.floor((distance[i - 1] - first) / cell);
                int to = (int) Math.floor((distance[i] - first) / cell);
                Arrays.fill(sampled, Math.max(0, from), Math.min(count, to + 1), false);
            }
        }
    }

    /** The distance between samples that this share of all does not exceed, m. */
    static double spacing(DrivenLap lap, double share) {
        double[] distance = lap.distance();
        double[] steps = new double[distance.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = distance[i + 1] - distance[i];
        }
        Arrays.sort(steps);
        return steps[(int) Math.min(steps.length - 1, Math.floor(share * steps.length))];
    }

    private double[] means(LoggedChannel curve) {
        double[] means = new double[count];
        double cell = lap.length() / count;
        for (int c = 0; c < count; c++) {
            means[c] = curve.mean(first + c * cell, first + (c + 1) * cell);
        }
        return means;
    }

    /** Means of another channel; empty if it was not logged. */
    double[] means(double[] channel) {
        return channel.length == 0 ? channel : means(new LoggedChannel(lap.distance(), channel));
    }

    /** Way by the lap's speeds over its clock, m; NaN if it has none. */
    double wayBySpeed() {
        double[] time = lap.time();
        if (time.length == 0) {
            return Double.NaN;
        }
        double[] way = DrivenLap.distanceFrom(time, lap.speed());
        return way[way.length - 1];
    }

    /** Place on the track of the edge before a cell, m. */
    double edge(int c, double offset, double stretch) {
        double x = trackLength * c / count;
        return x + offset + stretch * (x / trackLength - 0.5);
    }

    /** Factor on logged distance, m/m. */
    double scaleWith(double stretch) {
        return scale * (1 + stretch / trackLength);
    }

    /** What is added to scaled logged distance, m. */
    double offsetWith(double offset, double stretch) {
        return offset - stretch / 2 - scaleWith(stretch) * first;
    }

    /** Logged distance of a place on the track, m. */
    double loggedDistance(double place, double offset, double stretch) {
        return (place - offsetWith(offset, stretch)) / scaleWith(stretch);
    }

    /** Channel of a log as a function of its own distance, linear between samples, with its integral. */
    static final class LoggedChannel {
        private final double[] d;
        private final double[] y;
        private final double[] integral;

        LoggedChannel(double[] distance, double[] values) {
            d = distance;
            y = values;
            integral = new double[d.length];
            for (int i = 1; i < d.length; i++) {
                integral[i] = integral[i - 1] + 0.5 * (d[i] - d[i - 1]) * (y[i - 1] + y[i]);
            }
        }

        /** Mean from one distance to another further on; beyond the samples the first or last value holds. */
        double mean(double from, double to) {
            return (integralTo(to) - integralTo(from)) / (to - from);
        }

        private double integralTo(double x) {
            if (x <= d[0]) {
                return (x - d[0]) * y[0];
            }
            int last = d.length - 1;
            if (x >= d[last]) {
                return integral[last] + (x - d[last]) * y[last];
            }
            int i = Arrays.binarySearch(d, x);
            i = Math.min(i >= 0 ? i : -i - 2, last - 1);
            double ds = d[i + 1] - d[i];
            double w = ds > 0 ? (x - d[i]) / ds : 0;
            double here = y[i] + w * (y[i + 1] - y[i]);
            return integral[i] + 0.5 * (x - d[i]) * (y[i] + here);
        }
    }
}
