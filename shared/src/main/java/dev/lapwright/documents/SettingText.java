package dev.lapwright.documents;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A setting as a person writes it, in a setup document or on the command line: a number in the unit of the adjustment or
 * quantity, or a number with a unit, as in {@code 24 psi} or {@code 3 clicks}.
 */
public final class SettingText {
    private static final Pattern VALUE = Pattern.compile("\\s*([-+]?[0-9]*\\.?[0-9]+(?:[eE][-+]?[0-9]+)?)\\s*(\\S.*)?");

    private SettingText() {}

    /**
     * Value of a setting in the unit of the adjustment or quantity it is for.
     *
     * @param name an adjustment of the car or one of its quantities
     * @throws InvalidValueException if the car has nothing of that name, the text is no value for it, or the value is out of
     *     range
     */
    public static double value(Car car, String name, String text) {
        for (Adjustment adjustment : car.adjustments()) {
            if (adjustment.name().equals(name)) {
                return adjustment.parse(text);
            }
        }
        Unit unit = car.unitOf(name);
        Matcher matcher = VALUE.matcher(text);
        if (!matcher.matches()) {
            String symbol = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
            throw new InvalidValueException(
                    name,
                    "'" + text + "' is not a number",
                    "write a number, if you like with a unit, as in " + Check.text(car.value(name)) + symbol);
        }
        double number = Double.parseDouble(matcher.group(1));
        if (matcher.group(2) != null) {
            Unit given = Unit.ofSymbol(matcher.group(2));
            if (!given.convertsTo(unit)) {
                String remedy = unit == Unit.NONE ? "give a number alone" : "give it in " + unit.symbol();
                throw new InvalidValueException(name, "it is not measured in " + given.symbol(), remedy);
            }
            number = given.convert(number, unit);
        }
        return checked(car, name, number);
    }

    /** Returns a value in the unit of the adjustment or quantity if the car can be set to it. */
    static double checked(Car car, String name, double value) {
        car.with(name, value);
        return value;
    }
}
