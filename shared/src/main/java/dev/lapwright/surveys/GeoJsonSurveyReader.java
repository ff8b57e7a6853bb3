package dev.lapwright.surveys;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonReader;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.List;

/** Reader of the one line of a GeoJSON text (RFC 7946): a LineString, or a Polygon's ring, alone or as a feature. */
final class GeoJsonSurveyReader {
    private static final String ONE = "keep one LineString or one Polygon without holes";

    private final String source;
    private final FaultList faults;
    private final List<JsonValue.Arr> lines = new ArrayList<>();

    private final LocalPlane.Origin about;

    private GeoJsonSurveyReader(DocumentSource source, LocalPlane.Origin about) {
        this.about = about;
        this.source = source.name();
        faults = new FaultList(source.name());
    }

    /** @param about the origin of the plane; null for the middle of the points */
    static LocalPlane.Placed read(DocumentSource source, LocalPlane.Origin about) {
        GeoJsonSurveyReader reader = new GeoJsonSurveyReader(source, about);
        reader.find(JsonReader.parse(source, reader.faults));
        reader.faults.throwIfAny();
        if (reader.lines.size() != 1) {
            int count = reader.lines.size();
            throw new DocumentException(source.name(), "it holds " + (count == 0 ? "no line" : count + " lines"), ONE);
        }
        return reader.survey(reader.lines.get(0));
    }

    private void find(JsonValue node) {
        String type = node instanceof JsonValue.Obj object && member(object, "type") instanceof JsonValue.Text text
                ? text.value()
                : "";
        if (!(node instanceof JsonValue.Obj object)) {
            faults.form(node.place(), "", "this is " + node.describe(), "give a GeoJSON object");
            return;
        }
        switch (type) {
            case "FeatureCollection" -> items(member(object, "features")).forEach(this::find);
            case "GeometryCollection" -> items(member(object, "geometries")).forEach(this::find);
            case "Feature" -> {
                // A feature may have no geometry: null.
                if (member(object, "geometry") instanceof JsonValue.Obj geometry) {
                    find(geometry);
                }
            }
            case "LineString" -> line(object, member(object, "coordinates"));
            case "Polygon" -> {
                List<JsonValue> rings = items(member(object, "coordinates"));
                if (rings.size() == 1) {
                    line(object, rings.get(0));
                } else {
                    faults.form(object.place(), "", "this Polygon has " + rings.size() + " rings", ONE);
                }
            }
            case "Point", "MultiPoint" -> {
                // Marks such as the start line may stand beside the circuit.
            }
            case "" -> faults.form(object.place(), "", "it has no type", "give a GeoJSON object, RFC 7946");
            default -> faults.form(object.place(), "", "the type " + type + " is no line", ONE);
        }
    }

    private static JsonValue member(JsonValue.Obj object, String name) {
        JsonValue.Member member = object.members().get(name);
        return member == null ? new JsonValue.Null(object.place()) : member.value();
    }

    private static List<JsonValue> items(JsonValue node) {
        return node instanceof JsonValue.Arr list ? list.items() : List.of();
    }

    private void line(JsonValue.Obj object, JsonValue coordinates) {
        if (coordinates instanceof JsonValue.Arr list) {
            lines.add(list);
        } else {
            faults.form(
                    object.place(), "coordinates", "there is no list of positions", "give [[longitude, latitude], …]");
        }
    }

    private LocalPlane.Placed survey(JsonValue.Arr line) {
        List<LocalPlane.Position> positions = new ArrayList<>();
        for (JsonValue item : line.items()) {
            List<JsonValue> numbers = items(item);
            boolean fits = numbers.size() >= 2 && numbers.stream().allMatch(n -> n instanceof JsonValue.Num);
            if (fits) {
                positions.add(new LocalPlane.Position(
                        item.place(), number(numbers, 0), number(numbers, 1), number(numbers, 2)));
            } else {
                faults.form(
                        item.place(),
                        "",
                        item.describe() + " is no position",
                        "give [longitude, latitude] or [longitude, latitude, elevation]");
            }
        }
        faults.throwIfAny();
        return LocalPlane.survey(source, positions, about);
    }

    private static double number(List<JsonValue> numbers, int index) {
        return index < numbers.size() ? ((JsonValue.Num) numbers.get(index)).value() : Double.NaN;
    }
}
