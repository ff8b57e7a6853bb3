package dev.lapwright.car;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * One thing a mechanic can turn on this car: its name, the unit it is turned in, range and step (or a choice among values),
 * and which quantities it moves.
 *
 * @param name short, lower case with hyphens, as in {@code rear-wing}
 * @param label for people, as in "Rear wing"
 * @param unit of the setting
 * @param min least setting
 * @param max greatest setting
 * @param step between legal settings; ignored where there are choices
 * @param standard setting at which the car's document describes the car
 * @param clickSize how much of {@code unit} one click moves, counted from {@code min}; 0 if it has no clicks
 * @param choices the only settings there are, rising, as for a set of final drives; empty if any step is legal
 * @param effects at least one
 * @param formerNames names that setups written earlier call it by; may be empty
 */
public record Adjustment(
        String name,
        String label,
        Unit unit,
        double min,
        double max,
        double step,
        double standard,
        double clickSize,
        List<Double> choices,
        List<Effect> effects,
        List<String> formerNames) {
    public Adjustment {
        if (!name.matches("[a-z][a-z0-9-]*")) {
            throw new InvalidValueException(
                    "adjustment '" + name + "'",
                    "the name is not lower case letters, digits and hyphens",
                    "write it like rear-wing");
        }
        choices = List.copyOf(choices);
        effects = List.copyOf(effects);
        formerNames = List.copyOf(formerNames);
        String place = "adjustment " + name;
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
        if (effects.isEmpty()) {
            throw new InvalidValueException(place, "it moves nothing", "name at least one quantity that it moves");
        }
    }

    /** An adjustment that has always had its name. */
    public Adjustment(
            String name,
            String label,
            Unit unit,
            double min,
            double max,
            double step,
            double standard,
            double clickSize,
            List<Double> choices,
            List<Effect> effects) {
        this(name, label, unit, min, max, step, standard, clickSize, choices, effects, List.of());
    }

    /** The legal settings in rising order: the choices, or min to max by the step. */
    public List<Double> legalSettings() {
        if (!choices.isEmpty()) {
            return choices;
        }
        List<Double> settings = new ArrayList<>();
        int count = (int) Math.floor((max - min) / step + 1e-9);
        for (int i = 0; i <= count; i++) {
            double setting = min + i * step;
            // A range from -0.3 by 0.1 goes through nought, not past it by a rounding error.
            settings.add(Math.abs(setting) < 1e-9 * step ? 0 : setting);
        }
        return settings;
    }

    /** Returns {@code setting} if it lies in the range; the model also takes settings between the legal steps. */
    public double checked(double setting) {
        Check.finite(name, setting);
        double slack = 1e-9 * Math.max(1, Math.abs(max - min));
        if (!(setting >= min - slack && setting <= max + slack)) {
            throw new InvalidValueException(
                    name,
                    withUnit(setting) + " is outside the range of this adjustment",
                    "allowed: " + withUnit(min) + " to " + withUnit(max));
        }
        return Math.max(min, Math.min(max, setting));
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
