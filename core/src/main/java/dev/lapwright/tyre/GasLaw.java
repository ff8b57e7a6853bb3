package dev.lapwright.tyre;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Pressure and temperature of the gas shut in a tyre: (p + p_air)/T stays what it is, with p the gauge pressure and T the
 * absolute temperature. A gauge reads above the air around it, so that air's own pressure must be added first.
 *
 * <p>Source: the law of Gay-Lussac for an ideal gas at constant volume, any textbook of physics. Neglects the growth of the
 * tyre's volume (some parts in a thousand) and water in the gas: damp air gains more pressure than dry air or nitrogen.
 */
public final class GasLaw {
    private static final double ZERO_CELSIUS = 273.15;
    private static final double LOWEST_C = -60;
    private static final double HIGHEST_C = 400;
    private static final double HIGHEST_KPA = 2000;

    private GasLaw() {}

    /** Temperatures (degC) and air pressure (kPa) between which gas was shut in and is read. */
    private static void check(double gaugeKpa, double tempC, double airKpa) {
        Check.inRange("gauge pressure (kPa)", gaugeKpa, -100, HIGHEST_KPA);
        Check.inRange("gas temperature (degC)", tempC, LOWEST_C, HIGHEST_C);
        Check.inRange("air pressure (kPa)", airKpa, 30, 115);
    }

    /**
     * Gauge pressure at another temperature, the air around the tyre unchanged.
     *
     * @param gaugeKpa gauge pressure, kPa
     * @param tempC gas temperature at that pressure, degC
     * @param newTempC gas temperature then, degC
     * @param airKpa pressure of the air around the tyre, kPa
     * @return gauge pressure, kPa
     */
    public static double pressure(double gaugeKpa, double tempC, double newTempC, double airKpa) {
        return pressure(gaugeKpa, tempC, airKpa, newTempC, airKpa);
    }

    /**
     * Gauge pressure at another temperature and in other air.
     *
     * @param gaugeKpa gauge pressure, kPa
     * @param tempC gas temperature at that pressure, degC
     * @param airKpa pressure of the air around the tyre at that pressure, kPa
     * @param newTempC gas temperature then, degC
     * @param newAirKpa pressure of the air around the tyre then, kPa
     * @return gauge pressure, kPa
     */
    public static double pressure(double gaugeKpa, double tempC, double airKpa, double newTempC, double newAirKpa) {
        check(gaugeKpa, tempC, airKpa);
        check(0, newTempC, newAirKpa);
        return (gaugeKpa + airKpa) * (newTempC + ZERO_CELSIUS) / (tempC + ZERO_CELSIUS) - newAirKpa;
    }

    /**
     * Gas temperature at which another gauge pressure is read.
     *
     * @param gaugeKpa gauge pressure, kPa
     * @param tempC gas temperature at that pressure, degC
     * @param newGaugeKpa gauge pressure then, kPa
     * @param airKpa pressure of the air around the tyre, kPa
     * @return degC
     */
    public static double temperature(double gaugeKpa, double tempC, double newGaugeKpa, double airKpa) {
        check(gaugeKpa, tempC, airKpa);
        check(newGaugeKpa, tempC, airKpa);
        if (!(gaugeKpa + airKpa > 0)) {
            throw new InvalidValueException(
                    "gauge pressure (kPa)", Check.text(gaugeKpa) + " leaves no gas in the tyre", "give a higher one");
        }
        return (tempC + ZERO_CELSIUS) * (newGaugeKpa + airKpa) / (gaugeKpa + airKpa) - ZERO_CELSIUS;
    }
}
