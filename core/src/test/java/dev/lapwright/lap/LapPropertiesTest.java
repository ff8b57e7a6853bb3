package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.torture.Torture;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** Laws that hold for any plausible car on any plausible circuit. */
class LapPropertiesTest {
    /** The solver is smooth to 0.1 ms; a law may be broken by that and no more. */
    private static final double NOISE = 1e-4;
    /** What the project allows the default spacing of stations, s. */
    private static final double SPACING = 1e-3;
    /**
     * To which a lap of about a minute is settled, s: limits of bends are searched to 1e-12 of themselves, and sums over left and right wheels
     * round otherwise in a mirror; ten times that.
     */
    private static final double SETTLED = 1e-9;
    /** Scale of the test engine's power (375 kW) for each kilogram that makes 150 W/kg. */
    private static final double MODERATE_POWER = 4e-4;

    @Torture(cases = 60, percent = 2)
    void moreGripIsNeverSlower(@ForAll("cars") Car car, @ForAll("anyCircuits") Track track) {
        isNoSlower(car, car.with(Quantity.COMPOUND_GRIP, 1.05), track);
    }

    @Torture(cases = 60, percent = 2)
    void morePowerIsNeverSlower(@ForAll("cars") Car car, @ForAll("anyCircuits") Track track) {
        isNoSlower(car, car.with(Quantity.POWER_SCALE, 1.1 * car.value(Quantity.POWER_SCALE)), track);
    }

    private static void isNoSlower(Car car, Car better, Track track) {
        double before = timeOrNaN(car, track);
        Assume.that(!Double.isNaN(before));
        assertThat(time(better, track)).isLessThanOrEqualTo(before + NOISE);
    }

    @Torture(cases = 60, percent = 2)
    void lessMassIsNeverSlowerOnTheFlat(@ForAll("cars") Car any, @ForAll("flatCircuits") Track track) {
        // On the flat: down a hill weight pulls. And on a car of moderate power and drag, driven at the rear: while
        // grip alone
        // sets the pace, the acceleration (μ Z - D)/m of a car whose drag exceeds what its downforce adds grows with
        // mass.
        Car car = any.with(Quantity.POWER_SCALE, MODERATE_POWER * any.value(Quantity.MASS))
                .with(Quantity.DRAG_AREA, 0.5)
                .with(Quantity.FRONT_DRIVE_SHARE, 0)
                .with(Quantity.FRONT_WEIGHT, 47)
                .with(Quantity.FRICTION_X_REAR, 1.5);
        double before = time(car, track);
        Car lighter = car.with(Quantity.MASS, 0.95 * car.value(Quantity.MASS));
        assertThat(time(lighter, track)).isLessThanOrEqualTo(before + NOISE);
    }

    /**
     * Less drag also brakes less, but never so that a lap gets slower, as the drive that drag costs takes grip of the same tyres. With a locking
     * differential it can: the drive that holds a car's speed against its drag also turns the car in, and without it the front gives up
     * sooner (37 of 2000 of these cars, up to 0.03 s).
     */
    @Torture(cases = 60, percent = 2)
    void lessDragIsNeverSlowerWithOpenDifferentials(@ForAll("cars") Car any, @ForAll("flatCircuits") Track track) {
        Car car = any.with(Quantity.POWER_LOCK_FRONT, 0).with(Quantity.POWER_LOCK_REAR, 0);
        isNoSlower(car, car.with(Quantity.DRAG_AREA, 0.9 * car.value(Quantity.DRAG_AREA)), track);
    }

    /** With the wind mirrored too, which like headings is mirrored about the x axis, east: bearings are counted from north. */
    @Torture(cases = 60, percent = 2)
    void mirroredCircuitGivesTheSameTime(
            @ForAll("cars") Car car, @ForAll("anyCircuits") Track track, @ForAll @IntRange(max = 359) int from) {
        Conditions wind = Conditions.STANDARD.with("conditions.windSpeedMps", 6);
        assertThat(timeOrNaN(car, track.mirrored(), wind.with("conditions.windFromDeg", (540 - from) % 360)))
                // The sine and cosine of two bearings are not rounded alike.
                .isCloseTo(timeOrNaN(car, track, wind.with("conditions.windFromDeg", from)), within(NOISE));
        assertThat(timeOrNaN(car, track.mirrored())).isCloseTo(timeOrNaN(car, track), within(SETTLED));
    }

    @Torture(cases = 2, percent = 2)
    void threadsDoNotChangeABit(@ForAll("cars") Car car, @ForAll("anyCircuits") Track track) {
        Assume.that(!Double.isNaN(timeOrNaN(car, track)));
        Sweep sweep = Sweep.of(car, track, Conditions.STANDARD)
                .over(SweepAxis.stepped(Quantity.MASS.path(), 500, 1700, 150))
                .over(SweepAxis.stepped(Quantity.CG_HEIGHT.path(), 0.3, 0.6, 0.1));
        List<SweepResult.Point> alone = sweep.run(StudyRun.onThreads(1)).points();
        assertThat(sweep.run(StudyRun.onThreads(3)).points()).isEqualTo(alone);
    }

    @Torture(cases = 40, percent = 2)
    void startingElsewhereGivesTheSameTime(@ForAll("cars") Car car, @ForAll("anyCircuits") Track track) {
        // The new start splits a cell, and stations near it move: a part of the millisecond that their spacing may
        // leave.
        double before = timeOrNaN(car, track);
        Assume.that(!Double.isNaN(before));
        assertThat(time(car, track.startingAt(0.37 * track.length()))).isCloseTo(before, within(0.5 * SPACING));
    }

    @Torture(cases = 150, percent = 2)
    void anyCarOnAnyRoadGivesALapOrAClearError(@ForAll("wildCars") Car car, @ForAll("anyCircuits") Track track) {
        Lap lap;
        try {
            lap = LapSolver.lap(car, track, Conditions.STANDARD.with("conditions.windSpeedMps", 6));
        } catch (LapwrightException clear) {
            assertThat(clear.problem()).isNotBlank();
            assertThat(clear.remedy()).isNotBlank();
            return;
        }
        assertThat(lap.time()).isFinite().isPositive();
        for (Channel channel : Channel.values()) {
            for (double value : lap.column(channel)) {
                assertThat(value).as(channel.label()).isFinite();
            }
        }
    }

    private static double time(Car car, Track track) {
        return LapSolver.on(track).lapTime(Vehicle.of(car, Conditions.STANDARD));
    }

    private static double timeOrNaN(Car car, Track track) {
        return timeOrNaN(car, track, Conditions.STANDARD);
    }

    private static double timeOrNaN(Car car, Track track, Conditions day) {
        try {
            return LapSolver.on(track).lapTime(Vehicle.of(car, day));
        } catch (LapwrightException none) {
            return Double.NaN;
        }
    }

    @Provide
    Arbitrary<Car> cars() {
        return Combinators.combine(
                        Arbitraries.doubles().between(500, 1800),
                        Arbitraries.doubles().between(0.9, 1.9),
                        Arbitraries.doubles().between(0.4, 1.6),
                        Arbitraries.doubles().between(0, 2),
                        Arbitraries.of(0.0, 40.0, 100.0),
                        Arbitraries.doubles().between(0.3, 1.5),
                        Arbitraries.doubles().between(0, 60),
                        Arbitraries.doubles().between(0, 0.2))
                .as((mass, friction, drag, lift, front, power, lock, shift) -> {
                    Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
                    q.put(Quantity.MASS, mass);
                    q.put(Quantity.FRICTION_Y_FRONT, friction);
                    q.put(Quantity.FRICTION_Y_REAR, friction * 1.03);
                    q.put(Quantity.FRICTION_X_FRONT, friction);
                    q.put(Quantity.FRICTION_X_REAR, friction);
                    q.put(Quantity.DRAG_AREA, drag);
                    // The wing takes 0.1 m² from the front axle.
                    q.put(Quantity.LIFT_AREA_FRONT, 0.1 + 0.45 * lift);
                    q.put(Quantity.LIFT_AREA_REAR, 0.55 * lift);
                    q.put(Quantity.FRONT_DRIVE_SHARE, front);
                    q.put(Quantity.FRONT_WEIGHT, front == 100 ? 60.0 : 47.0);
                    q.put(Quantity.POWER_SCALE, power);
                    q.put(Quantity.POWER_LOCK_REAR, lock);
                    q.put(Quantity.POWER_LOCK_FRONT, lock);
                    q.put(Quantity.SHIFT_TIME, shift);
                    return TestCars.winged(q);
                });
    }

    /** Cars at the edges: hardly any grip or power, tall, short, locked, with a plain friction rhombus or a square one. */
    @Provide
    Arbitrary<Car> wildCars() {
        return Combinators.combine(
                        Arbitraries.doubles().between(60, 5000),
                        Arbitraries.doubles().between(0.05, 3),
                        Arbitraries.doubles().between(0.05, 1.5),
                        Arbitraries.doubles().between(0, 100),
                        Arbitraries.doubles().between(0.02, 3),
                        Arbitraries.of(0.0, 50.0, 100.0),
                        Arbitraries.doubles().between(1, 6),
                        Arbitraries.doubles().between(10, 90))
                .as((mass, friction, height, front, power, lock, exponent, weight) -> {
                    Map<Quantity, Double> q = new EnumMap<>(Quantity.class);
                    q.put(Quantity.MASS, mass);
                    q.put(Quantity.FRICTION_Y_FRONT, friction);
                    q.put(Quantity.FRICTION_Y_REAR, friction);
                    q.put(Quantity.FRICTION_X_FRONT, friction);
                    q.put(Quantity.FRICTION_X_REAR, friction);
                    q.put(Quantity.CG_HEIGHT, height);
                    q.put(Quantity.FRONT_DRIVE_SHARE, front);
                    q.put(Quantity.POWER_SCALE, power);
                    q.put(Quantity.POWER_LOCK_REAR, lock);
                    q.put(Quantity.POWER_LOCK_FRONT, lock);
                    q.put(Quantity.FRICTION_EXPONENT, exponent);
                    q.put(Quantity.FRONT_WEIGHT, weight);
                    return TestCars.winged(q);
                });
    }

    @Provide
    Arbitrary<Track> flatCircuits() {
        return circuits(Arbitraries.just(0.0), Arbitraries.just(0.0));
    }

    @Provide
    Arbitrary<Track> anyCircuits() {
        return circuits(
                Arbitraries.doubles().between(-0.12, 0.12),
                Arbitraries.doubles().between(-0.15, 0.3));
    }

    /** Two like halves that each turn by half a circle close by symmetry, whatever lies between. */
    private static Arbitrary<Track> circuits(Arbitrary<Double> slopes, Arbitrary<Double> banks) {
        return Combinators.combine(
                        Arbitraries.doubles().between(30, 900),
                        Arbitraries.doubles().between(10, 120),
                        Arbitraries.doubles().between(30, 300),
                        Arbitraries.doubles().between(20, 500),
                        Arbitraries.doubles().between(0.3, 1.3),
                        slopes,
                        banks)
                .as((first, radius, wide, second, kink, slope, bank) -> {
                    List<Segment> path = new ArrayList<>();
                    for (int half = 0; half < 2; half++) {
                        path.add(Segment.straight(first).inclined(half == 0 ? slope : -slope, 0));
                        TestTracks.bend(path, 0.4 * radius, radius, Math.PI / 2 + kink, bank);
                        path.add(Segment.straight(second));
                        TestTracks.bend(path, 0.2 * wide, -wide, -kink, 0);
                        TestTracks.bend(path, 0.3 * wide, wide, Math.PI / 2, bank);
                    }
                    return new SegmentPath(path, true, 30).closedTrack("random", 1);
                });
    }
}
