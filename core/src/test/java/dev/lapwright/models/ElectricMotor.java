package dev.lapwright.models;

import dev.lapwright.powertrain.Engine;

/**
 * An electric motor: even torque up to its base speed, even power beyond it (N. Mohan, Electric Machines and Drives (2012), from memory:
 * the two ranges of a drive that is limited by current, then by voltage). Neglects losses and heat.
 *
 * @param torque up to the base speed, Nm
 * @param baseSpeed rad/s
 */
public record ElectricMotor(double torque, double baseSpeed) implements Engine {
    @Override
    public double torque(double speed) {
        return speed <= baseSpeed ? torque : torque * baseSpeed / speed;
    }
}
