package dev.lapwright.doubt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Corner;
import dev.lapwright.track.RoadDoubt;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.Test;

/** Roads that one may be, against what their factors do to curvature, grip and laps. */
class PlausibleRoadsTest {
    private static final OptionalDouble NONE = OptionalDouble.empty();
    private static final Track OVAL = StudyCars.oval(300, 60);

    private static List<Corner> corners(Track track) {
        return track.stations(StationSpacing.DEFAULT).corners();
    }

    private static double[] only(PlausibleRoads roads, String title, double value) {
        double[] draw = new double[roads.unknowns().size()];
        draw[place(roads, title)] = value;
        return draw;
    }

    private static int place(PlausibleRoads roads, String title) {
        return roads.unknowns().stream().map(Unknown::title).toList().indexOf(title);
    }

    private static double bend(Track road, Corner corner) {
        return road.pointAt(corner.apex()).curvature();
    }

    private static Track knownTo(Track track, double deviation, double length) {
        double[] alike = new double[track.points().size()];
        Arrays.fill(alike, deviation);
        return track.withCurvatureDeviation(alike).doubting(RoadDoubt.NONE.over(length));
    }

    @Test
    void eachCornerIsOffByItselfAndLiesWhereItDid() {
        PlausibleRoads roads = PlausibleRoads.of(OVAL.doubting(new RoadDoubt(OptionalDouble.of(3), NONE, NONE, NONE)));
        Track off = roads.road(only(roads, "curvature of T2", 1));
        Corner first = corners(OVAL).get(0);
        Corner second = corners(OVAL).get(1);
        // A lognormal factor whose deviation is 3 %, at one deviation: exp √ln(1 + 0.03²).
        double factor = Math.exp(Math.sqrt(Math.log1p(9e-4)));
        assertThat(bend(off, second) / bend(OVAL, second)).isEqualTo(factor, within(1e-12));
        assertThat(bend(off, first)).isEqualTo(bend(OVAL, first));
        assertThat(corners(off)).isEqualTo(corners(OVAL));
        assertThat(off.length()).isEqualTo(OVAL.length());
    }

    @Test
    void theGripOfEachCornerIsOffByItself() {
        PlausibleRoads roads = PlausibleRoads.of(OVAL.doubting(new RoadDoubt(NONE, NONE, OptionalDouble.of(5), NONE)));
        Track off = roads.road(only(roads, "grip of the road in T1", -1));
        double factor = Math.exp(-Math.sqrt(Math.log1p(25e-4)));
        assertThat(off.pointAt(corners(OVAL).get(0).apex()).grip()).isEqualTo(factor, within(1e-12));
        assertThat(off.pointAt(corners(OVAL).get(1).apex()).grip()).isEqualTo(1);
    }

    @Test
    void ofABandACornerKnowsItsMeanAsWellAsSoManyPieces() {
        // 60 m of radius and a corner longer than the 30 m that are felt: 0.001 · 60 · √(7.5/30) is 3 %.
        PlausibleRoads roads = PlausibleRoads.asStated(knownTo(OVAL, 1e-3, 7.5));
        assertThat(roads.unknowns()).hasSize(6).noneMatch(Unknown::isAssumed);
        assertThat(size(roads, "curvature of T1")).isEqualTo(3, within(1e-9));
        assertThat(size(roads, "curvature of T2")).isEqualTo(3, within(1e-9));
        // Pieces that know nothing of each other spread alike over Legendre polynomials, whose mean squares are 1/(2n +
        // 1).
        assertThat(size(roads, "curvature of T1, exit over entry")).isEqualTo(3 * Math.sqrt(3), within(1e-9));
        assertThat(size(roads, "curvature of T1, ends over middle")).isEqualTo(3 * Math.sqrt(5), within(1e-9));
        // Errors that go together for longer than is felt shrink no more: 6 %; a corner keeps its shape.
        PlausibleRoads together = PlausibleRoads.asStated(knownTo(OVAL, 1e-3, 3000));
        assertThat(size(together, "curvature of T1")).isEqualTo(6, within(1e-9));
        assertThat(size(together, "curvature of T1, exit over entry")).isEqualTo(0.6 * Math.sqrt(3), within(1e-9));
    }

    private static double size(PlausibleRoads roads, String title) {
        return roads.unknowns().get(place(roads, title)).size();
    }

    /** Errors of a corner's shape leave how far it turns alone where its curvature is even, to the first order. */
    @Test
    void aCornerOffInShapeTurnsAsFar() {
        List<TrackPoint> points = new ArrayList<>();
        for (int i = 0; i <= 2000; i++) {
            double place = OVAL.length() * i / 2000;
            points.add(TrackPoint.flat(place, OVAL.pointAt(place).curvature()));
        }
        Track oval = Track.closed("oval", points);
        PlausibleRoads roads = PlausibleRoads.asStated(knownTo(oval, 1e-4, 7.5));
        Corner corner = corners(oval).get(0);
        // The polynomials half way from the middle to the exit: x, and (3 x² - 1)/2 at x = 1/2.
        Map<String, Double> shapes = Map.of(", exit over entry", 0.5, ", ends over middle", -0.125);
        shapes.forEach((shape, there) -> {
            Track off = roads.road(only(roads, "curvature of T1" + shape, 1));
            // 0.3 % and √5 times that: of the second order are 2e-5.
            assertThat(turned(off, corner) / turned(oval, corner)).isEqualTo(1, within(1e-4));
            double place = corner.entry() + 0.75 * (corner.exit() - corner.entry());
            double factor = off.pointAt(place).curvature() / oval.pointAt(place).curvature();
            double size = 1e-2 * size(roads, "curvature of T1" + shape);
            // Points stand half a metre apart.
            assertThat(Math.log(factor)).isEqualTo(there * Math.sqrt(Math.log1p(size * size)), within(0.05 * size));
        });
    }

    private static double turned(Track track, Corner corner) {
        int pieces = 4000;
        double step = (corner.exit() - corner.entry()) / pieces;
        double turned = 0;
        for (int i = 0; i < pieces; i++) {
            turned += step * track.pointAt(corner.entry() + (i + 0.5) * step).curvature();
        }
        return turned;
    }

    @Test
    void aRoadOfWhichNothingIsStatedIsAsItsDocumentHasIt() {
        assertThat(PlausibleRoads.asStated(OVAL).unknowns()).isEmpty();
        PlausibleRoads roads = PlausibleRoads.of(OVAL);
        Track same = roads.road(new double[roads.unknowns().size()]);
        assertThat(same.points()).isEqualTo(OVAL.points());
        assertThat(roads.unknowns()).allMatch(Unknown::isAssumed);
    }

    @Test
    void aRoadWithoutCornersHasNoUnknowns() {
        assertThat(PlausibleRoads.of(StudyCars.straight(400)).unknowns()).isEmpty();
    }

    /** Between corners of different factors the factor changes without a jump, round the start as well. */
    @Test
    void factorsChangeEvenlyFromCornerToCorner() {
        Track moved = OVAL.startingAt(200);
        PlausibleRoads roads = PlausibleRoads.of(moved);
        double[] draw = new double[roads.unknowns().size()];
        draw[place(roads, "grip of the road in T1")] = 2;
        draw[place(roads, "grip of the road in T2")] = -2;
        List<TrackPoint> points = roads.road(draw).points();
        assertThat(points.get(0).grip()).isEqualTo(points.get(points.size() - 1).grip());
        double whole = 4 * Math.sqrt(Math.log1p(4e-4));
        for (int i = 1; i < points.size(); i++) {
            double step = points.get(i).s() - points.get(i - 1).s();
            double change =
                    Math.abs(Math.log(points.get(i).grip() / points.get(i - 1).grip()));
            // Over a straight of 300 m at least, even where points are far apart.
            assertThat(change).isLessThanOrEqualTo(whole * Math.max(step, 1e-9) / 250);
        }
    }

    /**
     * On a line the width counts: the lap on a line found with 0.2 m more margin on each side, which leaves 0.4 m less, is as much slower as one
     * deviation of the width makes it, within a factor of two (the power is that of whole circuits; one of two corners need not have it).
     */
    @Test
    void lessWidthMakesALapSlowerAsALineFoundWithMoreMarginDoes() {
        Car car = PlainCar.ofMass(1000).friction(1.4).drag(0.5).force(6000).car();
        Track road = StudyCars.circuit();
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        LineChoices choices = LineChoices.DEFAULT;
        Track line = LineSearch.of(road, car, choices).smoothest().driven();
        Track narrow = LineSearch.of(road, car, choices.withMargin(choices.marginLeft() + 0.2))
                .smoothest()
                .driven();
        assertThat(line.isLine()).isTrue();
        PlausibleRoads roads = PlausibleRoads.of(line);
        Track off = roads.road(only(roads, DoubtClass.WIDTH.title(), -1));
        double base = LapSolver.on(line).lapTime(vehicle);
        double found = LapSolver.on(narrow).lapTime(vehicle) - base;
        double drawn = LapSolver.on(off).lapTime(vehicle) - base;
        assertThat(found).isPositive();
        assertThat(drawn / found).isBetween(0.5, 2.0);
        assertThat(place(PlausibleRoads.of(road), DoubtClass.WIDTH.title())).isNegative();
    }

    @Test
    void drawnCurvaturesHaveTheDeviationStated() {
        PlausibleRoads roads = PlausibleRoads.of(OVAL);
        Corner corner = corners(OVAL).get(0);
        double[][] draws = LatinHypercube.normal(400, roads.unknowns().size(), 3);
        double[] bends = Arrays.stream(draws)
                .mapToDouble(draw -> bend(roads.road(draw), corner) / bend(OVAL, corner))
                .toArray();
        // A deviation of 400 draws is known to 3.5 %, a Latin hypercube's better; three of them.
        assertThat(new StandardDeviation().evaluate(bends)).isEqualTo(0.03, within(0.003));
    }
}
