package dev.lapwright.draft;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Size of a tyre as its side wall says it.
 *
 * @param widthMm section width, mm
 * @param diameterMm outer diameter unloaded, mm; empty where only the width is known
 * @param rimMm diameter of the rim, mm; empty where it is not known
 */
public record TyreSize(double widthMm, OptionalDouble diameterMm, OptionalDouble rimMm) {
    private static final double MM_PER_INCH = 25.4;
    private static final double LEAST_DIAMETER_MM = 400;
    private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
    /** Width, aspect or outer diameter, rim: 205/50R15, 300/680-18, 205/50 ZR 15. */
    private static final Pattern METRIC =
            Pattern.compile(NUMBER + "/" + NUMBER + "\\s*(?:-|Z?R)\\s*" + NUMBER, Pattern.CASE_INSENSITIVE);
    /** Outer diameter, width, rim, all inches: 20.0x7.5-13. */
    private static final Pattern INCHES =
            Pattern.compile(NUMBER + "x" + NUMBER + "\\s*(?:-|R)\\s*" + NUMBER, Pattern.CASE_INSENSITIVE);

    public TyreSize {
        Check.inRange("tyre width (mm)", widthMm, 80, 500);
        if (diameterMm.isPresent()) {
            Check.inRange("tyre diameter (mm)", diameterMm.getAsDouble(), 250, 1200);
        }
        if (rimMm.isPresent()) {
            Check.inRange("rim diameter (mm)", rimMm.getAsDouble(), 100, 700);
        }
        if (rimMm.isPresent() && diameterMm.isPresent() && !(rimMm.getAsDouble() < diameterMm.getAsDouble())) {
            throw new InvalidValueException(
                    "tyre size",
                    "the rim, " + Check.text(rimMm.getAsDouble()) + " mm, is not smaller than the tyre, "
                            + Check.text(diameterMm.getAsDouble()) + " mm",
                    "write it as on the side wall, like 205/50R15, 300/680-18 or 20.0x7.5-13");
        }
    }

    /** Of a tyre of which only the width is known, mm. */
    public static TyreSize ofWidth(double widthMm) {
        return new TyreSize(widthMm, OptionalDouble.empty(), OptionalDouble.empty());
    }

    /**
     * The size of a side wall: width in mm with aspect in percent and rim in inches (ISO 4000-1: 205/50R15, whose outer diameter is the rim's
     * and twice 50 % of 205 mm), the same with the outer diameter in mm (300/680-18), all in inches (20.0x7.5-13), or the width in mm
     * alone (205).
     *
     * @throws InvalidValueException if it is none of these
     */
    public static TyreSize of(String text) {
        String size = text.strip();
        Matcher metric = METRIC.matcher(size);
        if (metric.matches()) {
            double width = Double.parseDouble(metric.group(1));
            double second = Double.parseDouble(metric.group(2));
            double rim = Double.parseDouble(metric.group(3)) * MM_PER_INCH;
            double diameter = second < LEAST_DIAMETER_MM ? rim + 2 * second / 100 * width : second;
            return new TyreSize(width, OptionalDouble.of(diameter), OptionalDouble.of(rim));
        }
        Matcher inches = INCHES.matcher(size);
        if (inches.matches()) {
            return new TyreSize(
                    Double.parseDouble(inches.group(2)) * MM_PER_INCH,
                    OptionalDouble.of(Double.parseDouble(inches.group(1)) * MM_PER_INCH),
                    OptionalDouble.of(Double.parseDouble(inches.group(3)) * MM_PER_INCH));
        }
        return ofWidth(
                DecimalText.number(size)
                        .orElseThrow(
                                () -> new InvalidValueException(
                                        "tyre size",
                                        "'" + text + "' is none",
                                        "write it as on the side wall, like 205/50R15, 300/680-18 or 20.0x7.5-13, or the width in mm, like 205")));
    }

    /** Aspect ratio, height of the side over the width; 0.45 where it is not known (common practice, no source). */
    double aspect() {
        return diameterMm.isPresent() && rimMm.isPresent()
                ? 0.5 * (diameterMm.getAsDouble() - rimMm.getAsDouble()) / widthMm
                : 0.45;
    }

    /**
     * Vertical rate, N/mm: K = 0.00028 p √((1.03 − 0.4 A) w (2 A w + d)) + 3.45 in kg/mm, with p in kPa, aspect A, width w and rim d in mm
     * (Rhyne, Development of a vertical stiffness relationship for belted radial tires, Tire Science and Technology 33 (2005); from
     * memory).
     *
     * @param pressureKpa gauge, hot
     * @param usualDiameterMm taken where the size says none
     */
    double verticalRate(double pressureKpa, double usualDiameterMm) {
        double diameter = diameterMm.orElse(usualDiameterMm);
        double shape = Math.max(0.4, 1.03 - 0.4 * aspect());
        double perMm = 0.00028 * pressureKpa * Math.sqrt(shape * widthMm * diameter) + 3.45;
        return perMm * 9.80665;
    }
}
