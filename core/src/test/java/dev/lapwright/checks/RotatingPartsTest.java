package dev.lapwright.checks;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.StationSpacing;
import org.junit.jupiter.params.ParameterizedTest;

/** What spins with the road is felt by the engine where power limits, and not by the tyres where grip does. */
class RotatingPartsTest {
    private static PlainCar car(CheckRow row) {
        double front = switch (row.text("layout")) {
            case "front" -> 1;
            case "rear" -> 0;
            case "all" -> 0.5;
            default -> throw new IllegalArgumentException(row.text("layout"));
        };
        return PlainCar.ofMass(row.number("mass_kg"))
                .axles(row.number("to_front_m"), row.number("to_rear_m"), row.number("cg_height_m"))
                .friction(row.number("friction"))
                .frontDrive(front)
                .with(Quantity.WHEEL_INERTIA, row.number("wheel_inertia"))
                .with(Quantity.ENGINE_INERTIA, row.number("engine_inertia"));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("rotating-parts.csv")
    void tyresMoveTheCarAndTheEngineSpinsTheEngine(CheckRow row) {
        PlainCar car = car(row);
        row.verify(
                switch (row.quantity()) {
                    case "acceleration at the limit of grip" -> start(car, 100).value(Channel.ACCELERATION, 0);
                    case "deceleration at the limit of grip" -> deceleration(car);
                    case "acceleration at the limit of power" ->
                        start(car.force(row.number("force_n")), 100).value(Channel.ACCELERATION, 0);
                    case "time at the limit of power" ->
                        start(car.force(row.number("force_n")), row.number("distance_m"))
                                .time();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static Lap start(PlainCar car, double distance) {
        return Runs.drive(car, Roads.straight(0, distance, 0));
    }

    private static double deceleration(PlainCar car) {
        double from = 40;
        double to = 20;
        Runs.Braking braking = Runs.brake(car.vehicle(), from, to, 0, StationSpacing.DEFAULT);
        return (from * from - to * to) / (2 * braking.distance());
    }
}
