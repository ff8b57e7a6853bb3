package dev.lapwright.documents;

import dev.lapwright.fault.PlainText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Builds the schema of one object: its properties, what is required, and which units exclude each other. */
final class ObjectSchema {
    private final String description;
    private final Map<String, Object> properties = new LinkedHashMap<>();
    private final List<String> required = new ArrayList<>();
    private final List<Object> rules = new ArrayList<>();
    private final List<Object> forbidden = new ArrayList<>();

    ObjectSchema(String description) {
        this.description = description;
    }

    ObjectSchema required(String name, Map<String, Object> schema) {
        required.add(name);
        return optional(name, schema);
    }

    ObjectSchema optional(String name, Map<String, Object> schema) {
        properties.put(name, schema);
        return this;
    }

    ObjectSchema required(NumberField field) {
        numbers(field, Double.NaN);
        List<String> names = field.names();
        if (names.size() == 1) {
            required.add(names.get(0));
        } else {
            rules.add(Map.of("oneOf", names.stream().map(ObjectSchema::requires).toList()));
        }
        return this;
    }

    ObjectSchema optional(NumberField field, double absent) {
        numbers(field, absent);
        List<String> names = field.names();
        for (int i = 0; i < names.size(); i++) {
            exclusive(names.subList(i, i + 1), names.subList(i + 1, names.size()));
        }
        return this;
    }

    private void numbers(NumberField field, double absent) {
        for (int i = 0; i < field.names().size(); i++) {
            UnitScale scale = field.scales().get(i);
            Map<String, Object> number = number(field, scale);
            if (!Double.isNaN(absent) && i == 0) {
                number.put("default", absent);
            }
            properties.put(field.names().get(i), number);
        }
    }

    static Map<String, Object> number(NumberField field, UnitScale scale) {
        String unit = scale.symbol().isEmpty() ? "" : " (" + scale.symbol() + ")";
        Map<String, Object> number = new LinkedHashMap<>();
        number.put("description", field.meaning() + unit);
        number.put("type", "number");
        number.put("minimum", field.min(scale));
        number.put("maximum", field.max(scale));
        return number;
    }

    ObjectSchema rule(Map<String, Object> rule) {
        rules.add(rule);
        return this;
    }

    /** Fields of which none may stand beside one of others. */
    ObjectSchema exclusive(List<String> some, List<String> others) {
        some.forEach(a -> others.forEach(b -> forbidden.add(requires(a, b))));
        return this;
    }

    static Map<String, Object> requires(String... names) {
        return Map.of("required", List.of(names));
    }

    Map<String, Object> build() {
        Map<String, Object> schema = new LinkedHashMap<>();
        if (!description.isEmpty()) {
            schema.put("description", description);
        }
        schema.put("type", "object");
        schema.put("properties", properties);
        if (!required.isEmpty()) {
            schema.put("required", required);
        }
        if (!forbidden.isEmpty()) {
            schema.put("not", Map.of("anyOf", forbidden));
        }
        if (!rules.isEmpty()) {
            schema.put("allOf", rules);
        }
        schema.put("additionalProperties", false);
        return schema;
    }

    static Map<String, Object> text(String description, int maxLength) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", description);
        schema.put("type", "string");
        schema.put("maxLength", maxLength);
        schema.put("pattern", "^[^" + PlainText.REFUSED + "]*$");
        return schema;
    }

    static Map<String, Object> lines(String description, int maxLength) {
        Map<String, Object> schema = text(description, maxLength);
        schema.put("pattern", "^[^" + PlainText.REFUSED_IN_LINES + "]*$");
        return schema;
    }

    static Map<String, Object> name(String description) {
        Map<String, Object> schema = text(description, ObjectReader.MAX_NAME_LENGTH);
        schema.put(
                "pattern",
                "^[^" + PlainText.REFUSED + "]*[^\\s" + PlainText.UNSEEN + PlainText.REFUSED + "][^" + PlainText.REFUSED
                        + "]*$");
        return schema;
    }

    static Map<String, Object> shortName(String description) {
        Map<String, Object> schema = text(description, ObjectReader.MAX_NAME_LENGTH);
        schema.put("pattern", "^" + ObjectReader.SHORT_NAME.pattern() + "$");
        return schema;
    }

    static Map<String, Object> words(String description, Iterable<String> words) {
        List<String> list = new ArrayList<>();
        words.forEach(list::add);
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", description);
        schema.put("enum", list);
        return schema;
    }

    static Map<String, Object> list(String description, int least, Object items) {
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("description", description);
        schema.put("type", "array");
        if (least > 0) {
            schema.put("minItems", least);
        }
        schema.put("items", items);
        return schema;
    }
}
