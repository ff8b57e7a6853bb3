package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.powertrain.Differential;
import dev.lapwright.tyre.LoadSensitivity;
import dev.lapwright.tyre.TyreState;

/**
 * Tyre law and constants of one axle, as the kernel reads them: friction and cornering stiffness of one wheel over its load.
 * Friction holds compound, pressure, temperature and the day's grip; the surface's grip factor is left to the caller.
 */
final class AxleData {
    final double track;
    /** Load transfer per newton of lateral force at the centre of gravity. */
    final double transfer;
    /** Lateral peak force per load is max(floorY, aY - bY F). */
    final double aY;

    final double bY;
    final double floorY;
    final double aX;
    final double bX;
    final double floorX;
    /** Cornering stiffness per load is max(floorC, aC - bC F), 1/rad. */
    final double aC;

    final double bC;
    final double floorC;
    final double toe;
    /** Whether lean or pressures give each wheel a grip of its own, whatever load it carries. */
    final boolean sided;
    /** Lean of each wheel towards the car's middle at rest, degrees. */
    final double leftLean;

    final double rightLean;
    /** Lean that a newton across the car takes off both wheels, seen from inside the bend, degrees/N. */
    final double leanPerSide;

    final double bestInclination;
    final double lossY;
    final double lossX;
    /** Grip of each wheel by its own pressure over that of the axle's. */
    final double leftGrip;

    final double rightGrip;
    /** Share of the heavier wheel's grip that the axle may always brake with, 0 to 1. */
    final double lightWheel;

    final Differential differential;
    /** Stiffness along the tyre over that across it. */
    final double slipStiffness;
    /** How much of the fall of slip stiffness counts, 0 to 1. */
    final double slipStiffnessFall;

    /**
     * @param axle whose quantities of the car are read
     * @param dayGrip grip of the day, 1 is the reference
     * @param transfer load transfer of the axle, see {@link #transfer}
     * @param sprungRoll roll of the body on the axle's springs per newton across the car, rad/N
     * @param tyreRoll roll of the axle on its tyres per newton across the car, rad/N
     */
    AxleData(Car car, Axle axle, double dayGrip, double transfer, double sprungRoll, double tyreRoll) {
        boolean atFront = axle == Axle.FRONT;
        track = car.value(atFront ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR);
        this.transfer = transfer;
        double pressure = car.value(atFront ? Quantity.HOT_PRESSURE_FRONT : Quantity.HOT_PRESSURE_REAR);
        double ideal = car.value(atFront ? Quantity.IDEAL_PRESSURE_FRONT : Quantity.IDEAL_PRESSURE_REAR);
        double loss = car.value(Quantity.PRESSURE_LOSS);
        double split = 0.5 * car.value(atFront ? Quantity.PRESSURE_SPLIT_FRONT : Quantity.PRESSURE_SPLIT_REAR);
        double pressed = TyreState.gripFactor(pressure, ideal, loss);
        leftGrip = split == 0 ? 1 : TyreState.gripFactor(pressure + split, ideal, loss) / pressed;
        rightGrip = split == 0 ? 1 : TyreState.gripFactor(pressure - split, ideal, loss) / pressed;
        double grip = dayGrip
                * car.value(Quantity.COMPOUND_GRIP)
                * pressed
                * TyreState.gripFactor(
                        car.value(Quantity.TYRE_TEMPERATURE),
                        car.value(Quantity.IDEAL_TEMPERATURE),
                        car.value(Quantity.TEMPERATURE_LOSS));
        double load = car.value(atFront ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR);
        double muX = grip * car.value(atFront ? Quantity.FRICTION_X_FRONT : Quantity.FRICTION_X_REAR);
        aX = muX * (1 + car.value(atFront ? Quantity.SENSITIVITY_X_FRONT : Quantity.SENSITIVITY_X_REAR));
        bX = muX * car.value(atFront ? Quantity.SENSITIVITY_X_FRONT : Quantity.SENSITIVITY_X_REAR) / load;
        floorX = LoadSensitivity.FLOOR * muX;
        double muY = grip * car.value(atFront ? Quantity.FRICTION_Y_FRONT : Quantity.FRICTION_Y_REAR);
        aY = muY * (1 + car.value(atFront ? Quantity.SENSITIVITY_Y_FRONT : Quantity.SENSITIVITY_Y_REAR));
        bY = muY * car.value(atFront ? Quantity.SENSITIVITY_Y_FRONT : Quantity.SENSITIVITY_Y_REAR) / load;
        floorY = LoadSensitivity.FLOOR * muY;
        double c = car.value(atFront ? Quantity.CORNERING_STIFFNESS_FRONT : Quantity.CORNERING_STIFFNESS_REAR);
        aC = c * (1 + car.value(atFront ? Quantity.STIFFNESS_SENSITIVITY_FRONT : Quantity.STIFFNESS_SENSITIVITY_REAR));
        bC = c * car.value(atFront ? Quantity.STIFFNESS_SENSITIVITY_FRONT : Quantity.STIFFNESS_SENSITIVITY_REAR) / load;
        floorC = LoadSensitivity.FLOOR * c;
        toe = Math.toRadians(car.value(atFront ? Quantity.TOE_FRONT : Quantity.TOE_REAR));
        double camber = car.value(atFront ? Quantity.CAMBER_FRONT : Quantity.CAMBER_REAR);
        double apart = 0.5 * car.value(atFront ? Quantity.CAMBER_SPLIT_FRONT : Quantity.CAMBER_SPLIT_REAR);
        leftLean = -camber - apart;
        rightLean = -camber + apart;
        double gain = car.value(atFront ? Quantity.CAMBER_GAIN_FRONT : Quantity.CAMBER_GAIN_REAR);
        leanPerSide = Math.toDegrees(sprungRoll * (1 - gain) + tyreRoll);
        bestInclination = car.value(atFront ? Quantity.BEST_INCLINATION_FRONT : Quantity.BEST_INCLINATION_REAR);
        lossY = car.value(atFront ? Quantity.INCLINATION_LOSS_Y_FRONT : Quantity.INCLINATION_LOSS_Y_REAR);
        lossX = car.value(atFront ? Quantity.INCLINATION_LOSS_X_FRONT : Quantity.INCLINATION_LOSS_X_REAR);
        sided = lossY > 0 || lossX > 0 || split != 0;
        slipStiffness = car.value(Quantity.SLIP_STIFFNESS) / 100;
        slipStiffnessFall = car.value(Quantity.SLIP_STIFFNESS_FALL) / 100;
        lightWheel = car.value(Quantity.LIGHT_WHEEL) / 100;
        differential = new Differential(
                car.value(atFront ? Quantity.POWER_LOCK_FRONT : Quantity.POWER_LOCK_REAR) / 100,
                car.value(atFront ? Quantity.COAST_LOCK_FRONT : Quantity.COAST_LOCK_REAR) / 100,
                // The wrench turns one wheel against the other, so each of the two feels the torque that it reads.
                2
                        * car.value(atFront ? Quantity.PRELOAD_FRONT : Quantity.PRELOAD_REAR)
                        / car.value(Quantity.WHEEL_RADIUS));
    }

    /** Peak friction across a wheel at a load (N), on a surface of grip 1. */
    double frictionY(double load) {
        double mu = aY - bY * load;
        return mu > floorY ? mu : floorY;
    }

    /** Peak friction along a wheel at a load (N), on a surface of grip 1. */
    double frictionX(double load) {
        double mu = aX - bX * load;
        return mu > floorX ? mu : floorX;
    }

    /** Cornering stiffness of a wheel over its load, 1/rad, at a load in N. */
    double stiffnessPerLoad(double load) {
        double c = aC - bC * load;
        return c > floorC ? c : floorC;
    }
}
