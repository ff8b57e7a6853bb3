package dev.lapwright.powertrain;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;

/**
 * Specific fuel consumption of an engine at full load over engine speed, g of fuel for each kWh at its crankshaft: linear
 * between the points of a map, level beyond them. Neglects part load, where an engine uses more for each kWh.
 */
public final class FuelConsumption {
    /**
     * Lower heating value of petrol, J/kg: 116 090 Btu per US gallon at 2819 g per gallon (U.S. Department of Energy,
     * Alternative Fuels Data Center, from GREET; the density from memory).
     */
    public static final double HEATING_VALUE = 43.45e6;
    /** Density of petrol, kg/l: the middle of what EN 228:2012 allows at 15 degC is 0.7475. */
    public static final double DENSITY = 0.745;
    /**
     * Constant for a racing engine without a turbocharger that runs rich at full load, g/kWh: 0.5 lb/hp h (J. B. Heywood,
     * Internal Combustion Engine Fundamentals (1988), from memory).
     */
    public static final double RACING_ENGINE = 304;

    private static final double LEAST = 120;
    private static final double MOST = 900;
    private static final double JOULE_PER_KWH = 3.6e6;
    private static final double GRAM_PER_KG = 1000;

    private final double[] rpm;
    private final double[] gramPerKwh;

    /**
     * @param rpm engine speeds, 1/min, rising; at least one; copied
     * @param gramPerKwh consumption at them; copied
     */
    public FuelConsumption(double[] rpm, double[] gramPerKwh) {
        if (rpm.length == 0 || rpm.length != gramPerKwh.length) {
            throw new InvalidValueException(
                    "consumption map",
                    rpm.length + " engine speeds and " + gramPerKwh.length + " values",
                    "give one value for each of one or more speeds");
        }
        Check.rising("consumption map rpm", rpm);
        for (double value : gramPerKwh) {
            Check.inRange("consumption (g/kWh)", value, LEAST, MOST);
        }
        this.rpm = rpm.clone();
        this.gramPerKwh = gramPerKwh.clone();
    }

    /** The same at all engine speeds. */
    public static FuelConsumption constant(double gramPerKwh) {
        return new FuelConsumption(new double[] {0}, new double[] {gramPerKwh});
    }

    /** g/kWh at an engine speed in 1/min. */
    public double at(double engineSpeed) {
        Check.finite("engine speed (1/min)", engineSpeed);
        int i = Arrays.binarySearch(rpm, engineSpeed);
        if (i >= 0) {
            return gramPerKwh[i];
        }
        int above = -i - 1;
        if (above == 0 || above == rpm.length) {
            return gramPerKwh[above == 0 ? 0 : above - 1];
        }
        double w = (engineSpeed - rpm[above - 1]) / (rpm[above] - rpm[above - 1]);
        return gramPerKwh[above - 1] + w * (gramPerKwh[above] - gramPerKwh[above - 1]);
    }

    /** Fuel for work at the crankshaft at an engine speed, kg/J. */
    public double kgPerJoule(double engineSpeed) {
        return at(engineSpeed) / GRAM_PER_KG / JOULE_PER_KWH;
    }

    /** Share of the fuel's lower heating value that reaches the crankshaft at a consumption in g/kWh. */
    public static double efficiency(double gramPerKwh) {
        return JOULE_PER_KWH / (Check.positive("consumption (g/kWh)", gramPerKwh) / GRAM_PER_KG * HEATING_VALUE);
    }

    /** Engine speeds of the map, 1/min; a copy. */
    public double[] rpm() {
        return rpm.clone();
    }

    /** Values of the map, g/kWh; a copy. */
    public double[] gramPerKwh() {
        return gramPerKwh.clone();
    }
}
