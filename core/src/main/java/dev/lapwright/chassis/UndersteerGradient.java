package dev.lapwright.chassis;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;

/**
 * Understeer gradient: how much more steer angle at the wheels a turn takes than its radius alone asks for, per lateral
 * acceleration, in the range where tyres are linear. Positive is understeer.
 *
 * <p>K = m (b/Cf - a/Cr)/L. Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 6, in the terms of ISO 8855 and
 * the steady-state circular tests of ISO 4138. Neglects compliance of suspension and steering, roll steer, camber and
 * aligning torque.
 *
 * @param radPerMps2 K, rad per m/s²
 * @param wheelbase m
 */
public record UndersteerGradient(double radPerMps2, double wheelbase) {
    public UndersteerGradient {
        Check.finite("understeer gradient (rad per m/s²)", radPerMps2);
        Check.positive("wheelbase (m)", wheelbase);
    }

    /**
     * @param mass kg
     * @param toFront distance of the centre of gravity from the front axle, m
     * @param toRear distance from the rear axle, m
     * @param frontStiffness cornering stiffness of both front tyres together, N/rad
     * @param rearStiffness the same of the rear tyres
     */
    public static UndersteerGradient of(
            double mass, double toFront, double toRear, double frontStiffness, double rearStiffness) {
        Check.positive("mass (kg)", mass);
        Check.positive("distance to the front axle (m)", toFront);
        Check.positive("distance to the rear axle (m)", toRear);
        Check.positive("front cornering stiffness (N/rad)", frontStiffness);
        Check.positive("rear cornering stiffness (N/rad)", rearStiffness);
        double wheelbase = toFront + toRear;
        return new UndersteerGradient(
                mass * (toRear / frontStiffness - toFront / rearStiffness) / wheelbase, wheelbase);
    }

    /** The same with more (or, negative, less) of it, rad per m/s². */
    public UndersteerGradient plus(double more) {
        return new UndersteerGradient(radPerMps2 + more, wheelbase);
    }

    /** In degrees per g. */
    public double degreesPerG() {
        return Math.toDegrees(radPerMps2) * StandardAtmosphere.GRAVITY;
    }

    /** Speed at which a turn takes twice the steer angle that it takes at rest, m/s; infinite without understeer. */
    public double characteristicSpeed() {
        return radPerMps2 > 0 ? Math.sqrt(wheelbase / radPerMps2) : Double.POSITIVE_INFINITY;
    }

    /** Speed from which the car is unstable with the wheel held still, m/s; infinite without oversteer. */
    public double criticalSpeed() {
        return radPerMps2 < 0 ? Math.sqrt(-wheelbase / radPerMps2) : Double.POSITIVE_INFINITY;
    }
}
