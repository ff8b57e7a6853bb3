package dev.lapwright.fit;

import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Doubt of a fitted car's quantities: the covariance S V Sᵀ of those that moved, with S the change of each with the fit's unknowns and V the
 * unknowns' covariance. Quantities that one parameter moves together, such as all frictions by grip, so hang together.
 */
final class FittedDoubt {
    /** Digits that a standard deviation is worth, and a correlation. */
    private static final MathContext SIZE = new MathContext(4);

    private static final double CORRELATIONS = 1e5;
    /** Least doubt that a document holds. */
    private static final double LEAST = 1e-6;

    private FittedDoubt() {}

    /**
     * The doubt.
     *
     * @param slopes by quantity: its change with each unknown
     * @param covariance of the unknowns
     * @param stated in the car's document, which holds for quantities that did not move
     */
    static CarDoubt of(Map<Quantity, double[]> slopes, RealMatrix covariance, CarDoubt stated) {
        Map<String, CarDoubt.Size> sizes = new LinkedHashMap<>(stated.quantities());
        List<String> names = new ArrayList<>();
        List<ArrayRealVector> rows = new ArrayList<>();
        List<Double> deviations = new ArrayList<>();
        slopes.forEach((quantity, row) -> {
            ArrayRealVector vector = new ArrayRealVector(row, false);
            double deviation = Math.sqrt(Math.max(0, vector.dotProduct(covariance.operate(vector))));
            double rounded = new BigDecimal(deviation).round(SIZE).doubleValue();
            if (rounded >= LEAST) {
                names.add(quantity.path());
                rows.add(vector);
                deviations.add(deviation);
                sizes.put(quantity.path(), new CarDoubt.Size(rounded, false, false, CarDoubt.Source.FITTED));
            }
        });
        int n = names.size();
        double[][] correlation = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double both = rows.get(i).dotProduct(covariance.operate(rows.get(j)));
                double exact = both / (deviations.get(i) * deviations.get(j));
                double within = Math.max(-1, Math.min(1, exact));
                correlation[i][j] = i == j ? 1 : Math.rint(within * CORRELATIONS) / CORRELATIONS;
                correlation[j][i] = correlation[i][j];
            }
        }
        return new CarDoubt(sizes, names, correlation);
    }
}
