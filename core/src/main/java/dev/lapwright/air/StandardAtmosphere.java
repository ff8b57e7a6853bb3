package dev.lapwright.air;

import dev.lapwright.fault.Check;

/**
 * Temperature and pressure over altitude in the lowest layer of the standard atmosphere.
 *
 * <p>Source: ISO 2533:1975, identical below 32 km with the U.S. Standard Atmosphere 1976 (NOAA-S/T 76-1562). Dry air in
 * hydrostatic balance with a lapse of 6.5 K per geopotential kilometre. Neglects weather.
 */
public final class StandardAtmosphere {
    /** Sea-level temperature, K. */
    public static final double SEA_LEVEL_TEMPERATURE = 288.15;
    /** Sea-level pressure, Pa. */
    public static final double SEA_LEVEL_PRESSURE = 101_325.0;
    /** Gas constant of dry air, J/(kg K): 8314.32 / 28.9644, as the standard has it. */
    public static final double DRY_AIR_GAS_CONSTANT = 8314.32 / 28.9644;

    /** Standard acceleration of free fall, m/s²: exact, 3rd General Conference on Weights and Measures (1901). */
    public static final double GRAVITY = 9.80665;

    private static final double LAPSE_RATE = 0.0065;
    private static final double EARTH_RADIUS = 6_356_766.0;
    private static final double TOP_OF_LAYER = 11_000.0;

    private StandardAtmosphere() {}

    /**
     * @param altitude geometric altitude above mean sea level, m, from -1000 to 11 000
     * @return temperature, K
     */
    public static double temperature(double altitude) {
        Check.inRange("altitudeM", altitude, -1000, TOP_OF_LAYER);
        return SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential(altitude);
    }

    /**
     * @param altitude geometric altitude above mean sea level, m, from -1000 to 11 000
     * @return pressure, Pa
     */
    public static double pressure(double altitude) {
        double exponent = GRAVITY / (DRY_AIR_GAS_CONSTANT * LAPSE_RATE);
        return SEA_LEVEL_PRESSURE * Math.pow(temperature(altitude) / SEA_LEVEL_TEMPERATURE, exponent);
    }

    private static double geopotential(double altitude) {
        return EARTH_RADIUS * altitude / (EARTH_RADIUS + altitude);
    }
}
