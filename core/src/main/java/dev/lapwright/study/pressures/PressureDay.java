package dev.lapwright.study.pressures;

import dev.lapwright.fault.Check;

/**
 * Weather that a tyre's pressure follows.
 *
 * @param airTempC air temperature, degC
 * @param trackTempC temperature of the road's surface, degC
 * @param airPressureHpa static pressure, hPa
 */
public record PressureDay(double airTempC, double trackTempC, double airPressureHpa) {
    public PressureDay {
        Check.inRange("air temperature (degC)", airTempC, -40, 60);
        Check.inRange("track temperature (degC)", trackTempC, -40, 90);
        Check.inRange("air pressure (hPa)", airPressureHpa, 400, 1100);
    }

    /** What a running tyre warms up from: the mean of air and track, degC (common practice, no source). */
    public double referenceC() {
        return (airTempC + trackTempC) / 2;
    }

    /** The same with air and track hotter by so many kelvin. */
    public PressureDay warmer(double kelvin) {
        return new PressureDay(airTempC + kelvin, trackTempC + kelvin, airPressureHpa);
    }
}
