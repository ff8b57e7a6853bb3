package dev.lapwright.lap;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * What each station's energy comes from in a lap that a kernel has just solved, and how errors of energy pass through its cells: the one
 * account that {@link LapAdjoint} follows back and {@link LapTangents} forward.
 *
 * <p>Over a stretch that is driven freely errors of energy grow by exp(∫ ∂a/∂e ds), and a change of the slope adds itself over the length;
 * under braking the same backwards. A station on its limit has the error of the limit and forgets what came before. Where drive meets
 * braking the place moves, and that changes no time to first order. Integrals by Simpson's rule over each cell.
 */
final class LapCourses {
    /** Rounds over a closed track, and what a round may still add, relative: a course that never meets a limit goes round and round, and fades. */
    static final int MOST_ROUNDS = 200;

    static final double SETTLED = 1e-12;
    /** Of a break's energy. */
    private static final double ROUNDING = 1e-10;

    final Kernel kernel;
    final Road road;
    final LocalSlopes local;

    /** What bounds a station's energy. */
    enum Source {
        LIMIT,
        DRIVE,
        BRAKE,
        GIVEN
    }

    final Source[] source;
    /** By cell, how what leads through it passes errors on; null where none does. */
    final Passage[] driven;

    final Passage[] braked;
    /** Rows of the road whose slopes are asked for, under drive and under brakes, and which tell of which. */
    final LocalSlopes.Thinned driveRows;

    final LocalSlopes.Thinned brakeRows;
    /** Rows where gears change or a shift is under way. */
    final LocalSlopes.Thinned shiftRows;

    final LocalSlopes.Thinned shiftBackRows;

    /**
     * How the error of energy where a course leaves a cell comes from that where it enters, and from changes of the slope.
     *
     * @param growth of the error
     * @param first m that a change of the slope where the cell begins counts for, signed
     * @param middle the same half-way
     * @param last the same where it ends
     * @param shifting whether gears change on the way: what moves the gears is asked by the solver's own step
     */
    record Passage(double growth, double first, double middle, double last, boolean shifting) {
        /** What a change of the slope in one of the cell's three rows counts for, m. */
        double per(int row) {
            return row == 0 ? first : row == 1 ? middle : last;
        }
    }

    LapCourses(Kernel kernel, Vehicle car) {
        this.kernel = kernel;
        road = kernel.road;
        local = new LocalSlopes(kernel, car);
        int n = road.cells + 1;
        source = new Source[n];
        driven = new Passage[road.cells];
        braked = new Passage[road.cells];
        int rows = 2 * n - 1;
        boolean[] driveUsed = new boolean[rows];
        boolean[] brakeUsed = new boolean[rows];
        boolean[] shiftUsed = new boolean[rows];
        boolean[] shiftBackUsed = new boolean[rows];
        for (int j = 0; j < n; j++) {
            source[j] = sourceOf(j);
        }
        for (int j = 0; j < stations(); j++) {
            if (source[j] == Source.DRIVE) {
                int cell = cellBefore(j);
                driven[cell] = drive(cell);
                use(driven[cell].shifting ? shiftUsed : driveUsed, cell);
            } else if (source[j] == Source.BRAKE) {
                int cell = cellAfter(j);
                braked[cell] = brake(cell);
                use(braked[cell].shifting ? shiftBackUsed : brakeUsed, cell);
            }
            if (j < road.cells && kernel.mode[j] == Kernel.TURNING) {
                driveUsed[2 * j] = true;
                brakeUsed[2 * j + 2] = true;
            }
        }
        driveRows = local.thinDrive(driveUsed);
        brakeRows = local.thinBrake(brakeUsed);
        shiftRows = local.thinShift(shiftUsed);
        shiftBackRows = local.thinBrake(shiftBackUsed);
    }

    /** Number of stations, the last of a closed track being its first. */
    int stations() {
        return road.closed ? road.cells : road.cells + 1;
    }

    /** Stations that are on their limit. */
    int[] limits() {
        return IntStream.range(0, stations())
                .filter(j -> source[j] == Source.LIMIT)
                .toArray();
    }

    private void use(boolean[] used, int cell) {
        if (road.length[cell] > 0) {
            Arrays.fill(used, 2 * cell, 2 * cell + 3, true);
        }
    }

    int cellAfter(int j) {
        return j < road.cells ? j : road.closed ? 0 : -1;
    }

    int cellBefore(int j) {
        return j > 0 ? j - 1 : road.closed ? road.cells - 1 : -1;
    }

    private Source sourceOf(int j) {
        int after = cellAfter(j);
        if (after >= 0 && kernel.mode[after] == Kernel.BRAKING) {
            return Source.BRAKE;
        }
        if (kernel.onLimit(j)) {
            return Source.LIMIT;
        }
        if (cellBefore(j) < 0) {
            return Source.GIVEN;
        }
        return Source.DRIVE;
    }

    private Passage drive(int cell) {
        double h = road.length[cell];
        if (h == 0) {
            return new Passage(1, 0, 0, 0, false);
        }
        if (local.isShifting(cell)) {
            double growth = local.stepGrowth(cell);
            return new Passage(growth, h / 6 * growth, h / 1.5 * Math.sqrt(Math.max(growth, 0)), h / 6, true);
        }
        int row = 2 * cell;
        double middle = local.drivePerEnergy(row + 1);
        double first = Math.exp(0.25 * h * (local.drivePerEnergy(row) + middle));
        double second = Math.exp(0.25 * h * (middle + local.drivePerEnergy(row + 2)));
        return new Passage(first * second, h / 6 * first * second, h / 1.5 * second, h / 6, false);
    }

    private Passage brake(int cell) {
        double h = road.length[cell];
        if (h == 0) {
            return new Passage(1, 0, 0, 0, false);
        }
        if (local.isShiftingDown(cell)) {
            double growth = local.stepGrowthBack(cell);
            return new Passage(growth, -h / 6, -h / 1.5 * Math.sqrt(Math.max(growth, 0)), -h / 6 * growth, true);
        }
        int row = 2 * cell;
        double middle = local.brakePerEnergy(row + 1);
        double first = Math.exp(-0.25 * h * (local.brakePerEnergy(row) + middle));
        double second = Math.exp(-0.25 * h * (middle + local.brakePerEnergy(row + 2)));
        return new Passage(first * second, -h / 6, -h / 1.5 * first, -h / 6 * first * second, false);
    }

    /** Whether breaks between pieces of the propulsion, the first and the last of them named, lie at the same energies but for rounding. */
    static boolean shiftAlike(Propulsion one, Propulsion other, int first, int last) {
        if (one.pieces != other.pieces) {
            return false;
        }
        for (int i = first; i <= last; i++) {
            if (Math.abs(one.breakEnergy[i] - other.breakEnergy[i]) > ROUNDING * one.breakEnergy[i]) {
                return false;
            }
        }
        return true;
    }
}
