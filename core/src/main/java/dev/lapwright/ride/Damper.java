package dev.lapwright.ride;

import dev.lapwright.fault.Check;

/**
 * A four-way damper: its force rises with speed at one rate up to a knee and at another beyond it, each way of its own.
 *
 * <p>Neglects friction, gas force, hysteresis and cavitation.
 *
 * @param slowBump rate when shortening, up to the knee, N s/m
 * @param fastBump rate when shortening, beyond the knee, N s/m
 * @param slowRebound rate when lengthening, up to the knee, N s/m
 * @param fastRebound rate when lengthening, beyond the knee, N s/m
 * @param bumpKnee speed at which slow bump ends, m/s
 * @param reboundKnee speed at which slow rebound ends, m/s
 */
public record Damper(
        double slowBump, double fastBump, double slowRebound, double fastRebound, double bumpKnee, double reboundKnee) {
    private static final double MOST = 1e7;

    public Damper {
        Check.inRange("slow bump (N s/m)", slowBump, 0, MOST);
        Check.inRange("fast bump (N s/m)", fastBump, 0, MOST);
        Check.inRange("slow rebound (N s/m)", slowRebound, 0, MOST);
        Check.inRange("fast rebound (N s/m)", fastRebound, 0, MOST);
        Check.positive("bump knee (m/s)", bumpKnee);
        Check.positive("rebound knee (m/s)", reboundKnee);
    }

    /** The same rate (N s/m) at all speeds, both ways. */
    public static Damper linear(double rate) {
        return new Damper(rate, rate, rate, rate, 1, 1);
    }

    /** The same damper with other fast rates, N s/m. */
    public Damper withFast(double bump, double rebound) {
        return new Damper(slowBump, bump, slowRebound, rebound, bumpKnee, reboundKnee);
    }

    /** Force (N) at a speed (m/s), both positive when it shortens. */
    public double force(double speed) {
        if (speed >= 0) {
            return speed <= bumpKnee ? slowBump * speed : slowBump * bumpKnee + fastBump * (speed - bumpKnee);
        }
        return speed >= -reboundKnee
                ? slowRebound * speed
                : -slowRebound * reboundKnee + fastRebound * (speed + reboundKnee);
    }
}
