package dev.lapwright.study.optimise;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.ride.AxleEnd;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Choice of the adjustments to search, and why the others are left alone.
 *
 * @param axes to search
 * @param leftAlone and why
 */
record SearchedAdjustments(List<OptimisationResult.Axis> axes, List<OptimisationResult.LeftAlone> leftAlone) {
    private static final String LESS_OR_MORE = "one end is always faster; the event or the fuel needed decides";
    private static final String PRESSURE = "tyres and their maker decide; set it from measured temperatures";
    private static final String TOE = "the lap model knows only what toe costs, not what it is good for";
    private static final String BRAKES = "the lap model brakes without locking a wheel; stability decides";
    private static final String UNSEEN = "the lap model does not see it; how the car feels decides";

    private static final String OVERRUN = "a lap time says little of what it does for stability; the driver decides";

    /** Quantities whose adjustments are searched only when somebody names them. */
    private static final Map<String, String> DELICATE = delicate();

    private static Map<String, String> delicate() {
        Map<String, String> reasons = new LinkedHashMap<>();
        reasons.put(Quantity.FUEL_MASS.path(), LESS_OR_MORE);
        reasons.put(Quantity.MASS.path(), LESS_OR_MORE);
        reasons.put(Quantity.POWER_SCALE.path(), LESS_OR_MORE);
        reasons.put(Quantity.COMPOUND_GRIP.path(), LESS_OR_MORE);
        reasons.put(Quantity.HOT_PRESSURE_FRONT.path(), PRESSURE);
        reasons.put(Quantity.HOT_PRESSURE_REAR.path(), PRESSURE);
        reasons.put(Quantity.TYRE_TEMPERATURE.path(), PRESSURE);
        reasons.put(Quantity.BRAKE_FRONT_SHARE.path(), BRAKES);
        reasons.put(Quantity.TOE_FRONT.path(), TOE);
        reasons.put(Quantity.TOE_REAR.path(), TOE);
        reasons.put(Quantity.COAST_LOCK_FRONT.path(), OVERRUN);
        reasons.put(Quantity.COAST_LOCK_REAR.path(), OVERRUN);
        for (AxleEnd end : AxleEnd.values()) {
            end.dampers().forEach(quantity -> reasons.put(quantity.path(), UNSEEN));
        }
        return reasons;
    }

    /**
     * @param named adjustments to search; empty for all but the delicate ones
     * @throws InvalidValueException for an unknown name, one given twice, or if nothing is left to search
     */
    static SearchedAdjustments of(Car car, List<String> named) {
        Set<String> wanted = new HashSet<>();
        for (String name : named) {
            car.adjustment(name);
            if (!wanted.add(name)) {
                throw new InvalidValueException(name, "it is to be searched twice", "name each adjustment once");
            }
        }
        List<OptimisationResult.Axis> axes = new ArrayList<>();
        List<OptimisationResult.LeftAlone> kept = new ArrayList<>();
        for (Adjustment adjustment : car.adjustments()) {
            String reason = reasonToKeep(adjustment, wanted);
            if (reason.isEmpty()) {
                axes.add(new OptimisationResult.Axis(adjustment.name(), adjustment.legalSettings()));
            } else {
                kept.add(new OptimisationResult.LeftAlone(adjustment.name(), reason));
            }
        }
        if (axes.isEmpty()) {
            throw new InvalidValueException(
                    "optimisation",
                    car.adjustments().isEmpty()
                            ? "this car has no adjustments"
                            : "no adjustment to search has more than one setting",
                    "give the car's document adjustments with a range, or name others to search");
        }
        return new SearchedAdjustments(axes, kept);
    }

    /** Those of a car that are left alone where none is named. */
    static List<OptimisationResult.LeftAlone> keptUnnamed(Car car) {
        List<OptimisationResult.LeftAlone> kept = new ArrayList<>();
        for (Adjustment adjustment : car.adjustments()) {
            String reason = reasonToKeep(adjustment, Set.of());
            if (!reason.isEmpty()) {
                kept.add(new OptimisationResult.LeftAlone(adjustment.name(), reason));
            }
        }
        return kept;
    }

    private static String reasonToKeep(Adjustment adjustment, Set<String> wanted) {
        if (!wanted.isEmpty() && !wanted.contains(adjustment.name())) {
            return "not named";
        }
        if (adjustment.legalSettings().size() < 2) {
            return "it has one legal setting";
        }
        if (wanted.isEmpty()) {
            for (Effect effect : adjustment.effects()) {
                String reason = DELICATE.get(effect.quantity());
                if (reason != null) {
                    return reason;
                }
            }
        }
        return "";
    }
}
