package dev.lapwright.results.car;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.Subject;
import java.util.Map;

/** Report of a setup document: each setting beside the car's standard one. */
public final class SetupReport {
    private SetupReport() {}

    /** What is said of a setup for a car, for people and machines. */
    public static Report of(Car car, Setup setup) {
        Table<Map.Entry<String, Double>> table = Table.<Map.Entry<String, Double>>of("Settings")
                .words("name", "setting", Map.Entry::getKey)
                .words("unit", "unit", setting -> car.unitOf(setting.getKey()).symbol())
                .number("value", "value", "", Numbers::plain, Map.Entry::getValue)
                .number("standard", "standard", "", Numbers::plain, setting -> standard(car, setting.getKey()))
                .text("change", "", setting -> Numbers.signed(setting.getValue() - standard(car, setting.getKey())));
        Report report = new Report()
                .title(Report.verbatim(setup.name()), ", a setup for " + Report.verbatim(car.name()))
                .rows(table, setup.settings().entrySet())
                .field("kind", "setup")
                .field("name", setup.name())
                .field("car", car.name())
                .field("settings", table, setup.settings().entrySet());
        return setup.settings().isEmpty() ? report.line("  It changes nothing.") : report;
    }

    private static double standard(Car car, String name) {
        return Subject.isAdjustment(car, name) ? car.adjustment(name).standard() : car.value(name);
    }
}
