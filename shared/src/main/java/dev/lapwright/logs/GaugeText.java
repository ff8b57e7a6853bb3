package dev.lapwright.logs;

import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.Excerpt;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Gauge pressure as a person writes it: {@code 17psi}, {@code 1.2 bar}, {@code 117kPa}, or a number in a usual unit.
 */
public final class GaugeText {
    /** Units that tyre gauges read in. */
    public static final List<Unit> UNITS = List.of(Unit.PSI, Unit.KILOPASCAL, Unit.BAR);

    private static final Pattern VALUE = Pattern.compile("\\s*([-+]?[0-9]*\\.?[0-9]+)\\s*([A-Za-z]*)\\s*");

    private GaugeText() {}

    /**
     * @param name of what it is, for messages
     * @param usual unit of a number alone
     * @return kPa
     * @throws InvalidValueException if it is no pressure
     */
    public static double kpa(String name, String text, Unit usual) {
        Matcher matcher = VALUE.matcher(text);
        if (!matcher.matches()) {
            throw new InvalidValueException(
                    name,
                    "'" + Excerpt.of(text) + "' is not a pressure",
                    "write a number, if you like with psi, kPa or bar, as in 17psi");
        }
        double value = Double.parseDouble(matcher.group(1));
        Unit unit = matcher.group(2).isEmpty() ? usual : unit(name, matcher.group(2));
        looksLikeAnother(name, value, unit);
        return unit.convert(value, Unit.KILOPASCAL);
    }

    /** Numbers that no tyre gauge reads in their unit, but does in another. */
    private static void looksLikeAnother(String name, double value, Unit unit) {
        String looks = "";
        if (unit != Unit.BAR && value >= 0.5 && value <= 5) {
            looks = Unit.BAR.symbol();
        } else if (unit != Unit.PSI && value >= 8 && value < 30) {
            looks = Unit.PSI.symbol();
        } else if (unit != Unit.KILOPASCAL && value >= 80) {
            looks = Unit.KILOPASCAL.symbol();
        }
        if (!looks.isEmpty()) {
            throw new InvalidValueException(
                    name,
                    Check.text(value) + " " + unit.symbol() + " looks like " + looks,
                    "write the unit behind the number, as in " + Check.text(value) + looks);
        }
    }

    /**
     * The unit of this name, letter case aside.
     *
     * @throws InvalidValueException if no tyre gauge reads in it
     */
    public static Unit unit(String name, String word) {
        for (Unit unit : UNITS) {
            if (unit.symbol().equalsIgnoreCase(word.trim())) {
                return unit;
            }
        }
        throw new InvalidValueException(
                name, "'" + Excerpt.of(word) + "' is no unit of a tyre gauge", "use psi, kPa or bar");
    }
}
