package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

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
    void aGapIsSaid() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 200));
        points.subList(40, 50).clear();
        // Eleven steps of 3.14 m, by the chord: 2 · 100 m · sin(11 · 0.9°) = 34.4 m.
        assertThat(warnings(points))
                .singleElement()
                .asString()
                .contains("a gap")
                .contains("34.4 m behind point 40");
    }

    @Test
    void aKinkIsSaid() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 100));
        SurveyPoint p = points.get(30);
        points.set(30, SurveyPoint.plan(p.x() * 1.08, p.y() * 1.08));
        // The kink is named as read, though the point that makes it is then left out.
        assertThat(SurveyImport.of(
                                "kink",
                                Shapes.plan(points),
                                ImportChoices.circuit().withSmoothing(60))
                        .report()
                        .warnings())
                .anyMatch(w -> w.contains("a kink of more than 60°") && w.contains("at point 31"));
    }

    @Test
    void aLineTighterThanAnyRoadIsRefusedWithItsPlace() {
        List<SurveyPoint> points = new ArrayList<>(Shapes.circle(100, 400));
        SurveyPoint p = points.get(200);
        points.set(200, SurveyPoint.plan(p.x() * 1.05, p.y()));
        assertThatThrownBy(() -> SurveyImport.of(
                        "spike", Shapes.plan(points), ImportChoices.circuit().withSmoothing(0)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("set a longer smoothing");
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
