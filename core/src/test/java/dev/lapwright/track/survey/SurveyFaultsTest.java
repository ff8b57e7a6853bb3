package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SurveyFaultsTest {
    private static void refuses(List<SurveyPoint> points, String problem) {
        assertThatThrownBy(() -> SurveyImport.of("bad", Shapes.plan(points), ImportChoices.circuit()))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(problem);
    }

    private static List<String> warnings(List<SurveyPoint> points) {
        return SurveyImport.of("odd", Shapes.plan(points), ImportChoices.circuit())
                .report()
                .warnings();
    }

    @Test
    void tooFewPointsAreRefused() {
        refuses(Shapes.circle(100, 7), "7 points at different places are too few");
        refuses(List.of(), "too few");
    }

    @Test
    void eightPointsAreEnough() {
        assertThat(warnings(Shapes.circle(100, 8))).isEmpty();
    }

    @Test
    void pointsOnOneSpotAreRefused() {
        refuses(Shapes.circle(0, 50), "all points lie within 0 m");
    }

    @Test
    void degreesTakenForMetresAreRefusedWithTheReason() {
        refuses(Shapes.circle(0.01, 50), "degrees of longitude and latitude");
    }

    @Test
    void aCoordinateThatIsNoNumberIsRefusedWithItsPlace() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 50));
        points.set(6, SurveyPoint.plan(Double.NaN, 3));
        refuses(points, "point 7: x (m)");
    }

    @Test
    void anOpenOutlineSaidToBeClosedIsRefused() {
        refuses(Shapes.circle(100, 100).subList(0, 60), "the outline is open");
    }

    @Test
    void severalLapsAreRefused() {
        refuses(
                Shapes.noisy(
                        Shapes.sampled(600, 6 * Math.PI, a -> SurveyPoint.plan(100 * Math.cos(a), 100 * Math.sin(a))),
                        0.5,
                        4),
                "goes round 3 times");
    }

    @Test
    void duplicatesAreDroppedAndSaid() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 50));
        points.add(10, points.get(9));
        points.add(11, points.get(9));
        assertThat(warnings(points))
                .containsExactly("dropped 2 points on the spot of the one before, the first of them point 11");
    }

    @Test
    void aRingThatSaysItsFirstPointAgainIsNoFault() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 50));
        points.add(points.get(0));
        assertThat(warnings(points)).isEmpty();
    }

    @Test
    void aSurveyAsLongAsTheEarthsGirthIsRefusedBeforeItIsLaidOut() {
        refuses(Shapes.circle(6.4e6, 400), "the points make a way of 40212 km, longer than 200 km");
    }

    @Test
    void pointsThatChangedPlacesArePutInOrderAndSaid() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 100));
        points.add(30, points.remove(31));
        ImportedTrack found = SurveyImport.of("swapped", Shapes.plan(points), ImportChoices.circuit());
        assertThat(found.report().warnings())
                .singleElement()
                .asString()
                .contains("a point stood behind the one that follows and was put in order: point 32 (");
        // A circle of 100 m; the points are exact, and the cubic between them errs by far less than a metre of radius.
        assertThat(found.report().shape().smallestRadius()).isCloseTo(100, within(1.0));
    }

    @Test
    void aGapInAStraightIsNoAlarm() {
        double length = 2 * Math.PI * 60 + 800;
        List<SurveyPoint> points = new ArrayList<>(Shapes.sampled(400, length, s -> Shapes.stadium(400, 60, s)));
        points.removeIf(p -> p.y() > 119 && Math.abs(p.x()) < 60);
        assertThat(warnings(points)).isEmpty();
    }

    @Test
    void moreCornersThanThePointsCarryAreSaid() {
        List<SurveyPoint> points = Shapes.sampled(
                24,
                2 * Math.PI,
                a -> SurveyPoint.plan(
                        (100 + 20 * Math.cos(6 * a)) * Math.cos(a), (100 + 20 * Math.cos(6 * a)) * Math.sin(a)));
        assertThat(SurveyImport.of(
                                "few",
                                Shapes.plan(points),
                                ImportChoices.circuit().withSmoothing(0))
                        .report()
                        .warnings())
                .anyMatch(w -> w.contains("corners from 24 points are fewer than 5 points for each"));
    }

    @Test
    void aGapIsSaid() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 200));
        points.subList(40, 50).clear();
        // Eleven steps of 3.14 m, by the chord: 2 · 100 m · sin(11 · 0.9°) = 34.4 m.
        assertThat(warnings(points))
                .singleElement()
                .asString()
                .contains("a gap in a bend")
                .contains("34.4 m, where others are 3.1 m apart: behind point 40 (");
    }

    /** An equilateral triangle turns by 120° at each of its corners. */
    @Test
    void kinksAreSaidWithTheirPlaces() {
        List<SurveyPoint> points = Shapes.sampled(90, 3, a -> {
            double from = Math.toRadians(120 * Math.floor(a));
            double to = from + Math.toRadians(120);
            double share = a - Math.floor(a);
            return SurveyPoint.plan(
                    200 * ((1 - share) * Math.cos(from) + share * Math.cos(to)),
                    200 * ((1 - share) * Math.sin(from) + share * Math.sin(to)));
        });
        assertThat(SurveyImport.of(
                                "kinks",
                                Shapes.plan(points),
                                ImportChoices.circuit().withSmoothing(60))
                        .report()
                        .warnings())
                .anyMatch(w ->
                        w.contains("3 kinks of more than 60° from one point to the next, the sharpest 120°: point 1"
                                + " (200, 0), point 31 (-100, 173), point 61 (-100, -173)"));
    }

    @Test
    void aLineTighterThanAnyRoadIsRefusedWithItsPlace() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 400));
        SurveyPoint p = points.get(200);
        points.set(200, SurveyPoint.plan(p.x() * 1.05, p.y()));
        assertThatThrownBy(() -> SurveyImport.of(
                        "spike", Shapes.plan(points), ImportChoices.circuit().withSmoothing(0)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("smooth more: --smoothing 60");
    }

    private static List<String> warnings(double z, double width) {
        List<SurveyPoint> points = new ArrayList<>();
        for (SurveyPoint p : Shapes.circle(100, 100)) {
            points.add(new SurveyPoint(p.x(), p.y(), z * p.x() / 100, width, width));
        }
        return SurveyImport.of("units", new Survey(points, true, true), ImportChoices.circuit())
                .report()
                .warnings();
    }

    @Test
    void elevationsTooSteepForMetresAreSaidToLookLikeFeet() {
        // A sine of amplitude z over 100 m of radius is as steep as z/100.
        assertThat(warnings(30, 5))
                .singleElement()
                .asString()
                .contains("as steep as 30 %")
                .contains("in feet");
        assertThat(warnings(15, 5)).isEmpty();
    }

    @Test
    void widthsTooWideForMetresAreSaidToLookLikeFeet() {
        assertThat(warnings(5, 18))
                .singleElement()
                .asString()
                .contains("36 m wide")
                .contains("looks like feet");
    }

    @Test
    void widthsTooNarrowForACarAreSaid() {
        assertThat(warnings(5, 0.6)).singleElement().asString().contains("1.2 m wide");
    }
}
