package dev.lapwright.charts.gearing;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import java.util.Objects;

/**
 * A gearbox as a lap uses it, as {@link GearSawtooth} draws it. Gears are counted from the lowest; arrays are copied in and
 * out.
 *
 * @param rpmPerMps engine speed for each m/s of road speed in each gear, rpm/(m/s), falling
 * @param upshiftSpeeds road speed at which the car shifts up out of each gear but the last, m/s; NaN where it never does
 * @param revLimitRpm engine speed that cannot be exceeded, rpm
 * @param peakPowerRpm engine speed of the greatest power, rpm; NaN to leave it out
 * @param lowestSpeed least road speed of the lap, m/s
 * @param topSpeed greatest road speed of the lap, m/s
 * @param topSpeedGear number of the gear it is reached in, from 1
 */
public record GearCurves(
        double[] rpmPerMps,
        double[] upshiftSpeeds,
        double revLimitRpm,
        double peakPowerRpm,
        double lowestSpeed,
        double topSpeed,
        int topSpeedGear) {
    public GearCurves {
        if (rpmPerMps.length == 0 || upshiftSpeeds.length != rpmPerMps.length - 1) {
            throw new InvalidValueException(
                    "gears",
                    rpmPerMps.length + " gears and " + upshiftSpeeds.length + " shifts do not belong together",
                    "give one gear or more, and a shift for each but the last");
        }
        for (int i = 0; i < rpmPerMps.length; i++) {
            Check.positive("engine speed per road speed in gear " + (i + 1), rpmPerMps[i]);
            if (i > 0 && !(rpmPerMps[i] < rpmPerMps[i - 1])) {
                throw new InvalidValueException(
                        "gear " + (i + 1), "it is no higher than the gear below", "give the gears from the lowest");
            }
        }
        for (double speed : upshiftSpeeds) {
            if (!Double.isNaN(speed)) {
                Check.positive("upshift speed (m/s)", speed);
            }
        }
        Check.positive("rev limit (rpm)", revLimitRpm);
        if (!Double.isNaN(peakPowerRpm)) {
            Check.positive("engine speed of peak power (rpm)", peakPowerRpm);
        }
        Check.positive("top speed (m/s)", topSpeed);
        Check.inRange("lowest speed (m/s)", lowestSpeed, 0, topSpeed);
        if (topSpeedGear < 1 || topSpeedGear > rpmPerMps.length) {
            throw new InvalidValueException(
                    "gear of the top speed", topSpeedGear + " is none of the gears", "give 1 to " + rpmPerMps.length);
        }
        rpmPerMps = rpmPerMps.clone();
        upshiftSpeeds = upshiftSpeeds.clone();
    }

    @Override
    public double[] rpmPerMps() {
        return rpmPerMps.clone();
    }

    @Override
    public double[] upshiftSpeeds() {
        return upshiftSpeeds.clone();
    }

    int count() {
        return rpmPerMps.length;
    }

    double rpm(int gear, double speed) {
        return rpmPerMps[gear - 1] * speed;
    }

    /** Road speed at the rev limit, m/s. */
    double limitSpeed(int gear) {
        return revLimitRpm / rpmPerMps[gear - 1];
    }

    /** Where the car comes into a gear, m/s: in the lowest that it uses, at its lowest speed; NaN if it never does. */
    double from(int gear) {
        double shift = gear == 1 ? Double.NaN : upshiftSpeeds[gear - 2];
        boolean lowest = Double.isNaN(shift) && !Double.isNaN(to(gear));
        return lowest ? Math.min(lowestSpeed, to(gear)) : shift;
    }

    /** Where it leaves it, m/s: by a shift, or at the top speed; NaN if it does not. */
    double to(int gear) {
        if (gear == topSpeedGear) {
            return topSpeed;
        }
        return gear <= upshiftSpeeds.length ? upshiftSpeeds[gear - 1] : Double.NaN;
    }

    /** Whether the lap shifts into it or out of it, or has its top speed in it. */
    boolean isUsed(int gear) {
        return !Double.isNaN(from(gear)) || !Double.isNaN(to(gear));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GearCurves that
                && Arrays.equals(rpmPerMps, that.rpmPerMps)
                && Arrays.equals(upshiftSpeeds, that.upshiftSpeeds)
                && Double.compare(revLimitRpm, that.revLimitRpm) == 0
                && Double.compare(peakPowerRpm, that.peakPowerRpm) == 0
                && Double.compare(lowestSpeed, that.lowestSpeed) == 0
                && Double.compare(topSpeed, that.topSpeed) == 0
                && topSpeedGear == that.topSpeedGear;
    }

    @Override
    public int hashCode() {
        return Objects.hash(Arrays.hashCode(rpmPerMps), Arrays.hashCode(upshiftSpeeds), revLimitRpm, topSpeed);
    }

    @Override
    public String toString() {
        return count() + " gears, top speed " + topSpeed + " m/s in gear " + topSpeedGear;
    }
}
