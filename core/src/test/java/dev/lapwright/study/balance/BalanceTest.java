package dev.lapwright.study.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class BalanceTest {
    private static final double STRAIGHT = Double.POSITIVE_INFINITY;

    /** A rear-driven car with load transfer, a limited-slip differential and one gear. */
    private static PlainCar car() {
        return StudyCars.rearDriven()
                .with(Quantity.POWER_LOCK_REAR, 40)
                .with(Quantity.COAST_LOCK_REAR, 20)
                .force(5000);
    }

    private static BalanceResult balance(PlainCar car, Track track) {
        return Balance.of(LapSolver.lap(car.car(), track, Conditions.STANDARD)).run();
    }

    @Test
    void everyCornerAfterAStraightHasAllPhases() {
        BalanceResult result = balance(car(), StudyCars.circuit());
        assertThat(result.corners()).hasSize(4);
        for (BalanceResult.CornerBalance corner : result.corners()) {
            assertThat(corner.phases().stream().map(BalanceResult.PhaseBalance::phase))
                    .containsExactly(BalancePhase.values());
        }
    }

    @Test
    void phasesFollowEachOtherOnTheRoad() {
        for (BalanceResult.CornerBalance corner :
                balance(car(), StudyCars.circuit()).corners()) {
            double liftOff = distance(corner, BalancePhase.LIFT_OFF);
            double entry = distance(corner, BalancePhase.ENTRY);
            double middle = distance(corner, BalancePhase.MIDDLE);
            assertThat(liftOff).isLessThanOrEqualTo(entry);
            assertThat(entry).isLessThan(middle);
            assertThat(middle).isLessThan(distance(corner, BalancePhase.EXIT));
        }
    }

    private static double distance(BalanceResult.CornerBalance corner, BalancePhase phase) {
        return corner.in(phase).orElseThrow().distance();
    }

    @ParameterizedTest
    @EnumSource(BalancePhase.class)
    void leftAndRightAreAlike(BalancePhase phase) {
        // Left and right differ by signs alone, which floating point keeps exactly.
        assertThat(balance(car(), StudyCars.circuit().mirrored()).understeer(phase))
                .isEqualTo(balance(car(), StudyCars.circuit()).understeer(phase));
    }

    @ParameterizedTest
    @ValueSource(doubles = {200, 455, 700})
    void theStartLineMayCutAnyPartOfACorner(double start) {
        BalanceResult here = balance(car(), StudyCars.circuit());
        BalanceResult there = balance(car(), StudyCars.circuit().startingAt(start));
        for (BalancePhase phase : BalancePhase.values()) {
            // A moved start moves stations, 3 m apart at most in curves, from which the states are taken.
            assertThat(there.understeer(phase)).isCloseTo(here.understeer(phase), within(0.05));
            assertThat(there.count(phase)).isEqualTo(here.count(phase));
        }
    }

    @Test
    void aCornerTakenFlatHasNoEntry() {
        List<Segment> path = new ArrayList<>();
        path.add(Segment.straight(100));
        path.add(Segment.clothoid(80, STRAIGHT, 300));
        path.add(Segment.arc(100, 300));
        path.add(Segment.clothoid(80, 300, STRAIGHT));
        Track track = new SegmentPath(path, false, 20).openTrack("flat", 20);
        BalanceResult.CornerBalance corner = balance(car(), track).corners().get(0);
        assertThat(corner.in(BalancePhase.ENTRY)).isEmpty();
        assertThat(corner.in(BalancePhase.EXIT)).isPresent();
    }

    @Test
    void aTrackWithoutACornerIsRefused() {
        Track straight = Track.open("drag strip", 0, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(400, 0)));
        Lap lap = LapSolver.lap(car().car(), straight, Conditions.STANDARD);
        assertThatThrownBy(() -> Balance.of(lap).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("drag strip")
                .hasMessageContaining("no corner");
    }

    /** At a held speed the yaw rate is v κ, and in a clothoid κ grows evenly. */
    @Test
    void turningInAtAHeldSpeedAsksForSpeedSquaredTimesTheChangeOfCurvature() {
        double speed = 15;
        double length = 40;
        double radius = 50;
        List<Segment> path = new ArrayList<>();
        path.add(Segment.straight(50).limited(speed));
        path.add(Segment.clothoid(length, STRAIGHT, radius).limited(speed));
        path.add(Segment.arc(60, radius).limited(speed));
        path.add(Segment.clothoid(length, radius, STRAIGHT).limited(speed));
        path.add(Segment.straight(50).limited(speed));
        Track track = new SegmentPath(path, false, 20).openTrack("slow", speed);
        PlainCar car = car().with(Quantity.YAW_INERTIA, 1500);
        BalanceResult.CornerBalance corner = balance(car, track).corners().get(0);
        double expected = speed * speed / radius / length;
        // Closed form; times between stations are sums, so some digits of a millisecond are lost in rounding.
        assertThat(corner.turningIn().acceleration()).isCloseTo(expected, within(1e-6));
        assertThat(corner.unwinding().acceleration()).isCloseTo(-expected, within(1e-6));
        assertThat(corner.turningIn().moment()).isCloseTo(1500 * expected, within(1e-2));
    }

    @Test
    void aStepOfCurvatureIsSaidToBeOne() {
        List<Segment> path = List.of(Segment.straight(100), Segment.arc(80, 60), Segment.straight(100));
        Track track = new SegmentPath(path, false, 20).openTrack("kink", 10);
        BalanceResult.CornerBalance corner = balance(car(), track).corners().get(0);
        assertThat(corner.turningIn().isStep()).isTrue();
        assertThat(corner.unwinding().isStep()).isTrue();
    }

    @Test
    void roundingAtAJointIsNoStep() {
        // Radii that differ in their last digit put two stations at the joint.
        List<Segment> path = List.of(
                Segment.straight(100),
                Segment.clothoid(35, STRAIGHT, Math.nextUp(85.0)),
                Segment.arc(40, 85),
                Segment.clothoid(35, Math.nextUp(85.0), STRAIGHT),
                Segment.straight(100));
        Track track = new SegmentPath(path, false, 20).openTrack("bend", 10);
        BalanceResult.CornerBalance corner = balance(car(), track).corners().get(0);
        assertThat(corner.turningIn().isStep()).isFalse();
        assertThat(corner.unwinding().isStep()).isFalse();
    }

    @Test
    void theSameLapGivesTheSameBalance() {
        Lap lap = LapSolver.lap(car().car(), StudyCars.circuit(), Conditions.STANDARD);
        assertThat(Balance.of(lap).run()).isEqualTo(Balance.of(lap).run());
    }
}
