package dev.lapwright.cli;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Reads what the options of a stint say. */
final class StintReading {
    private static final double PERCENT = 100;
    private static final int SECONDS_PER_MINUTE = 60;
    private static final int WITH_CLIFF = 5;

    private final StintOptions options;

    StintReading(StintOptions options) {
        this.options = options;
    }

    RaceLength race() {
        if ((options.laps == null) == (options.minutes == null)) {
            throw new InvalidValueException(
                    "race",
                    options.laps == null ? "its length is not given" : "it is both counted and timed",
                    "give --laps N or --minutes M");
        }
        double minutes = options.minutes == null ? 0 : Check.inRange("--minutes", options.minutes, 0.1, 360);
        double laps = options.laps == null ? 0 : Check.inRange("--laps", options.laps, 1, 300);
        double formation = Check.inRange("--formation-percent", options.formationPercent, 0, PERCENT);
        Check.inRange("--formation-laps", options.formationLaps, 0, 10);
        Check.inRange("--reserve-laps", options.reserveLaps, 0, 20);
        return new RaceLength(
                (int) laps,
                minutes * SECONDS_PER_MINUTE,
                options.formationLaps,
                formation / PERCENT,
                options.reserveLaps);
    }

    double density() {
        return Check.inRange("--density-kg-per-l", options.density, 0.5, 1.2);
    }

    FuelConsumption consumption() {
        String place = "--consumption " + options.consumption;
        if (options.consumption.indexOf('=') < 0) {
            return FuelConsumption.constant(number(place, options.consumption));
        }
        String[] points = options.consumption.split(",", -1);
        double[] rpm = new double[points.length];
        double[] values = new double[points.length];
        for (int i = 0; i < points.length; i++) {
            String[] parts = points[i].split("=", -1);
            if (parts.length != 2) {
                throw new InvalidValueException(
                        place, "'" + points[i] + "' is no point of a map", "write RPM=G_PER_KWH, as in 6000=290");
            }
            rpm[i] = number(place, parts[0]);
            values[i] = number(place, parts[1]);
        }
        return new FuelConsumption(rpm, values);
    }

    List<Compound> compounds() {
        if (options.compounds.isEmpty()) {
            return List.of(Compound.steady("tyre", 1, 0.001));
        }
        List<Compound> compounds = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (String text : options.compounds) {
            String place = "--compound " + text;
            String[] parts = text.split(":", -1);
            if ((parts.length != 3 && parts.length != WITH_CLIFF) || parts[0].isBlank()) {
                throw new InvalidValueException(
                        place,
                        "it is no name with grip and wear",
                        "write it as in soft:1.01:0.2 or soft:1.01:0.2:15:0.5");
            }
            if (!names.add(parts[0].trim())) {
                throw new InvalidValueException(place, "two have this name", "give each its own name");
            }
            boolean cliff = parts.length == WITH_CLIFF;
            compounds.add(new Compound(
                    parts[0].trim(),
                    number(place, parts[1]),
                    number(place, parts[2]) / PERCENT,
                    cliff ? number(place, parts[3]) : 0,
                    cliff ? number(place, parts[4]) / PERCENT : 0));
        }
        return compounds;
    }

    private static double number(String place, String text) {
        try {
            return Double.parseDouble(text.trim());
        } catch (NumberFormatException e) {
            throw new InvalidValueException(
                    place, "'" + text + "' is not a number", "write a number with a decimal point");
        }
    }
}
