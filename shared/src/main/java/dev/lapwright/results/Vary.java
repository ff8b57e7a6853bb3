package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.SettingText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Values to vary one adjustment, quantity or condition over, as a user typed them.
 *
 * @param axis its name and values, in the unit of the adjustment or quantity
 * @param typedUnit the unit in which the values were typed, where it is another one; else empty
 * @param typed the values as typed, in that unit; empty where it is the same
 */
public record Vary(SweepAxis axis, String typedUnit, List<Double> typed) {
    private static final Pattern NUMBER =
            Pattern.compile("\\s*([-+\u2212]?[0-9]*\\.?[0-9]+(?:[eE][-+]?[0-9]+)?)\\s*(\\S.*?)?\\s*");
    private static final int RANGE_PARTS = 3;

    /** Reads what follows --vary: name=first:last:step, name=v1,v2,… or the name of an adjustment. */
    public static Vary parse(String text, Subject subject) {
        int equals = text.indexOf('=');
        String name = (equals < 0 ? text : text.substring(0, equals)).trim();
        if (equals < 0) {
            return whole(name, subject);
        }
        String values = text.substring(equals + 1).trim();
        if (values.isEmpty()) {
            throw new InvalidValueException(
                    name, "there is nothing to sweep: no values", "write first:last:step, or v1,v2,…");
        }
        // The name first: an unknown one is the greater fault.
        subject.valueOf(name);
        return values.contains(":") ? range(name, values, subject) : list(name, values, subject);
    }

    private static Vary whole(String name, Subject subject) {
        if (!Subject.isAdjustment(subject.bare(), name)) {
            subject.valueOf(name);
            throw new InvalidValueException(
                    name, "it has no range of its own to sweep", "write " + name + "=first:last:step, or =v1,v2,…");
        }
        return same(name, subject.bare().adjustment(name).legalSettings());
    }

    private static Vary same(String name, List<Double> values) {
        double[] array = values.stream().mapToDouble(value -> value).toArray();
        return new Vary(new SweepAxis(name, array), "", List.of());
    }

    private static Vary list(String name, String values, Subject subject) {
        List<Part> parts = new ArrayList<>();
        for (String value : values.split(",")) {
            if (!value.isBlank()) {
                parts.add(Part.of(name, value));
            }
        }
        if (parts.isEmpty()) {
            throw new InvalidValueException(
                    name, "there is nothing to sweep: no values", "write first:last:step, or v1,v2,…");
        }
        String unit = unit(name, parts);
        return of(name, parts.stream().map(Part::number).toList(), unit, subject);
    }

    private static Vary range(String name, String values, Subject subject) {
        String[] texts = values.split(":", -1);
        if (texts.length > RANGE_PARTS) {
            throw new InvalidValueException(name, "'" + values + "' has too many colons", "write first:last:step");
        }
        List<Part> parts = new ArrayList<>();
        for (String part : texts) {
            parts.add(Part.of(name, part));
        }
        String unit = unit(name, parts);
        double first = parts.get(0).number();
        double last = parts.get(1).number();
        if (texts.length == RANGE_PARTS) {
            double[] stepped =
                    SweepAxis.stepped(name, first, last, parts.get(2).number()).values();
            List<Double> list = new ArrayList<>();
            for (double value : stepped) {
                list.add(value);
            }
            return of(name, list, unit, subject);
        }
        if (!unit.isEmpty() || !Subject.isAdjustment(subject.bare(), name)) {
            throw new InvalidValueException(name, "the step is missing", "write first:last:step");
        }
        return between(subject.bare().adjustment(name), first, last);
    }

    /** The legal settings of an adjustment within a part of its range. */
    private static Vary between(Adjustment adjustment, double first, double last) {
        double low = adjustment.checked(Math.min(first, last));
        double high = adjustment.checked(Math.max(first, last));
        List<Double> values = new ArrayList<>();
        for (double setting : adjustment.legalSettings()) {
            if (setting >= low - 1e-9 && setting <= high + 1e-9) {
                values.add(first <= last ? values.size() : 0, setting);
            }
        }
        return same(adjustment.name(), values);
    }

    private static Vary of(String name, List<Double> typed, String unit, Subject subject) {
        double[] values = new double[typed.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = unit.isEmpty()
                    ? SettingText.whole(name, Subject.unitOf(subject.bare(), name), typed.get(i))
                    : subject.read(name, Numbers.machine(typed.get(i)) + " " + unit);
        }
        boolean other = !unit.isEmpty() && Unit.ofSymbol(unit) != Subject.unitOf(subject.bare(), name);
        return new Vary(new SweepAxis(name, values), other ? unit : "", other ? typed : List.of());
    }

    /** The one unit that some of the parts carry; empty if none does. */
    private static String unit(String name, List<Part> parts) {
        Set<String> units = new LinkedHashSet<>();
        for (Part part : parts) {
            if (!part.unit().isEmpty()) {
                units.add(part.unit());
            }
        }
        if (units.size() > 1) {
            throw new InvalidValueException(
                    name, "its values are in several units: " + String.join(", ", units), "give them all in one");
        }
        return units.isEmpty() ? "" : units.iterator().next();
    }

    /** A sentence on values between two settings that the car's document has; empty where there are none. */
    public Optional<String> note(Car car) {
        String between = "";
        int count = 0;
        for (double value : axis.values()) {
            Optional<String> note = Subject.between(car, axis.name(), value);
            if (note.isPresent() && count++ == 0) {
                between = note.get();
            }
        }
        return count == 0
                ? Optional.empty()
                : Optional.of(count == 1 ? between : between + " So do " + (count - 1) + " more of the values.");
    }

    /** What was typed for a value of the axis. */
    public double typedFor(double value) {
        for (int i = 0; i < typed.size(); i++) {
            if (axis.value(i) == value) {
                return typed.get(i);
            }
        }
        return Double.NaN;
    }

    private record Part(double number, String unit) {
        static Part of(String name, String text) {
            Matcher matcher = NUMBER.matcher(text);
            if (!matcher.matches()) {
                String shown = text.isBlank() ? "a value is missing" : "'" + text.trim() + "' is not a number";
                throw new InvalidValueException(name, shown, "write first:last:step, or v1,v2,…");
            }
            String unit = matcher.group(2) == null ? "" : matcher.group(2);
            return new Part(Double.parseDouble(matcher.group(1).replace('\u2212', '-')), unit);
        }
    }
}
