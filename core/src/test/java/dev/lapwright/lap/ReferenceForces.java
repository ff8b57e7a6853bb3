package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.track.TrackPoint;
import java.util.stream.DoubleStream;

/**
 * A slow, plain second writing of sections 1 to 7 of docs/theory.md, straight from the equations, that shares no code with
 * the kernel but the aero platform and the shift points (both checked on their own): no tables, no warm starts, plain
 * bisection. The kernel is held to it.
 */
final class ReferenceForces {
    private static final double G = 9.80665;

    private final Car car;
    private final Vehicle vehicle;
    private final double rho;
    private final double m;

    ReferenceForces(Car car, Conditions conditions) {
        this.car = car;
        vehicle = Vehicle.of(car, conditions);
        rho = conditions.air().density();
        m = q(Quantity.MASS) + q(Quantity.FUEL_MASS);
    }

    private double q(Quantity quantity) {
        return car.value(quantity);
    }

    /** Greatest dv/dt under drive; {@code gear} from 0; NaN-free wherever coasting is possible. */
    double drive(TrackPoint p, double v, int gear, double shiftDensity) {
        double overall = car.gearRatios()[gear] * q(Quantity.FINAL_DRIVE);
        double radius = q(Quantity.WHEEL_RADIUS);
        double power = car.powerCorrection().powerFactor(vehicle.conditions().air());
        double torque = power * car.torqueCurve().torque(v * overall / radius);
        double engine = torque * overall * q(Quantity.EFFICIENCY) / radius;
        double delta = delta(gear);
        // The largest acceleration for which grip suffices and no more than the engine's force is needed.
        double low = -30;
        double high = 60;
        for (int i = 0; i < 200; i++) {
            double a = 0.5 * (low + high);
            State s = new State(p, v, a, delta, 0);
            if (s.tyres <= 0 || (s.needed <= engine && s.within())) {
                low = a;
            } else {
                high = a;
            }
        }
        double a = low;
        if (a > 0) {
            double driven = Math.max(new State(p, v, a, delta, 0).needed, 0) / (m * delta);
            a /= 1 + shiftDensity * driven;
        }
        return a;
    }

    /** Hardest braking, dv/dt, negative. */
    double brake(TrackPoint p, double v, int gear) {
        double delta = delta(gear);
        double overall = car.gearRatios()[gear] * q(Quantity.FINAL_DRIVE) / q(Quantity.WHEEL_RADIUS);
        double greatest = DoubleStream.of(car.torqueCurve().torqueNm()).max().orElseThrow();
        double revs = Math.min(1, v * overall * 30 / Math.PI / q(Quantity.REV_LIMIT));
        double engineDrag =
                q(Quantity.OVERRUN_DRAG) / 100 * greatest * (1 + revs) / 2 * overall / q(Quantity.EFFICIENCY);
        double low = -60;
        double high = 20;
        for (int i = 0; i < 200; i++) {
            double a = 0.5 * (low + high);
            State s = new State(p, v, a, delta, engineDrag);
            if (s.tyres >= 0 || s.within()) {
                high = a;
            } else {
                low = a;
            }
        }
        return high;
    }

    /** Whether the car can hold this speed steadily. */
    boolean holds(TrackPoint p, double v) {
        return new State(p, v, 0, 1, 0).within();
    }

    private double delta(int gear) {
        double overall = car.gearRatios()[gear] * q(Quantity.FINAL_DRIVE);
        double radius = q(Quantity.WHEEL_RADIUS);
        return 1 + (q(Quantity.WHEEL_INERTIA) + q(Quantity.ENGINE_INERTIA) * overall * overall) / (m * radius * radius);
    }

    /** Everything at one speed and one dv/dt. */
    final class State {
        final double needed;
        final double tyres;
        private final boolean within;

        State(TrackPoint p, double v, double a, double delta, double engineDrag) {
            double lateral =
                    Math.abs(v * v * p.curvature() * Math.cos(p.bank()) - G * Math.sin(p.bank()) * Math.cos(p.slope()));
            double normal = G * Math.cos(p.slope()) * Math.cos(p.bank())
                    + v * v * p.curvature() * Math.sin(p.bank())
                    + v * v * p.verticalCurvature();
            double dynamic = 0.5 * rho * v * v;
            var aero = vehicle.platformAt(v).areas();
            double wheelbase = q(Quantity.WHEELBASE);
            double fw = q(Quantity.FRONT_WEIGHT) / 100;
            double h = q(Quantity.CG_HEIGHT);
            double tf = q(Quantity.TRACK_FRONT);
            double tr = q(Quantity.TRACK_REAR);
            double ax = a + G * Math.sin(p.slope());
            double zf = m * normal * fw + dynamic * aero.liftFront() - m * ax * h / wheelbase;
            double zr = m * normal * (1 - fw) + dynamic * aero.liftRear() + m * ax * h / wheelbase;
            double total = zf + zr;
            double rcf = q(Quantity.ROLL_CENTRE_FRONT);
            double rcr = q(Quantity.ROLL_CENTRE_REAR);
            double arm = h - (rcf * fw + rcr * (1 - fw));
            double kf = rollStiffness(
                    Quantity.SPRING_FRONT,
                    Quantity.MOTION_RATIO_FRONT,
                    Quantity.BAR_FRONT,
                    Quantity.VERTICAL_RATE_FRONT,
                    tf);
            double kr = rollStiffness(
                    Quantity.SPRING_REAR,
                    Quantity.MOTION_RATIO_REAR,
                    Quantity.BAR_REAR,
                    Quantity.VERTICAL_RATE_REAR,
                    tr);
            double share = kf / (kf + kr);
            double side = m * lateral;
            double df = side * (fw * rcf + share * arm) / tf;
            double dr = side * ((1 - fw) * rcr + (1 - share) * arm) / tr;
            double rollUtilisation = (df * tf + dr * tr) / (0.5 * (zf * tf + zr * tr));
            if (df > zf / 2) {
                dr += (df - zf / 2) * tf / tr;
                df = zf / 2;
            }
            if (dr > zr / 2) {
                df = Math.min(zf / 2, df + (dr - zr / 2) * tr / tf);
                dr = zr / 2;
            }
            double[] load = {zf / 2 - df, zf / 2 + df, zr / 2 - dr, zr / 2 + dr};
            double[] px = new double[4];
            double[] py = new double[4];
            double[] c = new double[4];
            for (int w = 0; w < 4; w++) {
                boolean front = w < 2;
                double f = load[w];
                px[w] = p.grip()
                        * peak(
                                f,
                                front ? Quantity.FRICTION_X_FRONT : Quantity.FRICTION_X_REAR,
                                front ? Quantity.SENSITIVITY_X_FRONT : Quantity.SENSITIVITY_X_REAR,
                                front ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR);
                py[w] = p.grip()
                        * peak(
                                f,
                                front ? Quantity.FRICTION_Y_FRONT : Quantity.FRICTION_Y_REAR,
                                front ? Quantity.SENSITIVITY_Y_FRONT : Quantity.SENSITIVITY_Y_REAR,
                                front ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR);
                c[w] = peak(
                        f,
                        front ? Quantity.CORNERING_STIFFNESS_FRONT : Quantity.CORNERING_STIFFNESS_REAR,
                        front ? Quantity.STIFFNESS_SENSITIVITY_FRONT : Quantity.STIFFNESS_SENSITIVITY_REAR,
                        front ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR);
            }
            double ff = side * fw;
            double fr = side * (1 - fw);
            double uf = ff / (py[0] + py[1]);
            double ur = fr / (py[2] + py[3]);
            double cornering = 0;
            for (int w = 0; w < 4; w++) {
                double fy = (w < 2 ? uf : ur) * py[w];
                cornering += c[w] > 0 ? fy * fy / c[w] : 0;
            }
            double toeFront = Math.toRadians(q(Quantity.TOE_FRONT));
            double toeRear = Math.toRadians(q(Quantity.TOE_REAR));
            double toe = toeFront * toeFront * (c[0] + c[1]) + toeRear * toeRear * (c[2] + c[3]);
            double rolling = (q(Quantity.ROLLING_RESISTANCE) + q(Quantity.ROLLING_RESISTANCE_PER_SPEED) * v) * total;
            double x = m * a + m * G * Math.sin(p.slope()) + dynamic * aero.drag() + rolling + cornering + toe;
            tyres = x;
            needed = x + m * (delta - 1) * a;
            double way = p.curvature() * Math.cos(p.bank());
            if (v * v * way < G * Math.sin(p.bank()) * Math.cos(p.slope())) {
                way = -way;
            }
            double atFront = q(Quantity.FRONT_DRIVE_SHARE) / 100;
            Axle axleF = new Axle(c[0], c[1], px[0], px[1], way * tf * left(uf), preload(Quantity.PRELOAD_FRONT));
            Axle axleR = new Axle(c[2], c[3], px[2], px[3], way * tr * left(ur), preload(Quantity.PRELOAD_REAR));
            boolean enough;
            if (x >= 0) {
                double sf = q(Quantity.POWER_LOCK_FRONT) / 100;
                double sr = q(Quantity.POWER_LOCK_REAR) / 100;
                enough = axleF.drive(driven(atFront, x, a), sf) & axleR.drive(driven(1 - atFront, x, a), sr);
            } else {
                double bf = q(Quantity.BRAKE_FRONT_SHARE) / 100;
                double engine = m * (delta - 1) - q(Quantity.WHEEL_INERTIA) / Math.pow(q(Quantity.WHEEL_RADIUS), 2);
                double through = Math.max(0, Math.min(-x, engineDrag + engine * a));
                double cf = q(Quantity.COAST_LOCK_FRONT) / 100;
                double cr = q(Quantity.COAST_LOCK_REAR) / 100;
                enough = axleF.brake(bf * x, atFront * through, cf)
                        & axleR.brake((1 - bf) * x, (1 - atFront) * through, cr);
            }
            double moment = (axleF.outer - axleF.inner) * tf / 2 + (axleR.outer - axleR.inner) * tr / 2;
            double e = q(Quantity.FRICTION_EXPONENT);
            double leftF = left(py[0], axleF.inner, px[0], e) + left(py[1], axleF.outer, px[1], e);
            double leftR = left(py[2], axleR.inner, px[2], e) + left(py[3], axleR.outer, px[3], e);
            double acrossF = Math.abs(ff - moment / wheelbase) / (py[0] + py[1]);
            double acrossR = Math.abs(fr + moment / wheelbase) / (py[2] + py[3]);
            double spentF = Math.pow(acrossF, e) + 1 - Math.pow(leftF / (py[0] + py[1]), e) + Math.pow(axleF.braked, e);
            double spentR = Math.pow(acrossR, e) + 1 - Math.pow(leftR / (py[2] + py[3]), e) + Math.pow(axleR.braked, e);
            boolean across = spentF <= 1 && spentR <= 1;
            boolean upright = zf >= 0 && zr >= 0 && rollUtilisation <= 1;
            within = enough && across && upright;
        }

        boolean within() {
            return within;
        }
    }

    /** Share of slip stiffness left at a lateral use. */
    private static double left(double u) {
        double most = Math.min(u, 1);
        return 1 - 0.33 * Math.pow(most, 2) - 0.285 * Math.pow(most, 16);
    }

    private double preload(Quantity torque) {
        return 2 * q(torque) / q(Quantity.WHEEL_RADIUS);
    }

    private static double left(double peak, double force, double most, double e) {
        double spent = most > 0 ? Math.abs(force) / most : 0;
        return spent < 1 ? peak * Math.pow(1 - Math.pow(spent, e), 1 / e) : 0;
    }

    /** Two wheels by the words of theory 7: turning as one, as far as each wheel and then the friction allow. */
    private static final class Axle {
        private final double ki;
        private final double ko;
        private final double mostInner;
        private final double mostOuter;
        private final double way;
        private final double preload;
        double inner;
        double outer;
        /** Share of the brakes' capacity. */
        double braked;

        Axle(double ki, double ko, double mostInner, double mostOuter, double way, double preload) {
            this.ki = ki;
            this.ko = ko;
            this.mostInner = mostInner;
            this.mostOuter = mostOuter;
            this.way = way;
            this.preload = preload;
        }

        /** Both turn as one: inner force over ki less outer over ko is the way that the outer one goes further. */
        private double asOne(double x) {
            return ki + ko > 0 ? (x * ki + way * ki * ko) / (ki + ko) : x / 2;
        }

        boolean drive(double x, double lock) {
            inner = asOne(x);
            if (inner > mostInner) {
                inner = mostInner;
            } else if (x - inner > mostOuter) {
                inner = x - mostOuter;
            }
            return held(x, lock * x, lock);
        }

        private boolean held(double x, double share, double lock) {
            double friction = lock >= 1 ? Double.POSITIVE_INFINITY : share + preload;
            inner = Math.max((x - friction) / 2, Math.min((x + friction) / 2, inner));
            outer = x - inner;
            return Math.abs(inner) <= mostInner * (1 + 1e-12) && Math.abs(outer) <= mostOuter * (1 + 1e-12);
        }

        /** Brakes pull alike and take an even share of both wheels; only what the differential holds is told apart. */
        boolean brake(double x, double through, double lock) {
            double most = Math.min(mostInner, mostOuter);
            inner = Math.max(-most, Math.min(most, asOne(x) - x / 2));
            held(0, lock * through, lock);
            double low = Math.min(mostInner, mostOuter);
            braked = -x / Math.max(2 * low, 0.5 * Math.max(mostInner, mostOuter));
            return true;
        }
    }

    /** Each axle's tyres spin their own two wheels; the drive the rest. */
    private double driven(double share, double tyres, double a) {
        double wheels = q(Quantity.WHEEL_INERTIA) / 2 / Math.pow(q(Quantity.WHEEL_RADIUS), 2) * Math.max(a, 0);
        double own = Math.min(wheels, tyres);
        return Math.max(0, share * (tyres + 2 * own) - own);
    }

    private double peak(double f, Quantity mu, Quantity k, Quantity f0) {
        return f * q(mu) * Math.max(0.2, 1 - q(k) * (f / q(f0) - 1));
    }

    private double rollStiffness(Quantity spring, Quantity ratio, Quantity bar, Quantity tyre, double track) {
        double wheel = 1000 * q(spring) * q(ratio) * q(ratio);
        double sprung = wheel * track * track / 2 + q(bar) * 180 / Math.PI;
        double tyres = 1000 * q(tyre) * track * track / 2;
        return 1 / (1 / sprung + 1 / tyres);
    }
}
