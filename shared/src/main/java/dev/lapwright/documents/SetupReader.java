package dev.lapwright.documents;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import java.util.LinkedHashMap;
import java.util.Map;

/** Reader of a setup document for a car. */
final class SetupReader {
    private final Car car;
    private final FaultList faults;

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
        Setup setup = new Setup(name, settings);
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
        return value;
    }

    private void readSetting(ObjectReader fields, String setting, Map<String, Double> settings) {
        JsonValue value = fields.node(setting);
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
                        setting,
                        value.describe() + " stands where a setting belongs",
                        "give a number, or a number with its unit in double quotes, as in \"24 psi\"");
            }
        } catch (InvalidValueException e) {
            faults.meaning(fields.place(setting), fields.path(setting), e);
        }
    }
}
