package dev.lapwright.results.car;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;

/** Report of a conditions document: air, wind and grip of a day. */
public final class ConditionsReport {
    private ConditionsReport() {}

    /** What is said of a day, for people and machines. */
    public static Report of(Conditions day) {
        double density = day.air().density();
        double share = density / Conditions.STANDARD.air().density();
        String wind = day.windSpeedMps() > 0
                ? Numbers.plain(day.windSpeedMps()) + " m/s (" + Numbers.kmh(day.windSpeedMps()) + " km/h) from "
                        + Numbers.plain(day.windFromDeg()) + " deg"
                : "none";
        Report report = new Report()
                .title(Report.verbatim(day.name()), "")
                .item(
                        "Air",
                        Numbers.plain(day.airTempC()) + " degC, " + Numbers.fixed(day.airPressureHpa(), 1)
                                + " hPa, humidity " + Numbers.plain(day.humidityPercent()) + " %")
                .item(
                        "Density",
                        Numbers.fixed(density, 4) + " kg/m³, "
                                + Numbers.fixed(Unit.NONE.convert(share, Unit.PERCENT), 1) + " % of a standard day")
                .item("Wind", wind)
                .item("Grip", Numbers.plain(day.grip()) + " of the reference")
                .field("kind", "conditions")
                .field("name", day.name());
        for (String name : Conditions.NAMES) {
            report.field(name.substring(name.indexOf('.') + 1), day.value(name));
        }
        return report.field("airDensityKgPerM3", density);
    }
}
