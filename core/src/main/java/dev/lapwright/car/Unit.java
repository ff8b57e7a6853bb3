package dev.lapwright.car;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;

/**
 * The units people write values in. Units of one dimension convert into each other, and a document's field may carry any
 * of them as its suffix: {@code hotPressureKpa} or {@code hotPressurePsi}.
 *
 * <p>Factors are exact by definition (international pound and inch, BIPM SI brochure, NIST SP 811).
 */
public enum Unit {
    /** A pure number. */
    NONE("", "", Dimension.NUMBER, 1),
    /** Hundredths. */
    PERCENT("%", "Percent", Dimension.NUMBER, 0.01),
    /** Steps of an adjuster; how much a click moves is for the adjustment to say. */
    CLICK("clicks", "Clicks", Dimension.CLICKS, 1),
    /** Kilogram. */
    KILOGRAM("kg", "Kg", Dimension.MASS, 1),
    /** Pound. */
    POUND("lb", "Lb", Dimension.MASS, 0.45359237),
    /** Metre. */
    METRE("m", "M", Dimension.LENGTH, 1),
    /** Millimetre. */
    MILLIMETRE("mm", "Mm", Dimension.LENGTH, 1e-3),
    /** Inch. */
    INCH("in", "In", Dimension.LENGTH, 0.0254),
    /** Square metre. */
    SQUARE_METRE("m²", "M2", Dimension.AREA, 1),
    /** Degree of angle. */
    DEGREE("deg", "Deg", Dimension.ANGLE, Math.PI / 180),
    /** Radian. */
    RADIAN("rad", "Rad", Dimension.ANGLE, 1),
    /** Newton. */
    NEWTON("N", "N", Dimension.FORCE, 1),
    /** Newton per millimetre. */
    NEWTON_PER_MM("N/mm", "NPerMm", Dimension.STIFFNESS, 1e3),
    /** Pound-force per inch. */
    POUND_PER_INCH("lbf/in", "LbfPerIn", Dimension.STIFFNESS, 4.4482216152605 / 0.0254),
    /** Newton metre. */
    NEWTON_METRE("Nm", "Nm", Dimension.TORQUE, 1),
    /** Newton metre per degree. */
    NM_PER_DEGREE("Nm/deg", "NmPerDeg", Dimension.ROLL_STIFFNESS, 180 / Math.PI),
    /** Newton metre per radian. */
    NM_PER_RADIAN("Nm/rad", "NmPerRad", Dimension.ROLL_STIFFNESS, 1),
    /** Kilopascal. */
    KILOPASCAL("kPa", "Kpa", Dimension.PRESSURE, 1e3),
    /** Hectopascal, for the weather. */
    HECTOPASCAL("hPa", "Hpa", Dimension.PRESSURE, 1e2),
    /** Pound-force per square inch. */
    PSI("psi", "Psi", Dimension.PRESSURE, 4.4482216152605 / (0.0254 * 0.0254)),
    /** Bar. */
    BAR("bar", "Bar", Dimension.PRESSURE, 1e5),
    /** Degree Celsius. */
    CELSIUS("degC", "C", Dimension.TEMPERATURE, 1),
    /** Degree Fahrenheit. */
    FAHRENHEIT("degF", "F", Dimension.TEMPERATURE, 5.0 / 9),
    /** Second. */
    SECOND("s", "S", Dimension.TIME, 1),
    /** Metre per second. */
    METRE_PER_SECOND("m/s", "Mps", Dimension.SPEED, 1),
    /** Kilometre per hour. */
    KILOMETRE_PER_HOUR("km/h", "Kmh", Dimension.SPEED, 1 / 3.6),
    /** Mile per hour. */
    MILE_PER_HOUR("mph", "Mph", Dimension.SPEED, 0.44704),
    /** Revolution per minute. */
    RPM("rpm", "Rpm", Dimension.ROTATION, 1),
    /** Kilogram square metre. */
    KILOGRAM_SQUARE_METRE("kg m²", "KgM2", Dimension.INERTIA, 1),
    /** Per radian: cornering stiffness over load. */
    PER_RADIAN("1/rad", "PerRad", Dimension.PER_ANGLE, 1),
    /** Per degree. */
    PER_DEGREE("1/deg", "PerDeg", Dimension.PER_ANGLE, 180 / Math.PI),
    /** Per metre per second. */
    PER_METRE_PER_SECOND("s/m", "PerMps", Dimension.PER_SPEED, 1),
    /** Per square kilopascal. */
    PER_KPA_SQUARED("1/kPa²", "PerKpa2", Dimension.PER_PRESSURE_SQUARED, 1),
    /** Per square kelvin. */
    PER_KELVIN_SQUARED("1/K²", "PerK2", Dimension.PER_TEMPERATURE_SQUARED, 1),
    /** Per square degree. */
    PER_DEGREE_SQUARED("1/deg²", "PerDeg2", Dimension.PER_ANGLE_SQUARED, 1),
    /** Square metre per millimetre. */
    SQUARE_METRE_PER_MM("m²/mm", "M2PerMm", Dimension.AREA_PER_LENGTH, 1),
    /** Square metre per square millimetre. */
    SQUARE_METRE_PER_MM2("m²/mm²", "M2PerMm2", Dimension.AREA_PER_LENGTH_SQUARED, 1),
    /** Newton second per metre, of a damper. */
    NEWTON_SECOND_PER_METRE("N s/m", "NsPerM", Dimension.DAMPING, 1),
    /** Pound-force second per inch, of a damper. */
    POUND_SECOND_PER_INCH("lbf s/in", "LbfSPerIn", Dimension.DAMPING, 4.4482216152605 / 0.0254),
    /** Millimetre per second, of a damper's shaft. */
    MILLIMETRE_PER_SECOND("mm/s", "MmPerS", Dimension.SHAFT_SPEED, 1e-3),
    /** Inch per second, of a damper's shaft. */
    INCH_PER_SECOND("in/s", "InPerS", Dimension.SHAFT_SPEED, 0.0254);

    private enum Dimension {
        NUMBER,
        CLICKS,
        MASS,
        LENGTH,
        AREA,
        ANGLE,
        FORCE,
        STIFFNESS,
        TORQUE,
        ROLL_STIFFNESS,
        PRESSURE,
        TEMPERATURE,
        TIME,
        SPEED,
        ROTATION,
        INERTIA,
        PER_ANGLE,
        PER_SPEED,
        PER_PRESSURE_SQUARED,
        PER_TEMPERATURE_SQUARED,
        PER_ANGLE_SQUARED,
        AREA_PER_LENGTH,
        AREA_PER_LENGTH_SQUARED,
        DAMPING,
        SHAFT_SPEED
    }

    private static final double ZERO_CELSIUS_IN_FAHRENHEIT = 32;

    private final String symbol;
    private final String fieldSuffix;
    private final Dimension dimension;
    private final double factor;

    Unit(String symbol, String fieldSuffix, Dimension dimension, double factor) {
        this.symbol = symbol;
        this.fieldSuffix = fieldSuffix;
        this.dimension = dimension;
        this.factor = factor;
    }

    /** As printed behind a number; empty for a pure number. */
    public String symbol() {
        return symbol;
    }

    /** The symbol as it follows a number: one click, two clicks. */
    public String symbolAfter(double value) {
        return this == CLICK && Math.abs(value) == 1 ? "click" : symbol;
    }

    /** As it ends a document's field name; empty for a pure number. */
    public String fieldSuffix() {
        return fieldSuffix;
    }

    /** Whether values in the two units measure the same thing. */
    public boolean convertsTo(Unit other) {
        return dimension == other.dimension;
    }

    /** Converts a value in this unit to another of the same dimension. */
    public double convert(double value, Unit to) {
        if (!convertsTo(to)) {
            throw new InvalidValueException(
                    "unit", symbol + " cannot be turned into " + to.symbol, "use one of: " + symbols(to));
        }
        if (to == this) {
            return value;
        }
        if (this == FAHRENHEIT) {
            return (value - ZERO_CELSIUS_IN_FAHRENHEIT) * factor;
        }
        if (to == FAHRENHEIT) {
            return value / to.factor + ZERO_CELSIUS_IN_FAHRENHEIT;
        }
        return value * factor / to.factor;
    }

    /** The units of the same dimension, this one first. */
    public List<Unit> alternatives() {
        List<Unit> all = new ArrayList<>();
        all.add(this);
        for (Unit unit : values()) {
            if (unit != this && convertsTo(unit)) {
                all.add(unit);
            }
        }
        return all;
    }

    /** The unit with this symbol, letter case aside. */
    public static Unit ofSymbol(String symbol) {
        String wanted = symbol.trim().toLowerCase(Locale.ROOT);
        for (Unit unit : values()) {
            if (unit != NONE && unit.symbol.toLowerCase(Locale.ROOT).equals(wanted)) {
                return unit;
            }
        }
        if (wanted.isEmpty()) {
            return NONE;
        }
        if (wanted.equals("lb/in")) {
            // As it stands on springs: a pound is a force there.
            return POUND_PER_INCH;
        }
        String singular = wanted + "s";
        for (Unit unit : values()) {
            if (unit.symbol.equals(singular)) {
                return unit;
            }
        }
        throw new InvalidValueException("unit", "'" + symbol + "' is not a unit known here", "use one of: " + all());
    }

    private static String symbols(Unit unit) {
        StringJoiner names = new StringJoiner(", ");
        unit.alternatives().forEach(u -> names.add(u.symbol));
        return names.toString();
    }

    private static String all() {
        StringJoiner names = new StringJoiner(", ");
        for (Unit unit : values()) {
            if (unit != NONE) {
                names.add(unit.symbol);
            }
        }
        return names.toString();
    }
}
