package dev.lapwright.fit;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Setup;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Makes the car that fitted values describe, so that its document holds them. Each quantity of the document moves by as much
 * as the fit moves the car as set up, and so does whatever sets that quantity outright: an adjustment that gives it a value
 * instead of a change, or a setting of the quantity itself. Then every setting has its old effect about the new value, the
 * adjustments' standards still describe the document, and the car set as it was driven carries exactly the fitted values.
 */
final class FittedCar {
    private FittedCar() {}

    /**
     * The car with quantities moved.
     *
     * @param car as set up
     * @param shifts of quantities, in their units
     * @throws dev.lapwright.fault.InvalidValueException if a quantity leaves its range, at either end of an adjustment too
     */
    static Car moved(Car car, Map<Quantity, Double> shifts) {
        Car document = car.document();
        Map<Quantity, Double> values = new EnumMap<>(document.quantities());
        shifts.forEach((quantity, shift) -> values.merge(quantity, shift, Double::sum));
        Map<String, Double> byName = new LinkedHashMap<>();
        shifts.forEach((quantity, shift) -> byName.put(quantity.path(), shift));
        List<Adjustment> adjustments = new ArrayList<>();
        document.adjustments().forEach(adjustment -> adjustments.add(moved(adjustment, byName)));
        Map<String, Double> settings = new LinkedHashMap<>(car.settings());
        settings.replaceAll((name, value) -> value + byName.getOrDefault(name, 0.0));
        Car moved = rebuilt(document, document.name(), document.description(), values, adjustments);
        return settings.isEmpty() ? moved : moved.with(new Setup("", settings));
    }

    private static Adjustment moved(Adjustment adjustment, Map<String, Double> shifts) {
        List<Effect> effects = adjustment.effects().stream()
                .map(effect -> moved(effect, shifts.getOrDefault(effect.quantity(), 0.0)))
                .toList();
        return new Adjustment(
                adjustment.name(),
                adjustment.label(),
                adjustment.unit(),
                adjustment.min(),
                adjustment.max(),
                adjustment.step(),
                adjustment.standard(),
                adjustment.clickSize(),
                adjustment.choices(),
                effects);
    }

    private static Effect moved(Effect effect, double shift) {
        if (shift == 0) {
            return effect;
        }
        if (effect instanceof Effect.Absolute absolute) {
            return new Effect.Absolute(absolute.quantity(), absolute.offset() + shift, absolute.factor());
        }
        if (effect instanceof Effect.Tabulated table) {
            double[] values = table.values();
            for (int i = 0; i < values.length; i++) {
                values[i] += shift;
            }
            return new Effect.Tabulated(table.quantity(), table.settings(), values);
        }
        return effect;
    }

    /** A document's car under another name. */
    static Car named(Car document, String name, String description) {
        return rebuilt(document, name, description, document.quantities(), document.adjustments());
    }

    private static Car rebuilt(
            Car document, String name, String description, Map<Quantity, Double> values, List<Adjustment> adjustments) {
        Map<Wing, Double> wings = new LinkedHashMap<>();
        document.wings().forEach(w -> wings.put(w, document.value("aero.wings." + w.name() + ".angleDeg")));
        return Car.of(
                name,
                description,
                values,
                wings,
                document.gearRatios(),
                document.torqueCurve(),
                document.powerCorrection(),
                adjustments);
    }
}
