package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.apache.commons.math3.complex.Complex;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Kerbs and rough surfaces. */
class RoadProfileTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("road-classes.csv")
    void theClassesAreThoseOfTheStandard(CheckRow row) {
        row.verify(RoadClass.valueOf(row.text("class")).density());
    }

    @ParameterizedTest
    @CsvSource({"A, 1", "C, 2", "H, 3"})
    void theSpectrumOfAGeneratedSurfaceIsThatOfItsClass(RoadClass roadClass, long seed) {
        RandomRoad road = RandomRoad.of(roadClass, seed, 0);
        // Welch's periodogram, Hann windows of 81.92 m overlapping by half, of heights read between the road's own
        // points.
        int size = 1024;
        double dx = 0.08;
        double[] density = new double[size / 2];
        int segments = 9;
        for (int k = 0; k < segments; k++) {
            Complex[] window = new Complex[size];
            for (int i = 0; i < size; i++) {
                double hann = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / size);
                window[i] = new Complex(hann * road.height((k * size / 2 + i) * dx), 0);
            }
            Complex[] spectrum =
                    new FastFourierTransformer(DftNormalization.STANDARD).transform(window, TransformType.FORWARD);
            for (int j = 1; j < size / 2; j++) {
                double magnitude = spectrum[j].abs();
                // 3/8 is the mean square of the window; one side takes both.
                density[j] += 2 * magnitude * magnitude * dx / (size * 0.375) / segments;
            }
        }
        // Octaves as ISO 8608 smooths them. Means of J bins of about 5 independent estimates scatter by 1/√(5 J): the
        // lowest
        // octave has 4 bins (22 %), the highest 65 (6 %); three of those. The next octave would reach beyond the waves
        // there are.
        for (double n = 0.05; n < 1; n *= 2) {
            double sum = 0;
            double target = 0;
            int count = 0;
            for (int j = 1; j < size / 2; j++) {
                double at = j / (size * dx);
                if (at >= n && at < 2 * n) {
                    sum += density[j];
                    target += roadClass.density(at);
                    count++;
                }
            }
            double scatter = 3 * 100 / Math.sqrt(5.0 * count);
            assertThat(sum).as("octave from %s", n).isCloseTo(target, Percentage.withPercentage(scatter));
        }
    }

    @Test
    void theVarianceOfASurfaceIsTheAreaUnderItsSpectrum() {
        RandomRoad road = RandomRoad.of(RoadClass.B, 4, 0);
        double sum = 0;
        int n = 8192;
        for (int i = 0; i < n; i++) {
            sum += Math.pow(road.height(i * road.length() / n), 2) / n;
        }
        // Parseval with ∫ Gd(n0) n0²/n² dn = Gd(n0) n0² (1/n1 - 1/n2); n1 and n2 half a line (1/819 m) beyond the first
        // (5/409.6)
        // and last wave; the sum for the integral of n^-2 over its first line errs by (Δn/n1)²/12 of it, 0.3 %.
        double line = 1 / road.length();
        double area = 64e-6 * 0.01 * (1 / (4.5 * line) - 1 / 2.83);
        assertThat(sum).isCloseTo(area, Percentage.withPercentage(1.5));
    }

    @Test
    void theSameSeedGivesTheSameSurface() {
        RandomRoad one = RandomRoad.of(RoadClass.A, 7, 0.1);
        RandomRoad two = RandomRoad.of(RoadClass.A, 7, 0.1);
        assertThat(one.height(33.3)).isEqualTo(two.height(33.3));
    }

    @Test
    void anotherSeedGivesAnotherSurface() {
        assertThat(RandomRoad.of(RoadClass.A, 7, 0.1).height(33.3))
                .isNotEqualTo(RandomRoad.of(RoadClass.A, 8, 0.1).height(33.3));
    }

    @Test
    void theSlopeOfASurfaceIsTheDerivativeOfItsHeight() {
        RandomRoad road = RandomRoad.of(RoadClass.C, 5, 0.1);
        for (double x = 1.013; x < 20; x += 0.377) {
            double difference = (road.height(x + 1e-5) - road.height(x - 1e-5)) / 2e-5;
            // Central difference: error of order 1e-10 times the third derivative.
            assertThat(road.slope(x)).isCloseTo(difference, within(1e-6));
        }
    }

    @ParameterizedTest
    @EnumSource(Kerb.Shape.class)
    void theSlopeOfAKerbIsTheDerivativeOfItsHeight(Kerb.Shape shape) {
        RoadProfile road = new Kerb(shape, 0.05, 1, 4).felt(0.08);
        for (double x = 0.0113; x < road.length(); x += 0.0377) {
            double difference = (road.height(x + 1e-7) - road.height(x - 1e-7)) / 2e-7;
            // Rounding: 1e-17 over 1e-7.
            assertThat(road.slope(x)).isCloseTo(difference, within(1e-6));
        }
    }

    @ParameterizedTest
    @EnumSource(Kerb.Shape.class)
    void theTyreFeelsTheWholeAreaOfAKerb(Kerb.Shape shape) {
        Kerb kerb = new Kerb(shape, 0.05, 1, 2);
        RoadProfile road = kerb.felt(0.1);
        double felt = 0;
        double bare = 0;
        int n = 20_000;
        for (int i = 0; i < n; i++) {
            felt += road.height((i + 0.5) * road.length() / n) * road.length() / n;
            bare += kerb.at((i + 0.5) * kerb.length() / n) * kerb.length() / n;
        }
        // A mean over a patch keeps the area. Midpoint rule over jumps: h L/n.
        assertThat(felt).isCloseTo(bare, within(5e-6));
    }

    @Test
    void aKerbMuchLongerThanThePatchIsFeltAtItsHeight() {
        // Flat top of half its length: felt whole.
        assertThat(new Kerb(Kerb.Shape.RAMP, 0.05, 2, 1).felt(0.1).height(1.05)).isCloseTo(0.05, within(1e-12));
    }
}
