package dev.lapwright.report;

import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.function.DoubleFunction;

/** Forms of numbers as people of the trade write them; never in a local format. */
public final class Numbers {
    static final String NONE = "-";

    /** Far beyond the model, far short of noise. */
    private static final MathContext DIGITS = new MathContext(9);

    /** What is smaller is noise about zero. */
    private static final int DECIMALS = 9;

    private Numbers() {}

    /** A lap time as m:ss.mmm. */
    public static String lapTime(double seconds) {
        if (!Double.isFinite(seconds)) {
            return NONE;
        }
        // Rounded first, so that 59.9996 s does not become 0:60.000.
        long milliseconds = Math.round(seconds * 1000);
        String sign = milliseconds < 0 ? "-" : "";
        long size = Math.abs(milliseconds);
        return sign + size / 60_000 + ":" + padded(size / 1000 % 60, 2) + "." + padded(size % 1000, 3);
    }

    /** A lap time with fewer decimals, 1 to 3: m:ss.m. */
    public static String lapTime(double seconds, int decimals) {
        if (!Double.isFinite(seconds)) {
            return NONE;
        }
        double digit = Math.pow(10, decimals);
        String text = lapTime(Math.round(seconds * digit) / digit);
        return text.substring(0, text.length() - (3 - decimals));
    }

    private static String padded(long number, int digits) {
        String text = Long.toString(number);
        return "0".repeat(Math.max(0, digits - text.length())) + text;
    }

    /** With a fixed number of decimals; a dash where there is none. */
    public static String fixed(double value, int decimals) {
        if (!Double.isFinite(value)) {
            return NONE;
        }
        // What String.format does, without the formats of all languages, which take a start some hundredths of a
        // second.
        return BigDecimal.valueOf(value)
                .setScale(decimals, RoundingMode.HALF_UP)
                .toPlainString();
    }

    /** The form with a fixed number of decimals. */
    public static DoubleFunction<String> fixed(int decimals) {
        return value -> fixed(value, decimals);
    }

    /** The form with a fixed number of decimals and always a sign, but for zero. */
    public static DoubleFunction<String> signed(int decimals) {
        return value -> signed(value, decimals);
    }

    /** With a fixed number of decimals and always a sign, but for zero. */
    public static String signed(double value, int decimals) {
        String text = fixed(value, decimals);
        return !Double.isFinite(value) || isZero(text) || text.startsWith("-") ? text : "+" + text;
    }

    private static boolean isZero(String text) {
        for (int i = 0; i < text.length(); i++) {
            if ("0.".indexOf(text.charAt(i)) < 0) {
                return false;
            }
        }
        return true;
    }

    /** A speed (m/s) in km/h. */
    public static String kmh(double speed) {
        return fixed(Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR), 1);
    }

    /** A share (0 to 1) in percent. */
    public static String percent(double share) {
        return fixed(100 * share, 1);
    }

    /** A value as somebody would type it: as few digits as it needs. */
    public static String plain(double value) {
        return Double.isFinite(value) ? Check.text(value) : NONE;
    }

    /** A value as somebody would type it, always with a sign. */
    public static String signed(double value) {
        return (value > 0 ? "+" : "") + plain(value);
    }

    /** A value in so many significant digits, in plain notation. */
    public static String significant(double value, int digits) {
        return Double.isFinite(value)
                ? BigDecimal.valueOf(value)
                        .round(new MathContext(digits))
                        .stripTrailingZeros()
                        .toPlainString()
                : NONE;
    }

    /** A value with its unit behind it. */
    public static String with(double value, Unit unit) {
        String symbol = unit.symbolAfter(value);
        return plain(value) + (symbol.isEmpty() ? "" : " " + symbol);
    }

    /** A value for other programs: nine digits, plain notation; empty where there is none. */
    public static String machine(double value) {
        return Double.isFinite(value) ? decimal(value).stripTrailingZeros().toPlainString() : "";
    }

    private static BigDecimal decimal(double value) {
        BigDecimal exact = new BigDecimal(value).round(DIGITS);
        return exact.scale() > DECIMALS ? exact.setScale(DECIMALS, RoundingMode.HALF_EVEN) : exact;
    }
}
