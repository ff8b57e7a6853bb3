package dev.lapwright.models;

import dev.lapwright.tyre.TyreModel;

/**
 * A tyre whose force grows with a power of its load: F = μ0 F0 (load/F0)^n, so that friction falls ever more slowly. A power law is what
 * A. J. Tremlett and others use for rubber on a rough road (contact area over load, after Archard; from memory). Ours as an example of a
 * model that no straight line can be. At no load the limit of a power below 1 is infinite: below a least load friction stays.
 *
 * @param friction μ0 at the reference load, along and across
 * @param stiffness cornering stiffness over load at the reference load, 1/rad
 * @param power n, 0.5 to 1
 * @param referenceLoad F0, N
 */
public record SaturatingTyre(double friction, double stiffness, double power, double referenceLoad)
        implements TyreModel {
    private static final double LEAST_SHARE = 0.05;

    @Override
    public double frictionX(double load) {
        return friction * share(load);
    }

    @Override
    public double frictionY(double load) {
        return friction * share(load);
    }

    @Override
    public double stiffness(double load) {
        return stiffness * share(load);
    }

    private double share(double load) {
        return Math.pow(Math.max(load / referenceLoad, LEAST_SHARE), power - 1);
    }
}
