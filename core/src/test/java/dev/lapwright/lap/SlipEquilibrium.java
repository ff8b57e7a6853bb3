package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.chassis.AxleSpring;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * Static equilibrium of a two-axle car in a level left turn by the slips of its four wheels, as an oracle for the fast model, with which
 * it shares a car's numbers, its aero areas, springs and (4.1) to (4.4), and no code of forces. Unknown are steer, sideslip and four
 * slips; forces along and across the car, yaw moment, the difference of forces on each axle and how the axles share what they give make
 * six equations. Newton's method with differences, the linear systems by Commons Math.
 *
 * <p>Tyres by the similarity method: ρ = √((κ/κ*)² + (tan α/α*)²) on one curve g(ρ) = sin(1.5 atan(√3 ρ)), g(1) = 1 its peak, with κ*
 * and α* 2.6 times the peak over the slip stiffness, so that the curve starts with the document's stiffness; an ellipse for unequal
 * peaks. Source: Pacejka, Tire and Vehicle Dynamics, chapter 4, from memory. Wheels on one differential turn as one while the difference of
 * their forces is within S times what both give and a preload; else it is that, for the wheel that turns slower: Milliken
 * and Milliken, Race Car Vehicle Dynamics, chapter 20, from memory. Brakes pull alike left and right and no wheel locks; engine drag is left
 * out, and under brakes the axles do not hold each other. Loads are taken in the path's frame. Neglects aligning torque and
 * rolling resistance's place at each wheel.
 */
final class SlipEquilibrium {
    private static final double G = 9.80665;
    private static final double SHAPE = 1.5 * Math.sqrt(3);
    private static final int UNKNOWNS = 6;
    private static final int ITERATIONS = 40;
    private static final int TRIES = 60;
    /** Slip over the peak's of which an axle is said to slide: a little above 1, for its wheels' peaks lie apart. */
    private static final double PAST_PEAK = 1.05;
    /** How strongly a difference of speeds counts in the differential's equation; any positive number has the same root. */
    private static final double HOLD = 3;

    private final Car car;
    private final Vehicle vehicle;
    private final double radius;
    private final double mass;
    private final double toFront;
    private final double toRear;

    private double drag;
    private double acceleration;
    private double speed;
    private final double[] load = new double[4];
    private final double[] peakX = new double[4];
    private final double[] peakY = new double[4];
    private final double[] stiffness = new double[4];
    private final double[] along = new double[4];
    private final double[] turning = new double[4];
    /** Slip over the slip of the tyre's peak. */
    private final double[] use = new double[4];

    /**
     * @param car whose engine is left out: any drive that the tyres can give is to be had
     * @param radius of the path, m
     */
    SlipEquilibrium(Car car, Conditions conditions, double radius) {
        this.car = car;
        vehicle = Vehicle.of(car, conditions);
        this.radius = radius;
        mass = q(Quantity.MASS) + q(Quantity.FUEL_MASS);
        toRear = q(Quantity.WHEELBASE) * q(Quantity.FRONT_WEIGHT) / 100;
        toFront = q(Quantity.WHEELBASE) - toRear;
    }

    private double q(Quantity quantity) {
        return car.value(quantity);
    }

    private double q(int wheel, Quantity front, Quantity rear) {
        return car.value(wheel < 2 ? front : rear);
    }

    /** Highest speed that the car can hold, m/s: where equilibria that begin at low speed end. */
    double limit() {
        double v = 0.3 * Math.sqrt(radius * G);
        double[] x = search(v, 0, straight());
        if (x == null) {
            throw new IllegalStateException("no equilibrium at " + v + " m/s");
        }
        return trace(0.02 * v, 1e-6 * v, (t) -> new double[] {v + t, 0}, x) + v;
    }

    /** Greatest dv/dt at a speed, m/s²; NaN if the car cannot hold the speed. */
    double drive(double v) {
        double[] x = start(v);
        return x == null ? Double.NaN : trace(0.2, 1e-4, (t) -> new double[] {v, t}, x);
    }

    /** Hardest braking at a speed without a wheel that locks, dv/dt in m/s², negative; NaN if the car cannot hold the speed. */
    double brake(double v) {
        double[] x = start(v);
        return x == null ? Double.NaN : -trace(0.2, 1e-4, (t) -> new double[] {v, -t}, x);
    }

    /** How far a path of speed and acceleration can be followed from an equilibrium at its beginning. */
    private double trace(double first, double least, DoubleFunction<double[]> path, double[] from) {
        double t = 0;
        double step = first;
        double[] x = from;
        double[] before = x;
        double moved = 1;
        boolean looked = false;
        while (step > least) {
            boolean wide = step < 0.05 * first && !looked;
            if (wide) {
                // Where a clamp of a differential takes over Newton's method may fail though the car goes on.
                step = 0.1 * first;
                looked = true;
            }
            double[] to = path.apply(t + step);
            double[] next = wide ? search(to[0], to[1], x) : solve(to[0], to[1], ahead(before, x, step / moved));
            if (next == null) {
                step /= wide ? 4 : 2;
            } else {
                t += step;
                before = x;
                moved = step;
                x = next;
                looked = looked && !wide;
            }
        }
        return t;
    }

    /** An equilibrium near a state, else any that is found from {@link #TRIES} others. */
    private double[] search(double v, double a, double[] near) {
        double[] x = solve(v, a, near);
        Random random = new Random(1);
        for (int i = 0; i < TRIES && x == null; i++) {
            double scale = i % 2 == 0 ? 0.2 : 1;
            double[] trial = near.clone();
            trial[0] += scale * 0.1 * (random.nextDouble() - 0.5);
            trial[1] += scale * 0.2 * (random.nextDouble() - 0.5);
            for (int k = 2; k < UNKNOWNS; k++) {
                trial[k] += scale * 0.1 * (random.nextDouble() - 0.5);
            }
            x = solve(v, a, trial);
        }
        return x;
    }

    /** Steer at a steady speed, rad; NaN if the car cannot hold it. */
    double steer(double v) {
        double[] x = start(v);
        return x == null ? Double.NaN : x[0];
    }

    /** Sum of the tyres' forces along their wheels at a steady speed, N; NaN if the car cannot hold it. */
    double force(double v) {
        double[] x = start(v);
        if (x == null) {
            return Double.NaN;
        }
        residuals(x);
        return along[0] + along[1] + along[2] + along[3];
    }

    /** Moment into the turn that unequal forces along the car's wheels make at a speed and dv/dt, Nm; NaN if out of reach. */
    double yawMoment(double v, double a) {
        double[] x = start(v);
        int steps = (int) Math.ceil(Math.abs(a) / 0.2);
        for (int i = 1; i <= steps && x != null; i++) {
            x = search(v, a * i / steps, x);
        }
        if (x == null) {
            return Double.NaN;
        }
        residuals(x);
        return 0.5 * q(Quantity.TRACK_FRONT) * (along[1] - along[0])
                + 0.5 * q(Quantity.TRACK_REAR) * (along[3] - along[2]);
    }

    private double[] straight() {
        double[] x = new double[UNKNOWNS];
        Arrays.fill(x, 0.002);
        x[0] = q(Quantity.WHEELBASE) / radius;
        x[1] = 0;
        return x;
    }

    private double[] start(double v) {
        double[] x = straight();
        for (int i = 6; i <= 20 && x != null; i++) {
            x = search(0.05 * i * v, 0, x);
        }
        return x;
    }

    private static double[] ahead(double[] before, double[] x, double share) {
        double[] next = new double[UNKNOWNS];
        for (int k = 0; k < UNKNOWNS; k++) {
            next[k] = x[k] + share * (x[k] - before[k]);
        }
        return next;
    }

    private void place(double v, double a) {
        speed = v;
        acceleration = a;
        double pressure = 0.5 * vehicle.airDensity() * v * v;
        var areas = vehicle.platformAt(v).areas();
        drag = pressure * areas.drag();
        double h = q(Quantity.CG_HEIGHT);
        double pitch = mass * a * h / q(Quantity.WHEELBASE);
        double fw = q(Quantity.FRONT_WEIGHT) / 100;
        double front = mass * G * fw + pressure * areas.liftFront() - pitch;
        double rear = mass * G * (1 - fw) + pressure * areas.liftRear() + pitch;
        drag += (q(Quantity.ROLLING_RESISTANCE) + q(Quantity.ROLLING_RESISTANCE_PER_SPEED) * v) * (front + rear);
        double side = mass * v * v / radius;
        double rcf = q(Quantity.ROLL_CENTRE_FRONT);
        double rcr = q(Quantity.ROLL_CENTRE_REAR);
        double arm = h - rcf * fw - rcr * (1 - fw);
        double share = vehicle.frontRollShare();
        double df = side * (fw * rcf + share * arm) / q(Quantity.TRACK_FRONT);
        double dr = side * ((1 - fw) * rcr + (1 - share) * arm) / q(Quantity.TRACK_REAR);
        double[] lean = leans(side * arm, df, dr);
        if (df > front / 2) {
            dr += (df - front / 2) * q(Quantity.TRACK_FRONT) / q(Quantity.TRACK_REAR);
            df = front / 2;
        }
        if (dr > rear / 2) {
            df = Math.min(front / 2, df + (dr - rear / 2) * q(Quantity.TRACK_REAR) / q(Quantity.TRACK_FRONT));
            dr = rear / 2;
        }
        load[0] = front / 2 - df;
        load[1] = front / 2 + df;
        load[2] = rear / 2 - dr;
        load[3] = rear / 2 + dr;
        for (int w = 0; w < 4; w++) {
            double off = lean[w] - q(w, Quantity.BEST_INCLINATION_FRONT, Quantity.BEST_INCLINATION_REAR);
            double lossX = q(w, Quantity.INCLINATION_LOSS_X_FRONT, Quantity.INCLINATION_LOSS_X_REAR);
            double lossY = q(w, Quantity.INCLINATION_LOSS_Y_FRONT, Quantity.INCLINATION_LOSS_Y_REAR);
            peakX[w] = q(w, Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR)
                    * sensitive(w, q(w, Quantity.SENSITIVITY_X_FRONT, Quantity.SENSITIVITY_X_REAR))
                    / (1 + lossX * lean[w] * lean[w]);
            peakY[w] = q(w, Quantity.FRICTION_Y_FRONT, Quantity.FRICTION_Y_REAR)
                    * sensitive(w, q(w, Quantity.SENSITIVITY_Y_FRONT, Quantity.SENSITIVITY_Y_REAR))
                    / (1 + lossY * off * off);
            stiffness[w] = q(w, Quantity.CORNERING_STIFFNESS_FRONT, Quantity.CORNERING_STIFFNESS_REAR)
                    * sensitive(w, q(w, Quantity.STIFFNESS_SENSITIVITY_FRONT, Quantity.STIFFNESS_SENSITIVITY_REAR));
        }
    }

    /** Load, less what a coefficient loses by it. */
    private double sensitive(int w, double k) {
        double f = Math.max(load[w], 1);
        double f0 = q(w, Quantity.REFERENCE_LOAD_FRONT, Quantity.REFERENCE_LOAD_REAR);
        return f * Math.max(0.2, 1 - k * (f / f0 - 1));
    }

    /** Lean of each wheel into the turn, degrees, by the body's moment on its springs and the axles' transfers on their tyres. */
    private double[] leans(double moment, double transferFront, double transferRear) {
        AxleSpring front = new AxleSpring(
                1000 * q(Quantity.SPRING_FRONT),
                q(Quantity.MOTION_RATIO_FRONT),
                Math.toDegrees(q(Quantity.BAR_FRONT)),
                1000 * q(Quantity.VERTICAL_RATE_FRONT),
                q(Quantity.TRACK_FRONT));
        AxleSpring rear = new AxleSpring(
                1000 * q(Quantity.SPRING_REAR),
                q(Quantity.MOTION_RATIO_REAR),
                Math.toDegrees(q(Quantity.BAR_REAR)),
                1000 * q(Quantity.VERTICAL_RATE_REAR),
                q(Quantity.TRACK_REAR));
        double roll = moment / (front.rollStiffness() + rear.rollStiffness());
        double atFront = roll * front.sprungShareOfRoll() * (1 - q(Quantity.CAMBER_GAIN_FRONT))
                + transferFront * front.track() / front.tyreRollStiffness();
        double atRear = roll * rear.sprungShareOfRoll() * (1 - q(Quantity.CAMBER_GAIN_REAR))
                + transferRear * rear.track() / rear.tyreRollStiffness();
        double f = Math.toDegrees(atFront);
        double r = Math.toDegrees(atRear);
        double cf = -q(Quantity.CAMBER_FRONT);
        double cr = -q(Quantity.CAMBER_REAR);
        return new double[] {-cf - f, cf - f, -cr - r, cr - r};
    }

    private double[] solve(double v, double a, double[] guess) {
        place(v, a);
        double[] x = guess.clone();
        double[] f = residuals(x);
        for (int i = 0; i < ITERATIONS; i++) {
            if (norm(f) < 1e-10) {
                return sliding(x) ? null : x;
            }
            double[][] jacobian = new double[UNKNOWNS][UNKNOWNS];
            for (int k = 0; k < UNKNOWNS; k++) {
                double[] moved = x.clone();
                double h = 1e-7;
                moved[k] += h;
                double[] up = residuals(moved);
                moved[k] -= 2 * h;
                double[] down = residuals(moved);
                for (int j = 0; j < UNKNOWNS; j++) {
                    jacobian[j][k] = (up[j] - down[j]) / (2 * h);
                }
            }
            RealVector step;
            try {
                step = new LUDecomposition(new Array2DRowRealMatrix(jacobian))
                        .getSolver()
                        .solve(new ArrayRealVector(f));
            } catch (SingularMatrixException fold) {
                return null;
            }
            double before = norm(f);
            double part = 1;
            double[] trial = x;
            double[] after = f;
            for (int half = 0; half < 12; half++) {
                trial = x.clone();
                for (int k = 0; k < UNKNOWNS; k++) {
                    trial[k] -= part * step.getEntry(k);
                }
                after = residuals(trial);
                if (norm(after) < before) {
                    break;
                }
                part /= 2;
            }
            // A way back from the far side of the peak is another branch.
            if (!(norm(after) < before) || Math.abs(trial[1]) > 0.5 || Math.abs(trial[0]) > 1) {
                return null;
            }
            x = trial;
            f = after;
        }
        return null;
    }

    /** Whether both wheels of an axle are past their peak, or a wheel is on its way to spin or to lock: beyond the limit. */
    private boolean sliding(double[] x) {
        for (int w = 0; w < 4; w++) {
            if (Math.abs(x[2 + w]) > 0.5) {
                return true;
            }
        }
        return Math.min(use[0], use[1]) > PAST_PEAK || Math.min(use[2], use[3]) > PAST_PEAK;
    }

    private static double norm(double[] f) {
        double sum = 0;
        for (double v : f) {
            sum += v * v;
        }
        return Math.sqrt(sum);
    }

    /** Of steer, sideslip and the slips of the inner and outer wheels, front and rear; forces over the weight. */
    private double[] residuals(double[] x) {
        double vx = speed * Math.cos(x[1]);
        double vy = speed * Math.sin(x[1]);
        double rate = speed / radius;
        double fx = 0;
        double fy = 0;
        double moment = 0;
        for (int w = 0; w < 4; w++) {
            boolean front = w < 2;
            int left = w % 2 == 0 ? 1 : -1;
            double px = front ? toFront : -toRear;
            double py = 0.5 * q(w, Quantity.TRACK_FRONT, Quantity.TRACK_REAR) * left;
            double u = vx - rate * py;
            double across = vy + rate * px;
            double steer = (front ? x[0] : 0) - left * Math.toRadians(q(w, Quantity.TOE_FRONT, Quantity.TOE_REAR));
            double c = Math.cos(steer);
            double s = Math.sin(steer);
            double rolling = u * c + across * s;
            double drift = -(-u * s + across * c) / rolling;
            double sx = x[2 + w] * stiffness[w] * q(Quantity.SLIP_STIFFNESS) / 100 / (SHAPE * peakX[w]);
            double sy = drift * stiffness[w] / (SHAPE * peakY[w]);
            double rho = Math.max(1e-12, Math.hypot(sx, sy));
            double g = Math.sin(1.5 * Math.atan(Math.sqrt(3) * rho));
            double wheelX = peakX[w] * g * sx / rho;
            double wheelY = peakY[w] * g * sy / rho;
            along[w] = wheelX;
            use[w] = rho;
            turning[w] = rolling * (1 + x[2 + w]) / speed;
            double bodyX = wheelX * c - wheelY * s;
            double bodyY = wheelX * s + wheelY * c;
            fx += bodyX;
            fy += bodyY;
            moment += px * bodyY - py * bodyX;
        }
        double centripetal = speed * speed / radius;
        double ax = acceleration * Math.cos(x[1]) - centripetal * Math.sin(x[1]);
        double ay = acceleration * Math.sin(x[1]) + centripetal * Math.cos(x[1]);
        double weight = mass * G;
        return new double[] {
            (fx - drag - mass * ax) / weight,
            (fy - mass * ay) / weight,
            moment / (weight * q(Quantity.WHEELBASE)),
            differential(0, weight),
            differential(2, weight),
            between(weight)
        };
    }

    /** Zero where the axle's wheels obey their differential. */
    private double differential(int inner, double weight) {
        double both = along[inner] + along[inner + 1];
        boolean driven = along[0] + along[1] + along[2] + along[3] > 0;
        double percent = driven
                ? q(inner, Quantity.POWER_LOCK_FRONT, Quantity.POWER_LOCK_REAR)
                : q(inner, Quantity.COAST_LOCK_FRONT, Quantity.COAST_LOCK_REAR);
        double faster = turning[inner + 1] - turning[inner];
        if (percent >= 100) {
            return faster;
        }
        double preload = 2 * q(inner, Quantity.PRELOAD_FRONT, Quantity.PRELOAD_REAR) / q(Quantity.WHEEL_RADIUS);
        double held = ((driven ? percent / 100 * Math.abs(both) : 0) + preload) / weight;
        double difference = (along[inner + 1] - along[inner]) / weight;
        return difference - clamp(difference - HOLD * faster, -held, held);
    }

    /** Zero where the axles share by their brakes, or by what drives them. */
    private double between(double weight) {
        double front = (along[0] + along[1]) / weight;
        double all = front + (along[2] + along[3]) / weight;
        if (all <= 0) {
            return front - q(Quantity.BRAKE_FRONT_SHARE) / 100 * all;
        }
        double share = q(Quantity.FRONT_DRIVE_SHARE) / 100;
        if (share == 0 || share == 1) {
            return front - share * all;
        }
        double faster = (turning[0] + turning[1] - turning[2] - turning[3]) / 2;
        double lock = q(Quantity.CENTRE_LOCK) / 100;
        if (lock >= 1) {
            return faster;
        }
        return front - clamp(front - HOLD * faster, (share - lock / 2) * all, (share + lock / 2) * all);
    }

    private static double clamp(double x, double low, double high) {
        return Math.max(low, Math.min(high, x));
    }
}
