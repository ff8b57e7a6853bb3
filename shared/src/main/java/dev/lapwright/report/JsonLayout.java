package dev.lapwright.report;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import com.fasterxml.jackson.core.io.NumberOutput;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * Writes JSON for people: two spaces for each level, small objects and lists in one line, numbers as short as they can
 * be while reading back as the same double. The same content always gives the same text.
 */
public final class JsonLayout {
    private static final int LINE_LENGTH = 110;
    private static final String INDENT = "  ";

    /** So much is gathered before it is passed on. */
    private static final int CHUNK = 1 << 16;

    private final StringBuilder out = new StringBuilder();
    private final Appendable sink;

    private JsonLayout(Appendable sink) {
        this.sink = sink;
    }

    /**
     * The text of an object, with a line feed at its end.
     *
     * @param object of texts, numbers, booleans, nulls, lists, maps, and what else can be iterated over, in the order to be
     *     written; NaN and infinities, which JSON does not have, become null
     */
    public static String text(Map<String, ?> object) {
        StringBuilder text = new StringBuilder();
        try {
            write(object, text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** The same, written bit by bit: what is iterated over need not stand in memory. */
    public static void write(Map<String, ?> object, Appendable out) throws IOException {
        JsonLayout layout = new JsonLayout(out);
        // The outermost object always has a line for each field.
        layout.fields(object, "");
        layout.out.append('\n');
        layout.pass(0);
    }

    private void pass(int least) throws IOException {
        if (out.length() >= least) {
            sink.append(out);
            out.setLength(0);
        }
    }

    private void value(Object value, String indent, int used) throws IOException {
        if (value instanceof Iterable<?> items && !(value instanceof List)) {
            items(items, indent);
            return;
        }
        if (!(value instanceof Map || value instanceof List)) {
            out.append(scalar(value));
            return;
        }
        String line = value instanceof Map<?, ?> map ? lineOf(map) : lineOf((List<?>) value);
        if (line != null && indent.length() + used + line.length() <= LINE_LENGTH) {
            out.append(line);
        } else {
            many(value, indent);
        }
    }

    private void many(Object container, String indent) throws IOException {
        if (container instanceof Map<?, ?> map) {
            fields(map, indent);
        } else if (isFlat((List<?>) container)) {
            filled((List<?>) container, indent + INDENT);
            out.append('\n').append(indent).append(']');
        } else {
            items((List<?>) container, indent);
        }
    }

    private void fields(Map<?, ?> map, String indent) throws IOException {
        String inner = indent + INDENT;
        String before = "{\n";
        for (Map.Entry<?, ?> field : map.entrySet()) {
            String name = quoted((String) field.getKey()) + ": ";
            out.append(before).append(inner).append(name);
            value(field.getValue(), inner, name.length());
            before = ",\n";
        }
        out.append('\n').append(indent).append('}');
    }

    private void items(Iterable<?> list, String indent) throws IOException {
        String inner = indent + INDENT;
        String before = "[\n";
        for (Object item : list) {
            out.append(before).append(inner);
            value(item, inner, 0);
            before = ",\n";
            pass(CHUNK);
        }
        if (before.startsWith("[")) {
            out.append("[]");
        } else {
            out.append('\n').append(indent).append(']');
        }
    }

    /** A long list of scalars, as many to a line as fit. */
    private void filled(List<?> list, String indent) {
        out.append("[\n").append(indent);
        int used = indent.length();
        for (int i = 0; i < list.size(); i++) {
            String item = scalar(list.get(i)) + (i + 1 < list.size() ? "," : "");
            if (i > 0 && used + 1 + item.length() > LINE_LENGTH) {
                out.append('\n').append(indent);
                used = indent.length();
            } else if (i > 0) {
                out.append(' ');
                used++;
            }
            out.append(item);
            used += item.length();
        }
    }

    private static boolean isFlat(List<?> list) {
        return list.stream().noneMatch(item -> item instanceof Map || item instanceof List);
    }

    /** The object in one line, or null if it holds an object or a list that does, or is too long for one. */
    private static String lineOf(Map<?, ?> map) {
        if (map.isEmpty()) {
            return "{}";
        }
        StringBuilder line = new StringBuilder();
        for (Map.Entry<?, ?> field : map.entrySet()) {
            Object value = field.getValue();
            String text = value instanceof List<?> list
                    ? lineOf(list)
                    : value instanceof Iterable<?> items
                            ? (items.iterator().hasNext() ? null : "[]")
                            : value instanceof Map ? null : scalar(value);
            if (text == null || line.length() > LINE_LENGTH) {
                return null;
            }
            line.append(line.length() == 0 ? "{ " : ", ")
                    .append(quoted((String) field.getKey()))
                    .append(": ")
                    .append(text);
        }
        return line.append(" }").toString();
    }

    /** The list in one line, or null if it holds objects or lists, or is too long for one. */
    private static String lineOf(List<?> list) {
        StringBuilder line = new StringBuilder("[");
        for (Object item : list) {
            if (item instanceof Map || item instanceof List || line.length() > LINE_LENGTH) {
                return null;
            }
            line.append(line.length() == 1 ? "" : ", ").append(scalar(item));
        }
        return line.append("]").toString();
    }

    private static String scalar(Object value) {
        return value instanceof CharSequence text
                ? quoted(text.toString())
                : value instanceof Double number ? number(number) : String.valueOf(value);
    }

    private static String quoted(String text) {
        return '"' + String.valueOf(JsonStringEncoder.getInstance().quoteAsString(text)) + '"';
    }

    /**
     * The shortest decimal that reads back as {@code value}, by the algorithm of Raffaello Giulietti (2020) in Jackson;
     * {@link Double#toString(double)} is not always the shortest before Java 19.
     */
    public static String number(double value) {
        if (!Double.isFinite(value)) {
            return "null";
        }
        String digits = NumberOutput.toString(value, true);
        if (value != 0 && digits.indexOf('E') < 0) {
            // Plain already, with one digit at least behind the point.
            return digits.endsWith(".0") ? digits.substring(0, digits.length() - 2) : digits;
        }
        BigDecimal shortest = new BigDecimal(digits).stripTrailingZeros();
        double size = Math.abs(value);
        boolean plain = value == 0 || (size >= 1e-6 && size < 1e12);
        return plain ? shortest.toPlainString() : shortest.toString();
    }
}
