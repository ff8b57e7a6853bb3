package dev.lapwright.documents;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Reader of the list of adjustments in a car document. */
final class AdjustmentReader {
    private static final double WIDE = NumberField.UNBOUNDED;

    static final NumberField MIN = number("min", -WIDE, "least setting");
    static final NumberField MAX = number("max", -WIDE, "greatest setting");
    static final NumberField STEP = number("step", 1e-6, "step between the settings");
    static final NumberField STANDARD = number("standard", -WIDE, "setting at which this document describes the car");
    static final NumberField CLICK_SIZE = number("clickSize", 1e-6, "how far one click turns it, counted from min");
    static final NumberField CHOICE = number("choices", -WIDE, "setting");

    /** Documents give numbers to a few digits; a standard setting may miss a quantity by this share of it. */
    static final double STANDARD_TOLERANCE = 1e-6;

    private final FaultList faults;
    private final EffectReader effects;
    private final Set<String> names = new HashSet<>();

    /** @param quantities names of what may be moved, with the unit of each */
    AdjustmentReader(FaultList faults, Map<String, Unit> quantities) {
        this.faults = faults;
        this.effects = new EffectReader(faults, quantities);
    }

    static NumberField number(String name, double min, String meaning) {
        return NumberField.only(name, Unit.NONE, min, WIDE, meaning);
    }

    /** Units by symbol, as the field {@code unit} takes them; a pure number has none. */
    static Map<String, Unit> units() {
        Map<String, Unit> units = new LinkedHashMap<>();
        for (Unit unit : Unit.values()) {
            if (unit != Unit.NONE) {
                units.put(unit.symbol(), unit);
            }
        }
        return units;
    }

    /** An adjustment, or null if it has faults, which have been reported. */
    Adjustment read(ObjectReader fields) {
        String name = adjustmentName(fields);
        String label = fields.text("label", name == null ? "" : defaultLabel(name), ObjectReader.MAX_NAME_LENGTH);
        String symbol = fields.choice("unit", units().keySet(), "");
        Unit unit = symbol == null || symbol.isEmpty() ? Unit.NONE : units().get(symbol);
        List<String> formerNames = formerNames(fields);
        double[] choices = choices(fields);
        double min = end(fields, MIN, choices, 0);
        double max = end(fields, MAX, choices, choices.length - 1);
        double step = step(fields);
        double standard = fields.required(STANDARD);
        double clickSize = fields.optional(CLICK_SIZE, 0);
        checkStandard(fields, min, max, standard, choices, unit);
        List<Effect> moves = moves(fields, unit, symbol != null, min, max);
        fields.close();
        if (name == null || label == null || moves == null) {
            return null;
        }
        try {
            List<Double> list = new ArrayList<>();
            for (double choice : choices) {
                list.add(choice);
            }
            return new Adjustment(
                    name,
                    label,
                    unit,
                    new Adjustment.Range(min, max, step, standard, clickSize, list),
                    moves,
                    formerNames);
        } catch (InvalidValueException e) {
            // NaN stands for what has been reported; anything else is news.
            if (faults.isEmpty()) {
                faults.meaning(fields.place(), fields.path(), e);
            }
            return null;
        }
    }

    private String adjustmentName(ObjectReader fields) {
        String name = fields.shortName("write it like rear-wing; what people read goes into the label");
        if (name != null && !names.add(name)) {
            fields.meaning("name", "another adjustment is called " + name, "give each its own name");
        }
        return name;
    }

    private List<String> formerNames(ObjectReader fields) {
        String former = fields.formerName();
        if (former != null && !former.isEmpty() && !names.add(former)) {
            fields.meaning("formerName", "another adjustment is called " + former, "give each its own name");
        }
        return former == null || former.isEmpty() ? List.of() : List.of(former);
    }

    private static String defaultLabel(String name) {
        return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1).replace('-', ' ');
    }

    private double[] choices(ObjectReader fields) {
        double[] choices = fields.numbers(CHOICE);
        if (choices.length == 0 && fields.node("choices") instanceof JsonValue.Arr) {
            fields.form("choices", "the list is empty", "list the settings there are, or give min, max and step");
        }
        for (int i = 1; i < choices.length; i++) {
            if (choices[i] <= choices[i - 1]) {
                faults.meaning(
                        fields.place("choices"),
                        fields.path("choices") + "[" + i + "]",
                        Check.text(choices[i]) + " does not exceed the choice before it, " + Check.text(choices[i - 1]),
                        "list the choices in rising order");
                // Their ends mean nothing then.
                return new double[] {Double.NaN};
            }
        }
        return choices;
    }

    /** An end of the range: as given or, where there are choices, the first or last of them. */
    private static double end(ObjectReader fields, NumberField field, double[] choices, int index) {
        if (!fields.has("choices")) {
            return fields.required(field);
        }
        double choice = choices.length == 0 ? Double.NaN : choices[index];
        double given = fields.optional(field, choice);
        if (Math.abs(given - choice) > 1e-9 * Math.max(1, Math.abs(choice))) {
            fields.meaning(
                    field.name(),
                    Check.text(given) + " is not the " + (index == 0 ? "first" : "last") + " of the choices, "
                            + Check.text(choice),
                    "leave it out or make them equal");
        }
        return choice;
    }

    private static double step(ObjectReader fields) {
        if (!fields.has("choices")) {
            return fields.required(STEP);
        }
        if (fields.has(STEP)) {
            fields.form("step", "an adjustment with choices has no step", "keep one of the two");
        }
        fields.optional(STEP, 0);
        return 0;
    }

    private static void checkStandard(
            ObjectReader fields, double min, double max, double standard, double[] choices, Unit unit) {
        String symbol = unit.symbol().isEmpty() ? "" : " " + unit.symbol();
        if (max < min) {
            fields.meaning("max", Check.text(max) + " is below min, " + Check.text(min), "swap them");
        } else if (standard < min || standard > max) {
            fields.meaning(
                    "standard",
                    Check.text(standard) + symbol + " is outside the range of this adjustment",
                    "allowed: " + Check.text(min) + " to " + Check.text(max) + symbol);
        } else if (choices.length > 0 && !Double.isNaN(standard)) {
            boolean found = Double.isNaN(choices[0]);
            for (double choice : choices) {
                found |= Math.abs(choice - standard) <= 1e-9 * Math.max(1, Math.abs(choice));
            }
            if (!found) {
                fields.meaning(
                        "standard", Check.text(standard) + symbol + " is not one of the choices", "take one of them");
            }
        }
    }

    private List<Effect> moves(ObjectReader fields, Unit unit, boolean unitKnown, double min, double max) {
        if (!fields.has("moves")) {
            fields.missing("moves", "quantities it moves as a list of { \"quantity\": … }");
            return null;
        }
        if (fields.node("moves") instanceof JsonValue.Arr list && list.items().isEmpty()) {
            fields.form("moves", "the list is empty", "name at least one quantity that it moves");
            return null;
        }
        List<Effect> moves = new ArrayList<>();
        boolean whole = true;
        for (ObjectReader move : fields.objects("moves")) {
            Effect effect = effects.read(move, unit, unitKnown, min, max);
            whole &= effect != null;
            moves.add(effect);
        }
        return whole ? moves : null;
    }

    /**
     * Holds an adjustment against the car it belongs to: both ends of the range must give a possible car, and the standard
     * setting must leave the car as its document describes it.
     *
     * @param bare the car without adjustments
     */
    void check(Car bare, Adjustment adjustment, ObjectReader fields) {
        boolean turns = tryAt(bare, adjustment, "min", adjustment.min(), fields)
                & tryAt(bare, adjustment, "max", adjustment.max(), fields);
        if (turns) {
            checkStandard(bare, adjustment, fields);
        }
    }

    private boolean tryAt(Car bare, Adjustment adjustment, String end, double setting, ObjectReader fields) {
        try {
            turned(bare, adjustment, setting);
            return true;
        } catch (InvalidValueException e) {
            faults.meaning(
                    fields.place(end),
                    fields.path(),
                    "at its " + end + ", " + adjustment.withUnit(setting) + ", it gives no possible car: " + e.place()
                            + ": " + e.problem(),
                    e.remedy().isEmpty() ? "narrow its range" : e.remedy());
            return false;
        }
    }

    private static Car turned(Car bare, Adjustment adjustment, double setting) {
        Car car = bare;
        for (Effect effect : adjustment.effects()) {
            double before = car.value(effect.quantity());
            car = car.with(effect.quantity(), effect.apply(before, setting, adjustment.standard()));
        }
        return car;
    }

    private void checkStandard(Car bare, Adjustment adjustment, ObjectReader fields) {
        for (Effect effect : adjustment.effects()) {
            double described = bare.value(effect.quantity());
            double set = effect.apply(described, adjustment.standard(), adjustment.standard());
            if (!agrees(set, described)) {
                faults.meaning(
                        fields.place("standard"),
                        fields.path("standard"),
                        "at " + adjustment.withUnit(adjustment.standard()) + " it sets " + effect.quantity() + " to "
                                + Check.text(set) + ", but this document gives " + Check.text(described),
                        "make the two agree: a car is described at its standard settings");
            }
        }
    }

    /** Whether two values are the same to within what a document's digits can tell. */
    static boolean agrees(double a, double b) {
        return Math.abs(a - b) <= STANDARD_TOLERANCE * Math.max(Math.abs(a), Math.abs(b)) + 1e-12;
    }
}
