package dev.lapwright.lap;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Platform;
import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.fault.Check;

/**
 * Handling of a car far below its limits, where tyres are linear, and how its downforce lies on the axles.
 *
 * <p>Neglects compliance, roll steer, camber thrust and aligning torque, which the car's document does not hold.
 */
public final class Handling {
    private final Vehicle car;

    private Handling(Vehicle car) {
        this.car = car;
    }

    /** Of one car on one day. */
    public static Handling of(Vehicle vehicle) {
        return new Handling(vehicle);
    }

    /** Understeer gradient at the loads of a car at rest on a level road, from cornering stiffness alone. */
    public UndersteerGradient atRest() {
        return with(0, 0);
    }

    /** Understeer gradient at the axle loads with downforce at an air speed (m/s), from cornering stiffness alone. */
    public UndersteerGradient at(double airSpeed) {
        checkSpeed(airSpeed);
        double q = 0.5 * car.airDensity * airSpeed * airSpeed;
        Areas areas = car.platformAt(airSpeed).areas();
        return with(q * areas.liftFront(), q * areas.liftRear());
    }

    /** Beyond the speed at the rev limit in top gear nothing says whether the platform still has a balance. */
    private void checkSpeed(double airSpeed) {
        Check.inRange("air speed (m/s)", airSpeed, 0, car.geared() + car.wind.speed() + 1);
    }

    private UndersteerGradient with(double downforceFront, double downforceRear) {
        double weight = car.mass * StandardAtmosphere.GRAVITY;
        double front = stiffness(car.front, 0.5 * (weight * car.frontShare + downforceFront));
        double rear = stiffness(car.rear, 0.5 * (weight * (1 - car.frontShare) + downforceRear));
        double toFront = (1 - car.frontShare) * car.wheelbase;
        return UndersteerGradient.of(car.mass, toFront, car.wheelbase - toFront, 2 * front, 2 * rear);
    }

    /**
     * What front toe adds to the gradient at rest, rad per m/s². In a turn the outer wheel's toe outweighs that of the inner,
     * which carries less: toe-in at the front turns the car in, at the rear it steadies it.
     */
    public double frontToe() {
        return -toe(car.front, Quantity.TOE_FRONT, car.frontShare);
    }

    /** What rear toe adds to the gradient at rest, rad per m/s²; positive with toe-in. */
    public double rearToe() {
        return toe(car.rear, Quantity.TOE_REAR, 1 - car.frontShare);
    }

    /** Gradient at rest with toe. */
    public UndersteerGradient withToe() {
        return atRest().plus(frontToe() + rearToe());
    }

    private double toe(AxleData axle, Quantity toe, double share) {
        double load = 0.5 * car.mass * StandardAtmosphere.GRAVITY * share;
        double transferPerAcceleration = car.mass * axle.transfer;
        return Math.toRadians(car.car().value(toe))
                * transferPerAcceleration
                * axle.stiffnessGrowth(load)
                / axle.stiffnessPerLoad(load)
                / load;
    }

    private static double stiffness(AxleData axle, double load) {
        double carried = Math.max(load, 1);
        return axle.stiffnessPerLoad(carried) * carried;
    }

    /** Moment of inertia about the vertical axis, kg m²: as the car's document says, or mass · a · b. */
    public double yawInertia() {
        double given = car.car().value(Quantity.YAW_INERTIA);
        double toFront = (1 - car.frontShare) * car.wheelbase;
        return given > 0 ? given : car.mass * toFront * (car.wheelbase - toFront);
    }

    /** Downforce and ride heights at an air speed, m/s. */
    public AeroBalance aero(double airSpeed) {
        checkSpeed(airSpeed);
        double q = 0.5 * car.airDensity * airSpeed * airSpeed;
        Platform.State state = car.platformAt(airSpeed);
        return new AeroBalance(
                airSpeed,
                q * state.areas().liftFront(),
                q * state.areas().liftRear(),
                state.frontMm(),
                state.rearMm(),
                at(airSpeed));
    }

    /**
     * Downforce at one air speed.
     *
     * @param airSpeed m/s
     * @param front downforce on the front axle, N
     * @param rear downforce on the rear axle, N
     * @param frontHeightMm front ride height, platform settled
     * @param rearHeightMm rear ride height
     * @param gradient understeer gradient at these loads
     */
    public record AeroBalance(
            double airSpeed,
            double front,
            double rear,
            double frontHeightMm,
            double rearHeightMm,
            UndersteerGradient gradient) {
        private static final double TINY_DOWNFORCE = 1e-6;

        /** Share of the downforce at the front, 0 to 1; NaN where there is none. */
        public double frontShare() {
            double sum = front + rear;
            return sum > TINY_DOWNFORCE ? front / sum : Double.NaN;
        }
    }
}
