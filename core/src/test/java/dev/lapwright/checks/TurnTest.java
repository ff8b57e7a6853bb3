package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import org.junit.jupiter.params.ParameterizedTest;

/** Turns, flat and banked, and crests: textbook exercises and closed forms, on circles and brows driven by the solver. */
class TurnTest {
    private static final double ANY_SPEED = Double.POSITIVE_INFINITY;

    @ParameterizedTest(name = "{0}")
    @CheckFile("turns.csv")
    void theSpeedOfATurnIsThatOfTheTextbook(CheckRow row) {
        double radius = row.number("radius_m");
        double bank = Math.toRadians(row.number("bank_deg"));
        double gravityShare = row.number("gravity") / PlainCar.GRAVITY;
        row.verify(
                switch (row.quantity()) {
                    case "limit speed" -> {
                        PlainCar car = PlainCar.ofMass(1000).friction(row.number("friction"));
                        yield Runs.freeCircleSpeed(car, radius, bank) * Math.sqrt(gravityShare);
                    }
                    case "roll-over speed" -> rollOverSpeed(row, radius, bank) * Math.sqrt(gravityShare);
                    case "speed without side force" ->
                        Runs.root(v -> lateralAcceleration(radius, bank, v), 20, 80) * Math.sqrt(gravityShare);
                    case "side force" ->
                        row.number("mass_kg") * lateralAcceleration(radius, bank, row.number("speed_mps"));
                    case "friction needed" -> {
                        double speed = row.number("speed_mps") / Math.sqrt(gravityShare);
                        yield Runs.root(
                                mu -> Runs.freeCircleSpeed(PlainCar.ofMass(900).friction(mu), radius, bank) - speed,
                                0.05,
                                0.5);
                    }
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static double rollOverSpeed(CheckRow row, double radius, double bank) {
        // With open differentials the unloaded inner wheels could not even overcome the drag of cornering.
        PlainCar car = PlainCar.ofMass(1000)
                .friction(4)
                .with(Quantity.POWER_LOCK_FRONT, 100)
                .with(Quantity.POWER_LOCK_REAR, 100)
                .track(row.number("track_m"))
                .with(Quantity.CG_HEIGHT, row.number("cg_height_m"));
        Lap lap = Runs.drive(car, Roads.circle(radius, bank, ANY_SPEED));
        assertThat(lap.limitShares()).containsOnlyKeys(Limit.ROLL_OVER);
        return 2 * Math.PI * radius / lap.time();
    }

    /** What the tyres supply across the car at a speed held by rule. */
    private static double lateralAcceleration(double radius, double bank, double speed) {
        PlainCar car = PlainCar.ofMass(1000).friction(4);
        Lap lap = Runs.drive(car, Roads.circle(radius, bank, speed));
        assertThat(lap.value(Channel.SPEED, 5)).as("speed held").isEqualTo(speed);
        return lap.value(Channel.LATERAL_ACCELERATION, 5);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("crests.csv")
    void aCrestUnloadsTheCarAndADipLoadsIt(CheckRow row) {
        double vertical = -1 / row.number("vertical_radius_m");
        row.verify(
                switch (row.quantity()) {
                    case "lift-off speed" -> limitOnBrow(PlainCar.ofMass(1000), 0, vertical);
                    case "limit speed" ->
                        Runs.withoutCorneringDrag(
                                PlainCar.ofMass(1000).friction(row.number("friction")),
                                4,
                                car -> limitOnBrow(car, 1 / row.number("radius_m"), vertical));
                    case "load factor" -> loadFactor(row.number("speed_mps"), vertical);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    private static double limitOnBrow(PlainCar car, double curvature, double vertical) {
        Lap lap = Runs.drive(car, Roads.brow(5, curvature, vertical, ANY_SPEED));
        return lap.value(Channel.SPEED_LIMIT, Runs.stationAt(lap, 10));
    }

    private static double loadFactor(double speed, double vertical) {
        double mass = 1000;
        Lap lap = Runs.drive(PlainCar.ofMass(mass).friction(1), Roads.brow(speed, 0, vertical, speed));
        int level = Runs.stationAt(lap, 10);
        double load = Runs.axleLoad(lap, level, true) + Runs.axleLoad(lap, level, false);
        return load / (mass * PlainCar.GRAVITY);
    }
}
