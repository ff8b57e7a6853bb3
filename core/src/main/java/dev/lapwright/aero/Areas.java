package dev.lapwright.aero;

import dev.lapwright.fault.Check;

/**
 * The three aerodynamic areas of a car, m²: force divided by dynamic pressure.
 *
 * @param drag CdA
 * @param liftFront ClA of the front axle, positive is downforce, measured as axle load at the ground
 * @param liftRear ClA of the rear axle
 */
public record Areas(double drag, double liftFront, double liftRear) {
    public Areas {
        Check.finite("CdA (m²)", drag);
        Check.finite("ClA front (m²)", liftFront);
        Check.finite("ClA rear (m²)", liftRear);
    }

    /** Nothing. */
    public static final Areas NONE = new Areas(0, 0, 0);

    /** Sum of two contributions. */
    public Areas plus(Areas other) {
        return new Areas(drag + other.drag, liftFront + other.liftFront, liftRear + other.liftRear);
    }
}
