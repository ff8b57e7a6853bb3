package dev.lapwright.aero;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.MonotoneCubic;
import java.util.List;

/**
 * A wing as a wind tunnel reports it: contributions to the three areas at a list of angles. Between the angles each column
 * follows a monotone piecewise cubic (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238), so that it has a continuous
 * slope and no overshoot.
 */
public final class Wing {
    private final String name;
    private final List<Setting> settings;
    private final MonotoneCubic drag;
    private final MonotoneCubic liftFront;
    private final MonotoneCubic liftRear;

    /** The contribution at one angle (degrees). */
    public record Setting(double angleDeg, Areas areas) {}

    /**
     * @param name as adjustments refer to it
     * @param settings at least one, in rising order of angle; a single one is a fixed wing
     */
    public Wing(String name, List<Setting> settings) {
        if (settings.isEmpty()) {
            throw new InvalidValueException(
                    "wing " + name, "its table is empty", "list at least one angle with its areas");
        }
        this.name = name;
        this.settings = List.copyOf(settings);
        double[] angles = settings.stream().mapToDouble(Setting::angleDeg).toArray();
        Check.rising("wing " + name + " angleDeg", angles);
        drag = column(
                angles, settings.stream().mapToDouble(s -> s.areas().drag()).toArray());
        liftFront = column(
                angles,
                settings.stream().mapToDouble(s -> s.areas().liftFront()).toArray());
        liftRear = column(
                angles, settings.stream().mapToDouble(s -> s.areas().liftRear()).toArray());
    }

    private MonotoneCubic column(double[] angles, double[] values) {
        for (double value : values) {
            Check.inRange("wing " + name + " area (m²)", value, -20, 20);
        }
        return new MonotoneCubic(angles, values);
    }

    /** Contribution at an angle (degrees) within the table. */
    public Areas at(double angleDeg) {
        Check.inRange("wing " + name + " angleDeg", angleDeg, minAngleDeg(), maxAngleDeg());
        return new Areas(drag.value(angleDeg), liftFront.value(angleDeg), liftRear.value(angleDeg));
    }

    /** Name, as adjustments refer to it. */
    public String name() {
        return name;
    }

    /** The table. */
    public List<Setting> settings() {
        return settings;
    }

    /** Smallest angle of the table, degrees. */
    public double minAngleDeg() {
        return settings.get(0).angleDeg();
    }

    /** Greatest angle of the table, degrees. */
    public double maxAngleDeg() {
        return settings.get(settings.size() - 1).angleDeg();
    }
}
