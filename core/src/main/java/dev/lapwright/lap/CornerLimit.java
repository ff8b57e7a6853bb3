package dev.lapwright.lap;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.NoLapException;
import java.util.BitSet;

/**
 * The highest steady speed at each station: section 6 of docs/theory.md with the resistances overcome, the rev limit in top
 * gear and any rule of the track.
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

    /** Growth of the use over that of the energy, relative, at the last limit found. */
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

    /** Fills {@code energy} (one for each station, written) with the limits v²/2. */
    void fill(Road road, double[] energy) {
        double top = 0.5 * car.propulsion.topSpeed * car.propulsion.topSpeed;
        double across = Double.POSITIVE_INFINITY;
        relativeSlope = 1;
        for (int i = 0; i <= road.cells; i++) {
            int row = 2 * i * Road.STRIDE;
            double rule = road.rows[row + Road.RULE];
            double cap = Math.min(top, 0.5 * rule * rule);
            // As much acceleration across as at the last station.
            double curvature = road.rows[row + Road.LATERAL_CURVATURE];
            double guess = 0.5 * (across + road.rows[row + Road.LATERAL_GRAVITY]) / curvature;
            energy[i] = highest(road, row, cap, guess > 0 && guess < cap ? guess : cap, i);
            across = 2 * energy[i] * curvature - road.rows[row + Road.LATERAL_GRAVITY];
            if (other != null) {
                otherWheels.at(road.rows, row);
                double fuller = other.highest(Math.sqrt(2 * cap), Math.sqrt(2 * energy[i]));
                if (Double.isNaN(fuller)) {
                    unknown.set(i);
                } else {
                    energy[i] = Math.min(cap, 0.5 * fuller * fuller);
                }
            }
        }
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
