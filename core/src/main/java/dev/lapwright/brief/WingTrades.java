package dev.lapwright.brief;

import dev.lapwright.aero.Areas;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Vehicle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** Trade-offs of a car's aerodynamics at a circuit. */
final class WingTrades {
    /** Settings looked at across a range, beside where it stands. */
    private static final int ACROSS = 13;

    private static final double PERCENT = 0.01;
    /** What a quantity of the car's aerodynamics begins with. */
    private static final String AERO = "aero.";

    private final BriefLaps laps;
    private final double speed;

    WingTrades(BriefLaps laps) {
        this.laps = laps;
        speed = laps.asItStands().figures().meanSpeed();
    }

    /**
     * One for each adjustment that moves a wing or an area.
     *
     * @throws InvalidValueException if there is none
     */
    List<WingTrade> trades() {
        List<WingTrade> trades = new ArrayList<>();
        for (Adjustment adjustment : laps.car().adjustments()) {
            boolean aero = adjustment.effects().stream()
                    .anyMatch(effect -> effect.quantity().startsWith(AERO));
            if (aero && adjustment.legalSettings().size() > 1) {
                trades.add(trade(adjustment));
            }
        }
        if (trades.isEmpty()) {
            throw new InvalidValueException(
                    "",
                    "no adjustment of this car moves a wing or an aerodynamic area",
                    "list it among the adjustments in the car's document, if there is one");
        }
        return trades;
    }

    private WingTrade trade(Adjustment adjustment) {
        double setting = laps.car().setting(adjustment.name());
        List<Double> legal = adjustment.legalSettings();
        TreeSet<Double> settings = new TreeSet<>(List.of(setting));
        int count = Math.min(ACROSS, legal.size());
        for (int k = 0; k < count; k++) {
            settings.add(legal.get((int) Math.round(k * (legal.size() - 1) / (count - 1.0))));
        }
        return new WingTrade(
                adjustment,
                setting,
                settings.stream().map(value -> choice(adjustment, value)).toList());
    }

    private WingTrade.Setting choice(Adjustment adjustment, double setting) {
        try {
            Lap lap = laps.lap(laps.car().with(adjustment.name(), setting));
            Areas areas = areas(lap.vehicle());
            return new WingTrade.Setting(
                    setting,
                    Optional.of(lap.figures()),
                    Optional.of(BriefLaps.effect(laps.asItStands(), lap)),
                    areas.drag(),
                    areas.liftFront(),
                    areas.liftRear(),
                    "");
        } catch (LapwrightException noLap) {
            double none = Double.NaN;
            return new WingTrade.Setting(
                    setting, Optional.empty(), Optional.empty(), none, none, none, noLap.getMessage());
        }
    }

    private Areas areas(Vehicle vehicle) {
        return vehicle.platformAt(speed).areas();
    }

    /** @throws LapwrightException if a percent more or less leads out of a quantity's range, or to no lap */
    BriefResult.AeroExchange exchange() {
        Areas whole = areas(laps.asItStands().vehicle());
        Car car = laps.car();
        Car slippery = more(car, Quantity.DRAG_AREA, -PERCENT * whole.drag());
        Car pressed = more(
                more(car, Quantity.LIFT_AREA_FRONT, PERCENT * whole.liftFront()),
                Quantity.LIFT_AREA_REAR,
                PERCENT * whole.liftRear());
        Car gripping = more(car, Quantity.COMPOUND_GRIP, PERCENT * car.value(Quantity.COMPOUND_GRIP));
        return new BriefResult.AeroExchange(
                difference(slippery),
                difference(pressed),
                difference(gripping),
                whole.drag(),
                whole.liftFront() + whole.liftRear());
    }

    private static Car more(Car car, Quantity quantity, double change) {
        double wanted = car.value(quantity) + change;
        Car changed = car.with(quantity, wanted);
        if (changed.value(quantity) != wanted) {
            throw new InvalidValueException(
                    quantity.path(),
                    "the setup sets it by an adjustment as well",
                    "leave one of the two out of the setup");
        }
        return changed;
    }

    private double difference(Car car) {
        return laps.lap(car).time() - laps.asItStands().time();
    }
}
