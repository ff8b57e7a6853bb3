package dev.lapwright.documents;

import dev.lapwright.track.survey.Survey;
import java.util.ArrayList;
import java.util.List;

/** Reads the one line of a GeoJSON text (RFC 7946): a LineString, or a Polygon's ring, alone or as a feature. */
final class GeoJsonSurvey {
    private static final String ONE = "keep one LineString or one Polygon without holes";

    private final String source;
    private final Faults faults;
    private final List<Node.Arr> lines = new ArrayList<>();

    private GeoJsonSurvey(DocumentSource source) {
        this.source = source.name();
        faults = new Faults(source.name());
    }

    static Survey read(DocumentSource source) {
        GeoJsonSurvey reader = new GeoJsonSurvey(source);
        reader.find(JsonTree.parse(source, reader.faults));
        reader.faults.throwIfAny();
        if (reader.lines.size() != 1) {
            int count = reader.lines.size();
            throw new DocumentException(source.name(), "it holds " + (count == 0 ? "no line" : count + " lines"), ONE);
        }
        return reader.survey(reader.lines.get(0));
    }

    private void find(Node node) {
        String type =
                node instanceof Node.Obj object && member(object, "type") instanceof Node.Text text ? text.value() : "";
        if (!(node instanceof Node.Obj object)) {
            faults.form(node.place(), "", "this is " + node.describe(), "give a GeoJSON object");
            return;
        }
        switch (type) {
            case "FeatureCollection" -> items(member(object, "features")).forEach(this::find);
            case "GeometryCollection" -> items(member(object, "geometries")).forEach(this::find);
            case "Feature" -> {
                // A feature may have no geometry: null.
                if (member(object, "geometry") instanceof Node.Obj geometry) {
                    find(geometry);
                }
            }
            case "LineString" -> line(object, member(object, "coordinates"));
            case "Polygon" -> {
                List<Node> rings = items(member(object, "coordinates"));
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

    private static Node member(Node.Obj object, String name) {
        Node.Member member = object.members().get(name);
        return member == null ? new Node.Null(object.place()) : member.value();
    }

    private static List<Node> items(Node node) {
        return node instanceof Node.Arr list ? list.items() : List.of();
    }

    private void line(Node.Obj object, Node coordinates) {
        if (coordinates instanceof Node.Arr list) {
            lines.add(list);
        } else {
            faults.form(
                    object.place(), "coordinates", "there is no list of positions", "give [[longitude, latitude], …]");
        }
    }

    private Survey survey(Node.Arr line) {
        List<LocalPlane.Position> positions = new ArrayList<>();
        for (Node item : line.items()) {
            List<Node> numbers = items(item);
            boolean fits = numbers.size() >= 2 && numbers.stream().allMatch(n -> n instanceof Node.Num);
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
        return LocalPlane.survey(source, positions);
    }

    private static double number(List<Node> numbers, int index) {
        return index < numbers.size() ? ((Node.Num) numbers.get(index)).value() : Double.NaN;
    }
}
