package dev.lapwright.lap;

import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * The terms of the force balance, each with what a handbook's formula gives for one car and place, worked out here without the library's
 * code, and what the library says when the quantity that scales the term alone is multiplied by a factor.
 *
 * <p>The car weighs 1000 kg, half on each axle, on a wheelbase of 2.5 and a track of 1.5 m; a term's own numbers stand beside it. Sources, from
 * memory where no place is given: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 1, 4 and 6 (drag, rolling resistance,
 * slope, transfer, inertia); Milliken and Milliken, Race Car Vehicle Dynamics (1995), chapters 16 to 18 and 20 (roll, transfer
 * across, locking); Pacejka, Tire and Vehicle Dynamics, chapter 4 (curve, camber); Limpert, Brake Design and Safety (brakes).
 */
enum BalanceTerm {
    /** Newton: m a, at 3 m/s². */
    MASS(3000, Constants.ROUNDING, f -> straight(with(Quantity.MASS, 1000 * f), 3).tyreForce),
    /** ½ ρ cdA v², 1 m² at 50 m/s in the standard atmosphere's 1.2250 kg/m³. */
    DRAG(0.5 * 1.2250 * 2500, 1e-3, f -> straight(with(Quantity.DRAG_AREA, f), 0).tyreForce),
    /** The same at 20 m/s against 20 m/s. */
    HEAD_WIND(0.5 * 1.2250 * 1600, 1e-3, f -> {
        WheelForces wheels = new WheelForces(with(Quantity.DRAG_AREA, 1).vehicle());
        wheels.at(20, 0, 0, Constants.G, 0, 0, 1, 20 * f);
        wheels.utilisation(0, 1);
        return wheels.tyreForce;
    }),
    /** ½ ρ clA v², 2 m². */
    DOWNFORCE_FRONT(
            0.5 * 1.2250 * 2 * 2500,
            1e-3,
            f -> straight(with(Quantity.LIFT_AREA_FRONT, 2 * f), 0).frontLoad - Constants.AXLE),
    DOWNFORCE_REAR(
            0.5 * 1.2250 * 2 * 2500,
            1e-3,
            f -> straight(with(Quantity.LIFT_AREA_REAR, 2 * f), 0).rearLoad - Constants.AXLE),
    /** f W. */
    ROLLING_RESISTANCE(
            0.015 * 2 * Constants.AXLE,
            Constants.ROUNDING,
            f -> straight(with(Quantity.ROLLING_RESISTANCE, 0.015 * f), 0).tyreForce),
    /** fv v W. */
    ROLLING_RESISTANCE_BY_SPEED(
            1e-4 * 50 * 2 * Constants.AXLE,
            Constants.ROUNDING,
            f -> straight(with(Quantity.ROLLING_RESISTANCE_PER_SPEED, 1e-4 * f), 0).tyreForce),
    /** A force of 3000 N gives 3 - g sin θ; sin θ = 0.1. The search for it ends at 1e-4 m/s² before a last step. */
    SLOPE(0.1 * Constants.G, 1e-4, f -> {
        double slope = Math.asin(0.1 * f);
        double any = Double.POSITIVE_INFINITY;
        Track track = Track.open(
                "slope",
                10,
                List.of(
                        new TrackPoint(0, 0, slope, 0, 0, 1, 5, 5, any),
                        new TrackPoint(100, 0, slope, 0, 0, 1, 5, 5, any)));
        Vehicle car = bare().force(3000).vehicle();
        Road road = new Road(track.stations(StationSpacing.DEFAULT), car.wind);
        return 3 - AccelerationLimits.toTell(car, new WheelForces(car)).drive(road.rows, 2 * Road.STRIDE, 50, 0, -1);
    }),
    /** m v² κ into the road, in a dip of 500 m. */
    DIP(1000 * 2500 * 0.002, Constants.ROUNDING, f -> {
        WheelForces wheels = new WheelForces(bare().vehicle());
        wheels.at(50, 0, 0, Constants.G, 0.002 * f, 0, 1, 0);
        wheels.utilisation(0, 1);
        return wheels.frontLoad + wheels.rearLoad - 2 * Constants.AXLE;
    }),
    /** g sin φ across, over μ g, at rest on a bank. */
    BANK(0.1, Constants.ROUNDING, f -> {
        WheelForces wheels = new WheelForces(bare().vehicle());
        wheels.at(0, 0, 0.1 * Constants.G * f, Constants.G, 0, 0, 1, 0);
        wheels.utilisation(0, 1);
        return wheels.frontLateralUtilisation;
    }),
    /** v² κ over μ g. */
    CENTRIPETAL(4 / Constants.G, Constants.ROUNDING, f -> turning(bare(), 4 * f, 0).rearLateralUtilisation),
    /**
     * Force across times its slip angle 1.5 (μ/c) tan(asin(u)/1.5), u = 3/(1.5 g) of the peak; the fit of the curve is half a percent off
     * there.
     */
    CORNERING_DRAG(
            3000 * 1.5 * 1.5 / 20 * Math.tan(Math.asin(3 / (1.5 * Constants.G)) / 1.5),
            1e-2,
            f -> turning(bare().friction(1.5).stiffness(20 / f), 3, 0).tyreForce),
    /** Two wheels that push C τ against each other, at τ: 2 C τ². */
    TOE_DRAG_FRONT(Constants.TOE_DRAG, 1e-6, f -> straight(toed(Quantity.TOE_FRONT, Math.sqrt(f)), 0).tyreForce),
    TOE_DRAG_REAR(Constants.TOE_DRAG, 1e-6, f -> straight(toed(Quantity.TOE_REAR, Math.sqrt(f)), 0).tyreForce),
    /** In a bend: 4 Ci Co τ²/(Ci + Co); the peak that toe lowers leaves some thousandths less, see WheelForcesTest. */
    TOE_DRAG_IN_A_BEND(Constants.toeDrag(4), 1e-2, f -> {
        PlainCar car = bare().stiffness(20).friction(1.5).with(Quantity.CG_HEIGHT, 0.5);
        double toed = turning(car.with(Quantity.TOE_FRONT, Math.sqrt(f)), 4, 0).tyreForce;
        return toed - turning(car, 4, 0).tyreForce;
    }),
    /**
     * Wheels τ to either side of their peak's slip angle α* = 1.5√3 μ/c lose 27/128 (τ/α*)² of it, the curve's bend there; what terms of
     * fourth order add is below a hundredth.
     */
    TOE_PEAK(
            27.0 / 128 * Math.pow(Math.toRadians(1) * 20 / (1.5 * Math.sqrt(3)), 2),
            1e-2,
            f -> 1 - turning(toed(Quantity.TOE_FRONT, Math.sqrt(f)), 4, 0).front.lateralPeak / Constants.AXLE),
    /** m a h/L. */
    TRANSFER_ALONG(
            1000 * 3 * 0.5 / 2.5,
            Constants.ROUNDING,
            f -> Constants.AXLE - straight(with(Quantity.CG_HEIGHT, 0.5 * f), 3).frontLoad),
    /** m ay h over the track, by the axle's share of the roll stiffness. */
    TRANSFER_BY_SPRINGS_FRONT(
            1000 * 4 * 0.5 * Constants.FRONT_ROLL_SHARE / 1.5,
            1e-9,
            f -> turning(rolling(0.5 * f), 4, 0).frontTransfer),
    TRANSFER_BY_SPRINGS_REAR(
            1000 * 4 * 0.5 * (1 - Constants.FRONT_ROLL_SHARE) / 1.5,
            1e-9,
            f -> turning(rolling(0.5 * f), 4, 0).rearTransfer),
    /** The axle's own mass times ay z/t, with the centre of gravity on the roll axis. */
    TRANSFER_BY_ROLL_CENTRE_FRONT(500 * 4 * 0.3 / 1.5, 1e-9, f -> turning(onRollAxis(0.3 * f), 4, 0).frontTransfer),
    TRANSFER_BY_ROLL_CENTRE_REAR(500 * 4 * 0.3 / 1.5, 1e-9, f -> turning(onRollAxis(0.3 * f), 4, 0).rearTransfer),
    /** Over μ g. */
    FRICTION_ACROSS_FRONT(
            4 / (1.2 * Constants.G),
            Constants.ROUNDING,
            f -> turning(with(Quantity.FRICTION_Y_FRONT, 1.2 * f), 4, 0).frontLateralUtilisation),
    FRICTION_ACROSS_REAR(
            4 / (1.2 * Constants.G),
            Constants.ROUNDING,
            f -> turning(with(Quantity.FRICTION_Y_REAR, 1.2 * f), 4, 0).rearLateralUtilisation),
    FRICTION_ALONG_FRONT(
            4 / (1.2 * Constants.G),
            Constants.ROUNDING,
            f -> Math.sqrt(straight(with(Quantity.FRICTION_X_FRONT, 1.2 * f), -4).frontUtilisation)),
    FRICTION_ALONG_REAR(
            4 / (1.2 * Constants.G),
            Constants.ROUNDING,
            f -> Math.sqrt(straight(with(Quantity.FRICTION_X_REAR, 1.2 * f), -4).rearUtilisation)),
    /** On a surface of 0.8. */
    SURFACE(4 / (0.8 * Constants.G), Constants.ROUNDING, f -> {
        WheelForces wheels = new WheelForces(bare().vehicle());
        wheels.at(20, 0.01, 0, Constants.G, 0, 0, 0.8 * f, 0);
        wheels.utilisation(0, 1);
        return wheels.frontLateralUtilisation;
    }),
    /** k (F/F0 - 1) of friction lost, F0 = 1000 N. */
    LOAD_SENSITIVITY_FRONT(
            0.1 * (Constants.AXLE / 2000 - 1),
            1e-9,
            f -> 1 - straight(sensitive(0.1 * f, 0), 0).front.lateralPeak / Constants.AXLE),
    LOAD_SENSITIVITY_REAR(
            0.1 * (Constants.AXLE / 2000 - 1),
            1e-9,
            f -> 1 - straight(sensitive(0, 0.1 * f), 0).rear.lateralPeak / Constants.AXLE),
    /** k γ² of friction, γ = 3 degrees away from the best; both wheels alike on a straight. */
    CAMBER_ACROSS(
            0.003 * 9,
            1e-9,
            f -> Constants.AXLE / straight(leaning(Quantity.INCLINATION_LOSS_Y_FRONT, f), 0).front.lateralPeak - 1),
    CAMBER_ALONG(
            0.003 * 9,
            1e-9,
            f -> Constants.AXLE
                            / straight(leaning(Quantity.INCLINATION_LOSS_X_FRONT, f), 0)
                                    .front
                                    .brakeCapacity(0)
                    - 1),
    /** Roll on springs, of which the suspension keeps half from the wheels, and on tyres; degrees at 4000 N. */
    CAMBER_BY_ROLL(Constants.LEAN, 1e-9, f -> {
        PlainCar car = rolling(0.5 * f).with(Quantity.CAMBER_GAIN_FRONT, 0.5);
        return 4000 * car.vehicle().front.leanPerSide;
    }),
    /** (Tslow - Tfast)/(Tslow + Tfast) = S while plates slide: S X t/2, here against the turn. 7 N drag of cornering pull too. */
    DIFFERENTIAL_DRIVE(
            0.3 * 3000 * 0.75, 5e-3, f -> -turning(plates(Quantity.POWER_LOCK_REAR, 30 * f), 6, 3).yawMoment),
    DIFFERENTIAL_OVERRUN(0.3 * 1000 * 0.75, 1e-2, f -> {
        WheelForces wheels =
                new WheelForces(plates(Quantity.COAST_LOCK_REAR, 30 * f).vehicle());
        wheels.at(20, 0.015, 0, Constants.G, 0, 0, 1, 0);
        wheels.coasting = true;
        wheels.utilisation(-1, 1);
        return -wheels.yawMoment;
    }),
    /** A wrench that reads T twists one wheel against the other: a difference of 2 T/r. */
    DIFFERENTIAL_PRELOAD(
            2 * 100 / 0.3 * 0.75,
            Constants.ROUNDING,
            f -> -turning(plates(Quantity.PRELOAD_REAR, 100 * f), 6, 3).yawMoment),
    /** Turning as one with even loads: slips of ± κ t/2, so C κ t²/2 against the turn; two thousandths less by use across. */
    SPOOL(Constants.SCRUB, 1e-2, f -> -turningSlowly(f, 2.5).yawMoment),
    /** What a moment M takes off one axle and puts on the other: M/L, here of the spool; by the wheelbase. */
    MOMENT_ON_FRONT_AXLE(Constants.SCRUB / 2.5, 1e-2, f -> {
        WheelForces wheels = turningSlowly(1, 2.5 / f);
        return wheels.frontLateralUtilisation * 3 * Constants.AXLE - 1000;
    }),
    MOMENT_ON_REAR_AXLE(Constants.SCRUB / 2.5, 1e-2, f -> {
        WheelForces wheels = turningSlowly(1, 2.5 / f);
        return 1000 - wheels.rearLateralUtilisation * 3 * Constants.AXLE;
    }),
    /** (F_x/μN)² + (F_y/μN)², brakes in halves. */
    ELLIPSE_BRAKES(
            2 * Math.pow(4 / Constants.G, 2),
            1e-3,
            f -> turning(with(Quantity.FRICTION_EXPONENT, 2 * f), 4, -4).frontUtilisation),
    /** The same at the driven axle; 3 N drag of cornering pull too. */
    ELLIPSE_DRIVE(
            Math.pow(2 / Constants.G, 2) + Math.pow(2 * 2 / Constants.G, 2),
            5e-3,
            f -> turning(with(Quantity.FRICTION_EXPONENT, 2 * f).frontDrive(0), 2, 2).rearUtilisation),
    BRAKE_SHARE(
            0.6 * 4000 / Constants.AXLE,
            Constants.ROUNDING,
            f -> Math.sqrt(straight(with(Quantity.BRAKE_FRONT_SHARE, 60 * f), -4).frontUtilisation)),
    BRAKES_MOST(4000.0 / 8000, Constants.ROUNDING, f -> straight(bare().brakes(8000 / f), -4).brakeUtilisation),
    /** The named policy: half of what the wheels are apart, by its share of both, beside twice the light one. 1800 N move at 0.9 m. */
    LIGHT_WHEEL(
            2 * (Constants.AXLE / 2 - 1800) + 0.5 * 3600 * 3600 / Constants.AXLE,
            1e-9,
            f -> turning(with(Quantity.LIGHT_WHEEL, 50 * f).with(Quantity.CG_HEIGHT, 0.9), 6, 0)
                    .front
                    .brakeCapacity(0)),
    /** J a/r² for 5 kg m², and J i² a/r² for 0.1 behind a ratio of 5. */
    WHEEL_INERTIA(5 * 3 / 0.09, 1e-9, f -> spun(with(Quantity.WHEEL_INERTIA, 5 * f))),
    ENGINE_INERTIA(0.1 * 25 * 3 / 0.09, 1e-9, f -> spun(with(Quantity.ENGINE_INERTIA, 0.1 * f))),
    /** T i η/r: 180 Nm, 5, 0.9, 0.3 m. */
    ENGINE_FORCE(
            180 * 5 * 0.9 / 0.3,
            1e-6,
            f -> with(Quantity.POWER_SCALE, f)
                    .force(3000)
                    .with(Quantity.EFFICIENCY, 0.9)
                    .vehicle()
                    .propulsion
                    .force(0, 20)),
    /** A fifth of the greatest torque at the rev limit, through the same gears (common practice, no source). */
    ENGINE_DRAG(
            0.2 * 180 * 5 / 0.3,
            1e-6,
            f -> with(Quantity.OVERRUN_DRAG, 20 * f)
                    .force(3000)
                    .vehicle()
                    .propulsion
                    .drag(0, 150)),
    /** Front share of the drive. */
    DRIVE_SHARE(0.4 * 3000, 1e-9, f -> {
        WheelPair front = straight(bare().frontDrive(0.4 * f), 3).front;
        return front.innerForce + front.outerForce;
    }),
    /** Axles alike would share in halves; a lock of 20 % lets 10 % of the drive go over, beside the 30 % given. */
    CENTRE_LOCK(0.1 * 3000, 1e-9, f -> {
        WheelPair front = straight(bare().frontDrive(0.3).with(Quantity.CENTRE_LOCK, 20 * f), 3).front;
        return front.innerForce + front.outerForce - 900;
    }),
    /** m ay h over W t/2, and m a h/L over the axle's load. */
    ROLL_OVER(
            4 * 0.5 / (Constants.G * 0.75),
            1e-9,
            f -> turning(with(Quantity.CG_HEIGHT, 0.5 * f), 4, 0).rollUtilisation),
    PITCH_OVER(
            3 * 0.5 / 2.5 / (Constants.G / 2),
            1e-9,
            f -> straight(with(Quantity.CG_HEIGHT, 0.5 * f), 3).pitchUtilisation);

    /** What the handbook's formula gives. */
    final double expected;
    /** How far the library may be off, as a share of it. */
    final double tolerance;

    private final DoubleUnaryOperator measured;

    BalanceTerm(double expected, double tolerance, DoubleUnaryOperator measured) {
        this.expected = expected;
        this.tolerance = tolerance;
        this.measured = measured;
    }

    /** What the library says with the term multiplied. */
    double measured(double factor) {
        return measured.applyAsDouble(factor);
    }

    boolean holds(double factor) {
        return Math.abs(measured(factor) - expected) <= tolerance * Math.abs(expected);
    }

    /** Numbers worked out by hand that several terms need; a class of its own, for an enum's constants come before its fields. */
    private static final class Constants {
        static final double G = 9.80665;
        static final double AXLE = 500 * G;
        /** Some ten operations on doubles. */
        static final double ROUNDING = 1e-12;

        /** 1 degree, 20 per radian of load. */
        static final double TOE_DRAG = 20 * AXLE * Math.pow(Math.PI / 180, 2);
        /** 20 per radian of load, a ring of 50 m. */
        static final double SCRUB = 20 * AXLE / 2 * 1.5 * 1.5 / 50 / 2;

        private static final double TYRE_ROLL = 200e3 * 1.5 * 1.5 / 2;
        private static final double SPRING_ROLL = 100e3 * 1.5 * 1.5 / 2;
        private static final double FRONT_ROLL = series(SPRING_ROLL + 1000 * 180 / Math.PI);
        private static final double REAR_ROLL = series(SPRING_ROLL);
        static final double FRONT_ROLL_SHARE = FRONT_ROLL / (FRONT_ROLL + REAR_ROLL);
        static final double LEAN = Math.toDegrees(2000 / (FRONT_ROLL + REAR_ROLL) * (1 - FRONT_ROLL / TYRE_ROLL) * 0.5
                + 2000 * FRONT_ROLL_SHARE / TYRE_ROLL);

        private static double series(double sprung) {
            return sprung * TYRE_ROLL / (sprung + TYRE_ROLL);
        }

        /** Half the transfer on each axle, centre of gravity at 0.5 m. */
        static double toeDrag(double lateral) {
            double transfer = 1000 * lateral * 0.5 / 1.5 / 2;
            double inner = 20 * (AXLE / 2 - transfer);
            double outer = 20 * (AXLE / 2 + transfer);
            return 4 * inner * outer / (inner + outer) * Math.pow(Math.PI / 180, 2);
        }
    }

    private static PlainCar bare() {
        return PlainCar.ofMass(1000);
    }

    private static PlainCar with(Quantity quantity, double value) {
        return bare().with(quantity, value);
    }

    private static PlainCar toed(Quantity quantity, double degrees) {
        return bare().stiffness(20).with(quantity, degrees);
    }

    private static PlainCar rolling(double height) {
        return with(Quantity.CG_HEIGHT, height).with(Quantity.BAR_FRONT, 1000);
    }

    private static PlainCar onRollAxis(double height) {
        return with(Quantity.CG_HEIGHT, height)
                .with(Quantity.ROLL_CENTRE_FRONT, height)
                .with(Quantity.ROLL_CENTRE_REAR, height);
    }

    private static PlainCar sensitive(double front, double rear) {
        return with(Quantity.SENSITIVITY_Y_FRONT, front)
                .with(Quantity.SENSITIVITY_Y_REAR, rear)
                .with(Quantity.REFERENCE_LOAD_FRONT, 1000)
                .with(Quantity.REFERENCE_LOAD_REAR, 1000);
    }

    private static PlainCar leaning(Quantity loss, double factor) {
        return with(Quantity.CAMBER_FRONT, -3).with(loss, 0.003 * factor);
    }

    private static PlainCar plates(Quantity quantity, double value) {
        return with(quantity, value).frontDrive(0).friction(1.4).with(Quantity.CG_HEIGHT, 0.5);
    }

    private static WheelForces turningSlowly(double stiffnessAlong, double wheelbase) {
        PlainCar spool = bare().friction(3)
                .stiffness(20)
                .frontDrive(0)
                .with(Quantity.WHEELBASE, wheelbase)
                .with(Quantity.SLIP_STIFFNESS, 100 * stiffnessAlong)
                .with(Quantity.POWER_LOCK_REAR, 100);
        WheelForces wheels = new WheelForces(spool.vehicle());
        wheels.at(10, 0.02, 0, Constants.G, 0, 0, 1, 0);
        wheels.utilisation(0, 1);
        return wheels;
    }

    private static WheelForces straight(PlainCar car, double acceleration) {
        WheelForces wheels = new WheelForces(car.vehicle());
        wheels.at(50, 0, 0, Constants.G, 0, 0, 1, 0);
        wheels.utilisation(acceleration, 1);
        return wheels;
    }

    private static WheelForces turning(PlainCar car, double lateral, double acceleration) {
        WheelForces wheels = new WheelForces(car.vehicle());
        wheels.at(20, lateral / 400, 0, Constants.G, 0, 0, 1, 0);
        wheels.utilisation(acceleration, 1);
        return wheels;
    }

    private static double spun(PlainCar car) {
        WheelForces wheels = new WheelForces(car.vehicle());
        wheels.at(50, 0, 0, Constants.G, 0, 0, 1, 0);
        wheels.utilisation(3, car.vehicle().propulsion.massFactor[0]);
        return wheels.requiredForce - wheels.tyreForce;
    }
}
