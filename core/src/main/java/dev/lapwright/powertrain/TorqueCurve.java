package dev.lapwright.powertrain;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.MonotoneCubic;

/**
 * Full-load torque of an engine or motor over its speed: monotone cubic between the given points. Below the first point the
 * clutch slips and the first torque holds; above the last the last holds, up to the rev limit.
 */
public final class TorqueCurve implements Engine {
    private static final double RADIANS_PER_RPM = 2 * Math.PI / 60;

    private final double[] rpm;
    private final double[] torqueNm;
    private final MonotoneCubic curve;

    /**
     * @param rpm engine speeds, rising, 1/min; copied
     * @param torqueNm torque at each, Nm; copied
     */
    public TorqueCurve(double[] rpm, double[] torqueNm) {
        if (rpm.length < 2 || rpm.length != torqueNm.length) {
            throw new InvalidValueException(
                    "torque curve", rpm.length + " speeds and " + torqueNm.length + " torques", "give 2 or more pairs");
        }
        Check.rising("torque curve rpm", rpm);
        for (double t : torqueNm) {
            Check.inRange("torque (Nm)", t, 0, 20_000);
        }
        Check.inRange("torque curve rpm", rpm[0], 0, 60_000);
        Check.inRange("torque curve rpm", rpm[rpm.length - 1], 0, 60_000);
        this.rpm = rpm.clone();
        this.torqueNm = torqueNm.clone();
        curve = new MonotoneCubic(rpm, torqueNm);
    }

    /** Torque in Nm at an engine speed in rad/s. */
    @Override
    public double torque(double speed) {
        return curve.value(speed / RADIANS_PER_RPM);
    }

    /** Engine speeds of the points, 1/min; a copy. */
    public double[] rpm() {
        return rpm.clone();
    }

    /** Torques of the points, Nm; a copy. */
    public double[] torqueNm() {
        return torqueNm.clone();
    }
}
