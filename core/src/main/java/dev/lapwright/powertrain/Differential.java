package dev.lapwright.powertrain;

import dev.lapwright.fault.Check;

/**
 * Differential between two wheels of an axle, or between two axles: how the force of both is split. One law for the lap, the balance and
 * the overrun: open, friction plates with preload, torque biasing, and no differential at all.
 *
 * <p>Turning as one, two outputs share a force as their slip stiffness and the difference of their ways demand
 * ({@link #turningAsOne}). Friction inside holds them to that as long as the difference of their forces is no more than a share S
 * of what goes through, the locking value, and a preload; else they slip against each other and the difference is that bound
 * ({@link #outerLessInner}). S is 0 open, (b - 1)/(b + 1) with a torque bias ratio b, 1 for a spool, which knows no bound.
 *
 * <p>Neglects how fast friction builds up, its fall once plates slip, and heat. Source: Milliken and Milliken, Race Car Vehicle
 * Dynamics (1995), chapter 20, from memory; Gadola and Chindamo, The Mechanical Limited-Slip Differential Revisited, International Journal of
 * Applied Engineering Research 13 (2018) 1478 (friction plates, ramps and preload; its abstract was seen); the torque bias ratio
 * is common practice.
 *
 * @param power locking value S under drive, 0 to 1
 * @param coast locking value on the overrun, 0 to 1
 * @param preload difference of forces that it holds with nothing going through, N
 */
public record Differential(double power, double coast, double preload) {
    public Differential {
        Check.inRange("locking value under drive", power, 0, 1);
        Check.inRange("locking value on the overrun", coast, 0, 1);
        Check.inRange("preload (N)", preload, 0, 1e6);
    }

    /** Torque bias ratio of a locking value from 0 to 1; infinite when locked. */
    public static double torqueBias(double locking) {
        Check.inRange("locking value", locking, 0, 1);
        return locking >= 1 ? Double.POSITIVE_INFINITY : (1 + locking) / (1 - locking);
    }

    /**
     * Greatest difference that friction holds, N; infinite for a spool.
     *
     * @param through force that goes through, drive or overrun, N
     * @param overrun whether it is engine drag
     */
    public double friction(double through, boolean overrun) {
        double locking = overrun ? coast : power;
        return locking >= 1 ? Double.POSITIVE_INFINITY : locking * Math.abs(through) + preload;
    }

    /**
     * Greatest force of both wheels together: the weaker one at its peak, and the stronger as much more as friction holds, N.
     *
     * @param weaker most that the weaker one can give, N
     * @param stronger most that the stronger one can give, N
     * @param overrun whether it is engine drag
     */
    public double capacity(double weaker, double stronger, boolean overrun) {
        double locking = overrun ? coast : power;
        double both = weaker + stronger;
        if (locking >= 1) {
            return both;
        }
        double held = (2 * weaker + preload) / (1 - locking);
        return held < both ? held : both;
    }

    /**
     * How much more the outer wheel gives than the inner, N. The wheels turn as one as long as each can give its part; one at its
     * peak gives no more, and leaves the rest to the other; and friction holds no more than it can. Beyond the
     * {@link #capacity} of both a wheel is asked for more than its peak.
     *
     * @param force of both wheels together, N; negative where it slows the car
     * @param whenTurningAsOne difference if both turned at one speed, N: see {@link #turningAsOne}
     * @param friction see {@link #friction}, N
     * @param innerMost most that the inner wheel can give, N
     * @param outerMost most that the outer wheel can give, N
     */
    public static double outerLessInner(
            double force, double whenTurningAsOne, double friction, double innerMost, double outerMost) {
        double difference = withinPeaks(force, whenTurningAsOne, innerMost, outerMost);
        difference = difference > friction ? friction : difference;
        return difference < -friction ? -friction : difference;
    }

    /** A difference of forces, N, moved to where neither wheel is asked for more than its peak. */
    public static double withinPeaks(double force, double difference, double innerMost, double outerMost) {
        double high = Math.min(force + 2 * innerMost, 2 * outerMost - force);
        double low = Math.max(force - 2 * innerMost, -2 * outerMost - force);
        double least = difference > high ? high : difference;
        return least < low ? low : least;
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
        double sum = innerStiffness + outerStiffness;
        if (!(sum > 0)) {
            return 0;
        }
        return (force * (outerStiffness - innerStiffness) - 2 * slip * innerStiffness * outerStiffness) / sum;
    }
}
