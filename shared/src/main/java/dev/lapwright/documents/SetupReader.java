package dev.lapwright.documents;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reader of a setup document for a car. */
final class SetupReader {
    private final Car car;
    private final FaultList faults;
    private final List<String> notes = new ArrayList<>();

    private SetupReader(Car car, FaultList faults) {
        this.car = car;
        this.faults = faults;
    }

    static Setup read(DocumentSource source, Car car) {
        FaultList faults = new FaultList(source.name());
        return new SetupReader(car, faults).setup(DocumentHeader.open(source, DocumentKind.SETUP, faults));
    }

    private Setup setup(ObjectReader root) {
        String name = root.name();
        root.description();
        String carName = root.text("car", car.name(), ObjectReader.MAX_NAME_LENGTH);
        if (carName != null && !carName.equals(car.name())) {
            root.meaning(
                    "car",
                    "this setup is for the car '" + Excerpt.of(carName) + "', but it is used with '" + car.name() + "'",
                    "use it with its car, or take the field out");
        }
        if (!root.has("settings")) {
            root.missing("settings", "settings as { \"rear-wing\": 6, … }");
        }
        Map<String, Double> settings = new LinkedHashMap<>();
        ObjectReader fields = root.section("settings");
        for (String setting : fields.names()) {
            readSetting(fields, setting, settings);
        }
        root.close();
        faults.throwIfAny();
        Setup setup = new Setup(name, settings, notes);
        try {
            // Settings that are possible one by one may not be so together, as with two gear ratios.
            car.with(setup);
        } catch (InvalidValueException e) {
            faults.meaning(fields.place(), fields.path(), e);
            faults.throwIfAny();
        }
        return setup;
    }

    private double checked(String setting, double value) {
        car.with(setting, value);
        return SettingText.whole(setting, car.unitOf(setting), value);
    }

    /** The name that the car has for a setting today; what is called otherwise is noted. */
    private String current(ObjectReader fields, String written) {
        Optional<Adjustment> renamed = car.formerly(written);
        if (renamed.isEmpty()) {
            return written;
        }
        String now = renamed.get().name();
        if (fields.has(now)) {
            fields.meaning(written, "the same is already given as " + now, "keep one of the two");
        }
        notes.add("The setup says " + written + " for what is called " + now + " now.");
        return now;
    }

    private void readSetting(ObjectReader fields, String written, Map<String, Double> settings) {
        JsonValue value = fields.node(written);
        String setting = current(fields, written);
        try {
            if (value instanceof JsonValue.Num number && Double.isNaN(number.value())) {
                // Too large for a number, which has been reported.
                return;
            }
            if (value instanceof JsonValue.Num number) {
                settings.put(setting, checked(setting, number.value()));
            } else if (value instanceof JsonValue.Text text) {
                settings.put(setting, SettingText.value(car, setting, text.value()));
            } else {
                fields.form(
                        written,
                        value.describe() + " stands where a setting belongs",
                        "give a number, or a number with its unit in double quotes, as in \"24 psi\"");
            }
        } catch (InvalidValueException e) {
            faults.meaning(fields.place(written), fields.path(written), e);
        }
    }
}
