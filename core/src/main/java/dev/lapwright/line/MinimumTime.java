package dev.lapwright.line;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LinearLap;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;

/**
 * From a line to one that takes less time. Offsets and energies move together: each step minimises the time, of second order
 * in the energies, under the lap's own limits, linearised about the lap just solved, so that it knows which stations hold
 * the car up and which come next (sequential quadratic programming). The energies are then forgotten: the true
 * lap time of the offsets found decides whether the step is taken, and whether the next may go farther (as the radius of a
 * trust region does; A. R. Conn, N. I. M. Gould and P. L. Toint, <i>Trust-Region Methods</i>, 2000, chapter 6; cited from
 * memory). So a line never takes more time than the one it began with.
 *
 * <p>How far a step goes is priced by the change of curvature and of its course, ½ price Σ ((δκ)² + L² (δκ′)²) h: offsets alone
 * say nothing, since a centimetre up and down from node to node is a line nobody can drive.
 */
final class MinimumTime {
    private static final int MOST_STEPS = 100;
    /** Farthest move of a node in one step, m. */
    private static final double REACH = 4;
    /** A step that gains less than this is small, s; after a few of them the search ends. */
    private static final double SMALL_GAIN = 2e-4;

    private static final int SMALL_STEPS = 4;
    private static final double FIRST_PRICE = 1000;
    private static final double HIGHEST_PRICE = 1e9;
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
    private final LineProgress progress;
    private final int n;

    MinimumTime(RoadNodes road, Vehicle vehicle, LineProgress progress) {
        this.road = road;
        this.vehicle = vehicle;
        this.progress = progress;
        n = road.count;
    }

    /** Offsets of a line that takes less time than the one at these offsets, or as much. */
    double[] from(double[] start) {
        double[] best = start.clone();
        LinearLap lap = solver(best).linearised(vehicle);
        Bending bending = new Bending(road);
        double price = FIRST_PRICE;
        double first = lap.time();
        int small = 0;
        for (int step = 1; step <= MOST_STEPS && small < SMALL_STEPS && price < HIGHEST_PRICE; step++) {
            bending.at(best);
            BandedProgramme programme = programme(best, bending, lap, price);
            double[] move = programme.minimise();
            double expected = -programme.value(move);
            double[] tried = moved(best, move);
            double gain = lap.time() - time(tried);
            if (gain > 0) {
                best = tried;
                lap = solver(best).linearised(vehicle);
            }
            small = Math.max(gain, 0.1 * expected) < SMALL_GAIN ? small + 1 : 0;
            if (gain > 0.6 * expected) {
                price /= 3;
            } else if (!(gain > 0.25 * expected)) {
                price *= 4;
            }
            progress.report(step, first - lap.time());
        }
        return best;
    }

    private double[] moved(double[] offsets, double[] move) {
        double[] moved = new double[n];
        for (int i = 0; i < n; i++) {
            moved[i] = road.within(i, offsets[i] + move[2 * i]);
        }
        return moved;
    }

    private BandedProgramme programme(double[] offsets, Bending bending, LinearLap lap, double price) {
        BandedProgramme programme = new BandedProgramme(2 * n, WINDOW, ACCURACY);
        for (int i = 0; i < n; i++) {
            programme.within(
                    2 * i, Math.max(road.lower[i] - offsets[i], -REACH), Math.min(road.upper[i] - offsets[i], REACH));
            // An open run is entered at the speed it is given.
            programme.within(2 * i + 1, -ENERGY_REACH, i == 0 && !road.closed ? 0 : ENERGY_REACH);
            programme.square(
                    2 * (i - 1),
                    price * bending.share(i),
                    bending.byBefore[i],
                    0,
                    bending.byOwn[i],
                    0,
                    bending.byAfter[i]);
            double slack = lap.limitSlack(i);
            if (slack < 2 * ENERGY_REACH) {
                double k = -lap.limitPerCurvature(i);
                programme.row(
                        2 * (i - 1),
                        slack,
                        k * bending.byBefore[i],
                        0,
                        k * bending.byOwn[i],
                        1,
                        k * bending.byAfter[i]);
            }
        }
        for (int i = 0; i < lap.cells(); i++) {
            smoothness(programme, bending, price, i);
            time(programme, bending, lap.cellTime(i), i);
            row(programme, bending, lap.grip(), i);
            row(programme, bending, lap.drive(), i);
        }
        return programme;
    }

    private void smoothness(BandedProgramme programme, Bending bending, double price, int i) {
        int q = (i + 1) % n;
        programme.square(
                2 * (i - 1),
                price * SMOOTHING * SMOOTHING / bending.chord[i],
                -bending.byBefore[i],
                0,
                bending.byBefore[q] - bending.byOwn[i],
                0,
                bending.byOwn[q] - bending.byAfter[i],
                0,
                bending.byAfter[q]);
    }

    /** A cell's time goes with its length, and with the energies at its ends to the power of -1/2. */
    private void time(BandedProgramme programme, Bending bending, double time, int i) {
        int q = (i + 1) % n;
        programme.linear(2 * i + 1, -0.25 * time);
        programme.linear(2 * q + 1, -0.25 * time);
        programme.square(2 * i + 1, 0.375 * time);
        programme.square(2 * q + 1, 0.375 * time);
        double perLength = time / bending.chord[i];
        programme.linear(2 * i, perLength * bending.chordByStart[i]);
        programme.linear(2 * q, perLength * bending.chordByEnd[i]);
    }

    private void row(BandedProgramme programme, Bending bending, LinearLap.Rows rows, int i) {
        int q = (i + 1) % n;
        double k0 = rows.perCurvatureStart(i);
        double k1 = rows.perCurvatureEnd(i);
        double h = rows.perLength(i);
        programme.row(
                2 * (i - 1),
                rows.slack(i),
                k0 * bending.byBefore[i],
                0,
                k0 * bending.byOwn[i] + k1 * bending.byBefore[q] + h * bending.chordByStart[i],
                rows.perStart(i),
                k0 * bending.byAfter[i] + k1 * bending.byOwn[q] + h * bending.chordByEnd[i],
                rows.perEnd(i),
                k1 * bending.byAfter[q]);
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
