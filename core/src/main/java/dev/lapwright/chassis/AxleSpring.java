package dev.lapwright.chassis;

import dev.lapwright.fault.Check;

/**
 * The springing of one axle.
 *
 * <p>Source: wheel rate = spring rate · (motion ratio)², ride rate = wheel rate in series with the tyre, roll stiffness of a
 * pair of wheel rates k at track t = k t²/2: Milliken and Milliken, Race Car Vehicle Dynamics (1995), sections 16.1-16.2.
 *
 * @param springRate of one spring, N/m
 * @param motionRatio spring travel over wheel travel
 * @param antiRollStiffness roll stiffness that the anti-roll bar adds to the axle, Nm/rad
 * @param tyreRate vertical rate of one tyre, N/m
 * @param track m
 */
public record AxleSpring(
        double springRate, double motionRatio, double antiRollStiffness, double tyreRate, double track) {
    public AxleSpring {
        Check.positive("spring rate (N/m)", springRate);
        Check.positive("motion ratio", motionRatio);
        Check.inRange("anti-roll stiffness (Nm/rad)", antiRollStiffness, 0, 1e8);
        Check.positive("tyre rate (N/m)", tyreRate);
        Check.positive("track (m)", track);
    }

    /** Rate at the wheel, N/m. */
    public double wheelRate() {
        return springRate * motionRatio * motionRatio;
    }

    /** Wheel rate in series with the tyre, N/m. */
    public double rideRate() {
        return wheelRate() * tyreRate / (wheelRate() + tyreRate);
    }

    /** Roll stiffness of the axle, springs and bar in series with the tyres, Nm/rad. */
    public double rollStiffness() {
        double sprung = wheelRate() * track * track / 2 + antiRollStiffness;
        return sprung * tyreRollStiffness() / (sprung + tyreRollStiffness());
    }

    /** Roll stiffness of the axle's tyres alone, Nm/rad. */
    public double tyreRollStiffness() {
        return tyreRate * track * track / 2;
    }

    /** Share of the body's roll that lies in springs and bar, the rest in the tyres, 0 to 1. */
    public double sprungShareOfRoll() {
        return 1 - rollStiffness() / tyreRollStiffness();
    }
}
