package dev.lapwright.lap;

import java.util.Arrays;

/**
 * The greatest acceleration and the hardest braking at a place and speed: the engine's limit or the root of
 * {@link WheelForces#utilisation} = 1, found by a secant search that starts from the last answer. Scratch of one solver.
 */
final class AccelerationLimits {
    /** On the utilisation of the tyres, and on acceleration (m/s²) where that is steep. */
    private static final double TOLERANCE = 1e-10;

    /**
     * Two secant steps in turn whose product, m²/s⁴, leaves an error of that times half the curvature of the utilisation over its slope,
     * some 0.1 s²/m; where the utilisation has a kink as much as the last of them.
     */
    private static final double LAST_STEPS = 1e-6;

    /** The same where an acceleration is told, not driven on. */
    private static final double LAST_STEPS_TOLD = 1e-11;

    /** Excess within which the utilisation is taken to run evenly. */
    private static final double NEAR = 1e-3;

    /** Use above 1 that is rounding in a cornering limit found by a search. */
    private static final double STEADY_TOLERANCE = 1e-9;

    /** Use in excess of 1 beyond which a secant is no guide. */
    private static final double FAR = 5;

    /** Utilisation above which the engine's root, which is not exact, may lie beyond the tyres'. */
    private static final double NEARLY_SPENT = 1 - 1e-3;

    /** How far from steady speed searches begin at least, m/s². */
    private static final double OFF_STEADY = 0.05;

    /** Force over what is needed that is enough in the rest of a cell too. */
    private static final double ENOUGH = 1.1;

    /** dv/dt below zero that is rounding of a fuller model at its own limit, m/s². */
    private static final double HOLDS_AT_LIMIT = 1e-5;

    /** Last step of the engine's root, m/s²: its rate, which another place may have told, is wrong by some percent of it at the most. */
    private static final double ENGINE_TOLERANCE = 2e-3;

    /** Acceleration below which a shift's cost fades out, m/s²: a car that gains no speed need not shift. */
    private static final double HARDLY_GAINING = 0.2;

    /** Hardest braking that is tried, m/s², and the least share that one trial is of the one before. */
    private static final double MOST_TRIAL = 40;

    private static final double TRIAL_STEP = 0.8;
    /** Least step between trials, m/s². */
    private static final double LEAST_TRIAL = 0.05;

    /** Growth of the excess with drive or braking that shows that there is no more beyond, s²/m. */
    private static final double PLAIN = 0.03;

    /** First step beyond what was found as long as no ridge is known of, m/s², and how much longer the next are. */
    private static final double FIRST_TRIAL = 0.5;

    private static final double FIRST_GROWTH = 0.7;

    /** Growth of the steps beyond what was found in which a ridge is looked for. */
    private static final double GROWTH = 0.3;

    /** Excess beyond which there is nothing more to be had. */
    private static final double HOPELESS = 1;

    /** Excess of a trial next to which another may have none. */
    private static final double NARROWLY = 0.05;

    private static final double GOLDEN = 0.5 * (Math.sqrt(5) - 1);
    private static final int SECTIONS = 16;

    /** Share of an axle's grip across up to which drive or braking is sure to take the more grip the more it is. */
    private static final double FAR_FROM_LIMIT = 0.65;

    /** Steps in which a ridge is looked for, and how far beyond the hardest found, m/s². */
    private static final double PACE = 0.1;

    private static final double BEYOND = 1;

    private static final int PARTS = 24;

    private static final int STAGES = 3;
    /** Least that a trial step beyond a shift's band is left of its distance. */
    static final double LEAST_STRETCH = 0.3;

    private static final int MAX_ITERATIONS = 60;
    /** Steps in which a bracket must halve, else it is halved. */
    private static final int HALVING = 4;

    private final Vehicle car;
    private final WheelForces wheels;
    private final double inverseExponent;
    private final double lastSteps;

    // Where the last searches ended: good guesses for the next station.
    private final Course engineCourse = new Course();
    private final Course gripCourse = new Course();
    private final Course brakeCourse = new Course();
    /** Growth of the required force with acceleration, over the inertia: near 1. */
    private double engineRate;

    private double rootUtilisation;
    private boolean lookingForBrakes;
    private boolean thorough;
    /** Whether a search has come upon a ridge. */
    private boolean ridged;
    /** Whether more drive or braking than last found plainly cannot be had; not looked at unless {@link #thorough}. */
    boolean plainly;

    /** Whether tyres limited what was found last, and the way across takes much of them. */
    boolean near;

    private double slopeDrive;
    private double slopeBrake;
    private double rootSlope;

    /** Where in a step of integration the next search stands: at its start, middle or end, from 0. Searches begin by it. */
    int stage;

    /** Length of that step, m. */
    double reach = 1;

    /** What limited the last acceleration found by {@link #drive}. */
    Limit limit = Limit.POWER;

    /** How much road a shift under way costs: the true dv/dt is that of {@link #drive} over this, 1 without a shift. */
    double stretch;

    /** A fuller model in place of the forces here, or null; with the wheels that it reads. */
    private final StationLimits other;

    private final FourWheels otherWheels;
    /** Whether the fuller model did not know since this was last set. */
    boolean unknown;

    // What the last call of drive found, N, m/s² and from 0.
    private double lastDrive;
    private double lastGain;
    private int lastGear;

    private AccelerationLimits(
            Vehicle car, WheelForces wheels, double lastSteps, StationLimits other, FourWheels otherWheels) {
        this.other = other;
        this.otherWheels = otherWheels;
        this.lastSteps = lastSteps;
        this.car = car;
        this.wheels = wheels;
        inverseExponent = 1 / car.ellipseExponent;
        forget();
    }

    /** As exact as a lap needs them. */
    static AccelerationLimits toDriveBy(Vehicle car, WheelForces wheels) {
        return new AccelerationLimits(car, wheels, LAST_STEPS, null, null);
    }

    /** Those of a fuller model, which reads these wheels; where it does not know, as exact as a lap needs them. */
    static AccelerationLimits of(Vehicle car, WheelForces wheels, StationLimits other, FourWheels otherWheels) {
        return new AccelerationLimits(car, wheels, LAST_STEPS, other, otherWheels);
    }

    /** As exact as they go. */
    static AccelerationLimits toTell(Vehicle car, WheelForces wheels) {
        return new AccelerationLimits(car, wheels, LAST_STEPS_TOLD, null, null);
    }

    /** Forgets the guesses, so that results never depend on what was solved before. */
    void forget() {
        engineCourse.begin(0);
        gripCourse.begin(8);
        brakeCourse.begin(-8);
        engineRate = 1;
        slopeDrive = 0.1;
        slopeBrake = 0.1;
        limit = Limit.POWER;
        lookingForBrakes = true;
        ridged = false;
    }

    /**
     * Greatest dv/dt under drive at v²/2 = energy, m/s², any shift left to {@link #stretch}.
     *
     * @param gear engaged, from 0
     * @param band piece of the propulsion whose shift is under way, -1 for none
     */
    double drive(double[] rows, int row, double energy, int gear, int band) {
        Propulsion p = car.propulsion;
        double v = Math.sqrt(2 * energy);
        wheels.at(rows, row, v);
        double massFactor = p.massFactor[gear];
        double engine = p.force(gear, v);
        if (other != null) {
            otherWheels.at(rows, row);
            double a = other.drive(v, engine, massFactor);
            if (!Double.isNaN(a)) {
                limit = other.limit();
                plainly = true;
                near = false;
                return driven(v, a, other.engineForce(), gear, band);
            }
            unknown = true;
        }
        // What limited last most likely limits still: then the engine's root need not be looked for.
        Limit tyres = limit == Limit.POWER ? limit : gripDrive(gripCourse.guess(stage, reach), massFactor);
        boolean spent = tyres != Limit.POWER && engine >= wheels.requiredForce;
        double ax = gripCourse.last;
        if (!spent) {
            ax = engineRoot(engine, massFactor);
            if (rootUtilisation > NEARLY_SPENT) {
                tyres = gripDrive(Math.min(ax, gripCourse.last), massFactor);
                spent = gripCourse.last < ax;
                ax = Math.min(ax, gripCourse.last);
            }
        }
        double needed = wheels.requiredForce;
        near = spent && wheels.tightestAcross() > FAR_FROM_LIMIT;
        plainly = !thorough || !near || plainlyMost(1, ax, wheels.mostAlong(), massFactor);
        if (!plainly) {
            double most = engineRoot(engine, massFactor);
            double least = ax + OFF_STEADY;
            double harder = trial(1, Math.min(most, wheels.mostAlong()), least, massFactor);
            if (harder >= most) {
                spent = false;
                ax = most;
            } else if (harder > least) {
                tyres = gripDrive(harder, massFactor);
                needed = wheels.requiredForce;
                ax = gripCourse.last;
            }
        }
        limit = spent ? tyres : Limit.POWER;
        double force = spent ? Math.max(needed, 0) : engine;
        return driven(v, ax - wheels.climb, force, gear, band);
    }

    private double driven(double v, double a, double force, int gear, int band) {
        lastDrive = force;
        lastGain = a;
        lastGear = gear;
        stretch = band < 0 || !(a > 0) ? 1 : stretch(v, gear, band, a, force);
        return a;
    }

    /** Whether the engine in a gear (from 0) has more than enough to hold a speed at v²/2 = energy. */
    boolean holds(double[] rows, int row, double energy, int gear) {
        if (other != null) {
            return drive(rows, row, energy, gear, -1) >= -HOLDS_AT_LIMIT;
        }
        double v = Math.sqrt(2 * energy);
        wheels.at(rows, row, v);
        return wheels.require(wheels.climb, 1) && car.propulsion.force(gear, v) > ENOUGH * wheels.requiredForce;
    }

    /** Finds where the tyres give up under drive, and what of them. */
    private Limit gripDrive(double guess, double massFactor) {
        gripCourse.found(gripRoot(1, guess, slopeDrive, massFactor), stage, reach);
        slopeDrive = rootSlope;
        return wheels.tightest();
    }

    /** Acceleration at which the car needs the force of the engine; the utilisation close to it is left in {@link #rootUtilisation}. */
    private double engineRoot(double engine, double massFactor) {
        double inertia = car.mass * massFactor;
        double at = engineCourse.guess(stage, reach);
        boolean grounded = wheels.require(at, massFactor);
        double before = wheels.requiredForce;
        double step = (engine - before) / (engineRate * inertia);
        for (int i = 0; i < MAX_ITERATIONS && Math.abs(step) >= ENGINE_TOLERANCE; i++) {
            at += step;
            grounded = wheels.require(at, massFactor);
            double rate = (wheels.requiredForce - before) / (step * inertia);
            if (Math.abs(step) > 1e-5 && rate > 0.5 && rate < 2) {
                engineRate = rate;
            }
            before = wheels.requiredForce;
            step = (engine - before) / (engineRate * inertia);
        }
        rootUtilisation = grounded ? engineUtilisation(at, massFactor) : wheels.frontUtilisation;
        return engineCourse.found(at + step, stage, reach);
    }

    /** The utilisation, or 0 where it is far from 1 at sight. */
    private double engineUtilisation(double ax, double massFactor) {
        return wheels.plainlyLeft(ax) ? 0 : wheels.spent(ax, massFactor);
    }

    /**
     * Road that a shift takes over what it would be without one. While there is no drive the car loses what resists it, and regains
     * that in the gear that the shift leads to: so t F' / (m δ' a') to the same speed, with that gear's force and acceleration.
     */
    double stretch(double v, int gear, int band, double a, double force) {
        Propulsion p = car.propulsion;
        int to = p.bandGear[band];
        double own = a;
        double drive = force;
        if (to != gear) {
            drive = Math.min(force, p.force(to, v));
            own = (a * car.mass * p.massFactor[gear] - force + drive) / (car.mass * p.massFactor[to]);
        }
        double regained = own > HARDLY_GAINING ? 1 / own : Math.max(0, own) / (HARDLY_GAINING * HARDLY_GAINING);
        // Not cut off at the band's ends: a trial step may look a little beyond, and must see a smooth course.
        double x = (v - p.bandStart[band]) * p.bandInverseWidth[band];
        double lost = p.bandDensity[band] * x * (1 - x) * drive / (car.mass * p.massFactor[to]);
        return Math.max(LEAST_STRETCH, 1 + lost * a * regained);
    }

    /** The {@link #stretch} that the acceleration last found would make of a shift's band at an energy near by. */
    double stretchAt(double energy, int band) {
        return lastGain > 0 && energy > 0 ? stretch(Math.sqrt(2 * energy), lastGear, band, lastGain, lastDrive) : 1;
    }

    /** Lowest dv/dt under braking (negative: slowing) at v²/2 = energy in a gear (from 0), m/s². */
    double brake(double[] rows, int row, double energy, int gear) {
        double v = Math.sqrt(2 * energy);
        wheels.at(rows, row, v);
        double massFactor = car.propulsion.massFactor[gear];
        wheels.engineDrag = car.propulsion.drag(gear, v);
        if (other != null) {
            otherWheels.at(rows, row);
            double a = other.brake(v, wheels.engineDrag, massFactor);
            if (!Double.isNaN(a)) {
                plainly = true;
                near = false;
                return a;
            }
            unknown = true;
        }
        boolean looked = lookingForBrakes;
        if (looked) {
            brakeCourse.begin(-hardestTrial(massFactor, OFF_STEADY - wheels.climb));
            lookingForBrakes = false;
        }
        double y = gripRoot(-1, -brakeCourse.guess(stage, reach), slopeBrake, massFactor);
        // Drive, less than steady speed would take, and no brakes.
        boolean lightly = wheels.tyreForce >= 0;
        near = lightly || wheels.across() > FAR_FROM_LIMIT;
        plainly = !thorough || !near || (!lightly && plainlyMost(-1, y, wheels.mostAlong(), massFactor));
        if (!plainly && !looked) {
            double least = y + OFF_STEADY;
            double harder = hardestTrial(massFactor, least);
            if (harder > least) {
                y = gripRoot(-1, harder, slopeBrake, massFactor);
            }
        }
        slopeBrake = rootSlope;
        return brakeCourse.found(-y, stage, reach) - wheels.climb;
    }

    /** Begins a search under drive at an acceleration along the car, m/s², where grip or the engine is the limit. */
    void driveFrom(double ax, boolean grip) {
        forget();
        engineCourse.begin(ax);
        gripCourse.begin(ax);
        limit = grip ? Limit.REAR_GRIP : Limit.POWER;
    }

    /** Begins a search under brakes. */
    void brakeFrom(double ax) {
        forget();
        brakeCourse.begin(ax);
        lookingForBrakes = false;
    }

    /**
     * Looks everywhere for the greatest drive from now on, wherever it is not plain, and returns whether it does: of two driven wheels only
     * where the car leaves its limit.
     */
    boolean lookForDrive(boolean leaving) {
        thorough = leaving || (car.frontDriveShare > 0 && car.frontDriveShare < 1);
        return thorough;
    }

    /** Looks everywhere for the hardest braking from now on, wherever it is not plain; begins on from the last search, or by a look. */
    void look(boolean on) {
        thorough = true;
        lookingForBrakes |= !on;
    }

    /** Ends a search that looked everywhere. */
    void looked() {
        thorough = false;
    }

    /** Begins the next searches where the last ended: how that changed before tells nothing. */
    void goOn() {
        brakeCourse.begin(brakeCourse.last);
        gripCourse.begin(gripCourse.last);
        engineCourse.begin(engineCourse.last);
    }

    /** Searches on from what was found last from now on, unless a ridge is known of. */
    void lookNoMore() {
        thorough = ridged && thorough;
    }

    /** A deceleration that the tyres can give, as near to the most as a few trials tell, m/s², or the least that is of use. */
    private double hardestTrial(double massFactor, double least) {
        // The loads at steady speed tell how much braking to begin with.
        wheels.require(wheels.climb, 1);
        return trial(-1, Math.min(MOST_TRIAL, wheels.mostAlong()), least, massFactor);
    }

    /**
     * A drive or braking that the tyres can give, as near to the most as a few trials tell, m/s², or the least that is of use. Little may be
     * out of reach where much is not: as drive turns to drag, or one wheel's to the other's, a differential turns the car out of its way. Which
     * of both is found must not hang on chance.
     */
    private double trial(int sign, double most, double least, double massFactor) {
        double steady = sign * wheels.climb;
        double harder = Double.NaN;
        double hard = Double.NaN;
        double before = Double.NaN;
        double last = Double.NaN;
        double end = Math.max(least, steady + OFF_STEADY);
        for (double trial = most; trial > end; ) {
            double here = excess(sign * trial, massFactor);
            if (here <= 0) {
                return trial;
            }
            if (last < NARROWLY && last <= before && last <= here) {
                double between = between(sign, trial, harder, massFactor);
                if (between > 0) {
                    return between;
                }
            }
            harder = hard;
            hard = trial;
            before = last;
            last = here;
            double falls = (ridged ? 0.5 : 1) * here * wheels.alongPerMass();
            trial -= Math.min((1 - TRIAL_STEP) * (trial - steady), Math.max(falls, LEAST_TRIAL));
        }
        return least;
    }

    /** A drive or braking between two that can be had, although neither of them can, m/s²; 0 if there is none. By golden sections. */
    private double between(int sign, double light, double hard, double massFactor) {
        double low = light;
        double high = hard;
        double left = high - GOLDEN * (high - low);
        double right = low + GOLDEN * (high - low);
        double atLeft = excess(sign * left, massFactor);
        double atRight = excess(sign * right, massFactor);
        for (int i = 0; i < SECTIONS && atLeft > 0 && atRight > 0; i++) {
            if (atLeft < atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - GOLDEN * (high - low);
                atLeft = excess(sign * left, massFactor);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + GOLDEN * (high - low);
                atRight = excess(sign * right, massFactor);
            }
        }
        return atRight <= 0 ? right : atLeft <= 0 ? left : 0;
    }

    /**
     * Whether more drive or braking than this, m/s², plainly only takes the more grip the more it is, up to the most. A few trials tell until
     * a search has come upon a ridge; from then on small ones are looked for too.
     */
    private boolean plainlyMost(int sign, double y, double most, double massFactor) {
        double before = 0;
        double least = ridged ? PACE : FIRST_TRIAL;
        double growth = ridged ? GROWTH : FIRST_GROWTH;
        for (double beyond = least;
                y + beyond < most && before < HOPELESS;
                beyond += Math.max(least, growth * beyond)) {
            double here = excess(sign * (y + beyond), massFactor);
            if (here < before) {
                ridged = true;
                return false;
            }
            if (sign < 0 && here < PLAIN * Math.min(beyond, 2)) {
                return false;
            }
            before = here;
        }
        return true;
    }

    /**
     * The greatest y near a guess for which the acceleration sign·y can be had; without one, from steady speed outwards: up to its cornering
     * limit a car can hold its speed, while it may be unable to lift off. Beyond the limit, where only trial steps look, it
     * holds under drive, so that a step that overshoots falls back on the limit and not below it, and coasts otherwise.
     */
    private double gripRoot(int sign, double guess, double slope, double massFactor) {
        double low = sign * wheels.climb;
        double high = Double.POSITIVE_INFINITY;
        // At its cornering limit a car is at the root already, but drive or brakes may yet ease the axle that gives up
        // first.
        double x = Math.max(guess, low + OFF_STEADY);
        double g = excess(sign * x, massFactor);
        double next = x - g / slope;
        rootSlope = slope;
        boolean lowKnown = false;
        double width = Double.POSITIVE_INFINITY;
        double stepped = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MAX_ITERATIONS; i++) {
            if (g > 0) {
                high = x;
            } else {
                low = x;
                lowKnown = true;
            }
            if (Math.abs(g) < TOLERANCE || high - low < TOLERANCE) {
                return x;
            }
            double step = Math.abs(next - x);
            if (Math.abs(g) < NEAR && step < stepped && step * stepped < lastSteps) {
                return next;
            }
            if (i % HALVING == 0) {
                // Where a wheel reaches its peak the utilisation is all but upright, and secants creep.
                next = lowKnown && high - low > 0.5 * width ? 0.5 * (low + high) : next;
                width = high - low;
            }
            if (!(next > low && next < high)) {
                if (high == Double.POSITIVE_INFINITY) {
                    next = low + 4 * (1 + Math.abs(low));
                } else if (lowKnown) {
                    next = 0.5 * (low + high);
                } else {
                    double steady = excess(sign * low, massFactor);
                    if (steady > STEADY_TOLERANCE) {
                        // Above the cornering limit: a trial step looks there.
                        return sign > 0 ? low : coasting(low, massFactor);
                    }
                    lowKnown = true;
                    next = 0.5 * (low + high);
                }
            }
            double before = g;
            double moved = next - x;
            stepped = Math.abs(moved);
            x = next;
            g = excess(sign * x, massFactor);
            double secant = (g - before) / moved;
            // Far beyond the limit the utilisation says nothing of where the limit is.
            if (secant > 0 && before < FAR && g < FAR) {
                next = x - g / secant;
                // A difference over a hair's breadth is mostly rounding and no guess for the next search.
                rootSlope = Math.abs(moved) > 1e-5 ? secant : rootSlope;
            } else {
                next = Double.NaN;
            }
        }
        return x;
    }

    /** Deceleration, positive, without drive or brakes, from the forces just evaluated at steady speed. */
    private double coasting(double steady, double massFactor) {
        return steady + wheels.requiredForce / (car.mass * massFactor);
    }

    /**
     * By how much the way from steady speed to a dv/dt and beyond leads over a ridge at v²/2 = energy in a gear (from 0): the most by
     * which the use falls again on it, 0 where the harder the more it takes. Of which ways were found it knows nothing.
     */
    double ridge(double[] rows, int row, double energy, int gear, double hard) {
        double v = Math.sqrt(2 * energy);
        wheels.at(rows, row, v);
        double massFactor = car.propulsion.massFactor[gear];
        wheels.engineDrag = car.propulsion.drag(gear, v);
        double top = Double.NEGATIVE_INFINITY;
        double ridge = 0;
        double far = hard + Math.copySign(BEYOND, hard);
        int parts = (int) Math.min(PARTS, Math.ceil(Math.abs(far) / PACE));
        for (int i = 0; i <= parts; i++) {
            double here = excess(wheels.climb + far * i / parts, massFactor);
            top = Math.max(top, here);
            ridge = Math.max(ridge, top - here);
        }
        return ridge;
    }

    private double excess(double ax, double massFactor) {
        double utilisation = wheels.utilisation(ax, massFactor);
        return (inverseExponent == 0.5 ? Math.sqrt(utilisation) : Math.pow(utilisation, inverseExponent)) - 1;
    }

    /** Roots of one kind on their way from stage to stage of the steps; the next is guessed by how they moved over the last step. */
    private static final class Course {
        double last;
        /** At the start of the step. */
        private double start;

        /** Change over a metre of a step: from its start to the middle, and on to the end. */
        private final double[] rate = new double[STAGES];

        void begin(double value) {
            last = value;
            start = value;
            Arrays.fill(rate, 0);
        }

        double guess(int stage, double reach) {
            return from(stage) + reach * rate[stage];
        }

        private double from(int stage) {
            return stage == 1 ? start : last;
        }

        double found(double root, int stage, double reach) {
            if (stage > 0) {
                rate[stage] = (root - from(stage)) / reach;
            } else {
                start = root;
            }
            last = root;
            return root;
        }
    }
}
