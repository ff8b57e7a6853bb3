package dev.lapwright.car;

import dev.lapwright.air.Atmosphere;
import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;

/**
 * Conditions of a day: air, wind, and how much grip the whole surface has. Immutable.
 *
 * @param name for people
 * @param airTempC degrees Celsius
 * @param airPressureHpa static pressure, hPa
 * @param humidityPercent relative humidity
 * @param windSpeedMps m/s
 * @param windFromDeg where the wind comes from, degrees clockwise from north
 * @param grip factor on all friction: 1 is the reference, a wet road may have 0.7
 * @param doubt how well they are known
 */
public record Conditions(
        String name,
        double airTempC,
        double airPressureHpa,
        double humidityPercent,
        double windSpeedMps,
        double windFromDeg,
        double grip,
        DayDoubt doubt) {
    private static final double ZERO_CELSIUS = 273.15;

    /** 15 °C at sea level by the standard atmosphere (ISO 2533), dry, no wind. */
    public static final Conditions STANDARD =
            new Conditions("standard day", 15, StandardAtmosphere.SEA_LEVEL_PRESSURE / 100, 0, 0, 0, 1);

    /** Most wind that the model takes, m/s. */
    public static final double MAX_WIND_SPEED_MPS = 40;

    /** Names under which conditions can be swept. */
    public static final List<String> NAMES = List.of(
            "conditions.airTempC",
            "conditions.airPressureHpa",
            "conditions.humidityPercent",
            "conditions.windSpeedMps",
            "conditions.windFromDeg",
            "conditions.grip");

    private static final String PREFIX = "conditions.";

    /** Whether a name is meant as one of {@link #NAMES}, rightly or not, and not as something of a car. */
    public static boolean isMeantBy(String name) {
        return name.startsWith(PREFIX);
    }

    public Conditions {
        Check.inRange("airTempC", airTempC, -40, 60);
        Check.inRange("airPressureHpa", airPressureHpa, 400, 1100);
        Check.inRange("humidityPercent", humidityPercent, 0, 100);
        Check.inRange("windSpeedMps", windSpeedMps, 0, MAX_WIND_SPEED_MPS);
        Check.inRange("windFromDeg", windFromDeg, -360, 360);
        Check.inRange("grip", grip, 0.05, 2);
    }

    /** A day whose document says nothing of how well it is known. */
    public Conditions(
            String name,
            double airTempC,
            double airPressureHpa,
            double humidityPercent,
            double windSpeedMps,
            double windFromDeg,
            double grip) {
        this(name, airTempC, airPressureHpa, humidityPercent, windSpeedMps, windFromDeg, grip, DayDoubt.NONE);
    }

    /** The same day, known so well. */
    public Conditions doubting(DayDoubt stated) {
        return new Conditions(name, airTempC, airPressureHpa, humidityPercent, windSpeedMps, windFromDeg, grip, stated);
    }

    /** The same day under another name. */
    public Conditions named(String other) {
        return new Conditions(other, airTempC, airPressureHpa, humidityPercent, windSpeedMps, windFromDeg, grip, doubt);
    }

    /** The air. */
    public Atmosphere air() {
        return new Atmosphere(ZERO_CELSIUS + airTempC, 100 * airPressureHpa, humidityPercent / 100);
    }

    /** The wind. */
    public Wind wind() {
        return Wind.fromCompass(windSpeedMps, windFromDeg);
    }

    /** Value under one of {@link #NAMES}. */
    public double value(String quantity) {
        return switch (quantity) {
            case "conditions.airTempC" -> airTempC;
            case "conditions.airPressureHpa" -> airPressureHpa;
            case "conditions.humidityPercent" -> humidityPercent;
            case "conditions.windSpeedMps" -> windSpeedMps;
            case "conditions.windFromDeg" -> windFromDeg;
            case "conditions.grip" -> grip;
            default -> throw unknown(quantity);
        };
    }

    /** The same day with one value, under one of {@link #NAMES}, changed. */
    public Conditions with(String quantity, double v) {
        return switch (quantity) {
            case "conditions.airTempC" ->
                new Conditions(name, v, airPressureHpa, humidityPercent, windSpeedMps, windFromDeg, grip, doubt);
            case "conditions.airPressureHpa" ->
                new Conditions(name, airTempC, v, humidityPercent, windSpeedMps, windFromDeg, grip, doubt);
            case "conditions.humidityPercent" ->
                new Conditions(name, airTempC, airPressureHpa, v, windSpeedMps, windFromDeg, grip, doubt);
            case "conditions.windSpeedMps" ->
                new Conditions(name, airTempC, airPressureHpa, humidityPercent, v, windFromDeg, grip, doubt);
            case "conditions.windFromDeg" ->
                new Conditions(name, airTempC, airPressureHpa, humidityPercent, windSpeedMps, v, grip, doubt);
            case "conditions.grip" ->
                new Conditions(name, airTempC, airPressureHpa, humidityPercent, windSpeedMps, windFromDeg, v, doubt);
            default -> throw unknown(quantity);
        };
    }

    private static InvalidValueException unknown(String quantity) {
        return new InvalidValueException(
                "conditions", "'" + quantity + "' is not one of them", Nearest.remedy(quantity, NAMES));
    }
}
