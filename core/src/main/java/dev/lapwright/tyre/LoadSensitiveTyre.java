package dev.lapwright.tyre;

/**
 * Tyre whose friction and cornering stiffness fall evenly with load, as a car's document holds it.
 *
 * @param along friction along the car
 * @param across friction across the car
 * @param cornering cornering stiffness over load, 1/rad, by the same law
 */
public record LoadSensitiveTyre(LoadSensitivity along, LoadSensitivity across, LoadSensitivity cornering)
        implements TyreModel {
    @Override
    public double frictionX(double load) {
        return along.friction(load);
    }

    @Override
    public double frictionY(double load) {
        return across.friction(load);
    }

    @Override
    public double stiffness(double load) {
        return cornering.friction(load);
    }
}
