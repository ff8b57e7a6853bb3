package dev.lapwright.cli.document;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.TextTable;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A setup beside the car's standard settings. */
public final class SetupSheet implements Sheet {
    private final Car car;
    private final Setup setup;

    private SetupSheet(Car car, Setup setup) {
        this.car = car;
        this.setup = setup;
    }

    /** @param carName the car it belongs to, or null for whatever demo car it fits */
    public static SetupSheet of(DocumentSource source, String carName) {
        if (carName != null) {
            Car car = Documents.car(carName);
            return new SetupSheet(car, Documents.setup(source, car));
        }
        for (Demos.Document demo : Documents.demos()) {
            if (demo.kind() == DocumentKind.CAR) {
                Car car = Documents.car(demo.name());
                try {
                    return new SetupSheet(car, Documents.setup(source, car));
                } catch (DocumentException fault) {
                    // Another car's setup.
                }
            }
        }
        throw new InvalidValueException(
                source.name(), "this setup fits no demo car as it stands", "say with --car for which car it is");
    }

    @Override
    public void print(Console console) {
        console.line(console.bold(setup.name()) + ", a setup for " + car.name());
        TextTable table = new TextTable()
                .words("setting")
                .words("unit")
                .numbers("value", "")
                .numbers("standard", "")
                .numbers("change", "");
        setup.settings()
                .forEach((name, value) -> table.row(
                        name,
                        car.unitOf(name).symbol(),
                        Numbers.plain(value),
                        Numbers.plain(standard(name)),
                        Numbers.signed(value - standard(name))));
        table.printTo(console);
        if (setup.settings().isEmpty()) {
            console.line("  It changes nothing.");
        }
    }

    private double standard(String name) {
        return Subject.isAdjustment(car, name) ? car.adjustment(name).standard() : car.value(name);
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "setup");
        tree.put("name", setup.name());
        tree.put("car", car.name());
        List<Object> settings = new ArrayList<>();
        setup.settings().forEach((name, value) -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", name);
            one.put("unit", car.unitOf(name).symbol());
            one.put("value", value);
            one.put("standard", standard(name));
            settings.add(one);
        });
        tree.put("settings", settings);
        return tree;
    }
}
