package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.air.Wind;
import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Derivatives by the road: closed forms of a circle, and laps solved anew on roads that differ over a stretch. */
class RoadDerivativesTest {
    /**
     * Round a circle v² κ (cos φ - µ sin φ) = g (sin φ + µ cos φ), any mechanics text; so with the length as it is T = L √(κ/(µ g)) on the flat, and
     * dT/dφ = -T (1 + µ²)/(2 µ) there.
     */
    @Test
    void aCircleIsDrivenByGripCurvatureAndBank() {
        double radius = 60;
        double friction = 1.2;
        Track circle = new SegmentPath(arc(radius), true, 1).closedTrack("circle", 1e-6);
        RoadDerivatives road = LapSolver.on(circle)
                .roadDerivatives(PlainCar.ofMass(1000).friction(friction).vehicle());
        double time = 2 * Math.PI * Math.sqrt(radius / (friction * 9.80665));
        // The circle closes over a metre of ease.
        double slack = 2e-4 * time;
        assertThat(road.time()).isCloseTo(time, within(slack));
        assertThat(road.between(RoadDerivatives.Column.GRIP, 0, 400)).isCloseTo(-time / 2, within(slack));
        assertThat(road.between(RoadDerivatives.Column.CURVATURE, 0, 400) / radius)
                .isCloseTo(time / 2, within(slack));
        assertThat(road.between(RoadDerivatives.Column.BANK, 0, 400))
                .isCloseTo(-time * (1 + friction * friction) / (2 * friction), within(slack));
        assertThat(road.by(RoadDerivatives.Column.GRIP)).hasSameSizeAs(road.distances());
    }

    private static List<Segment> arc(double radius) {
        return List.of(Segment.arc(2 * Math.PI * radius, radius));
    }

    /**
     * Stretches that end where no bend is entered, since there the station that the car brakes down to changes from one to the next: stations with a little more
     * and less of a column, as a lap reads them.
     */
    @ParameterizedTest
    @EnumSource(RoadDerivatives.Column.class)
    void stretchesAreWorthWhatLapsSay(RoadDerivatives.Column column) {
        Vehicle car = Vehicle.of(TestCars.winged(), Conditions.STANDARD);
        Stations stations = TestTracks.circuit().stations(StationSpacing.DEFAULT);
        RoadDerivatives road = new LapSolver(stations).roadDerivatives(car);
        double[] s = stations.s();
        int[] eighths = {0, 2, 3, 4, 6, 7, 8};
        double whole = 0;
        for (int part = 0; part + 1 < eighths.length; part++) {
            int from = 1 + eighths[part] * (s.length - 2) / 8;
            int to = eighths[part + 1] * (s.length - 2) / 8;
            // Over ten of its own steps the lap time bends by less than its kinks.
            double step = 10 * column.step;
            double more = time(car, stations, column, step, from, to);
            double less = time(car, stations, column, -step, from, to);
            double difference = (more - less) / (2 * step);
            double derivative = road.between(column, s[from], s[to]);
            whole = Math.max(whole, Math.abs(difference));
            // A hundredth of the greatest yet: what integrals over cells and the laps' own
            // smoothness leave.
            assertThat(derivative).as("part %d", part).isCloseTo(difference, within(0.01 * whole));
        }
    }

    private static double time(
            Vehicle car, Stations stations, RoadDerivatives.Column column, double change, int from, int to) {
        Road road = new Road(stations, Wind.CALM);
        Road moved = new Road(stations, Wind.CALM, column, change);
        Road half = new Road(stations, Wind.CALM, column, 0.5 * change);
        copy(moved, road, 2 * from, 2 * to);
        copy(half, road, 2 * from - 1, 2 * from - 1);
        copy(half, road, 2 * to + 1, 2 * to + 1);
        return new Kernel(road, null).solve(car);
    }

    private static void copy(Road from, Road to, int first, int last) {
        System.arraycopy(
                from.rows, first * Road.STRIDE, to.rows, first * Road.STRIDE, (last - first + 1) * Road.STRIDE);
    }
}
