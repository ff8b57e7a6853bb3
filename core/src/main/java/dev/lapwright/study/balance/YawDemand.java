package dev.lapwright.study.balance;

/**
 * The greatest yaw acceleration that a lap asks of a car as it turns into a corner or unwinds from it.
 *
 * @param distance where, m
 * @param acceleration rad/s², positive into the corner; infinite where curvature steps, which no car can follow; 0 if none
 * @param moment yaw inertia times that, Nm
 * @param gripShare of the axle's lateral force that the moment takes, front turning in and rear unwinding, as a share of what
 *     that axle has there
 */
public record YawDemand(double distance, double acceleration, double moment, double gripShare) {
    /** Whether curvature steps there. */
    public boolean isStep() {
        return Double.isInfinite(acceleration);
    }
}
