package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * An upshift that is soon undone is left out where that is faster. The reference is a car without the upper gear: on a lap whose
 * spells in second gear are two straights alike, holding first there is to drive that car.
 */
class HeldGearsTest {
    /** On the lap time, s: steps are split at the shift speed of the gear that the other car does not have. */
    private static final double SPLITS = 2e-6;

    /** Shift times, s: from none to one that costs far more than any gear is worth. */
    private static final double[] SHIFTS = {0, 0.02, 0.04, 0.08, 0.16, 0.32, 0.64};

    /** The car reaches its shift speed on the straights, not by much. */
    private final LapSolver solver = LapSolver.on(new SegmentPath(
                    List.of(
                            Segment.straight(90),
                            Segment.arc(Math.PI * 25, 25),
                            Segment.straight(90),
                            Segment.arc(Math.PI * 25, 25)),
                    true,
                    5)
            .closedTrack("two hairpins", 1e-3));

    private static Car car(double shiftTime, double... ratios) {
        Car car = TestCars.winged(Map.of(Quantity.SHIFT_TIME, shiftTime, Quantity.FINAL_DRIVE, 2.8));
        return Car.of(
                "held", "", car.quantities(), Map.of(), ratios, car.torqueCurve(), PowerCorrection.NONE, List.of());
    }

    private double lapTime(double shiftTime, double... ratios) {
        return solver.lapTime(Vehicle.of(car(shiftTime, ratios), Conditions.STANDARD));
    }

    @Test
    void theDriverDoesWhatIsFaster() {
        double alone = lapTime(0, 3.2);
        double[] laps = Arrays.stream(SHIFTS)
                .map(shiftTime -> lapTime(shiftTime, 3.2, 2.3))
                .toArray();
        assertThat(laps[0]).isLessThan(alone - 5e-3);
        assertThat(laps).isSorted();
        assertThat(laps[1]).isGreaterThan(laps[0] + 1e-3);
        assertThat(laps[SHIFTS.length - 1]).isCloseTo(alone, within(SPLITS));
        assertThat(laps[SHIFTS.length - 2]).isCloseTo(alone, within(SPLITS));
    }

    @Test
    void thenTheLapKnowsOneGear() {
        Lap held = solver.solve(Vehicle.of(car(0.64, 3.2, 2.3), Conditions.STANDARD));
        assertThat(held.gearsUsed()).containsExactly(1);
        Lap shifted = solver.solve(Vehicle.of(car(0.01, 3.2, 2.3), Conditions.STANDARD));
        assertThat(shifted.gearsUsed()).containsExactly(1, 2);
    }

    /** Between two hairpins the car shifts into third on either side of a bend, and comes back into second for that. */
    @Test
    void aGearThatIsWorthNoShiftIsLeftAloneOnEitherSideOfABend() {
        List<Segment> half = List.of(
                Segment.straight(50),
                Segment.arc(0.4 * 45, 45),
                Segment.straight(50),
                Segment.arc((Math.PI - 0.4) * 15, 15));
        LapSolver kinked = LapSolver.on(
                new SegmentPath(Stream.concat(half.stream(), half.stream()).toList(), true, 5)
                        .closedTrack("two bends and two hairpins", 1e-3));
        Car two = car(0.25, 3.2, 2.8).with(Quantity.FINAL_DRIVE, 3.6);
        Car three = car(0.25, 3.2, 2.8, 2.6).with(Quantity.FINAL_DRIVE, 3.6);
        double without = kinked.lapTime(Vehicle.of(two, Conditions.STANDARD));
        assertThat(kinked.lapTime(Vehicle.of(three, Conditions.STANDARD))).isLessThan(without + SPLITS);
        // Without the cost of shifts it would be used.
        assertThat(kinked.lapTime(Vehicle.of(three.with(Quantity.SHIFT_TIME, 0), Conditions.STANDARD)))
                .isLessThan(kinked.lapTime(Vehicle.of(two.with(Quantity.SHIFT_TIME, 0), Conditions.STANDARD)) - 1e-3);
    }
}
