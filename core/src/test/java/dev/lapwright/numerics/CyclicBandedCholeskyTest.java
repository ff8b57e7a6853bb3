package dev.lapwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The factorisation against Commons Math's dense one. */
class CyclicBandedCholeskyTest {
    private static final int BANDS = 4;

    @Test
    void solvesAsADenseDecompositionDoes() {
        for (int order : new int[] {3 * BANDS, 17, 40}) {
            Random random = new Random(order);
            double[] entries = new double[order * (BANDS + 1)];
            RealMatrix dense = new Array2DRowRealMatrix(order, order);
            for (int j = 0; j < order; j++) {
                for (int d = 0; d <= BANDS; d++) {
                    // A dominant diagonal makes it definite.
                    double value = d == 0 ? 10 : random.nextDouble() - 0.5;
                    entries[j * (BANDS + 1) + d] = value;
                    dense.setEntry((j + d) % order, j, value);
                    dense.setEntry(j, (j + d) % order, value);
                }
            }
            double[] right = random.doubles(order).toArray();
            double[] expected = new LUDecomposition(dense)
                    .getSolver()
                    .solve(new ArrayRealVector(right))
                    .toArray();
            CyclicBandedCholesky matrix = new CyclicBandedCholesky(order, BANDS);
            matrix.factor(entries);
            matrix.solve(right);
            // Rounding: the matrix is conditioned by less than 2.
            assertThat(right).containsExactly(expected, within(1e-14));
        }
    }
}
