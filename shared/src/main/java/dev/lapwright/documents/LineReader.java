package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a line document. */
final class LineReader {
    /** A length written with fewer decimals than the road has is still the same length, m. */
    static final double SAME_LENGTH = 0.01;

    private static final int LEAST_POINTS = 2;

    private final Fields root;

    private LineReader(Fields root) {
        this.root = root;
    }

    static StoredLine read(DocumentSource source) {
        Faults faults = new Faults(source.name());
        return new LineReader(DocumentHeader.open(source, DocumentKind.LINE, faults)).line(source.name(), faults);
    }

    private StoredLine line(String source, Faults faults) {
        String name = root.name();
        DocumentHeader.description(root);
        String road = root.name("road", "name of the road it is driven on");
        double length = root.required(LineFields.ROAD_LENGTH);
        Map<String, LineKind> kinds = new LinkedHashMap<>();
        for (LineKind kind : LineKind.values()) {
            kinds.put(kind.word(), kind);
        }
        String kind = root.choice("kind", kinds.keySet(), "");
        String car = root.text("car", "", Fields.MAX_NAME_LENGTH);
        String setup = root.text("setup", "", Fields.MAX_NAME_LENGTH);
        double lapTime = root.optional(LineFields.LAP_TIME, Double.NaN);
        double margin = root.optional(LineFields.MARGIN, Double.NaN);
        double[] distances = list(LineFields.DISTANCES);
        double[] offsets = list(LineFields.OFFSETS);
        root.close();
        faults.throwIfAny();
        checkShape(length, distances, offsets);
        faults.throwIfAny();
        return new StoredLine(
                source,
                name,
                road,
                length,
                Optional.ofNullable(kinds.get(kind)),
                car,
                setup,
                maybe(lapTime),
                maybe(margin),
                distances,
                offsets);
    }

    private static OptionalDouble maybe(double value) {
        return Double.isNaN(value) ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private double[] list(NumberField field) {
        String name = field.name();
        if (!root.has(name)) {
            root.missing(name, field.meaning() + ", as a list");
        }
        double[] values = root.numbers(field);
        if (root.node(name) instanceof Node.Arr array && array.items().size() < LEAST_POINTS) {
            root.form(name, array.items().size() + " are too few", "give at least " + LEAST_POINTS);
        }
        return values;
    }

    private void checkShape(double length, double[] distances, double[] offsets) {
        String at = LineFields.DISTANCES.name();
        int last = distances.length - 1;
        if (offsets.length != distances.length) {
            root.meaning(
                    LineFields.OFFSETS.name(),
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
