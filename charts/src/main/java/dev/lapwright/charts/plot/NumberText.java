package dev.lapwright.charts.plot;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.FieldPosition;
import java.text.NumberFormat;
import java.text.ParsePosition;
import java.util.Locale;

/** Numbers as charts write them: decimal point and true minus sign everywhere, lap times as minutes and seconds. */
public final class NumberText {
    private static final double METRE_PER_SECOND_IN_KMH = 3.6;

    private NumberText() {}

    /** Plain numbers with a number of decimals. */
    public static NumberFormat fixed(int decimals) {
        return pattern("0" + fraction(decimals));
    }

    /** Differences: always with their sign, zero without one. */
    public static NumberFormat signed(int decimals) {
        return new Signed(fixed(decimals), pattern("+0" + fraction(decimals) + ";-0" + fraction(decimals)));
    }

    /** Lap times, s, written as {@code 1:32.457} from a minute upwards and {@code 58.204} below. */
    public static NumberFormat lapTimes(int decimals) {
        return new LapTimes(decimals);
    }

    /** A lap time, s, to the thousandth, as {@code 1:32.457} or {@code 58.204 s}. */
    public static String lapTime(double seconds) {
        String text = lapTimes(3).format(seconds);
        return text.indexOf(':') < 0 ? text + " s" : text;
    }

    /** A difference of time, s, to the thousandth with its sign, as {@code −0.153 s}. */
    public static String difference(double seconds) {
        return signed(3).format(seconds) + " s";
    }

    /** Speed in km/h. */
    public static double kmh(double metresPerSecond) {
        return metresPerSecond * METRE_PER_SECOND_IN_KMH;
    }

    /** Speed in whole km/h, without the unit. */
    public static String wholeKmh(double metresPerSecond) {
        return fixed(0).format(kmh(metresPerSecond));
    }

    /** Label of an axis of lap times that reach to {@code longest}, s. */
    public static String lapTimeLabel(double longest) {
        return longest < 60 ? "Lap time (s)" : "Lap time (min:s)";
    }

    private static String fraction(int decimals) {
        return decimals > 0 ? "." + "0".repeat(decimals) : "";
    }

    private static DecimalFormat pattern(String pattern) {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(Locale.ROOT);
        symbols.setMinusSign('\u2212');
        return new DecimalFormat(pattern, symbols);
    }

    private abstract static class WriteOnly extends NumberFormat {
        private static final long serialVersionUID = 1L;

        @Override
        public StringBuffer format(long number, StringBuffer to, FieldPosition position) {
            return format((double) number, to, position);
        }

        @Override
        public Number parse(String source, ParsePosition position) {
            throw new UnsupportedOperationException("charts are written, not read");
        }
    }

    private static final class Signed extends WriteOnly {
        private static final long serialVersionUID = 1L;
        private final NumberFormat plain;
        private final NumberFormat withSign;

        Signed(NumberFormat plain, NumberFormat withSign) {
            this.plain = plain;
            this.withSign = withSign;
        }

        @Override
        public StringBuffer format(double number, StringBuffer to, FieldPosition position) {
            String zero = plain.format(0);
            boolean isZero = plain.format(Math.abs(number)).equals(zero);
            return to.append(isZero ? zero : withSign.format(number));
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Signed that && withSign.equals(that.withSign);
        }

        @Override
        public int hashCode() {
            return withSign.hashCode();
        }
    }

    private static final class LapTimes extends WriteOnly {
        private static final long serialVersionUID = 1L;
        private final int decimals;

        LapTimes(int decimals) {
            this.decimals = decimals;
        }

        @Override
        public StringBuffer format(double seconds, StringBuffer to, FieldPosition position) {
            if (!Double.isFinite(seconds)) {
                return to.append('?');
            }
            // Rounded before it is taken apart: 119.9996 s is 2:00.000, never 1:60.000.
            long unit = Math.round(Math.pow(10, decimals));
            long units = Math.round(Math.abs(seconds) * unit);
            long minutes = units / (60 * unit);
            double rest = (units - minutes * 60 * unit) / (double) unit;
            if (seconds < 0 && units > 0) {
                to.append('\u2212');
            }
            if (minutes == 0) {
                return to.append(fixed(decimals).format(rest));
            }
            return to.append(minutes)
                    .append(':')
                    .append(pattern("00" + fraction(decimals)).format(rest));
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof LapTimes that && decimals == that.decimals;
        }

        @Override
        public int hashCode() {
            return decimals;
        }
    }
}
