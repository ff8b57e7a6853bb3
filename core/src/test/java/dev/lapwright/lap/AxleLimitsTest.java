package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.TurnState.Pedals;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class AxleLimitsTest {
    private static final double GRAVITY = PlainCar.GRAVITY;
    /** Searches end at 1e-11 of the limit; rounding in the sums of loads adds less than as much again. */
    private static final double SEARCH = 1e-9;

    private static final TurnState COASTING = TurnState.level(Pedals.COASTING, 30, 0, 1);

    /** Half the weight on each axle, a centre of gravity above the road, tyres that lose friction with load, no engine drag. */
    private static PlainCar sensitive() {
        return PlainCar.ofMass(1000)
                .with(Quantity.CG_HEIGHT, 0.4)
                .with(Quantity.SENSITIVITY_Y_FRONT, 0.15)
                .with(Quantity.SENSITIVITY_Y_REAR, 0.15)
                .with(Quantity.OVERRUN_DRAG, 0);
    }

    private static AxleMargins margins(PlainCar car, TurnState state) {
        return AxleLimits.of(car.vehicle()).in(state);
    }

    private static AxleMargins margins(Map<Quantity, Double> changes, TurnState state) {
        return AxleLimits.of(Vehicle.of(TestCars.winged(changes), Conditions.STANDARD))
                .in(state);
    }

    @Test
    void aPointMassHoldsFrictionTimesGravityOnBothAxles() {
        PlainCar car = PlainCar.ofMass(1000).friction(1.3).with(Quantity.OVERRUN_DRAG, 0);
        AxleMargins margins = margins(car, COASTING);
        // Closed form mu g, any mechanics text; drag of cornering slows the car but moves no load: its centre lies in
        // the road.
        assertThat(margins.front()).isCloseTo(1.3 * GRAVITY, within(SEARCH));
        assertThat(margins.rear()).isCloseTo(1.3 * GRAVITY, within(SEARCH));
    }

    @Test
    void frictionThatFallsWithLoadIsThatOfEachAxlesOwnLoad() {
        double share = 0.6;
        double sensitivity = 0.2;
        PlainCar car = PlainCar.ofMass(1000)
                .with(Quantity.FRONT_WEIGHT, 100 * share)
                .with(Quantity.SENSITIVITY_Y_FRONT, sensitivity)
                .with(Quantity.SENSITIVITY_Y_REAR, sensitivity)
                .with(Quantity.OVERRUN_DRAG, 0);
        AxleMargins margins = margins(car, COASTING);
        double wheel = 1000 * GRAVITY * share / 2;
        // Closed form: no load moves, so the axle's limit is mu(F) g with F its wheel's load, F0 = 4000 N.
        assertThat(margins.front()).isCloseTo(GRAVITY * (1 - sensitivity * (wheel / 4000 - 1)), within(SEARCH));
    }

    @ParameterizedTest
    @EnumSource(
            value = Pedals.class,
            names = {"HOLDING", "COASTING"})
    void equalAxlesAreNeutral(Pedals pedals) {
        // All-wheel drive in halves; what the drag of cornering moves from axle to axle under no throttle is taken
        // away.
        PlainCar car = sensitive().with(Quantity.CG_HEIGHT, pedals == Pedals.HOLDING ? 0.4 : 0);
        AxleMargins margins = margins(car, TurnState.level(pedals, 30, 0, 1));
        assertThat(margins.understeer()).isCloseTo(0, within(SEARCH));
    }

    @Test
    void movingRollStiffnessForwardGoesAlwaysTowardsUndersteer() {
        // Gillespie, Fundamentals of Vehicle Dynamics (1992), section 6.4: load transfer costs an axle grip.
        double before = Double.NEGATIVE_INFINITY;
        for (double bar = 0; bar <= 2000; bar += 100) {
            double understeer = margins(
                            sensitive().with(Quantity.BAR_FRONT, bar).with(Quantity.BAR_REAR, 2000 - bar), COASTING)
                    .understeer();
            assertThat(understeer).isGreaterThan(before);
            before = understeer;
        }
    }

    @Test
    void movingTheCentreOfPressureBackGoesAlwaysTowardsUndersteer() {
        // Statics: downforce adds grip where it presses.
        double before = Double.NEGATIVE_INFINITY;
        for (double rear = 0; rear <= 2; rear += 0.1) {
            PlainCar car = sensitive().with(Quantity.LIFT_AREA_FRONT, 2 - rear).with(Quantity.LIFT_AREA_REAR, rear);
            double understeer =
                    margins(car, TurnState.level(Pedals.COASTING, 60, 0, 1)).understeer();
            assertThat(understeer).isGreaterThan(before);
            before = understeer;
        }
    }

    @Test
    void movingBrakesForwardGoesTowardsUndersteerInTheEntry() {
        // Friction ellipse: what an axle spends along it lacks across. Limpert, Brake Design and Safety, from memory.
        TurnState braking = TurnState.level(Pedals.BRAKING, 40, -6, 3);
        double before = Double.NEGATIVE_INFINITY;
        for (double share : new double[] {50, 55, 60, 65, 70}) {
            double understeer =
                    margins(Map.of(Quantity.BRAKE_FRONT_SHARE, share), braking).understeer();
            assertThat(understeer).isGreaterThan(before);
            before = understeer;
        }
    }

    @Test
    void rollOverComesWhereBothInnerWheelsLift() {
        AxleMargins margins =
                margins(sensitive().with(Quantity.CG_HEIGHT, 0.8).track(2).friction(3), COASTING);
        // Statics: g t / (2 h); the exercise clay6.com/qa/52661 has the same track and height.
        assertThat(margins.rollOver()).isCloseTo(GRAVITY * 2 / (2 * 0.8), within(1e-6));
        assertThat(margins.tipsFirst()).isTrue();
    }

    /** Where grip limits the lap its lateral acceleration is the study's limit, and nowhere does it lie above. */
    @ParameterizedTest
    @CsvSource({
        "0, 0, 0, 0, 0",
        "0, 40, 25, 0, 0",
        "0, 60, 40, 50, 0",
        "0, 100, 100, 0, 0",
        "100, 0, 0, 0, 0",
        "100, 35, 20, 40, 0",
        "30, 0, 0, 0, 0",
        "35, 30, 20, 30, 20"
    })
    void theFirstLimitIsThatOfTheLap(double front, double power, double coast, double preload, double centre) {
        Map<Quantity, Double> changes = new EnumMap<>(Quantity.class);
        changes.put(Quantity.FRONT_DRIVE_SHARE, front);
        changes.put(Quantity.POWER_LOCK_FRONT, power);
        changes.put(Quantity.POWER_LOCK_REAR, power);
        changes.put(Quantity.COAST_LOCK_FRONT, coast);
        changes.put(Quantity.COAST_LOCK_REAR, coast);
        changes.put(Quantity.PRELOAD_FRONT, preload);
        changes.put(Quantity.PRELOAD_REAR, preload);
        changes.put(Quantity.CENTRE_LOCK, centre);
        changes.put(Quantity.SHIFT_TIME, 0.0);
        changes.put(Quantity.POWER_SCALE, 1.5);
        Vehicle car = Vehicle.of(TestCars.winged(changes), Conditions.STANDARD.with("conditions.windSpeedMps", 6));
        Lap lap = LapSolver.on(TestTracks.circuit()).solve(car);
        AxleLimits limits = AxleLimits.of(car);
        int braking = 0;
        int driving = 0;
        int holding = 0;
        for (int i = 0; i < lap.count(); i++) {
            double lateral = lap.value(Channel.LATERAL_ACCELERATION, i);
            boolean grip = lap.limit(i) == Limit.FRONT_GRIP || lap.limit(i) == Limit.REAR_GRIP;
            boolean steady = grip && lap.value(Channel.SPEED, i) >= lap.value(Channel.SPEED_LIMIT, i) * (1 - 1e-9);
            boolean brakes = lap.limit(i) == Limit.BRAKES && lap.value(Channel.BRAKE_FORCE, i) > 0;
            if (Math.abs(lateral) < 3) {
                continue;
            }
            Pedals pedals = steady ? Pedals.HOLDING : brakes ? Pedals.BRAKING : Pedals.DRIVING;
            double limit = limits.in(TurnState.of(lap, i, lateral > 0, pedals)).limit();
            // Asked for by the project: 1e-6 of it. The solver's searches end at a step of 1e-6.
            double tolerance = 1e-6 * limit;
            assertThat(Math.abs(lateral))
                    .as("at %f m", lap.value(Channel.DISTANCE, i))
                    .isLessThan(limit + tolerance);
            if (grip || brakes) {
                assertThat(Math.abs(lateral))
                        .as("at %f m", lap.value(Channel.DISTANCE, i))
                        .isCloseTo(limit, within(tolerance));
            }
            braking += brakes && !steady ? 1 : 0;
            driving += grip && !steady ? 1 : 0;
            holding += steady ? 1 : 0;
        }
        assertThat(new int[] {braking, driving, holding}).doesNotContain(0);
    }

    @Test
    void mirroredTurnsAreAlike() {
        TurnState left = new TurnState(Pedals.DRIVING, 30, 2, 3, true, 0.3, 9.9, 0.1, 0.95, 2);
        TurnState right = new TurnState(Pedals.DRIVING, 30, 2, 3, false, -0.3, 9.9, 0.1, 0.95, 2);
        // Left and right differ by signs alone, which floating point keeps exactly.
        assertThat(margins(Map.of(), left)).isEqualTo(margins(Map.of(), right));
    }

    @Test
    void onTheOverrunALockedAxleResistsTheTurnByTheLockingValue() {
        double locking = 0.3;
        PlainCar car = sensitive()
                .frontDrive(0)
                .force(3000)
                .with(Quantity.OVERRUN_DRAG, 20)
                .with(Quantity.COAST_LOCK_REAR, 100 * locking);
        AxleMargins margins = margins(car, COASTING);
        // Closed form: the wheels' forces differ by S times the overrun's, over half the track of 1.5 m on each side.
        assertThat(margins.yawMoment()).isCloseTo(locking * margins.force() * 0.75, within(1e-9));
        assertThat(margins.yawMoment()).isNegative();
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 35, 50, 70})
    void moreCoastLockingCuresLiftOffOversteer(double speed) {
        // Common practice, no source.
        TurnState lifted = TurnState.level(Pedals.COASTING, speed, 0, 3);
        double before = Double.NEGATIVE_INFINITY;
        for (double locking : new double[] {0, 15, 30, 45, 60}) {
            double understeer =
                    margins(Map.of(Quantity.COAST_LOCK_REAR, locking), lifted).understeer();
            assertThat(understeer).isGreaterThan(before);
            before = understeer;
        }
    }

    @Test
    void morePowerLockingPushesTheNoseUnderLittleDriveUntilTheWheelsTurnAsOne() {
        // Common practice, no source: in a tight turn the locked axle pushes the car straight on.
        double before = 0;
        for (double locking : new double[] {5, 10, 20, 30, 40}) {
            double moment = momentInATightTurn(locking);
            assertThat(moment).isLessThan(before);
            before = moment;
        }
        // From some lock on they do turn as one, and more of it changes nothing but what the search leaves.
        double asOne = momentInATightTurn(85);
        assertThat(momentInATightTurn(95)).isCloseTo(asOne, within(-1e-6 * asOne));
    }

    /** Under a part of the drive, below the limit. */
    private static double momentInATightTurn(double locking) {
        WheelForces wheels = new WheelForces(
                Vehicle.of(TestCars.winged(Map.of(Quantity.POWER_LOCK_REAR, locking)), Conditions.STANDARD));
        wheels.at(12, 1 / 20.0, 0, GRAVITY, 0, 0, 1, 0);
        wheels.utilisation(2.5, 1);
        return wheels.yawMoment;
    }

    @Test
    void atTheLimitOfTractionPowerLockingLoadsTheOuterWheel() {
        // Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 20, from memory: once the inner wheel outruns
        // the outer.
        AxleMargins margins = margins(Map.of(), TurnState.level(Pedals.DRIVING, 30, 5.5, 3));
        assertThat(margins.force()).isPositive();
        assertThat(margins.yawMoment()).isPositive();
    }

    @Test
    void engineDragUnsettlesARearDrivenCarWhenTheDriverLifts() {
        // Common practice, no source.
        TurnState lifted = TurnState.level(Pedals.COASTING, 25, 0, 2);
        Map<Quantity, Double> open = Map.of(Quantity.OVERRUN_DRAG, 0.0);
        Map<Quantity, Double> dragging = Map.of(Quantity.OVERRUN_DRAG, 30.0);
        assertThat(margins(dragging, lifted).understeer())
                .isLessThan(margins(open, lifted).understeer());
    }

    @Test
    void engineDragSlowsACoastingCarByItsOwnForce() {
        PlainCar without = PlainCar.ofMass(1000).force(3000).with(Quantity.OVERRUN_DRAG, 0);
        PlainCar with = without.with(Quantity.OVERRUN_DRAG, 20);
        // The law as stated: 20 % of the greatest torque at the rev limit of 150 m/s, at 30 m/s by a factor of (1 +
        // 0.2) / 2.
        double force = 3000 * 0.2 * 0.6;
        assertThat(margins(with, COASTING).force()).isCloseTo(-force, within(1e-9));
        // Newton's second law; both lose a little to the drag of cornering, at limits that differ by less than 1 %: 0.1
        // m/s²
        // of it here, so 0.002 covers their difference.
        assertThat(margins(with, COASTING).acceleration()
                        - margins(without, COASTING).acceleration())
                .isCloseTo(-force / 1000, within(0.002));
    }

    @Test
    void anAxleThatItsBrakesTakeWhollyHoldsNothingAcross() {
        PlainCar car =
                PlainCar.ofMass(1000).with(Quantity.BRAKE_FRONT_SHARE, 100).with(Quantity.OVERRUN_DRAG, 0);
        // All brakes on an axle with half the weight: 0.6 g is more than its 0.5 g.
        AxleMargins margins = margins(car, TurnState.level(Pedals.BRAKING, 30, -0.6 * GRAVITY, 1));
        assertThat(margins.front()).isZero();
        assertThat(margins.first()).isEqualTo(Axle.FRONT);
    }

    @ParameterizedTest
    @EnumSource(Pedals.class)
    void limitsAreNumbersForEveryDriveAndLocking(Pedals pedals) {
        for (double share : new double[] {0, 50, 100}) {
            for (double lock : new double[] {0, 40, 99, 100}) {
                for (double speed : new double[] {0.5, 8, 30, 75}) {
                    Map<Quantity, Double> changes = Map.of(
                            Quantity.FRONT_DRIVE_SHARE, share,
                            Quantity.POWER_LOCK_FRONT, lock,
                            Quantity.POWER_LOCK_REAR, lock,
                            Quantity.COAST_LOCK_FRONT, lock,
                            Quantity.COAST_LOCK_REAR, lock);
                    double acceleration = pedals == Pedals.BRAKING ? -7 : 4;
                    AxleMargins margins = margins(changes, TurnState.level(pedals, speed, acceleration, 9));
                    assertThat(margins.front()).isFinite().isNotNegative();
                    assertThat(margins.rear()).isFinite().isNotNegative();
                    assertThat(margins.yawMoment()).isFinite();
                    assertThat(margins.acceleration()).isFinite();
                }
            }
        }
    }
}
