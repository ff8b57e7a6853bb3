package dev.lapwright.lap;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.NoLapException;
import java.util.Arrays;
import java.util.BitSet;

/**
 * The highest steady speed at stations: section 6 of docs/theory.md with the resistances overcome, the rev limit in top
 * gear and any rule of the track. Found where it is asked for: of most stations a lap need only know that its car is not that fast there.
 */
final class CornerLimit {
    private static final int MAX_ITERATIONS = 80;
    private static final double RELATIVE_TOLERANCE = 1e-12;
    /** Steps in which a bracket must halve, else it is halved: secants creep where the use is all but upright. */
    private static final int HALVING = 4;
    /** Use in excess of 1 beyond which a secant is no guide. */
    private static final double FAR = 2;

    /** Two secant steps in turn whose product, relative to the energy, leaves an error of about that. */
    private static final double LAST_STEPS = 1e-15;

    /** Excess within which the use is taken to run evenly. */
    private static final double NEAR = 0.1;

    /** Relative step below which a difference is mostly rounding. */
    private static final double LEAST_MOVE = 1e-6;

    private final Vehicle car;
    private final WheelForces wheels;
    private final double inverseExponent;
    private final StationLimits other;
    private final FourWheels otherWheels;
    /** Stations whose limit the fuller model did not know. */
    final BitSet unknown = new BitSet();

    /** Use left below which a limit is found, and not told by one look. */
    private static final double PLAINLY_BELOW = 1 - 1e-6;

    private Road road;
    private double[] limit;
    private double top;
    /** Energy up to which a station is known to lie below its limit. */
    private double[] below;

    // Of the last limit found: acceleration across times two, m/s², and growth of the use over that of the energy,
    // relative.
    private double across;
    private double relativeSlope;

    CornerLimit(Vehicle car, WheelForces wheels) {
        this(car, wheels, null, null);
    }

    /** That of a fuller model, which reads these wheels. */
    CornerLimit(Vehicle car, WheelForces wheels, StationLimits other, FourWheels otherWheels) {
        this.other = other;
        this.otherWheels = otherWheels;
        this.car = car;
        this.wheels = wheels;
        inverseExponent = 1 / car.ellipseExponent;
    }

    /**
     * Forgets all limits, for a road.
     *
     * @param limits one for each station, written: v²/2 where one is known, else NaN
     * @param scratch as many
     */
    void begin(Road along, double[] limits, double[] scratch) {
        road = along;
        limit = limits;
        top = 0.5 * car.propulsion.topSpeed * car.propulsion.topSpeed;
        across = Double.POSITIVE_INFINITY;
        relativeSlope = 1;
        Arrays.fill(limit, Double.NaN);
        below = scratch;
        Arrays.fill(below, 0);
        unknown.clear();
        if (other != null) {
            // A fuller model traces each limit on from the last.
            all();
        }
    }

    /** Finds all limits. */
    void all() {
        for (int i = 0; i < limit.length; i++) {
            find(i);
        }
    }

    /** Finds the limit of a station, v²/2, if it is not known yet. */
    double find(int station) {
        if (Double.isNaN(limit[station])) {
            int row = 2 * station * Road.STRIDE;
            double cap = cap(row);
            // As much acceleration across as where one was found last.
            double curvature = road.rows[row + Road.LATERAL_CURVATURE];
            double guess = 0.5 * (across + road.rows[row + Road.LATERAL_GRAVITY]) / curvature;
            double own = highest(road, row, cap, guess > 0 && guess < cap ? guess : cap, station);
            across = 2 * own * curvature - road.rows[row + Road.LATERAL_GRAVITY];
            limit[station] = Math.max(own, below[station]);
            if (other != null) {
                otherWheels.at(road.rows, row);
                double fuller = other.highest(Math.sqrt(2 * cap), Math.sqrt(2 * own));
                if (Double.isNaN(fuller)) {
                    unknown.set(station);
                } else {
                    limit[station] = Math.min(cap, 0.5 * fuller * fuller);
                }
            }
        }
        return limit[station];
    }

    /** Whether the limit of a station lies at or below an energy; it is found only where one look does not tell. */
    boolean isAtMost(int station, double energy) {
        if (Double.isNaN(limit[station])) {
            if (energy <= below[station]) {
                return false;
            }
            int row = 2 * station * Road.STRIDE;
            if (energy < cap(row)) {
                wheels.at(road.rows, row, Math.sqrt(2 * energy));
                if (wheels.require(wheels.climb, 1)
                        && (wheels.plainlyLeft(wheels.climb) || wheels.spent(wheels.climb, 1) < PLAINLY_BELOW)) {
                    below[station] = energy;
                    return false;
                }
            }
        }
        return find(station) <= energy;
    }

    /** What gears and rules leave at a row, v²/2. */
    private double cap(int row) {
        double rule = road.rows[row + Road.RULE];
        return Math.min(top, 0.5 * rule * rule);
    }

    private double highest(Road road, int row, double cap, double guess, int station) {
        double low = 0;
        double high = cap;
        boolean capTried = false;
        boolean lowFound = false;
        double width = Double.POSITIVE_INFINITY;
        double curvature = road.rows[row + Road.LATERAL_CURVATURE];
        double across = road.rows[row + Road.LATERAL_GRAVITY];
        if (curvature * across > 0 && excess(road.rows, row, 0) > 0) {
            // Steep bank, little grip: it slides down at rest, but holds where no side force is needed.
            double neutral = 0.5 * across / curvature;
            if (neutral < cap && excess(road.rows, row, neutral) <= 0) {
                low = neutral;
                lowFound = true;
                guess = Math.max(guess, neutral);
            }
        }
        double x = guess;
        double g = excess(road.rows, row, x);
        // The use grows about as v², that is in proportion to energy.
        double next = g < NEAR ? x * (1 - g / relativeSlope) : x / (1 + Math.min(g, 3));
        double stepped = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MAX_ITERATIONS; i++) {
            if (g > 0) {
                high = x;
                capTried = true;
            } else if (x >= cap) {
                return cap;
            } else {
                low = x;
                lowFound = true;
            }
            if (!(next > low && next < high)) {
                next = !capTried ? cap : lowFound ? 0.5 * (low + high) : 0.25 * high;
            }
            if (high - low < RELATIVE_TOLERANCE * high || (g > 0 && x < 1e-7)) {
                break;
            }
            double step = Math.abs(next - x) / x;
            if (Math.abs(g) < NEAR && step < stepped && step * stepped < LAST_STEPS) {
                return Math.min(next, cap);
            }
            if (i % HALVING == 0) {
                next = lowFound && capTried && high - low > 0.5 * width ? 0.5 * (low + high) : next;
                width = high - low;
            }
            double before = g;
            double moved = next - x;
            stepped = Math.abs(moved) / x;
            x = next;
            g = excess(road.rows, row, x);
            double slope = (g - before) / moved;
            // Far beyond the limit the use says nothing of where the limit is.
            if (slope > 0 && before < FAR && g < FAR) {
                next = x - g / slope;
                relativeSlope = stepped > LEAST_MOVE ? slope * x : relativeSlope;
            } else {
                next = Double.NaN;
            }
            if (Math.abs(g) < RELATIVE_TOLERANCE) {
                return x;
            }
        }
        if (!lowFound && x < 1e-6) {
            excess(road.rows, row, x);
            throw impossible(road.s[station]);
        }
        return x;
    }

    /** Change of a station's limit with its curvature, (m²/s²)·m; zero where gearing or a rule sets the limit. */
    double slope(Road road, int station, double energy, double change) {
        int row = 2 * station * Road.STRIDE;
        double rule = road.rows[row + Road.RULE];
        if (energy >= Math.min(0.5 * car.propulsion.topSpeed * car.propulsion.topSpeed, 0.5 * rule * rule)) {
            return 0;
        }
        double here = excess(road.rows, row, energy);
        double step = 1e-6 * energy;
        double perEnergy = (excess(road.rows, row, energy + step) - here) / step;
        road.bend(2 * station, change);
        double perCurvature = (excess(road.rows, row, energy) - here) / change;
        road.bend(2 * station, -change);
        return -perCurvature / perEnergy;
    }

    /** Why a car comes to rest in a cell that it enters with an energy. */
    NoLapException stopped(Road road, int cell, double energy) {
        boolean holds = excess(road.rows, 2 * cell * Road.STRIDE, energy) <= 0;
        if (!holds && wheels.rollUtilisation >= 1) {
            return impossible(road.s[cell]);
        }
        return new NoLapException(
                "track at " + Check.text(road.s[cell]) + " m",
                "the car comes to rest there: its drive does not overcome slope and resistance",
                "check gears, torque, grip of the driven wheels and the slope of the track");
    }

    private NoLapException impossible(double distance) {
        String place = "track at " + Check.text(distance) + " m";
        if (wheels.rollUtilisation >= 1) {
            return new NoLapException(
                    place,
                    "the car would roll over there: its centre of gravity is too high for its track and the bank",
                    "check chassis.cgHeightM, the tracks and roll centres of the car, and the bank of the track");
        }
        return new NoLapException(
                place,
                "the car cannot hold the road there at any speed: too little grip for the slope or bank",
                "check slope, bank and grip of the track, and the car's friction");
    }

    /** Root of the use less one at a steady speed; sets {@link WheelForces} to that state. */
    double excess(double[] rows, int row, double energy) {
        wheels.at(rows, row, Math.sqrt(2 * energy));
        double utilisation = wheels.utilisation(wheels.climb, 1);
        return (inverseExponent == 0.5 ? Math.sqrt(utilisation) : Math.pow(utilisation, inverseExponent)) - 1;
    }
}
