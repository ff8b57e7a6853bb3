package dev.lapwright.documents;

import dev.lapwright.car.UnitGuess;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.PlainText;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import dev.lapwright.text.NearestWord;
import dev.lapwright.text.TextPlace;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * Reader of the fields of one JSON object, each once, that gathers every fault. What has been asked for is what is known:
 * {@link #close()} refuses the rest. A field that is faulty reads as NaN or null and has been reported; a whole section that
 * is absent reads as empty, without a fault for each of its fields.
 */
final class ObjectReader {
    /** Bounds on names, so that tables, charts and file names made from them stay in shape. */
    static final int MAX_NAME_LENGTH = 100;

    static final int MAX_DESCRIPTION_LENGTH = 2000;

    /** Names that are part of a quantity's path or of a command line. */
    static final Pattern SHORT_NAME = Pattern.compile("[a-z][a-z0-9-]*");

    private final JsonValue.Obj node;
    private final String path;
    private final FaultList faults;
    private final Set<String> known = new LinkedHashSet<>();
    private final Map<String, NumberField> numbers = new LinkedHashMap<>();
    private final Map<String, ObjectReader> sections = new LinkedHashMap<>();

    private final List<Missing> missing = new ArrayList<>();
    private Supplier<Map<String, List<String>>> homes = Map::of;

    /** A field, or one of several, that is not there; {@code meaning} completes "give the". */
    private record Missing(List<String> names, String meaning) {}

    private ObjectReader(JsonValue.Obj node, String path, FaultList faults) {
        this.node = node;
        this.path = path;
        this.faults = faults;
    }

    /** The fields of an object; anything else is reported and reads as absent. */
    static ObjectReader of(JsonValue node, String path, FaultList faults) {
        if (node instanceof JsonValue.Obj object) {
            return new ObjectReader(object, path, faults);
        }
        faults.form(node.place(), path, node.describe() + " stands where an object belongs", "write { … }");
        return new ObjectReader(null, path, faults);
    }

    /** False if the object is absent or was no object. */
    boolean isPresent() {
        return node != null;
    }

    /** Path of this object. */
    String path() {
        return path;
    }

    /** Path of one of its fields. */
    String path(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }

    /** Where the object stands. */
    TextPlace place() {
        return node == null ? TextPlace.NONE : node.place();
    }

    /** Where a field stands, or else the object. */
    TextPlace place(String name) {
        return has(name) ? node.members().get(name).place() : place();
    }

    /** Where a number stands under whichever of its names, or else the object. */
    TextPlace place(NumberField field) {
        return place(nameGiven(field));
    }

    /** Path of a number under whichever of its names it is given. */
    String path(NumberField field) {
        return path(nameGiven(field));
    }

    /** Name under which a number is given, or its usual one. */
    String nameGiven(NumberField field) {
        for (String name : field.names()) {
            if (has(name)) {
                return name;
            }
        }
        return field.name();
    }

    /** Whether a field is given. */
    boolean has(String name) {
        return node != null && node.members().containsKey(name);
    }

    /** Whether a number is given, in whatever unit. */
    boolean has(NumberField field) {
        return has(nameGiven(field));
    }

    /** Names of all fields given, in order. */
    Collection<String> names() {
        return node == null ? List.of() : List.copyOf(node.members().keySet());
    }

    /** Value of a field, or null. */
    JsonValue node(String name) {
        known.add(name);
        return has(name) ? node.members().get(name).value() : null;
    }

    /** A number that must be given; NaN after a fault. */
    double required(NumberField field) {
        if (isPresent() && !has(field)) {
            missing(field.names(), field.meaning() + ", " + field.range(field.usual()));
        }
        return optional(field, Double.NaN);
    }

    /** A number or, where it is left out, {@code absent}; NaN after a fault. */
    double optional(NumberField field, double absent) {
        known.add(field.name());
        double value = absent;
        String first = null;
        for (int i = 0; i < field.names().size(); i++) {
            String name = field.names().get(i);
            numbers.put(name, field);
            if (has(name)) {
                if (first == null) {
                    value = read(field, name, field.scales().get(i));
                    first = name;
                } else {
                    faults.form(
                            place(name), path(name), "the same is already given as " + first, "keep one of the two");
                    value = Double.NaN;
                }
            }
        }
        return value;
    }

    /** A number that may be left out; empty after a fault as well. */
    OptionalDouble maybe(NumberField field) {
        double value = optional(field, Double.NaN);
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private double read(NumberField field, String name, UnitScale scale) {
        double written = number(node.members().get(name).value(), path(name), field, scale);
        if (Double.isNaN(written)) {
            return written;
        }
        if (!field.allows(written, scale)) {
            String unit = scale.symbol().isEmpty() ? "" : " " + scale.symbol();
            faults.form(
                    place(name),
                    path(name),
                    Check.text(written) + unit + " is outside the range",
                    allowed(field, written, scale));
            return Double.NaN;
        }
        return field.toModel(written, scale);
    }

    /** The range, and the unit that may have been meant. */
    private static String allowed(NumberField field, double written, UnitScale scale) {
        String range = "allowed: " + field.range(scale);
        return scale.unit()
                .map(unit -> UnitGuess.remedy(range, written, unit, field.min(scale), field.max(scale)))
                .orElse(range);
    }

    private double number(JsonValue value, String at, NumberField field, UnitScale scale) {
        if (value instanceof JsonValue.Num number) {
            return number.value();
        }
        faults.form(
                value.place(), at, value.describe() + " stands where a number belongs", "give " + field.range(scale));
        return Double.NaN;
    }

    /** A list of numbers in the field's range; NaN at each faulty place; empty if it is absent or no list. */
    double[] numbers(NumberField field) {
        List<JsonValue> items = items(field.name());
        double[] values = new double[items.size()];
        UnitScale scale = field.usual();
        for (int i = 0; i < values.length; i++) {
            String at = path(field.name()) + "[" + i + "]";
            values[i] = number(items.get(i), at, field, scale);
            if (!Double.isNaN(values[i]) && !field.allows(values[i], scale)) {
                faults.form(
                        items.get(i).place(),
                        at,
                        Check.text(values[i]) + " is outside the range",
                        allowed(field, values[i], scale));
                values[i] = Double.NaN;
            }
        }
        return values;
    }

    /** The name of the thing described: one line that is not blank. Null after a fault. */
    String name() {
        return name("name", "name by which people call it");
    }

    /** A name under a field of another name, which must be given; null after a fault. */
    String name(String field, String meaning) {
        if (!has(field)) {
            missing(field, meaning);
        }
        String name = text(field, null, MAX_NAME_LENGTH);
        if (name != null && PlainText.isBlank(name)) {
            faults.form(place(field), path(field), "it is blank", "give it a name in one line");
            return null;
        }
        return name;
    }

    /** The short name by which a wing or an adjustment is called elsewhere; null after a fault. */
    String shortName(String remedy) {
        String name = name();
        if (name != null && !SHORT_NAME.matcher(name).matches()) {
            form("name", "'" + Excerpt.of(name) + "' is not made of lower case letters, digits and hyphens", remedy);
            return null;
        }
        return name;
    }

    /** The short name by which it was called before, empty if it is left out; null after a fault. */
    String formerName() {
        String name = text("formerName", "", MAX_NAME_LENGTH);
        if (name != null && has("formerName") && !SHORT_NAME.matcher(name).matches()) {
            form(
                    "formerName",
                    "'" + Excerpt.of(name) + "' is not made of lower case letters, digits and hyphens",
                    "write it as it was, like rear-wing");
            return null;
        }
        return name;
    }

    /** A text of one line that may be left out; null after a fault. */
    String text(String name, String absent, int maxLength) {
        return text(name, absent, maxLength, PlainText::problem);
    }

    /** The description, which may have several lines; empty if it is left out. */
    String description() {
        return text("description", "", MAX_DESCRIPTION_LENGTH, PlainText::problemInLines);
    }

    /** Passes over a text that says nothing to us. */
    void ignoredText(String name) {
        text(name, "", Integer.MAX_VALUE, any -> Optional.empty());
    }

    private String text(String name, String absent, int maxLength, Function<String, Optional<String>> problem) {
        JsonValue value = node(name);
        if (value == null) {
            return absent;
        }
        if (!(value instanceof JsonValue.Text text)) {
            faults.form(
                    value.place(),
                    path(name),
                    value.describe() + " stands where a text belongs",
                    "put it into double quotes");
            return null;
        }
        int length = text.value().codePointCount(0, text.value().length());
        if (length > maxLength) {
            faults.form(value.place(), path(name), length + " characters are too many", "use at most " + maxLength);
            return null;
        }
        Optional<String> unseen = problem.apply(text.value());
        if (unseen.isPresent()) {
            faults.form(value.place(), path(name), unseen.get(), "leave it out");
            return null;
        }
        return text.value();
    }

    /** A text out of a list, or {@code absent}; null after a fault. */
    String choice(String name, Collection<String> allowed, String absent) {
        JsonValue value = node(name);
        if (value == null) {
            return absent;
        }
        if (value instanceof JsonValue.Text text && allowed.contains(text.value())) {
            return text.value();
        }
        String all = "allowed: " + String.join(", ", allowed);
        faults.form(
                value.place(),
                path(name),
                value.describe() + " is not one of the words allowed",
                value instanceof JsonValue.Text text ? NearestWord.remedy(text.value(), allowed, all) : all);
        return null;
    }

    /** True or false, which must be given; null after a fault. */
    Boolean flag(String name, String meaning) {
        JsonValue value = node(name);
        if (value == null) {
            missing(name, meaning);
            return null;
        }
        if (value instanceof JsonValue.Bool bool) {
            return bool.value();
        }
        faults.form(
                value.place(),
                path(name),
                value.describe() + " stands where true or false belongs",
                "write one of them");
        return null;
    }

    /** The fields of an object within this one; the same reader each time it is asked for. Reads as absent if it is. */
    ObjectReader section(String name) {
        return sections.computeIfAbsent(name, n -> {
            JsonValue value = node(n);
            ObjectReader section = value == null ? new ObjectReader(null, path(n), faults) : of(value, path(n), faults);
            section.homes = homes;
            return section;
        });
    }

    /** The objects of a list; empty if it is absent or no list. Items that are no objects are reported and left out. */
    List<ObjectReader> objects(String name) {
        List<JsonValue> items = items(name);
        List<ObjectReader> objects = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            ObjectReader item = of(items.get(i), path(name) + "[" + i + "]", faults);
            if (item.isPresent()) {
                objects.add(item);
            }
        }
        return objects;
    }

    private List<JsonValue> items(String name) {
        JsonValue value = node(name);
        if (value == null) {
            return List.of();
        }
        if (value instanceof JsonValue.Arr list) {
            return list.items();
        }
        faults.form(value.place(), path(name), value.describe() + " stands where a list belongs", "write [ … ]");
        return List.of();
    }

    /** Reports at {@link #close()} that a field is missing, unless the whole object is. */
    void missing(String name, String meaning) {
        missing(List.of(name), meaning);
    }

    /** Reports at {@link #close()} that one of several fields is missing, unless the whole object is. */
    void missing(List<String> names, String meaning) {
        if (isPresent()) {
            missing.add(new Missing(names, meaning));
        }
    }

    /** Reports a field that the schema would refuse too. */
    void form(String name, String problem, String remedy) {
        faults.form(place(name), path(name), problem, remedy);
    }

    /** Reports a field that does not fit the rest. */
    void meaning(String name, String problem, String remedy) {
        faults.meaning(place(name), path(name), problem, remedy);
    }

    /** Reports a value of a row of a table, this object, that does not exceed the one in the row above; NaN stands for a value already reported. */
    void checkRises(NumberField column, double above, double value) {
        if (value <= above) {
            UnitScale usual = column.usual();
            String unit = usual.symbol().isEmpty() ? "" : " " + usual.symbol();
            meaning(
                    nameGiven(column),
                    Check.text(column.fromModel(value)) + unit + " does not exceed the row above it, "
                            + Check.text(column.fromModel(above)) + unit,
                    "list the rows in rising order");
        }
    }

    /**
     * Where the fields of other objects of the document belong, for those who put them here; holds for sections too.
     */
    void knowHomes(Supplier<Map<String, List<String>>> sectionsByField) {
        homes = sectionsByField;
    }

    /**
     * Refuses every field, here and in the sections read, that nobody asked for, and then reports what is missing: but
     * not a field for which a mistyped one has just been reported.
     */
    void close() {
        for (String name : names()) {
            if (!known.contains(name) && !numbers.containsKey(name)) {
                Set<String> all = new LinkedHashSet<>(known);
                all.addAll(numbers.keySet());
                NearestWord.near(name, all).ifPresent(meant -> missing.removeIf(m -> m.names.contains(meant)));
                faults.form(place(name), path(name), "this field is unknown here", remedyForUnknown(name, all));
            }
        }
        for (Missing field : missing) {
            String name = NearestWord.either(field.names);
            faults.form(place(), path, "the field " + name + " is missing", "give the " + field.meaning);
        }
        missing.clear();
        sections.values().forEach(ObjectReader::close);
    }

    private String remedyForUnknown(String name, Set<String> all) {
        Optional<NumberField> number = numberOf(name, numbers.values());
        if (number.isPresent() && !name.equals(number.get().name())) {
            return "write it with its unit: " + NearestWord.either(number.get().names());
        }
        List<String> elsewhere = homes.get().getOrDefault(name, List.of());
        if (!elsewhere.isEmpty()) {
            return "it belongs in " + NearestWord.either(elsewhere);
        }
        // Left out of the list: what every document has on top.
        List<String> names = known.stream()
                .filter(n -> !n.equals(DocumentKind.MARK) && !n.equals(DocumentHeader.SCHEMA))
                .toList();
        return NearestWord.remedy(
                name, all, names.isEmpty() ? "nothing may stand here" : "known here: " + String.join(", ", names));
    }

    /** A number whose unit is missing or unknown: its name without a unit is the word, or the word's beginning. */
    private static Optional<NumberField> numberOf(String wanted, Collection<NumberField> fields) {
        NumberField best = null;
        for (NumberField field : fields) {
            String base = field.base();
            boolean begins = wanted.toLowerCase(Locale.ROOT).startsWith(base.toLowerCase(Locale.ROOT));
            String rest = begins ? wanted.substring(base.length()) : "";
            boolean unitFollows = rest.isEmpty() || Character.isUpperCase(rest.charAt(0));
            if (begins
                    && unitFollows
                    && (best == null || base.length() > best.base().length())) {
                best = field;
            }
        }
        return Optional.ofNullable(best);
    }
}
