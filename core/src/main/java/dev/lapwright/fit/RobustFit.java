package dev.lapwright.fit;

import dev.lapwright.lap.Lap;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Robust fit of chosen parameters to laps by iteratively reweighted least squares: weights and least squares in turn until both
 * settle ({@link RobustWeights}).
 */
final class RobustFit {
    private static final int HUBER_PASSES = 5;
    private static final int BISQUARE_PASSES = 10;
    /** Weights are settled when no u moves by more than this. */
    private static final double SETTLED = 5e-3;
    /** And no offset or stretch, m. */
    private static final double SETTLED_METRES = 0.05;

    private final FitModel model;
    private final List<LapCells> laps;
    private final double mostOffset;
    private final boolean[][] in;
    private final double[][] weights;
    private final FitProblem problem;
    private final int parameters;
    private double[] point;
    private double scale;

    RobustFit(FitModel model, List<LapCells> laps, double mostOffset, double[] start) {
        this.model = model;
        this.laps = laps;
        this.mostOffset = mostOffset;
        parameters = model.scales().size();
        in = new boolean[laps.size()][];
        weights = new double[laps.size()][laps.get(0).count];
        problem = new FitProblem(model, laps, weights, mostOffset);
        point = start.clone();
        for (int k = 0; k < in.length; k++) {
            in[k] = laps.get(k).sampled.clone();
        }
    }

    /** Runs to the end. */
    void run() {
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
        for (int pass = 0; pass < BISQUARE_PASSES; pass++) {
            if (!moved(problem.residuals(point), true)) {
                break;
            }
        }
        weigh(problem.residuals(point), true);
    }

    private void leaveLiftsOut() {
        if (laps.stream().allMatch(cells -> cells.lap.throttle().length == 0)) {
            return;
        }
        Lap lap = model.lap(parameters());
        for (int k = 0; k < in.length; k++) {
            boolean[] lifted = lifted(k, lap);
            for (int c = 0; c < in[k].length; c++) {
                in[k][c] = laps.get(k).sampled[c] && !lifted[c];
            }
        }
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
        double[] step = new double[point.length];
        for (int j = 0; j < point.length; j++) {
            step[j] = point[j] - before[j];
        }
        return !problem.isSettled(step, SETTLED, SETTLED_METRES);
    }

    /** Covariance of the parameters at the end of the fit. */
    SandwichCovariance covariance() {
        double[][][] clean = SandwichCovariance.cleaned(problem.jacobian(point), in, parameters);
        return SandwichCovariance.of(clean, problem.residuals(point), in, scale, model.corners(laps.get(0).count));
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

    double[] parameters() {
        return Arrays.copyOf(point, parameters);
    }

    double offset(int lap) {
        return point[parameters + 2 * lap];
    }

    double stretch(int lap) {
        return point[parameters + 2 * lap + 1];
    }

    /** Weights of a lap's cells, 0 to 1; not a copy. */
    double[] weights(int lap) {
        return weights[lap];
    }

    /** Logged less modelled speed of each lap's cells, m/s. */
    double[][] residuals() {
        return problem.residuals(point);
    }

    /** The same for another car's speeds, the laps lying where this fit laid them. */
    double[][] residuals(SpeedCurve other) {
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
                SandwichCovariance.products(SandwichCovariance.cleaned(problem.jacobian(point), in, parameters));
        double most = 0;
        for (int j = 0; j < parameters; j++) {
            most = Math.max(most, products.getEntry(j, j));
        }
        return Collinearities.weakest(products, share * share * most);
    }

    RobustFit without(int parameter, List<ParameterScale> left) {
        return new RobustFit(model.fitting(left), laps, mostOffset, startWithout(parameter));
    }
}
