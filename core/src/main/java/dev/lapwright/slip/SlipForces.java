package dev.lapwright.slip;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.lap.Axle;
import dev.lapwright.lap.FourWheels;
import dev.lapwright.powertrain.Differential;

/**
 * Six equations of the equilibrium of four slipping wheels at a place, with their derivatives (section 14 of docs/theory.md). Unknown are steer
 * δ, sideslip β (positive where the car moves to the inside of its own axis), the slips along κ of four wheels, and λ: what is let
 * free of acceleration, speed and sharpness of the turn. The equations: forces along and across the path, yaw moment, the law of each axle's
 * differential or brakes, and how the axles share. Forces over the weight. Mutable scratch of one thread; allocates nothing.
 *
 * <p>Tyres by the similarity method, ρ = √((κ/κ*)² + (tan α/α*)²) on one curve, see {@link SlipCurve}, with an ellipse for unequal peaks. Loads
 * are taken in the car's own axes. Derivatives by slips are analytic, those through loads are differences.
 */
final class SlipForces {
    /** Number of equations, and of unknowns without the free one. */
    static final int EQUATIONS = 6;

    static final int UNKNOWNS = 7;
    static final int STEER = 0;
    static final int SIDESLIP = 1;
    /** Slip of the first wheel; the others follow. */
    static final int SLIP = 2;

    static final int FREE = 6;

    /** What the last unknown is. */
    enum Free {
        /** dv/dt, upwards. */
        DRIVE,
        /** dv/dt, downwards. */
        BRAKE,
        /** Speed. */
        SPEED,
        /** Share of the lateral demand and of the path's curvature: from a straight to the turn. */
        TURN
    }

    /** dv/dt for one of λ, m/s²: about as much as makes slips change by one. */
    private static final double PER_ACCELERATION = 50;

    private static final double G = StandardAtmosphere.GRAVITY;
    private static final double SHAPE = SlipCurve.SHAPE;
    /** Cornering stiffness over load, 1/rad, of a wheel that is off the road. */
    private static final double STIFFNESS_OF_LEAST = 20;

    private static final double STEP = 1e-6;

    final FourWheels wheels;
    private final double creep;
    private final double release;
    private final double leastGrip;
    private final double leastStiffness;
    private final double change;
    private final double stuck;
    private final double mass;
    private final double weight;
    private final double wheelbase;
    private final double[] px = new double[4];
    private final double[] py = new double[4];
    private final double[] toe = new double[4];
    private final Differential[] differential = new Differential[2];
    private final double frontDriveShare;
    private final double centreLock;
    private final double frontBrakeShare;
    private final double axleInertia;

    // What is set from outside.
    Free free = Free.DRIVE;
    double speed;
    double acceleration;
    double turn = 1;
    double massFactor = 1;
    double engineDrag;
    /** Speed for one of λ where speed is free, m/s. */
    double speedScale = 1;

    // Of the last load.
    private final double[] peakX = new double[4];
    private final double[] peakY = new double[4];
    private final double[] alongScale = new double[4];
    private final double[] acrossScale = new double[4];
    private double lateral;
    private double curvature;
    private double resistance;
    private final double[] brakeSplit = new double[2];
    private double ax;
    private double rate;
    private boolean grounded;

    // Of the last equations.
    final double[] residual = new double[EQUATIONS];
    final double[] along = new double[4];
    final double[] across = new double[4];
    /** Slip over the slip of the tyre's peak. */
    final double[] use = new double[4];

    final double[] drift = new double[4];
    /** Slip along over that of the peak along. */
    private final double[] alongUse = new double[4];

    private final double[] turning = new double[4];
    double total;
    private double through;
    private double throughRate;
    /** Share of the brakes' law against the drive's, 0 to 1, and how fast it grows with the tyres' total force, 1/N. */
    private double braking;

    private double brakingRate;

    // Derivatives of each wheel: by slip, steer and sideslip.
    private final double[] d = new double[4 * PARTIALS];
    private static final int PARTIALS = 12;

    /** Rows of derivatives, {@link #UNKNOWNS} each. */
    final double[] jacobian = new double[EQUATIONS * UNKNOWNS];

    private final double[] kept = new double[EQUATIONS];

    SlipForces(FourWheels wheels, SlipSoftness softness) {
        this.wheels = wheels;
        creep = softness.creep();
        release = softness.release();
        leastGrip = softness.leastGrip();
        leastStiffness = STIFFNESS_OF_LEAST * leastGrip;
        change = softness.change();
        stuck = softness.stuck();
        mass = wheels.mass();
        weight = mass * G;
        wheelbase = wheels.wheelbase();
        double toFront = (1 - wheels.frontShare()) * wheelbase;
        for (int w = 0; w < 4; w++) {
            boolean front = w < 2;
            Axle axle = front ? Axle.FRONT : Axle.REAR;
            int left = w % 2 == 0 ? 1 : -1;
            px[w] = front ? toFront : toFront - wheelbase;
            py[w] = 0.5 * wheels.track(axle) * left;
            toe[w] = -left * wheels.toe(axle);
        }
        differential[0] = wheels.differential(Axle.FRONT);
        differential[1] = wheels.differential(Axle.REAR);
        frontDriveShare = wheels.frontDriveShare();
        centreLock = wheels.centreLock();
        frontBrakeShare = wheels.frontBrakeShare();
        axleInertia = wheels.axleInertia();
    }

    /** λ that stands for what is free as it is set. */
    double lambda() {
        return switch (free) {
            case DRIVE -> acceleration / PER_ACCELERATION;
            case BRAKE -> -acceleration / PER_ACCELERATION;
            case SPEED -> speed / speedScale;
            case TURN -> turn;
        };
    }

    /** Sets what is free. */
    private void free(double lambda) {
        switch (free) {
            case DRIVE -> acceleration = PER_ACCELERATION * lambda;
            case BRAKE -> acceleration = -PER_ACCELERATION * lambda;
            case SPEED -> {
                speed = speedScale * lambda;
                wheels.drive(speed);
            }
            case TURN -> turn = lambda;
        }
    }

    /** Loads at a sideslip. */
    private void load(double sideslip) {
        lateral = turn * wheels.lateral();
        curvature = turn * wheels.curvature();
        rate = acceleration;
        ax = acceleration + wheels.climb();
        double c = Math.cos(sideslip);
        double s = Math.sin(sideslip);
        grounded = wheels.load(ax * c - lateral * s, ax * s + lateral * c);
        resistance = wheels.resistance();
        brakeSplit[0] = wheels.brakeSplit(Axle.FRONT);
        brakeSplit[1] = wheels.brakeSplit(Axle.REAR);
        double slipStiffness = wheels.slipStiffness();
        double least = leastGrip * weight;
        double soft = leastStiffness * weight;
        for (int w = 0; w < 4; w++) {
            peakX[w] = Math.max(wheels.peakAlong(w), least);
            peakY[w] = Math.max(wheels.peakAcross(w), least);
            double stiff = Math.max(wheels.stiffness(w), soft);
            alongScale[w] = stiff * slipStiffness / (SHAPE * peakX[w]);
            acrossScale[w] = stiff / (SHAPE * peakY[w]);
        }
    }

    /** Equations at a state; whether the car is on the ground. */
    boolean evaluate(double[] y) {
        free(y[FREE]);
        load(y[SIDESLIP]);
        equations(y, false);
        return grounded;
    }

    /** Equations and their derivatives at a state; whether the car is on the ground. */
    boolean linearise(double[] y) {
        free(y[FREE] + STEP);
        load(y[SIDESLIP]);
        equations(y, false);
        for (int i = 0; i < EQUATIONS; i++) {
            jacobian[UNKNOWNS * i + FREE] = residual[i];
        }
        free(y[FREE]);
        load(y[SIDESLIP] + STEP);
        equations(y, false);
        System.arraycopy(residual, 0, kept, 0, EQUATIONS);
        load(y[SIDESLIP]);
        equations(y, true);
        for (int i = 0; i < EQUATIONS; i++) {
            int row = UNKNOWNS * i;
            jacobian[row + FREE] = (jacobian[row + FREE] - residual[i]) / STEP;
            jacobian[row + SIDESLIP] += (kept[i] - residual[i]) / STEP;
        }
        return grounded;
    }

    private void equations(double[] y, boolean partials) {
        double beta = y[SIDESLIP];
        double vx = Math.cos(beta);
        double vy = Math.sin(beta);
        double ft = 0;
        double fn = 0;
        double moment = 0;
        total = 0;
        for (int w = 0; w < 4; w++) {
            double steer = (w < 2 ? y[STEER] : 0) + toe[w];
            double slip = y[SLIP + w];
            double u = vx - curvature * py[w];
            double v = vy + curvature * px[w];
            double c = Math.cos(steer);
            double s = Math.sin(steer);
            double rolling = u * c + v * s;
            double side = v * c - u * s;
            double t = -side / rolling;
            double sx = slip * alongScale[w];
            double sy = t * acrossScale[w];
            double square = sx * sx + sy * sy;
            double g = SlipCurve.chord(square);
            double x = peakX[w] * g * sx;
            double yw = peakY[w] * g * sy;
            along[w] = x;
            across[w] = yw;
            use[w] = Math.sqrt(square);
            alongUse[w] = sx;
            drift[w] = t;
            turning[w] = rolling * (1 + slip);
            // Turned by steer less sideslip against the path.
            double cp = c * vx + s * vy;
            double sp = s * vx - c * vy;
            double wt = x * cp - yw * sp;
            double wn = x * sp + yw * cp;
            double bx = x * c - yw * s;
            double by = x * s + yw * c;
            ft += wt;
            fn += wn;
            moment += px[w] * by - py[w] * bx;
            total += x;
            if (partials) {
                double h = SlipCurve.chordRate(square);
                double cross = h * sx * sy;
                double xk = peakX[w] * (g + h * sx * sx) * alongScale[w];
                double yk = peakY[w] * cross * alongScale[w];
                double xt = peakX[w] * cross * acrossScale[w];
                double yt = peakY[w] * (g + h * sy * sy) * acrossScale[w];
                yields[w] = yt;
                int k = PARTIALS * w;
                d[k] = xk;
                d[k + 1] = xk * cp - yk * sp;
                d[k + 2] = xk * sp + yk * cp;
                d[k + 3] = px[w] * (xk * s + yk * c) - py[w] * (xk * c - yk * s);
                double td = w < 2 ? 1 + t * t : 0;
                double turned = w < 2 ? 1 : 0;
                d[k + 4] = xt * td;
                d[k + 5] = (xt * cp - yt * sp) * td - turned * wn;
                d[k + 6] = (xt * sp + yt * cp) * td + turned * wt;
                d[k + 7] =
                        px[w] * ((xt * s + yt * c) * td + turned * bx) - py[w] * ((xt * c - yt * s) * td - turned * by);
                double tb = -(cp + t * sp) / rolling;
                d[k + 8] = xt * tb;
                d[k + 9] = (xt * cp - yt * sp) * tb + wn;
                d[k + 10] = (xt * sp + yt * cp) * tb - wt;
                d[k + 11] = (px[w] * (xt * s + yt * c) - py[w] * (xt * c - yt * s)) * tb;
                turningBySlip[w] = rolling;
                turningBySteer[w] = turned * (1 + slip) * side;
                turningBySideslip[w] = (1 + slip) * sp;
            }
        }
        residual[0] = (ft - resistance - mass * ax) / weight;
        residual[1] = (fn - mass * lateral) / weight;
        residual[2] = moment / (weight * wheelbase);
        if (partials) {
            fill(0, 1, 1 / weight);
            fill(1, 2, 1 / weight);
            fill(2, 3, 1 / (weight * wheelbase));
        }
        goOver(total / (change * weight), -1 / (change * weight));
        double engineInertia = mass * (massFactor - 1) - 2 * axleInertia;
        through = Math.max(0, Math.min(engineDrag + engineInertia * rate, -total));
        throughRate = through > 0 && through == -total ? -1 : 0;
        axle(0, frontDriveShare, partials);
        axle(2, 1 - frontDriveShare, partials);
        share(partials);
    }

    /** The brakes' share of the laws at a total force: none from the one end of the change on, all from the other, with two derivatives. */
    private void goOver(double x, double scale) {
        double u = Math.max(0, Math.min(1, 0.5 * (1 - x)));
        braking = u * u * u * (10 + u * (6 * u - 15));
        brakingRate = 15 * u * u * (1 - u) * (1 - u) * scale;
    }

    /** Force across of each wheel that a little more slip angle gives, N/rad, and that it gives from a straight. */
    private final double[] yields = new double[4];

    /** What is left of the stiffness across of the axle whose inner wheel is named, 1 at no slip; after {@link #linearise}. */
    double answer(int inner) {
        double now = yields[inner] + yields[inner + 1];
        double fresh = SHAPE * (peakY[inner] * acrossScale[inner] + peakY[inner + 1] * acrossScale[inner + 1]);
        return now / fresh;
    }

    /** Moment into the turn of unequal forces along the wheels, Nm. */
    double differenceMoment() {
        return py[0] * (along[1] - along[0]) + py[2] * (along[3] - along[2]);
    }

    /** Point where a little more force across turns the car neither way, behind its centre of gravity, over the wheelbase; after {@link #linearise}. */
    double staticMargin() {
        double front = yields[0] + yields[1];
        double rear = yields[2] + yields[3];
        return -(px[0] * front + px[2] * rear) / (wheelbase * (front + rear));
    }

    private final double[] turningBySlip = new double[4];
    private final double[] turningBySteer = new double[4];
    private final double[] turningBySideslip = new double[4];

    private void fill(int row, int part, double scale) {
        int r = UNKNOWNS * row;
        double steer = 0;
        double sideslip = 0;
        for (int w = 0; w < 4; w++) {
            int k = PARTIALS * w;
            jacobian[r + SLIP + w] = scale * d[k + part];
            steer += d[k + 4 + part];
            sideslip += d[k + 8 + part];
        }
        jacobian[r + STEER] = scale * steer;
        jacobian[r + SIDESLIP] = scale * sideslip;
    }

    /** Law of the two wheels of an axle, of which {@code i} is the inner: differential, and brakes in their proportion. */
    private void axle(int i, double driveShare, boolean partials) {
        int o = i + 1;
        int row = UNKNOWNS * (3 + i / 2);
        Differential plates = differential[i / 2];
        double faster = turning[o] - turning[i];
        if (partials) {
            for (int k = 0; k < EQUATIONS; k++) {
                jacobian[row + k] = 0;
            }
        }
        if (plates.power() >= 1 && plates.coast() >= 1) {
            residual[3 + i / 2] = faster;
            if (partials) {
                turned(row, o, 1);
                turned(row, i, -1);
            }
            return;
        }
        double both = along[i] + along[o];
        double driving = 1 - braking;
        double locked = stuck * weight;
        double byDrive = plates.power() >= 1 ? locked : plates.power() * Math.abs(both);
        double byEngine = plates.coast() >= 1 ? locked : plates.coast() * driveShare * through;
        double held = driving * byDrive + braking * byEngine + plates.preload();
        double z = faster / creep;
        double root = Math.sqrt(1 + z * z);
        double sticking = z / root;
        // Wheels that nothing drives spin up by their own grip.
        double split = braking * brakeSplit[i / 2];
        double freeSplit = driveShare > 0 ? 0 : (peakX[o] - peakX[i]) / (peakX[o] + peakX[i]);
        split += driving * freeSplit;
        double slipApart = alongUse[o] - alongUse[i];
        residual[3 + i / 2] =
                (along[o] - along[i] - split * both + held * sticking) / weight + braking * release * slipApart;
        if (!partials) {
            return;
        }
        double grows = plates.power() >= 1 ? 0 : driving * plates.power() * sticking * (both < 0 ? -1 : 1);
        double apart = grows - split;
        pulled(row, o, (1 + apart) / weight);
        pulled(row, i, (apart - 1) / weight);
        double stiff = held / (creep * root * root * root * weight);
        turned(row, o, stiff);
        turned(row, i, -stiff);
        double eased = braking * release;
        jacobian[row + SLIP + o] += eased * alongScale[o];
        jacobian[row + SLIP + i] -= eased * alongScale[i];
        double byTotal = brakingRate
                        * ((byEngine - byDrive) * sticking - (brakeSplit[i / 2] - freeSplit) * both)
                        / weight
                + brakingRate * release * slipApart
                + (plates.coast() >= 1 ? 0 : braking * plates.coast() * driveShare * throughRate * sticking / weight);
        if (byTotal != 0) {
            for (int w = 0; w < 4; w++) {
                pulled(row, w, byTotal);
            }
        }
    }

    /** Adds a multiple of the derivatives of a wheel's force along. */
    private void pulled(int row, int w, double scale) {
        int k = PARTIALS * w;
        jacobian[row + SLIP + w] += scale * d[k];
        jacobian[row + STEER] += scale * d[k + 4];
        jacobian[row + SIDESLIP] += scale * d[k + 8];
    }

    /** Adds a multiple of the derivatives of how fast a wheel turns. */
    private void turned(int row, int w, double scale) {
        jacobian[row + SLIP + w] += scale * turningBySlip[w];
        jacobian[row + STEER] += scale * turningBySteer[w];
        jacobian[row + SIDESLIP] += scale * turningBySideslip[w];
    }

    /** Law of the axles: brakes by their share, drive by its own, moved by a differential between them. */
    private void share(boolean partials) {
        int row = UNKNOWNS * 5;
        double front = along[0] + along[1];
        double driving = 1 - braking;
        boolean centre = centreLock > 0;
        double faster = 0.5 * (turning[0] + turning[1] - turning[2] - turning[3]);
        double moved = 0;
        double stiff = 0;
        if (centre) {
            double z = faster / creep;
            double root = Math.sqrt(1 + z * z);
            double least = centreLock >= 1 ? frontDriveShare - stuck : Math.max(0, frontDriveShare - 0.5 * centreLock);
            double most = centreLock >= 1 ? frontDriveShare + stuck : Math.min(1, frontDriveShare + 0.5 * centreLock);
            double room = z > 0 ? frontDriveShare - least : most - frontDriveShare;
            moved = room * z / root;
            stiff = driving * room * total / (creep * root * root * root);
        }
        // Driven wheels pull what spins the others; under brakes each spins down by its own.
        double own = (2 * frontDriveShare - 1) * axleInertia * Math.max(rate, 0);
        double byDrive = frontDriveShare - moved;
        double kept = driving * byDrive + braking * frontBrakeShare;
        residual[5] = (front - kept * total - driving * own) / weight;
        if (!partials) {
            return;
        }
        for (int k = 0; k < EQUATIONS; k++) {
            jacobian[row + k] = 0;
        }
        double byTotal = kept + brakingRate * ((frontBrakeShare - byDrive) * total - own);
        for (int w = 0; w < 4; w++) {
            pulled(row, w, ((w < 2 ? 1 : 0) - byTotal) / weight);
            if (centre) {
                turned(row, w, (w < 2 ? 0.5 : -0.5) * stiff / weight);
            }
        }
    }

    /** What takes the most of what is not the tyres': 0 where it is all used, negative beyond; after {@link #linearise}. */
    double spare(double engine) {
        double least = Math.min(1 - wheels.tipping(), answer(2));
        if (free == Free.DRIVE) {
            least = Math.min(least, (engine - enginePart()) / weight);
        } else if (free == Free.BRAKE && total < 0) {
            least = Math.min(least, (wheels.brakeMaxForce() + enginePart()) / weight);
        }
        return least;
    }

    /** What engine or brakes put to the wheels: the tyres' force and what spins the rotating parts, N. */
    double enginePart() {
        return total + mass * (massFactor - 1) * rate;
    }
}
