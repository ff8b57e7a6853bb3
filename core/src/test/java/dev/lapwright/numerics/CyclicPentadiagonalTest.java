package dev.lapwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.ejml.simple.SimpleMatrix;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against EJML's dense matrices, a library of its own. */
class CyclicPentadiagonalTest {
    /** Rounding of orders up to 40 with condition numbers below 100. */
    private static final double ROUNDING = 1e-11;

    private final Random random = new Random(7);
    private double[] d;
    private double[] e;
    private double[] f;
    private SimpleMatrix dense;

    private void make(int n, boolean cyclic) {
        d = new double[n];
        e = new double[n];
        f = new double[n];
        dense = new SimpleMatrix(n, n);
        for (int i = 0; i < n; i++) {
            // Diagonally dominant, hence positive definite.
            d[i] = 5 + random.nextDouble();
            e[i] = cyclic || i + 1 < n ? random.nextDouble() - 0.5 : 0;
            f[i] = cyclic || i + 2 < n ? 2 * random.nextDouble() - 1 : 0;
            add(i, i, d[i]);
            add(i, (i + 1) % n, e[i]);
            add((i + 1) % n, i, e[i]);
            add(i, (i + 2) % n, f[i]);
            add((i + 2) % n, i, f[i]);
        }
    }

    private void add(int row, int column, double value) {
        dense.set(row, column, dense.get(row, column) + value);
    }

    @ParameterizedTest
    @CsvSource({"5,true", "6,true", "7,true", "40,true", "5,false", "6,false", "40,false"})
    void solvesAsADenseMatrixDoes(int n, boolean cyclic) {
        make(n, cyclic);
        double[] right = random.doubles(n).toArray();
        SimpleMatrix expected = dense.solve(new SimpleMatrix(n, 1, true, right));
        double[] solved = new CyclicPentadiagonal(d, e, f).solve(right);
        for (int i = 0; i < n; i++) {
            assertThat(solved[i]).isCloseTo(expected.get(i), within(ROUNDING));
        }
    }

    @ParameterizedTest
    @CsvSource({"5,true", "6,true", "7,true", "40,true", "5,false", "6,false", "40,false"})
    void traceOfTheInverseTimesAnotherIsThatOfDenseMatrices(int n, boolean cyclic) {
        make(n, cyclic);
        SimpleMatrix inverse = dense.invert();
        CyclicPentadiagonal matrix = new CyclicPentadiagonal(d, e, f);
        make(n, cyclic);
        double expected = inverse.mult(dense).trace();
        assertThat(matrix.traceOfInverseTimes(d, e, f)).isCloseTo(expected, within(ROUNDING * n));
    }
}
