package dev.lapwright.cli.bench;

import dev.lapwright.report.JsonLayout;
import java.util.Map;

/** JSON in one line, as the page reads it: maps, lists, texts, numbers, truth values and {@link Column}s. */
final class Wire {
    private static final int MOST_DECIMALS = 6;
    private static final long[] POWERS = {1, 10, 100, 1_000, 10_000, 100_000, 1_000_000};
    private static final double LARGEST = 1e11;

    private final StringBuilder out = new StringBuilder(1 << 14);

    private Wire() {}

    /**
     * Numbers of which the page needs no more than some decimals.
     *
     * @param values of a column; NaN is told as null
     * @param rows which of them
     * @param decimals up to 6
     */
    record Column(double[] values, int[] rows, int decimals) {}

    /** The text of a message. */
    static String text(Map<String, ?> message) {
        Wire wire = new Wire();
        wire.value(message);
        return wire.out.toString();
    }

    private void value(Object value) {
        if (value instanceof Map<?, ?> map) {
            out.append('{');
            String comma = "";
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                out.append(comma);
                quoted(entry.getKey().toString());
                out.append(':');
                value(entry.getValue());
                comma = ",";
            }
            out.append('}');
        } else if (value instanceof Iterable<?> list) {
            out.append('[');
            String comma = "";
            for (Object item : list) {
                out.append(comma);
                value(item);
                comma = ",";
            }
            out.append(']');
        } else if (value instanceof Column column) {
            column(column);
        } else if (value instanceof Number number) {
            double size = number.doubleValue();
            out.append(Double.isFinite(size) ? JsonLayout.number(size) : "null");
        } else if (value == null || value instanceof Boolean) {
            out.append(value);
        } else {
            quoted(value.toString());
        }
    }

    private void column(Column column) {
        out.append('[');
        for (int i = 0; i < column.rows().length; i++) {
            if (i > 0) {
                out.append(',');
            }
            rounded(column.values()[column.rows()[i]], Math.min(MOST_DECIMALS, column.decimals()));
        }
        out.append(']');
    }

    /** Written by whole numbers: a lap has tens of thousands of them, and the page waits. */
    private void rounded(double value, int decimals) {
        if (!(Math.abs(value) < LARGEST)) {
            out.append("null");
            return;
        }
        long scaled = Math.round(value * POWERS[decimals]);
        if (scaled < 0) {
            out.append('-');
            scaled = -scaled;
        }
        out.append(scaled / POWERS[decimals]);
        long rest = scaled % POWERS[decimals];
        if (rest > 0) {
            out.append('.');
            for (int place = decimals - 1; place >= 0 && rest > 0; place--) {
                out.append(rest / POWERS[place]);
                rest %= POWERS[place];
            }
        }
    }

    private void quoted(String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                // So that the text may also stand within a page.
                case '<', '>', '&', '\u2028', '\u2029' -> escaped(c);
                default -> {
                    if (c < ' ') {
                        escaped(c);
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }

    private void escaped(char c) {
        out.append("\\u");
        for (int shift = 12; shift >= 0; shift -= 4) {
            out.append(Character.forDigit((c >> shift) & 15, 16));
        }
    }
}
