package dev.lapwright.documents;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.files.SafeFile;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.track.Track;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Writer of documents that read back as what was written. The same content always gives the same text: fields in a fixed
 * order, numbers as short as they can be. Texts go to a file through {@link SafeFile}.
 */
public final class DocumentWriter {
    private DocumentWriter() {}

    /**
     * The document of a car.
     *
     * @throws dev.lapwright.fault.InvalidValueException if the car is set up away from the standard settings of its
     *     adjustments; write its setup instead
     */
    public static String text(Car car) {
        CarWriter.checkStandard(car);
        return JsonLayout.text(CarWriter.tree(car));
    }

    /**
     * The document of a setup.
     *
     * @param car whose name is written with it, so that it is not used with another; null to leave that open
     */
    public static String text(Setup setup, Car car) {
        Map<String, Object> document = header(DocumentKind.SETUP, setup.name(), "");
        if (car != null) {
            document.put("car", car.name());
        }
        document.put("settings", setup.settings());
        return JsonLayout.text(document);
    }

    /** The document of conditions. */
    public static String text(Conditions conditions) {
        return JsonLayout.text(tree(conditions));
    }

    /** The document of a car as maps and lists, which is set up in any way. */
    public static Map<String, Object> tree(Car car) {
        return CarWriter.tree(car);
    }

    /** What a car's document says of its doubts, as maps and lists. */
    public static Map<String, Object> tree(CarDoubt doubt) {
        return DoubtReader.tree(doubt);
    }

    /** The document of a track as maps and lists. */
    public static Map<String, Object> tree(Track track) {
        return CircuitWriter.tree(track);
    }

    /** The document of conditions as maps and lists. */
    public static Map<String, Object> tree(Conditions conditions) {
        Map<String, Object> document = header(DocumentKind.CONDITIONS, conditions.name(), "");
        put(document, ConditionsReader.AIR_TEMPERATURE, conditions.airTempC());
        put(document, ConditionsReader.AIR_PRESSURE, conditions.airPressureHpa());
        put(document, ConditionsReader.HUMIDITY, conditions.humidityPercent());
        put(document, ConditionsReader.WIND_SPEED, conditions.windSpeedMps());
        put(document, ConditionsReader.WIND_FROM, conditions.windFromDeg());
        put(document, ConditionsReader.GRIP, conditions.grip());
        putStated(
                document,
                ConditionsReader.AIR_TEMPERATURE_DOUBT,
                conditions.doubt().airTempK());
        putStated(
                document,
                ConditionsReader.AIR_PRESSURE_DOUBT,
                conditions.doubt().airPressureHpa());
        putStated(document, ConditionsReader.WIND_DOUBT, conditions.doubt().windMps());
        return document;
    }

    /** The document of a track, made of stations whatever it was made of before. */
    public static String text(Track track) {
        return JsonLayout.text(CircuitWriter.tree(track));
    }

    /**
     * The document of a line. Distances are written to 0.1 mm, offsets to 0.1 µm: a lap is sensitive to the line's curvature,
     * in which rounding of neighbouring offsets shows many times over.
     */
    public static String text(StoredLine line) {
        return JsonLayout.text(LineWriter.tree(line));
    }

    static Map<String, Object> header(DocumentKind kind, String name, String description) {
        Map<String, Object> document = new LinkedHashMap<>();
        document.put(DocumentKind.MARK, kind.mark());
        document.put("name", name);
        if (!description.isEmpty()) {
            document.put("description", description);
        }
        return document;
    }

    private static void put(Map<String, Object> document, NumberField field, double value) {
        document.put(field.name(), value);
    }

    /** Writes a doubt that is stated. */
    static void putStated(Map<String, Object> document, NumberField field, OptionalDouble doubt) {
        doubt.ifPresent(value -> document.put(field.name(), field.fromModel(value)));
    }
}
