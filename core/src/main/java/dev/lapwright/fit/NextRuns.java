package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Worth of a further run in another setup, by what it would leave of the doubt of load sensitivity and grip balance: with Λ what was known
 * before, G the speeds' sensitivities in the laps driven and G′ those in that setup, the covariance expected after n laps of it is
 * (Λ + GᵀG/ν + n G′ᵀG′/ν)⁻¹ (Bayesian design of experiments; Chaloner and Verdinelli, Statistical Science 10 (1995) 273, from memory).
 * The noise ν is that with which the laps driven would tell as much of the two as the fit says they do, lines and drivers and all. The
 * grip used in that run and what its change of setup does are in doubt as in any other.
 */
final class NextRuns {
    /** What is asked of a further run. */
    private static final List<FitNuisance> WANTED = List.of(FitNuisance.LOAD_SENSITIVITY, FitNuisance.GRIP_BALANCE);

    /** (m/s)²: of a log without errors, and of one that tells nothing. */
    private static final double LEAST_NOISE = 1e-6;

    private static final double MOST_NOISE = 1e6;
    private static final int BISECTIONS = 40;

    private final RobustFit search;
    private final List<ParameterScale> free;
    private final List<DoubtedDirection> nuisances;
    /** Precision of all shared unknowns with the laps driven, and its inverse. */
    private final RealMatrix precision;

    private final RealMatrix now;
    /** (m/s)². */
    private final double noise;

    private final RealMatrix told;
    private final DrivenRun first;

    NextRuns(RobustFit search, List<ParameterScale> free, List<DoubtedDirection> nuisances, RealMatrix told) {
        this.search = search;
        this.free = free;
        this.nuisances = nuisances;
        this.told = told;
        first = search.model().runs().get(0);
        RealMatrix driven = search.information();
        noise = noise(driven);
        precision = precision(driven, noise);
        now = inverse(precision);
    }

    private RealMatrix precision(RealMatrix driven, double with) {
        RealMatrix sum = driven.scalarMultiply(1 / with);
        for (int j = 0; j < sum.getRowDimension(); j++) {
            sum.addToEntry(j, j, search.priors().precision[j]);
        }
        return sum;
    }

    /** Noise with which the laps driven would tell what they do, by bisection of its logarithm. */
    private double noise(RealMatrix driven) {
        double low = Math.log(LEAST_NOISE);
        double high = Math.log(MOST_NOISE);
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = 0.5 * (low + high);
            RealMatrix left = inverse(precision(driven, Math.exp(middle)));
            double more = 0;
            for (int k : wanted()) {
                more += Math.log(left.getEntry(k, k) / told.getEntry(k, k));
            }
            low = more < 0 ? middle : low;
            high = more < 0 ? high : middle;
        }
        return Math.exp(high);
    }

    /** Where what is asked of a further run stands among the unknowns. */
    private List<Integer> wanted() {
        List<Integer> places = new ArrayList<>();
        for (int j = 0; j < nuisances.size(); j++) {
            if (WANTED.contains(nuisances.get(j).nuisance())) {
                places.add(free.size() + j);
            }
        }
        return places;
    }

    /** What each would leave of the doubt, the best first; those in which the car has no lap are left out. */
    List<FitResult.NextRun> of(List<FitResult.Candidate> candidates) {
        List<FitResult.NextRun> worth = new ArrayList<>();
        for (FitResult.Candidate candidate : candidates) {
            try {
                worth.add(worth(candidate));
            } catch (NoLapException e) {
                // Nobody will drive it.
            }
        }
        worth.sort(Comparator.comparingDouble(NextRuns::left));
        return worth;
    }

    /** Product of what is left of the doubts. */
    private static double left(FitResult.NextRun run) {
        double product = 1;
        for (Map.Entry<FitNuisance, Double> one : run.standardErrors().entrySet()) {
            product *= one.getValue() / one.getKey().usual();
        }
        return product;
    }

    private FitResult.NextRun worth(FitResult.Candidate candidate) {
        Car car = candidate.car();
        List<Direction> directions = new ArrayList<>(free);
        // Where each unknown of the further run stands among those of the fit; negative for its own.
        List<Integer> places = new ArrayList<>();
        List<Double> point = new ArrayList<>();
        for (int j = 0; j < free.size(); j++) {
            places.add(j);
            point.add(search.car()[j]);
        }
        for (int j = 0; j < nuisances.size(); j++) {
            if (nuisances.get(j).run() < 0) {
                directions.add(nuisances.get(j));
                places.add(free.size() + j);
                point.add(search.car()[free.size() + j]);
            }
        }
        FitDoubts doubts = search.priors().doubts;
        for (RunScale own : List.of(
                RunScale.grip(doubts.of(FitNuisance.RUN_GRIP), 0, first.car()),
                RunScale.effect(doubts.of(FitNuisance.SETUP_EFFECT), 0, first.car(), car))) {
            if (own.moves()) {
                directions.add(own);
                places.add(-1);
                point.add(0.0);
            }
        }
        for (int j = 0; j < 2; j++) {
            places.add(free.size() + nuisances.size() + j);
            point.add(search.sensor(j));
        }
        RealMatrix more = information(car, directions, point);
        int shared = precision.getRowDimension();
        int own = (int) places.stream().filter(place -> place < 0).count();
        RealMatrix all = MatrixUtils.createRealIdentityMatrix(shared + own);
        all.setSubMatrix(precision.getData(), 0, 0);
        int next = shared;
        int[] at = new int[places.size()];
        for (int j = 0; j < at.length; j++) {
            at[j] = places.get(j) < 0 ? next++ : places.get(j);
        }
        for (int i = 0; i < at.length; i++) {
            for (int j = 0; j < at.length; j++) {
                all.addToEntry(at[i], at[j], more.getEntry(i, j));
            }
        }
        RealMatrix left = inverse(all);
        Map<FitNuisance, Double> errors = new EnumMap<>(FitNuisance.class);
        for (int k : wanted()) {
            DoubtedDirection nuisance = nuisances.get(k - free.size());
            double share = Math.sqrt(left.getEntry(k, k) / now.getEntry(k, k));
            errors.put(nuisance.nuisance(), nuisance.doubt() * Math.sqrt(told.getEntry(k, k)) * share);
        }
        return new FitResult.NextRun(candidate, errors);
    }

    /** What the laps of a further run tell of its unknowns. */
    private RealMatrix information(Car car, List<Direction> directions, List<Double> point) {
        DrivenLap none = DrivenLap.of(
                "none", search.lap(0).lap.distance(), search.lap(0).lap.speed());
        FitModel model = search.model().of(new DrivenRun(car, first.conditions(), List.of(none)), directions);
        double[] at = new double[point.size() + 2];
        for (int j = 0; j < point.size(); j++) {
            at[j] = point.get(j);
        }
        Lap lap = model.lap(Arrays.copyOf(at, directions.size()), 0);
        LapCells cells = new LapCells(
                DrivenLap.of("expected", lap.column(Channel.DISTANCE), lap.column(Channel.SPEED)),
                0,
                search.lap(0).count,
                search.lap(0).trackLength);
        Priors priors = new Priors(search.priors().doubts, free.size(), directions);
        FitProblem problem = new FitProblem(model, List.of(cells), new double[1][cells.count], priors, 0);
        boolean[][] in = {cells.sampled};
        double[][][] clean = SandwichCovariance.cleaned(problem.jacobian(at), in, priors.shared);
        return SandwichCovariance.products(clean).scalarMultiply(first.laps().size() / noise);
    }

    private static RealMatrix inverse(RealMatrix matrix) {
        return new LUDecomposition(new Array2DRowRealMatrix(matrix.getData(), false), 0)
                .getSolver()
                .getInverse();
    }
}
