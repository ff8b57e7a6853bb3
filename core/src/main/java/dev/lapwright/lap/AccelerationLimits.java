package dev.lapwright.lap;

/**
 * The greatest acceleration and the hardest braking at a place and speed: the engine's limit or the root of
 * {@link WheelForces#utilisation} = 1, found by a secant search that starts from the last answer. Scratch of one solver.
 */
final class AccelerationLimits {
    /** On the utilisation of the tyres, and on acceleration (m/s²) where that is steep. */
    private static final double TOLERANCE = 1e-10;

    /** A secant step this short leaves an error far below it, or where a wheel is near its peak, of its size. */
    private static final double LAST_STEP = 1e-6;
    /** Use below which a moderate change of acceleration cannot reach the limit. */
    private static final double CLEAR = 0.5;

    /** Use above 1 that is rounding in a cornering limit found by a search. */
    private static final double STEADY_TOLERANCE = 1e-9;

    /** Use in excess of 1 beyond which a secant is no guide. */
    private static final double FAR = 5;

    /** Utilisation above which the engine's root, which is not exact, may lie beyond the tyres'. */
    private static final double NEARLY_SPENT = 1 - 1e-3;

    /** How far from steady speed searches begin at least, m/s². */
    private static final double OFF_STEADY = 0.05;

    private static final double ENGINE_TOLERANCE = 1e-4;
    /** Acceleration below which a shift's cost fades out, m/s²: a car that gains no speed need not shift. */
    private static final double HARDLY_GAINING = 0.2;

    private static final int MAX_ITERATIONS = 60;
    /** Steps in which a bracket must halve, else it is halved. */
    private static final int HALVING = 4;

    private final Vehicle car;
    private final WheelForces wheels;
    private final double inverseExponent;

    // Where the last searches ended: good guesses for the next station.
    private double lastEngine;
    private double lastGripDrive;
    private double lastGripBrake;
    /** Growth of the required force with acceleration, over the inertia: near 1. */
    private double engineRate;

    private double slopeDrive;
    private double slopeBrake;
    private double rootSlope;

    /** What limited the last acceleration found by {@link #drive}. */
    Limit limit = Limit.POWER;

    /** How much road a shift under way costs: the true dv/dt is that of {@link #drive} over this, 1 without a shift. */
    double stretch;

    AccelerationLimits(Vehicle car, WheelForces wheels) {
        this.car = car;
        this.wheels = wheels;
        inverseExponent = 1 / car.ellipseExponent;
        forget();
    }

    /** Forgets the guesses, so that results never depend on what was solved before. */
    void forget() {
        lastEngine = 0;
        lastGripDrive = 8;
        lastGripBrake = -8;
        engineRate = 1;
        slopeDrive = 0.1;
        slopeBrake = 0.1;
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
        double inertia = car.mass * massFactor;
        double engine = p.force(gear, v);
        double ax = lastEngine;
        double utilisation = wheels.utilisation(ax, massFactor);
        double step = (engine - wheels.requiredForce) / (engineRate * inertia);
        double before = wheels.requiredForce;
        // What is needed grows almost evenly with acceleration, exactly so where nothing turns.
        boolean settled = wheels.lateral == 0 && utilisation < CLEAR && Math.abs(step) < 1;
        ax += step;
        for (int i = 0; i < MAX_ITERATIONS && !settled; i++) {
            utilisation = wheels.utilisation(ax, massFactor);
            double rate = (wheels.requiredForce - before) / (step * inertia);
            if (Math.abs(step) > 1e-5 && rate > 0.5 && rate < 2) {
                engineRate = rate;
            }
            before = wheels.requiredForce;
            step = (engine - before) / (engineRate * inertia);
            settled = Math.abs(step) < ENGINE_TOLERANCE;
            ax += step;
        }
        lastEngine = ax;
        limit = Limit.POWER;
        double force = engine;
        if (utilisation > NEARLY_SPENT) {
            double most = gripRoot(1, Math.min(ax, lastGripDrive), slopeDrive, massFactor);
            slopeDrive = rootSlope;
            if (most < ax) {
                lastGripDrive = most;
                ax = most;
                limit = wheels.tightest();
                force = Math.max(wheels.requiredForce, 0);
            }
        }
        double a = ax - wheels.climb;
        stretch = band < 0 || !(a > 0) ? 1 : stretch(v, gear, band, a, force);
        return a;
    }

    /**
     * Road that a shift takes over what it would be without one. While there is no drive the car loses what resists it, and regains
     * that in the gear that the shift leads to: so t F' / (m δ' a') to the same speed, with that gear's force and acceleration.
     */
    private double stretch(double v, int gear, int band, double a, double force) {
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
        return Math.max(0.3, 1 + lost * a * regained);
    }

    /** Lowest dv/dt under braking (negative: slowing) at v²/2 = energy in a gear (from 0), m/s². */
    double brake(double[] rows, int row, double energy, int gear) {
        double v = Math.sqrt(2 * energy);
        wheels.at(rows, row, v);
        double massFactor = car.propulsion.massFactor[gear];
        wheels.engineDrag = car.propulsion.drag(gear, v);
        double ax = -gripRoot(-1, -lastGripBrake, slopeBrake, massFactor);
        lastGripBrake = ax;
        slopeBrake = rootSlope;
        return ax - wheels.climb;
    }

    /**
     * The greatest y for which the acceleration sign·y can be had, searched from steady speed outwards: up to its cornering
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
            if (i > 0 && Math.abs(next - x) < LAST_STEP && Math.abs(g) < LAST_STEP) {
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

    private double excess(double ax, double massFactor) {
        double utilisation = wheels.utilisation(ax, massFactor);
        return (inverseExponent == 0.5 ? Math.sqrt(utilisation) : Math.pow(utilisation, inverseExponent)) - 1;
    }
}
