package dev.lapwright.study.pressures;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.tyre.GasLaw;
import dev.lapwright.tyre.Wheel;

/**
 * Pressures of a tyre as set cold and as read hot after a run. Both are gauge pressures.
 *
 * @param wheel where the tyre runs
 * @param coldKpa gauge pressure as set, kPa
 * @param hotKpa gauge pressure read at once after the run, kPa
 * @param coldTempC of the tyre as it was set, degC
 * @param day air and track at the run
 */
public record PressurePair(Wheel wheel, double coldKpa, double hotKpa, double coldTempC, PressureDay day) {
    /** Gas hotter than this was never in a tyre that ran on. */
    private static final double HOTTEST_C = 200;

    private static final double LEAST_KPA = 30;
    private static final double MOST_KPA = 900;

    public PressurePair {
        checkGauge(wheel.code() + " cold pressure", coldKpa);
        checkGauge(wheel.code() + " hot pressure", hotKpa);
        Check.inRange("temperature when cold (degC)", coldTempC, -40, 120);
        if (!(hotKpa > coldKpa)) {
            throw new InvalidValueException(
                    wheel.code() + " pressures",
                    "the hot one (" + shown(hotKpa) + " kPa) is not above the cold one (" + shown(coldKpa) + " kPa)",
                    "give cold first, then hot; if they were read so, the tyre leaks or was bled");
        }
        double gas = GasLaw.temperature(coldKpa, coldTempC, hotKpa, day.airPressureHpa() / 10);
        if (gas > HOTTEST_C) {
            throw new InvalidValueException(
                    wheel.code() + " pressures",
                    "from " + shown(coldKpa) + " to " + shown(hotKpa) + " kPa gauge the gas would be at "
                            + Math.round(gas) + " degC, which looks like one pressure in another unit, or absolute",
                    "give both as gauge pressures in one unit");
        }
    }

    /** Refuses what is no tyre's gauge pressure, and says what it looks like. */
    static double checkGauge(String name, double kpa) {
        Check.finite(name, kpa);
        if (!(kpa >= LEAST_KPA && kpa <= MOST_KPA)) {
            String looks = "";
            if (kpa >= 0.8 && kpa <= 6) {
                looks = ", which looks like bar";
            } else if (kpa > 6 && kpa < LEAST_KPA) {
                looks = ", which looks like psi";
            }
            throw new InvalidValueException(
                    name,
                    shown(kpa) + " kPa gauge is no tyre's pressure" + looks,
                    "allowed: " + shown(LEAST_KPA) + " to " + shown(MOST_KPA)
                            + " kPa; write the unit, as in 17psi, 1.2bar or 117kPa");
        }
        return kpa;
    }

    private static String shown(double kpa) {
        return Check.text(Math.rint(10 * kpa) / 10);
    }

    /** Temperature of the gas at the hot pressure, degC. */
    public double hotTempC() {
        return GasLaw.temperature(coldKpa, coldTempC, hotKpa, day.airPressureHpa() / 10);
    }

    /** How much hotter the gas ran than air and track, K. */
    public double rise() {
        return hotTempC() - day.referenceC();
    }

    /**
     * Refuses a hot pressure that is as high as an absolute one would be.
     *
     * @param idealKpa hot gauge pressure the tyre is for, kPa
     */
    void refuseAbsolute(double idealKpa) {
        double air = day.airPressureHpa() / 10;
        boolean far = hotKpa > 1.3 * idealKpa;
        boolean gaugeWouldFit = Math.abs(hotKpa - air - idealKpa) < 0.25 * idealKpa;
        if (far && gaugeWouldFit) {
            throw new InvalidValueException(
                    wheel.code() + " hot pressure",
                    shown(hotKpa) + " kPa looks like an absolute pressure: it is far above the "
                            + shown(idealKpa) + " kPa gauge aimed at, and less the air's " + shown(air)
                            + " kPa it would be " + shown(hotKpa - air),
                    "give gauge pressures, as a tyre gauge reads them; if it is one, give the target with --target");
        }
    }
}
