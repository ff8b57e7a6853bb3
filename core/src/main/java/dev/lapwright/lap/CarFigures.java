package dev.lapwright.lap;

import dev.lapwright.aero.Platform;
import dev.lapwright.fault.Check;

/**
 * Key figures of a car as set up on its day: mass, engine, roll, and aerodynamics at one speed.
 *
 * @param mass with fuel, kg
 * @param engine in this air
 * @param frontRollShare share of roll stiffness at the front, 0 to 1
 * @param aero at one speed
 */
public record CarFigures(double mass, Engine engine, double frontRollShare, Aero aero) {
    /**
     * Peaks of the engine.
     *
     * @param peakPower W
     * @param peakPowerRpm engine speed of that, 1/min
     * @param peakTorque Nm
     * @param peakTorqueRpm engine speed of that, 1/min
     */
    public record Engine(double peakPower, double peakPowerRpm, double peakTorque, double peakTorqueRpm) {}

    /**
     * Aerodynamic forces and the platform that they settle, without wind.
     *
     * @param speed at which they hold, m/s
     * @param drag N
     * @param downforceFront N
     * @param downforceRear N
     * @param rideHeightFront mm
     * @param rideHeightRear mm
     */
    public record Aero(
            double speed,
            double drag,
            double downforceFront,
            double downforceRear,
            double rideHeightFront,
            double rideHeightRear) {}

    private static final int SAMPLES = 2000;

    /** Figures with the aerodynamic ones at a speed in m/s, no wind. */
    public static CarFigures of(Vehicle vehicle, double speed) {
        Check.inRange("speed (m/s)", speed, 0, 200);
        Propulsion p = vehicle.propulsion;
        double limit = p.topSpeed * p.engineSpeedPerSpeed[p.engineSpeedPerSpeed.length - 1];
        double peakPower = 0;
        double peakPowerAt = 0;
        double peakTorque = 0;
        double peakTorqueAt = 0;
        for (int i = 1; i <= SAMPLES; i++) {
            double w = limit * i / SAMPLES;
            double torque = p.torque.value(w);
            if (torque > peakTorque) {
                peakTorque = torque;
                peakTorqueAt = w;
            }
            if (torque * w > peakPower) {
                peakPower = torque * w;
                peakPowerAt = w;
            }
        }
        Platform.State state = vehicle.platformAt(speed);
        double q = 0.5 * vehicle.airDensity * speed * speed;
        return new CarFigures(
                vehicle.mass,
                new Engine(peakPower, peakPowerAt * 30 / Math.PI, peakTorque, peakTorqueAt * 30 / Math.PI),
                vehicle.frontRollShare,
                new Aero(
                        speed,
                        q * state.areas().drag(),
                        q * state.areas().liftFront(),
                        q * state.areas().liftRear(),
                        state.frontMm(),
                        state.rearMm()));
    }

    /** Speed at the rev limit in each gear, m/s, first gear first. */
    public static double[] gearSpeeds(Vehicle vehicle) {
        Propulsion p = vehicle.propulsion;
        int gears = p.engineSpeedPerSpeed.length;
        double limit = p.topSpeed * p.engineSpeedPerSpeed[gears - 1];
        double[] speeds = new double[gears];
        for (int g = 0; g < gears; g++) {
            speeds[g] = limit / p.engineSpeedPerSpeed[g];
        }
        return speeds;
    }
}
