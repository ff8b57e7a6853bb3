package dev.lapwright.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.exception.NumberIsTooSmallException;
import org.apache.commons.math3.ode.nonstiff.DormandPrince54Integrator;
import org.apache.commons.math3.ode.sampling.FixedStepHandler;
import org.apache.commons.math3.ode.sampling.StepNormalizer;
import org.apache.commons.math3.ode.sampling.StepNormalizerBounds;

/**
 * Solver of a quarter car's pass over a road at steady speed, from rest, by the Dormand-Prince integrator of Commons Math.
 * The moments at which the tyre loses and finds the road are found as events; the road is taken from joint to joint, so
 * that no step reaches over a jump of its slope.
 */
public final class PassSolver {
    /** Between two looks at the motion for its peaks, s; a wheel hops in some 60 ms. */
    private static final double SAMPLE = 5e-4;

    private static final double LONGEST_STEP = 5e-3;
    private static final double SHORTEST_STEP = 1e-13;
    private static final double EVENT_TIME = 1e-9;
    private static final double EVENT_CHECK = 1e-3;
    private static final int MOST_SAMPLES = 2_000_000;
    private static final double RELATIVE = 1e-7;
    /** m, m, m/s, m/s, J, J, J, J, N² s, m²/s³. */
    private static final double[] ABSOLUTE = {1e-8, 1e-8, 1e-7, 1e-7, 1e-5, 1e-5, 1e-5, 1e-5, 1, 1e-5};

    private final RoadProfile road;
    private final double speed;

    private PassSolver(RoadProfile road, double speed) {
        this.road = road;
        this.speed = speed;
    }

    /** Over a road at a speed, m/s. */
    public static PassSolver over(RoadProfile road, double speed) {
        Check.positive("speed (m/s)", speed);
        double samples = (road.length() / speed + road.settling()) / SAMPLE;
        if (!(samples < MOST_SAMPLES)) {
            throw new InvalidValueException(
                    "speed (m/s)",
                    Check.text(speed) + " makes the pass longer than " + Check.text(MOST_SAMPLES * SAMPLE) + " s",
                    "drive faster");
        }
        return new PassSolver(road, speed);
    }

    /** What the pass does. */
    public RidePass drive(QuarterCar car) {
        return new Run(car, false).pass();
    }

    /** The pass over time, every half millisecond and at the joints of the road. */
    public RidePass.Trace trace(QuarterCar car) {
        Run run = new Run(car, true);
        run.pass();
        return run.trace();
    }

    /** One pass of one car. */
    private final class Run implements FixedStepHandler {
        private final QuarterCar car;
        private final WheelMotion motion;
        private final List<double[]> rows;
        private double leastLoad;
        private double greatestLoad;
        private double peakAcceleration;
        private double bumpTravel;
        private double reboundTravel;
        private double bumpSpeed;
        private double reboundSpeed;

        Run(QuarterCar car, boolean traced) {
            this.car = car;
            motion = new WheelMotion(car, road, speed);
            rows = traced ? new ArrayList<>() : null;
            leastLoad = car.staticLoad();
            greatestLoad = car.staticLoad();
        }

        RidePass pass() {
            double[] y = new double[WheelMotion.SIZE];
            double start = Math.min(road.runUp(speed), road.length() / 2) / speed;
            double end = road.length() / speed + road.settling();
            y[WheelMotion.BODY] = motion.roadHeight(0);
            y[WheelMotion.WHEEL] = motion.roadHeight(0);
            if (start > 0) {
                go(0, start, y, false);
            }
            for (int k = WheelMotion.BUMP_WORK; k < WheelMotion.SIZE; k++) {
                y[k] = 0;
            }
            motion.count(start);
            double before = motion.stored(start, y);
            double from = start;
            for (double joint : road.joints()) {
                double at = joint / speed;
                if (at > from && at < end) {
                    go(from, at, y, true);
                    from = at;
                }
            }
            go(from, end, y, true);
            double time = end - start;
            return new RidePass(
                    time,
                    new RidePass.Contact(
                            car.staticLoad(),
                            Math.sqrt(y[WheelMotion.LOAD_SQUARED] / time) / car.staticLoad(),
                            leastLoad,
                            greatestLoad,
                            motion.timeOff(end)),
                    peakAcceleration,
                    Math.sqrt(y[WheelMotion.ACCELERATION_SQUARED] / time),
                    new RidePass.Stroke(bumpTravel, reboundTravel, bumpSpeed, reboundSpeed),
                    new RidePass.Energy(
                            y[WheelMotion.ROAD_WORK],
                            y[WheelMotion.BUMP_WORK],
                            y[WheelMotion.REBOUND_WORK],
                            y[WheelMotion.TYRE_WORK],
                            motion.stored(end, y) - before));
        }

        private void go(double from, double to, double[] y, boolean counted) {
            if (to - from < EVENT_TIME) {
                return;
            }
            DormandPrince54Integrator integrator =
                    new DormandPrince54Integrator(SHORTEST_STEP, LONGEST_STEP, ABSOLUTE, relative());
            integrator.setInitialStepSize(Math.min(1e-4, (to - from) / 2));
            motion.enter(from, to);
            motion.look(from, y);
            integrator.addEventHandler(motion, EVENT_CHECK, EVENT_TIME, 100);
            if (counted) {
                integrator.addStepHandler(new StepNormalizer(SAMPLE, this, StepNormalizerBounds.BOTH));
            }
            try {
                integrator.integrate(motion, from, y, to, y);
            } catch (NumberIsTooSmallException | MathIllegalStateException e) {
                throw new LapwrightException(
                        "ride",
                        "the motion of the wheel could not be followed at " + Check.text(from) + " s",
                        "check masses, rates and dampers of the car",
                        e);
            }
        }

        private double[] relative() {
            double[] all = new double[WheelMotion.SIZE];
            Arrays.fill(all, RELATIVE);
            return all;
        }

        @Override
        public void init(double t0, double[] y0, double t) {
            // Peaks are kept from one stretch to the next.
        }

        @Override
        public void handleStep(double t, double[] y, double[] rate, boolean isLast) {
            double load = motion.load(t, y);
            double acceleration = motion.bodyAcceleration(y);
            double travel = y[WheelMotion.WHEEL] - y[WheelMotion.BODY];
            double travelSpeed = car.motionRatio() * (y[WheelMotion.WHEEL_SPEED] - y[WheelMotion.BODY_SPEED]);
            leastLoad = Math.min(leastLoad, load);
            greatestLoad = Math.max(greatestLoad, load);
            peakAcceleration = Math.max(peakAcceleration, Math.abs(acceleration));
            bumpTravel = Math.max(bumpTravel, travel);
            reboundTravel = Math.max(reboundTravel, -travel);
            bumpSpeed = Math.max(bumpSpeed, travelSpeed);
            reboundSpeed = Math.max(reboundSpeed, -travelSpeed);
            if (rows != null && (rows.isEmpty() || t > rows.get(rows.size() - 1)[0])) {
                rows.add(new double[] {
                    t, motion.roadHeight(t), y[WheelMotion.WHEEL], y[WheelMotion.BODY], load, acceleration
                });
            }
        }

        RidePass.Trace trace() {
            double[][] columns = new double[6][rows.size()];
            for (int i = 0; i < rows.size(); i++) {
                for (int k = 0; k < columns.length; k++) {
                    columns[k][i] = rows.get(i)[k];
                }
            }
            return new RidePass.Trace(columns[0], columns[1], columns[2], columns[3], columns[4], columns[5]);
        }
    }
}
