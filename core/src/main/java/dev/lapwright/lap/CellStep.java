package dev.lapwright.lap;

/**
 * Carries the energy e = v²/2 across one cell by de/ds = a(s, e), with Kutta's third-order rule, forward under drive or
 * backward under braking. Where e meets a break speed of the propulsion the step is split there: its first part is the step
 * of the very length that ends on the break, so that the result changes without a jump as a break moves into a cell. Scratch
 * of one solver.
 */
final class CellStep {
    private static final int MAX_SPLITS = 60;
    /** Slope below which 1/a is no basis for a step, m/s². */
    private static final double LEAST_SLOPE = 1e-6;

    /** On the place of a break, m. */
    private static final double PLACE_TOLERANCE = 1e-6;

    private final Vehicle car;
    private final Acceleration acceleration;
    private final double[] place = new double[Road.STRIDE];

    /** Time for the cell, s. */
    double time;
    /** Slope de/ds where the step began and ended, m/s². */
    double startSlope;

    double endSlope;

    private double bandTime;

    private double[] rows;
    private int cell;
    private boolean braking;

    CellStep(Vehicle car, Acceleration acceleration) {
        this.car = car;
        this.acceleration = acceleration;
    }

    /** Energy at the end of the cell, entered with {@code energy}, driving as hard as possible. */
    double forward(Road road, int index, double energy) {
        rows = road.rows;
        cell = index;
        braking = false;
        return across(road.length[index], energy, 1);
    }

    /** Energy at the start of the cell from which the hardest braking leads to {@code energy} at its end. */
    double backward(Road road, int index, double energy) {
        rows = road.rows;
        cell = index;
        braking = true;
        return across(road.length[index], energy, -1);
    }

    private double across(double length, double energy, int sign) {
        Propulsion p = car.propulsion;
        time = 0;
        if (length == 0) {
            startSlope = 0;
            endSlope = 0;
            return energy;
        }
        double e = energy;
        // Fraction of the cell already behind, measured from where the step began.
        double done = 0;
        int piece = p.pieceAt(e);
        boolean first = true;
        for (int split = 0; split < MAX_SPLITS; split++) {
            double h = length * (1 - done);
            double k1 = slope(done, sign, e, piece);
            if (!braking && k1 < 0 && piece > 0 && e == p.breakEnergy[piece]) {
                double below = slope(done, sign, e, piece - 1);
                if (below >= 0) {
                    // The gear above cannot hold this speed, the gear below has no revs left: it stays on the limiter.
                    if (first) {
                        startSlope = 0;
                    }
                    endSlope = 0;
                    time += h / Math.sqrt(2 * e);
                    return e;
                }
                piece--;
                k1 = below;
            }
            if (first) {
                startSlope = k1;
                first = false;
            }
            int above = upperPiece(piece);
            if (!braking && k1 > LEAST_SLOPE && p.bandDensity[piece] > 0) {
                double part = bandDistance(p.breakEnergy[above], done, length, e, k1, piece);
                if (part < h) {
                    time += bandTime;
                    done += part / length;
                    e = p.breakEnergy[above];
                    piece = above;
                    continue;
                }
                if (part < Double.POSITIVE_INFINITY) {
                    return withinBand(p.breakEnergy[above], part, done, h, length, e, k1, piece);
                }
            }
            double end = step(done, sign, h, length, e, k1, piece);
            double target;
            int nextPiece;
            if (above <= p.pieces && end > p.breakEnergy[above]) {
                target = p.breakEnergy[above];
                nextPiece = above;
            } else if (piece > 0 && end < p.breakEnergy[piece]) {
                target = p.breakEnergy[piece];
                nextPiece = piece - 1;
            } else {
                time += duration(h, e, end, sign * k1, sign * endSlope);
                return end;
            }
            double part = lengthTo(target, end, done, sign, h, length, e, k1, piece);
            time += duration(part, e, target, sign * k1, sign * endSlope);
            done += part / length;
            e = target;
            if (!braking && nextPiece == p.pieces) {
                endSlope = 0;
                time += (h - part) / Math.sqrt(2 * e);
                return e;
            }
            piece = nextPiece;
        }
        return e;
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
     * Distance from e to {@code target} within a shift's band. There 1/a is the smooth one, a sum of a slowly varying part
     * and the shift's parabola, so that Kutta's rule is applied to ds/de. Leaves the time in {@link #bandTime}.
     */
    private double bandDistance(double target, double done, double length, double e, double k1, int piece) {
        double rise = target - e;
        double k2 = slope(done + 0.5 * rise / (k1 * length), 1, e + 0.5 * rise, piece);
        if (!(k2 > LEAST_SLOPE)) {
            return Double.POSITIVE_INFINITY;
        }
        double k3 = slope(done + rise * (2 / k2 - 1 / k1) / length, 1, target, piece);
        if (!(k3 > LEAST_SLOPE)) {
            return Double.POSITIVE_INFINITY;
        }
        endSlope = k3;
        bandTime = rise / 6 * (1 / (k1 * speed(e)) + 4 / (k2 * speed(e + 0.5 * rise)) + 1 / (k3 * speed(target)));
        return rise / 6 * (1 / k1 + 4 / k2 + 1 / k3);
    }

    /** Energy where the distance h ends, which lies before {@code target} at the distance {@code whole}. */
    private double withinBand(
            double target, double whole, double done, double h, double length, double e, double k1, int piece) {
        double low = e;
        double high = target;
        double end = e + (target - e) * h / whole;
        for (int i = 0; i < MAX_SPLITS; i++) {
            double miss = h - bandDistance(end, done, length, e, k1, piece);
            if (Math.abs(miss) < PLACE_TOLERANCE) {
                break;
            }
            if (miss > 0) {
                low = end;
            } else {
                high = end;
            }
            double moved = end + miss * endSlope;
            end = moved > low && moved < high ? moved : 0.5 * (low + high);
        }
        time += bandTime;
        return end;
    }

    private static double speed(double energy) {
        return Math.sqrt(2 * energy);
    }

    /** Kutta's third-order rule over the distance h; leaves the slope at its far end in {@link #endSlope}. */
    private double step(double done, int sign, double h, double length, double e, double k1, int piece) {
        double signed = sign * h;
        double k2 = slope(done + 0.5 * h / length, sign, e + 0.5 * signed * k1, piece);
        double k3 = slope(done + h / length, sign, e + signed * (2 * k2 - k1), piece);
        endSlope = k3;
        return e + signed / 6 * (k1 + 4 * k2 + k3);
    }

    /** Length of the step that ends at {@code target}, less than h as the whole step goes beyond it. */
    private double lengthTo(
            double target, double end, double done, int sign, double h, double length, double e, double k1, int piece) {
        if (target == e) {
            return 0;
        }
        double share = (target - e) / (end - e);
        // The slope changes from k1 to that at the end: start from the parabola through both ends.
        double bend = (sign * h * k1 - (end - e)) / (end - e);
        double part = h * share / (1 + bend * (1 - share));
        double low = 0;
        double high = h;
        for (int i = 0; i < MAX_SPLITS; i++) {
            if (!(part > low && part < high)) {
                part = 0.5 * (low + high);
            }
            double over = (step(done, sign, part, length, e, k1, piece) - target) * Math.signum(target - e);
            double move = over / Math.abs(endSlope);
            if (Math.abs(move) < PLACE_TOLERANCE || high - low < PLACE_TOLERANCE) {
                return part;
            }
            if (over > 0) {
                high = part;
            } else {
                low = part;
            }
            part -= move;
        }
        return part;
    }

    /** de/ds at a fraction of the cell counted from where the step began. */
    private double slope(double fraction, int sign, double e, int piece) {
        double energy = Math.max(e, 0);
        double f = sign > 0 ? fraction : 1 - fraction;
        int base = 2 * cell * Road.STRIDE;
        int row;
        double[] from = rows;
        if (f <= 0) {
            row = base;
        } else if (f >= 1) {
            row = base + 2 * Road.STRIDE;
        } else if (f == 0.5) {
            row = base + Road.STRIDE;
        } else {
            for (int j = 0; j < Road.RULE; j++) {
                double a = rows[base + j];
                place[j] = a + f * (rows[base + 2 * Road.STRIDE + j] - a);
            }
            from = place;
            row = 0;
        }
        return braking ? acceleration.brake(from, row, energy, piece) : acceleration.drive(from, row, energy, piece);
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
