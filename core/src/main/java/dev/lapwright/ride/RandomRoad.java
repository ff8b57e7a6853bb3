package dev.lapwright.ride;

import dev.lapwright.fault.Check;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * A surface of an ISO 8608 class: the sum of all sine waves that fit its length, each with the amplitude √(2 Gd(n) Δn) that the
 * class asks for and a phase by lot (Shinozuka and Jan, Journal of Sound and Vibration 25, 1972). Wave numbers are those of the
 * standard, 0.011 to 2.83 waves per metre. The same seed gives the same road.
 */
public final class RandomRoad implements RoadProfile {
    private static final int POINTS = 8192;
    private static final double STEP = 0.05;
    private static final double LEAST_WAVE_NUMBER = 0.011;
    private static final double GREATEST_WAVE_NUMBER = 2.83;
    /** Time for the start to be forgotten, s. */
    private static final double RUN_UP = 1;

    private final double[] heights;
    private final double[] slopes;

    private RandomRoad(double[] heights, double[] slopes) {
        this.heights = heights;
        this.slopes = slopes;
    }

    /**
     * @param roadClass how rough
     * @param seed of the phases
     * @param contactLength of the contact patch over which the tyre takes the mean height, m; 0 for the road itself
     */
    public static RandomRoad of(RoadClass roadClass, long seed, double contactLength) {
        Check.inRange("contact length (m)", contactLength, 0, 1);
        SplittableRandom random = new SplittableRandom(seed);
        double base = 1 / (POINTS * STEP);
        Complex[] height = zeros();
        Complex[] slope = zeros();
        for (int k = 1; k < POINTS / 2; k++) {
            double n = k * base;
            double phase = 2 * Math.PI * random.nextDouble();
            if (n < LEAST_WAVE_NUMBER || n > GREATEST_WAVE_NUMBER) {
                continue;
            }
            double amplitude = Math.sqrt(2 * roadClass.density(n) * base) * meanOver(Math.PI * n * contactLength);
            // The real part of the transform of one coefficient is amplitude · cos(2π n x + phase).
            height[k] = new Complex(amplitude * Math.cos(phase), amplitude * Math.sin(phase));
            slope[k] = height[k].multiply(new Complex(0, 2 * Math.PI * n));
        }
        return new RandomRoad(realPart(height), realPart(slope));
    }

    /** What is left of a wave in its mean over a patch: sin(x)/x with x = π n a. */
    private static double meanOver(double x) {
        return x == 0 ? 1 : Math.sin(x) / x;
    }

    private static Complex[] zeros() {
        Complex[] all = new Complex[POINTS];
        Arrays.fill(all, Complex.ZERO);
        return all;
    }

    private static double[] realPart(Complex[] spectrum) {
        Complex[] sum =
                new FastFourierTransformer(DftNormalization.STANDARD).transform(spectrum, TransformType.INVERSE);
        double[] real = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            // The inverse divides by the number of points.
            real[i] = POINTS * sum[i].getReal();
        }
        return real;
    }

    @Override
    public double length() {
        return POINTS * STEP;
    }

    @Override
    public double height(double distance) {
        double place = distance / STEP;
        int i = (int) Math.floor(place);
        double t = place - i;
        int a = Math.floorMod(i, POINTS);
        int b = Math.floorMod(i + 1, POINTS);
        double s = 1 - t;
        return heights[a] * s * s * (1 + 2 * t)
                + heights[b] * t * t * (1 + 2 * s)
                + STEP * s * t * (slopes[a] * s - slopes[b] * t);
    }

    @Override
    public double slope(double distance) {
        double place = distance / STEP;
        int i = (int) Math.floor(place);
        double t = place - i;
        int a = Math.floorMod(i, POINTS);
        int b = Math.floorMod(i + 1, POINTS);
        double s = 1 - t;
        return 6 * s * t * (heights[b] - heights[a]) / STEP + slopes[a] * s * (1 - 3 * t) + slopes[b] * t * (3 * t - 2);
    }

    @Override
    public double[] joints() {
        return new double[0];
    }

    @Override
    public double runUp(double speed) {
        return RUN_UP * speed;
    }
}
