package dev.lapwright.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Lines whose shape is known in closed form. */
class LineTest {
    private static final PlainCar CAR = PlainCar.ofMass(1000).with(Quantity.WIDTH, 2);
    private static final LineChoices NO_MARGIN = new LineChoices(0, 1);

    private static Track circle(double radius, double side) {
        Segment arc = Segment.arc(2 * Math.PI * radius, radius).wide(side, side);
        return new SegmentPath(List.of(arc), true, 1).closedTrack("circle", 1e-6);
    }

    private static Track stadium() {
        List<Segment> path = List.of(
                Segment.straight(200).wide(6, 6),
                Segment.arc(Math.PI * 40, 40).wide(6, 6),
                Segment.straight(200).wide(6, 6),
                Segment.arc(Math.PI * 40, 40).wide(6, 6));
        return new SegmentPath(path, true, 1).closedTrack("stadium", 1e-6);
    }

    private static LineSearch search(Track road) {
        return LineSearch.of(road, CAR.car(), NO_MARGIN);
    }

    /** ∮κ² ds of a circle of radius r is 2π/r: the widest circle bends least. */
    @Test
    void theSmoothestLineRoundACircleIsTheWidest() {
        Line line = search(circle(50, 5)).smoothest();
        // Half the car's width stays within the edge; the search stands still within a millimetre.
        assertThat(line.offsets()).satisfies(all -> {
            for (double offset : all) {
                assertThat(offset).isCloseTo(-4, within(1e-3));
            }
        });
        // A millimetre of the offset is 2π of the length.
        assertThat(line.length()).isCloseTo(2 * Math.PI * 54, within(0.01));
    }

    /** Elementary geometry: round any closed road once, a lane at a distance d to the inside is 2πd shorter. */
    @Test
    void aLaneIsShorterByTwoPiTimesItsOffset() {
        Track road = stadium();
        LineSearch search = search(road);
        double[] ends = {0, road.length()};
        double middle = search.middle().length();
        for (double offset : new double[] {-4, 2, 4.5}) {
            double lane = search.at(ends, new double[] {offset, offset}).length();
            // Where arcs begin the curvature jumps, which nodes 1 m apart round off: centimetres.
            assertThat(lane).isCloseTo(middle - 2 * Math.PI * offset, within(0.02));
        }
    }

    @Test
    void everyLineTurnsOnceRoundASimpleLoop() {
        LineSearch search = search(stadium());
        for (Line line : List.of(search.middle(), search.smoothest())) {
            Stations stations = line.driven().stations(StationSpacing.DEFAULT);
            // The sum of the circles' curvatures departs from the true angle by terms of h² where the curvature
            // changes.
            assertThat(stations.totalTurning()).isCloseTo(2 * Math.PI, within(1e-3));
        }
    }

    /** On a road banked by φ a place n to the left lies n tan φ lower. */
    @Test
    void whoMovesDownABankedRoadLosesItsHeight() {
        double bank = 0.1;
        Segment straight = Segment.straight(200).inclined(0, bank).wide(6, 6);
        Track road = new SegmentPath(List.of(straight), false, 1).openTrack("bank", 20);
        Line line = search(road).at(new double[] {0, 50, 150, 200}, new double[] {0, 0, 3, 3});
        Stations stations = line.driven().stations(StationSpacing.DEFAULT);
        // The slope is taken at nodes 1 m apart; two kinks of 3 % round off within one of them.
        assertThat(stations.altitudeGap()).isCloseTo(-3 * Math.tan(bank), within(2e-3));
    }

    /**
     * The widest arc from outer edge to outer edge that touches the inner one: R = r + w/(1 - cos(θ/2)) for inner radius r and
     * width w, elementary geometry; 162.4264 m for 60 m, 30 m and a right angle.
     */
    @Test
    void theLineOfTheWidestArcHasItsRadius() {
        double inner = 60;
        double width = 30;
        double radius = inner + width / (1 - Math.cos(Math.PI / 4));
        assertThat(radius).isCloseTo(162.4264, within(5e-5));
        double middle = inner + width / 2;
        double lead = 120;
        // The car is 2 m wide: a road wider by that much leaves its middle the edges of the closed form.
        double side = width / 2 + 1;
        Track road = new SegmentPath(
                        List.of(
                                Segment.straight(lead).wide(side, side),
                                Segment.arc(Math.PI / 2 * middle, middle).wide(side, side),
                                Segment.straight(lead).wide(side, side)),
                        false,
                        1)
                .openTrack("right angle", 10);
        ArcLine arc = new ArcLine(lead, middle, Math.PI / 2, width / 2, radius);
        Line line = search(road).at(arc.distances(road.length()), arc.offsets(road.length()));
        double[] curvature = line.driven().stations(StationSpacing.DEFAULT).curvature();
        double[] sorted = Arrays.stream(curvature).sorted().toArray();
        // Offsets are kept within the road by fractions of a millimetre where the arc touches it, which a spline's
        // second
        // derivative over nodes 1 m apart shows as some 1e-4 1/m; the median of the arc's own stations is free of that.
        double median = Arrays.stream(sorted)
                .filter(k -> k > 0.5 / radius)
                .sorted()
                .toArray()[
                (int) Arrays.stream(sorted).filter(k -> k > 0.5 / radius).count() / 2];
        assertThat(1 / median).isCloseTo(radius, within(0.2));
        // Straight, arc, straight: the arc begins R tan(θ/2) before the corner of the outer edges, lead + (r + w)
        // tan(θ/2)
        // away from the start.
        double outer = (inner + width) * Math.tan(Math.PI / 4);
        double length = 2 * (lead + outer - radius * Math.tan(Math.PI / 4)) + radius * Math.PI / 2;
        assertThat(line.length()).isCloseTo(length, within(0.01));
    }

    @Test
    void theSmoothestLineOfAMirroredRoadIsItsMirrorImage() {
        Track road = stadium();
        double[] left = search(road).smoothest().offsets();
        double[] right = search(road.mirrored()).smoothest().offsets();
        for (int i = 0; i < left.length; i++) {
            // Both stand still within a millimetre.
            assertThat(right[i]).isCloseTo(-left[i], within(2e-3));
        }
    }

    @Test
    void theFastestLineIsNoSlowerThanTheSmoothest() {
        LineSearch search = search(stadium());
        var vehicle = CAR.vehicle();
        double smooth = LapSolver.on(search.smoothest().driven()).lapTime(vehicle);
        double fast = LapSolver.on(search.fastest(vehicle).driven()).lapTime(vehicle);
        assertThat(fast).isLessThan(smooth);
    }

    @Test
    void allNodesKeepTheCarWithinTheRoad() {
        LineSearch search = LineSearch.of(stadium(), CAR.car(), new LineChoices(0.3, 2));
        for (Line line : List.of(search.smoothest(), search.fastest(CAR.vehicle()))) {
            for (double offset : line.offsets()) {
                assertThat(Math.abs(offset)).isLessThanOrEqualTo(6 - 1 - 0.3);
            }
        }
    }

    /** Some lengths, divided into cells and multiplied again, come out a hair longer than they were. */
    @Test
    void roadsOfAnyLengthCanBeDividedIntoNodes() {
        for (int i = 0; i < 200; i++) {
            Segment straight = Segment.straight(100 + Math.PI * i).wide(4, 4);
            Track road = new SegmentPath(List.of(straight), false, 1).openTrack("straight", 20);
            double[] distances = search(road).middle().distances();
            assertThat(distances[distances.length - 1]).isEqualTo(road.length());
        }
    }

    @Test
    void aRoadNarrowerThanTheCarIsRefused() {
        Car wide = CAR.with(Quantity.WIDTH, 3).car();
        assertThatThrownBy(() -> LineSearch.of(circle(50, 1.4), wide, NO_MARGIN))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("the road is 2.8 m wide there, the car 3 m");
    }

    @Test
    void aMarginThatLeavesNoRoomIsRefused() {
        assertThatThrownBy(() -> LineSearch.of(circle(50, 2), CAR.car(), new LineChoices(1, 2)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("the car with its margins 4 m")
                .hasMessageContaining("give a smaller margin");
    }

    @Test
    void offsetsOfAnotherRoadAreRefused() {
        assertThatThrownBy(() -> search(stadium()).at(new double[] {0, 100}, new double[] {0, 0}))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("use a line of this road");
    }
}
