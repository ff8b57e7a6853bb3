package dev.lapwright.powertrain;

import dev.lapwright.fault.Check;

/**
 * Torque by which an engine holds a car back with the throttle shut: a share of its greatest full-load torque at the rev
 * limit, falling evenly to half of that at rest.
 *
 * <p>Common practice, no source: motoring torque grows slowly with engine speed and is some fifth of the greatest torque.
 * Neglects idle control, the cut-off of fuel and gas left in the cylinders; 0 stands for a drive that freewheels.
 */
public final class OverrunDrag {
    private OverrunDrag() {}

    /**
     * @param greatestTorque of the full-load curve, Nm
     * @param share of it that drags at the rev limit, 0 to 1
     * @param speedShare engine speed over that of the rev limit, 0 to 1
     * @return torque against the engine's turning, Nm, not negative
     */
    public static double torque(double greatestTorque, double share, double speedShare) {
        Check.inRange("greatest torque (Nm)", greatestTorque, 0, 1e6);
        Check.inRange("overrun drag", share, 0, 1);
        Check.finite("share of the rev limit", speedShare);
        return share * greatestTorque * 0.5 * (1 + Math.min(1, Math.max(0, speedShare)));
    }
}
