package dev.lapwright.documents;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reader of the list of wings in a car document. */
final class WingReader {
    static final NumberField ANGLE = NumberField.of("angle", Unit.DEGREE, -90, 90, "angle of the wing");
    static final NumberField DRAG = area("cdA", "drag area the wing adds");
    static final NumberField LIFT_FRONT = area("clAFront", "front downforce area the wing adds, as axle load");
    static final NumberField LIFT_REAR = area("clARear", "rear downforce area the wing adds, as axle load");

    private final FaultList faults;
    private final Set<String> names = new HashSet<>();

    WingReader(FaultList faults) {
        this.faults = faults;
    }

    private static NumberField area(String base, String meaning) {
        return NumberField.of(base, Unit.SQUARE_METRE, -20, 20, meaning);
    }

    /** Wings with the angle (degrees) at which each stands, in the document's order; those with faults are left out. */
    Map<Wing, Double> read(ObjectReader aero) {
        Map<Wing, Double> wings = new LinkedHashMap<>();
        for (ObjectReader fields : aero.objects("wings")) {
            readWing(fields, wings);
        }
        return wings;
    }

    /** Names of the wings read, those with faults elsewhere included. */
    Set<String> names() {
        return names;
    }

    private void readWing(ObjectReader fields, Map<Wing, Double> wings) {
        String name = wingName(fields);
        double angle = fields.required(ANGLE);
        List<Wing.Setting> table = table(fields);
        fields.close();
        if (name == null || table.isEmpty()) {
            return;
        }
        double least = table.get(0).angleDeg();
        double greatest = table.get(table.size() - 1).angleDeg();
        if (least <= greatest && (angle < least || angle > greatest)) {
            fields.meaning(
                    fields.nameGiven(ANGLE),
                    Check.text(angle) + " deg is outside the wing's table",
                    "give " + Check.text(least) + (least < greatest ? " to " + Check.text(greatest) : "")
                            + " deg, or extend the table");
        }
        try {
            wings.put(new Wing(name, table), angle);
        } catch (InvalidValueException e) {
            if (faults.isEmpty()) {
                faults.meaning(fields.place(), fields.path(), e);
            }
        }
    }

    private String wingName(ObjectReader fields) {
        String name = fields.shortName("write it like rear or front-upper");
        if (name != null && !names.add(name)) {
            fields.meaning("name", "another wing is called " + name, "give each wing its own name");
        }
        return name;
    }

    private List<Wing.Setting> table(ObjectReader fields) {
        if (!fields.has("table")) {
            fields.missing("table", "areas over the angle as a list of rows");
        }
        List<Wing.Setting> table = new ArrayList<>();
        if (fields.node("table") instanceof JsonValue.Arr list && list.items().isEmpty()) {
            fields.form("table", "the table is empty", "list at least one angle with its areas");
        }
        double above = Double.NaN;
        boolean whole = true;
        for (ObjectReader row : fields.objects("table")) {
            double angle = row.required(ANGLE);
            double drag = row.required(DRAG);
            double liftFront = row.required(LIFT_FRONT);
            double liftRear = row.required(LIFT_REAR);
            row.close();
            row.checkRises(ANGLE, above, angle);
            above = angle;
            if (Double.isFinite(angle + drag + liftFront + liftRear)) {
                table.add(new Wing.Setting(angle, new Areas(drag, liftFront, liftRear)));
            } else {
                whole = false;
            }
        }
        // Of a table with faults nothing more can be said.
        if (!whole) {
            return List.of();
        }
        return table;
    }
}
