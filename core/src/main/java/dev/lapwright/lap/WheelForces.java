package dev.lapwright.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.powertrain.Differential;

/**
 * Force balance of a car at one place and speed (sections 4 to 7 of docs/theory.md): loads on four wheels, the utilisation of each axle, and what
 * drive or braking a wanted acceleration needs. Mutable scratch of one solver; allocates nothing.
 *
 * <p>The utilisation of an axle, to the power p of the friction ellipse, is 1 where the axle has nothing left: see {@link WheelPair}.
 */
final class WheelForces {
    /** Least load or capacity used as a divisor, N: keeps an unloaded axle's utilisation huge but finite. */
    private static final double TINY = 1e-6;

    /** Accelerations beyond which the platform moves no further, m/s²: only searches look there. */
    private static final double MOST_PITCH = 40;

    private static final double MOST_HEAVE = 20;
    /** Share of what tips a car over that is far from it. */
    private static final double PLAINLY_UPRIGHT = 0.9;

    /** Over the deceleration of four tyres, and least of it, m/s²: where searches begin. */
    private static final double MARGIN = 1.2;

    private static final double LEAST_BRAKING = 3;

    private final Vehicle car;
    private final boolean ellipse;
    private final double exponent;
    final WheelPair front;
    final WheelPair rear;

    // The place and speed.
    double speed;
    double lateral;
    double normal;
    double climb;
    /** Path curvature, positive where the path bends to the side that the tyres push to, 1/m. */
    private double curvature;
    /** Engine drag at the wheels that the drivetrain passes on under brakes, N, not negative: set after {@link #at}. */
    double engineDrag;
    /** Whether the engine's drag alone slows the car, no brakes: set after {@link #at}. */
    boolean coasting;

    // Independent of longitudinal acceleration.
    double drag;
    double liftFront;
    double liftRear;
    private double frontAtRest;
    private double rearAtRest;
    private double frontShift;
    private double rearShift;
    private double frontSide;
    private double rearSide;
    double rolling;
    private double rollingShare;
    private double dynamicPressure;
    /** What the areas gain for each m/s² along the car and its square: drag, front, rear, m²; where ride heights follow. */
    private double dragPerAx;

    private double dragPerAx2;
    private double frontPerAx;
    private double frontPerAx2;
    private double rearPerAx;
    private double rearPerAx2;
    private double levelDrag;
    private double levelFront;
    private double levelRear;

    // For the last acceleration evaluated.
    double frontLoad;
    double rearLoad;
    double frontTransfer;
    double rearTransfer;
    double frontLateralUtilisation;
    double rearLateralUtilisation;
    double frontUtilisation;
    double rearUtilisation;
    double rollUtilisation;
    double pitchUtilisation;
    double brakeUtilisation;
    double cornering;
    /** Sum of the tyres' forces along the car that the acceleration needs, N: drive if positive, braking if negative. */
    double tyreForce;
    /** What engine or brakes must put to the wheels for it, N: the tyres' force and what spins the rotating parts up or down. */
    double requiredForce;

    double yawMoment;

    WheelForces(Vehicle car) {
        this.car = car;
        exponent = car.ellipseExponent;
        ellipse = exponent == 2;
        front = new WheelPair(car.front, exponent);
        rear = new WheelPair(car.rear, exponent);
    }

    /** Moves to a row of the road at a speed in m/s. */
    void at(double[] rows, int k, double v) {
        at(
                v,
                rows[k + Road.LATERAL_CURVATURE],
                rows[k + Road.LATERAL_GRAVITY],
                rows[k + Road.NORMAL_GRAVITY],
                rows[k + Road.NORMAL_CURVATURE],
                rows[k + Road.CLIMB],
                rows[k + Road.GRIP],
                rows[k + Road.HEAD_WIND]);
    }

    void at(
            double v,
            double lateralCurvature,
            double lateralGravity,
            double normalGravity,
            double normalCurvature,
            double climbGravity,
            double surfaceGrip,
            double headWind) {
        speed = v;
        double v2 = v * v;
        lateral = v2 * lateralCurvature - lateralGravity;
        normal = normalGravity + v2 * normalCurvature;
        climb = climbGravity;
        curvature = lateral < 0 ? -lateralCurvature : lateralCurvature;
        engineDrag = 0;
        coasting = false;
        double airSpeed = v + headWind;
        double q = 0.5 * car.airDensity * airSpeed * airSpeed;
        AeroTable aero = car.aero;
        double t = q * aero.inverseStep;
        int cell = (int) t;
        if (cell >= AeroTable.CELLS) {
            cell = AeroTable.CELLS - 1;
            t = AeroTable.CELLS;
        }
        t -= cell;
        double[] c = aero.coefficients;
        int j = 12 * cell;
        double dragArea = c[j] + t * (c[j + 1] + t * (c[j + 2] + t * c[j + 3]));
        liftFront = q * (c[j + 4] + t * (c[j + 5] + t * (c[j + 6] + t * c[j + 7])));
        liftRear = q * (c[j + 8] + t * (c[j + 9] + t * (c[j + 10] + t * c[j + 11])));
        drag = airSpeed >= 0 ? q * dragArea : -q * dragArea;
        if (aero.follows) {
            heave(q, dragArea, airSpeed >= 0 ? 1 : -1);
        }
        double weight = car.mass * normal;
        frontAtRest = weight * car.frontShare + liftFront;
        rearAtRest = weight * (1 - car.frontShare) + liftRear;
        push(car.mass * Math.abs(lateral), surfaceGrip, lateral >= 0);
        rollingShare = car.rollingResistance + car.rollingResistancePerSpeed * v;
        rolling = rollingShare * larger(frontAtRest + rearAtRest, 0);
    }

    /** What a force across the car at its centre of gravity, N, moves and leans; negative away from the inside. */
    private void push(double side, double surfaceGrip, boolean left) {
        frontShift = side * car.front.transfer;
        rearShift = side * car.rear.transfer;
        frontSide = side * car.frontShare;
        rearSide = side - frontSide;
        front.stand(surfaceGrip, side, left);
        rear.stand(surfaceGrip, side, left);
    }

    /**
     * Puts the load on four wheels for accelerations along the car and across it, m/s², where {@link #at} has set the place, instead of
     * those of the path; whether the car is on the ground.
     */
    boolean stand(double along, double across, double surfaceGrip, boolean left) {
        push(car.mass * across, surfaceGrip, left);
        return load(along);
    }

    /** Areas with the platform moved by the road's own acceleration, and how they answer to that along the car. */
    private void heave(double q, double dragArea, int headOn) {
        AeroTable aero = car.aero;
        double t = q * aero.responseInverseStep;
        int cell = (int) t;
        if (cell >= AeroTable.RESPONSE_CELLS) {
            cell = AeroTable.RESPONSE_CELLS - 1;
            t = AeroTable.RESPONSE_CELLS;
        }
        t -= cell;
        double n = normal - StandardAtmosphere.GRAVITY;
        n = larger(-MOST_HEAVE, smaller(MOST_HEAVE, n));
        dynamicPressure = q;
        levelDrag = headOn * q * (dragArea + n * (aero.response(cell, 0, 0, t) + n * aero.response(cell, 0, 1, t)));
        levelFront = liftFront + q * n * (aero.response(cell, 1, 0, t) + n * aero.response(cell, 1, 1, t));
        levelRear = liftRear + q * n * (aero.response(cell, 2, 0, t) + n * aero.response(cell, 2, 1, t));
        dragPerAx = headOn * (aero.response(cell, 0, 2, t) + n * aero.response(cell, 0, 4, t));
        dragPerAx2 = headOn * aero.response(cell, 0, 3, t);
        frontPerAx = aero.response(cell, 1, 2, t) + n * aero.response(cell, 1, 4, t);
        frontPerAx2 = aero.response(cell, 1, 3, t);
        rearPerAx = aero.response(cell, 2, 2, t) + n * aero.response(cell, 2, 4, t);
        rearPerAx2 = aero.response(cell, 2, 3, t);
        drag = levelDrag;
        liftFront = levelFront;
        liftRear = levelRear;
    }

    /** Downforce, drag and axle loads with the platform pitched by an acceleration along the car. */
    private void pitch(double ax) {
        double x = larger(-MOST_PITCH, smaller(MOST_PITCH, ax));
        double q = dynamicPressure;
        drag = levelDrag + q * x * (dragPerAx + x * dragPerAx2);
        double front = levelFront + q * x * (frontPerAx + x * frontPerAx2);
        double rear = levelRear + q * x * (rearPerAx + x * rearPerAx2);
        frontAtRest += front - liftFront;
        rearAtRest += rear - liftRear;
        liftFront = front;
        liftRear = rear;
        rolling = rollingShare * larger(frontAtRest + rearAtRest, 0);
    }

    /**
     * Evaluates everything at an acceleration.
     *
     * @param ax what an accelerometer in the car would read along the path: dv/dt + g sin θ, m/s²
     * @param massFactor δ, which engine and brakes feel and tyres do not
     * @return the greatest utilisation of anything that can run out, 1 at the limit; above 1 the acceleration cannot be had
     */
    double utilisation(double ax, double massFactor) {
        return require(ax, massFactor) ? spent(ax, massFactor) : frontUtilisation;
    }

    /** Loads at an acceleration along the car, and what wheels can give under them; whether the car is on the ground. */
    private boolean load(double ax) {
        if (car.aero.follows) {
            pitch(ax);
        }
        if (!(frontAtRest + rearAtRest > TINY)) {
            return false;
        }
        double pitch = car.pitchPerAx * ax;
        frontLoad = frontAtRest - pitch;
        rearLoad = rearAtRest + pitch;
        pitchUtilisation = pitch > 0 ? pitch / larger(frontAtRest, TINY) : -pitch / larger(rearAtRest, TINY);
        if (frontLoad < 0) {
            rearLoad += frontLoad;
            frontLoad = 0;
        } else if (rearLoad < 0) {
            frontLoad += rearLoad;
            rearLoad = 0;
        }
        shareRoll();
        front.carry(frontLoad, frontTransfer);
        rear.carry(rearLoad, rearTransfer);
        return true;
    }

    /** Loads and the forces that an acceleration needs, as far as {@link #requiredForce}; whether the car is on the ground. */
    boolean require(double ax, double massFactor) {
        if (!load(ax)) {
            airborne(ax, massFactor);
            return false;
        }
        frontLateralUtilisation = frontSide * front.perLateralPeak;
        rearLateralUtilisation = rearSide * rear.perLateralPeak;
        cornering = front.corneringDrag(smaller(frontLateralUtilisation, 1))
                + rear.corneringDrag(smaller(rearLateralUtilisation, 1));
        tyreForce = car.mass * ax + drag + rolling + front.toeDrag + rear.toeDrag + cornering;
        requiredForce = tyreForce + car.mass * (massFactor - 1) * (ax - climb);
        return true;
    }

    /**
     * Whether a car under drive is at sight far from all that can run out, however its differentials share: after {@link #require}. False
     * where that takes a closer look.
     */
    boolean plainlyLeft(double ax) {
        if (tyreForce < 0
                || car.centreLock > 0
                || !ellipse
                || rollUtilisation > PLAINLY_UPRIGHT
                || pitchUtilisation > PLAINLY_UPRIGHT) {
            return false;
        }
        double frontX = driven(car.frontDriveShare, ax - climb);
        double rearX = driven(1 - car.frontDriveShare, ax - climb);
        double frontHeld = front.data.differential.friction(frontX, false);
        double rearHeld = rear.data.differential.friction(rearX, false);
        double turning = 0.5 * (front.data.track * frontHeld + rear.data.track * rearHeld) * car.perWheelbase;
        return front.plainlyLeft(frontX, frontHeld, frontSide + turning)
                && rear.plainlyLeft(rearX, rearHeld, rearSide + turning);
    }

    /** What those forces take of wheels, axles and brakes: see {@link #utilisation}, after {@link #require}. */
    double spent(double ax, double massFactor) {
        double frontAlong;
        double rearAlong;
        boolean braking = tyreForce < 0 && !coasting;
        if (!braking) {
            brakeUtilisation = 0;
            boolean overrun = tyreForce < 0;
            double frontMost = car.frontDriveShare > 0 ? front.driveCapacity(overrun) : TINY;
            double rearMost = car.frontDriveShare < 1 ? rear.driveCapacity(overrun) : TINY;
            double share = frontDriveShare(frontMost, rearMost);
            double frontX = driven(share, ax - climb);
            double rearX = driven(1 - share, ax - climb);
            front.drive(frontX, curvature, frontLateralUtilisation, overrun);
            rear.drive(rearX, curvature, rearLateralUtilisation, overrun);
            frontAlong = Math.abs(frontX) / frontMost;
            rearAlong = Math.abs(rearX) / rearMost;
            if (car.centreLock > 0) {
                // An axle at its most is no limit as long as the centre leaves the rest to the other.
                double along = Math.abs(tyreForce) / driveMost(frontMost, rearMost);
                frontAlong = smaller(frontAlong, along);
                rearAlong = smaller(rearAlong, along);
            }
        } else {
            brakeUtilisation = larger(-requiredForce, 0) / car.brakeMaxForce;
            double frontX = car.frontBrakeShare * tyreForce;
            double rearX = tyreForce - frontX;
            // What the engine's drag does not take to slow the engine itself passes the differentials.
            double engineInertia = car.mass * (massFactor - 1) - 2 * car.propulsion.axleInertia;
            double through = larger(0, smaller(engineDrag + engineInertia * (ax - climb), -tyreForce));
            double frontThrough = car.frontDriveShare * through;
            double rearThrough = through - frontThrough;
            front.brake(frontX, curvature, frontLateralUtilisation, frontThrough);
            rear.brake(rearX, curvature, rearLateralUtilisation, rearThrough);
            frontAlong = -frontX / front.brakeCapacity(frontThrough);
            rearAlong = -rearX / rear.brakeCapacity(rearThrough);
        }
        yawMoment = front.yawMoment() + rear.yawMoment();
        if (yawMoment != 0) {
            double shifted = yawMoment * car.perWheelbase;
            frontLateralUtilisation = Math.abs(frontSide - shifted) * front.perLateralPeak;
            rearLateralUtilisation = Math.abs(rearSide + shifted) * rear.perLateralPeak;
        }
        frontUtilisation = front.utilisation(frontLateralUtilisation, frontAlong);
        rearUtilisation = rear.utilisation(rearLateralUtilisation, rearAlong);
        double most = larger(frontUtilisation, rearUtilisation);
        most = larger(most, larger(power(rollUtilisation), power(pitchUtilisation)));
        return larger(most, power(brakeUtilisation));
    }

    /**
     * Force along the car of the tyres of an axle with a share of the drive, N. The drive spins engine and gears, each tyre its own
     * wheel: so driven tyres pull what spins the undriven wheels, and what those tyres lose by it is left out.
     */
    double driven(double share, double acceleration) {
        if (tyreForce <= 0) {
            return share * tyreForce;
        }
        // A car that rolls downhill needs no drive to spin its wheels.
        double ownWheels = smaller(car.propulsion.axleInertia * larger(acceleration, 0), tyreForce);
        return larger(share * tyreForce + (2 * share - 1) * ownWheels, 0);
    }

    /**
     * Share of the drive at the front axle. A centre differential is the same law between axles as one between wheels: turning as one
     * they share by slip stiffness, the front ones travelling further; its lock lets the split differ from the given one by
     * half its share of the drive.
     */
    private double frontDriveShare(double frontMost, double rearMost) {
        double share = car.frontDriveShare;
        if (car.centreLock == 0 || tyreForce == 0) {
            return share;
        }
        // Ways of the axles: front and rear wheels run on circles about one centre, their radii a wheelbase apart in
        // square.
        double way = 0.5 * car.front.slipStiffness * car.wheelbase * car.wheelbase * curvature * curvature;
        double apart = Differential.turningAsOne(tyreForce, rear.stiffness, front.stiffness, way);
        double locked = 0.5 + 0.5 * apart / tyreForce;
        double most = smaller(1, frontMost / Math.abs(tyreForce));
        double least = larger(0, 1 - rearMost / Math.abs(tyreForce));
        locked = larger(least, smaller(most, locked));
        double friction = centreFriction();
        return larger(share - friction, smaller(share + friction, locked));
    }

    /** By how much the front axle's share may differ from the given one. */
    private double centreFriction() {
        return car.centreLock >= 1 ? 1 : 0.5 * car.centreLock;
    }

    /** Most that both axles can give through the centre, N. */
    private double driveMost(double frontMost, double rearMost) {
        double friction = centreFriction();
        double byFront = frontMost / larger(car.frontDriveShare - friction, TINY);
        double byRear = rearMost / larger(1 - car.frontDriveShare - friction, TINY);
        return smaller(frontMost + rearMost, smaller(byFront, byRear));
    }

    private void airborne(double ax, double massFactor) {
        frontLoad = 0;
        rearLoad = 0;
        frontTransfer = 0;
        rearTransfer = 0;
        cornering = 0;
        yawMoment = 0;
        tyreForce = car.mass * ax + drag;
        requiredForce = tyreForce + car.mass * (massFactor - 1) * (ax - climb);
        // Grows with the missing load so that a search for the limit is led back to the ground.
        double utilisation = 1e6 - (frontAtRest + rearAtRest);
        frontLateralUtilisation = utilisation;
        rearLateralUtilisation = utilisation;
        frontUtilisation = utilisation;
        rearUtilisation = utilisation;
        rollUtilisation = 0;
        pitchUtilisation = 0;
        brakeUtilisation = 0;
    }

    /** Transfer on each axle; what an inner wheel cannot give up goes to the other axle's. */
    private void shareRoll() {
        double frontTrack = car.front.track;
        double rearTrack = car.rear.track;
        double frontMost = 0.5 * frontLoad;
        double rearMost = 0.5 * rearLoad;
        // Roll centres of opposite sign can make one axle's transfer negative; its outer wheel stays on the road too.
        frontTransfer = larger(frontShift, -frontMost);
        rearTransfer = larger(rearShift, -rearMost);
        rollUtilisation = (frontShift * frontTrack + rearShift * rearTrack)
                / larger(frontMost * frontTrack + rearMost * rearTrack, TINY);
        if (frontTransfer > frontMost) {
            rearTransfer += (frontTransfer - frontMost) * frontTrack / rearTrack;
            frontTransfer = frontMost;
        }
        if (rearTransfer > rearMost) {
            frontTransfer = smaller(frontMost, frontTransfer + (rearTransfer - rearMost) * rearTrack / frontTrack);
            rearTransfer = rearMost;
        }
    }

    /** Without the care for signed zero and NaN that Math.max takes: the kernel knows neither. */
    private static double larger(double a, double b) {
        return a > b ? a : b;
    }

    private static double smaller(double a, double b) {
        return a < b ? a : b;
    }

    private double power(double x) {
        return ellipse ? x * x : Math.pow(x, exponent);
    }

    /**
     * A drive or deceleration, m/s², that is out of reach beside what the way across takes: that of four tyres under the loads last put on
     * them, as if they shared both tasks in the best way, and a margin for what it does to the loads.
     */
    double mostAlong() {
        double left = 1 - power(smaller(across(), 1));
        double along = alongPerMass() * (ellipse ? Math.sqrt(left) : Math.pow(left, 1 / exponent));
        return MARGIN * (along + (drag + rolling) / car.mass) + LEAST_BRAKING;
    }

    /** Share of what four tyres could give across, under the loads last put on them, that the way takes. */
    double across() {
        return car.mass * Math.abs(lateral) / larger(front.peakAcross() + rear.peakAcross(), TINY);
    }

    /** Share of what an axle could give across that the way takes of it, of the axle that it takes more of, as last evaluated. */
    double tightestAcross() {
        return larger(frontLateralUtilisation, rearLateralUtilisation);
    }

    /** What the tyres give along under the loads last put on them, over the mass, m/s²: no use grows faster than by that with braking, about. */
    double alongPerMass() {
        return (front.peakAlong() + rear.peakAlong()) / car.mass;
    }

    /** Which limit the last evaluation came closest to. */
    Limit tightest() {
        double most = larger(frontUtilisation, rearUtilisation);
        double tip = larger(power(rollUtilisation), power(pitchUtilisation));
        if (power(brakeUtilisation) > larger(most, tip)) {
            return Limit.BRAKES;
        }
        if (tip > most) {
            return rollUtilisation >= pitchUtilisation ? Limit.ROLL_OVER : Limit.PITCH_OVER;
        }
        return frontUtilisation >= rearUtilisation ? Limit.FRONT_GRIP : Limit.REAR_GRIP;
    }
}
