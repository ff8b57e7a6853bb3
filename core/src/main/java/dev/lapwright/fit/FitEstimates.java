package dev.lapwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.RealMatrix;

/** Estimates of a finished fit, with confidence intervals by Student's t. */
final class FitEstimates {
    private static final double LEAST_FREEDOM = 3;

    private final List<ParameterScale> asked;
    private final List<ParameterScale> free;
    private final List<FitResult.Collinearity> collinearities;
    private final double[] u;
    private final double confidence;
    /** Null where all parameters are held. */
    private final SandwichCovariance covariance;

    FitEstimates(
            List<ParameterScale> asked,
            List<ParameterScale> free,
            List<FitResult.Collinearity> held,
            RobustFit search,
            double confidence) {
        this.asked = asked;
        this.free = free;
        this.confidence = confidence;
        u = search.parameters();
        covariance = free.isEmpty() ? null : search.covariance();
        collinearities = new ArrayList<>(held);
        if (covariance != null) {
            collinearities.addAll(Collinearities.correlated(covariance.covariance, free, u));
        }
    }

    List<FitResult.Collinearity> collinearities() {
        return collinearities;
    }

    SandwichCovariance covariance() {
        return covariance;
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
                scale.parameter(), before, before, none, none, none, FitResult.Identifiability.HELD, false);
    }

    private FitResult.Estimate estimate(ParameterScale scale, int j) {
        double tail = 0.5 + 0.5 * confidence;
        double error = Math.sqrt(covariance.covariance.getEntry(j, j));
        double freedom = Math.max(LEAST_FREEDOM, covariance.effectiveSamples - free.size() - 2);
        double half = student(freedom, tail) * error;
        for (SandwichCovariance.ClusteredErrors clustered : covariance.clustered) {
            double wide = student(clustered.freedom(), tail) * clustered.errors()[j];
            if (wide > half) {
                half = wide;
                error = clustered.errors()[j];
            }
        }
        boolean collinear = collinearities.stream()
                .anyMatch(c -> !c.held().isEmpty() && c.parameters().contains(scale.parameter()));
        return new FitResult.Estimate(
                scale.parameter(),
                scale.before(),
                scale.value(u[j]),
                error * scale.slope(u[j]),
                scale.parameter() == FitParameter.DOWNFORCE_AREA
                        ? scale.value(u[j] - half)
                        : Math.max(0, scale.value(u[j] - half)),
                scale.value(u[j] + half),
                collinear ? FitResult.Identifiability.CONDITIONAL : FitResult.Identifiability.DETERMINED,
                u[j] <= scale.least() + 1e-6 || u[j] >= scale.most() - 1e-6);
    }

    private static double student(double freedom, double tail) {
        return new TDistribution(null, freedom).inverseCumulativeProbability(tail);
    }

    double[][] correlation() {
        double[][] correlation = new double[asked.size()][asked.size()];
        for (double[] row : correlation) {
            Arrays.fill(row, Double.NaN);
        }
        for (int i = 0; i < free.size(); i++) {
            for (int j = 0; j < free.size(); j++) {
                RealMatrix c = covariance.covariance;
                double value = i == j ? 1 : c.getEntry(i, j) / Math.sqrt(c.getEntry(i, i) * c.getEntry(j, j));
                correlation[asked.indexOf(free.get(i))][asked.indexOf(free.get(j))] = value;
            }
        }
        return correlation;
    }
}
