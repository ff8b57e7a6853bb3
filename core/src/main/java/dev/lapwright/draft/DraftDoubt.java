package dev.lapwright.draft;

import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Doubts of a drafted car by their causes: each cause, one standard deviation of it, moves some quantities together. Causes are independent;
 * what quantities have in common makes their errors hang together: C = Σ l lᵀ over the causes' loadings l.
 */
final class DraftDoubt {
    private static final double LEAST = 1e-6;

    private final Map<Quantity, Double> values;
    /** Loadings of each cause, in each quantity's unit. */
    private final List<Map<Quantity, Double>> causes = new ArrayList<>();

    /** @param values of the car */
    DraftDoubt(Map<Quantity, Double> values) {
        this.values = values;
    }

    /** A cause that moves quantities by one share of their values. */
    DraftDoubt share(double share, Quantity... quantities) {
        Map<Quantity, Double> loadings = new LinkedHashMap<>();
        for (Quantity quantity : quantities) {
            loadings.put(quantity, share * Math.abs(values.get(quantity)));
        }
        return cause(loadings);
    }

    /** Two causes apart: each of the quantities by itself, by one share of its value. */
    DraftDoubt shareEach(double share, Quantity... quantities) {
        for (Quantity quantity : quantities) {
            share(share, quantity);
        }
        return this;
    }

    /** A cause that moves one quantity by an amount in its unit. */
    DraftDoubt amount(double amount, Quantity quantity) {
        return cause(Map.of(quantity, amount));
    }

    /** A cause by its loadings, in the quantities' units, of either sign. */
    DraftDoubt cause(Map<Quantity, Double> loadings) {
        causes.add(loadings);
        return this;
    }

    /** Standard deviation of a quantity, in its unit; 0 where nothing moves it. */
    double deviation(Quantity quantity) {
        return Math.sqrt(covariance(quantity, quantity));
    }

    private double covariance(Quantity one, Quantity other) {
        double sum = 0;
        for (Map<Quantity, Double> cause : causes) {
            sum += cause.getOrDefault(one, 0.0) * cause.getOrDefault(other, 0.0);
        }
        return sum;
    }

    /** As a document states it. */
    CarDoubt stated() {
        Set<Quantity> moved = new TreeSet<>();
        Set<Quantity> together = new TreeSet<>();
        for (Map<Quantity, Double> cause : causes) {
            cause.forEach((quantity, loading) -> {
                if (Math.abs(loading) > LEAST) {
                    moved.add(quantity);
                    if (cause.size() > 1) {
                        together.add(quantity);
                    }
                }
            });
        }
        Map<String, CarDoubt.Size> sizes = new LinkedHashMap<>();
        for (Quantity quantity : moved) {
            double deviation = deviation(quantity);
            double value = Math.abs(values.get(quantity));
            boolean percent = quantity.min() >= 0 && value > 0 && deviation < value;
            double amount = percent ? 100 * deviation / value : deviation;
            sizes.put(
                    quantity.path(),
                    new CarDoubt.Size(Digits.rounded(amount, 3), percent, false, CarDoubt.Source.ESTIMATED));
        }
        List<Quantity> order = new ArrayList<>(together);
        double[][] correlation = new double[order.size()][order.size()];
        for (int i = 0; i < order.size(); i++) {
            for (int j = 0; j < order.size(); j++) {
                double exact =
                        covariance(order.get(i), order.get(j)) / (deviation(order.get(i)) * deviation(order.get(j)));
                correlation[i][j] = i == j ? 1 : Math.max(-1, Math.min(1, Digits.toStep(exact, 1e-5)));
            }
        }
        return new CarDoubt(sizes, order.stream().map(Quantity::path).toList(), correlation);
    }
}
