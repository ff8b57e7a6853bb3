package dev.lapwright.cli.option;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import picocli.CommandLine.Option;

/** Options for the conditions of the day: a document, and what differs from it. */
public final class ConditionsOptions {
    private static final double ZERO_CELSIUS = 273.15;
    private static final int PASCAL_PER_HECTOPASCAL = 100;

    @Option(
            names = "--conditions",
            paramLabel = "CONDITIONS",
            completionCandidates = DemoNames.Days.class,
            description =
                    "Air, wind and grip: a file, or the name of a demo. Without it: 15 degC, sea level, dry, calm.")
    public String conditions;

    @Option(names = "--air-temp-c", paramLabel = "T", description = "Air temperature, degrees Celsius.")
    public Double airTempC;

    @Option(names = "--air-pressure-hpa", paramLabel = "P", description = "Static air pressure at the circuit, hPa.")
    public Double airPressureHpa;

    @Option(
            names = "--altitude-m",
            paramLabel = "H",
            description = "Altitude, m: gives the pressure of the standard atmosphere, and its temperature where"
                    + " neither --air-temp-c nor --conditions says another.")
    public Double altitudeM;

    @Option(names = "--humidity-percent", paramLabel = "RH", description = "Relative humidity, percent.")
    public Double humidityPercent;

    @Option(names = "--wind-kmh", paramLabel = "V", description = "Wind speed, km/h.")
    public Double windKmh;

    @Option(
            names = "--wind-from-deg",
            paramLabel = "DIR",
            description = "Where the wind comes from, degrees clockwise from north.")
    public Double windFromDeg;

    @Option(
            names = "--grip",
            paramLabel = "G",
            description = "Factor on all friction: 1 is the reference, below 1 is worse.")
    public Double grip;

    /** The day they describe. */
    public Conditions day() {
        Conditions day = conditions == null ? Conditions.STANDARD : Documents.conditions(conditions);
        if (altitudeM != null) {
            if (airPressureHpa != null) {
                throw new InvalidValueException(
                        "--altitude-m", "the pressure is already given by --air-pressure-hpa", "keep one of the two");
            }
            double altitude = Check.inRange("--altitude-m", altitudeM, -400, 6000);
            double hectopascal = StandardAtmosphere.pressure(altitude) / PASCAL_PER_HECTOPASCAL;
            day = changed(day, "--altitude-m", "hPa", "conditions.airPressureHpa", hectopascal);
            if (airTempC == null && conditions == null) {
                double celsius = StandardAtmosphere.temperature(altitude) - ZERO_CELSIUS;
                day = changed(day, "--altitude-m", "degC", "conditions.airTempC", celsius);
            }
        }
        day = changed(day, "--air-temp-c", "degC", "conditions.airTempC", airTempC);
        day = changed(day, "--air-pressure-hpa", "hPa", "conditions.airPressureHpa", airPressureHpa);
        day = changed(day, "--humidity-percent", "%", "conditions.humidityPercent", humidityPercent);
        if (windKmh != null) {
            double most = Unit.METRE_PER_SECOND.convert(Conditions.MAX_WIND_SPEED_MPS, Unit.KILOMETRE_PER_HOUR);
            double wind = Check.inRange("--wind-kmh", windKmh, 0, most);
            double model = Unit.KILOMETRE_PER_HOUR.convert(wind, Unit.METRE_PER_SECOND);
            // A rounding error beyond the end of the range is none of the user's.
            day = day.with("conditions.windSpeedMps", Math.min(model, Conditions.MAX_WIND_SPEED_MPS));
        }
        day = changed(day, "--wind-from-deg", "deg", "conditions.windFromDeg", windFromDeg);
        return changed(day, "--grip", "", "conditions.grip", grip);
    }

    private static Conditions changed(Conditions day, String option, String unit, String name, Double value) {
        if (value == null) {
            return day;
        }
        try {
            return day.with(name, value);
        } catch (InvalidValueException fault) {
            String remedy = (fault.remedy() + " " + unit).trim();
            throw new InvalidValueException(option, fault.problem(), remedy);
        }
    }
}
