package dev.lapwright.documents;

import dev.lapwright.report.JsonLayout;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** Builds the schemas that are shipped, from the same fields by which the documents are read. */
final class DocumentSchemas {
    private DocumentSchemas() {}

    /** Characters beyond U+FFFF, none of which can be seen in an editor, as JSON writes them in ASCII. */
    static String text(DocumentKind kind) {
        StringBuilder text = new StringBuilder();
        JsonLayout.text(schema(kind))
                .chars()
                .forEach(unit -> text.append(
                        Character.isSurrogate((char) unit)
                                ? String.format(Locale.ROOT, "\\u%04x", unit)
                                : String.valueOf((char) unit)));
        return text.toString();
    }

    private static Map<String, Object> schema(DocumentKind kind) {
        ObjectSchema object = header(kind);
        switch (kind) {
            case CAR -> CarSchema.fill(object);
            case SETUP -> setup(object);
            case CIRCUIT -> CircuitSchema.fill(object);
            case CONDITIONS -> conditions(object);
            case LINE -> line(object);
        }
        Map<String, Object> schema = new LinkedHashMap<>();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("$id", "urn:lapwright:schema:" + kind.word() + ":1");
        schema.put("title", "Lapwright " + kind.word() + " document");
        schema.putAll(object.build());
        return schema;
    }

    private static ObjectSchema header(DocumentKind kind) {
        Map<String, Object> mark = new LinkedHashMap<>();
        mark.put("description", "kind of document and version of its format");
        mark.put("const", kind.mark());
        return new ObjectSchema("")
                .optional("$schema", Map.of("type", "string"))
                .required("lapwright", mark)
                .required("name", ObjectSchema.name("name for people"))
                .optional("description", ObjectSchema.lines("what it is", ObjectReader.MAX_DESCRIPTION_LENGTH));
    }

    private static void setup(ObjectSchema setup) {
        Map<String, Object> settings = new LinkedHashMap<>();
        settings.put(
                "description",
                "adjustment or quantity of the car to its value: a number in its unit, or a text with a unit as in '24 psi'");
        settings.put("type", "object");
        settings.put("additionalProperties", Map.of("type", List.of("number", "string")));
        setup.optional("car", ObjectSchema.text("name of the car the setup is for", ObjectReader.MAX_NAME_LENGTH))
                .required("settings", settings);
    }

    private static void conditions(ObjectSchema conditions) {
        ConditionsReader.FIELDS.forEach(field -> conditions.optional(field, Double.NaN));
        conditions.exclusive(ConditionsReader.AIR_PRESSURE.names(), ConditionsReader.ALTITUDE.names());
    }

    private static void line(ObjectSchema line) {
        List<String> kinds = Stream.of(LineKind.values()).map(LineKind::word).toList();
        line.required("road", ObjectSchema.name("name of the road it is driven on"))
                .required(LineReader.ROAD_LENGTH)
                .optional("kind", ObjectSchema.words("what it was looked for as", kinds))
                .optional(
                        "car",
                        ObjectSchema.text("name of the car for which it was found", ObjectReader.MAX_NAME_LENGTH))
                .optional("setup", ObjectSchema.text("name of that car's setup", ObjectReader.MAX_NAME_LENGTH))
                .optional(LineReader.LAP_TIME, Double.NaN)
                .optional(LineReader.MARGIN, Double.NaN)
                .optional(LineReader.MARGIN_RIGHT, Double.NaN)
                .required(LineReader.DISTANCES.name(), list(LineReader.DISTANCES))
                .required(LineReader.OFFSETS.name(), list(LineReader.OFFSETS));
    }

    private static Map<String, Object> list(NumberField field) {
        return ObjectSchema.list(field.meaning(), 2, ObjectSchema.number(field, field.usual()));
    }
}
