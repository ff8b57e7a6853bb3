package dev.lapwright.documents;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.DayDoubt;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Reader of a conditions document. What is left out is as on a standard day (ISO 2533), at the altitude if one is given.
 */
final class ConditionsReader {
    static final NumberField AIR_TEMPERATURE =
            NumberField.of("airTemp", Unit.CELSIUS, -40, 60, "temperature of the air");
    static final NumberField AIR_PRESSURE = NumberField.of(
            "airPressure", Unit.HECTOPASCAL, 400, 1100, "static pressure at the circuit, not reduced to sea level");
    static final NumberField ALTITUDE = NumberField.only(
            "altitude", Unit.METRE, -400, 6000, "altitude, for the pressure of the standard atmosphere");
    static final NumberField HUMIDITY = NumberField.of("humidity", Unit.PERCENT, 0, 100, "relative humidity");
    static final NumberField WIND_SPEED =
            NumberField.of("windSpeed", Unit.METRE_PER_SECOND, 0, 40, "speed of the wind");
    static final NumberField WIND_FROM =
            NumberField.of("windFrom", Unit.DEGREE, -360, 360, "where the wind comes from, clockwise from north");
    static final NumberField GRIP =
            NumberField.of("grip", Unit.NONE, 0.05, 2, "factor on all friction; 1 is the reference");

    static final NumberField AIR_TEMPERATURE_DOUBT = new NumberField(
            "airTempDoubt",
            List.of(UnitScale.identity("K", "K")),
            1e-6,
            100,
            "how far the air's temperature may be off, one standard deviation");
    static final NumberField AIR_PRESSURE_DOUBT = NumberField.only(
            "airPressureDoubt",
            Unit.HECTOPASCAL,
            1e-6,
            100,
            "how far the air's pressure may be off, one standard deviation");
    static final NumberField WIND_DOUBT = NumberField.only(
            "windDoubt",
            Unit.METRE_PER_SECOND,
            1e-6,
            40,
            "how far the wind may be off, from the north and from the east, one standard deviation each");

    /** All numbers of the day in the document's order. */
    private static final List<NumberField> OF_THE_DAY =
            List.of(AIR_TEMPERATURE, AIR_PRESSURE, ALTITUDE, HUMIDITY, WIND_SPEED, WIND_FROM, GRIP);

    /** All numbers of the document in its order. */
    static final List<NumberField> FIELDS = Stream.concat(
                    OF_THE_DAY.stream(), Stream.of(AIR_TEMPERATURE_DOUBT, AIR_PRESSURE_DOUBT, WIND_DOUBT))
            .toList();

    private static final double ZERO_CELSIUS = 273.15;

    private ConditionsReader() {}

    /** The field of a name under which conditions can be swept; empty if it is none. */
    static Optional<NumberField> field(String sweepName) {
        return OF_THE_DAY.stream()
                .filter(field -> sweepName.equals("conditions." + field.name()))
                .findFirst();
    }

    static Conditions read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        ObjectReader root = DocumentHeader.open(source, DocumentKind.CONDITIONS, faults);
        String name = root.name();
        root.description();
        Conditions standard = Conditions.STANDARD;
        double temperature = root.optional(AIR_TEMPERATURE, standard.airTempC());
        double pressure = root.optional(AIR_PRESSURE, standard.airPressureHpa());
        double altitude = root.optional(ALTITUDE, 0);
        if (root.has(ALTITUDE)) {
            if (root.has(AIR_PRESSURE)) {
                root.form(
                        ALTITUDE.name(),
                        "the pressure is already given by " + root.nameGiven(AIR_PRESSURE),
                        "keep one of the two");
            } else if (!Double.isNaN(altitude)) {
                pressure = StandardAtmosphere.pressure(altitude) / 100;
                temperature = root.has(AIR_TEMPERATURE)
                        ? temperature
                        : StandardAtmosphere.temperature(altitude) - ZERO_CELSIUS;
            }
        }
        double humidity = root.optional(HUMIDITY, standard.humidityPercent());
        double windSpeed = root.optional(WIND_SPEED, standard.windSpeedMps());
        double windFrom = root.optional(WIND_FROM, standard.windFromDeg());
        double grip = root.optional(GRIP, standard.grip());
        OptionalDouble temperatureDoubt = root.maybe(AIR_TEMPERATURE_DOUBT);
        OptionalDouble pressureDoubt = root.maybe(AIR_PRESSURE_DOUBT);
        OptionalDouble windDoubt = root.maybe(WIND_DOUBT);
        root.close();
        faults.throwIfAny();
        try {
            return new Conditions(
                    name,
                    temperature,
                    pressure,
                    humidity,
                    windSpeed,
                    windFrom,
                    grip,
                    new DayDoubt(temperatureDoubt, pressureDoubt, windDoubt));
        } catch (InvalidValueException e) {
            faults.meaning(TextPlace.NONE, "", e);
            faults.throwIfAny();
            throw e;
        }
    }
}
