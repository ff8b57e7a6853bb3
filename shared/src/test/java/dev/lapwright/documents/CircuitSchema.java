package dev.lapwright.documents;

import dev.lapwright.track.RoadDoubt;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The schema of a circuit. */
final class CircuitSchema {
    private CircuitSchema() {}

    static void fill(ObjectSchema circuit) {
        Map<String, Object> closed = new LinkedHashMap<>();
        closed.put("description", "whether the end joins the start; false for an open run such as a hillclimb");
        closed.put("type", "boolean");
        Map<String, Object> path = new LinkedHashMap<>();
        path.put(
                "description",
                "whether the path is the road's own line, between its widths, or one that a car drove; where it is left out,"
                        + " stations without a width are driven, all else is the road");
        path.put("enum", CircuitReader.WORDS);
        circuit.required("closed", closed)
                .optional(CircuitReader.PATH, path)
                .optional(RoadFields.START_HEADING, 90)
                .optional(RoadFields.START_ALTITUDE, 0)
                .optional(RoadFields.ENTRY_SPEED, 0)
                .optional(RoadFields.EASE_LENGTH, 40)
                .optional(RoadFields.TRANSITION_LENGTH, 20)
                .optional(RoadFields.CLOSURE_TOLERANCE, 1)
                .optional(RoadFields.CURVATURE_DOUBT, Double.NaN)
                .optional(RoadFields.WIDTH_DOUBT, Double.NaN)
                .optional(RoadFields.GRIP_DOUBT, Double.NaN)
                .optional(RoadFields.CURVATURE_ERROR_LENGTH, RoadDoubt.USUAL_ERROR_LENGTH)
                .optional(
                        "sectorEndsM",
                        ObjectSchema.list(
                                "distances at which the timing sectors end, rising, the last at the end of the lap",
                                1,
                                ObjectSchema.number(RoadFields.SECTOR_ENDS, RoadFields.SECTOR_ENDS.usual())))
                .optional(
                        "segments",
                        ObjectSchema.list(
                                "pieces of road in driving order",
                                1,
                                Map.of("oneOf", List.of(straight(), arc(), clothoid()))))
                .optional("stations", ObjectSchema.list("the road at rising distances, linear between", 2, station()))
                .optional("corners", ObjectSchema.list("names of corners, with stations only", 0, corner()))
                .optional(
                        CircuitReader.TRACK_LIMITS,
                        ObjectSchema.list("track limits of stretches of road; the last that holds counts", 0, limit()))
                .rule(Map.of("oneOf", List.of(ObjectSchema.requires("segments"), ObjectSchema.requires("stations"))))
                .rule(when("closed", true, RoadFields.ENTRY_SPEED.names()))
                .rule(when("closed", false, RoadFields.CLOSURE_TOLERANCE.names()))
                .exclusive(List.of("stations"), RoadFields.EASE_LENGTH.names())
                .exclusive(List.of("stations"), RoadFields.TRANSITION_LENGTH.names())
                .exclusive(List.of("segments"), RoadFields.CURVATURE_ERROR_LENGTH.names())
                .exclusive(List.of("segments"), List.of("corners"));
    }

    private static Map<String, Object> when(String name, boolean value, List<String> forbidden) {
        Map<String, Object> rule = new LinkedHashMap<>();
        Map<String, Object> condition = new LinkedHashMap<>();
        condition.put("properties", Map.of(name, Map.of("const", value)));
        condition.put("required", List.of(name));
        rule.put("if", condition);
        List<Object> any = new ArrayList<>();
        forbidden.forEach(other -> any.add(ObjectSchema.requires(other)));
        rule.put("then", Map.of("not", Map.of("anyOf", any)));
        return rule;
    }

    private static ObjectSchema segment(SegmentReader.Type type, String description) {
        return new ObjectSchema(description)
                .required("type", Map.of("const", type.word()))
                .optional("name", ObjectSchema.text("name of the corner", ObjectReader.MAX_NAME_LENGTH));
    }

    private static Map<String, Object> straight() {
        ObjectSchema object = segment(SegmentReader.Type.STRAIGHT, "a straight").required(RoadFields.LENGTH);
        return surface(object).build();
    }

    private static Map<String, Object> arc() {
        List<String> lengths = new ArrayList<>(RoadFields.LENGTH.names());
        lengths.addAll(RoadFields.ANGLE.names());
        ObjectSchema object = segment(
                        SegmentReader.Type.ARC, "an arc; either its length or the angle through which it turns")
                .required(RoadFields.RADIUS)
                .required("turn", turn())
                .optional(RoadFields.LENGTH, Double.NaN)
                .optional(RoadFields.ANGLE, Double.NaN)
                .rule(Map.of(
                        "oneOf", lengths.stream().map(ObjectSchema::requires).toList()));
        return surface(object).build();
    }

    private static Map<String, Object> clothoid() {
        ObjectSchema object = segment(
                        SegmentReader.Type.CLOTHOID,
                        "a clothoid: curvature linear in distance; straight where it has no radius")
                .required(RoadFields.LENGTH)
                .required("turn", turn())
                .optional(RoadFields.START_RADIUS, Double.NaN)
                .optional(RoadFields.END_RADIUS, Double.NaN)
                .rule(Map.of(
                        "anyOf",
                        List.of(
                                ObjectSchema.requires(RoadFields.START_RADIUS.name()),
                                ObjectSchema.requires(RoadFields.END_RADIUS.name()))));
        return surface(object).build();
    }

    private static Map<String, Object> turn() {
        return ObjectSchema.words("direction of the turn", List.of("left", "right"));
    }

    private static Map<String, Object> station() {
        ObjectSchema object = new ObjectSchema("the road at one distance; two at the same distance are a jump")
                .required(RoadFields.DISTANCE)
                .required(RoadFields.CURVATURE)
                .optional(RoadFields.VERTICAL_CURVATURE, Double.NaN)
                .optional(RoadFields.CURVATURE_DEVIATION, Double.NaN);
        return surface(object).build();
    }

    private static ObjectSchema surface(ObjectSchema object) {
        RoadFields.SURFACE.forEach(field -> object.optional(field, Double.NaN));
        List<String> sides = new ArrayList<>(RoadFields.WIDTH_LEFT.names());
        sides.addAll(RoadFields.WIDTH_RIGHT.names());
        return object.exclusive(RoadFields.WIDTH.names(), sides);
    }

    private static Map<String, Object> limit() {
        List<String> distances = new ArrayList<>(RoadFields.LIMIT_FROM.names());
        distances.addAll(RoadFields.LIMIT_TO.names());
        List<String> besides = new ArrayList<>(RoadFields.LIMIT_BEFORE.names());
        besides.addAll(RoadFields.LIMIT_AFTER.names());
        return new ObjectSchema("a track limit, of one side at least, from a distance to another or at a corner")
                .optional(RoadFields.LIMIT_FROM, Double.NaN)
                .optional(RoadFields.LIMIT_TO, Double.NaN)
                .optional(
                        CircuitReader.LIMIT_CORNER,
                        ObjectSchema.name("a corner by number or name: the limit holds from its entry to its exit"))
                .optional(RoadFields.LIMIT_BEFORE, 0)
                .optional(RoadFields.LIMIT_AFTER, 0)
                .optional(RoadFields.BEYOND_LEFT, Double.NaN)
                .optional(RoadFields.BEYOND_RIGHT, Double.NaN)
                .rule(Map.of(
                        "anyOf",
                        List.of(
                                ObjectSchema.requires(RoadFields.BEYOND_LEFT.name()),
                                ObjectSchema.requires(RoadFields.BEYOND_RIGHT.name()))))
                .rule(Map.of(
                        "anyOf",
                        List.of(
                                ObjectSchema.requires(CircuitReader.LIMIT_CORNER),
                                Map.of("required", List.of(RoadFields.LIMIT_FROM.name(), RoadFields.LIMIT_TO.name())))))
                .exclusive(List.of(CircuitReader.LIMIT_CORNER), distances)
                .exclusive(distances, besides)
                .build();
    }

    private static Map<String, Object> corner() {
        return new ObjectSchema("a corner")
                .required(RoadFields.CORNER_AT)
                .optional("name", ObjectSchema.name("its name"))
                .optional(
                        CircuitReader.MARK,
                        ObjectSchema.words(
                                "split: one corner ends here and another begins; join: the corners before and behind are"
                                        + " one",
                                CircuitReader.MARKS.keySet()))
                .rule(Map.of(
                        "anyOf", List.of(ObjectSchema.requires("name"), ObjectSchema.requires(CircuitReader.MARK))))
                .build();
    }
}
