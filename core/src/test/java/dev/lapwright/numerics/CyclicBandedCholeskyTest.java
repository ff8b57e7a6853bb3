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

    /** Determinant and inverse of a dense decomposition; rounding as above. */
    @Test
    void hasTheDeterminantAndTheInverseOfADenseDecomposition() {
        for (int order : new int[] {3 * BANDS, 17, 40}) {
            Random random = new Random(order);
            double[] entries = new double[order * (BANDS + 1)];
            RealMatrix dense = new Array2DRowRealMatrix(order, order);
            for (int j = 0; j < order; j++) {
                for (int d = 0; d <= BANDS; d++) {
                    double value = d == 0 ? 10 : random.nextDouble() - 0.5;
                    entries[j * (BANDS + 1) + d] = value;
                    dense.setEntry((j + d) % order, j, value);
                    dense.setEntry(j, (j + d) % order, value);
                }
            }
            CyclicBandedCholesky matrix = new CyclicBandedCholesky(order, BANDS);
            matrix.factor(entries);
            LUDecomposition expected = new LUDecomposition(dense);
            assertThat(matrix.logDeterminant()).isCloseTo(Math.log(expected.getDeterminant()), within(1e-11));
            RealMatrix inverse = expected.getSolver().getInverse();
            double[] found = matrix.inverseBands();
            for (int j = 0; j < order; j++) {
                for (int d = 0; d <= BANDS; d++) {
                    assertThat(found[j * (BANDS + 1) + d])
                            .isCloseTo(inverse.getEntry((j + d) % order, j), within(1e-14));
                }
            }
        }
    }

    /** Lᵀx = b, so that xᵀAx = bᵀb. */
    @Test
    void drawsHaveTheCovarianceOfTheInverse() {
        double[] entries = new double[20 * (BANDS + 1)];
        Random random = new Random(1);
        for (int i = 0; i < entries.length; i++) {
            entries[i] = i % (BANDS + 1) == 0 ? 10 : random.nextDouble() - 0.5;
        }
        CyclicBandedCholesky matrix = new CyclicBandedCholesky(20, BANDS);
        matrix.factor(entries);
        double[] x = random.doubles(20).toArray();
        double squares = 0;
        for (double value : x) {
            squares += value * value;
        }
        matrix.solveTransposed(x);
        double form = 0;
        for (int j = 0; j < 20; j++) {
            for (int d = 0; d <= BANDS; d++) {
                form += (d == 0 ? 1 : 2) * entries[j * (BANDS + 1) + d] * x[j] * x[(j + d) % 20];
            }
        }
        assertThat(form).isCloseTo(squares, within(1e-12));
    }
}
