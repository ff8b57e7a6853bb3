package dev.lapwright.documents;

import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import dev.lapwright.text.TextPlace;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reader of a car document. */
final class CarReader {
    static final NumberField RATIO = NumberField.only("ratios", Unit.NONE, 0.1, 30, "gear ratio");
    static final NumberField ENGINE_SPEED = NumberField.only("rpm", Unit.NONE, 0, 60_000, "engine speed in 1/min");
    static final NumberField TORQUE = new NumberField("torque", UnitScale.TORQUE, 0, 20_000, "full-load torque");

    /** Words for the power corrections. */
    static final Map<String, PowerCorrection> CORRECTIONS = corrections();

    private final FaultList faults;
    private final ObjectReader root;
    private final Map<Quantity, Double> values = new EnumMap<>(Quantity.class);

    private CarReader(FaultList faults, ObjectReader root) {
        this.faults = faults;
        this.root = root;
    }

    private static Map<String, PowerCorrection> corrections() {
        Map<String, PowerCorrection> words = new LinkedHashMap<>();
        words.put("none", PowerCorrection.NONE);
        words.put("saeJ1349", PowerCorrection.SAE_J1349);
        words.put("iso1585", PowerCorrection.ISO_1585);
        words.put("din70020", PowerCorrection.DIN_70020);
        return words;
    }

    static Car read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        return new CarReader(faults, DocumentHeader.open(source, DocumentKind.CAR, faults)).car();
    }

    private Car car() {
        String name = root.name();
        String description = root.description();
        root.knowHomes(CarSection.root()::homes);
        readSection(CarSection.root(), root);
        WingReader wingReader = new WingReader(faults);
        Map<Wing, Double> wings = wingReader.read(root.section("aero"));
        double[] ratios = ratios(root.section("gearbox"));
        TorqueCurve curve = torqueCurve(root.section("engine"));
        String correction = root.section("engine").choice("powerCorrection", CORRECTIONS.keySet(), "saeJ1349");
        List<ObjectReader> adjustmentFields = root.objects("adjustments");
        Map<String, Unit> movable = movable(wingReader.names(), ratios.length);
        AdjustmentReader adjustmentReader = new AdjustmentReader(faults, movable);
        List<Adjustment> adjustments = new ArrayList<>();
        adjustmentFields.forEach(fields -> adjustments.add(adjustmentReader.read(fields)));
        CarDoubt doubt = new DoubtReader(faults, movable.keySet(), values).read(root.section("doubt"));
        root.close();
        faults.throwIfAny();

        PowerCorrection powerCorrection = CORRECTIONS.get(correction);
        try {
            Car bare = Car.of(name, description, values, wings, ratios, curve, powerCorrection, List.of());
            for (int i = 0; i < adjustments.size(); i++) {
                adjustmentReader.check(bare, adjustments.get(i), adjustmentFields.get(i));
            }
            faults.throwIfAny();
            return Car.of(name, description, values, wings, ratios, curve, powerCorrection, adjustments)
                    .doubting(doubt);
        } catch (InvalidValueException e) {
            faults.meaning(TextPlace.NONE, "", e);
            faults.throwIfAny();
            throw e;
        }
    }

    /** Names and units of all that an adjustment may move, as {@link Car#quantityNames()} will have them. */
    private static Map<String, Unit> movable(Set<String> wingNames, int gears) {
        Map<String, Unit> units = new LinkedHashMap<>();
        for (Quantity quantity : Quantity.values()) {
            units.put(quantity.path(), quantity.unit());
        }
        wingNames.forEach(wing -> units.put("aero.wings." + wing + ".angleDeg", Unit.DEGREE));
        for (int gear = 1; gear <= gears; gear++) {
            units.put("gearbox.ratios." + gear, Unit.NONE);
        }
        return units;
    }

    private void readSection(CarSection section, ObjectReader fields) {
        section.quantities().forEach((quantity, field) -> {
            if (quantity.isRequired()) {
                values.put(quantity, fields.required(field));
            } else {
                double value = fields.optional(field, Double.NaN);
                if (!Double.isNaN(value)) {
                    values.put(quantity, value);
                }
            }
        });
        section.sections().forEach((name, inner) -> {
            if (inner.isRequired() && !fields.has(name)) {
                fields.missing(name, "section, with " + String.join(", ", requiredNames(inner)));
            }
            readSection(inner, fields.section(name));
        });
    }

    private static List<String> requiredNames(CarSection section) {
        List<String> names = new ArrayList<>(section.requiredNames());
        if (section.path().equals("engine")) {
            names.add(0, "torqueCurve");
        } else if (section.path().equals("gearbox")) {
            names.add(0, "ratios");
        }
        return names;
    }

    private double[] ratios(ObjectReader gearbox) {
        if (!gearbox.has("ratios")) {
            gearbox.missing("ratios", "gear ratios as a list, first gear first");
        }
        double[] ratios = gearbox.numbers(RATIO);
        if (ratios.length == 0 && gearbox.node("ratios") instanceof JsonValue.Arr) {
            gearbox.form("ratios", "the list is empty", "give at least one gear ratio");
        }
        for (int i = 1; i < ratios.length; i++) {
            if (ratios[i] >= ratios[i - 1]) {
                faults.meaning(
                        gearbox.place("ratios"),
                        gearbox.path("ratios") + "[" + i + "]",
                        Check.text(ratios[i]) + " is not below the gear before it, " + Check.text(ratios[i - 1]),
                        "list the ratios from first gear up");
            }
        }
        return ratios;
    }

    private TorqueCurve torqueCurve(ObjectReader engine) {
        if (!engine.has("torqueCurve")) {
            engine.missing("torqueCurve", "full-load torque as a list of { \"rpm\", \"torqueNm\" }");
        }
        List<ObjectReader> points = engine.objects("torqueCurve");
        if (points.size() < 2 && engine.node("torqueCurve") instanceof JsonValue.Arr list) {
            if (list.items().size() < 2) {
                engine.form("torqueCurve", "the list has fewer than 2 points", "give the torque at 2 speeds or more");
            }
        }
        double[] rpm = new double[points.size()];
        double[] torque = new double[points.size()];
        for (int i = 0; i < points.size(); i++) {
            ObjectReader point = points.get(i);
            rpm[i] = point.required(ENGINE_SPEED);
            torque[i] = point.required(TORQUE);
            point.close();
            point.checkRises(ENGINE_SPEED, i == 0 ? Double.NaN : rpm[i - 1], rpm[i]);
        }
        try {
            return new TorqueCurve(rpm, torque);
        } catch (InvalidValueException e) {
            // The faults that make this happen have been reported with their lines.
            if (faults.isEmpty() && engine.has("torqueCurve")) {
                faults.meaning(engine.place("torqueCurve"), engine.path("torqueCurve"), e);
            }
            return null;
        }
    }
}
