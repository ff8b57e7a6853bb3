package dev.lapwright.study.opinion;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.robust.RobustnessResult.Standing;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Difference of a setup on all the cars that a car may be, by one model of a lap or the other: each is taken to be right for half of them. That weight
 * is ours; nothing measured says otherwise.
 *
 * <p>How far the models are apart is taken from the car as its document has it, the spread over drawn cars from the fast model: a lap by the fuller one is
 * too slow to draw. Differences on drawn cars are taken as normal to either side of their median, from the ends of the interval.
 *
 * @param low end of the interval of 90 %, s
 * @param high other end, s
 * @param gain share of the cars on which the setup is faster, 0 to 1
 */
public record EitherModel(double low, double high, double gain) {
    private static final NormalDistribution NORMAL = new NormalDistribution();
    /** Share of cars below the lower end of an interval of 90 %. */
    private static final double BELOW = 0.05;
    /** Half of that interval over the standard deviation. */
    private static final double WIDE = -NORMAL.inverseCumulativeProbability(BELOW);

    private static final double ACCURACY = 1e-6;
    private static final int MOST_STEPS = 200;

    /**
     * Of a setup.
     *
     * @param drawn how it stands on drawn cars by the fast model
     * @param apart its difference by the fuller model less that by the fast one, s
     * @throws InvalidValueException if either has no number
     */
    public static EitherModel of(Standing drawn, double apart) {
        if (Double.isNaN(drawn.low() + drawn.middle() + drawn.high() + apart)) {
            throw new InvalidValueException("difference", "one of the models has no lap", "ask of a setup that laps");
        }
        DoubleUnaryOperator share = seconds -> 0.5 * (cumulative(drawn, seconds) + cumulative(drawn, seconds - apart));
        double least = drawn.low() + Math.min(0, apart) - ACCURACY;
        double most = drawn.high() + Math.max(0, apart) + ACCURACY;
        return new EitherModel(
                quantile(share, BELOW, least, most), quantile(share, 1 - BELOW, least, most), share.applyAsDouble(0));
    }

    private static double quantile(DoubleUnaryOperator share, double wanted, double least, double most) {
        return new BrentSolver(ACCURACY)
                .solve(MOST_STEPS, seconds -> share.applyAsDouble(seconds) - wanted, least, most);
    }

    private static double cumulative(Standing drawn, double seconds) {
        double away = seconds - drawn.middle();
        double side = away < 0 ? drawn.middle() - drawn.low() : drawn.high() - drawn.middle();
        return NORMAL.cumulativeProbability(WIDE * away / Math.max(side, ACCURACY));
    }
}
