package dev.lapwright.charts.sweep;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;

/**
 * Name of a swept axis for people.
 *
 * @param name without the unit, such as "Rear wing"
 * @param unit symbol, empty for a pure number
 */
record AxisText(String name, String unit) {
    private static final String WINGS = "aero.wings.";
    private static final String ANGLE = ".angleDeg";
    private static final String RATIOS = "gearbox.ratios.";

    static AxisText of(SweepResult sweep, SweepAxis axis) {
        String name = axis.name();
        for (Adjustment adjustment : sweep.car().adjustments()) {
            if (adjustment.name().equals(name)) {
                return new AxisText(adjustment.label(), adjustment.unit().symbol());
            }
        }
        for (Quantity quantity : Quantity.values()) {
            if (quantity.path().equals(name)) {
                return new AxisText(
                        capital(quantity.meaning().split(",")[0]),
                        quantity.unit().symbol());
            }
        }
        return switch (name) {
            case "conditions.airTempC" -> new AxisText("Air temperature", Unit.CELSIUS.symbol());
            case "conditions.airPressureHpa" -> new AxisText("Air pressure", Unit.HECTOPASCAL.symbol());
            case "conditions.humidityPercent" -> new AxisText("Relative humidity", Unit.PERCENT.symbol());
            case "conditions.windSpeedMps" -> new AxisText("Wind speed", Unit.METRE_PER_SECOND.symbol());
            case "conditions.windFromDeg" -> new AxisText("Wind from, clockwise from north", Unit.DEGREE.symbol());
            case "conditions.grip" -> new AxisText("Grip of the surface", "");
            default -> wingOrGear(sweep, name);
        };
    }

    private static AxisText wingOrGear(SweepResult sweep, String name) {
        String unit = sweep.car().unitOf(name).symbol();
        if (name.startsWith(WINGS) && name.endsWith(ANGLE)) {
            String wing = name.substring(WINGS.length(), name.length() - ANGLE.length());
            return new AxisText("Angle of wing " + wing, unit);
        }
        if (name.startsWith(RATIOS)) {
            return new AxisText("Ratio of gear " + name.substring(RATIOS.length()), unit);
        }
        return new AxisText(name, unit);
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** For an axis: "Rear wing (deg)". */
    String label() {
        return unit.isEmpty() ? name : name + " (" + unit + ")";
    }

    /** A value with its unit: "6 deg". */
    String value(double setting) {
        String number = Check.text(setting).replace('-', '\u2212');
        return unit.isEmpty() || unit.equals("%") ? number + unit : number + " " + unit;
    }

    /** A value with name and unit, for the middle of a sentence: "rear wing 6 deg". */
    String named(double setting) {
        return inSentence(name) + " " + value(setting);
    }

    /** Without the capital that begins an ordinary word; an abbreviation keeps its own. */
    static String inSentence(String text) {
        boolean word = text.length() > 1 && Character.isLowerCase(text.charAt(1));
        return word ? Character.toLowerCase(text.charAt(0)) + text.substring(1) : text;
    }
}
