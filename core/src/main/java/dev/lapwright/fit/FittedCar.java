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
 * Car with fitted values, in a form that its document can hold. Each quantity of the document moves by as
 * much as the car as set up must, and so does whatever sets that quantity outright, an adjustment that gives it a value
 * instead of a change. Then every adjustment has its old effect about the new value, the standards still describe the
 * document, and the car set as it was driven carries exactly the fitted values. A setting of a fitted quantity by its
 * own name goes into the document.
 */
final class FittedCar {
    private FittedCar() {}

    /**
     * The car with quantities moved.
     *
     * @param car as set up
     * @param shifts of quantities, in their units
     * @throws dev.lapwright.fault.InvalidValueException if a quantity leaves its range, at either end of an adjustment
     *     too
     */
    static Car moved(Car car, Map<Quantity, Double> shifts) {
        Car document = car.document();
        Map<String, Double> settings = new LinkedHashMap<>(car.settings());
        shifts.keySet().forEach(quantity -> settings.remove(quantity.path()));
        Car asSet = set(document, settings);
        Map<Quantity, Double> values = new EnumMap<>(document.quantities());
        Map<String, Double> byName = new LinkedHashMap<>();
        shifts.forEach((quantity, shift) -> {
            double change = shift + (car.value(quantity) - asSet.value(quantity));
            values.merge(quantity, change, Double::sum);
            byName.put(quantity.path(), change);
        });
        List<Adjustment> adjustments = new ArrayList<>();
        document.adjustments().forEach(adjustment -> adjustments.add(moved(adjustment, byName)));
        return set(rebuilt(document, document.name(), document.description(), values, adjustments), settings);
    }

    private static Car set(Car document, Map<String, Double> settings) {
        return settings.isEmpty() ? document : document.with(new Setup("", settings));
    }

    private static Adjustment moved(Adjustment adjustment, Map<String, Double> shifts) {
        List<Effect> effects = adjustment.effects().stream()
                .map(effect -> moved(effect, shifts.getOrDefault(effect.quantity(), 0.0)))
                .toList();
        return new Adjustment(
                adjustment.name(),
                adjustment.label(),
                adjustment.unit(),
                adjustment.range(),
                effects,
                adjustment.formerNames());
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
                        adjustments)
                .withModelsOf(document)
                .doubting(document.doubt());
    }
}
