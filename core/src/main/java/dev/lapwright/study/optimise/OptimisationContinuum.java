package dev.lapwright.study.optimise;

import java.util.Arrays;
import java.util.function.Function;
import org.apache.commons.math3.exception.TooManyEvaluationsException;
import org.apache.commons.math3.optim.InitialGuess;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.SimpleBounds;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.nonlinear.scalar.ObjectiveFunction;
import org.apache.commons.math3.optim.nonlinear.scalar.noderiv.CMAESOptimizer;
import org.apache.commons.math3.random.MersenneTwister;

/**
 * The search between the steps: covariance matrix adaptation of an evolution strategy (Hansen and Ostermeier 2001, Evol.
 * Comput. 9(2)) as Commons Math has it, from one start, with random numbers of its own. It looks only at the order of the
 * scores, so the rule of {@link OptimisationScore} serves as it is.
 */
final class OptimisationContinuum {
    /** First spread of the search, as a share of each range. */
    private static final double SPREAD = 0.25;

    /**
     * When it ends.
     *
     * @param worthGoingOn a gain below this, in the unit of the cost, is not waited for
     * @param patience so many generations without such a gain end it
     * @param generations at most
     */
    record Ending(double worthGoingOn, int patience, int generations) {}

    private final int[] counts;
    private final Function<double[], OptimisationScore> scores;
    private final Ending ending;

    private OptimisationScore bestScore;
    private double[] best;
    private double milestone = Double.POSITIVE_INFINITY;
    private int sinceMilestone;

    /**
     * @param counts numbers of steps, at least 2 each; a place has coordinates from 0 to the count less one
     * @param scores of places
     */
    OptimisationContinuum(int[] counts, Function<double[], OptimisationScore> scores, Ending ending) {
        this.counts = counts.clone();
        this.scores = scores;
        this.ending = ending;
    }

    /** The size of a generation for so many dimensions: what Hansen and Ostermeier advise. */
    static int population(int dimensions) {
        return 4 + (int) (3 * Math.log(dimensions));
    }

    /** The best place found from a start. */
    double[] search(double[] start, long seed) {
        int n = counts.length;
        double[] guess = new double[n];
        for (int i = 0; i < n; i++) {
            guess[i] = start[i] / (counts[i] - 1);
        }
        double[] low = new double[n];
        double[] high = new double[n];
        double[] spread = new double[n];
        Arrays.fill(high, 1);
        Arrays.fill(spread, SPREAD);
        int patience = population(n) * ending.patience();
        CMAESOptimizer optimiser =
                new CMAESOptimizer(ending.generations(), 0, true, 0, 0, new MersenneTwister(seed), false, null);
        optimiser.optimize(
                MaxEval.unlimited(),
                new ObjectiveFunction(share -> value(share, patience)),
                GoalType.MINIMIZE,
                new InitialGuess(guess),
                new SimpleBounds(low, high),
                new CMAESOptimizer.Sigma(spread),
                new CMAESOptimizer.PopulationSize(population(n)));
        return best.clone();
    }

    private double value(double[] share, int patience) {
        double[] place = new double[share.length];
        for (int i = 0; i < place.length; i++) {
            place[i] = Math.max(0, Math.min(1, share[i])) * (counts[i] - 1);
        }
        OptimisationScore score = scores.apply(place);
        if (best == null || score.beats(bestScore)) {
            best = place;
            bestScore = score;
        }
        if (bestScore.ranked() < milestone - ending.worthGoingOn()) {
            milestone = bestScore.ranked();
            sinceMilestone = 0;
        } else if (++sinceMilestone > patience) {
            // The optimiser takes this as its end.
            throw new TooManyEvaluationsException(patience);
        }
        return score.ranked();
    }
}
