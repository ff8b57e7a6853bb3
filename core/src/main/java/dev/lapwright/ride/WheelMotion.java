package dev.lapwright.ride;

import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.events.EventHandler;

/**
 * Equations of motion of a quarter car at steady speed, about its rest on a flat road:
 *
 * <pre>
 * ms zs'' = ks (zu - zs) + Fd
 * mu zu'' = F - F0 - ks (zu - zs) - Fd
 * F = kt d + ct d',  d = F0/kt + zr - zu
 * </pre>
 *
 * <p>A tyre can push but not pull. Contact ends where F would fall below zero; it comes back when both the tyre's deflection d
 * and F are above zero. Beside the motion stand the integrals that a pass is judged by, so that they are as exact as it.
 */
final class WheelMotion implements FirstOrderDifferentialEquations, EventHandler {
    static final int BODY = 0;
    static final int WHEEL = 1;
    static final int BODY_SPEED = 2;
    static final int WHEEL_SPEED = 3;
    static final int BUMP_WORK = 4;
    static final int REBOUND_WORK = 5;
    static final int TYRE_WORK = 6;
    static final int ROAD_WORK = 7;
    static final int LOAD_SQUARED = 8;
    static final int ACCELERATION_SQUARED = 9;
    static final int SIZE = 10;

    private final QuarterCar car;
    private final RoadProfile road;
    private final double speed;
    private final double rest;
    private final double restLoad;
    /** Keeps the slope on the right side of a joint at both ends of a stretch. */
    private double stretchFrom;

    private double stretchTo;
    private boolean contact = true;
    private double lostAt;
    private double timeOff;

    WheelMotion(QuarterCar car, RoadProfile road, double speed) {
        this.car = car;
        this.road = road;
        this.speed = speed;
        restLoad = car.staticLoad();
        rest = restLoad / car.tyreRate();
    }

    /** Starts a stretch between two joints of the road, times in s. */
    void enter(double from, double to) {
        double inside = 1e-9 * (to - from);
        stretchFrom = from + inside;
        stretchTo = to - inside;
    }

    /** Begins to count here, at a time in s. */
    void count(double time) {
        timeOff = 0;
        lostAt = time;
    }

    /** Time off the ground until a time in s, since counting began. */
    double timeOff(double until) {
        return timeOff + (contact ? 0 : until - lostAt);
    }

    double roadHeight(double t) {
        return road.height(speed * t);
    }

    private double roadSpeed(double t) {
        return speed * road.slope(speed * Math.max(stretchFrom, Math.min(stretchTo, t)));
    }

    private double deflection(double t, double[] y) {
        return rest + roadHeight(t) - y[WHEEL];
    }

    private double spring(double[] y) {
        return car.wheelRate() * (y[WHEEL] - y[BODY]);
    }

    private double damper(double[] y) {
        return car.damperForce(y[WHEEL_SPEED] - y[BODY_SPEED]);
    }

    double bodyAcceleration(double[] y) {
        return (spring(y) + damper(y)) / car.sprungMass();
    }

    /** Contact load, N. */
    double load(double t, double[] y) {
        return g(t, y) > 0 ? tyre(t, y) : 0;
    }

    private double tyre(double t, double[] y) {
        return car.tyreRate() * deflection(t, y) + car.tyreDamping() * (roadSpeed(t) - y[WHEEL_SPEED]);
    }

    /** Energy in motion, height, spring and tyre, J. */
    double stored(double t, double[] y) {
        double travel = y[WHEEL] - y[BODY];
        double deflection = Math.max(0, deflection(t, y));
        return 0.5 * car.sprungMass() * y[BODY_SPEED] * y[BODY_SPEED]
                + 0.5 * car.unsprungMass() * y[WHEEL_SPEED] * y[WHEEL_SPEED]
                + 0.5 * car.wheelRate() * travel * travel
                + restLoad * y[WHEEL]
                + 0.5 * car.tyreRate() * (deflection * deflection - rest * rest);
    }

    @Override
    public int getDimension() {
        return SIZE;
    }

    @Override
    public void computeDerivatives(double t, double[] y, double[] rate) {
        double travelSpeed = y[WHEEL_SPEED] - y[BODY_SPEED];
        double damper = car.damperForce(travelSpeed);
        double suspension = spring(y) + damper;
        double roadSpeed = roadSpeed(t);
        double deflection = deflection(t, y);
        double deflectionSpeed = roadSpeed - y[WHEEL_SPEED];
        double load = contact ? car.tyreRate() * deflection + car.tyreDamping() * deflectionSpeed : 0;
        double acceleration = suspension / car.sprungMass();
        rate[BODY] = y[BODY_SPEED];
        rate[WHEEL] = y[WHEEL_SPEED];
        rate[BODY_SPEED] = acceleration;
        rate[WHEEL_SPEED] = (load - restLoad - suspension) / car.unsprungMass();
        rate[BUMP_WORK] = travelSpeed > 0 ? damper * travelSpeed : 0;
        rate[REBOUND_WORK] = travelSpeed < 0 ? damper * travelSpeed : 0;
        rate[ROAD_WORK] = load * roadSpeed;
        // Off the road a tyre that is still pressed in gives its energy to its own damping.
        rate[TYRE_WORK] = contact
                ? car.tyreDamping() * deflectionSpeed * deflectionSpeed
                : -car.tyreRate() * Math.max(0, deflection) * deflectionSpeed;
        rate[LOAD_SQUARED] = (load - restLoad) * (load - restLoad);
        rate[ACCELERATION_SQUARED] = acceleration * acceleration;
    }

    @Override
    public void init(double t0, double[] y0, double t) {
        // Contact is kept from one stretch to the next.
    }

    /** Above zero with contact, N. */
    @Override
    public double g(double t, double[] y) {
        return Math.min(car.tyreRate() * deflection(t, y), tyre(t, y));
    }

    @Override
    public Action eventOccurred(double t, double[] y, boolean increasing) {
        if (contact && !increasing) {
            contact = false;
            lostAt = t;
        } else if (!contact && increasing) {
            contact = true;
            timeOff += t - lostAt;
        }
        return Action.RESET_DERIVATIVES;
    }

    @Override
    public void resetState(double t, double[] y) {
        // The state goes on; only its slope breaks.
    }

    /** Sets contact by the state, where the road's slope may have jumped. */
    void look(double t, double[] y) {
        boolean touches = g(t, y) >= 0;
        if (touches != contact) {
            eventOccurred(t, y, touches);
        }
    }
}
