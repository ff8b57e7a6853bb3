package dev.lapwright.lap;

/**
 * Search for the lateral acceleration that each axle of a car could hold in a {@link TurnState}: the turn is tightened, speed and
 * pedals held, until the axle's utilisation is 1. The forces are those of the lap: where grip limits a lap, its lateral acceleration is
 * the lower of the two limits. Scratch of one thread; docs/balance.md has the equations.
 */
public final class AxleLimits {
    /** No tyre holds this, m/s². */
    private static final double MOST = 1e4;

    private static final double FIRST_TRIAL = 8;
    private static final double TOLERANCE = 1e-11;
    /** Force needed is nearly even in acceleration: each pass leaves less than a tenth of the error. */
    private static final int COASTING_PASSES = 8;

    private final Vehicle car;
    private final WheelForces wheels;
    // What evaluate() leaves behind.
    private double ax;

    private AxleLimits(Vehicle vehicle) {
        car = vehicle;
        wheels = new WheelForces(vehicle);
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
                wheels.tyreForce,
                wheels.yawMoment,
                wheels.front.lateralLeft(),
                wheels.rear.lateralLeft(),
                (frontLimit <= rearLimit ? wheels.front : wheels.rear).firstWheel(),
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
        return (ofFront ? wheels.frontUtilisation : wheels.rearUtilisation) - 1;
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
        switch (state.pedals()) {
            case HOLDING -> ax = state.climb();
            case COASTING -> coast(massFactor, -car.propulsion.drag(gear, v));
            case BRAKING -> {
                ax = state.acceleration() + state.climb();
                wheels.engineDrag = car.propulsion.drag(gear, v);
            }
            case DRIVING -> ax = state.acceleration() + state.climb();
        }
        wheels.utilisation(ax, massFactor);
    }

    private void coast(double massFactor, double wheelForce) {
        wheels.coasting = true;
        ax = 0;
        for (int pass = 0; pass < COASTING_PASSES; pass++) {
            wheels.utilisation(ax, massFactor);
            ax += (wheelForce - wheels.requiredForce) / (car.mass * massFactor);
        }
    }
}
