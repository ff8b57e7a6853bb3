package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.FaultList;
import dev.lapwright.track.Segment;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reader of the segments of a circuit document. */
final class SegmentReader {
    static final String TURN = "turn";

    private static final List<NumberField> GEOMETRY = List.of(
            RoadFields.LENGTH, RoadFields.RADIUS, RoadFields.ANGLE, RoadFields.START_RADIUS, RoadFields.END_RADIUS);

    private final FaultList faults;
    private RoadSurface surface = RoadSurface.FIRST;

    /** Types of segment, each with the numbers that shape it. */
    enum Type {
        STRAIGHT("straight", "a", List.of(RoadFields.LENGTH)),
        ARC("arc", "an", List.of(RoadFields.RADIUS, RoadFields.LENGTH, RoadFields.ANGLE)),
        CLOTHOID("clothoid", "a", List.of(RoadFields.LENGTH, RoadFields.START_RADIUS, RoadFields.END_RADIUS));

        private final String word;
        private final String article;
        private final List<NumberField> numbers;

        Type(String word, String article, List<NumberField> numbers) {
            this.word = word;
            this.article = article;
            this.numbers = numbers;
        }

        /** As written in a document. */
        String word() {
            return word;
        }

        /** Numbers that shape it. */
        List<NumberField> numbers() {
            return numbers;
        }

        static Map<String, Type> byWord() {
            Map<String, Type> types = new LinkedHashMap<>();
            for (Type type : values()) {
                types.put(type.word, type);
            }
            return types;
        }
    }

    SegmentReader(FaultList faults) {
        this.faults = faults;
    }

    /** The segments in order; those with faults, which have been reported, are left out. */
    List<Segment> read(List<ObjectReader> list) {
        List<Segment> segments = new ArrayList<>();
        for (ObjectReader fields : list) {
            Segment segment = segment(fields);
            if (segment != null) {
                segments.add(segment);
            }
        }
        return segments;
    }

    /**
     * Reports each joint at which the slope changes too much for the length over which it is eased, at the segment after it.
     * Eased, the vertical curvature is a triangle whose peak is twice the change of slope over that length (see {@link
     * dev.lapwright.track.SegmentPath}).
     */
    void checkSlopes(List<Segment> segments, List<ObjectReader> places, boolean closed, double easeLength) {
        for (int i = closed ? 0 : 1; i < segments.size(); i++) {
            Segment before = segments.get(Math.floorMod(i - 1, segments.size()));
            Segment after = segments.get(i);
            double length = Math.min(easeLength, Math.min(before.length(), after.length()));
            double change = Math.abs(after.road().slope() - before.road().slope());
            if (2 * change / length > RoadFields.MAX_VERTICAL_CURVATURE) {
                ObjectReader fields = places.get(i);
                String field = fields.nameGiven(RoadFields.SLOPE);
                faults.meaning(
                        fields.place(field),
                        fields.path(field),
                        "the slope changes too fast from the segment before: by " + Check.text(Math.toDegrees(change))
                                + " deg within " + Check.text(length) + " m",
                        "give it " + Check.text(2 * change / RoadFields.MAX_VERTICAL_CURVATURE)
                                + " m at least, by easeLengthM and longer segments");
            }
        }
    }

    private Segment segment(ObjectReader fields) {
        if (!fields.has("type")) {
            fields.missing("type", "kind of segment: straight, arc or clothoid");
        }
        String word = fields.choice("type", Type.byWord().keySet(), null);
        Type type = word == null ? null : Type.byWord().get(word);
        String name = fields.text("name", "", ObjectReader.MAX_NAME_LENGTH);
        Map<Shape, Double> shape = type == null ? Map.of() : shape(type, fields);
        claimOthers(type, fields);
        surface = surface.next(fields);
        fields.close();
        boolean whole = type != null
                && name != null
                && surface.isComplete()
                && shape.values().stream().noneMatch(v -> Double.isNaN(v));
        if (!whole) {
            return null;
        }
        try {
            return new Segment(
                    shape.get(Shape.LENGTH),
                    shape.get(Shape.START_CURVATURE),
                    shape.get(Shape.END_CURVATURE),
                    new Segment.Road(
                            surface.slope(),
                            surface.bank(),
                            surface.grip(),
                            surface.widthLeft(),
                            surface.widthRight(),
                            surface.speedLimit()),
                    name);
        } catch (InvalidValueException e) {
            faults.meaning(fields.place(), fields.path(), e);
            return null;
        }
    }

    private enum Shape {
        LENGTH,
        START_CURVATURE,
        END_CURVATURE
    }

    private Map<Shape, Double> shape(Type type, ObjectReader fields) {
        return switch (type) {
            case STRAIGHT -> shape(fields.required(RoadFields.LENGTH), 0, 0);
            case ARC -> arc(fields);
            case CLOTHOID -> clothoid(fields);
        };
    }

    private static Map<Shape, Double> shape(double length, double startCurvature, double endCurvature) {
        Map<Shape, Double> shape = new EnumMap<>(Shape.class);
        shape.put(Shape.LENGTH, length);
        shape.put(Shape.START_CURVATURE, startCurvature);
        shape.put(Shape.END_CURVATURE, endCurvature);
        return shape;
    }

    private Map<Shape, Double> arc(ObjectReader fields) {
        double radius = fields.required(RoadFields.RADIUS);
        double length = fields.optional(RoadFields.LENGTH, Double.NaN);
        double angle = fields.optional(RoadFields.ANGLE, Double.NaN);
        double sign = turn(fields);
        if (fields.has(RoadFields.ANGLE)) {
            if (fields.has(RoadFields.LENGTH)) {
                fields.form(
                        fields.nameGiven(RoadFields.ANGLE),
                        "the arc is already given by " + RoadFields.LENGTH.name(),
                        "keep one of the two");
            }
            length = radius * angle;
        } else if (!fields.has(RoadFields.LENGTH)) {
            fields.missing(List.of("lengthM", "angleDeg"), "length of the arc, or the angle through which it turns");
        }
        return shape(length, sign / radius, sign / radius);
    }

    private Map<Shape, Double> clothoid(ObjectReader fields) {
        double length = fields.required(RoadFields.LENGTH);
        double start = fields.optional(RoadFields.START_RADIUS, Double.POSITIVE_INFINITY);
        double end = fields.optional(RoadFields.END_RADIUS, Double.POSITIVE_INFINITY);
        double sign = turn(fields);
        if (!fields.has(RoadFields.START_RADIUS) && !fields.has(RoadFields.END_RADIUS)) {
            fields.missing(List.of("startRadiusM", "endRadiusM"), "radius at one end at least, or make it a straight");
        }
        return shape(length, sign / start, sign / end);
    }

    private static double turn(ObjectReader fields) {
        if (!fields.has(TURN)) {
            fields.missing(TURN, "direction, left or right");
        }
        String turn = fields.choice(TURN, List.of("left", "right"), null);
        return turn == null ? Double.NaN : turn.equals("left") ? 1 : -1;
    }

    /** Names what other types have as such, rather than as unknown. */
    private static void claimOthers(Type type, ObjectReader fields) {
        for (NumberField field : GEOMETRY) {
            boolean mine = type != null && type.numbers.contains(field);
            for (String name : mine ? List.<String>of() : field.names()) {
                fields.node(name);
                refuse(type, fields, name);
            }
        }
        if (type == null || type == Type.STRAIGHT) {
            fields.node(TURN);
            refuse(type, fields, TURN);
        }
    }

    private static void refuse(Type type, ObjectReader fields, String name) {
        if (type != null && fields.has(name)) {
            fields.form(name, type.article + " " + type.word + " has no " + name, "remove it, or change the type");
        }
    }
}
