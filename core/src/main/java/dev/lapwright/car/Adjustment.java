package dev.lapwright.car;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Adjustment, one thing a mechanic can turn on this car: its name, the unit it is turned in, range and step (or a choice among values),
 * and which quantities it moves.
 *
 * @param name short, lower case with hyphens, as in {@code rear-wing}
 * @param label for people, as in "Rear wing"
 * @param unit of the setting
 * @param range settings there are, and the standard one
 * @param effects at least one
 * @param formerNames names that setups written earlier call it by; may be empty
 */
public record Adjustment(
        String name, String label, Unit unit, Range range, List<Effect> effects, List<String> formerNames) {
    /**
     * Settings that an adjustment has, in its unit.
     *
     * @param min least setting
     * @param max greatest setting
     * @param step between legal settings; ignored where there are choices
     * @param standard setting at which the car's document describes the car
     * @param clickSize how much one click moves, counted from {@code min}; 0 if it has no clicks
     * @param choices the only settings there are, rising, as for a set of final drives; empty if any step is legal
     */
    public record Range(double min, double max, double step, double standard, double clickSize, List<Double> choices) {
        public Range {
            choices = List.copyOf(choices);
        }

        /** Any step between two ends, without clicks. */
        public static Range stepped(double min, double max, double step, double standard) {
            return new Range(min, max, step, standard, 0, List.of());
        }

        /** A few settings alone, rising, as a set of final drives. */
        public static Range among(double standard, List<Double> choices) {
            double none = Double.NaN;
            double first = choices.isEmpty() ? none : choices.get(0);
            double last = choices.isEmpty() ? none : choices.get(choices.size() - 1);
            return new Range(first, last, 0, standard, 0, choices);
        }

        private void check(String place) {
            Check.finite(place + " min", min);
            Check.finite(place + " max", max);
            Check.inRange(place + " clickSize", clickSize, 0, 1e6);
            if (!(max >= min)) {
                throw new InvalidValueException(
                        place, "max " + Check.text(max) + " is below min " + Check.text(min), "swap them");
            }
            if (choices.isEmpty()) {
                Check.positive(place + " step", step);
            } else {
                Check.rising(
                        place + " choices", choices.stream().mapToDouble(c -> c).toArray());
            }
            Check.inRange(place + " standard", standard, min, max);
        }
    }

    public Adjustment {
        if (!name.matches("[a-z][a-z0-9-]*")) {
            throw new InvalidValueException(
                    "adjustment '" + name + "'",
                    "the name is not lower case letters, digits and hyphens",
                    "write it like rear-wing");
        }
        effects = List.copyOf(effects);
        formerNames = List.copyOf(formerNames);
        String place = "adjustment " + name;
        range.check(place);
        if (effects.isEmpty()) {
            throw new InvalidValueException(place, "it moves nothing", "name at least one quantity that it moves");
        }
    }

    /** An adjustment that has always had its name. */
    public Adjustment(String name, String label, Unit unit, Range range, List<Effect> effects) {
        this(name, label, unit, range, effects, List.of());
    }

    /** Least setting. */
    public double min() {
        return range.min();
    }

    /** Greatest setting. */
    public double max() {
        return range.max();
    }

    /** Between legal settings; of no account where there are choices. */
    public double step() {
        return range.step();
    }

    /** Setting at which the car's document describes the car. */
    public double standard() {
        return range.standard();
    }

    /** How much one click moves; 0 if it has no clicks. */
    public double clickSize() {
        return range.clickSize();
    }

    /** The only settings there are; empty if any step is legal. */
    public List<Double> choices() {
        return range.choices();
    }

    /** The legal settings in rising order: the choices, or min to max by the step. */
    public List<Double> legalSettings() {
        if (!choices().isEmpty()) {
            return choices();
        }
        List<Double> settings = new ArrayList<>();
        int count = (int) Math.floor((max() - min()) / step() + 1e-9);
        for (int i = 0; i <= count; i++) {
            double setting = min() + i * step();
            // A range from -0.3 by 0.1 goes through nought, not past it by a rounding error.
            settings.add(Math.abs(setting) < 1e-9 * step() ? 0 : setting);
        }
        return settings;
    }

    /** Returns {@code setting} if it lies in the range; the model also takes settings between the legal steps. */
    public double checked(double setting) {
        Check.finite(name, setting);
        double slack = 1e-9 * Math.max(1, Math.abs(max() - min()));
        if (!(setting >= min() - slack && setting <= max() + slack)) {
            throw new InvalidValueException(
                    name,
                    withUnit(setting) + " is outside the range of this adjustment",
                    UnitGuess.remedy(
                            "allowed: " + withUnit(min()) + " to " + withUnit(max()), setting, unit, min(), max()));
        }
        return Math.max(min(), Math.min(max(), setting));
    }

    /** The two legal settings between which {@code setting} lies; empty if it is one of them, or outside the range. */
    public List<Double> neighbours(double setting) {
        List<Double> legal = legalSettings();
        for (int i = 0; i + 1 < legal.size(); i++) {
            double low = legal.get(i);
            double high = legal.get(i + 1);
            // What was converted from another unit may miss a setting by a rounding error.
            double slack = 1e-6 * (high - low);
            if (setting > low + slack && setting < high - slack) {
                return List.of(low, high);
            }
        }
        return List.of();
    }

    /** Dangers of turning it. */
    public Set<Caution> cautions() {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        for (Effect effect : effects) {
            for (Caution caution : Caution.values()) {
                if (caution.concerns(effect.quantity())) {
                    cautions.add(caution);
                }
            }
        }
        return cautions;
    }

    /** A setting with its unit, for people. */
    public String withUnit(double setting) {
        String number = Check.text(setting);
        String symbol = unit.symbolAfter(setting);
        return symbol.isEmpty() ? number : String.format(Locale.ROOT, "%s %s", number, symbol);
    }
}
