package dev.lapwright.cli.document;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.report.Numbers;
import java.util.LinkedHashMap;
import java.util.Map;

/** A day. */
public final class ConditionsSheet implements Sheet {
    private final Conditions day;

    public ConditionsSheet(Conditions day) {
        this.day = day;
    }

    @Override
    public void print(Console console) {
        console.line(console.bold(day.name()));
        Lines.item(
                console,
                "Air",
                Numbers.plain(day.airTempC()) + " degC, " + Numbers.fixed(day.airPressureHpa(), 1) + " hPa, humidity "
                        + Numbers.plain(day.humidityPercent()) + " %");
        double share = density() / Conditions.STANDARD.air().density();
        Lines.item(
                console,
                "Density",
                Numbers.fixed(density(), 4) + " kg/m³, " + Numbers.fixed(Unit.NONE.convert(share, Unit.PERCENT), 1)
                        + " % of a standard day");
        String wind = day.windSpeedMps() > 0
                ? Numbers.plain(day.windSpeedMps()) + " m/s (" + Numbers.kmh(day.windSpeedMps()) + " km/h) from "
                        + Numbers.plain(day.windFromDeg()) + " deg"
                : "none";
        Lines.item(console, "Wind", wind);
        Lines.item(console, "Grip", Numbers.plain(day.grip()) + " of the reference");
    }

    private double density() {
        return day.air().density();
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "conditions");
        tree.put("name", day.name());
        for (String name : Conditions.NAMES) {
            tree.put(name.substring(name.indexOf('.') + 1), day.value(name));
        }
        tree.put("airDensityKgPerM3", density());
        return tree;
    }
}
