package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Shapes whose length and curvature are known in closed form. */
class SurveyImportTest {
    private static final double A = 200;
    private static final double B = 120;
    /**
     * Relative error of a cubic spline's second derivative at step h over radius r: of the order (h/r)²/12, here at most
     * (2.6/72)²/12 = 1.1e-4; ten times that.
     */
    private static final double SPLINE = 1e-3;

    private static ImportedTrack closed(List<SurveyPoint> points) {
        return SurveyImport.of("shape", Shapes.plan(points), ImportChoices.circuit());
    }

    private static ImportedTrack exact(List<SurveyPoint> points) {
        return SurveyImport.of(
                "shape", Shapes.plan(points), ImportChoices.circuit().withSmoothing(0));
    }

    private static DoubleStream curvatures(Track track) {
        return track.points().stream().mapToDouble(TrackPoint::curvature);
    }

    /** Complete elliptic integral of the second kind (Abramowitz and Stegun 17.3.3) by Commons Math's quadrature. */
    private static double perimeter() {
        double m = 1 - B * B / (A * A);
        return 4
                * A
                * new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12)
                        .integrate(100_000, t -> Math.sqrt(1 - m * Math.sin(t) * Math.sin(t)), 0, Math.PI / 2);
    }

    @Test
    void ellipseHasThePerimeterOfTheEllipticIntegral() {
        // The length of an interpolating cubic spline is exact to (h/r)⁴/720 or so, 1e-8 relative; a hundred times
        // that.
        double perimeter = perimeter();
        assertThat(exact(Shapes.ellipse(A, B, 0, 400)).track().length()).isCloseTo(perimeter, within(1e-6 * perimeter));
    }

    @Test
    void ellipseHasItsTwoRadii() {
        ImportedTrack found = exact(Shapes.ellipse(A, B, 0, 400));
        assertThat(found.report().shape().smallestRadius()).isCloseTo(B * B / A, within(SPLINE * B * B / A));
        assertThat(1 / curvatures(found.track()).min().orElseThrow()).isCloseTo(A * A / B, within(SPLINE * A * A / B));
    }

    @Test
    void crossValidationLeavesExactPointsAlone() {
        ImportReport report = closed(Shapes.ellipse(A, B, 0, 400)).report();
        // Nothing to smooth away; a hundredth of a millimetre is far below any survey.
        assertThat(report.smoothing().largestMove()).isLessThan(1e-5);
        assertThat(report.shape().smallestRadius()).isCloseTo(B * B / A, within(SPLINE * B * B / A));
    }

    /** Parallel curves differ in length by 2πd, whatever their shape (Steiner's formula). */
    @ParameterizedTest
    @ValueSource(doubles = {-5, 3, 8})
    void aLaneBesideTheLineIsLongerByTwoPiTimesItsOffset(double offset) {
        double middle = exact(Shapes.ellipse(A, B, 0, 400)).track().length();
        double lane = exact(Shapes.ellipse(A, B, offset, 400)).track().length();
        assertThat(lane - middle).isCloseTo(2 * Math.PI * offset, within(2e-6 * middle));
    }

    @Test
    void aSimpleLoopTurnsByAFullCircleToTheLeftOrBackwardsToTheRight() {
        List<SurveyPoint> points = Shapes.noisy(Shapes.ellipse(A, B, 0, 400), 0.3, 11);
        ImportChoices choices = ImportChoices.circuit();
        double forwards = SurveyImport.of("e", Shapes.plan(points), choices)
                .report()
                .shape()
                .totalTurning();
        double backwards = SurveyImport.of("e", Shapes.plan(points), choices.backwards())
                .report()
                .shape()
                .totalTurning();
        // Hopf's theorem; headings are taken from the curve, so only rounding is left.
        assertThat(forwards).isCloseTo(2 * Math.PI, within(1e-9));
        assertThat(backwards).isCloseTo(-2 * Math.PI, within(1e-9));
    }

    /**
     * Errors of deviation σ every h metres leave, where waves lose half their height at ω₀, a posterior variance of the curvature
     * of σ² h/(2π) ∫ω⁴/(1 + (ω/ω₀)⁸) dω = σ² h ω₀⁵/(8 sin(5π/8)); the integral is Gradshteyn and Ryzhik 3.241.2. The noise that
     * the fit sees is known to 5 %, the curvature of 0.01 per metre changes ω⁴ by (κ/ω₀)² = 2.5 %: 15 % in all.
     */
    @Test
    void curvatureIsAsUncertainAsTheFilterOfWhiteErrorsLeavesIt() {
        double predicted = 0;
        double told = 0;
        for (int seed = 0; seed < 10; seed++) {
            ImportReport.SmoothingReport report = SurveyImport.of(
                            "circle",
                            Shapes.plan(Shapes.noisy(Shapes.circle(100, 200), 0.2, seed)),
                            ImportChoices.circuit().withSmoothing(100))
                    .report()
                    .smoothing();
            told += report.curvatureUncertainty() / 10;
            double omega = 2 * Math.PI / 100;
            predicted +=
                    report.noise() * Math.sqrt(Math.PI * Math.pow(omega, 5) / (8 * Math.sin(5 * Math.PI / 8))) / 10;
        }
        assertThat(told).isCloseTo(predicted, within(0.15 * predicted));
    }

    /**
     * A tenth of normal errors lies beyond 1.645 deviations, four of ten beyond half as many; ten circles give about 100 independent places:
     * 3 %. Drawn tracks differ in how rough they are as well, so they lie beyond more often, but not as errors twice as large do.
     */
    @Test
    void moreThanATenthOfTheDrawnTracksLiesBeyondTheBandOfTheRoughnessFound() {
        int beyond = 0;
        int count = 0;
        for (int seed = 0; seed < 10; seed++) {
            ImportedTrack found = closed(Shapes.noisy(Shapes.ellipse(150, 100, 0, 200), 0.2, seed));
            double[] deviation = found.band().deviation();
            for (int k = 0; k < found.band().draws(); k++) {
                Track drawn = found.band().drawn(k);
                for (int i = 0; i < deviation.length; i += 20) {
                    double miss = drawn.points().get(i).curvature()
                            - found.track().points().get(i).curvature();
                    beyond += Math.abs(miss) > 1.645 * deviation[i] ? 1 : 0;
                    count++;
                }
            }
        }
        assertThat((double) beyond / count).isBetween(0.1 - 0.03, 0.41);
    }

    /** Length of a noisy closed line: deviation σ sqrt(h ∫κ² ds) = 0.2 sqrt(3.14 · 0.0628) = 0.09 m; four of them. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void noisyCircleIsRecovered(long seed) {
        ImportReport report =
                closed(Shapes.noisy(Shapes.circle(100, 200), 0.2, seed)).report();
        assertThat(report.shape().length()).isCloseTo(200 * Math.PI, within(0.36));
        // The noise is known from 200 numbers to 1/sqrt(400) = 5 %; four times that.
        assertThat(report.smoothing().noise()).isCloseTo(0.2, within(0.04));
    }

    /**
     * In the middle of an arc of 157 m the joints, d = 78 m away, are felt by exp(-ω₀ d/√2) of their step; errors by the
     * uncertainty above, of which five. Both are taken from the smoothing that the data chose.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void noisyStadiumHasItsRadiusInTheMiddleOfTheArcAndNoneOnTheStraight(long seed) {
        double length = 400 + 100 * Math.PI;
        ImportedTrack found =
                closed(Shapes.noisy(Shapes.sampled(240, length, s -> Shapes.stadium(200, 50, s)), 0.1, seed));
        ImportReport report = found.report();
        double omega = 2 * Math.PI / report.smoothing().wavelength();
        double uncertainty = 0.1 * Math.sqrt(length / 240 * Math.pow(omega, 5) * Math.sqrt(2) / 16);
        double joints = 2 * Math.sqrt(2) * 0.02 * Math.exp(-omega * 78 / Math.sqrt(2));
        double loss = 0.02 * Math.pow(50 * omega, -4);
        double tolerance = 5 * uncertainty + joints + loss;
        assertThat(tolerance).as("the check can tell an arc from a straight").isLessThan(0.008);
        assertThat(found.track().pointAt(100 + 25 * Math.PI).curvature()).isCloseTo(0.02, within(tolerance));
        assertThat(found.track().pointAt(200 + 50 * Math.PI).curvature()).isCloseTo(0, within(tolerance));
        // Deviation 0.1 sqrt(3 · 0.126) = 0.06 m; five of them, and as much for corners cut at the joints.
        assertThat(report.shape().length()).isCloseTo(length, within(0.6));
    }

    @Test
    void clothoidHasCurvatureThatGrowsWithDistance() {
        double length = 200;
        double rate = 0.02 / length;
        IterativeLegendreGaussIntegrator integral = new IterativeLegendreGaussIntegrator(5, 1e-13, 1e-13);
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = 0; i <= 100; i++) {
            double s = length * i / 100;
            points.add(
                    s == 0
                            ? SurveyPoint.plan(0, 0)
                            : SurveyPoint.plan(
                                    integral.integrate(100_000, t -> Math.cos(rate * t * t / 2), 0, s),
                                    integral.integrate(100_000, t -> Math.sin(rate * t * t / 2), 0, s)));
        }
        Track track = SurveyImport.of(
                        "clothoid", Shapes.plan(points), ImportChoices.openRun().withSmoothing(0))
                .track();
        for (TrackPoint p : track.points()) {
            // The natural end takes the curvature to zero at the last point, and is forgotten by 2 - sqrt(3) a knot:
            // 2e-6
            // after ten. What is left is the spline's own error, κ (hκ)²/12 = 3e-6 at the tight end.
            if (p.s() < length - 20) {
                assertThat(p.curvature()).isCloseTo(rate * p.s(), within(1e-5));
            }
        }
    }

    @Test
    void stationsLaidOutMeetTheirStart() {
        ImportedTrack found = closed(Shapes.noisy(Shapes.ellipse(A, B, 0, 400), 0.3, 5));
        assertThat(found.track().requireClosed(0.2)).isSameAs(found.track());
    }

    @Test
    void aFigureOfEightTurnsByNothingAndCrossesItselfOnce() {
        // Lemniscate of Gerono.
        List<SurveyPoint> eight = Shapes.sampled(
                400, 2 * Math.PI, t -> SurveyPoint.plan(300 * Math.sin(t), 300 * Math.sin(t) * Math.cos(t)));
        ImportReport report = SurveyImport.of(
                        "eight", Shapes.plan(eight), ImportChoices.circuit().figureOfEight())
                .report();
        assertThat(report.shape().totalTurning()).isCloseTo(0, within(1e-9));
        assertThat(report.shape().crossings()).isEqualTo(1);
        assertThat(report.warnings()).isEmpty();
        assertThat(closed(eight).report().warnings()).singleElement().asString().contains("crosses itself once");
    }

    @Test
    void widthsAreKeptAndChangeSidesBackwards() {
        List<SurveyPoint> points = new ArrayList<>();
        for (SurveyPoint p : Shapes.circle(100, 100)) {
            points.add(new SurveyPoint(p.x(), p.y(), 0, 4, 7));
        }
        Survey survey = new Survey(points, false, true);
        TrackPoint forwards =
                SurveyImport.of("w", survey, ImportChoices.circuit()).track().pointAt(50);
        TrackPoint backwards = SurveyImport.of(
                        "w", survey, ImportChoices.circuit().backwards())
                .track()
                .pointAt(50);
        assertThat(List.of(forwards.widthLeft(), forwards.widthRight())).containsExactly(4.0, 7.0);
        assertThat(List.of(backwards.widthLeft(), backwards.widthRight())).containsExactly(7.0, 4.0);
    }
}
