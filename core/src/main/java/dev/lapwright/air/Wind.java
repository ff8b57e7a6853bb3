package dev.lapwright.air;

import dev.lapwright.fault.Check;

/**
 * A steady, uniform wind.
 *
 * @param speed m/s, not negative
 * @param fromHeading the direction it comes FROM, rad, counter-clockwise from the x axis (east), like a track's heading
 */
public record Wind(double speed, double fromHeading) {
    /** No wind. */
    public static final Wind CALM = new Wind(0, 0);

    public Wind {
        Check.inRange("wind speed (m/s)", speed, 0, 60);
        Check.finite("wind heading (rad)", fromHeading);
    }

    /**
     * A wind given as a weather report does.
     *
     * @param speed m/s
     * @param compassDegrees the direction it comes from, degrees clockwise from north
     */
    public static Wind fromCompass(double speed, double compassDegrees) {
        return new Wind(speed, Math.toRadians(90 - compassDegrees));
    }

    /** Head wind met on a path with the given heading (rad), m/s; negative is a tail wind. */
    public double headWind(double heading) {
        return speed * Math.cos(fromHeading - heading);
    }
}
