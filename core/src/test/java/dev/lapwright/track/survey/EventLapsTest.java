package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rounds of a stadium with straights of 300 m and half circles of 80 m. */
class EventLapsTest {
    private static final double LAP = 600 + 160 * Math.PI;
    private static final int STEPS = 400;

    /** Points from a place on the first lap to one on the last, both in laps. */
    private static List<SurveyPoint> driven(double from, double to) {
        List<SurveyPoint> points = new ArrayList<>();
        for (int i = (int) Math.round(from * STEPS); i <= Math.round(to * STEPS); i++) {
            double s = LAP * Math.floorMod(i, STEPS) / STEPS;
            points.add(Shapes.stadium(300, 80, s));
        }
        return points;
    }

    /** Times of a car that takes 40 s for the first lap and 1 s less for each that follows. */
    private static double[] times(double from, int count) {
        double[] times = new double[count];
        for (int i = 1; i < count; i++) {
            double lap = Math.floor(from + (i - 1.0) / STEPS);
            times[i] = times[i - 1] + (40 - lap) / STEPS;
        }
        return times;
    }

    private static EventLaps.OfSurvey pick(List<SurveyPoint> points, OptionalInt wanted) {
        return EventLaps.pick(Shapes.plan(points), new double[0], wanted);
    }

    private static double length(Survey survey) {
        return SurveyImport.of("lap", survey, ImportChoices.circuit()).track().length();
    }

    @Test
    void oneLapIsLeftAsItIs() {
        List<SurveyPoint> points = driven(0, 1 - 1.0 / STEPS);
        EventLaps.OfSurvey found = pick(points, OptionalInt.empty());
        assertThat(found.pick()).isNull();
        assertThat(found.survey().points()).isEqualTo(points);
    }

    @Test
    void ofFourLapsThreeAndAHalfAreFoundAndTheFirstIsTakenWithoutTimes() {
        // From a quarter of the way: four passages of the gate where it began, and half a lap more.
        EventLaps.OfSurvey found = pick(driven(0.25, 3.75), OptionalInt.empty());
        assertThat(found.pick().count()).isEqualTo(3);
        assertThat(found.pick().number()).isEqualTo(1);
        // Chords instead of arcs cost (h/r)²/24 = 1e-5 of the length; interpolated, nothing is left.
        assertThat(length(found.survey())).isCloseTo(LAP, within(0.1));
    }

    @Test
    void theFastestIsTakenWhereTimesAreKnown() {
        List<SurveyPoint> points = driven(0.25, 3.75);
        EventLaps.OfSurvey found = EventLaps.pick(Shapes.plan(points), times(0.25, points.size()), OptionalInt.empty());
        // Each lap begins a quarter further on: three quarters at 38 s and one at 37 s for the third.
        assertThat(found.pick().number()).isEqualTo(3);
        assertThat(found.pick().how()).isEqualTo("lap 3 of 3 whole laps taken, the fastest, 37.75 s");
    }

    @Test
    void anyLapCanBeAskedFor() {
        EventLaps.OfSurvey found = pick(driven(0.25, 3.75), OptionalInt.of(2));
        assertThat(found.pick().number()).isEqualTo(2);
        assertThat(found.pick().how()).contains("lap 2 of 3 whole laps taken, as asked");
    }

    /** Of six laps of 40 s and less, 1 s from one to the next, 5 % of 35.75 s leave one beside the fastest. */
    @Test
    void lapsAsFastAsTheOnePickedArePooledWithItUnlessOneIsAskedFor() {
        List<SurveyPoint> points = driven(0.25, 5.75);
        double[] times = times(0.25, points.size());
        Survey pooled =
                EventLaps.pick(Shapes.plan(points), times, OptionalInt.empty()).survey();
        assertThat(pooled.otherLaps()).hasSize(1);
        assertThat(pooled.otherLaps().get(0).get(0).distanceTo(pooled.points().get(0)))
                .isLessThan(0.01);
        assertThat(EventLaps.pick(Shapes.plan(points), times, OptionalInt.of(2))
                        .survey()
                        .otherLaps())
                .isEmpty();
        // Without times all are alike, and three are enough.
        assertThat(pick(points, OptionalInt.empty()).survey().otherLaps()).hasSize(3);
    }

    @Test
    void aLapThatIsNotThereIsRefused() {
        assertThatThrownBy(() -> pick(driven(0.25, 3.75), OptionalInt.of(4)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("there is no lap 4; 3 whole laps are there");
        assertThatThrownBy(() -> pick(driven(0, 0.99), OptionalInt.of(2)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("there is no lap 2; one whole lap is there");
    }

    @Test
    void wayInAndOutBesideTheCircuitBelongsToNoLap() {
        List<SurveyPoint> points = new ArrayList<>();
        // From a paddock 120 m below the straight, and back to it.
        for (int i = 0; i < 30; i++) {
            points.add(SurveyPoint.plan(-60 + 2 * i, -120 + 4 * i));
        }
        points.addAll(driven(0, 2.4));
        for (int i = 0; i < 20; i++) {
            SurveyPoint last = points.get(points.size() - 1);
            points.add(SurveyPoint.plan(last.x() - 3, last.y() - 3));
        }
        EventLaps.OfSurvey found = pick(points, OptionalInt.empty());
        assertThat(found.pick().count()).isEqualTo(2);
        assertThat(length(found.survey())).isCloseTo(LAP, within(0.1));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void errorsOfTheReceiverDoNotMakeLaps(long seed) {
        EventLaps.OfSurvey found = pick(Shapes.noisy(driven(0.1, 4.6), 1.0, seed), OptionalInt.empty());
        assertThat(found.pick().count()).isEqualTo(4);
        // Noise of 1 m lengthens by the deviation σ sqrt(h ∫κ² ds) = sqrt(2.8 · 0.079) = 0.5 m; five of them.
        assertThat(length(found.survey())).isCloseTo(LAP, within(2.5));
    }

    @Test
    @Tag("heavy")
    void driftOfTheReceiverIsSpreadOverTheLap() {
        List<SurveyPoint> points = new ArrayList<>();
        List<SurveyPoint> driven = driven(0.25, 3.75);
        for (int i = 0; i < driven.size(); i++) {
            SurveyPoint p = driven.get(i);
            points.add(SurveyPoint.plan(p.x() + 3.0 * i / STEPS, p.y()));
        }
        EventLaps.OfSurvey found = pick(points, OptionalInt.empty());
        // 3 m a lap to the east; the gate lies on a half circle, across which part of it shows.
        assertThat(found.drift()).isBetween(1.0, 3.5);
        assertThat(SurveyImport.of("lap", found.survey(), ImportChoices.circuit())
                        .report()
                        .warnings())
                .isEmpty();
    }

    @Test
    void aRoadBackBesideTheRoadOutIsNoLap() {
        // A long hairpin course, 12 m from lane to lane, surveyed once with errors.
        List<SurveyPoint> points =
                Shapes.noisy(Shapes.sampled(600, 800 + 12 * Math.PI, s -> Shapes.stadium(400, 6, s)), 0.5, 7);
        assertThat(pick(points, OptionalInt.empty()).pick()).isNull();
    }

    @Test
    void anOverlapOfTheEndsIsCutOff() {
        EventLaps.OfSurvey found = pick(driven(0, 1.03), OptionalInt.empty());
        assertThat(found.pick().count()).isEqualTo(1);
        assertThat(length(found.survey())).isCloseTo(LAP, within(0.1));
    }

    @Test
    void ofALogTheFirstAndLastLapAreDroppedIfTheyAreShorter() {
        List<LapPick.RecordedLap> laps = new ArrayList<>();
        double[] lengths = {300, 1000, 1003, 998, 500};
        for (int k = 0; k < lengths.length; k++) {
            laps.add(new LapPick.RecordedLap(
                    new LoggedLap(new double[] {0, lengths[k]}, new double[2], new double[2]), 50 - k));
        }
        LapPick.OfLog found = LapPick.ofLog(laps, OptionalInt.empty());
        assertThat(found.pick().how()).isEqualTo("lap 3 of 3 whole laps taken, the fastest, 47.00 s");
        assertThat(found.log().distance()).containsExactly(0, 998);
    }
}
