package dev.lapwright.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Curves of drive force and resistance over speed, by gear, that the solver itself drives by. Gears are counted from 1. Owns scratch: use one for each thread.
 */
public final class Drivetrain {
    private static final double RPM_PER_RADIAN_PER_SECOND = 30 / Math.PI;
    private static final double SAME_SPEED = 1e-9;
    private static final double FASTEST = 250;

    private final Propulsion propulsion;
    private final WheelForces wheels;
    private final double[] shiftSpeed;

    private Drivetrain(Vehicle vehicle) {
        propulsion = vehicle.propulsion;
        wheels = new WheelForces(vehicle);
        shiftSpeed = new double[propulsion.massFactor.length - 1];
        for (int k = 1; k < propulsion.pieces; k++) {
            int gear = propulsion.gear[k];
            if (gear != propulsion.gear[k - 1]) {
                shiftSpeed[gear - 1] = Math.sqrt(2 * propulsion.breakEnergy[k]);
            }
        }
    }

    /** Of a car as set up on its day. */
    public static Drivetrain of(Vehicle vehicle) {
        return new Drivetrain(vehicle);
    }

    /** Number of gears. */
    public int gears() {
        return shiftSpeed.length + 1;
    }

    /** Engine speed above which there is no drive, 1/min. */
    public double revLimit() {
        return engineSpeed(gears(), propulsion.topSpeed);
    }

    /** Engine speed in a gear at a road speed (m/s), 1/min: the wheels roll without slip. */
    public double engineSpeed(int gear, double speed) {
        return checked(speed) * propulsion.engineSpeedPerSpeed[index(gear)] * RPM_PER_RADIAN_PER_SECOND;
    }

    /** Road speed at the rev limit in a gear, m/s. */
    public double limitSpeed(int gear) {
        return revLimit() / (propulsion.engineSpeedPerSpeed[index(gear)] * RPM_PER_RADIAN_PER_SECOND);
    }

    /**
     * Road speed at which a gear is left for the next, m/s: where that accelerates the car as hard, or at the rev limit.
     * NaN in top gear.
     */
    public double shiftSpeed(int gear) {
        return index(gear) < shiftSpeed.length ? shiftSpeed[gear - 1] : Double.NaN;
    }

    /** The gear that the car is in at a road speed (m/s); a gear is left only above its shift speed. */
    public int gearAt(double speed) {
        checked(speed);
        int gear = 1;
        while (gear <= shiftSpeed.length && speed > shiftSpeed[gear - 1] * (1 + SAME_SPEED)) {
            gear++;
        }
        return gear;
    }

    /** Full force at the driven wheels in a gear at a road speed (m/s), N: torque · ratio · efficiency / radius. */
    public double force(int gear, double speed) {
        checked(speed);
        return speed > limitSpeed(gear) * (1 + SAME_SPEED) ? 0 : propulsion.force(index(gear), speed);
    }

    /**
     * What it takes to hold a speed on a straight, N: drag, rolling resistance, toe, and the weight's part along the slope.
     *
     * @param speed m/s
     * @param headWind m/s, negative from behind
     * @param slope rad, positive uphill
     */
    public double resistance(double speed, double headWind, double slope) {
        Check.inRange("head wind (m/s)", headWind, -60, 60);
        Check.inRange("slope (rad)", slope, -1, 1);
        double climb = StandardAtmosphere.GRAVITY * Math.sin(slope);
        wheels.at(checked(speed), 0, 0, StandardAtmosphere.GRAVITY * Math.cos(slope), 0, climb, 1, headWind);
        wheels.utilisation(climb, 1);
        return wheels.requiredForce;
    }

    private static double checked(double speed) {
        return Check.inRange("speed (m/s)", speed, 0, FASTEST);
    }

    private int index(int gear) {
        if (gear < 1 || gear > gears()) {
            throw new InvalidValueException(
                    "gear " + gear,
                    "the car has no such gear",
                    gears() == 1 ? "it has 1" : "name one of 1 to " + gears());
        }
        return gear - 1;
    }
}
