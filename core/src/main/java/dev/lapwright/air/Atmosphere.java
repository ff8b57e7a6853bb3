package dev.lapwright.air;

import dev.lapwright.fault.Check;

/**
 * The state of the air at the circuit.
 *
 * <p>Density is that of an ideal mixture of dry air and water vapour; the vapour's saturation pressure follows Magnus with
 * the coefficients of Sonntag (1990), good to 0.1 % between -45 and 60 °C. Neglects compressibility (4e-4 of the density at
 * sea level, against CIPM-2007).
 *
 * @param temperature K
 * @param pressure static pressure, Pa
 * @param relativeHumidity 0 to 1
 */
public record Atmosphere(double temperature, double pressure, double relativeHumidity) {
    private static final double UNIVERSAL_GAS_CONSTANT = 8.314462618;
    private static final double DRY_AIR_MOLAR_MASS = 0.0289644;
    private static final double WATER_MOLAR_MASS = 0.01801528;
    private static final double ZERO_CELSIUS = 273.15;

    public Atmosphere {
        Check.inRange("air temperature (K)", temperature, 220, 340);
        Check.inRange("air pressure (Pa)", pressure, 30_000, 115_000);
        Check.inRange("relative humidity (0 to 1)", relativeHumidity, 0, 1);
    }

    /** Dry air of the standard atmosphere at an altitude in m. */
    public static Atmosphere standard(double altitude) {
        return new Atmosphere(StandardAtmosphere.temperature(altitude), StandardAtmosphere.pressure(altitude), 0);
    }

    /** Partial pressure of the water vapour, Pa. */
    public double vapourPressure() {
        double celsius = temperature - ZERO_CELSIUS;
        double saturation = 611.2 * Math.exp(17.62 * celsius / (243.12 + celsius));
        return Math.min(relativeHumidity * saturation, pressure);
    }

    /** Pressure of the dry part, Pa: what an engine's oxygen goes by. */
    public double dryPressure() {
        return pressure - vapourPressure();
    }

    /** Density, kg/m³. */
    public double density() {
        return (dryPressure() * DRY_AIR_MOLAR_MASS + vapourPressure() * WATER_MOLAR_MASS)
                / (UNIVERSAL_GAS_CONSTANT * temperature);
    }
}
