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
}
