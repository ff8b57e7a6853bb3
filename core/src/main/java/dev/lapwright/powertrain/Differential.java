package dev.lapwright.powertrain;

import dev.lapwright.fault.Check;

/**
 * Locking of a differential: S = (T_high - T_low) / (T_high + T_low), 0 open, 1 locked.
 *
 * <p>Source: the locking value of Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, and the torque bias ratio of
 * SAE papers on limited-slip differentials (1 + S) / (1 - S); common practice.
 */
public final class Differential {
    private Differential() {}

    /** Torque bias ratio of a locking value from 0 to 1; infinite when locked. */
    public static double torqueBias(double locking) {
        Check.inRange("locking value", locking, 0, 1);
        return locking >= 1 ? Double.POSITIVE_INFINITY : (1 + locking) / (1 - locking);
    }

    /** What the wheel with more grip carries when the weaker one gives {@code low} of the {@code high} it could (N). */
    public static double strongerWheel(double low, double high, double torqueBias) {
        return torqueBias == Double.POSITIVE_INFINITY ? high : Math.min(high, torqueBias * low);
    }

    /**
     * How much more the outer wheel carries than the inner. Friction in the differential turns both wheels at one speed as
     * long as that takes no more than the locking value's share of what goes through it; else the wheels slip against
     * each other, and the difference is that share. A locking value of 1 is an axle without a differential.
     *
     * <p>Source: Milliken and Milliken, Race Car Vehicle Dynamics (1995), chapter 20, from memory, for a differential as Coulomb friction;
     * neglects preload and how fast it acts.
     *
     * @param whenTurningAsOne outer less inner wheel's force if both turned at one speed, N
     * @param through force that goes through the differential, drive or overrun, N
     * @param locking locking value for that direction, 0 to 1
     */
    public static double outerLessInner(double whenTurningAsOne, double through, double locking) {
        Check.finite("difference when turning as one (N)", whenTurningAsOne);
        Check.finite("force through the differential (N)", through);
        Check.inRange("locking value", locking, 0, 1);
        if (locking >= 1) {
            return whenTurningAsOne;
        }
        double most = locking * Math.abs(through);
        return Math.max(-most, Math.min(most, whenTurningAsOne));
    }

    /**
     * Outer less inner wheel's force of an axle whose wheels turn at one speed in a turn, N: the outer one travels further,
     * so it is held back, or driven less, while the wheel with less stiffness slips more under a common force.
     *
     * <p>From slips {@code inner/ki - outer/ko = track · curvature} with {@code inner + outer = force}; small slips.
     *
     * @param force of both wheels together, N, negative on the overrun and under brakes
     * @param innerStiffness longitudinal force per slip of the inner wheel, N
     * @param outerStiffness the same of the outer wheel, N
     * @param slip track over the turn's radius
     */
    public static double turningAsOne(double force, double innerStiffness, double outerStiffness, double slip) {
        Check.finite("axle force (N)", force);
        Check.inRange("inner wheel's stiffness (N)", innerStiffness, 0, 1e9);
        Check.inRange("outer wheel's stiffness (N)", outerStiffness, 0, 1e9);
        Check.finite("track over radius", slip);
        double sum = innerStiffness + outerStiffness;
        if (!(sum > 0)) {
            return 0;
        }
        return (force * (outerStiffness - innerStiffness) - 2 * slip * innerStiffness * outerStiffness) / sum;
    }
}
