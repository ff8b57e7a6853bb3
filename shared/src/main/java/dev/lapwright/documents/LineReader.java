package dev.lapwright.documents;

import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reader of a line document, and its numbers; all are in one unit, as the lists would be hard to read otherwise. */
final class LineReader {
    private static final double MAX_LENGTH = 200_000;

    static final NumberField ROAD_LENGTH =
            NumberField.only("roadLength", Unit.METRE, 10, MAX_LENGTH, "length of the road's own path");
    static final NumberField MARGIN =
            NumberField.only("margin", Unit.METRE, 0, 20, "free road kept between the car's side and the road's edge");
    static final NumberField MARGIN_RIGHT = NumberField.only(
            "marginRight", Unit.METRE, 0, 20, "the same on the right, where it is another than on the left");
    static final NumberField LAP_TIME =
            NumberField.only("lapTime", Unit.SECOND, 0, 1e5, "lap time of the car for which it was found");
    static final NumberField DISTANCES = NumberField.only(
            "distances", Unit.METRE, 0, MAX_LENGTH, "distance along the road's own path, from 0 to its length");
    static final NumberField OFFSETS = NumberField.only(
            "offsets", Unit.METRE, -100, 100, "offset of the car's middle from that path, positive to the left");

    /** A length written with fewer decimals than the road has is still the same length, m. */
    static final double SAME_LENGTH = 0.01;

    private static final int LEAST_POINTS = 2;

    private final ObjectReader root;

    private LineReader(ObjectReader root) {
        this.root = root;
    }

    static StoredLine read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        return new LineReader(DocumentHeader.open(source, DocumentKind.LINE, faults)).line(source.name(), faults);
    }

    private StoredLine line(String source, FaultList faults) {
        String name = root.name();
        root.description();
        String road = root.name("road", "name of the road it is driven on");
        double length = root.required(ROAD_LENGTH);
        Map<String, LineKind> kinds = new LinkedHashMap<>();
        for (LineKind kind : LineKind.values()) {
            kinds.put(kind.word(), kind);
        }
        String kind = root.choice("kind", kinds.keySet(), "");
        String car = root.text("car", "", ObjectReader.MAX_NAME_LENGTH);
        String setup = root.text("setup", "", ObjectReader.MAX_NAME_LENGTH);
        OptionalDouble lapTime = root.maybe(LAP_TIME);
        OptionalDouble margin = root.maybe(MARGIN);
        OptionalDouble marginRight = root.maybe(MARGIN_RIGHT);
        double[] distances = list(DISTANCES);
        double[] offsets = list(OFFSETS);
        root.close();
        faults.throwIfAny();
        checkShape(length, distances, offsets);
        faults.throwIfAny();
        return new StoredLine(
                source,
                name,
                road,
                length,
                new StoredLine.Search(Optional.ofNullable(kinds.get(kind)), car, setup, lapTime, margin, marginRight),
                distances,
                offsets);
    }

    private double[] list(NumberField field) {
        String name = field.name();
        if (!root.has(name)) {
            root.missing(name, field.meaning() + ", as a list");
        }
        double[] values = root.numbers(field);
        if (root.node(name) instanceof JsonValue.Arr array && array.items().size() < LEAST_POINTS) {
            root.form(name, array.items().size() + " are too few", "give at least " + LEAST_POINTS);
        }
        return values;
    }

    private void checkShape(double length, double[] distances, double[] offsets) {
        String at = DISTANCES.name();
        int last = distances.length - 1;
        if (offsets.length != distances.length) {
            root.meaning(
                    OFFSETS.name(),
                    offsets.length + " offsets stand against " + distances.length + " distances",
                    "give one for each");
        }
        List<String> falling = new ArrayList<>();
        for (int i = 1; i <= last && falling.isEmpty(); i++) {
            if (!(distances[i] > distances[i - 1])) {
                falling.add(Check.text(distances[i]) + " m follows " + Check.text(distances[i - 1]) + " m");
            }
        }
        if (!falling.isEmpty()) {
            root.meaning(at, falling.get(0), "list the distances rising");
        } else if (distances[0] != 0 || Math.abs(distances[last] - length) > SAME_LENGTH) {
            root.meaning(
                    at,
                    "they run from " + Check.text(distances[0]) + " to " + Check.text(distances[last]) + " m",
                    "let them run from 0 to the road's length, " + Check.text(length) + " m");
        }
    }
}
