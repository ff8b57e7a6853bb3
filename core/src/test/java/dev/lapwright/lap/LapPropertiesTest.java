package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.LapwrightException;
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
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Laws that hold for any plausible car on any plausible circuit. */
class LapPropertiesTest {
    /** The solver is smooth to 0.1 ms; a law may be broken by that and no more. */
    private static final double NOISE = 1e-4;
    /** What the project allows the default spacing of stations, s. */
    private static final double SPACING = 1e-3;
    /** Scale of the test engine's power (375 kW) for each kilogram that makes 150 W/kg. */
    private static final double MODERATE_POWER = 4e-4;

    @Property(tries = 60)
    void moreGripIsNeverSlower(@ForAll("cars") Car car, @ForAll("flatCircuits") Track track) {
        double before = time(car, track);
        assertThat(time(car.with(Quantity.COMPOUND_GRIP, 1.05), track)).isLessThanOrEqualTo(before + NOISE);
    }

    @Property(tries = 60)
    void morePowerIsNeverSlower(@ForAll("cars") Car car, @ForAll("flatCircuits") Track track) {
        double before = time(car, track);
        Car stronger = car.with(Quantity.POWER_SCALE, 1.1 * car.value(Quantity.POWER_SCALE));
        assertThat(time(stronger, track)).isLessThanOrEqualTo(before + NOISE);
    }

    @Property(tries = 60)
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

    @Property(tries = 60)
    void lessDragIsNeverSlower(@ForAll("cars") Car any, @ForAll("flatCircuits") Track track) {
        // Drag also brakes: where grip sets the pace all the way round, a car gains by it about what it loses, and may
        // gain
        // more. Not so where power counts for much of the lap.
        Car car = any.with(Quantity.POWER_SCALE, MODERATE_POWER * any.value(Quantity.MASS));
        Lap lap = LapSolver.lap(car, track, Conditions.STANDARD);
        Assume.that(lap.limitShares().getOrDefault(Limit.POWER, 0.0) > 0.4);
        double before = time(car, track);
        Car slippery = car.with(Quantity.DRAG_AREA, 0.9 * car.value(Quantity.DRAG_AREA));
        assertThat(time(slippery, track)).isLessThanOrEqualTo(before + NOISE);
    }

    @Property(tries = 60)
    void mirroredCircuitGivesTheSameTime(@ForAll("cars") Car car, @ForAll("anyCircuits") Track track) {
        assertThat(timeOrNaN(car, track.mirrored())).isEqualTo(timeOrNaN(car, track));
    }

    @Property(tries = 40)
    void startingElsewhereGivesTheSameTime(@ForAll("cars") Car car, @ForAll("flatCircuits") Track track) {
        // The new start splits a cell, and stations near it move: a part of the millisecond that their spacing may
        // leave.
        assertThat(Math.abs(time(car, track.startingAt(0.37 * track.length())) - time(car, track)))
                .isLessThan(0.5 * SPACING);
    }

    @Property(tries = 300)
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
        try {
            return time(car, track);
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
