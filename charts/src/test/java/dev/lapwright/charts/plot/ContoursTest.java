package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

class ContoursTest {
    private static final int N = 41;
    private static final double[] AXIS = axis();

    private static double[] axis() {
        double[] axis = new double[N];
        for (int i = 0; i < N; i++) {
            axis[i] = -2 + 0.1 * i;
        }
        return axis;
    }

    private static double[][] grid(DoubleBinaryOperator f) {
        double[][] z = new double[N][N];
        for (int j = 0; j < N; j++) {
            for (int i = 0; i < N; i++) {
                z[j][i] = f.applyAsDouble(AXIS[i], AXIS[j]);
            }
        }
        return z;
    }

    /** Linear variation along cell edges is exact for a plane. */
    @Test
    void levelOfAPlaneIsOneStraightLineFromEdgeToEdge() {
        List<double[][]> lines = new Contours(AXIS, AXIS, grid((x, y) -> x + y)).at(0.55);
        assertThat(lines).hasSize(1);
        double[][] line = lines.get(0);
        for (double[] p : line) {
            // Rounding of values near one.
            assertThat(p[0] + p[1]).isCloseTo(0.55, within(1e-12));
        }
        double length = Math.hypot(line[0][0] - line[line.length - 1][0], line[0][1] - line[line.length - 1][1]);
        // From (2, -1.45) to (-1.45, 2).
        assertThat(length).isCloseTo(3.45 * Math.sqrt(2), within(1e-9));
    }

    @Test
    void levelOfAConeIsOneClosedCircle() {
        List<double[][]> lines = new Contours(AXIS, AXIS, grid(Math::hypot)).at(1.23);
        assertThat(lines).hasSize(1);
        double[][] line = lines.get(0);
        assertThat(line[0]).containsExactly(line[line.length - 1]);
        for (double[] p : line) {
            // A chord of one cell (0.1) in a circle of radius 1.23 lies at most 0.1² / (8 · 1.23) = 0.001 inside it.
            assertThat(Math.hypot(p[0], p[1])).isCloseTo(1.23, within(0.0011));
        }
    }

    @Test
    void saddleGivesTwoBranchesThatDoNotCross() {
        List<double[][]> lines = new Contours(AXIS, AXIS, grid((x, y) -> x * y)).at(0.013);
        assertThat(lines).hasSize(2);
        for (double[][] line : lines) {
            double side = Math.signum(line[0][0]);
            for (double[] p : line) {
                assertThat(Math.signum(p[0])).isEqualTo(side);
            }
        }
    }

    @Test
    void cellsWithoutALapHaveNoLine() {
        double[][] z = grid((x, y) -> x);
        for (int j = 0; j < N; j++) {
            z[j][22] = Double.NaN;
        }
        assertThat(new Contours(AXIS, AXIS, z).at(0.15)).isEmpty();
        assertThat(new Contours(AXIS, AXIS, z).at(-1.05)).hasSize(1);
    }

    @Test
    void levelOutsideTheValuesGivesNoLine() {
        assertThat(new Contours(AXIS, AXIS, grid((x, y) -> x)).at(5)).isEmpty();
    }
}
