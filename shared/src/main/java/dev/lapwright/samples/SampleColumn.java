package dev.lapwright.samples;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Kinds of column in a survey or a logged lap, with the headings that name each and the units it may have. */
public enum SampleColumn {
    X("x", Measure.LENGTH, "x", "east", "easting"),
    Y("y", Measure.LENGTH, "y", "north", "northing"),
    Z("z", Measure.LENGTH, "z", "elevation", "altitude", "height", "ele", "alt"),
    WIDTH("width", Measure.LENGTH, "width", "trackwidth", "roadwidth"),
    WIDTH_LEFT("width_left", Measure.LENGTH, "widthleft", "leftwidth", "wtrleft", "wleft", "trackwidthleft"),
    WIDTH_RIGHT("width_right", Measure.LENGTH, "widthright", "rightwidth", "wtrright", "wright", "trackwidthright"),
    BANK("bank", Measure.BANK, "bank", "banking", "bankangle", "crossfall", "superelevation"),
    GRIP("grip", Measure.SHARE, "grip", "gripfactor"),
    LONGITUDE("longitude", Measure.DEGREES, "longitude", "lon", "long", "lng", "gpslongitude"),
    LATITUDE("latitude", Measure.DEGREES, "latitude", "lat", "gpslatitude"),
    DISTANCE("distance", Measure.LENGTH, "distance", "dist", "s", "lapdistance"),
    TIME("time", Measure.TIME, "time", "t", "laptime", "elapsedtime", "timestamp"),
    SPEED("speed", Measure.SPEED, "speed", "v", "velocity", "gpsspeed", "groundspeed", "vehiclespeed"),
    LATERAL_ACCELERATION(
            "lateral_acceleration",
            Measure.ACCELERATION,
            "lateralacceleration",
            "lateralaccel",
            "lateralacc",
            "lataccel",
            "latacc",
            "latg",
            "glat",
            "lateralg",
            "ay",
            "accelerationy",
            "accy"),
    LAP("lap", Measure.COUNT, "lap", "lapnumber", "lapno"),
    LONGITUDINAL_ACCELERATION(
            "longitudinal_acceleration",
            Measure.ACCELERATION,
            "longitudinalacceleration",
            "longitudinalaccel",
            "longitudinalacc",
            "longaccel",
            "longacc",
            "longg",
            "glong",
            "longitudinalg",
            "ax",
            "accelerationx",
            "accx"),
    THROTTLE("throttle", Measure.PEDAL, "throttle", "throttleposition", "throttlepos", "tps", "accelerator", "pedal"),
    BRAKE("brake", Measure.PEDAL, "brake", "brakeposition", "brakepos", "brakepedal", "brakepressure", "brakepress"),
    GEAR("gear", Measure.COUNT, "gear", "gearposition", "gearnumber", "currentgear"),
    STEERING(
            "steering",
            Measure.ANGLE,
            "steering",
            "steer",
            "steeringangle",
            "steerangle",
            "steeringwheelangle",
            "steeringposition"),
    YAW_RATE("yaw_rate", Measure.TURN_RATE, "yawrate", "yaw", "yawvelocity", "gyroz", "gyroyaw", "rz");

    /** What a survey, or a logged lap that becomes one, may hold. */
    public static final Set<SampleColumn> OF_SURVEYS = EnumSet.range(X, LAP);
    /** What a log of driven laps may hold. */
    public static final Set<SampleColumn> OF_DRIVEN_LAPS = EnumSet.range(DISTANCE, YAW_RATE);

    /** Factors to SI, exact by definition (BIPM SI brochure, NIST SP 811); the first unit is the one assumed. */
    private enum Measure {
        LENGTH(
                1e9, "m", 1, "km", 1000, "ft", 0.3048, "feet", 0.3048, "yd", 0.9144, "mi", 1609.344, "cm", 0.01, "mm",
                0.001),
        TIME(1e15, "s", 1, "sec", 1, "ms", 0.001, "min", 60),
        SPEED(
                1e5,
                "m/s",
                1,
                "km/h",
                1 / 3.6,
                "kmh",
                1 / 3.6,
                "kph",
                1 / 3.6,
                "mph",
                0.44704,
                "mps",
                1,
                "m/sec",
                1,
                "ft/s",
                0.3048,
                "kn",
                1852 / 3600.0,
                "kt",
                1852 / 3600.0,
                "knots",
                1852 / 3600.0),
        ACCELERATION(1e5, "m/s²", 1, "m/s2", 1, "m/s^2", 1, "mps2", 1, "ms2", 1, "g", StandardAtmosphere.GRAVITY),
        ANGLE(1e5, "deg", Math.PI / 180, "°", Math.PI / 180, "degrees", Math.PI / 180, "rad", 1),
        TURN_RATE(
                1e5,
                "deg/s",
                Math.PI / 180,
                "°/s",
                Math.PI / 180,
                "dps",
                Math.PI / 180,
                "degs",
                Math.PI / 180,
                "rad/s",
                1,
                "rads",
                1),
        DEGREES(1e9, "deg", 1, "°", 1, "degrees", 1),
        /** Percent are the tangent: {@link SampleRows#angles} takes care of that. */
        BANK(
                1e5,
                "deg",
                Math.PI / 180,
                "°",
                Math.PI / 180,
                "degrees",
                Math.PI / 180,
                "rad",
                1,
                "%",
                0.01,
                "percent",
                0.01),
        SHARE(1e5, "", 1, "%", 0.01, "percent", 0.01),
        /** A share of the full travel; pressures are left as they are, for their greatest is not known. */
        PEDAL(1e9, "", 1, "%", 0.01, "percent", 0.01, "pct", 0.01, "bar", 1, "kpa", 1, "mpa", 1, "psi", 1),
        COUNT(1e9, "", 1);

        private final Map<String, Double> factors = new LinkedHashMap<>();

        private final double most;

        /** @param most that anybody logs, in SI: far beyond what units taken for others make, and time stamps of 1970 */
        Measure(double most, Object... unitsAndFactors) {
            this.most = most;
            for (int i = 0; i < unitsAndFactors.length; i += 2) {
                factors.put((String) unitsAndFactors[i], ((Number) unitsAndFactors[i + 1]).doubleValue());
            }
        }
    }

    private final String title;
    private final Measure measure;
    private final List<String> headings;

    SampleColumn(String title, Measure measure, String... headings) {
        this.title = title;
        this.measure = measure;
        this.headings = List.of(headings);
    }

    public String title() {
        return title;
    }

    public List<String> units() {
        return measure.factors.keySet().stream().filter(unit -> !unit.isEmpty()).toList();
    }

    public boolean knows(String unit) {
        return measure.factors.containsKey(unit.toLowerCase(Locale.ROOT));
    }

    /** To SI. */
    public double factor(String unit) {
        return measure.factors.get(unit.toLowerCase(Locale.ROOT));
    }

    /** Most that anybody logs, in SI; what is more, either way, is a slip in one row. */
    public double most() {
        return measure.most;
    }

    public String assumedUnit() {
        return measure.factors.keySet().iterator().next();
    }

    /** The column that a person names, underscores and letter case aside. */
    public static SampleColumn named(String text) {
        String plain = letters(text);
        for (SampleColumn column : values()) {
            if (letters(column.title).equals(plain) || column.headings.contains(plain)) {
                return column;
            }
        }
        throw new InvalidValueException(
                "column",
                "'" + text + "' is nothing that a column may hold",
                "use one of: "
                        + String.join(
                                ", ",
                                Arrays.stream(values()).map(SampleColumn::title).toList()));
    }

    /**
     * The choice that a person writes as {@code speed=GPS Geschw.} or {@code speed=GPS Geschw.:km/h}.
     *
     * @throws InvalidValueException if there is no equals sign, the column or the unit is not known
     */
    public static ColumnChoice choice(String text) {
        int equals = text.indexOf('=');
        if (equals < 1 || equals == text.length() - 1) {
            throw new InvalidValueException(
                    "column",
                    "'" + text + "' names no column",
                    "write it like speed=GPS speed or speed=GPS speed:km/h");
        }
        SampleColumn column = named(text.substring(0, equals));
        String heading = text.substring(equals + 1).trim();
        String unit = "";
        int colon = heading.lastIndexOf(':');
        if (colon > 0) {
            unit = heading.substring(colon + 1).trim();
            if (!column.knows(unit)) {
                throw new InvalidValueException(
                        "column",
                        "'" + unit + "' is no unit of " + column.title(),
                        "use one of: " + String.join(", ", column.units()));
            }
            heading = heading.substring(0, colon).trim();
        }
        return new ColumnChoice(column.title(), heading, unit);
    }

    /** What may stand in brackets behind a heading and is no unit. */
    private static final Set<String> NOTES = Set.of(
            "gps",
            "gnss",
            "can",
            "ecu",
            "imu",
            "raw",
            "calc",
            "calculated",
            "filtered",
            "corrected",
            "smoothed",
            "left",
            "right",
            "front",
            "rear",
            "abs",
            "absolute",
            "wgs84",
            "wgs 84",
            "nautical",
            "assumed");

    /**
     * A heading understood.
     *
     * @param unit in the words of the file; empty if it names none
     * @param unknown what stands where a unit should and is none of this column; empty if nothing does
     */
    public record Heading(SampleColumn column, String unit, String unknown) {}

    /** What a heading says, which may be in capitals, with its unit behind it; null if it is not known. */
    public static Heading of(String text) {
        // speedKmh is speed in km/h.
        String heading = text.replaceAll("([a-z])([A-Z])", "$1 $2")
                .toLowerCase(Locale.ROOT)
                .trim();
        int open = Math.max(heading.lastIndexOf('('), heading.lastIndexOf('['));
        if (open > 0) {
            String unit =
                    heading.substring(open + 1).replaceAll("[)\\]].*$", "").trim();
            SampleColumn column = byHeading(letters(heading.substring(0, open)));
            boolean known = column != null && column.knows(unit);
            boolean note = unit.isEmpty() || NOTES.contains(unit) || unit.matches("[0-9 .]*");
            return column == null ? null : column.heading(known ? unit : "", known || note ? "" : unit, heading);
        }
        SampleColumn whole = byHeading(letters(heading));
        if (whole != null) {
            return whole.heading("", "", heading);
        }
        int last = Math.max(heading.lastIndexOf('_'), heading.lastIndexOf(' '));
        if (last > 0) {
            String unit = heading.substring(last + 1);
            SampleColumn column = byHeading(letters(heading.substring(0, last)));
            if (column != null && column.knows(unit)) {
                return new Heading(column, unit, "");
            }
        }
        return null;
    }

    private Heading heading(String unit, String unknown, String heading) {
        boolean namesG = measure == Measure.ACCELERATION
                && letters(heading).matches("latg|glat|lateralg|longg|glong|longitudinalg");
        return new Heading(this, unit.isEmpty() && namesG ? "g" : unit, unknown);
    }

    private static SampleColumn byHeading(String plain) {
        for (SampleColumn column : values()) {
            if (column.headings.contains(plain)) {
                return column;
            }
        }
        return null;
    }

    private static String letters(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
    }
}
