package dev.lapwright.lap;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.NoLapException;
import java.util.Arrays;
import java.util.BitSet;

/**
 * Forward and backward integration of a lap (section 8 of docs/theory.md): limits at every station, once round forward under drive, back from every place
 * where the limit stops the car, and the lower envelope. A workspace owned by one thread; solving allocates nothing per
 * station.
 */
final class Kernel {
    private static final int MAX_ROUNDS = 200;
    private static final double ROUND_TOLERANCE = 1e-12;
    /** Bends as sharp as this share of the sharpest may be the slowest. */
    private static final double SHARP = 0.5;

    /** Share of a limit's energy from which on a car is on it: searches end within 1e-10 of it or so. */
    private static final double ON_LIMIT = 1 - 1e-9;

    /** How a cell is driven. */
    static final byte DRIVING = 0;

    static final byte BRAKING = 1;
    /** Drive, then brakes. */
    static final byte TURNING = 2;

    final Road road;
    /** Limits v²/2 at stations, NaN where the car is slower and none was asked for: see {@link #limit}. */
    private final double[] limit;

    private final double[] below;

    final Course course;
    final double[] energy;
    final double[] time;
    final byte[] mode;
    /** Energy at which the drive would end a cell were there no limit, by the last way forward. */
    final double[] freeEnd;

    private final double[] startSlope;
    private final double[] endSlope;
    /** Share of a cell that lies before the place where drive meets braking. */
    final double[] turn;
    /** Highest energy inside a cell where drive meets braking. */
    final double[] peak;
    /** Lowest and highest gear (from 0) used in each cell. */
    private final byte[] lowestGear;

    private final byte[] highestGear;
    private final HeldGears heldGears;

    /** Highest v²/2 between stations, where drive meets braking. */
    double peakEnergy;

    /** Whether a fuller model is asked, and cells that it did not know all of. */
    final StationLimits.Maker fuller;

    private final boolean[] unchecked;

    /** Cell at whose start the car has left its limit and has not plainly had the greatest drive since, -1 for none. */
    private int leaving;

    private Vehicle car;
    private CornerLimit cornerLimit;
    private IntervalIntegrator step;

    Kernel(Road road, StationLimits.Maker fuller) {
        this.road = road;
        this.fuller = fuller;
        unchecked = new boolean[road.cells + 1];
        limit = new double[road.cells + 1];
        below = new double[road.cells + 1];
        course = new Course(road.cells);
        energy = course.energy;
        time = course.time;
        mode = course.mode;
        freeEnd = course.freeEnd;
        startSlope = course.startSlope;
        endSlope = course.endSlope;
        peak = course.peak;
        turn = course.turn;
        lowestGear = course.lowestGear;
        highestGear = course.highestGear;
        heldGears = new HeldGears(this, road);
    }

    /** What a way of driving is, cell by cell; energies at stations. */
    static final class Course {
        final double[] energy;
        final double[] time;
        final byte[] mode;
        final double[] freeEnd;
        final double[] startSlope;
        final double[] endSlope;
        final double[] peak;
        final double[] turn;
        final byte[] lowestGear;
        final byte[] highestGear;

        Course(int n) {
            energy = new double[n + 1];
            time = new double[n];
            mode = new byte[n];
            freeEnd = new double[n];
            startSlope = new double[n];
            endSlope = new double[n];
            peak = new double[n];
            turn = new double[n];
            lowestGear = new byte[n];
            highestGear = new byte[n];
        }

        /** Takes over a cell, and the energy where it begins, from another. */
        void take(Course other, int i) {
            energy[i] = other.energy[i];
            time[i] = other.time[i];
            mode[i] = other.mode[i];
            freeEnd[i] = other.freeEnd[i];
            startSlope[i] = other.startSlope[i];
            endSlope[i] = other.endSlope[i];
            peak[i] = other.peak[i];
            turn[i] = other.turn[i];
            lowestGear[i] = other.lowestGear[i];
            highestGear[i] = other.highestGear[i];
        }
    }

    /** Solves; the answer stands in {@link #energy}, {@link #time} and {@link #mode}. Returns the lap time, s. */
    double solve(Vehicle vehicle) {
        car = vehicle;
        WheelForces wheels = new WheelForces(vehicle);
        if (fuller == null) {
            cornerLimit = new CornerLimit(vehicle, wheels);
            step = IntervalIntegrator.toDriveBy(vehicle, AccelerationLimits.toDriveBy(vehicle, wheels));
        } else {
            FourWheels four = new FourWheels(vehicle);
            StationLimits model = fuller.on(four);
            cornerLimit = new CornerLimit(vehicle, wheels, model, four);
            step = IntervalIntegrator.toDriveBy(vehicle, AccelerationLimits.of(vehicle, wheels, model, four));
            Arrays.fill(unchecked, false);
        }
        cornerLimit.begin(road, limit, below);
        leaving = -1;
        Arrays.fill(energy, Double.NaN);
        Arrays.fill(lowestGear, (byte) (road.closed ? vehicle.propulsion.lowestGear : 0));
        Arrays.fill(highestGear, (byte) (vehicle.propulsion.massFactor.length - 1));
        if (road.closed) {
            solveClosed();
        } else {
            solveOpen();
        }
        heldGears.choose(vehicle);
        double sum = 0;
        peakEnergy = 0;
        for (int i = 0; i < road.cells; i++) {
            sum += time[i];
            if (mode[i] == TURNING) {
                peakEnergy = Math.max(peakEnergy, peak[i]);
            }
        }
        return sum;
    }

    private void solveOpen() {
        double entry = road.stations.track().entrySpeed();
        energy[0] = 0.5 * entry * entry;
        if (energy[0] > limit(0)) {
            throw new NoLapException(
                    "entry speed",
                    Check.text(3.6 * entry) + " km/h is more than the car can hold at the start",
                    "enter at " + Check.text(Math.floor(36 * Math.sqrt(2 * limit[0])) / 10) + " km/h or less");
        }
        double wanted = energy[0];
        boolean rolling = false;
        for (int i = 0; i < road.cells; i++) {
            rolling = rolling || gear(i, energy[i]) >= car.propulsion.lowestGear;
            // A start may be from rest, in any gear; what follows is driven as a lap is.
            lowestGear[i] = (byte) (rolling ? car.propulsion.lowestGear : 0);
            forward(i);
        }
        boolean braking = false;
        for (int i = road.cells - 1; i >= 0; i--) {
            braking = backward(i, braking);
        }
        if (energy[0] < wanted * (1 - 1e-9)) {
            throw new NoLapException(
                    "entry speed",
                    Check.text(3.6 * entry) + " km/h is too fast: the car cannot slow in time for what follows",
                    "enter at " + Check.text(Math.floor(36 * Math.sqrt(2 * energy[0])) / 10) + " km/h or less");
        }
    }

    private void solveClosed() {
        int n = road.cells;
        int slowest = slowestBend();
        double start = limit[slowest];
        for (int round = 0; ; round++) {
            if (round == MAX_ROUNDS) {
                throw new NoLapException(
                        "lap",
                        "no steady lap was found in " + MAX_ROUNDS + " rounds",
                        "check the car's power and drag; perhaps it is still gaining speed lap after lap");
            }
            energy[slowest] = start;
            if (slowest == 0) {
                energy[n] = start;
            }
            for (int c = 0; c < n; c++) {
                forward((slowest + c) % n);
            }
            double arrived = Math.min(energy[slowest], start);
            energy[slowest] = arrived;
            boolean braking = false;
            for (int c = n - 1; c >= 0; c--) {
                braking = backward((slowest + c) % n, braking);
            }
            double settled = energy[slowest];
            if (Math.abs(settled - start) <= ROUND_TOLERANCE * start) {
                return;
            }
            start = settled;
        }
    }

    /** Where a lap is begun: the lowest limit among the sharper bends. Where another is lower it takes one round more. */
    private int slowestBend() {
        double sharpest = 0;
        for (int i = 0; i < road.cells; i++) {
            sharpest = Math.max(sharpest, bend(i));
        }
        int slowest = -1;
        for (int i = 0; i < road.cells; i++) {
            if (bend(i) >= SHARP * sharpest && (slowest < 0 || limit(i) < limit(slowest))) {
                slowest = i;
            }
        }
        // The last station is the first.
        limit(0);
        limit[road.cells] = limit[0];
        return slowest;
    }

    private double bend(int station) {
        return Math.abs(road.rows[2 * station * Road.STRIDE + Road.LATERAL_CURVATURE]);
    }

    /** Highest v²/2 at which the car can hold a station. */
    double limit(int station) {
        return cornerLimit.find(station);
    }

    /** Whether the car is as fast at a station as it can hold it. */
    boolean onLimit(int station) {
        return energy[station] >= limit[station] * ON_LIMIT;
    }

    /** Stations that a fuller model did not know all of. */
    BitSet unchecked() {
        BitSet stations = (BitSet) cornerLimit.unknown.clone();
        for (int i = 0; i < road.cells; i++) {
            if (unchecked[i]) {
                stations.set(i);
            }
        }
        return stations;
    }

    /** Gear (from 0) that a cell is driven in at an energy. */
    int gear(int cell, double atEnergy) {
        Propulsion p = car.propulsion;
        return p.gear(p.pieceAt(atEnergy), lowestGear[cell], highestGear[cell]);
    }

    /** The piece itself if it carries part of a shift in a cell, -1 if not. */
    int shift(int cell, int piece) {
        Propulsion p = car.propulsion;
        return p.shifting(piece, lowestGear[cell], highestGear[cell]) ? piece : -1;
    }

    /** Whether the car is slowed in a cell, by its brakes or to keep to a falling limit. */
    boolean slowing(int i) {
        return mode[i] == BRAKING || (energy[i + 1] < energy[i] && energy[i + 1] == limit[i + 1]);
    }

    /** Lowest gear (from 0) used in a cell. */
    int lowest(int cell) {
        return lowestGear[cell];
    }

    /** Highest gear (from 0) used in a cell. */
    int highest(int cell) {
        return highestGear[cell];
    }

    /** Sets the gears (from 0) used in a cell. */
    void gears(int cell, int lowest, int highest) {
        lowestGear[cell] = (byte) lowest;
        highestGear[cell] = (byte) highest;
    }

    /** Makes a cell, and the energy where it begins, what it was in another way of driving. */
    void putBack(Course other, int cell) {
        course.take(other, cell);
        store(cell, energy[cell]);
    }

    /** Drives over a cell from the energy at its start. */
    void forward(int i) {
        double entered = energy[i];
        if (onLimit(i)
                && cornerLimit.isAtMost(i + 1, entered)
                && step.holds(road, i, entered, lowestGear[i], highestGear[i])) {
            // From a limit that does not rise a car that holds its speed leads to the next: there is nothing to
            // integrate.
            startSlope[i] = Double.NaN;
            freeEnd[i] = entered;
            mode[i] = DRIVING;
            time[i] = IntervalIntegrator.duration(road.length[i], entered, limit[i + 1], 0, 0);
            store(i + 1, limit[i + 1]);
            return;
        }
        double end = driveFreely(i, entered);
        if (!(end > 1e-9)) {
            throw cornerLimit.stopped(road, i, entered);
        }
        mode[i] = DRIVING;
        time[i] = step.time;
        double capped = cornerLimit.isAtMost(i + 1, end) ? limit[i + 1] : end;
        if (capped < end) {
            time[i] = IntervalIntegrator.duration(road.length[i], entered, capped, 0, 0);
        }
        store(i + 1, capped);
    }

    /** Drives over a cell as if nothing came after; returns the energy at its end. */
    private double driveFreely(int i, double entered) {
        step.use(lowestGear[i], highestGear[i]);
        boolean left = leaving == i || onLimit(i);
        freeEnd[i] = step.forwardGreatest(road, i, entered, left);
        leaving = left && !step.plainly ? (i + 1) % road.cells : -1;
        unchecked[i] = step.unknown();
        startSlope[i] = step.startSlope;
        endSlope[i] = step.endSlope;
        return freeEnd[i];
    }

    /** Change of a station's limit with the curvature there; zero where something else sets the limit. */
    double limitSlope(int station, double change) {
        return cornerLimit.slope(road, station, limit(station), change);
    }

    /** Goes back over a cell; returns whether the car is braking where it begins. */
    boolean backward(int i, boolean braking) {
        double after = energy[i + 1];
        if (!braking && !(freeEnd[i] > after)) {
            return false;
        }
        step.use(lowestGear[i], highestGear[i]);
        boolean onLimit = onLimit(i) && onLimit(i + 1);
        double before = onLimit ? step.backward(road, i, after) : Double.NaN;
        if (!(onLimit && before >= energy[i])) {
            before = step.backwardHardest(road, i, after, braking);
        }
        boolean unknown = step.unknown();
        if (before < energy[i]) {
            unchecked[i] = unknown;
            mode[i] = BRAKING;
            time[i] = step.time;
            store(i, before);
            return true;
        }
        if (onLimit) {
            // Both ends lie on the limit and the car could do more: it follows the limit.
            time[i] = IntervalIntegrator.duration(road.length[i], energy[i], after, 0, 0);
        } else if (road.length[i] > 0) {
            crossing(i, before, after);
        }
        return false;
    }

    /** Drive meets braking inside the cell: the time over both parts, energies taken as Hermite cubics. */
    private void crossing(int i, double before, double after) {
        double h = road.length[i];
        double up = energy[i];
        // Backward steps run from the cell's end, so their first slope is the one there.
        double downSlope = step.endSlope * h;
        double downEndSlope = step.startSlope * h;
        if (Double.isNaN(startSlope[i])) {
            driveFreely(i, up);
        }
        double upEnd = freeEnd[i];
        double upSlope = startSlope[i] * h;
        double upEndSlope = endSlope[i] * h;
        double gap0 = before - up;
        double gap1 = after - upEnd;
        double x = gap0 - gap1 > 0 ? gap0 / (gap0 - gap1) : 1;
        double low = 0;
        double high = 1;
        for (int k = 0; k < 30; k++) {
            double gap =
                    hermite(before, after, downSlope, downEndSlope, x) - hermite(up, upEnd, upSlope, upEndSlope, x);
            if (gap > 0) {
                low = x;
            } else {
                high = x;
            }
            double rate = hermiteSlope(before, after, downSlope, downEndSlope, x)
                    - hermiteSlope(up, upEnd, upSlope, upEndSlope, x);
            double next = x - gap / rate;
            if (!(next > low && next < high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - x) < 1e-13) {
                break;
            }
            x = next;
        }
        mode[i] = TURNING;
        if (step.shifting(up, upEnd) && crossingWithShift(i, up, after, x)) {
            return;
        }
        double peak = hermite(up, upEnd, upSlope, upEndSlope, x);
        double from = x;
        double to = x;
        if (peak > bound(i, x)) {
            // The limit lies below the peak: drive up to it, follow it, brake from it.
            from = meeting(i, up, upEnd, upSlope, upEndSlope, 0, x);
            to = meeting(i, before, after, downSlope, downEndSlope, 1, x);
        }
        this.peak[i] = Math.min(peak, bound(i, x));
        turn[i] = x;
        double high1 = from < to ? Math.max(bound(i, from), up) : peak;
        double high2 = from < to ? Math.max(bound(i, to), after) : peak;
        double slopeUp = hermiteSlope(up, upEnd, upSlope, upEndSlope, from) / h;
        double slopeDown = hermiteSlope(before, after, downSlope, downEndSlope, to) / h;
        time[i] = IntervalIntegrator.duration(from * h, up, high1, startSlope[i], slopeUp)
                + IntervalIntegrator.duration((to - from) * h, high1, high2, 0, 0)
                + IntervalIntegrator.duration((1 - to) * h, high2, after, slopeDown, downEndSlope / h);
    }

    /** The crossing by steps over parts of the cell; false, and nothing done, if it lies above the limit. */
    private boolean crossingWithShift(int i, double up, double after, double guess) {
        double low = 0;
        double high = 1;
        double x = guess;
        double peak = up;
        double spent = 0;
        for (int k = 0; k < 40; k++) {
            peak = step.forward(road, i, up, x);
            spent = step.time;
            double rise = step.endSlope;
            double gap = step.backward(road, i, after, 1 - x) - peak;
            spent += step.time;
            if (gap > 0) {
                low = x;
            } else {
                high = x;
            }
            double move = gap / ((rise - step.endSlope) * road.length[i]);
            if (Math.abs(move) < 1e-9 || high - low < 1e-9) {
                break;
            }
            double next = x + move;
            x = next > low && next < high ? next : 0.5 * (low + high);
        }
        if (peak > bound(i, x)) {
            return false;
        }
        time[i] = spent;
        this.peak[i] = peak;
        turn[i] = x;
        return true;
    }

    /** The limit inside a cell, by linear variation. */
    private double bound(int i, double x) {
        return limit(i) + x * (limit(i + 1) - limit(i));
    }

    /** Where a cubic meets the limit between the cell's {@code end}, at or below it, and {@code above}. */
    private double meeting(int i, double y0, double y1, double d0, double d1, double end, double above) {
        double below = end;
        double over = above;
        if (hermite(y0, y1, d0, d1, end) >= bound(i, end)) {
            return end;
        }
        for (int k = 0; k < 50 && Math.abs(over - below) > 1e-13; k++) {
            double middle = 0.5 * (below + over);
            if (hermite(y0, y1, d0, d1, middle) > bound(i, middle)) {
                over = middle;
            } else {
                below = middle;
            }
        }
        return below;
    }

    private static double hermite(double y0, double y1, double d0, double d1, double x) {
        double w = 1 - x;
        return y0 * w * w * (1 + 2 * x) + y1 * x * x * (3 - 2 * x) + x * w * (d0 * w - d1 * x);
    }

    private static double hermiteSlope(double y0, double y1, double d0, double d1, double x) {
        double w = 1 - x;
        return 6 * x * w * (y1 - y0) + d0 * w * (1 - 3 * x) + d1 * x * (3 * x - 2);
    }

    /** Sets the energy at a station; a closed track's last station is its first. */
    void store(int station, double value) {
        energy[station] = value;
        if (road.closed) {
            if (station == 0) {
                energy[road.cells] = value;
            } else if (station == road.cells) {
                energy[0] = value;
            }
        }
    }
}
