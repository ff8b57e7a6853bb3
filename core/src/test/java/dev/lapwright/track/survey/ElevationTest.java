package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.track.TrackPoint;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.Test;

/** A circle of 200 m on a tilted plane: its altitude is a sine of 10 m over the plan. */
class ElevationTest {
    private static final double R = 200;
    private static final double RISE = 10;

    private static Survey tilted(double noise) {
        Random random = new Random(3);
        return new Survey(
                Shapes.sampled(
                        400,
                        2 * Math.PI,
                        a -> new SurveyPoint(
                                R * Math.cos(a),
                                R * Math.sin(a),
                                100 + RISE * Math.sin(a) + noise * random.nextGaussian(),
                                0,
                                0)),
                true,
                false);
    }

    private static final ImportedTrack EXACT = SurveyImport.of("tilted", tilted(0), ImportChoices.circuit());

    @Test
    void climbIsTwiceTheAmplitude() {
        // Stations 2.5 m apart miss crest and dip by at most z″ (1.25 m)²/2 = 2e-4 m each.
        assertThat(EXACT.report().shape().climb()).isCloseTo(2 * RISE, within(5e-4));
    }

    @Test
    void steepestSlopeIsThatOfTheSine() {
        assertThat(EXACT.report().elevation().steepestSlope()).isCloseTo(Math.atan(RISE / R), within(1e-5));
    }

    @Test
    void distanceRunsAlongTheRoadNotThePlan() {
        double length = new IterativeLegendreGaussIntegrator(5, 1e-12, 1e-12)
                .integrate(100_000, a -> Math.hypot(R, RISE * Math.cos(a)), 0, 2 * Math.PI);
        assertThat(EXACT.track().length()).isCloseTo(length, within(1e-6 * length));
    }

    @Test
    void verticalCurvatureIsThatOfTheSine() {
        // At the crest, a quarter round: z″ = -RISE/R²; the spline's own error is (h/R)²/12 = 2e-5 of it.
        TrackPoint crest = EXACT.track().pointAt(EXACT.track().length() / 4);
        assertThat(crest.verticalCurvature()).isCloseTo(-RISE / (R * R), within(1e-3 * RISE / (R * R)));
    }

    @Test
    void startsAtTheAltitudeOfTheFirstPointAndClosesOnTheHill() {
        assertThat(EXACT.track().startAltitude()).isCloseTo(100, within(1e-3));
        assertThat(EXACT.track().requireClosed(0.2)).isSameAs(EXACT.track());
    }

    @Test
    void noisyAltitudesAreSmoothedByTheirOwnNoise() {
        ImportReport report =
                SurveyImport.of("tilted", tilted(0.5), ImportChoices.circuit()).report();
        // 400 numbers give a deviation to 1/sqrt(800) = 3.5 %; four times that.
        assertThat(report.elevation().noise()).isCloseTo(0.5, within(0.07));
        // The plan has no errors and must not be smoothed along with it.
        assertThat(report.smoothing().largestMove()).isLessThan(1e-4);
        assertThat(report.shape().climb()).isCloseTo(2 * RISE, within(1.0));
    }

    /**
     * Heights of a receiver, 2.5 m off over 400 m as an Ornstein and Uhlenbeck process, on a level circle of 200 m: at 15 m/s² a
     * car does 55 m/s there, and 0.7 g take its weight's share at a vertical curvature of 0.7 · 9.80665/(15 · 200) = 0.00229 per
     * metre; stations between the points may pass it by a little.
     */
    @Test
    void wanderingHeightsAreNoCrestsThatCarsWouldFlyOver() {
        Random random = new Random(5);
        double[] wander = {0};
        double kept = Math.exp(-8.0 / 400);
        Survey survey = new Survey(
                Shapes.sampled(157, 2 * Math.PI, a -> {
                    wander[0] = kept * wander[0] + 2.5 * Math.sqrt(1 - kept * kept) * random.nextGaussian();
                    return new SurveyPoint(R * Math.cos(a), R * Math.sin(a), 100 + wander[0], 0, 0);
                }),
                true,
                false);
        ImportedTrack found = SurveyImport.of("wandering", survey, ImportChoices.circuit());
        double sharpest = found.track().points().stream()
                .mapToDouble(p -> Math.abs(p.verticalCurvature()))
                .max()
                .orElseThrow();
        assertThat(sharpest).isLessThan(1.1 * 0.7 * 9.80665 / (15 * R));
        assertThat(found.report().warnings()).anyMatch(w -> w.contains("the altitudes are smoothed to waves of"));
    }
}
