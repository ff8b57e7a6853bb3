package dev.lapwright.lap;

/**
 * Integrator of the energy e = v²/2 across one cell by de/ds = a(s, e), with Kutta's third-order rule, forward under drive or
 * backward under braking. Where e meets a break speed of the propulsion the step is split there: its first part is the step
 * of the very length that ends on the break, so that the result changes without a jump as a break moves into a cell. Scratch
 * of one solver.
 */
final class IntervalIntegrator {
    private static final int MAX_SPLITS = 60;
    /** On the place of a break, m. */
    private static final double PLACE_TOLERANCE = 1e-6;
    /** Distance up to which a step is moved on by its own slope, m: what that leaves is far below the tolerance. */
    private static final double NEARLY_THERE = 5e-3;

    private static final int PREDICTIONS = 2;
    /** Difference between the stages of a step from which on they may be unlike, m/s²; from twice that on they are. */
    private static final double SUDDEN = 0.3;

    /** Height of a ridge between them over which the slope jumps. */
    private static final double RIDGE = 2e-4;

    /** Cells up to this length are crossed in one step where more comes within reach, others in two or more no longer than this, m. */
    private static final double SHORT = 0.15;

    private static final double LONGEST = 0.6;

    private static final int WIDENINGS = 8;

    /** On the energy in the middle of such a step, m²/s². */
    private static final double ENERGY_TOLERANCE = 1e-8;

    private final double nearlyThere;
    private final Vehicle car;
    private final AccelerationLimits acceleration;
    private final double[] place = new double[Road.STRIDE];

    /** Time for the cell, s. */
    double time;
    /** Slope de/ds where the step began and ended, m/s². */
    double startSlope;

    double endSlope;

    /** Distance of the last step, m, and the same without what a shift costs. */
    private double distance;

    private double reach;

    /** ds/ds' at the last slope; above 1 where a shift is under way. */
    private double stretch;

    private boolean stretched;
    private double bandTime;

    private double[] rows;
    /** Those rows, or the one between them. */
    private double[] at;

    private int cell;
    /** Of the cell, m. */
    private double length;

    private boolean braking;
    /** Whether nowhere on the way more drive or braking might have been had than was found. */
    boolean plainly;

    /** Whether anywhere on the way tyres were the limit, and the way across took much of them. */
    private boolean near;

    /** Whether ways apart are looked for. */
    private boolean looking;

    private double middleSlope;
    /** How unlike the slopes were at the stages of the first step over the cell: see {@link #unlike}. */
    private double unlike;

    /** Gears in use, from 0. */
    private int lowest;

    private int highest;

    private IntervalIntegrator(Vehicle car, AccelerationLimits acceleration, double nearlyThere) {
        this.nearlyThere = nearlyThere;
        this.car = car;
        this.acceleration = acceleration;
        use(0, car.propulsion.massFactor.length - 1);
    }

    /** As exact as a lap needs it. */
    static IntervalIntegrator toDriveBy(Vehicle car, AccelerationLimits acceleration) {
        return new IntervalIntegrator(car, acceleration, NEARLY_THERE);
    }

    /** As smooth as it goes, for differences between steps. */
    static IntervalIntegrator toTell(Vehicle car, AccelerationLimits acceleration) {
        return new IntervalIntegrator(car, acceleration, PLACE_TOLERANCE);
    }

    /** Uses no gear below {@code lowestGear} and none above {@code highestGear} (from 0) from now on. */
    void use(int lowestGear, int highestGear) {
        lowest = lowestGear;
        highest = highestGear;
    }

    /** Whether a shift, a break of the drive or the limiter lies between two energies, so that no cubic tells the course between. */
    boolean shifting(double from, double to) {
        Propulsion p = car.propulsion;
        int piece = p.pieceAt(from);
        return p.shifting(piece, lowest, highest) || to > p.breakEnergy[piece + 1] || to >= p.limitEnergy[highest];
    }

    /** Energy at the end of the cell, entered with {@code energy}, driving as hard as possible. */
    double forward(Road road, int index, double energy) {
        return forward(road, index, energy, 1);
    }

    /** The same over a share of the cell from its start. */
    double forward(Road road, int index, double energy, double share) {
        begin(road, index, false);
        return across(share, energy, 1);
    }

    /**
     * The same over the whole cell, looking everywhere for the greatest drive wherever more of it might be had than next to the last.
     *
     * @param leaving whether the car has just left its cornering limit
     */
    double forwardGreatest(Road road, int index, double energy, boolean leaving) {
        begin(road, index, false);
        looking = acceleration.lookForDrive(leaving);
        return evenly(across(1, energy, 1), energy, 1);
    }

    private void begin(Road road, int index, boolean brakes) {
        rows = road.rows;
        cell = index;
        length = road.length[index];
        braking = brakes;
        looking = false;
    }

    /** Whether the engine plainly holds the speed where a cell begins, on the gears named (from 0). */
    boolean holds(Road road, int index, double energy, int lowestGear, int highestGear) {
        Propulsion p = car.propulsion;
        int gear = p.gear(p.pieceAt(energy), lowestGear, highestGear);
        return acceleration.holds(road.rows, 2 * index * Road.STRIDE, energy, gear);
    }

    /** Energy at the start of the cell from which the hardest braking leads to {@code energy} at its end. */
    double backward(Road road, int index, double energy) {
        return backward(road, index, energy, 1);
    }

    /**
     * The same, looking everywhere for the hardest braking wherever more of it might be had than next to the last.
     *
     * @param on whether the car brakes where the cell ends: then the last search is a guide
     */
    double backwardHardest(Road road, int index, double energy, boolean on) {
        begin(road, index, true);
        acceleration.look(on);
        looking = true;
        return evenly(across(1, energy, -1), energy, -1);
    }

    /** What a step over the whole cell has led to, and where its stages were unlike each other the rule of the middle instead. */
    private double evenly(double stepped, double entered, int sign) {
        double end = stepped;
        if (unlike > 0 && length > 0) {
            double far = endSlope;
            double taken = time;
            double byMiddles = byMiddles(entered, sign);
            end = byMiddles + (1 - unlike) * (stepped - byMiddles);
            endSlope += (1 - unlike) * (far - endSlope);
            time += (1 - unlike) * (taken - time);
            acceleration.goOn();
        }
        acceleration.looked();
        return end;
    }

    /** The same over a share of the cell before its end. */
    double backward(Road road, int index, double energy, double share) {
        begin(road, index, true);
        return across(share, energy, -1);
    }

    /** Whether a fuller model did not know some of what was asked since this was last asked. */
    boolean unknown() {
        boolean unknown = acceleration.unknown;
        acceleration.unknown = false;
        return unknown;
    }

    private double across(double until, double energy, int sign) {
        Propulsion p = car.propulsion;
        time = 0;
        if (length == 0) {
            startSlope = 0;
            endSlope = 0;
            return energy;
        }
        double e = energy;
        plainly = true;
        near = false;
        // Fraction of the cell already behind, measured from where the step began.
        double done = 0;
        int piece = p.pieceAt(e);
        boolean first = true;
        for (int split = 0; split < MAX_SPLITS && done < until; split++) {
            int under = -1;
            if (!braking) {
                // On a break the piece holds into which its own slope leads; where neither's does, the car stays on the
                // break.
                if (piece + 1 < p.pieces && e == p.breakEnergy[piece + 1]) {
                    piece++;
                }
                under = piece > 0 && e == p.breakEnergy[piece] ? piece - 1 : -1;
            }
            acceleration.stage = 0;
            double k1 = slope(done, sign, e, piece);
            if (plainly) {
                acceleration.lookNoMore();
            }
            if (under >= 0 && k1 < 0) {
                double below = slope(done, sign, e, under);
                if (below >= 0) {
                    // The gear above cannot hold this speed, the gear below has no revs left: it stays on the limiter.
                    if (first) {
                        startSlope = 0;
                        first = false;
                    }
                    done = stay(done, until, e, under, piece);
                    continue;
                }
                piece = under;
                k1 = below;
            }
            double q1 = stretch;
            if (first) {
                startSlope = k1 / q1;
                first = false;
            }
            double h = length * (until - done);
            int above = upperPiece(piece);
            double end = stretch == 1 && !p.shifting(piece, lowest, highest)
                    ? step(done, sign, h, e, k1, q1, piece)
                    : stepOver(h, done, sign, e, k1, piece);
            if (split == 0) {
                unlike = looking && near ? unlike(sign, h, e, k1, piece) : 0;
            }
            double stop = braking ? Double.POSITIVE_INFINITY : p.limitEnergy[highest];
            double target;
            int nextPiece = piece;
            boolean limiter = end > stop && (above > p.pieces || stop <= p.breakEnergy[above]);
            if (limiter) {
                target = stop;
            } else if (above <= p.pieces && end > p.breakEnergy[above]) {
                target = p.breakEnergy[above];
                nextPiece = above;
            } else if (piece > 0 && end < p.breakEnergy[piece]) {
                target = p.breakEnergy[piece];
                nextPiece = piece - 1;
            } else {
                time += stepTime(h, e, end, sign * k1 / q1, sign * endSlope);
                return end;
            }
            double part = distanceTo(target, end, done, sign, e, k1, q1, piece);
            time += stepTime(part, e, target, sign * k1 / q1, sign * endSlope);
            done += part / length;
            e = target;
            if (limiter) {
                done = stay(done, until, e, piece, -1);
            } else {
                piece = nextPiece;
            }
        }
        // What is left after so many splits is within rounding of a break.
        time += length * (until - done) / Math.sqrt(2 * e);
        return e;
    }

    /**
     * The car stays at an energy where the piece below it leads up and the piece above, if there is one, leads down: on a limiter.
     * Returns the fraction of the cell where one of them no longer does, at most {@code until}.
     */
    private double stay(double done, double until, double e, int under, int over) {
        double to = until;
        if (!stays(until, e, under, over)) {
            double from = done;
            while ((to - from) * length > PLACE_TOLERANCE) {
                double middle = 0.5 * (from + to);
                if (stays(middle, e, under, over)) {
                    from = middle;
                } else {
                    to = middle;
                }
            }
        }
        endSlope = 0;
        time += length * (to - done) / Math.sqrt(2 * e);
        return to;
    }

    private boolean stays(double fraction, double e, int under, int over) {
        acceleration.stage = 0;
        return slope(fraction, 1, e, under) >= 0 && (over < 0 || slope(fraction, 1, e, over) < 0);
    }

    /** The piece above, for braking the first in another gear; one past the last where no gear is left but the top. */
    private int upperPiece(int piece) {
        Propulsion p = car.propulsion;
        int above = piece + 1;
        while (braking && above <= p.pieces && (above == p.pieces || p.gear[above] == p.gear[piece])) {
            above++;
        }
        return above;
    }

    /**
     * Kutta's third-order rule. Inside a shift's band road is lost at a rate: de/ds' = a and ds/ds' = q ≥ 1, both smooth,
     * and {@code reach} is s'; elsewhere q = 1 and reach is distance. Leaves distance, time by Simpson's rule, and the slope
     * de/ds at the far end.
     */
    private double step(double done, int sign, double reach, double e, double k1, double q1, int piece) {
        double signed = sign * reach;
        double half = e + 0.5 * signed * k1;
        acceleration.reach = reach;
        acceleration.stage = 1;
        double k2 = slope(done + 0.5 * reach * q1 / length, sign, half, piece);
        double q2 = stretch;
        middleSlope = k2;
        acceleration.stage = 2;
        double k3 = slope(done + reach * (2 * q2 - q1) / length, sign, e + signed * (2 * k2 - k1), piece);
        double q3 = stretch;
        double end = e + signed / 6 * (k1 + 4 * k2 + k3);
        endSlope = k3 / q3;
        this.reach = reach;
        distance = reach / 6 * (q1 + 4 * q2 + q3);
        stretched = q1 + q2 + q3 != 3;
        if (stretched) {
            bandTime = reach / 6 * (q1 / speed(e) + 4 * q2 / speed(half) + q3 / speed(end));
        }
        return end;
    }

    /** How unlike the stages of a first step over a cell are: from 0, more of the same, to 1, where the slope jumps between them. */
    private double unlike(int sign, double h, double e, double k1, int piece) {
        double least = Math.min(k1, Math.min(middleSlope, endSlope));
        double most = Math.max(k1, Math.max(middleSlope, endSlope));
        double apart = most - least;
        double bend = Math.abs(k1 - 2 * middleSlope + endSlope);
        // Where no ridge was met the stages lie apart by much more, and not along a line, before one is looked for.
        double share = (plainly ? Math.min(0.5 * apart, bend) : apart) / SUDDEN - 1;
        if (share <= 0) {
            return 0;
        }
        double light = braking ? most : least;
        double hard = braking ? least : most;
        double ridge = Math.max(ridge(hard, sign, h, e, k1, piece, hard), ridge(light, sign, h, e, k1, piece, hard));
        return Math.min(1, share) * Math.min(1, ridge / RIDGE);
    }

    /** The ridge up to a slope and beyond, at the stage where one of them was found. */
    private double ridge(double found, int sign, double h, double e, double k1, int piece, double hard) {
        double share = found == k1 ? 0 : found == middleSlope ? 0.5 : 1;
        double energy = e + sign * h * (share == 0 ? 0 : share == 1 ? 2 * middleSlope - k1 : 0.5 * k1);
        int row = row(share * h / length, sign);
        return acceleration.ridge(at, row, Math.max(energy, 0), car.propulsion.gear(piece, lowest, highest), hard);
    }

    /**
     * The way over a cell by the implicit rule of the middle. The faster a car, the less can it brake, and drive in a bend: so each step has one
     * end, which does not jump where the slope does and also holds where the car stays at the edge of what comes within reach.
     */
    private double byMiddles(double entered, int sign) {
        acceleration.stage = 0;
        double e = entered;
        int steps = length > SHORT ? Math.max(2, (int) Math.ceil(length / LONGEST)) : 1;
        double share = 1.0 / steps;
        double h = sign * share * length;
        time = 0;
        for (int i = 0; i < steps; i++) {
            double middle = (i + 0.5) * share;
            double low = e;
            double atLow = byMiddle(middle, h, e, e);
            double high = e + atLow;
            double atHigh = byMiddle(middle, h, e, high);
            for (int k = 0; k < WIDENINGS && atHigh * atLow > 0; k++) {
                low = high;
                atLow = atHigh;
                high += 2 * atHigh;
                atHigh = byMiddle(middle, h, e, high);
            }
            double x = high;
            for (int k = 0; k < MAX_SPLITS && Math.abs(high - low) > ENERGY_TOLERANCE; k++) {
                // A secant first, which ends at once where the slope is smooth; then halvings, which end everywhere,
                // with a secant now and then.
                x = k % 3 == 0 ? low + (high - low) * atLow / (atLow - atHigh) : 0.5 * (low + high);
                double g = byMiddle(middle, h, e, x);
                if (Math.abs(g) < ENERGY_TOLERANCE) {
                    break;
                }
                if (g * atLow > 0) {
                    low = x;
                    atLow = g;
                } else {
                    high = x;
                    atHigh = g;
                }
            }
            double end = 2 * x - e;
            endSlope = (end - e) / h;
            time += duration(Math.abs(h), e, end, 0, 0);
            e = end;
        }
        return e;
    }

    /** By how much a step of length h from an energy, its slope taken in its middle at another, leads beyond that. */
    private double byMiddle(double middle, double h, double from, double at) {
        double slope = slope(middle, h > 0 ? 1 : -1, at, car.propulsion.pieceAt(at));
        return 0.5 * h * slope / stretch + from - at;
    }

    private double stepTime(double h, double e0, double e1, double slope0, double slope1) {
        return stretched ? bandTime : duration(h, e0, e1, slope0, slope1);
    }

    /** The step that covers the distance h inside a shift's band; leaves its reach. */
    private double stepOver(double h, double done, int sign, double e, double k1, int piece) {
        double q1 = stretch;
        double low = 0;
        double high = h / AccelerationLimits.LEAST_STRETCH;
        double guess = predicted(h, sign, e, k1, q1, piece);
        for (int i = 0; ; i++) {
            double end = step(done, sign, guess, e, k1, q1, piece);
            double over = distance - h;
            if (Math.abs(over) < nearlyThere || high - low < PLACE_TOLERANCE || i == MAX_SPLITS) {
                // The little that is left, or too much, at the speed and slope of the far end.
                distance = h;
                reach = guess - over / stretch;
                bandTime -= over / speed(end);
                return end - sign * endSlope * over;
            }
            if (over > 0) {
                high = guess;
            } else {
                low = guess;
            }
            double next = guess - over / stretch;
            guess = next > low && next < high ? next : 0.5 * (low + high);
        }
    }

    /** About the reach over the distance h, were drive and acceleration to stay as they are. */
    private double predicted(double h, int sign, double e, double k1, double q1, int piece) {
        double guess = h / q1;
        for (int i = 0; i < PREDICTIONS; i++) {
            double half = 0.5 * sign * guess * k1;
            double q2 = acceleration.stretchAt(e + half, piece);
            double q3 = acceleration.stretchAt(e + 2 * half, piece);
            guess -= (guess / 6 * (q1 + 4 * q2 + q3) - h) / q3;
        }
        return guess > 0 ? guess : h / q1;
    }

    /** Distance of the step that ends at {@code target}, which the last step goes beyond. */
    private double distanceTo(
            double target, double end, double done, int sign, double e, double k1, double q1, int piece) {
        double whole = reach;
        // The slope changes from k1 to that at the end: start from the parabola through both ends.
        double rise = sign * whole * k1;
        double part;
        if (target != e) {
            double share = (target - e) / (end - e);
            double bend = (rise - (end - e)) / (end - e);
            part = whole * share / (1 + bend * (1 - share));
        } else if (rise * (end - e) < 0) {
            // It leaves the break on one side, turns within the step and comes back through it.
            part = whole * rise / (rise - (end - e));
        } else {
            stretched = false;
            return 0;
        }
        double low = 0;
        double high = whole;
        for (int i = 0; i < MAX_SPLITS; i++) {
            if (!(part > low && part < high)) {
                part = 0.5 * (low + high);
            }
            double miss = step(done, sign, part, e, k1, q1, piece) - target;
            double over = end > target ? miss : -miss;
            double move = over / Math.abs(endSlope * stretch);
            if (Math.abs(move) < PLACE_TOLERANCE || high - low < PLACE_TOLERANCE) {
                return distance;
            }
            if (over > 0) {
                high = part;
            } else {
                low = part;
            }
            part -= move;
        }
        return distance;
    }

    private static double speed(double energy) {
        return Math.sqrt(2 * Math.max(energy, 1e-12));
    }

    /** The row at a fraction of the cell counted from where the step began; {@link #at} holds it. */
    private int row(double fraction, int sign) {
        double f = sign > 0 ? fraction : 1 - fraction;
        int base = 2 * cell * Road.STRIDE;
        at = rows;
        if (f <= 0) {
            return base;
        }
        if (f >= 1) {
            return base + 2 * Road.STRIDE;
        }
        if (f == 0.5) {
            return base + Road.STRIDE;
        }
        for (int j = 0; j < Road.RULE; j++) {
            double a = rows[base + j];
            place[j] = a + f * (rows[base + 2 * Road.STRIDE + j] - a);
        }
        at = place;
        return 0;
    }

    /** de/ds at a fraction of the cell counted from where the step began. */
    private double slope(double fraction, int sign, double e, int piece) {
        double energy = Math.max(e, 0);
        int row = row(fraction, sign);
        Propulsion p = car.propulsion;
        int gear = p.gear(piece, lowest, highest);
        if (braking) {
            stretch = 1;
            double ax = acceleration.brake(at, row, energy, gear);
            plainly &= acceleration.plainly;
            near |= acceleration.near;
            return ax;
        }
        double a = acceleration.drive(at, row, energy, gear, p.shifting(piece, lowest, highest) ? piece : -1);
        stretch = acceleration.stretch;
        plainly &= acceleration.plainly;
        near |= acceleration.near;
        return a;
    }

    /**
     * Time over a distance with the energy given at both ends: 2h/(v1 + v2), exact for even acceleration, less the first
     * correction for its change, which makes it fourth-order accurate.
     */
    static double duration(double h, double e0, double e1, double slope0, double slope1) {
        double mean = 0.5 * (Math.sqrt(2 * e0) + Math.sqrt(2 * Math.max(e1, 0)));
        if (!(mean > 0)) {
            return h > 0 ? Double.POSITIVE_INFINITY : 0;
        }
        double bulge = h * (slope0 - slope1) / 8;
        return h / mean * (1 - 2.0 / 3 * bulge / (mean * mean));
    }
}
