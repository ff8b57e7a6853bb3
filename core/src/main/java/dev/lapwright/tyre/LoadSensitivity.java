package dev.lapwright.tyre;

import dev.lapwright.fault.Check;

/**
 * Peak force of a tyre in one direction as its friction falls with load: μ(F) = μ0 (1 - k (F/F0 - 1)), never below 0.2 μ0.
 *
 * <p>Source: the linear fall of friction with load of Milliken and Milliken, Race Car Vehicle Dynamics (1995), section 2.6,
 * and of Perantoni and Limebeer, Vehicle System Dynamics 52 (2014) 653. Neglects camber and any effect of speed.
 *
 * @param referenceFriction μ0 at the reference load
 * @param sensitivity k: share of friction lost when the load doubles from the reference
 * @param referenceLoad F0, N
 */
public record LoadSensitivity(double referenceFriction, double sensitivity, double referenceLoad) {
    /** Share of the reference friction that is left however high the load. */
    public static final double FLOOR = 0.2;

    public LoadSensitivity {
        Check.positive("friction", referenceFriction);
        Check.inRange("load sensitivity", sensitivity, 0, 1);
        Check.positive("reference load (N)", referenceLoad);
    }

    /** Friction coefficient at a load in N. */
    public double friction(double load) {
        return Math.max(least(), atNoLoad() - perLoad() * load);
    }

    /** Peak force at a load, both in N. */
    public double peakForce(double load) {
        return friction(load) * load;
    }

    /** Friction at no load: with {@link #perLoad} and {@link #least} friction is max(least, atNoLoad - perLoad F). */
    public double atNoLoad() {
        return referenceFriction * (1 + sensitivity);
    }

    /** Friction lost per newton, 1/N. */
    public double perLoad() {
        return referenceFriction * sensitivity / referenceLoad;
    }

    /** Friction left however high the load. */
    public double least() {
        return FLOOR * referenceFriction;
    }
}
