package dev.lapwright.study.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

class ComparisonTest {
    /** Sums of some hundred differences of times about a minute: rounding only. */
    private static final double EXACT = 1e-9;

    private static Track oval(double radius) {
        Segment bend = Segment.arc(Math.PI * radius, radius);
        Segment straight = Segment.straight(500);
        return new SegmentPath(List.of(straight, bend, straight, bend), true, 1).closedTrack("oval", 1e-6);
    }

    private static PlainCar car() {
        return PlainCar.ofMass(1000).force(5000).drag(0.5);
    }

    private static Lap lap(PlainCar car) {
        return LapSolver.on(oval(60)).solve(car.vehicle());
    }

    private static Comparison withLessGrip() {
        return Comparison.of(lap(car()), lap(car().friction(0.9)));
    }

    @Test
    void partsAddUpToTheDifferenceInLapTime() {
        Comparison comparison = withLessGrip();
        double sum = comparison.parts().stream()
                .mapToDouble(Comparison.Part::difference)
                .sum();
        assertThat(sum).isCloseTo(comparison.difference(), within(EXACT));
        assertThat(comparison.inCorners() + comparison.onStraights()).isCloseTo(comparison.difference(), within(EXACT));
    }

    @Test
    void sectorsAddUpToTheDifferenceInLapTime() {
        Comparison comparison = withLessGrip();
        assertThat(DoubleStream.of(comparison.bySector()).sum()).isCloseTo(comparison.difference(), within(EXACT));
    }

    @Test
    void causesAddUpToTheDifferenceOfEachPartAndOfTheLap() {
        Comparison comparison = withLessGrip();
        assertThat(sum(comparison.byCause().values())).isCloseTo(comparison.difference(), within(EXACT));
        for (Comparison.Part part : comparison.parts()) {
            assertThat(sum(part.byCause().values())).isCloseTo(part.difference(), within(EXACT));
        }
    }

    private static double sum(Iterable<Double> values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }

    @Test
    void theTraceEndsAtTheDifferenceInLapTime() {
        Comparison comparison = withLessGrip();
        double[] behind = comparison.behind();
        assertThat(behind[0]).isZero();
        assertThat(behind[behind.length - 1]).isEqualTo(comparison.difference());
    }

    @Test
    void aLapComparedWithItselfDiffersNowhere() {
        Comparison comparison = Comparison.of(lap(car()), lap(car()));
        assertThat(comparison.behind()).containsOnly(0);
        assertThat(comparison.parts()).allSatisfy(part -> {
            assertThat(part.difference()).isZero();
            assertThat(part.mainCause()).isEmpty();
        });
    }

    @Test
    void exchangingTheLapsTurnsEverySign() {
        Comparison one = withLessGrip();
        Comparison other = Comparison.of(one.second(), one.first());
        assertThat(other.difference()).isEqualTo(-one.difference());
        for (int k = 0; k < one.parts().size(); k++) {
            assertThat(other.parts().get(k).difference())
                    .isEqualTo(-one.parts().get(k).difference());
        }
    }

    @Test
    void cornersAndStraightsAlternateAndTheOneAcrossTheStartLineIsWhole() {
        // The start line lies where a bend ends: straight, bend, straight, bend.
        List<Comparison.Part> parts = withLessGrip().parts();
        assertThat(parts.stream().map(Comparison.Part::isCorner)).containsExactly(false, true, false, true);
        Track moved = oval(60).startingAt(200);
        LapSolver solver = LapSolver.on(moved);
        List<Comparison.Part> again = Comparison.of(
                        solver.solve(car().vehicle()),
                        solver.solve(car().friction(0.9).vehicle()))
                .parts();
        assertThat(again.stream().map(Comparison.Part::isCorner)).containsExactly(true, false, true, false);
        Comparison.Part across = again.get(3);
        assertThat(across.from()).isGreaterThan(across.to());
        assertThat(across.label()).isEqualTo("T2 to T1");
        // The same road, with other stations: a millisecond a lap is promised, and this is a quarter of it.
        assertThat(across.first().time()).isCloseTo(parts.get(0).first().time(), within(2.5e-4));
    }

    @Test
    void lessGripLosesInCornersByGrip() {
        // Round half a circle at its limit a car takes pi r / sqrt(mu g r): plain mechanics. The bend's ends lie at the
        // corner's, drag of cornering is the same small part in both and one per cent covers it.
        Comparison.Part corner = withLessGrip().parts().get(1);
        double half = Math.PI * 60;
        double one = half / Math.sqrt(PlainCar.GRAVITY * 60);
        double other = half / Math.sqrt(0.9 * PlainCar.GRAVITY * 60);
        assertThat(corner.difference()).isCloseTo(other - one, within(0.01 * (other - one)));
        assertThat(corner.mainCause())
                .hasValueSatisfying(cause -> assertThat(cause).isIn(Limit.FRONT_GRIP, Limit.REAR_GRIP));
    }

    @Test
    void lessPowerLosesOnStraightsByPower() {
        Comparison comparison = Comparison.of(lap(car()), lap(car().with(Quantity.POWER_SCALE, 0.8)));
        assertThat(comparison.onStraights()).isPositive();
        // Corners are held at the limit of grip by both.
        assertThat(comparison.inCorners()).isCloseTo(0, within(0.01 * comparison.onStraights()));
        Comparison.Part straight = comparison.parts().get(0);
        assertThat(straight.mainCause()).hasValue(Limit.POWER);
        assertThat(straight.second().topSpeed()).isLessThan(straight.first().topSpeed());
    }

    @Test
    void aTrackWithoutCornersIsOnePart() {
        Segment circle = Segment.arc(2 * Math.PI * 900, 900);
        Track track = new SegmentPath(List.of(circle), true, 1).closedTrack("ring", 1e-6);
        LapSolver solver = LapSolver.on(track);
        Comparison comparison = Comparison.of(
                solver.solve(car().vehicle()), solver.solve(car().drag(0.6).vehicle()));
        assertThat(comparison.parts()).hasSize(1);
        assertThat(comparison.parts().get(0).label()).isEqualTo("start to end");
    }

    @Test
    void lapsOfTwoTracksAreRefused() {
        Lap small = LapSolver.on(oval(50)).solve(car().vehicle());
        Lap large = lap(car());
        assertThatThrownBy(() -> Comparison.of(small, large))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("compare laps of one track");
    }
}
