package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.powertrain.Differential;
import dev.lapwright.powertrain.Engine;
import dev.lapwright.powertrain.OverrunDrag;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Search for the lateral acceleration that each axle of a car could hold in a {@link TurnState}: the turn is tightened, speed and
 * pedals held, until the axle's utilisation is 1. Loads and resistances are those of the lap; differentials act here as friction between
 * the wheels (see {@link Differential#outerLessInner}), under power and on the overrun, which a lap knows under power only.
 * Scratch of one thread; docs/balance.md has the equations.
 */
public final class AxleLimits {
    private static final double TINY = 1e-6;
    /** No tyre holds this, m/s². */
    private static final double MOST = 1e4;

    private static final double FIRST_TRIAL = 8;
    private static final int TORQUE_SAMPLES = 400;
    private static final double TOLERANCE = 1e-11;
    /** Force needed is nearly even in acceleration: each pass leaves less than a tenth of the error. */
    private static final int COASTING_PASSES = 8;

    private final Vehicle car;
    private final WheelForces wheels;
    private final double overrunShare;
    private final double greatestTorque;
    private final double revLimit;
    private final double efficiency;
    private final Differentials front;
    private final Differentials rear;

    // What evaluate() leaves behind.
    private double frontUtilisation;
    private double rearUtilisation;
    private double frontGrip;
    private double rearGrip;
    private double ax;
    private double force;
    private double moment;

    private record Differentials(AxleData axle, double share, double power, double coast) {}

    private AxleLimits(Vehicle vehicle) {
        car = vehicle;
        wheels = new WheelForces(vehicle);
        Car data = vehicle.car();
        overrunShare = data.value(Quantity.OVERRUN_DRAG) / 100;
        revLimit = data.value(Quantity.REV_LIMIT) * Math.PI / 30;
        greatestTorque = greatestTorque(data.engine(), revLimit);
        efficiency = data.value(Quantity.EFFICIENCY);
        front = new Differentials(
                vehicle.front,
                vehicle.frontDriveShare,
                data.value(Quantity.POWER_LOCK_FRONT) / 100,
                data.value(Quantity.COAST_LOCK_FRONT) / 100);
        rear = new Differentials(
                vehicle.rear,
                1 - vehicle.frontDriveShare,
                data.value(Quantity.POWER_LOCK_REAR) / 100,
                data.value(Quantity.COAST_LOCK_REAR) / 100);
    }

    private static double greatestTorque(Engine engine, double revLimit) {
        DoubleStream torques = engine instanceof TorqueCurve curve
                ? DoubleStream.of(curve.torqueNm())
                : IntStream.rangeClosed(0, TORQUE_SAMPLES)
                        .mapToDouble(i -> engine.torque(revLimit * i / TORQUE_SAMPLES));
        return torques.max().orElse(0);
    }

    /** For one car on one day. */
    public static AxleLimits of(Vehicle vehicle) {
        return new AxleLimits(vehicle);
    }

    /** The limits of both axles in a state; gears above the car's last count as its last. */
    public AxleMargins in(TurnState state) {
        double frontLimit = limit(state, true);
        double rearLimit = limit(state, false);
        double first = Math.min(frontLimit, rearLimit);
        evaluate(state, first);
        double rollOver =
                wheels.rollUtilisation > 0 && first > 0 ? first / wheels.rollUtilisation : Double.POSITIVE_INFINITY;
        return new AxleMargins(
                frontLimit,
                rearLimit,
                rollOver,
                ax - state.climb(),
                force,
                moment,
                frontGrip,
                rearGrip,
                wheels.liftFront,
                wheels.liftRear);
    }

    private double limit(TurnState state, boolean ofFront) {
        double low = 0;
        if (!(excess(state, low, ofFront) < 0)) {
            return 0;
        }
        double high = FIRST_TRIAL;
        while (excess(state, high, ofFront) < 0 && high < MOST) {
            low = high;
            high *= 2;
        }
        while (high - low > TOLERANCE * high) {
            double middle = 0.5 * (low + high);
            if (!(middle > low && middle < high)) {
                break;
            }
            if (excess(state, middle, ofFront) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }

    private double excess(TurnState state, double lateral, boolean ofFront) {
        evaluate(state, lateral);
        return (ofFront ? frontUtilisation : rearUtilisation) - 1;
    }

    /** Uses of both axles at a lateral acceleration, towards the turn's inside. */
    private void evaluate(TurnState state, double lateral) {
        int gear = Math.min(state.gear(), car.propulsion.massFactor.length) - 1;
        double massFactor = car.propulsion.massFactor[gear];
        double v = state.speed();
        double side = state.left() ? 1 : -1;
        double curvature = (side * lateral + state.lateralGravity()) / (v * v);
        wheels.at(
                v, curvature, state.lateralGravity(), state.normal(), 0, state.climb(), state.grip(), state.headWind());
        double overrun = 0;
        switch (state.pedals()) {
            case HOLDING -> {
                ax = state.climb();
                wheels.utilisation(ax, massFactor);
                force = wheels.tyreForce;
            }
            case COASTING -> {
                overrun = overrunForce(v, gear);
                coast(massFactor, -overrun);
                force = wheels.tyreForce;
            }
            default -> {
                ax = state.acceleration() + state.climb();
                wheels.utilisation(ax, massFactor);
                force = wheels.tyreForce;
                // The brakes' share holds for all that slows the car; the engine's part of it passes the differential.
                overrun = state.pedals() == TurnState.Pedals.BRAKING
                        ? Math.min(overrunForce(v, gear), -Math.min(0, force))
                        : 0;
            }
        }
        uses(state, lateral, Math.max(0, side * curvature), overrun);
    }

    private double overrunForce(double v, int gear) {
        double perSpeed = car.propulsion.engineSpeedPerSpeed[gear];
        double torque = OverrunDrag.torque(greatestTorque, overrunShare, v * perSpeed / revLimit);
        // On the overrun the losses of the gears hold the car back too.
        return torque * car.propulsion.forcePerTorque[gear] / (efficiency * efficiency);
    }

    private void coast(double massFactor, double wheelForce) {
        ax = 0;
        for (int pass = 0; pass < COASTING_PASSES; pass++) {
            wheels.utilisation(ax, massFactor);
            ax += (wheelForce - wheels.requiredForce) / (car.mass * massFactor);
        }
        wheels.utilisation(ax, massFactor);
    }

    private void uses(TurnState state, double lateral, double curvature, double overrun) {
        boolean braking = state.pedals() == TurnState.Pedals.BRAKING;
        double acceleration = ax - state.climb();
        double frontForce = braking ? force * car.frontBrakeShare : wheels.driven(car.frontDriveShare, acceleration);
        double rearForce = braking ? force - frontForce : wheels.driven(1 - car.frontDriveShare, acceleration);
        Pair frontPair = new Pair(front.axle(), wheels.frontLoad, wheels.frontTransfer, state.grip());
        Pair rearPair = new Pair(rear.axle(), wheels.rearLoad, wheels.rearTransfer, state.grip());
        moment = moment(front, frontPair, frontForce, curvature, overrun)
                + moment(rear, rearPair, rearForce, curvature, overrun);
        double shifted = moment / car.wheelbase;
        double side = car.mass * lateral;
        double frontAlong = Math.abs(frontForce) / frontPair.capacity(front, force, braking);
        double rearAlong = Math.abs(rearForce) / rearPair.capacity(rear, force, braking);
        double p = car.ellipseExponent;
        frontUtilisation =
                Math.pow(Math.abs(side * car.frontShare - shifted) / frontPair.lateral, p) + Math.pow(frontAlong, p);
        rearUtilisation = Math.pow(Math.abs(side * (1 - car.frontShare) + shifted) / rearPair.lateral, p)
                + Math.pow(rearAlong, p);
        frontGrip = frontPair.lateral * left(frontAlong, p);
        rearGrip = rearPair.lateral * left(rearAlong, p);
    }

    private static double left(double along, double p) {
        return Math.pow(Math.max(0, 1 - Math.pow(along, p)), 1 / p);
    }

    /** Yaw moment of one axle's differential, positive into the turn. */
    private static double moment(Differentials d, Pair pair, double axleForce, double curvature, double overrun) {
        boolean onOverrun = axleForce < 0;
        double through = onOverrun ? -overrun * d.share() : axleForce;
        double locking = onOverrun ? d.coast() : d.power();
        if (locking <= 0 || d.share() <= 0) {
            return 0;
        }
        double asOne = Differential.turningAsOne(
                axleForce, pair.innerStiffness, pair.outerStiffness, d.axle().track * curvature);
        double difference = Differential.outerLessInner(asOne, through, locking);
        // No wheel gives more than it has.
        double most = 2 * Math.min(pair.innerAlong, pair.outerAlong);
        difference = Math.max(-most, Math.min(most, difference));
        return difference * 0.5 * d.axle().track;
    }

    /** The two wheels of an axle. */
    private static final class Pair {
        final double lateral;
        final double innerStiffness;
        final double outerStiffness;
        final double innerAlong;
        final double outerAlong;

        Pair(AxleData a, double load, double transfer, double grip) {
            double inner = 0.5 * load - transfer;
            double outer = 0.5 * load + transfer;
            double lateralInner = grip * a.frictionY(inner) * inner;
            double lateralOuter = grip * a.frictionY(outer) * outer;
            lateral = Math.max(TINY, lateralInner + lateralOuter);
            // Slip stiffness along a tyre is taken like that across it.
            innerStiffness = a.stiffnessPerLoad(inner) * inner;
            outerStiffness = a.stiffnessPerLoad(outer) * outer;
            innerAlong = grip * a.frictionX(inner) * inner;
            outerAlong = grip * a.frictionX(outer) * outer;
        }

        /** Greatest force along the car, as in the lap. */
        double capacity(Differentials d, double force, boolean braking) {
            double low = Math.min(innerAlong, outerAlong);
            double high = Math.max(innerAlong, outerAlong);
            if (braking) {
                return Math.max(TINY, Math.max(2 * low, d.axle().lightWheel * high));
            }
            double bias = Differential.torqueBias(force < 0 ? d.coast() : d.power());
            return Math.max(TINY, low + Differential.strongerWheel(low, high, bias));
        }
    }
}
