package dev.lapwright.documents;

import dev.lapwright.car.Unit;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reader of a plan of many laps. */
final class PlanReader {
    static final String MARK = "plan/1";
    private static final int MOST_TEXT = 1000;
    private static final NumberField POINTS =
            NumberField.of("points", Unit.NONE, 1, 1_000_000, "number of points of the design");
    private static final NumberField SEED =
            NumberField.of("seed", Unit.NONE, 0, 1e15, "where its random numbers begin");

    private PlanReader() {}

    static PlanDocument read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        ObjectReader root = DocumentHeader.open(source, MARK, faults);
        String name = root.name();
        root.description();
        List<String> cars = texts(root, "cars", "cars as [\"gt-talvex\", …]: files, or names of demos", true);
        List<String> circuits =
                texts(root, "circuits", "circuits as [\"harrowmere\", …]: files, or names of demos", true);
        List<String> days = texts(root, "conditions", "", false);
        String line = root.choice(
                "line", List.of(LineKind.SMOOTHEST.word(), LineKind.MIDDLE.word()), LineKind.SMOOTHEST.word());
        String design = root.choice("design", PlanDocument.DESIGNS, PlanDocument.GRID);
        if (!PlanDocument.GRID.equals(design) && !root.has(POINTS)) {
            root.missing("points", "how many points the design has");
        }
        double points = root.optional(POINTS, 1);
        double seed = root.optional(SEED, 1);
        Map<String, String> vary = new LinkedHashMap<>();
        if (root.has("vary")) {
            ObjectReader fields = root.section("vary");
            for (String axis : fields.names()) {
                String values = fields.text(axis, "", MOST_TEXT);
                if (values != null) {
                    vary.put(axis, values.strip());
                }
            }
        }
        whole(root, "points", points);
        whole(root, "seed", seed);
        root.close();
        faults.throwIfAny();
        return new PlanDocument(name, cars, circuits, days, line, design, (int) points, (long) seed, vary);
    }

    private static void whole(ObjectReader root, String field, double value) {
        if (value != Math.rint(value)) {
            root.form(field, "this is no whole number", "write it without a fraction");
        }
    }

    private static List<String> texts(ObjectReader root, String field, String meaning, boolean isNeeded) {
        List<String> texts = new ArrayList<>();
        if (!root.has(field)) {
            if (isNeeded) {
                root.missing(field, meaning);
            }
            return texts;
        }
        JsonValue value = root.node(field);
        if (value instanceof JsonValue.Arr list) {
            for (JsonValue item : list.items()) {
                if (item instanceof JsonValue.Text text && !text.value().isBlank()) {
                    texts.add(text.value());
                } else {
                    root.form(field, item.describe() + " stands where a name belongs", "write names in double quotes");
                }
            }
            if (isNeeded && list.items().isEmpty()) {
                root.form(field, "the list is empty", "name at least one");
            }
        } else {
            root.form(
                    field, value.describe() + " stands where a list belongs", "write a list of names: [\"…\", \"…\"]");
        }
        return texts;
    }
}
