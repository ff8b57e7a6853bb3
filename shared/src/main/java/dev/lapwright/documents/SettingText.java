package dev.lapwright.documents;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.NearestWord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A setting as a person writes it, in a setup document or on the command line: a number in the unit of the adjustment
 * or quantity, or a number with a unit, as in {@code 24 psi} or {@code 3 clicks}. Clicks are counted from the least
 * setting.
 */
public final class SettingText {
    private static final Pattern VALUE =
            Pattern.compile("\\s*([-+\u2212]?[0-9]*\\.?[0-9]+(?:[eE][-+]?[0-9]+)?)\\s*(\\S.*)?");

    private final String name;
    private final Unit unit;
    private final double example;
    private final Optional<Adjustment> adjustment;

    private SettingText(String name, Unit unit, double example, Optional<Adjustment> adjustment) {
        this.name = name;
        this.unit = unit;
        this.example = example;
        this.adjustment = adjustment;
    }

    /**
     * Value of a setting in the unit of the adjustment or quantity it is for.
     *
     * @param name an adjustment of the car or one of its quantities
     * @throws InvalidValueException if the car has nothing of that name, the text is no value for it, or the value
     *     is out of range
     */
    public static double value(Car car, String name, String text) {
        Optional<Adjustment> adjustment =
                car.adjustments().stream().filter(a -> a.name().equals(name)).findFirst();
        Unit unit = car.unitOf(name);
        double example = adjustment.map(Adjustment::standard).orElseGet(() -> car.value(name));
        return new SettingText(name, unit, example, adjustment).checked(text, value -> car.with(name, value));
    }

    /**
     * Value of one of the conditions in the unit of its name.
     *
     * @param name one of {@link Conditions#NAMES}
     * @throws InvalidValueException if there is no such name, the text is no value for it, or the value is out of range
     */
    public static double value(Conditions conditions, String name, String text) {
        double now = conditions.value(name);
        Unit unit = Unit.ofSymbol(ConditionsReader.field(name)
                .orElseThrow(() -> new IllegalStateException(name + " has no field in a document"))
                .usual()
                .symbol());
        return new SettingText(name, unit, now, Optional.empty()).checked(text, value -> conditions.with(name, value));
    }

    /**
     * Symbol of the unit of a setting or of one of the conditions; empty for a pure number.
     *
     * @param name an adjustment of the car, one of its quantities or one of {@link Conditions#NAMES}
     * @throws InvalidValueException if there is no such name
     */
    public static String unit(Car car, String name) {
        return ConditionsReader.field(name)
                .map(field -> field.usual().symbol())
                .orElseGet(() -> car.unitOf(name).symbol());
    }

    private double checked(String text, DoubleConsumer check) {
        double value = number(text);
        try {
            check.accept(value);
        } catch (InvalidValueException e) {
            String said = text.strip();
            boolean otherUnit = !said.startsWith(Check.text(value));
            // What was written comes first, for the rest speaks of it in the setting's own unit.
            throw otherUnit
                    ? new InvalidValueException(
                            e.place(), "'" + Excerpt.of(said) + "': " + e.problem(), remedy(e, said))
                    : e;
        }
        return value;
    }

    /** The remedy, and the range also in the unit that was written. */
    private String remedy(InvalidValueException fault, String said) {
        Matcher matcher = VALUE.matcher(said);
        Optional<Unit> given =
                matcher.matches() && matcher.group(2) != null ? known(matcher.group(2)) : Optional.empty();
        if (adjustment.isEmpty() || given.isEmpty() || given.get() == Unit.CLICK) {
            return fault.remedy();
        }
        return fault.remedy() + " (" + Check.text(unit.convert(adjustment.get().min(), given.get())) + " to "
                + Check.text(unit.convert(adjustment.get().max(), given.get())) + " "
                + given.get().symbol() + ")";
    }

    private double number(String text) {
        Matcher matcher = VALUE.matcher(text);
        if (!matcher.matches()) {
            String symbol = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
            throw new InvalidValueException(
                    name,
                    "'" + Excerpt.of(text) + "' is not a number",
                    "write a number, if you like with a unit, as in " + Check.text(example) + symbol);
        }
        double number = Double.parseDouble(matcher.group(1).replace('\u2212', '-'));
        return matcher.group(2) == null
                ? whole(name, unit, number)
                : inUnit(number, matcher.group(2).trim());
    }

    /** A number of clicks, which must be whole; anything else as it is. */
    public static double whole(String name, Unit unit, double number) {
        if (unit == Unit.CLICK && number != Math.rint(number)) {
            throw new InvalidValueException(
                    name, Check.text(number) + " clicks lie between two clicks", "give whole clicks");
        }
        return number;
    }

    private double inUnit(double number, String symbol) {
        Optional<Unit> given = known(symbol);
        if (given.isPresent() && given.get() == Unit.CLICK && unit != Unit.CLICK) {
            return clicks(number);
        }
        if (given.isEmpty() || !given.get().convertsTo(unit)) {
            throw new InvalidValueException(
                    name, "it is not measured in '" + Excerpt.of(symbol) + "'", "give " + numberInItsUnits());
        }
        return whole(name, unit, given.get().convert(number, unit));
    }

    private double clicks(double number) {
        double size = adjustment.map(Adjustment::clickSize).orElse(0.0);
        if (size == 0) {
            throw new InvalidValueException(name, "it has no clicks", "give " + numberInItsUnits());
        }
        if (number != Math.rint(number)) {
            throw new InvalidValueException(
                    name,
                    Check.text(number) + " clicks lie between two clicks",
                    "give whole clicks; a setting in its own unit may lie between");
        }
        return adjustment.orElseThrow().min() + number * size;
    }

    private static Optional<Unit> known(String symbol) {
        try {
            return Optional.of(Unit.ofSymbol(symbol));
        } catch (InvalidValueException e) {
            // The units that make sense here are fewer than all that the message lists.
            return Optional.empty();
        }
    }

    private String numberInItsUnits() {
        List<String> symbols = new ArrayList<>();
        for (Unit other : unit.alternatives()) {
            if (!other.symbol().isEmpty()) {
                symbols.add(other.symbol());
            }
        }
        boolean alone = unit == Unit.NONE || symbols.isEmpty();
        return alone ? "a number alone" : "a number in " + NearestWord.either(symbols);
    }
}
