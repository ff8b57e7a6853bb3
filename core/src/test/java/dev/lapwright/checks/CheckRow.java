package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.StringJoiner;

/**
 * One number from the outside. Columns that every file has: {@code quantity} (what is looked at), {@code expected} (as the
 * source prints it), {@code unit}, {@code tolerance}, {@code tolerance_reason}, {@code source}, {@code provenance}
 * (published, from memory, derived) and {@code seen} (where a published number was seen). All others are inputs.
 *
 * <p>A tolerance is a sum of terms: a number; a percentage of the expected value, as in {@code 0.05%}; or {@code digit},
 * half a unit of the last digit that is printed.
 */
public final class CheckRow {
    private static final Set<String> PROVENANCES = Set.of("published", "from memory", "derived");
    private static final Set<String> COMMON = Set.of(
            "quantity", "expected", "unit", "tolerance", "tolerance_reason", "source", "provenance", "seen", "note");

    private static final StackWalker CALLER = StackWalker.getInstance(StackWalker.Option.RETAIN_CLASS_REFERENCE);

    private final String file;
    private final int line;
    private final Map<String, String> fields;

    CheckRow(String file, int line, Map<String, String> fields) {
        this.file = file;
        this.line = line;
        this.fields = fields;
        if (!PROVENANCES.contains(text("provenance"))) {
            throw new IllegalStateException(place() + ": provenance '" + text("provenance") + "'");
        }
        for (String needed : List.of("quantity", "tolerance_reason", "source")) {
            if (text(needed).isBlank()) {
                throw new IllegalStateException(place() + ": " + needed + " is empty");
            }
        }
        tolerance();
    }

    /** What is looked at. */
    public String quantity() {
        return text("quantity");
    }

    /** A field as written. */
    public String text(String column) {
        String value = fields.get(column);
        if (value == null) {
            throw new IllegalStateException(place() + ": no column " + column);
        }
        return value;
    }

    /** A field as a number. */
    public double number(String column) {
        String value = text(column);
        try {
            return Double.parseDouble(value);
        } catch (NumberFormatException e) {
            throw new IllegalStateException(place() + ": " + column + " is '" + value + "', not a number", e);
        }
    }

    /** Whether a field is filled in. */
    public boolean has(String column) {
        return !text(column).isEmpty();
    }

    /** What the source says. */
    public double expected() {
        return number("expected");
    }

    /** How near the computed value must come, in the unit of the expected one. */
    public double tolerance() {
        double sum = 0;
        for (String term : text("tolerance").split("\\+")) {
            if (term.equals("digit")) {
                sum += 0.5 * new BigDecimal(text("expected")).ulp().doubleValue();
            } else if (term.endsWith("%")) {
                sum += Math.abs(expected()) * Double.parseDouble(term.substring(0, term.length() - 1)) / 100;
            } else {
                sum += Double.parseDouble(term);
            }
        }
        if (!(sum > 0) || !Double.isFinite(sum)) {
            throw new IllegalStateException(place() + ": tolerance " + text("tolerance"));
        }
        return sum;
    }

    /** Notes the computed value for the page of validation and fails if it is too far from the expected one. */
    public void verify(double computed) {
        ValidationLog.note(this, CALLER.getCallerClass(), computed);
        assertThat(computed)
                .as("%s: %s (%s; tolerance: %s)", place(), this, text("source"), text("tolerance_reason"))
                .isCloseTo(expected(), within(tolerance()));
    }

    String file() {
        return file;
    }

    int line() {
        return line;
    }

    private String place() {
        return String.format(Locale.ROOT, "%s line %d", file, line);
    }

    /** What is looked at, with the inputs. */
    @Override
    public String toString() {
        String inputs = inputs();
        return inputs.isEmpty() ? quantity() : quantity() + " [" + inputs + "]";
    }

    /** What the file's own columns hold, as in {@code radius_m 50, friction 0.4}; empty ones are left out. */
    String inputs() {
        StringJoiner inputs = new StringJoiner(", ");
        fields.forEach((name, value) -> {
            if (!COMMON.contains(name) && !value.isEmpty()) {
                inputs.add(name + " " + value);
            }
        });
        return inputs.toString();
    }
}
