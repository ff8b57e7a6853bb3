package dev.lapwright.documents;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Writer of a car document. Quantities that have their default value are left out, as they may be when it is read.
 */
final class CarWriter {
    private final Car car;

    private CarWriter(Car car) {
        this.car = car;
    }

    /** The car as it stands, as maps and lists in the order of its document. */
    static Map<String, Object> tree(Car car) {
        return new CarWriter(car).tree();
    }

    private Map<String, Object> tree() {
        Map<String, Object> document = DocumentWriter.header(DocumentKind.CAR, car.name(), car.description());
        document.putAll(section(CarSection.root()));
        if (!car.adjustments().isEmpty()) {
            document.put(
                    "adjustments",
                    car.adjustments().stream().map(this::adjustment).toList());
        }
        if (!car.doubt().isNone()) {
            document.put("doubt", DoubtReader.tree(car.doubt()));
        }
        return document;
    }

    /** A car set up away from its standard settings is no car document: that is what a setup is for. */
    static void checkStandard(Car car) {
        if (car.hasOwnModels()) {
            throw new InvalidValueException(
                    "car " + car.name(),
                    "an engine or aero model of its own stands in place of its document's, and no document can hold it",
                    "write the car as it was read, and give it its models again in code");
        }
        car.adjustments().forEach(adjustment -> checkStandard(car, adjustment));
    }

    private static void checkStandard(Car car, Adjustment adjustment) {
        for (Effect effect : adjustment.effects()) {
            double now = car.value(effect.quantity());
            double standard = effect.apply(now, adjustment.standard(), adjustment.standard());
            if (!AdjustmentReader.agrees(now, standard)) {
                throw new InvalidValueException(
                        "car " + car.name(),
                        "its adjustment " + adjustment.name() + " is not at its standard setting: " + effect.quantity()
                                + " is " + Check.text(now) + " instead of " + Check.text(standard),
                        "write the car as it was read, and its settings as a setup");
            }
        }
    }

    private Map<String, Object> section(CarSection section) {
        Map<String, Object> fields = new LinkedHashMap<>();
        if (section.path().equals("engine")) {
            fields.put("torqueCurve", torqueCurve());
            fields.put("powerCorrection", powerCorrection());
        } else if (section.path().equals("gearbox")) {
            fields.put("ratios", numbers(car.gearRatios()));
        }
        section.quantities().forEach((quantity, field) -> {
            if (quantity.isRequired() || car.value(quantity) != quantity.standard()) {
                fields.put(field.name(), car.value(quantity));
            }
        });
        section.sections().forEach((name, inner) -> {
            Map<String, Object> content = section(inner);
            if (!content.isEmpty()) {
                fields.put(name, content);
            }
        });
        if (section.path().equals("aero") && !car.wings().isEmpty()) {
            fields.put("wings", car.wings().stream().map(this::wing).toList());
        }
        return fields;
    }

    private List<Map<String, Object>> torqueCurve() {
        TorqueCurve curve = car.torqueCurve();
        double[] rpm = curve.rpm();
        double[] torque = curve.torqueNm();
        List<Map<String, Object>> points = new ArrayList<>();
        for (int i = 0; i < rpm.length; i++) {
            points.add(row(CarReader.ENGINE_SPEED.name(), rpm[i], CarReader.TORQUE.name(), torque[i]));
        }
        return points;
    }

    private String powerCorrection() {
        return CarReader.CORRECTIONS.entrySet().stream()
                .filter(entry -> entry.getValue() == car.powerCorrection())
                .findFirst()
                .orElseThrow()
                .getKey();
    }

    private Map<String, Object> wing(Wing wing) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("name", wing.name());
        fields.put(WingReader.ANGLE.name(), car.value("aero.wings." + wing.name() + ".angleDeg"));
        List<Map<String, Object>> table = new ArrayList<>();
        for (Wing.Setting setting : wing.settings()) {
            Map<String, Object> row = new LinkedHashMap<>();
            row.put(WingReader.ANGLE.name(), setting.angleDeg());
            row.put(WingReader.DRAG.name(), setting.areas().drag());
            row.put(WingReader.LIFT_FRONT.name(), setting.areas().liftFront());
            row.put(WingReader.LIFT_REAR.name(), setting.areas().liftRear());
            table.add(row);
        }
        fields.put("table", table);
        return fields;
    }

    private Map<String, Object> adjustment(Adjustment adjustment) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("name", adjustment.name());
        if (!adjustment.formerNames().isEmpty()) {
            fields.put("formerName", adjustment.formerNames().get(0));
        }
        fields.put("label", adjustment.label());
        if (adjustment.unit() != Unit.NONE) {
            fields.put("unit", adjustment.unit().symbol());
        }
        if (adjustment.choices().isEmpty()) {
            fields.put("min", adjustment.min());
            fields.put("max", adjustment.max());
            fields.put("step", adjustment.step());
        } else {
            fields.put("choices", adjustment.choices());
        }
        fields.put("standard", adjustment.standard());
        if (adjustment.clickSize() != 0) {
            fields.put("clickSize", adjustment.clickSize());
        }
        fields.put(
                "moves",
                adjustment.effects().stream()
                        .map(e -> move(e, adjustment.unit()))
                        .toList());
        return fields;
    }

    private Map<String, Object> move(Effect effect, Unit unit) {
        Map<String, Object> fields = new LinkedHashMap<>();
        fields.put("quantity", effect.quantity());
        if (effect instanceof Effect.Absolute absolute) {
            Unit wanted = car.unitOf(effect.quantity());
            boolean direct =
                    unit.convertsTo(wanted) && absolute.equals(EffectReader.directly(effect.quantity(), unit, wanted));
            if (!direct) {
                if (absolute.offset() != 0) {
                    fields.put("offset", absolute.offset());
                }
                fields.put("factor", absolute.factor());
            }
        } else if (effect instanceof Effect.Relative relative) {
            fields.put("perUnit", relative.perUnit());
        } else if (effect instanceof Effect.Tabulated tabulated) {
            double[] settings = tabulated.settings();
            double[] values = tabulated.values();
            List<Map<String, Object>> table = new ArrayList<>();
            for (int i = 0; i < settings.length; i++) {
                table.add(row("setting", settings[i], "value", values[i]));
            }
            fields.put("table", table);
        }
        return fields;
    }

    private static Map<String, Object> row(String first, double firstValue, String second, double secondValue) {
        Map<String, Object> row = new LinkedHashMap<>();
        row.put(first, firstValue);
        row.put(second, secondValue);
        return row;
    }

    private static List<Double> numbers(double[] values) {
        List<Double> list = new ArrayList<>();
        for (double value : values) {
            list.add(value);
        }
        return list;
    }
}
