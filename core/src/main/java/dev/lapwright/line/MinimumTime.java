package dev.lapwright.line;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LinearLap;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.numerics.BandedQpSolver;
import dev.lapwright.track.Track;

/**
 * Minimum-time line by sequential quadratic programming in the offsets n and the kinetic energies e = ½ v² of the nodes.
 * Each step minimises the lap time, expanded to second order in the energies, under the lap's own limits linearised about the
 * lap just solved, so that it knows which stations hold the car up and which come next. The energies are then dropped: the
 * true lap time of the offsets found decides whether the step is taken, and whether the next may go farther (as the radius of
 * a trust region does; A. R. Conn, N. I. M. Gould and P. L. Toint, <i>Trust-Region Methods</i>, 2000, chapter 6; cited from
 * memory). A step that gives less than a quarter of its promise is halved before it is given up: beyond what was linearised other stations
 * hold the car up. So a line never takes more time than the one it began with.
 *
 * <p>The length of a step is penalised by the change of curvature and of its derivative, ½ p Σ ((δκ)² + L² (δκ′)²) h, with
 * the penalty p: a norm of the offsets alone would allow moves of a centimetre up and down from node to node, a line nobody
 * can drive.
 */
final class MinimumTime {
    private static final int MOST_STEPS = 100;
    /** Farthest move of a node in one step, m. */
    private static final double REACH = 4;
    /** A step that gains less than this is small, s; after a few of them the search ends. */
    private static final double SMALL_GAIN = 2e-4;

    private static final int SMALL_STEPS = 4;
    /** The same where the line is wanted to some milliseconds only. */
    private static final double ROUGHLY_SMALL_GAIN = 1e-3;

    private static final int ROUGHLY_SMALL_STEPS = 2;
    private static final double FIRST_PRICE = 300;
    private static final double HIGHEST_PRICE = 1e9;
    /** What a step that fell short of its promise, or kept it, does to the price of the next. */
    private static final double DEARER = 2.5;

    private static final double CHEAPER = 8;
    /** Share of its promise below which a step has failed, and above which it was kept. */
    private static final double FAILED = 0.25;

    private static final double KEPT = 0.6;
    /** So often a step that failed is halved: a lap is driven in a sixth of the time that another programme takes. */
    private static final int HALVINGS = 3;
    /** Length L over which changes of curvature are smoothed, m. */
    private static final double SMOOTHING = 10;

    /** Energies are not followed farther than this from where the limits were linearised, relative. */
    private static final double ENERGY_REACH = 0.3;

    /** Variables of a window: offsets and energies of a cell's ends and the offsets beside them. */
    private static final int WINDOW = 7;
    /** How well the quadratic programme is solved, s. */
    private static final double ACCURACY = 1e-5;

    private final RoadNodes road;
    private final Vehicle vehicle;
    private final LineSearch.Progress progress;
    private final boolean rough;
    private final int n;

    MinimumTime(RoadNodes road, Vehicle vehicle, LineSearch.Progress progress, boolean rough) {
        this.rough = rough;
        this.road = road;
        this.vehicle = vehicle;
        this.progress = progress;
        n = road.count;
    }

    /** Offsets of a line that takes less time than the one at these offsets, or as much. */
    double[] from(double[] start) {
        double[] best = start.clone();
        LinearLap lap = solver(best).linearised(vehicle);
        LineCurvature shape = new LineCurvature(road);
        double price = FIRST_PRICE;
        double first = lap.time();
        double smallGain = rough ? ROUGHLY_SMALL_GAIN : SMALL_GAIN;
        int smallSteps = rough ? ROUGHLY_SMALL_STEPS : SMALL_STEPS;
        int small = 0;
        for (int step = 1; step <= MOST_STEPS && small < smallSteps && price < HIGHEST_PRICE; step++) {
            shape.at(best);
            BandedQpSolver qp = qp(best, shape, lap, price);
            double[] move = qp.minimise();
            double expected = -qp.value(move);
            double[] tried = moved(best, move, 1);
            double gain = lap.time() - time(tried);
            boolean failed = !(gain > FAILED * expected);
            boolean kept = gain > KEPT * expected;
            double share = 1;
            for (int halving = 0; halving < HALVINGS && (halving == 0 ? failed : !(gain > 0)); halving++) {
                share /= 2;
                double[] shorter = moved(best, move, share);
                double less = lap.time() - time(shorter);
                if (less > gain) {
                    gain = less;
                    tried = shorter;
                }
            }
            if (gain > 0) {
                best = tried;
                lap = solver(best).linearised(vehicle);
            }
            small = Math.max(gain, 0.1 * expected) < smallGain ? small + 1 : 0;
            if (kept) {
                price /= CHEAPER;
            } else if (failed) {
                price *= DEARER;
            }
            progress.report(step, lap.time() - first);
        }
        return best;
    }

    private double[] moved(double[] offsets, double[] move, double share) {
        double[] moved = new double[n];
        for (int i = 0; i < n; i++) {
            moved[i] = road.within(i, offsets[i] + share * move[2 * i]);
        }
        return moved;
    }

    private BandedQpSolver qp(double[] offsets, LineCurvature shape, LinearLap lap, double price) {
        BandedQpSolver qp = new BandedQpSolver(2 * n, WINDOW, ACCURACY);
        for (int i = 0; i < n; i++) {
            qp.within(2 * i, Math.max(road.lower[i] - offsets[i], -REACH), Math.min(road.upper[i] - offsets[i], REACH));
            // An open run is entered at the speed it is given.
            qp.within(2 * i + 1, -ENERGY_REACH, i == 0 && !road.closed ? 0 : ENERGY_REACH);
            qp.square(2 * (i - 1), price * shape.share(i), shape.byBefore[i], 0, shape.byOwn[i], 0, shape.byAfter[i]);
            double slack = lap.limitSlack(i);
            if (slack < 2 * ENERGY_REACH) {
                double k = -lap.limitPerCurvature(i);
                qp.row(2 * (i - 1), slack, k * shape.byBefore[i], 0, k * shape.byOwn[i], 1, k * shape.byAfter[i]);
            }
        }
        for (int i = 0; i < lap.cells(); i++) {
            smoothness(qp, shape, price, i);
            time(qp, shape, lap.cellTime(i), i);
            row(qp, shape, lap.grip(), i);
            row(qp, shape, lap.drive(), i);
        }
        return qp;
    }

    private void smoothness(BandedQpSolver qp, LineCurvature shape, double price, int i) {
        int q = (i + 1) % n;
        qp.square(
                2 * (i - 1),
                price * SMOOTHING * SMOOTHING / shape.chord[i],
                -shape.byBefore[i],
                0,
                shape.byBefore[q] - shape.byOwn[i],
                0,
                shape.byOwn[q] - shape.byAfter[i],
                0,
                shape.byAfter[q]);
    }

    /** A cell's time goes with its length, and with the energies at its ends to the power of -1/2. */
    private void time(BandedQpSolver qp, LineCurvature shape, double time, int i) {
        int q = (i + 1) % n;
        qp.linear(2 * i + 1, -0.25 * time);
        qp.linear(2 * q + 1, -0.25 * time);
        qp.square(2 * i + 1, 0.375 * time);
        qp.square(2 * q + 1, 0.375 * time);
        double perLength = time / shape.chord[i];
        qp.linear(2 * i, perLength * shape.chordByStart[i]);
        qp.linear(2 * q, perLength * shape.chordByEnd[i]);
    }

    private void row(BandedQpSolver qp, LineCurvature shape, LinearLap.Rows rows, int i) {
        int q = (i + 1) % n;
        double k0 = rows.perCurvatureStart(i);
        double k1 = rows.perCurvatureEnd(i);
        double h = rows.perLength(i);
        qp.row(
                2 * (i - 1),
                rows.slack(i),
                k0 * shape.byBefore[i],
                0,
                k0 * shape.byOwn[i] + k1 * shape.byBefore[q] + h * shape.chordByStart[i],
                rows.perStart(i),
                k0 * shape.byAfter[i] + k1 * shape.byOwn[q] + h * shape.chordByEnd[i],
                rows.perEnd(i),
                k1 * shape.byAfter[q]);
    }

    private LapSolver solver(double[] offsets) {
        Track path = new DrivenPath(road, offsets).track(road.track.name());
        return new LapSolver(path.stationsAtPoints());
    }

    private double time(double[] offsets) {
        try {
            return solver(offsets).lapTime(vehicle);
        } catch (NoLapException | InvalidValueException noLap) {
            return Double.POSITIVE_INFINITY;
        }
    }
}
