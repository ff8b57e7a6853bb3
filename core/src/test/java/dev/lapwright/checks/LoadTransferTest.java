package dev.lapwright.checks;

import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.LateralTransfer;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import org.junit.jupiter.params.ParameterizedTest;

/** Wheel loads at rest, under acceleration, in braking and in a turn. */
class LoadTransferTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("axle-loads.csv")
    void accelerationMovesLoadToTheRearAxle(CheckRow row) {
        double gravityShare = row.number("gravity") / PlainCar.GRAVITY;
        double mass = row.number("mass_kg") * gravityShare;
        double acceleration = row.number("acceleration") / gravityShare;
        PlainCar car = PlainCar.ofMass(mass)
                .axles(row.number("to_front_m"), row.number("to_rear_m"), row.number("cg_height_m"))
                .force(mass * acceleration);
        Lap lap = Runs.drive(car, Roads.straight(10, 100, 0));
        row.verify(Runs.axleLoad(lap, 1, row.quantity().equals("front axle load")));
    }

    /** Wheelbase 4.2 m, centre of gravity 1.8 m behind the front axle and 0.75 m high; brakes shared so that all wheels slide. */
    @ParameterizedTest(name = "{0}")
    @CheckFile("braking-loads.csv")
    void aCarThatSlidesOnAllWheelsLoadsItsFrontOnes(CheckRow row) {
        double friction = 0.40;
        double frontShare = (2.4 + friction * 0.75) / 4.2;
        PlainCar car = PlainCar.ofMass(11_000 / PlainCar.GRAVITY)
                .axles(1.8, 2.4, 0.75)
                .friction(friction)
                .with(Quantity.BRAKE_FRONT_SHARE, 100 * frontShare);
        Lap lap = Runs.drive(car, Roads.straightToSpeed(20, 100, 0, Runs.STANDSTILL));
        int braking = Runs.stationAt(lap, 100) - 1;
        double brakes = lap.value(Channel.BRAKE_FORCE, braking) / 1000;
        row.verify(
                switch (row.quantity()) {
                    // The book's gravity is 9.8.
                    case "deceleration" -> -lap.value(Channel.ACCELERATION, braking) * 9.8 / PlainCar.GRAVITY;
                    case "front wheel load" -> Runs.axleLoad(lap, braking, true) / 2000;
                    case "rear wheel load" -> Runs.axleLoad(lap, braking, false) / 2000;
                    case "front wheel brake force" -> brakes * frontShare / 2;
                    case "rear wheel brake force" -> brakes * (1 - frontShare) / 2;
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** The inputs stand at the head of the file. */
    @ParameterizedTest(name = "{0}")
    @CheckFile("roll-transfer.csv")
    void aTurnMovesLoadThroughRollCentresAndThroughRoll(CheckRow row) {
        double lateral = 0.6 * 9.81;
        double mass = 1280;
        double track = 1.46;
        double arm = 0.365;
        double rollStiffness = 28_650;
        row.verify(
                switch (row.quantity()) {
                    case "front transfer through the roll centre" ->
                        mass * lateral * LateralTransfer.geometric(0.54, 0.07, track);
                    case "rear transfer through the roll centre" ->
                        mass * lateral * LateralTransfer.geometric(0.46, 0.32, track);
                    // An unsprung mass passes its load as if its height were a roll centre that carries all of it.
                    case "front transfer of the unsprung mass" ->
                        140 * lateral * LateralTransfer.geometric(1, 0.280, track);
                    case "rear transfer of the unsprung mass" ->
                        180 * lateral * LateralTransfer.geometric(1, 0.300, track);
                    case "elastic transfer of both axles" ->
                        mass
                                * lateral
                                * (LateralTransfer.elastic(0.7, arm, track) + LateralTransfer.elastic(0.3, arm, track))
                                * rollStiffness
                                / (rollStiffness - mass * 9.81 * arm);
                    case "whole transfer of the sprung mass" -> wholeTransfer(mass, lateral, track, arm);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** Half the difference between outer and inner loads of both axles, in a turn driven at that lateral acceleration. */
    private static double wholeTransfer(double mass, double lateral, double track, double arm) {
        double radius = 100;
        double axisHeight = 0.54 * 0.07 + 0.46 * 0.32;
        PlainCar car = PlainCar.ofMass(mass)
                .axles(0.46 * 2.5, 0.54 * 2.5, axisHeight + arm)
                .track(track)
                .with(Quantity.ROLL_CENTRE_FRONT, 0.07)
                .with(Quantity.ROLL_CENTRE_REAR, 0.32);
        Lap lap = Runs.drive(car, Roads.circle(radius, 0, Math.sqrt(lateral * radius)));
        return (lap.value(Channel.LOAD_FRONT_RIGHT, 5)
                        - lap.value(Channel.LOAD_FRONT_LEFT, 5)
                        + lap.value(Channel.LOAD_REAR_RIGHT, 5)
                        - lap.value(Channel.LOAD_REAR_LEFT, 5))
                / 2;
    }
}
