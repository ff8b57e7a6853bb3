package dev.lapwright.fit;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresProblem;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.fitting.leastsquares.ValueAndJacobianFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.optim.ConvergenceChecker;
import org.apache.commons.math3.util.Pair;

/**
 * Weighted least-squares problem of logged less modelled cell means of speed, m/s, for Levenberg and Marquardt's method. Unknowns
 * are one {@linkplain ParameterScale u} for each parameter, then an offset and a stretch (m) for each lap.
 */
final class FitProblem implements ValueAndJacobianFunction {
    private static final int MOST_EVALUATIONS = 60;
    /**
     * The search ends when no u moves by more than this: what is left then is far less, Newton steps shrinking as they
     * do.
     */
    private static final double SETTLED = 5e-3;
    /** And no offset or stretch by more than this, m. */
    private static final double SETTLED_METRES = 0.02;
    /**
     * Sensitivities are kept while no u has moved by more than this since: half a percent of grip changes them by about
     * as much, which moves the best fit by as little of its standard error.
     */
    private static final double KEPT = 0.05;
    /** Residual, m/s, of a car that has no lap: worse than any. */
    private static final double NO_LAP = 1e3;

    private final FitModel model;
    private final List<LapCells> laps;
    private final double[][] weights;
    private final double mostOffset;
    private final int parameters;
    private final int count;
    private double[] cachedAt;
    private SpeedCurve cached;
    private double[] best;
    private double leastCost;
    private double[] sensitivitiesAt;
    private final FitModel.Pair[] sensitivities;

    /**
     * @param weights of each lap's cells, 0 to 1; not copied
     * @param mostOffset how far offsets and stretches may go, m
     */
    FitProblem(FitModel model, List<LapCells> laps, double[][] weights, double mostOffset) {
        this.model = model;
        this.laps = laps;
        this.weights = weights;
        this.mostOffset = mostOffset;
        parameters = model.scales().size();
        count = laps.get(0).count;
        sensitivities = new FitModel.Pair[parameters];
    }

    /** The unknowns of the best fit from a start. */
    double[] solved(double[] start) {
        double[] target = new double[count * laps.size()];
        for (int k = 0; k < laps.size(); k++) {
            for (int c = 0; c < count; c++) {
                target[k * count + c] = Math.sqrt(weights[k][c]) * laps.get(k).speed[c];
            }
        }
        ConvergenceChecker<LeastSquaresProblem.Evaluation> settled = (pass, before, after) -> {
            double[] step = after.getPoint().subtract(before.getPoint()).toArray();
            return isSettled(step, SETTLED, SETTLED_METRES);
        };
        LeastSquaresProblem problem = new LeastSquaresBuilder()
                .start(start)
                .target(target)
                .model(this)
                .lazyEvaluation(true)
                .parameterValidator(this::bounded)
                .checker(settled)
                .maxEvaluations(MOST_EVALUATIONS)
                .maxIterations(MOST_EVALUATIONS)
                .build();
        LeastSquaresOptimizer optimiser = new LevenbergMarquardtOptimizer()
                .withCostRelativeTolerance(1e-9)
                .withParameterRelativeTolerance(1e-7)
                .withOrthoTolerance(1e-10);
        best = start.clone();
        leastCost = Double.POSITIVE_INFINITY;
        try {
            return optimiser.optimize(problem).getPoint().toArray();
        } catch (MathIllegalStateException e) {
            // At a kink of the lap no step may lead down, and the optimiser gives up where it stands.
            return best;
        }
    }

    /** Whether a step is within one bound for each u and one (m) for each offset and stretch. */
    boolean isSettled(double[] step, double inU, double inMetres) {
        for (int j = 0; j < step.length; j++) {
            if (!(Math.abs(step[j]) <= (j < parameters ? inU : inMetres))) {
                return false;
            }
        }
        return true;
    }

    private RealVector bounded(RealVector point) {
        RealVector within = point.copy();
        for (int j = 0; j < within.getDimension(); j++) {
            double value = within.getEntry(j);
            within.setEntry(
                    j,
                    j < parameters
                            ? model.scales().get(j).clamped(value)
                            : Math.max(-mostOffset, Math.min(mostOffset, value)));
        }
        return within;
    }

    /** The parameters' part of the unknowns. */
    double[] parametersOf(double[] point) {
        return Arrays.copyOf(point, parameters);
    }

    private SpeedCurve curve(double[] point) {
        double[] u = parametersOf(point);
        if (!Arrays.equals(u, cachedAt)) {
            cached = model.tried(u).orElse(null);
            cachedAt = u;
        }
        return cached;
    }

    /** Modelled mean speeds of one lap's cells. */
    double[] modelled(SpeedCurve curve, double[] point, int lap) {
        double offset = point[parameters + 2 * lap];
        double stretch = point[parameters + 2 * lap + 1];
        LapCells cells = laps.get(lap);
        double[] means = new double[count];
        double from = cells.edge(0, offset, stretch);
        for (int c = 0; c < count; c++) {
            double to = cells.edge(c + 1, offset, stretch);
            means[c] = curve.mean(from, to);
            from = to;
        }
        return means;
    }

    /** Logged less modelled speed, m/s, of each lap's cells. */
    double[][] residuals(double[] point) {
        return residuals(curve(point), point);
    }

    /** The same for speeds of another car. */
    double[][] residuals(SpeedCurve curve, double[] point) {
        double[][] residuals = new double[laps.size()][];
        for (int k = 0; k < residuals.length; k++) {
            double[] modelled = modelled(curve, point, k);
            residuals[k] = new double[count];
            for (int c = 0; c < count; c++) {
                residuals[k][c] = laps.get(k).speed[c] - modelled[c];
            }
        }
        return residuals;
    }

    /** Change of the modelled means with each unknown, unweighted: rows lap by lap, cell by cell. */
    double[][] jacobian(double[] point) {
        int unknowns = point.length;
        double[][] rows = new double[count * laps.size()][unknowns];
        renewSensitivities(parametersOf(point));
        for (int j = 0; j < parameters; j++) {
            FitModel.Pair pair = sensitivities[j];
            for (int k = 0; k < laps.size(); k++) {
                double[] below = modelled(pair.below(), point, k);
                double[] above = modelled(pair.above(), point, k);
                for (int c = 0; c < count; c++) {
                    rows[k * count + c][j] = (above[c] - below[c]) / pair.apart();
                }
            }
        }
        SpeedCurve curve = curve(point);
        for (int k = 0; k < laps.size(); k++) {
            int at = parameters + 2 * k;
            LapCells cells = laps.get(k);
            double[] mean = modelled(curve, point, k);
            for (int c = 0; c < count; c++) {
                double from = cells.edge(c, point[at], point[at + 1]);
                double to = cells.edge(c + 1, point[at], point[at + 1]);
                double before = curve.at(from);
                double after = curve.at(to);
                double early = (double) c / count - 0.5;
                double late = (c + 1.0) / count - 0.5;
                double[] row = rows[k * count + c];
                row[at] = (after - before) / (to - from);
                row[at + 1] = (after * late - before * early - mean[c] * (late - early)) / (to - from);
            }
        }
        return rows;
    }

    private void renewSensitivities(double[] u) {
        boolean kept = sensitivitiesAt != null;
        for (int j = 0; kept && j < parameters; j++) {
            kept = Math.abs(u[j] - sensitivitiesAt[j]) <= KEPT;
        }
        if (!kept) {
            sensitivitiesAt = u;
            for (int j = 0; j < parameters; j++) {
                sensitivities[j] = model.around(u, j);
            }
        }
    }

    @Override
    public Pair<RealVector, RealMatrix> value(RealVector point) {
        double[] at = point.toArray();
        return new Pair<>(computeValue(at), computeJacobian(at));
    }

    @Override
    public RealVector computeValue(double[] point) {
        double[] values = new double[count * laps.size()];
        SpeedCurve curve = curve(point);
        double cost = 0;
        for (int k = 0; k < laps.size(); k++) {
            double[] modelled = curve == null ? new double[0] : modelled(curve, point, k);
            for (int c = 0; c < count; c++) {
                double value = curve == null ? NO_LAP : modelled[c];
                values[k * count + c] = Math.sqrt(weights[k][c]) * value;
                double miss = laps.get(k).speed[c] - value;
                cost += weights[k][c] * miss * miss;
            }
        }
        if (cost < leastCost) {
            leastCost = cost;
            best = point.clone();
        }
        return new ArrayRealVector(values, false);
    }

    @Override
    public RealMatrix computeJacobian(double[] point) {
        double[][] rows = jacobian(point);
        for (int k = 0; k < laps.size(); k++) {
            for (int c = 0; c < count; c++) {
                double[] row = rows[k * count + c];
                double root = Math.sqrt(weights[k][c]);
                for (int j = 0; j < row.length; j++) {
                    row[j] *= root;
                }
            }
        }
        return new Array2DRowRealMatrix(rows, false);
    }
}
