package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.linear.SingularMatrixException;

/**
 * Static equilibrium of a two-axle car in a level left turn by the slips of its four wheels, as an oracle for the fast model, with which
 * it shares a car's numbers, its aero areas and (4.1) to (4.4), and no code of forces. Unknown are steer, sideslip and the slips of the two
 * driven wheels; forces along and across the car, yaw moment and the differential (open, or none at all) make four equations.
 * Newton's method with differences, the linear systems by Commons Math.
 *
 * <p>Tyres by the similarity method: ρ = √((κ/κ*)² + (tan α/α*)²) on one curve g(ρ) = sin(1.5 atan(√3 ρ)), g(1) = 1 its peak, with κ*
 * and α* 2.6 times the peak over the slip stiffness, so that the curve starts with the document's stiffness; an ellipse for unequal
 * peaks. Source: Pacejka, Tire and Vehicle Dynamics, chapter 4, from memory. Loads are taken in the path's frame. Neglects
 * toe, aligning torque and rolling resistance's place at each wheel.
 */
final class SlipEquilibrium {
    private static final double G = 9.80665;
    private static final double SHAPE = 1.5 * Math.sqrt(3);
    private static final int UNKNOWNS = 4;
    private static final int ITERATIONS = 40;

    private final Car car;
    private final Vehicle vehicle;
    private final boolean spool;
    private final boolean frontDrive;
    private final double radius;

    private final double mass;
    private final double toFront;
    private final double toRear;
    private double drag;
    private double acceleration;
    private final double[] load = new double[4];
    private double speed;

    /**
     * @param car front or rear drive
     * @param spool whether the driven wheels turn as one; else its differential is taken as open
     * @param radius of the path, m
     */
    SlipEquilibrium(Car car, Conditions conditions, boolean spool, double radius) {
        this.car = car;
        vehicle = Vehicle.of(car, conditions);
        this.spool = spool;
        this.radius = radius;
        frontDrive = q(Quantity.FRONT_DRIVE_SHARE) == 100;
        mass = q(Quantity.MASS) + q(Quantity.FUEL_MASS);
        toRear = q(Quantity.WHEELBASE) * q(Quantity.FRONT_WEIGHT) / 100;
        toFront = q(Quantity.WHEELBASE) - toRear;
    }

    private double q(Quantity quantity) {
        return car.value(quantity);
    }

    /** Highest speed that the car can hold, m/s: where the equilibrium that begins at low speed ends. */
    double limit() {
        double v = 0.3 * Math.sqrt(radius * G);
        double[] x = {q(Quantity.WHEELBASE) / radius, 0, 0.002, 0.002};
        x = solve(v, 0, x);
        if (x == null) {
            throw new IllegalStateException("no equilibrium at " + v + " m/s");
        }
        double step = 0.02 * v;
        while (step > 1e-6 * v) {
            double[] next = solve(v + step, 0, x);
            if (next == null) {
                step /= 2;
            } else {
                v += step;
                x = next;
            }
        }
        return v;
    }

    /** Greatest dv/dt at a speed, m/s2. */
    double drive(double v) {
        double[] x = solve(v, 0, start(v));
        if (x == null) {
            return Double.NaN;
        }
        double a = 0;
        double step = 0.2;
        while (step > 1e-4) {
            double[] next = solve(v, a + step, x);
            if (next == null) {
                step /= 2;
            } else {
                a += step;
                x = next;
            }
        }
        return a;
    }

    private double[] start(double v) {
        double[] x = {q(Quantity.WHEELBASE) / radius, 0, 0.002, 0.002};
        for (double share = 0.3; share < 1 && x != null; share += 0.05) {
            x = solve(share * v, 0, x);
        }
        return x;
    }

    private void place(double v, double a) {
        speed = v;
        acceleration = a;
        double pressure = 0.5 * vehicle.airDensity() * v * v;
        var areas = vehicle.platformAt(v).areas();
        drag = pressure * areas.drag();
        double h = q(Quantity.CG_HEIGHT);
        double pitch = mass * a * h / q(Quantity.WHEELBASE);
        double front = mass * G * q(Quantity.FRONT_WEIGHT) / 100 + pressure * areas.liftFront() - pitch;
        double rear = mass * G * (1 - q(Quantity.FRONT_WEIGHT) / 100) + pressure * areas.liftRear() + pitch;
        drag += (q(Quantity.ROLLING_RESISTANCE) + q(Quantity.ROLLING_RESISTANCE_PER_SPEED) * v) * (front + rear);
        double side = mass * v * v / radius;
        double fw = q(Quantity.FRONT_WEIGHT) / 100;
        double rcf = q(Quantity.ROLL_CENTRE_FRONT);
        double rcr = q(Quantity.ROLL_CENTRE_REAR);
        double arm = h - rcf * fw - rcr * (1 - fw);
        double share = vehicle.frontRollShare();
        double df = side * (fw * rcf + share * arm) / q(Quantity.TRACK_FRONT);
        double dr = side * ((1 - fw) * rcr + (1 - share) * arm) / q(Quantity.TRACK_REAR);
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
    }

    private double[] solve(double v, double a, double[] guess) {
        place(v, a);
        double[] x = guess.clone();
        double[] f = residuals(x);
        for (int i = 0; i < ITERATIONS; i++) {
            if (norm(f) < 1e-10) {
                return x;
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
        return norm(f) < 1e-8 ? x : null;
    }

    private static double norm(double[] f) {
        double sum = 0;
        for (double v : f) {
            sum += v * v;
        }
        return Math.sqrt(sum);
    }

    /** Of steer, sideslip and the slips of the inner and outer driven wheel; forces over the weight. */
    private double[] residuals(double[] x) {
        double vx = speed * Math.cos(x[1]);
        double vy = speed * Math.sin(x[1]);
        double rate = speed / radius;
        double fx = 0;
        double fy = 0;
        double moment = 0;
        double[] along = new double[4];
        double[] turning = new double[4];
        for (int w = 0; w < 4; w++) {
            boolean front = w < 2;
            double px = front ? toFront : -toRear;
            double py = 0.5 * q(front ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR) * (w % 2 == 0 ? 1 : -1);
            double u = vx - rate * py;
            double across = vy + rate * px;
            double steer = front ? x[0] : 0;
            double c = Math.cos(steer);
            double s = Math.sin(steer);
            double rolling = u * c + across * s;
            double drift = -(-u * s + across * c) / rolling;
            double slip = front == frontDrive ? x[2 + w % 2] : 0;
            double peakX = peak(w, Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR, true);
            double peakY = peak(w, Quantity.FRICTION_Y_FRONT, Quantity.FRICTION_Y_REAR, false);
            double stiffness = stiffness(w);
            double sx = slip * stiffness / (SHAPE * peakX);
            double sy = drift * stiffness / (SHAPE * peakY);
            double rho = Math.max(1e-12, Math.hypot(sx, sy));
            double g = Math.sin(1.5 * Math.atan(Math.sqrt(3) * rho));
            double wheelX = peakX * g * sx / rho;
            double wheelY = peakY * g * sy / rho;
            along[w] = wheelX;
            turning[w] = rolling * (1 + slip);
            double bodyX = wheelX * c - wheelY * s;
            double bodyY = wheelX * s + wheelY * c;
            fx += bodyX;
            fy += bodyY;
            moment += px * bodyY - py * bodyX;
        }
        double centripetal = speed * speed / radius;
        double ax = acceleration * Math.cos(x[1]) - centripetal * Math.sin(x[1]);
        double ay = acceleration * Math.sin(x[1]) + centripetal * Math.cos(x[1]);
        int inner = frontDrive ? 0 : 2;
        double weight = mass * G;
        double shared =
                spool ? (turning[inner] - turning[inner + 1]) / speed : (along[inner] - along[inner + 1]) / weight;
        return new double[] {
            (fx - drag - mass * ax) / weight,
            (fy - mass * ay) / weight,
            moment / (weight * q(Quantity.WHEELBASE)),
            shared
        };
    }

    private double peak(int w, Quantity front, Quantity rear, boolean isAlong) {
        double k = isAlong
                ? q(w < 2 ? Quantity.SENSITIVITY_X_FRONT : Quantity.SENSITIVITY_X_REAR)
                : q(w < 2 ? Quantity.SENSITIVITY_Y_FRONT : Quantity.SENSITIVITY_Y_REAR);
        double f0 = q(w < 2 ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR);
        double f = Math.max(load[w], 1);
        return q(w < 2 ? front : rear) * f * Math.max(0.2, 1 - k * (f / f0 - 1));
    }

    private double stiffness(int w) {
        double k = q(w < 2 ? Quantity.STIFFNESS_SENSITIVITY_FRONT : Quantity.STIFFNESS_SENSITIVITY_REAR);
        double f0 = q(w < 2 ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR);
        double f = Math.max(load[w], 1);
        return q(w < 2 ? Quantity.CORNERING_STIFFNESS_FRONT : Quantity.CORNERING_STIFFNESS_REAR)
                * f
                * Math.max(0.2, 1 - k * (f / f0 - 1));
    }
}
