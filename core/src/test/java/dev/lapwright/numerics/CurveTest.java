package dev.lapwright.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.interpolation.HermiteInterpolator;
import org.apache.commons.math3.analysis.interpolation.LinearInterpolator;
import org.apache.commons.math3.analysis.polynomials.PolynomialSplineFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Interpolation against other libraries and closed functions. */
class CurveTest {
    private static double[] numbers(String text) {
        return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("monotone-cubic.csv")
    void theMonotoneCubicIsThatOfAnotherLibrary(CheckRow row) {
        MonotoneCubic curve = new MonotoneCubic(numbers(row.text("abscissas")), numbers(row.text("ordinates")));
        row.verify(curve.value(row.number("at")));
    }

    /** Of two points, and of points in a line, the cubic is the line of Commons Math. */
    @ParameterizedTest
    @ValueSource(strings = {"2 9", "0 1 2 5 11"})
    void pointsInALineGiveTheLine(String abscissas) {
        double[] x = numbers(abscissas);
        double[] y = Arrays.stream(x).map(v -> 3 - 0.7 * v).toArray();
        MonotoneCubic curve = new MonotoneCubic(x, y);
        PolynomialSplineFunction line = new LinearInterpolator().interpolate(x, y);
        for (double at = x[0]; at < x[x.length - 1]; at += 0.37) {
            // Rounding of a handful of operations on numbers below 10.
            assertThat(curve.value(at)).isCloseTo(line.value(at), within(1e-13));
        }
    }

    @Test
    void beyondItsEndsTheMonotoneCubicStaysAtThem() {
        MonotoneCubic curve = new MonotoneCubic(new double[] {1, 2, 4}, new double[] {5, 7, 8});
        assertThat(curve.value(-100)).isEqualTo(5);
        assertThat(curve.value(100)).isEqualTo(8);
    }

    /** Fritsch and Carlson's condition, on data that would make an ordinary spline swing. */
    @Test
    void theMonotoneCubicNeverTurnsWhereThePointsDoNot() {
        double[] x = {7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20};
        double[] y = {0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.943740, 0.998636, 0.999919, 0.999994};
        MonotoneCubic curve = new MonotoneCubic(x, y);
        double before = curve.value(x[0]);
        for (double at = x[0]; at <= x[x.length - 1]; at += 0.001) {
            double here = curve.value(at);
            assertThat(here).as("at %s", at).isGreaterThanOrEqualTo(before);
            before = here;
        }
    }

    /** Between two nodes the table is the Hermite cubic of Commons Math for the same values and centred slopes. */
    @Test
    void aCubicTableIsMadeOfHermiteCubics() {
        DoubleUnaryOperator function = v -> Math.sin(v) + 0.2 * v;
        double step = 0.25;
        CubicTable table = new CubicTable(1, 3, 8, function);
        for (int cell = 1; cell < 7; cell++) {
            HermiteInterpolator hermite = new HermiteInterpolator();
            for (int node = cell; node <= cell + 1; node++) {
                double at = 1 + step * node;
                double slope = (function.applyAsDouble(at + step) - function.applyAsDouble(at - step)) / (2 * step);
                hermite.addSamplePoint(at, new double[] {function.applyAsDouble(at)}, new double[] {slope});
            }
            for (double share : new double[] {0.1, 0.5, 0.8}) {
                double at = 1 + step * (cell + share);
                // Rounding, with differences divided by the step.
                assertThat(table.value(at)).isCloseTo(hermite.value(at)[0], within(1e-13));
            }
        }
    }

    @Test
    void aCubicTableIsExactForParabolas() {
        CubicTable table = new CubicTable(-2, 5, 7, v -> 1 + 2 * v - 0.5 * v * v);
        for (double at = -2; at <= 5; at += 0.13) {
            // Rounding.
            assertThat(table.value(at)).isCloseTo(1 + 2 * at - 0.5 * at * at, within(1e-13));
        }
    }

    /** The error of cubics with centred slopes falls with the third power of the step at least. */
    @Test
    void aCubicTableConvergesWithTheThirdPowerOfItsStep() {
        double coarse = worst(40);
        double fine = worst(80);
        // A little below 3: the greatest error is sampled, not known.
        assertThat(Math.log(coarse / fine) / Math.log(2)).isGreaterThan(2.9);
    }

    private static double worst(int cells) {
        CubicTable table = new CubicTable(0, 6, cells, Math::exp);
        double worst = 0;
        for (int i = 0; i <= 6000; i++) {
            double at = i / 1000.0;
            worst = Math.max(worst, Math.abs(table.value(at) - Math.exp(at)));
        }
        return worst;
    }
}
