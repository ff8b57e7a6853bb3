package dev.lapwright.fit;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
 * are one {@linkplain Direction u} for each parameter and nuisance, speed scale and sensor lag in doubts, then an offset and a
 * stretch (m) for each lap. Each {@linkplain Priors prior} is one more residual.
 */
final class FitProblem implements ValueAndJacobianFunction {
    private static final int MOST_EVALUATIONS = 60;
    /**
     * The search ends when no u moves by more than this: what is left then is far less, Newton steps shrinking as they
     * do.
     */
    private static final double SETTLED = 2e-3;
    /** And no offset or stretch by more than this, m. */
    private static final double SETTLED_METRES = 0.01;
    /** Nor the sum of squares by more than this, relative: what some hundredths of a standard error change it by. */
    private static final double SETTLED_COST = 1e-5;

    /** Speed scale and lag are searched within so many doubts. */
    private static final double MOST_DOUBTS = 10;
    /** (m/s)/m; over the widest offset some 1e-4 m/s, which no log knows. */
    private static final double FLAT = 1e-7;
    /** Residual, m/s, of a car that has no lap: worse than any. */
    private static final double NO_LAP = 1e3;

    private final FitModel model;
    private final List<LapCells> laps;
    private final double[][] weights;
    private final double mostOffset;
    private final Priors priors;
    private final int directions;
    private final int shared;
    private final int count;
    private double[][] tried;
    private double[] cachedAt;
    private List<SpeedCurve> cached;
    private double[] best;
    private double leastCost;
    private double[] sensitivitiesAt;
    /** By run and direction. */
    private final FitModel.Pair[][] sensitivities;
    /** Whether it is known where sensitivities were made, as of a round that was recalled, but not what they are. */
    private boolean behind;

    /**
     * @param weights of each lap's cells, 0 to 1; not copied
     * @param mostOffset how far offsets and stretches may go, m
     */
    FitProblem(FitModel model, List<LapCells> laps, double[][] weights, Priors priors, double mostOffset) {
        this.model = model;
        this.laps = laps;
        this.weights = weights;
        this.mostOffset = mostOffset;
        this.priors = priors;
        directions = priors.directions;
        shared = priors.shared;
        count = laps.get(0).count;
        sensitivities = new FitModel.Pair[model.runs().size()][];
    }

    /** The unknowns of the best fit from a start; of a round that was done before, what it came to. */
    double[] solved(double[] start) {
        priors.hearClocks(laps, start);
        int unknowns = start.length;
        Optional<double[]> before = model.rounds().next(unknowns + directions);
        if (before.isPresent()) {
            sensitivitiesAt = Arrays.copyOfRange(before.get(), unknowns, unknowns + directions);
            behind = true;
            return Arrays.copyOf(before.get(), unknowns);
        }
        double[] solved = searched(start);
        if (sensitivitiesAt != null) {
            double[] kept = Arrays.copyOf(solved, unknowns + directions);
            System.arraycopy(sensitivitiesAt, 0, kept, unknowns, directions);
            model.rounds().keep(kept);
        }
        return solved;
    }

    private double[] searched(double[] start) {
        double[] target = new double[count * laps.size() + shared];
        for (int j = 0; j < shared; j++) {
            target[count * laps.size() + j] = priors.root(j) * priors.mean[j];
        }
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
                .withCostRelativeTolerance(SETTLED_COST)
                .withParameterRelativeTolerance(1e-7)
                .withOrthoTolerance(1e-10);
        best = start.clone();
        leastCost = Double.POSITIVE_INFINITY;
        try {
            return optimiser.optimize(problem).getPoint().toArray();
        } catch (SettledException e) {
            return best;
        } catch (MathIllegalStateException e) {
            // At a kink of the lap no step may lead down, and the optimiser gives up where it stands.
            return best;
        }
    }

    /** The end of a search whose next step is none. */
    private static final class SettledException extends RuntimeException {
        private static final long serialVersionUID = 1L;

        SettledException() {
            super(null, null, false, false);
        }
    }

    /** Number of unknowns, in as many parts of which a step of least squares can be {@linkplain #tryColumn tried}. */
    int unknowns() {
        return shared + 2 * laps.size();
    }

    /**
     * As much work as a step of least squares does for the mean of its columns, on no numbers: the square of each that is left, then what reflecting
     * them (Householder) takes. To see how long it takes.
     */
    void tryColumn() {
        if (tried == null) {
            tried = new double[count * laps.size()][unknowns()];
        }
        int middle = unknowns() / 2;
        for (int j = middle; j < unknowns(); j++) {
            double square = 0;
            for (double[] row : tried) {
                square += row[j] * row[j];
            }
            double product = square;
            for (double[] row : tried) {
                product += row[j] * row[middle];
            }
            for (double[] row : tried) {
                row[j] -= product * row[middle];
            }
        }
    }

    /** No more will be tried. */
    void endTrial() {
        tried = null;
    }

    /** Whether a step is within one bound for each u and one (m) for each offset and stretch. */
    boolean isSettled(double[] step, double inU, double inMetres) {
        for (int j = 0; j < step.length; j++) {
            if (!(Math.abs(step[j]) <= (j < shared ? inU : inMetres))) {
                return false;
            }
        }
        return true;
    }

    private RealVector bounded(RealVector point) {
        RealVector within = point.copy();
        for (int j = 0; j < within.getDimension(); j++) {
            double value = within.getEntry(j);
            double most = j < shared ? MOST_DOUBTS : mostOffset;
            within.setEntry(
                    j,
                    j < directions ? model.directions().get(j).clamped(value) : Math.max(-most, Math.min(most, value)));
        }
        return within;
    }

    /** The part of the unknowns that moves the car. */
    double[] carOf(double[] point) {
        return Arrays.copyOf(point, directions);
    }

    /** Speeds in each run; null where there is no lap. */
    private List<SpeedCurve> curves(double[] point) {
        double[] u = carOf(point);
        if (!Arrays.equals(u, cachedAt)) {
            cached = model.tried(u).orElse(null);
            cachedAt = u;
        }
        return cached;
    }

    /** Modelled mean speeds of one lap's cells, as its sensor reads them. */
    double[] modelled(SpeedCurve curve, double[] point, int lap) {
        double offset = point[shared + 2 * lap];
        double stretch = point[shared + 2 * lap + 1];
        double gain = priors.gain(point[priors.gainAt()]);
        double lag = priors.lag(point[priors.lagAt()]);
        LapCells cells = laps.get(lap);
        double[] means = new double[count];
        double from = late(curve, lag, cells.edge(0, offset, stretch));
        double before = curve.integralTo(from);
        for (int c = 0; c < count; c++) {
            double to = late(curve, lag, cells.edge(c + 1, offset, stretch));
            double after = curve.integralTo(to);
            means[c] = gain * (after - before) / (to - from);
            from = to;
            before = after;
        }
        return means;
    }

    /** Where the car had the speed that a sensor with a lag (s) reads at a place (m). */
    private static double late(SpeedCurve curve, double lag, double place) {
        return lag == 0 ? place : place - lag * curve.at(place);
    }

    /** Logged less modelled speed, m/s, of each lap's cells. */
    double[][] residuals(double[] point) {
        return residuals(curves(point), point);
    }

    /** The same for speeds of another car, by run. */
    double[][] residuals(List<SpeedCurve> curves, double[] point) {
        double[][] residuals = new double[laps.size()][];
        for (int k = 0; k < residuals.length; k++) {
            double[] modelled = modelled(curves.get(laps.get(k).run), point, k);
            residuals[k] = new double[count];
            for (int c = 0; c < count; c++) {
                residuals[k][c] = laps.get(k).speed[c] - modelled[c];
            }
        }
        return residuals;
    }

    /** Change of the modelled means with each unknown, unweighted, to first order at the car: rows lap by lap, cell by cell. */
    double[][] slopes(double[] point) {
        renewSensitivities(carOf(point));
        return jacobian(point, sensitivities);
    }

    /** The same over steps that are as wide as what is in doubt, which see the kinks next to the car. */
    double[][] jacobian(double[] point) {
        FitModel.Pair[][] wide = new FitModel.Pair[model.runs().size()][directions];
        for (int run = 0; run < wide.length; run++) {
            for (int j = 0; j < directions; j++) {
                wide[run][j] = model.around(carOf(point), j, run);
            }
        }
        return jacobian(point, wide);
    }

    private double[][] jacobian(double[] point, FitModel.Pair[][] sensitivities) {
        int unknowns = point.length;
        double[][] rows = new double[count * laps.size()][unknowns];
        for (int j = 0; j < directions; j++) {
            for (int k = 0; k < laps.size(); k++) {
                FitModel.Pair pair = sensitivities[laps.get(k).run][j];
                if (pair == null) {
                    continue;
                }
                double[] below = modelled(pair.below(), point, k);
                double[] above = modelled(pair.above(), point, k);
                for (int c = 0; c < count; c++) {
                    rows[k * count + c][j] = (above[c] - below[c]) / pair.apart();
                }
            }
        }
        List<SpeedCurve> curves = curves(point);
        double gain = priors.gain(point[priors.gainAt()]);
        double lag = priors.lag(point[priors.lagAt()]);
        for (int k = 0; k < laps.size(); k++) {
            SpeedCurve curve = curves.get(laps.get(k).run);
            int at = shared + 2 * k;
            LapCells cells = laps.get(k);
            double[] mean = modelled(curve, point, k);
            for (int c = 0; c < count; c++) {
                double first = cells.edge(c, point[at], point[at + 1]);
                double last = cells.edge(c + 1, point[at], point[at + 1]);
                double from = late(curve, lag, first);
                double to = late(curve, lag, last);
                double before = gain * curve.at(from);
                double after = gain * curve.at(to);
                double early = (double) c / count - 0.5;
                double late = (c + 1.0) / count - 0.5;
                double[] row = rows[k * count + c];
                row[priors.gainAt()] = priors.gainDoubt() * mean[c] / gain;
                // Each edge lies earlier by its own speed times the lag.
                row[priors.lagAt()] = -priors.lag(1)
                        * ((after - mean[c]) * curve.at(last) + (mean[c] - before) * curve.at(first))
                        / (to - from);
                row[at] = unlessFlat((after - before) / (to - from));
                row[at + 1] = unlessFlat((after * late - before * early - mean[c] * (late - early)) / (to - from));
            }
        }
        return rows;
    }

    /** What a metre changes, (m/s)/m; nothing where speed is even but for rounding, so that no lap wanders round a skid-pad. */
    private static double unlessFlat(double change) {
        return Math.abs(change) < FLAT ? 0 : change;
    }

    /** Makes sensitivities anew where the car has moved. */
    private void renewSensitivities(double[] u) {
        boolean moved = moved(u);
        sensitivitiesAt = moved ? u : sensitivitiesAt;
        for (int run = 0; (moved || behind) && run < sensitivities.length; run++) {
            sensitivities[run] = model.tangents(sensitivitiesAt, run);
        }
        behind = false;
    }

    private boolean moved(double[] u) {
        boolean kept = sensitivitiesAt != null;
        for (int j = 0; kept && j < directions; j++) {
            kept = Math.abs(u[j] - sensitivitiesAt[j])
                    <= model.directions().get(j).kept();
        }
        return !kept;
    }

    @Override
    public Pair<RealVector, RealMatrix> value(RealVector point) {
        double[] at = point.toArray();
        return new Pair<>(computeValue(at), computeJacobian(at));
    }

    @Override
    public RealVector computeValue(double[] point) {
        double[] step = new ArrayRealVector(point, false)
                .subtract(new ArrayRealVector(best, false))
                .toArray();
        if (leastCost < Double.POSITIVE_INFINITY
                && !Arrays.equals(point, best)
                && isSettled(step, SETTLED, SETTLED_METRES)) {
            // Where the search would go on to, or turns back to from too long a step, is where it is.
            throw new SettledException();
        }
        double[] values = new double[count * laps.size() + shared];
        List<SpeedCurve> curves = curves(point);
        double cost = 0;
        for (int k = 0; k < laps.size(); k++) {
            double[] modelled = curves == null ? new double[0] : modelled(curves.get(laps.get(k).run), point, k);
            for (int c = 0; c < count; c++) {
                double value = curves == null ? NO_LAP : modelled[c];
                values[k * count + c] = Math.sqrt(weights[k][c]) * value;
                double miss = laps.get(k).speed[c] - value;
                cost += weights[k][c] * miss * miss;
            }
        }
        for (int j = 0; j < shared; j++) {
            values[count * laps.size() + j] = priors.root(j) * point[j];
            double miss = priors.root(j) * (point[j] - priors.mean[j]);
            cost += miss * miss;
        }
        if (cost < leastCost) {
            leastCost = cost;
            best = point.clone();
        }
        return new ArrayRealVector(values, false);
    }

    @Override
    public RealMatrix computeJacobian(double[] point) {
        double[][] rows = slopes(point);
        for (int k = 0; k < laps.size(); k++) {
            for (int c = 0; c < count; c++) {
                double[] row = rows[k * count + c];
                double root = Math.sqrt(weights[k][c]);
                for (int j = 0; j < row.length; j++) {
                    row[j] *= root;
                }
            }
        }
        double[][] all = Arrays.copyOf(rows, rows.length + shared);
        for (int j = 0; j < shared; j++) {
            all[rows.length + j] = new double[point.length];
            all[rows.length + j][j] = priors.root(j);
        }
        return new Array2DRowRealMatrix(all, false);
    }
}
