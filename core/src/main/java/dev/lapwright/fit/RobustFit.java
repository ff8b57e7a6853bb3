package dev.lapwright.fit;

import dev.lapwright.lap.Lap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;

/**
 * Robust fit of chosen parameters to laps by iteratively reweighted least squares: weights and least squares in turn until both
 * settle ({@link RobustWeights}).
 */
final class RobustFit {
    /** Of the squared scale: residuals of neighbouring cells hang together, so that ten tell as one. */
    private static final double EARLY_WEIGHT = 10;

    private static final int HUBER_PASSES = 5;
    private static final int BISQUARE_PASSES = 10;
    /** Weights are settled when no u moves by more than this. */
    private static final double SETTLED = 2e-3;
    /** And no offset or stretch, m. */
    private static final double SETTLED_METRES = 0.02;

    private final FitModel model;
    private final List<LapCells> laps;
    private final double mostOffset;
    private final boolean[][] in;
    private final double[][] weights;
    private final FitProblem problem;
    private final Priors priors;
    private final Consumer<double[]> told;
    private double[] point;
    /** At the end of the fit, once it was asked for. */
    private SandwichCovariance covariance;

    private double scale;
    private boolean settled;

    /** @param told the fitted parameters as each round ends */
    RobustFit(
            FitModel model,
            List<LapCells> laps,
            Priors priors,
            double mostOffset,
            double[] start,
            Consumer<double[]> told) {
        this.told = told;
        this.model = model;
        this.laps = laps;
        this.mostOffset = mostOffset;
        this.priors = priors;
        in = new boolean[laps.size()][];
        weights = new double[laps.size()][laps.get(0).count];
        problem = new FitProblem(model, laps, weights, priors, mostOffset);
        point = start.clone();
        for (int k = 0; k < in.length; k++) {
            in[k] = laps.get(k).sampled.clone();
        }
    }

    /** Runs to the end. */
    void run() {
        covariance = null;
        priors.weight = EARLY_WEIGHT * square(RobustWeights.scale(problem.residuals(point), in));
        for (int pass = 0; pass < HUBER_PASSES; pass++) {
            if (pass <= 1) {
                leaveLiftsOut();
            }
            double[][] residuals = problem.residuals(point);
            scale = RobustWeights.scale(residuals, in);
            if (!moved(residuals, false)) {
                break;
            }
        }
        leaveLiftsOut();
        double[][] residuals = problem.residuals(point);
        scale = RobustWeights.scale(residuals, in);
        weigh(residuals, true);
        priors.weight = Math.max(covariance(problem.slopes(point)).scoreRatio, square(scale));
        settled = false;
        for (int pass = 0; pass < BISQUARE_PASSES; pass++) {
            if (!moved(problem.residuals(point), true)) {
                settled = true;
                break;
            }
        }
        weigh(problem.residuals(point), true);
    }

    /** The problem of its rounds. */
    FitProblem problem() {
        return problem;
    }

    private static double square(double x) {
        return x * x;
    }

    /** Whether weights and estimates came to rest. */
    boolean settled() {
        return settled;
    }

    /** Typical size of the residuals, 1.4826 times their median, m/s. */
    double scale() {
        return scale;
    }

    private void leaveLiftsOut() {
        if (laps.stream().allMatch(cells -> cells.lap.throttle().length == 0)) {
            return;
        }
        List<Lap> fitted = fittedLaps();
        for (int k = 0; k < in.length; k++) {
            boolean[] lifted = lifted(k, fitted.get(laps.get(k).run));
            for (int c = 0; c < in[k].length; c++) {
                in[k][c] = laps.get(k).sampled[c] && !lifted[c];
            }
        }
    }

    /** Lap of the fitted car in each run. */
    List<Lap> fittedLaps() {
        List<Lap> fitted = new ArrayList<>();
        for (int run = 0; run < model.runs().size(); run++) {
            fitted.add(model.lap(car(), run));
        }
        return fitted;
    }

    boolean[] lifted(int lap, Lap fitted) {
        return DriverLifts.of(laps.get(lap), fitted, offset(lap), stretch(lap));
    }

    private void weigh(double[][] residuals, boolean bisquare) {
        for (int k = 0; k < in.length; k++) {
            for (int c = 0; c < in[k].length; c++) {
                double r = residuals[k][c];
                double weight = bisquare ? RobustWeights.bisquare(r, scale) : RobustWeights.huber(r, scale);
                weights[k][c] = in[k][c] ? weight : 0;
            }
        }
    }

    /** One round of least squares; whether it moved anything. */
    private boolean moved(double[][] residuals, boolean bisquare) {
        weigh(residuals, bisquare);
        double[] before = point;
        point = problem.solved(before);
        told.accept(parameters());
        double[] step = new double[point.length];
        for (int j = 0; j < point.length; j++) {
            step[j] = point[j] - before[j];
        }
        return !problem.isSettled(step, SETTLED, SETTLED_METRES);
    }

    /** Covariance of the parameters at the end of the fit. */
    SandwichCovariance covariance() {
        if (covariance == null) {
            covariance = covariance(problem.jacobian(point));
        }
        return covariance;
    }

    private SandwichCovariance covariance(double[][] jacobian) {
        double[][][] clean = SandwichCovariance.cleaned(jacobian, in, priors.shared);
        return SandwichCovariance.of(
                clean, problem.residuals(point), in, runs(), scale, model.corners(laps.get(0).count), priors);
    }

    /** Moves the shared unknowns from where the search ended, as far as they may go: what a word adds that the laps do not tell. */
    void shift(RealVector by) {
        for (int j = 0; j < by.getDimension(); j++) {
            double to = point[j] + by.getEntry(j);
            point[j] = j < priors.directions ? model.directions().get(j).clamped(to) : to;
        }
    }

    /** Sum of the products of sensitivities to all shared unknowns, offsets and stretches taken out. */
    RealMatrix information() {
        return SandwichCovariance.products(SandwichCovariance.cleaned(problem.jacobian(point), in, priors.shared));
    }

    private int[] runs() {
        return laps.stream().mapToInt(cells -> cells.run).toArray();
    }

    /** A start for fewer parameters, from where this search ended. */
    double[] startWithout(int parameter) {
        double[] start = new double[point.length - 1];
        for (int j = 0, k = 0; j < point.length; j++) {
            if (j != parameter) {
                start[k++] = point[j];
            }
        }
        return start;
    }

    /** The fitted parameters. */
    double[] parameters() {
        return Arrays.copyOf(point, priors.parameters);
    }

    /** All that moves the car or stands in for its line. */
    double[] car() {
        return Arrays.copyOf(point, priors.directions);
    }

    /** A nuisance in doubts: of those of car and line, then speed scale and lag. */
    double nuisance(int j) {
        return point[priors.parameters + j];
    }

    /** Logged over true speed. */
    double gain() {
        return priors.gain(point[priors.gainAt()]);
    }

    /** Time by which logged speed comes late, s. */
    double lag() {
        return priors.lag(point[priors.lagAt()]);
    }

    /** Speed scale (0) or lag (1), in doubts. */
    double sensor(int which) {
        return point[priors.gainAt() + which];
    }

    LapCells lap(int k) {
        return laps.get(k);
    }

    Priors priors() {
        return priors;
    }

    double offset(int lap) {
        return point[priors.shared + 2 * lap];
    }

    double stretch(int lap) {
        return point[priors.shared + 2 * lap + 1];
    }

    /** Weights of a lap's cells, 0 to 1; not a copy. */
    double[] weights(int lap) {
        return weights[lap];
    }

    /** Whether cells of a lap count at all; not a copy. */
    boolean[] counts(int lap) {
        return in[lap];
    }

    /** Logged less modelled speed of each lap's cells, m/s. */
    double[][] residuals() {
        return problem.residuals(point);
    }

    /** The same for another car's speeds by run, the laps lying where this fit laid them. */
    double[][] residuals(List<SpeedCurve> other) {
        return problem.residuals(other, point);
    }

    FitModel model() {
        return model;
    }

    /**
     * The direction whose effect on speed is below a share of the greatest, if there is one, from where the search
     * stands.
     */
    Optional<Collinearities.WeakDirection> blind(double share) {
        RealMatrix products =
                SandwichCovariance.products(SandwichCovariance.cleaned(problem.slopes(point), in, priors.shared));
        double most = 0;
        int parameters = priors.parameters;
        products = products.getSubMatrix(0, parameters - 1, 0, parameters - 1);
        for (int j = 0; j < parameters; j++) {
            most = Math.max(most, products.getEntry(j, j));
        }
        return Collinearities.weakest(products, share * share * most);
    }

    /** The same search with a parameter held, the others going on from where they are. */
    RobustFit without(int parameter) {
        List<Direction> left = new ArrayList<>(model.directions());
        left.remove(parameter);
        Priors fewer = new Priors(priors.doubts, priors.parameters - 1, left);
        return new RobustFit(model.fitting(left), laps, fewer, mostOffset, startWithout(parameter), told);
    }
}
