package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Estimates of a finished fit, with confidence intervals: noise by Student's t, doubts of nuisances by the normal distribution, the
 * two being independent of each other.
 */
final class FitEstimates {
    private static final double LEAST_FREEDOM = 3;
    /** Share of an estimate's variance from which a nuisance is named. */
    private static final double NAMED = 0.2;

    private static final double NORMAL_TAIL = 0.975;

    private final List<ParameterScale> asked;
    private final List<ParameterScale> free;
    private final List<DoubtedDirection> nuisances;
    private final List<FitResult.Collinearity> collinearities;
    private final RobustFit search;
    /** Where the fit ends, words and all. */
    private double[] u;

    private final double confidence;
    private final SandwichCovariance covariance;
    private final int all;
    /** Covariance of all shared unknowns, words and all. */
    private RealMatrix wide;
    /** Standard deviation of each over that before words. */
    private final double[] left;

    private final List<FitResult.Word> words = new ArrayList<>();

    FitEstimates(
            List<ParameterScale> asked,
            List<ParameterScale> free,
            List<DoubtedDirection> nuisances,
            List<FitResult.Collinearity> held,
            RobustFit search,
            double confidence) {
        this.asked = asked;
        this.free = free;
        this.nuisances = nuisances;
        this.search = search;
        this.confidence = confidence;
        u = search.parameters();
        all = search.priors().shared;
        covariance = search.covariance();
        wide = widened();
        left = new double[all];
        Arrays.fill(left, 1);
        collinearities = new ArrayList<>(held);
        if (!free.isEmpty()) {
            collinearities.addAll(Collinearities.correlated(covariance.covariance(free.size()), free, u));
        }
    }

    /** Takes in what the first run's steering tells, and what is said of which axle gives up first. */
    void hear(List<LimitWord> said) {
        SteeringReading steering = new SteeringReading(search, search.model().lap(search.car(), 0));
        int line = search.priors().lineAt;
        if (line >= 0) {
            steering.radius().ifPresent(radius -> {
                double doubt = search.priors().doubts.of(FitNuisance.LINE);
                double[] slopes = new double[all];
                slopes[line] = 1;
                double difference = radius.percent() / doubt - search.car()[line];
                take(WordUpdate.reading(difference, radius.error() / doubt, slopes, wide));
            });
        }
        steering.word().ifPresent(word -> hear(word, true));
        said.forEach(word -> hear(word, false));
    }

    private void hear(LimitWord word, boolean bySteering) {
        LimitMargins margins = new LimitMargins(search.model(), search.car());
        double before = margins.at(word.corner());
        take(WordUpdate.of(word, before, margins.slopes(word.corner(), all), wide));
        double after = new LimitMargins(search.model(), search.car()).at(word.corner());
        words.add(new FitResult.Word(word, bySteering, before, after));
    }

    private void take(WordUpdate update) {
        for (int j = 0; j < all; j++) {
            double variance = wide.getEntry(j, j);
            left[j] *= variance > 0 ? Math.sqrt(Math.max(0, update.covariance.getEntry(j, j)) / variance) : 1;
        }
        wide = update.covariance;
        search.shift(update.shift);
        u = search.parameters();
    }

    /** What was said, and what it moved. */
    List<FitResult.Word> words() {
        return words;
    }

    List<FitResult.Collinearity> collinearities() {
        return collinearities;
    }

    /** Null where all parameters are held. */
    SandwichCovariance covariance() {
        return free.isEmpty() ? null : covariance;
    }

    List<FitResult.Estimate> list() {
        return asked.stream()
                .map(scale -> free.contains(scale) ? estimate(scale, free.indexOf(scale)) : held(scale))
                .toList();
    }

    private static FitResult.Estimate held(ParameterScale scale) {
        double before = scale.before();
        double none = Double.NaN;
        return new FitResult.Estimate(
                scale.parameter(), before, before, none, none, none, FitResult.Identifiability.HELD, List.of(), false);
    }

    private FitResult.Estimate estimate(ParameterScale scale, int j) {
        double tail = 0.5 + 0.5 * confidence;
        double doubts = doubtVariance(j);
        double error = Math.hypot(noise(j), Math.sqrt(doubts));
        error *= left[j];
        double half = left[j]
                * Math.hypot(
                        noiseHalf(j, tail),
                        new NormalDistribution().inverseCumulativeProbability(tail) * Math.sqrt(doubts));
        boolean collinear = collinearities.stream()
                .anyMatch(c -> !c.held().isEmpty() && c.parameters().contains(scale.parameter()));
        FitResult.Identifiability standing = collinear
                ? FitResult.Identifiability.CONDITIONAL
                : doubts * left[j] * left[j] > 0.5 * error * error
                        ? FitResult.Identifiability.LEANING
                        : FitResult.Identifiability.DETERMINED;
        return new FitResult.Estimate(
                scale.parameter(),
                scale.before(),
                scale.value(u[j]),
                error * scale.slope(u[j]),
                scale.parameter() == FitParameter.DOWNFORCE_AREA
                        ? scale.value(u[j] - half)
                        : Math.max(0, scale.value(u[j] - half)),
                scale.value(u[j] + half),
                standing,
                leans(j, error * error / (left[j] * left[j])),
                u[j] <= scale.least() + 1e-6 || u[j] >= scale.most() - 1e-6);
    }

    /** Half of an interval without the doubts: the widest of those there are. */
    private double noiseHalf(int j, double tail) {
        double freedom = Math.max(LEAST_FREEDOM, covariance.effectiveSamples - free.size() - 2);
        double half = student(freedom, tail) * Math.sqrt(Math.max(0, covariance.noise.getEntry(j, j)));
        for (SandwichCovariance.ClusteredErrors clustered : covariance.clustered) {
            half = Math.max(
                    half, student(clustered.freedom()[j], tail) * clustered.errors()[j]);
        }
        return half;
    }

    /** Standard error without the doubts: the widest of those there are. */
    private double noise(int j) {
        // Of laps without any error the variance is a rounding error of either sign.
        double error = Math.sqrt(Math.max(0, covariance.noise.getEntry(j, j)));
        for (SandwichCovariance.ClusteredErrors clustered : covariance.clustered) {
            error = Math.max(error, clustered.errors()[j]);
        }
        return error;
    }

    private double doubtVariance(int j) {
        double sum = 0;
        for (RealMatrix doubt : covariance.doubts) {
            sum += doubt.getEntry(j, j);
        }
        return sum;
    }

    /** Nuisances that make up a good part of a variance, the greatest first. */
    private List<FitNuisance> leans(int j, double variance) {
        List<Integer> named = new ArrayList<>();
        for (int i = free.size(); i < all; i++) {
            if (covariance.doubts[i].getEntry(j, j) > NAMED * variance) {
                named.add(i);
            }
        }
        named.sort((a, b) -> Double.compare(covariance.doubts[b].getEntry(j, j), covariance.doubts[a].getEntry(j, j)));
        return named.stream().map(i -> nuisance(i - free.size())).toList();
    }

    private FitNuisance nuisance(int k) {
        return k < nuisances.size()
                ? nuisances.get(k).nuisance()
                : k == nuisances.size() ? FitNuisance.SPEED_SCALE : FitNuisance.SENSOR_LAG;
    }

    /** What was found of each nuisance, those of the sensor last. */
    List<FitResult.Nuisance> nuisances() {
        List<FitResult.Nuisance> found = new ArrayList<>();
        for (int k = 0; k < nuisances.size() + 2; k++) {
            FitNuisance nuisance = nuisance(k);
            double doubt = search.priors().doubts.of(nuisance);
            int run = k < nuisances.size() ? nuisances.get(k).run() + 1 : 0;
            int j = free.size() + k;
            // Nobody knows less of it than before.
            double error = left[j] * Math.min(1, deviation(j));
            if (doubt > 0) {
                found.add(new FitResult.Nuisance(nuisance, run, doubt, doubt * search.nuisance(k), doubt * error));
            }
        }
        return found;
    }

    /** How well the car's quantities are known after the fit: what its document said, but for those that moved. */
    CarDoubt carDoubt(Car car) {
        List<Direction> moving = new ArrayList<>(free);
        moving.addAll(nuisances);
        Map<Quantity, double[]> slopes = new EnumMap<>(Quantity.class);
        for (int j = 0; j < moving.size(); j++) {
            if (moving.get(j).isOfTheCar()) {
                slopes(moving.get(j), search.car()[j], j, car, slopes);
            }
        }
        // A quantity is known no better than a parameter that was held, or not asked for, lets it be.
        for (FitParameter parameter : FitParameter.values()) {
            ParameterScale scale = ParameterScale.of(parameter, car);
            if (free.stream().noneMatch(known -> known.parameter() == parameter)) {
                slopes.keySet().removeAll(scale.shifts(car, scale.step()).keySet());
            }
        }
        return FittedDoubt.of(slopes, wide, car.document().doubt());
    }

    private void slopes(Direction direction, double at, int j, Car car, Map<Quantity, double[]> slopes) {
        double low = direction.clamped(at - direction.step());
        double high = direction.clamped(at + direction.step());
        Map<Quantity, Double> below = direction.shifts(car, low);
        direction.shifts(car, high).forEach((quantity, above) -> {
            double slope = (above - below.getOrDefault(quantity, 0.0)) / (high - low);
            slopes.computeIfAbsent(quantity, any -> new double[all])[j] = slope;
        });
    }

    /** What further runs would tell, the best first. */
    List<FitResult.NextRun> next(List<FitResult.Candidate> candidates) {
        return candidates.isEmpty() ? List.of() : new NextRuns(search, free, nuisances, wide).of(candidates);
    }

    /**
     * Covariance of all shared unknowns, each standard deviation such that the normal distribution has the interval of 95 % that the
     * estimate has.
     */
    private RealMatrix widened() {
        RealMatrix sum = covariance.covariance(all);
        double[] factor = new double[all];
        for (int j = 0; j < all; j++) {
            double told = Math.sqrt(Math.max(sum.getEntry(j, j), Double.MIN_NORMAL));
            double known = j < free.size() ? deviation(j) : Math.min(1, deviation(j));
            factor[j] = known / told;
        }
        for (int i = 0; i < all; i++) {
            for (int j = 0; j < all; j++) {
                sum.multiplyEntry(i, j, factor[i] * factor[j]);
            }
        }
        return sum;
    }

    /** Standard deviation with which the normal distribution has the interval of 95 % that an unknown has. */
    private double deviation(int j) {
        double normal = new NormalDistribution().inverseCumulativeProbability(NORMAL_TAIL);
        return Math.hypot(noiseHalf(j, NORMAL_TAIL) / normal, Math.sqrt(Math.max(0, doubtVariance(j))));
    }

    private static double student(double freedom, double tail) {
        return new TDistribution(null, freedom).inverseCumulativeProbability(tail);
    }

    double[][] correlation() {
        double[][] correlation = new double[asked.size()][asked.size()];
        for (double[] row : correlation) {
            Arrays.fill(row, Double.NaN);
        }
        if (free.isEmpty()) {
            return correlation;
        }
        RealMatrix c = wide;
        for (int i = 0; i < free.size(); i++) {
            for (int j = 0; j < free.size(); j++) {
                double value = i == j ? 1 : c.getEntry(i, j) / Math.sqrt(c.getEntry(i, i) * c.getEntry(j, j));
                correlation[asked.indexOf(free.get(i))][asked.indexOf(free.get(j))] = value;
            }
        }
        return correlation;
    }
}
