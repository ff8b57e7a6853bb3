package dev.lapwright.charts;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import java.util.Objects;

/**
 * A force over road speed, as {@link Traction} draws it: what a gear gives at the wheels, or what the car must overcome.
 * Arrays are copied in and out.
 *
 * @param name short, such as {@code 3} for a gear or {@code resistance with a tow}; not blank
 * @param speeds m/s, rising, two or more
 * @param forces N, one for each speed
 */
public record ForceCurve(String name, double[] speeds, double[] forces) {
    public ForceCurve {
        if (name.isBlank()) {
            throw new InvalidValueException("curve name", "it is blank", "give each curve a short name");
        }
        if (speeds.length < 2 || forces.length != speeds.length) {
            throw new InvalidValueException(
                    "curve " + name,
                    speeds.length + " speeds and " + forces.length + " forces make no curve",
                    "give two or more of each, as many of one as of the other");
        }
        for (double force : forces) {
            Check.finite("force of curve " + name, force);
        }
        speeds = Check.rising("speeds of curve " + name, speeds).clone();
        forces = forces.clone();
    }

    @Override
    public double[] speeds() {
        return speeds.clone();
    }

    @Override
    public double[] forces() {
        return forces.clone();
    }

    /** The force at a speed, linear between points; NaN beyond the ends. */
    double at(double speed) {
        int last = speeds.length - 1;
        if (!(speed >= speeds[0] && speed <= speeds[last])) {
            return Double.NaN;
        }
        int place = Arrays.binarySearch(speeds, speed);
        if (place >= 0) {
            return forces[place];
        }
        int above = -place - 1;
        double part = (speed - speeds[above - 1]) / (speeds[above] - speeds[above - 1]);
        return forces[above - 1] + part * (forces[above] - forces[above - 1]);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ForceCurve that
                && name.equals(that.name)
                && Arrays.equals(speeds, that.speeds)
                && Arrays.equals(forces, that.forces);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, Arrays.hashCode(speeds), Arrays.hashCode(forces));
    }

    @Override
    public String toString() {
        return "curve " + name + ", " + speeds.length + " points";
    }
}
