package dev.lapwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.linear.RealMatrix;

/** What a finished search says of each parameter, with intervals by Student's t. */
final class FitEstimates {
    private static final double LEAST_FREEDOM = 3;

    private final List<FitScale> asked;
    private final List<FitScale> free;
    private final List<FitTie> ties;
    private final double[] u;
    private final double confidence;
    /** Null where all parameters are held. */
    private final FitInformation information;

    FitEstimates(List<FitScale> asked, List<FitScale> free, List<FitTie> held, FitSearch search, double confidence) {
        this.asked = asked;
        this.free = free;
        this.confidence = confidence;
        u = search.parameters();
        information = free.isEmpty() ? null : search.information();
        ties = new ArrayList<>(held);
        if (information != null) {
            ties.addAll(FitTies.loose(information.covariance, free, u));
        }
    }

    List<FitTie> ties() {
        return ties;
    }

    FitInformation information() {
        return information;
    }

    List<FitEstimate> list() {
        return asked.stream()
                .map(scale -> free.contains(scale) ? estimate(scale, free.indexOf(scale)) : held(scale))
                .toList();
    }

    private static FitEstimate held(FitScale scale) {
        double before = scale.before();
        double none = Double.NaN;
        return new FitEstimate(scale.parameter(), before, before, none, none, none, FitStanding.HELD, false);
    }

    private FitEstimate estimate(FitScale scale, int j) {
        double tail = 0.5 + 0.5 * confidence;
        double error = Math.sqrt(information.covariance.getEntry(j, j));
        double freedom = Math.max(LEAST_FREEDOM, information.effectiveSamples - free.size() - 2);
        double half = student(freedom, tail) * error;
        for (ClusteredErrors clustered : information.clustered) {
            double wide = student(clustered.freedom(), tail) * clustered.errors()[j];
            if (wide > half) {
                half = wide;
                error = clustered.errors()[j];
            }
        }
        boolean tied = ties.stream()
                .anyMatch(tie -> !tie.held().isEmpty() && tie.parameters().contains(scale.parameter()));
        return new FitEstimate(
                scale.parameter(),
                scale.before(),
                scale.value(u[j]),
                error * scale.slope(u[j]),
                scale.parameter() == FitParameter.DOWNFORCE_AREA
                        ? scale.value(u[j] - half)
                        : Math.max(0, scale.value(u[j] - half)),
                scale.value(u[j] + half),
                tied ? FitStanding.CONDITIONAL : FitStanding.DETERMINED,
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
                RealMatrix c = information.covariance;
                double value = i == j ? 1 : c.getEntry(i, j) / Math.sqrt(c.getEntry(i, i) * c.getEntry(j, j));
                correlation[asked.indexOf(free.get(i))][asked.indexOf(free.get(j))] = value;
            }
        }
        return correlation;
    }
}
