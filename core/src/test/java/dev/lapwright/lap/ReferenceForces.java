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
        for (int i = 0; i < 70; i++) {
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
        for (int i = 0; i < 70; i++) {
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
            double rigid = arm / (kf + kr);
            lean(
                    0,
                    py,
                    px,
                    side * rigid * (1 - kf / tyreRoll(Quantity.VERTICAL_RATE_FRONT, tf)),
                    df,
                    lateralSign(p, v));
            lean(2, py, px, side * rigid * (1 - kr / tyreRoll(Quantity.VERTICAL_RATE_REAR, tr)), dr, lateralSign(p, v));
            double toeFront = Math.toRadians(q(Quantity.TOE_FRONT));
            double toeRear = Math.toRadians(q(Quantity.TOE_REAR));
            double peakF = atOneAngle(py, c, 0, toeFront, 1, 1);
            double peakR = atOneAngle(py, c, 2, toeRear, 1, 1);
            double ff = side * fw;
            double fr = side * (1 - fw);
            double uf = ff / peakF;
            double ur = fr / peakR;
            // Force across times slip angle, the stiffness left at that use of the peak.
            double cornering = ff * ff / (c[0] + c[1]) / chord(uf) + fr * fr / (c[2] + c[3]) / chord(ur);
            double toe = 4 * toeFront * toeFront * c[0] * c[1] / (c[0] + c[1])
                    + 4 * toeRear * toeRear * c[2] * c[3] / (c[2] + c[3]);
            double rolling = (q(Quantity.ROLLING_RESISTANCE) + q(Quantity.ROLLING_RESISTANCE_PER_SPEED) * v) * total;
            double x = m * a + m * G * Math.sin(p.slope()) + dynamic * aero.drag() + rolling + cornering + toe;
            tyres = x;
            needed = x + m * (delta - 1) * a;
            double way = p.curvature() * Math.cos(p.bank());
            if (v * v * way < G * Math.sin(p.bank()) * Math.cos(p.slope())) {
                way = -way;
            }
            double atFront = q(Quantity.FRONT_DRIVE_SHARE) / 100;
            Axle axleF = new Axle(c[0], c[1], px[0], px[1], way * tf, uf, preload(Quantity.PRELOAD_FRONT));
            Axle axleR = new Axle(c[2], c[3], px[2], px[3], way * tr, ur, preload(Quantity.PRELOAD_REAR));
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
            double moment = axleF.apart * tf / 2 + axleR.apart * tr / 2;
            double e = q(Quantity.FRICTION_EXPONENT);
            double leftF = atOneAngle(py, c, 0, toeFront, left(axleF.inner, px[0], e), left(axleF.outer, px[1], e));
            double leftR = atOneAngle(py, c, 2, toeRear, left(axleR.inner, px[2], e), left(axleR.outer, px[3], e));
            double acrossF = Math.abs(ff - moment / wheelbase) / peakF;
            double acrossR = Math.abs(fr + moment / wheelbase) / peakR;
            double spentF = Math.pow(acrossF, e) + 1 - Math.pow(leftF / peakF, e);
            double spentR = Math.pow(acrossR, e) + 1 - Math.pow(leftR / peakR, e);
            boolean across = spentF <= 1 && spentR <= 1;
            boolean upright = zf >= 0 && zr >= 0 && rollUtilisation <= 1;
            within = enough && across && upright;
        }

        boolean within() {
            return within;
        }
    }

    private static int lateralSign(TrackPoint p, double v) {
        double lateral = v * v * p.curvature() * Math.cos(p.bank()) - G * Math.sin(p.bank()) * Math.cos(p.slope());
        return lateral < 0 ? -1 : 1;
    }

    private double tyreRoll(Quantity rate, double track) {
        return 1000 * q(rate) * track * track / 2;
    }

    /** Peaks of the wheels of an axle from {@code w} on as they lean (theory 10); {@code sprung} roll in rad, transfer in N. */
    private void lean(int w, double[] py, double[] px, double sprung, double transfer, int sign) {
        boolean front = w == 0;
        double track = q(front ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR);
        double gain = q(front ? Quantity.CAMBER_GAIN_FRONT : Quantity.CAMBER_GAIN_REAR);
        double onTyres =
                2 * transfer / (1000 * q(front ? Quantity.VERTICAL_RATE_FRONT : Quantity.VERTICAL_RATE_REAR) * track);
        double lost = Math.toDegrees(sprung * (1 - gain) + onTyres);
        double camber = q(front ? Quantity.CAMBER_FRONT : Quantity.CAMBER_REAR);
        double split = sign * q(front ? Quantity.CAMBER_SPLIT_FRONT : Quantity.CAMBER_SPLIT_REAR);
        double best = q(front ? Quantity.BEST_INCLINATION_FRONT : Quantity.BEST_INCLINATION_REAR);
        double ky = q(front ? Quantity.INCLINATION_LOSS_Y_FRONT : Quantity.INCLINATION_LOSS_Y_REAR);
        double kx = q(front ? Quantity.INCLINATION_LOSS_X_FRONT : Quantity.INCLINATION_LOSS_X_REAR);
        // In a left bend the left wheel is the inner one, and its top leans out of the bend when it leans in to the
        // car.
        double inner = camber + split / 2 - lost;
        double outer = -camber + split / 2 - lost;
        py[w] /= 1 + ky * (inner - best) * (inner - best);
        py[w + 1] /= 1 + ky * (outer - best) * (outer - best);
        px[w] /= 1 + kx * inner * inner;
        px[w + 1] /= 1 + kx * outer * outer;
    }

    /**
     * Most that two wheels give across at one slip angle, with a share of each one's peak left by forces along: each curve a parabola at
     * its peak, at that share of its own angle; the loss bounded by what both would lose in series (theory 6.2b).
     */
    private static double atOneAngle(double[] py, double[] c, int w, double toe, double shareIn, double shareOut) {
        double inner = py[w] * shareIn;
        double outer = py[w + 1] * shareOut;
        if (!(inner > 0 && outer > 0)) {
            return inner + outer;
        }
        double shape = 1.5 * Math.sqrt(3);
        double angleIn = shape * py[w] / c[w];
        double angleOut = shape * py[w + 1] / c[w + 1];
        double weightIn = py[w] / Math.pow(shareIn, 3) / angleIn / angleIn;
        double weightOut = py[w + 1] / Math.pow(shareOut, 3) / angleOut / angleOut;
        double apart = angleOut * shareOut - angleIn * shareIn - 2 * toe;
        double loss = 27.0 / 128 * apart * apart / (1 / weightIn + 1 / weightOut);
        double most = 1 / (1 / inner + 1 / outer);
        double part = loss / most;
        return inner + outer - most * part * (1 + part) / (1 + part + part * part);
    }

    /** Share of stiffness left at a share of the peak. */
    private static double chord(double spent) {
        double most = Math.min(spent, 1);
        return 1 - 0.325 * Math.pow(most, 2) - 0.265 * Math.pow(most, 12);
    }

    private double preload(Quantity torque) {
        return 2 * q(torque) / q(Quantity.WHEEL_RADIUS);
    }

    private static double left(double force, double most, double e) {
        double spent = most > 0 ? Math.abs(force) / most : 0;
        return spent < 1 ? Math.pow(1 - Math.pow(spent, e), 1 / e) : 0;
    }

    /** Two wheels by the words of theory 7: turning as one, as far as each wheel and then the friction allow. */
    private static final class Axle {
        private final double ki;
        private final double ko;
        private final double mostInner;
        private final double mostOuter;
        private final double way;
        private final double across;
        private final double preload;
        double inner;
        double outer;
        /** What the differential makes of their difference. */
        double apart;

        Axle(double ki, double ko, double mostInner, double mostOuter, double way, double across, double preload) {
            this.ki = ki;
            this.ko = ko;
            this.mostInner = mostInner;
            this.mostOuter = mostOuter;
            this.way = way;
            this.across = across;
            this.preload = preload;
        }

        private double slip(double force, double stiffness, double most) {
            return force / stiffness / chord(Math.hypot(across, force / most));
        }

        /** Both turn as one: inner slip less outer slip is the way that the outer one goes further. By halving. */
        private double asOne(double x) {
            double low = Math.max(-mostInner, x - mostOuter);
            double high = Math.min(mostInner, x + mostOuter);
            for (int i = 0; i < 46; i++) {
                double middle = 0.5 * (low + high);
                if (slip(middle, ki, mostInner) - slip(x - middle, ko, mostOuter) > way) {
                    high = middle;
                } else {
                    low = middle;
                }
            }
            return 0.5 * (low + high);
        }

        boolean drive(double x, double lock) {
            held(x, lock * x, lock);
            return within(inner, mostInner) && within(outer, mostOuter);
        }

        private static boolean within(double force, double most) {
            return Math.abs(force) <= most * (1 + 1e-12);
        }

        private void held(double x, double share, double lock) {
            double friction = lock >= 1 ? Double.POSITIVE_INFINITY : share + preload;
            inner = friction > 0 ? asOne(x) : x / 2;
            inner = Math.max((x - friction) / 2, Math.min((x + friction) / 2, inner));
            outer = x - inner;
            apart = outer - inner;
        }

        /** Brakes pull alike; the differential moves what it holds, and a wheel that locks leaves the rest to the other. */
        boolean brake(double x, double through, double lock) {
            held(x, lock * through, lock);
            if (inner < -mostInner) {
                inner = -mostInner;
            } else if (outer < -mostOuter) {
                inner = x + mostOuter;
            }
            outer = x - inner;
            double apart = mostOuter - mostInner;
            double friction = lock >= 1 ? Double.POSITIVE_INFINITY : lock * through + preload;
            double both = mostInner + mostOuter;
            double most = Math.min(both, 2 * Math.min(mostInner, mostOuter) + 0.5 * apart * apart / both + friction);
            return -x <= most;
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
