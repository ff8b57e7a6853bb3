package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Shapes of known curvature recovered from points with errors. Errors of deviation σ every h metres, passed by
 * 1/(1 + (ω/ω₀)⁸), leave in the curvature a variance of σ² h/π ∫ω⁴/(1 + (ω/ω₀)⁸)² dω = σ² h ω₀⁵ 3/(64 sin(3π/8)) (the integral
 * is the beta function B(5/8, 11/8)/8), of which five deviations are allowed; the smoothing takes less than (ω/ω₀)⁴ of a wave. ω₀ = 2π/wavelength is what the data chose.
 */
class NoisyShapesTest {
    private static double uncertainty(double noise, double step, double omega) {
        return noise * Math.sqrt(step * Math.pow(omega, 5) * 3 / (64 * Math.sin(3 * Math.PI / 8)));
    }

    private static ImportedTrack closed(List<SurveyPoint> points) {
        return SurveyImport.of("shape", Shapes.plan(points), ImportChoices.circuit());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aCircleHasItsRadiusAllRound(long seed) {
        ImportedTrack found = closed(Shapes.noisy(Shapes.circle(100, 200), 0.2, seed));
        double omega = 2 * Math.PI / found.report().smoothing().wavelength();
        double tolerance = 5 * uncertainty(0.2, Math.PI, omega) + 0.01 * Math.pow(0.01 / omega, 4);
        assertThat(tolerance).as("the check can tell 100 m from 200 m").isLessThan(0.005);
        for (TrackPoint p : found.track().points()) {
            assertThat(p.curvature()).isCloseTo(0.01, within(tolerance));
        }
    }

    /**
     * Semi-axes 150 m and 100 m: perimeter 793.272 m by the complete elliptic integral, smallest radius b²/a = 66.667 m at
     * the ends, largest a²/b = 225 m at the sides.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void anEllipseHasItsPerimeterAndItsTwoRadii(long seed) {
        ImportedTrack found = closed(Shapes.noisy(Shapes.ellipse(150, 100, 0, 400), 0.2, seed));
        double length = found.track().length();
        // Deviation σ sqrt(h ∫κ² ds) = 0.2 sqrt(1.98 · 0.06) = 0.07 m; five of them.
        assertThat(length).isCloseTo(793.272, within(0.35));
        double omega = 2 * Math.PI / found.report().smoothing().wavelength();
        // Most of its curvature goes round twice, 0.0053 per metre high; the rest, a fifth of it, four times and more.
        double loss = 0.0053 * Math.pow(4 * Math.PI / 793 / omega, 4) + 0.001 * Math.pow(8 * Math.PI / 793 / omega, 4);
        double tolerance = 5 * uncertainty(0.2, 1.98, omega) + loss;
        assertThat(tolerance).as("the check can tell the two radii").isLessThan(0.004);
        assertThat(found.track().pointAt(0).curvature()).isCloseTo(1 / 66.667, within(tolerance));
        assertThat(found.track().pointAt(length / 4).curvature()).isCloseTo(1.0 / 225, within(tolerance));
        assertThat(found.report().shape().totalTurning()).isCloseTo(2 * Math.PI, within(1e-9));
    }

    /** A fold of points closer than their errors: 0.3 m every 0.2 m, so that chords are mostly error. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void pointsCloserThanTheirErrorsStillGiveTheEllipse(long seed) {
        ImportedTrack found = closed(Shapes.noisy(Shapes.ellipse(150, 100, 0, 4000), 0.3, seed));
        // Deviation 0.3 sqrt(0.2 · 0.06) = 0.03 m; five of them.
        assertThat(found.track().length()).isCloseTo(793.272, within(0.17));
        double omega = 2 * Math.PI / found.report().smoothing().wavelength();
        double loss = 0.0053 * Math.pow(4 * Math.PI / 793 / omega, 4) + 0.001 * Math.pow(8 * Math.PI / 793 / omega, 4);
        assertThat(found.track().pointAt(0).curvature())
                .isCloseTo(1 / 66.667, within(5 * uncertainty(0.3, 0.2, omega) + loss));
    }

    /** A clothoid whose curvature grows by 1e-4 per metre each metre, to five of the deviations that the report tells. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void aClothoidHasCurvatureThatGrowsWithDistance(long seed) {
        IterativeLegendreGaussIntegrator integral = new IterativeLegendreGaussIntegrator(5, 1e-13, 1e-13);
        List<SurveyPoint> points = new ArrayList<>();
        points.add(SurveyPoint.plan(0, 0));
        for (int s = 2; s <= 200; s += 2) {
            points.add(SurveyPoint.plan(
                    integral.integrate(100_000, t -> Math.cos(1e-4 * t * t / 2), 0, s),
                    integral.integrate(100_000, t -> Math.sin(1e-4 * t * t / 2), 0, s)));
        }
        ImportedTrack found =
                SurveyImport.of("clothoid", Shapes.plan(Shapes.noisy(points, 0.05, seed)), ImportChoices.openRun());
        double[] deviation = found.band().deviation();
        for (double s : new double[] {60, 100, 130}) {
            double tolerance = 5 * deviation[(int) Math.round(s / 200 * (deviation.length - 1))];
            assertThat(tolerance)
                    .as("the check can tell the two ends of the stretch")
                    .isLessThan(0.0065);
            assertThat(found.track().pointAt(s).curvature()).isCloseTo(1e-4 * s, within(tolerance));
        }
    }
}
