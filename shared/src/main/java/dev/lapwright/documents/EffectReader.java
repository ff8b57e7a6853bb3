package dev.lapwright.documents;

import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import dev.lapwright.text.NearestWord;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Reader of how an adjustment moves one quantity: directly, by offset and factor, by so much for each unit, or by a table.
 */
final class EffectReader {
    static final NumberField OFFSET =
            AdjustmentReader.number("offset", -NumberField.UNBOUNDED, "value of the quantity at setting 0");
    static final NumberField FACTOR =
            AdjustmentReader.number("factor", -NumberField.UNBOUNDED, "growth of the quantity for each unit");
    static final NumberField PER_UNIT = AdjustmentReader.number(
            "perUnit", -NumberField.UNBOUNDED, "change of the quantity for each unit away from the standard");
    static final NumberField SETTING =
            AdjustmentReader.number("setting", -NumberField.UNBOUNDED, "setting of the adjustment");
    static final NumberField VALUE =
            AdjustmentReader.number("value", -NumberField.UNBOUNDED, "value of the quantity in its unit");

    private static final List<String> WAYS = List.of("factor", "perUnit", "table");

    private final FaultList faults;
    private final Map<String, Unit> quantities;

    EffectReader(FaultList faults, Map<String, Unit> quantities) {
        this.faults = faults;
        this.quantities = quantities;
    }

    /** The effect, or null if it has faults, which have been reported. */
    Effect read(ObjectReader move, Unit unit, boolean unitKnown, double min, double max) {
        String quantity = quantity(move);
        double offset = move.optional(OFFSET, 0);
        double factor = move.optional(FACTOR, Double.NaN);
        double perUnit = move.optional(PER_UNIT, Double.NaN);
        List<double[]> table = table(move, min, max);
        move.close();
        List<String> given = WAYS.stream().filter(move::has).toList();
        if (given.size() > 1) {
            move.form(
                    given.get(1),
                    "it is given beside " + given.get(0) + ", and the two say different things",
                    "keep one of factor, perUnit and table");
            return null;
        }
        if (move.has(OFFSET) && !move.has(FACTOR)) {
            move.form("offset", "it stands without a factor", "add the factor, or remove it");
            return null;
        }
        if (quantity == null) {
            return null;
        }
        if (given.isEmpty()) {
            return unitKnown ? direct(move, quantity, unit) : null;
        }
        return switch (given.get(0)) {
            case "factor" -> Double.isFinite(offset + factor) ? new Effect.Absolute(quantity, offset, factor) : null;
            case "perUnit" -> Double.isFinite(perUnit) ? new Effect.Relative(quantity, perUnit) : null;
            default -> tabulated(quantity, table);
        };
    }

    private String quantity(ObjectReader move) {
        if (!move.has("quantity")) {
            move.missing("quantity", "path of the quantity it moves, as in aero.wings.rear.angleDeg");
        }
        String quantity = move.text("quantity", null, ObjectReader.MAX_NAME_LENGTH);
        if (quantity != null && !quantities.containsKey(quantity)) {
            move.meaning(
                    "quantity",
                    "this car has no quantity " + Excerpt.of(quantity),
                    NearestWord.remedy(quantity, quantities.keySet(), "name one as in aero.wings.rear.angleDeg"));
            return null;
        }
        return quantity;
    }

    private Effect direct(ObjectReader move, String quantity, Unit unit) {
        Unit wanted = quantities.get(quantity);
        if (!unit.convertsTo(wanted)) {
            String from = unit == Unit.NONE ? "pure numbers" : unit.symbol();
            String to = wanted == Unit.NONE ? "a pure number" : "in " + wanted.symbol();
            move.meaning(
                    "quantity",
                    "the adjustment is set in " + from + ", but " + quantity + " is " + to,
                    "say how it moves with factor (and offset), perUnit or table");
            return null;
        }
        return directly(quantity, unit, wanted);
    }

    /** The quantity takes the setting itself, converted from the one unit to the other. */
    static Effect.Absolute directly(String quantity, Unit setting, Unit wanted) {
        double atZero = setting == wanted ? 0 : setting.convert(0, wanted);
        double factor = setting == wanted ? 1 : setting.convert(1, wanted) - atZero;
        return new Effect.Absolute(quantity, atZero, factor);
    }

    private List<double[]> table(ObjectReader move, double min, double max) {
        List<double[]> rows = new ArrayList<>();
        double above = Double.NaN;
        for (ObjectReader row : move.objects("table")) {
            double setting = row.required(SETTING);
            double value = row.required(VALUE);
            row.close();
            row.checkRises(SETTING, above, setting);
            above = setting;
            rows.add(new double[] {setting, value});
        }
        if (move.node("table") instanceof JsonValue.Arr list) {
            if (list.items().size() < 2) {
                move.form("table", "the table has fewer than 2 rows", "give the value at 2 settings or more");
            } else if (!rows.isEmpty() && (rows.get(0)[0] > min || above < max)) {
                move.meaning(
                        "table",
                        "it covers settings from " + Check.text(rows.get(0)[0]) + " to " + Check.text(above)
                                + ", but the adjustment runs from " + Check.text(min) + " to " + Check.text(max),
                        "extend the table or narrow the adjustment");
            }
        }
        return rows;
    }

    private Effect tabulated(String quantity, List<double[]> rows) {
        double[] settings = rows.stream().mapToDouble(row -> row[0]).toArray();
        double[] values = rows.stream().mapToDouble(row -> row[1]).toArray();
        // A table with reported faults makes no curve.
        return faults.isEmpty() ? new Effect.Tabulated(quantity, settings, values) : null;
    }
}
