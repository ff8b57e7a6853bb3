package dev.lapwright.lap;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Slopes de/ds and limits of a solved lap, and how they change with a car that differs by a hair: one step of Newton's method from
 * the solved acceleration, so one evaluation of the forces each. Places are rows of the road: stations, and half-way between them.
 */
final class LocalSlopes {
    /** Of an energy, or of 1 m²/s² near rest. */
    private static final double ENERGY_STEP = 1e-6;
    /** On acceleration, m/s², towards what cannot be had and away from it. */
    private static final double ACCELERATION_STEP = 1e-5;

    /** By how much a hair's difference moves an acceleration, m/s², about. */
    private static final double HAIR = 2e-4;

    /** Way that a break of the propulsion may move by a hair, over its energy. */
    private static final double NEAR_BREAK = 1e-3;

    /** Rows that are at most left out between two that are looked at, twice. */
    private static final int MOST_APART = 8;
    /** Departure from a straight course up to which neighbours tell of a place: of acceleration, m/s², and of its change with energy, 1/m. */
    private static final double EVEN = 0.02;

    private static final double EVEN_PER_ENERGY = 2e-4;
    /** Relative difference between two sides that is more than the bend of a smooth course over a hair. */
    private static final double KINK = 1e-2;
    /** Of changes by a hair, m/s² and m²/s²: below, a percent of a quantity is worth some hundredths of a millisecond. */
    private static final double ROUNDING = 2e-9;
    /** Of so many rows one is looked at for kinks of a quantity. */
    private static final int SAMPLED = 32;
    /** Share of them at which the sides may differ by chance. */
    private static final double FEW = 0.1;
    /** Change over half a step, of that over the step, that only a jump makes. */
    private static final double JUMP = 0.75;

    private final Kernel kernel;
    private final Road road;
    private final Vehicle car;
    private final Hair base;
    private final Course drive;
    private final Course brake;
    /** Change of a station's limit with its use beyond 1 and short of it, found once each. */
    private final double[] limitPerOver;

    private final double[] limitPerUnder;
    private final double[] limitExcess;
    /** Of cells asked as a whole: the energy to which the solver's step leads, forward under drive and back under braking. */
    private final double[] endDriven;

    private final double[] startBraked;
    /** Slopes with what a shift costs by row, NaN where not yet found. */
    private final double[] shifting;

    /** What was found once at each row, under drive or under brakes. */
    private static final class Course {
        final boolean driving;
        final boolean[] known;
        final double[] energy;
        /** Whether grip is the limit, not the engine. */
        final boolean[] grip;
        /** Acceleration along the car, m/s². */
        final double[] ax;
        /** Growth of what an acceleration takes, beyond what there is and short of it: at a wheel's peak they differ. */
        final double[] rateOver;

        final double[] rateUnder;
        /** Whether they do. */
        final boolean[] kink;

        final double[] slope;
        /** Change of the slope with energy, 1/m. */
        final double[] perEnergy;

        Course(boolean driving, int rows) {
            this.driving = driving;
            known = new boolean[rows];
            energy = new double[rows];
            grip = new boolean[rows];
            ax = new double[rows];
            rateOver = new double[rows];
            rateUnder = new double[rows];
            kink = new boolean[rows];
            slope = new double[rows];
            perEnergy = new double[rows];
        }
    }

    /** A car that differs by a hair or not at all, with scratch of its own. */
    static final class Hair {
        final Vehicle car;
        private final Road road;
        private final double[] rows;
        private final WheelForces wheels;
        private final AccelerationLimits acceleration;
        private final CornerLimit corner;
        private final IntervalIntegrator step;

        /** @param road with the wind of that car's day */
        Hair(Vehicle car, Road road) {
            this.car = car;
            this.road = road;
            rows = road.rows;
            wheels = new WheelForces(car);
            acceleration = AccelerationLimits.toTell(car, wheels);
            corner = new CornerLimit(car, wheels);
            step = IntervalIntegrator.toTell(car, acceleration);
        }
    }

    /** Cars that differ by a hair to either side, and how the last place asked for is driven by them; null where a quantity can go no further. */
    static final class Hairs {
        private final Hair less;
        private final Hair more;
        private final boolean shiftAlike;
        /** Whether the sides differ everywhere, and not only where the model has a kink at any car's. */
        private boolean bent;

        /** Sum of the sizes of changes at the places looked at by {@link #compare}. */
        private double sizeLess;

        private double sizeMore;

        /** Change with less and with more of the quantity; NaN where there is none. */
        double atLess = Double.NaN;

        double atMore = Double.NaN;

        /** Whether neither is driven otherwise. */
        final boolean nothing;

        Hairs(Vehicle base, Hair less, Hair more) {
            this.less = less;
            this.more = more;
            nothing = (less == null || base.drivesAs(less.car)) && (more == null || base.drivesAs(more.car));
            shiftAlike = !moves(base.propulsion, 0, base.propulsion.pieces);
        }

        /** Whether both change their gears where the car does. */
        boolean shiftAlike() {
            return shiftAlike;
        }

        /** Whether one of these breaks between pieces of the propulsion, the first and the last of them named, lies elsewhere. */
        private boolean moves(Propulsion base, int first, int last) {
            return moves(base, less, first, last) || moves(base, more, first, last);
        }

        private static boolean moves(Propulsion base, Hair hair, int first, int last) {
            if (hair == null) {
                return false;
            }
            return !LapCourses.shiftAlike(base, hair.car.propulsion, first, last);
        }

        /** No change on the sides that there are. */
        LapDerivatives.Sides none() {
            return new LapDerivatives.Sides(less == null ? Double.NaN : 0, more == null ? Double.NaN : 0);
        }

        /** Tells both sides apart everywhere. */
        void tellBothSides() {
            bent = true;
        }

        private void seen() {
            sizeLess += Math.abs(atLess);
            sizeMore += Math.abs(atMore);
        }

        /** Whether changes with less of the quantity are hardly smaller than those over another step. */
        boolean jumpsLess(Hairs other) {
            return sizeLess > JUMP * other.sizeLess;
        }

        boolean jumpsMore(Hairs other) {
            return sizeMore > JUMP * other.sizeMore;
        }

        /** Half the way from less to more; all of it where one is missing, as often as the step to the other. */
        double mean() {
            return Double.isNaN(atLess) ? atMore : Double.isNaN(atMore) ? -atLess : 0.5 * (atMore - atLess);
        }
    }

    LocalSlopes(Kernel kernel, Vehicle car) {
        this.kernel = kernel;
        this.car = car;
        road = kernel.road;
        base = new Hair(car, road);
        drive = new Course(true, 2 * road.cells + 1);
        brake = new Course(false, 2 * road.cells + 1);
        limitPerOver = new double[road.cells + 1];
        limitPerUnder = new double[road.cells + 1];
        limitExcess = new double[road.cells + 1];
        endDriven = new double[road.cells];
        startBraked = new double[road.cells];
        shifting = new double[2 * road.cells + 1];
        Arrays.fill(shifting, Double.NaN);
    }

    double drivePerEnergy(int row) {
        know(drive, row);
        return drive.perEnergy[row];
    }

    double brakePerEnergy(int row) {
        know(brake, row);
        return brake.perEnergy[row];
    }

    /** Change of the slope under drive, m/s². */
    void driveChange(Hairs hairs, int row) {
        change(hairs, drive, row);
    }

    /** Change of the slope under brakes, m/s². */
    void brakeChange(Hairs hairs, int row) {
        change(hairs, brake, row);
    }

    private void change(Hairs hairs, Course course, int row) {
        know(course, row);
        if (hairs.more != null) {
            hairs.atMore = slope(hairs.more, course, row, course.energy[row]) - course.slope[row];
        }
        if (hairs.less != null) {
            hairs.atLess = hairs.more == null || hairs.bent || course.kink[row]
                    ? slope(hairs.less, course, row, course.energy[row]) - course.slope[row]
                    : -hairs.atMore;
        }
    }

    /** Change of the slope under drive where a shift may be under way, with cars whose gears change where this one's do, m/s². */
    void shiftChange(Hairs hairs, int row) {
        shiftingSlope(row);
        if (hairs.more != null) {
            hairs.atMore = shiftingSlope(hairs.more, row) - shifting[row];
        }
        if (hairs.less != null) {
            hairs.atLess = hairs.more == null || hairs.bent || drive.kink[row]
                    ? shiftingSlope(hairs.less, row) - shifting[row]
                    : -hairs.atMore;
        }
    }

    /**
     * Looks at some places whether the two sides differ where they need not: one that does is told apart from now on, and everything where it is
     * more than a few, because the quantity itself has a kink.
     */
    void compare(Hairs hairs, int[] driveRows, int[] brakeRows, int[] limits) {
        hairs.bent = true;
        hairs.sizeLess = 0;
        hairs.sizeMore = 0;
        int looked = 0;
        int apart = 0;
        for (int i = 0; i < driveRows.length; i += SAMPLED) {
            driveChange(hairs, driveRows[i]);
            hairs.seen();
            looked++;
            apart += isFound(drive, driveRows[i], differ(hairs)) ? 1 : 0;
        }
        for (int i = 0; i < brakeRows.length; i += SAMPLED) {
            brakeChange(hairs, brakeRows[i]);
            hairs.seen();
            looked++;
            apart += isFound(brake, brakeRows[i], differ(hairs)) ? 1 : 0;
        }
        for (int i = 0; i < limits.length; i += SAMPLED) {
            limitChange(hairs, limits[i]);
            hairs.seen();
            looked++;
            apart += !isLimitKink(limits[i]) && differ(hairs) ? 1 : 0;
        }
        hairs.bent = apart > FEW * looked;
    }

    /** Whether a kink is found that was not known. */
    private static boolean isFound(Course course, int row, boolean differ) {
        boolean found = differ && !course.kink[row];
        course.kink[row] |= differ;
        return found;
    }

    private static boolean differ(Hairs hairs) {
        return Math.abs(hairs.atLess + hairs.atMore)
                > KINK * Math.max(Math.abs(hairs.atLess), Math.abs(hairs.atMore)) + ROUNDING;
    }

    private void shiftingSlope(int row) {
        know(drive, row);
        if (Double.isNaN(shifting[row])) {
            shifting[row] = shiftingSlope(base, row);
        }
    }

    private double shiftingSlope(Hair hair, int row) {
        double e = drive.energy[row];
        int gear = kernel.gear(cell(row), e);
        int band = kernel.shift(cell(row), piece(e));
        double a = slope(hair, drive, row, e);
        if (band < 0 || !(a > 0)) {
            return a;
        }
        double moved = a + hair.wheels.climb - drive.ax[row];
        double force = drive.grip[row]
                ? Math.max(hair.wheels.requiredForce + hair.car.mass * hair.car.propulsion.massFactor[gear] * moved, 0)
                : hair.car.propulsion.force(gear, hair.wheels.speed);
        return a / hair.acceleration.stretch(hair.wheels.speed, gear, band, a, force);
    }

    /** Change of a station's limit, m²/s². */
    void limitChange(Hairs hairs, int station) {
        if (limitPerOver[station] == 0) {
            knowLimit(station);
        }
        if (hairs.more != null) {
            hairs.atMore = limitChange(hairs.more, station);
        }
        if (hairs.less != null) {
            hairs.atLess = hairs.more == null || hairs.bent || isLimitKink(station)
                    ? limitChange(hairs.less, station)
                    : -hairs.atMore;
        }
    }

    private boolean isLimitKink(int station) {
        return isKink(limitPerOver[station], limitPerUnder[station]);
    }

    private void knowLimit(int station) {
        int at = 2 * station * Road.STRIDE;
        double e = kernel.limit(station);
        double here = base.corner.excess(road.rows, at, e);
        limitExcess[station] = here;
        double step = ENERGY_STEP * e;
        limitPerOver[station] = step / (base.corner.excess(road.rows, at, e + step) - here);
        limitPerUnder[station] = step / (here - base.corner.excess(road.rows, at, e - step));
    }

    private double limitChange(Hair other, int station) {
        int at = 2 * station * Road.STRIDE;
        double top = top(car);
        double rule = road.rows[at + Road.RULE];
        double e = kernel.limit(station);
        if (e >= Math.min(top, 0.5 * rule * rule)) {
            return 0.5 * rule * rule < top ? 0 : top(other.car) - top;
        }
        double over = other.corner.excess(other.rows, at, e) - limitExcess[station];
        return -over * (over > 0 ? limitPerUnder[station] : limitPerOver[station]);
    }

    private static double top(Vehicle car) {
        return 0.5 * car.propulsion.topSpeed * car.propulsion.topSpeed;
    }

    /** Whether gears change in a cell that is driven, or a shift is under way: then the solver's own step tells of it. */
    boolean isShifting(int cell) {
        Propulsion p = car.propulsion;
        int from = piece(kernel.energy[cell]);
        int to = piece(kernel.energy[cell + 1]);
        return from != to
                || kernel.shift(cell, from) >= 0
                || kernel.energy[cell + 1] == p.breakEnergy[from]
                || kernel.energy[cell + 1] == p.breakEnergy[from + 1];
    }

    /** The same of a cell under braking, where only a change of gear counts. */
    boolean isShiftingDown(int cell) {
        return kernel.gear(cell, kernel.energy[cell]) != kernel.gear(cell, kernel.energy[cell + 1]);
    }

    /** Whether the speeds at which gears change in a cell, or next to it, are others. */
    boolean movesGears(Hairs hairs, int cell) {
        if (hairs.shiftAlike) {
            return false;
        }
        int one = piece(kernel.energy[cell]);
        int other = piece(kernel.energy[cell + 1]);
        return hairs.moves(car.propulsion, Math.min(one, other), Math.max(one, other) + 1);
    }

    /** Growth of an error of energy over a whole cell that is driven. */
    double stepGrowth(int cell) {
        double step = ENERGY_STEP * Math.max(1, kernel.energy[cell]);
        endDriven[cell] = driven(base, cell, kernel.energy[cell]);
        return (driven(base, cell, kernel.energy[cell] + step) - endDriven[cell]) / step;
    }

    /** The same over a cell under braking, backwards. */
    double stepGrowthBack(int cell) {
        double step = ENERGY_STEP * Math.max(1, kernel.energy[cell + 1]);
        startBraked[cell] = braked(base, cell, kernel.energy[cell + 1]);
        return (braked(base, cell, kernel.energy[cell + 1] + step) - startBraked[cell]) / step;
    }

    /** Change of the energy where a driven cell ends with cars that enter it alike. */
    void stepChange(Hairs hairs, int cell) {
        double start = kernel.energy[cell];
        if (hairs.more != null) {
            hairs.atMore = driven(hairs.more, cell, start) - endDriven[cell];
        }
        if (hairs.less != null) {
            hairs.atLess =
                    hairs.more == null || hairs.bent || isBreakNear(start) || isBreakNear(kernel.energy[cell + 1])
                            ? driven(hairs.less, cell, start) - endDriven[cell]
                            : -hairs.atMore;
        }
    }

    /** Whether a break of the propulsion may move past an energy by a hair. */
    private boolean isBreakNear(double energy) {
        int piece = piece(energy);
        double near = NEAR_BREAK * energy;
        return energy - car.propulsion.breakEnergy[piece] < near
                || car.propulsion.breakEnergy[piece + 1] - energy < near;
    }

    /** Change of the energy where a cell under braking begins. */
    void stepChangeBack(Hairs hairs, int cell) {
        double end = kernel.energy[cell + 1];
        if (hairs.more != null) {
            hairs.atMore = braked(hairs.more, cell, end) - startBraked[cell];
        }
        if (hairs.less != null) {
            hairs.atLess = hairs.more == null || hairs.bent || isBreakNear(end) || isBreakNear(kernel.energy[cell])
                    ? braked(hairs.less, cell, end) - startBraked[cell]
                    : -hairs.atMore;
        }
    }

    private double driven(Hair hair, int cell, double energy) {
        know(drive, 2 * cell);
        hair.acceleration.driveFrom(drive.ax[2 * cell], drive.grip[2 * cell]);
        hair.step.use(kernel.lowest(cell), kernel.highest(cell));
        return hair.step.forward(hair.road, cell, energy);
    }

    private double braked(Hair hair, int cell, double energy) {
        know(brake, 2 * cell + 2);
        hair.acceleration.brakeFrom(brake.ax[2 * cell + 2]);
        hair.step.use(kernel.lowest(cell), kernel.highest(cell));
        return hair.step.backward(hair.road, cell, energy);
    }

    private int piece(double energy) {
        return Math.min(car.propulsion.pieceAt(energy), car.propulsion.pieces - 1);
    }

    private int cell(int row) {
        return Math.min(row / 2, road.cells - 1);
    }

    private void know(Course course, int row) {
        if (course.known[row]) {
            return;
        }
        course.known[row] = true;
        double e = energy(course, row);
        course.energy[row] = e;
        int gear = kernel.gear(cell(row), e);
        double massFactor = car.propulsion.massFactor[gear];
        base.acceleration.forget();
        int at = row * Road.STRIDE;
        double a;
        if (course.driving) {
            a = base.acceleration.drive(road.rows, at, e, gear, -1);
            course.grip[row] = base.acceleration.limit != Limit.POWER;
        } else {
            a = base.acceleration.brake(road.rows, at, e, gear);
            course.grip[row] = true;
        }
        double ax = a + base.wheels.climb;
        course.ax[row] = ax;
        stand(base, course, row, e, gear);
        boolean grip = course.grip[row];
        double here = residual(base, grip, ax, massFactor, gear);
        double over = course.driving ? ACCELERATION_STEP : -ACCELERATION_STEP;
        course.rateOver[row] = (residual(base, grip, ax + over, massFactor, gear) - here) / over;
        course.rateUnder[row] = (here - residual(base, grip, ax - over, massFactor, gear)) / over;
        course.kink[row] = isKink(course.rateOver[row], course.rateUnder[row])
                || (grip && isNearKink(here, ax, massFactor, gear, course.rateOver[row]));
        course.slope[row] = slope(base, course, row, e);
        double step = ENERGY_STEP * Math.max(1, e);
        course.perEnergy[row] = (slope(base, course, row, e + step) - course.slope[row]) / step;
    }

    /** Whether there is a kink, or a bend as sharp as one, as near as a hair moves an acceleration. */
    private boolean isNearKink(double here, double ax, double massFactor, int gear, double rate) {
        double more = residual(base, true, ax + HAIR, massFactor, gear) - here;
        double less = here - residual(base, true, ax - HAIR, massFactor, gear);
        return isKink(more / HAIR, rate) || isKink(less / HAIR, rate);
    }

    private static boolean isKink(double over, double under) {
        return Math.abs(over - under) > KINK * Math.max(Math.abs(over), Math.abs(under));
    }

    Thinned thinDrive(boolean[] used) {
        return thin(drive, used, false);
    }

    /** Rows where a shift is under way, which stretches the road there. */
    Thinned thinShift(boolean[] used) {
        for (int row = 0; row < used.length; row++) {
            if (used[row]) {
                shiftingSlope(row);
            }
        }
        return thin(drive, used, true);
    }

    Thinned thinBrake(boolean[] used) {
        return thin(brake, used, false);
    }

    /** Rows to look at, and others of which these tell: by threes of indices each row left out, that before and that after. */
    static final class Thinned {
        final int[] kept;
        private final int[] left;
        private final double[] share;

        private Thinned(int[] kept, int[] left, double[] share) {
            this.kept = kept;
            this.left = left;
            this.share = share;
        }

        /** Hands weights of rows left out on to those that tell of them. */
        void gather(double[] weights) {
            for (int i = 0; i < share.length; i++) {
                double weight = weights[left[3 * i]];
                weights[left[3 * i + 1]] += (1 - share[i]) * weight;
                weights[left[3 * i + 2]] += share[i] * weight;
                weights[left[3 * i]] = 0;
            }
        }

        /** Finds what is known of the rows kept for those left out. */
        void spread(double[] values) {
            for (int i = share.length - 1; i >= 0; i--) {
                values[left[3 * i]] = (1 - share[i]) * values[left[3 * i + 1]] + share[i] * values[left[3 * i + 2]];
            }
        }
    }

    /**
     * Leaves rows out where the course runs so evenly that their neighbours tell of them, over ever greater distances: fewer places to look
     * at for each quantity.
     */
    private Thinned thin(Course course, boolean[] used, boolean shift) {
        int rows = used.length;
        int[] left = new int[3 * rows];
        double[] shares = new double[rows];
        boolean[] kept = used.clone();
        int n = 0;
        for (int apart = 1; apart <= MOST_APART; apart *= 2) {
            for (int row = apart; row + apart < rows; row += 2 * apart) {
                int before = row - apart;
                int after = row + apart;
                if (kept[row] && even(course, before, row, after) && (!shift || evenShift(before, row, after))) {
                    shares[n] = (place(row) - place(before)) / (place(after) - place(before));
                    left[3 * n] = row;
                    left[3 * n + 1] = before;
                    left[3 * n + 2] = after;
                    n++;
                    kept[row] = false;
                    kept[before] = true;
                    kept[after] = true;
                }
            }
        }
        int[] list = IntStream.range(0, rows).filter(row -> kept[row]).toArray();
        return new Thinned(list, Arrays.copyOf(left, 3 * n), Arrays.copyOf(shares, n));
    }

    private double place(int row) {
        int i = row / 2;
        return row % 2 == 0 ? road.s[i] : 0.5 * (road.s[i] + road.s[i + 1]);
    }

    private boolean even(Course course, int before, int row, int after) {
        if (!course.known[before] || !course.known[after]) {
            return false;
        }
        int piece = piece(course.energy[row]);
        if (piece != piece(course.energy[before])
                || piece != piece(course.energy[after])
                || course.grip[row] != course.grip[before]
                || course.grip[row] != course.grip[after]
                || !(place(after) > place(before))) {
            return false;
        }
        double share = (place(row) - place(before)) / (place(after) - place(before));
        double off = course.perEnergy[row] - (1 - share) * course.perEnergy[before] - share * course.perEnergy[after];
        double bend = course.ax[row] - (1 - share) * course.ax[before] - share * course.ax[after];
        return Math.abs(off) < EVEN_PER_ENERGY && Math.abs(bend) < EVEN;
    }

    private boolean evenShift(int before, int row, int after) {
        double share = (place(row) - place(before)) / (place(after) - place(before));
        double off = shifting[row] - (1 - share) * shifting[before] - share * shifting[after];
        // Not known of rows that no shift is asked of.
        return Math.abs(off) < EVEN;
    }

    /** At a station as solved; half-way of the cubic through both ends. */
    private double energy(Course course, int row) {
        int i = row / 2;
        if (row % 2 == 0) {
            return kernel.energy[i];
        }
        know(course, row - 1);
        know(course, row + 1);
        double bend = course.slope[row - 1] - course.slope[row + 1];
        return 0.5 * (kernel.energy[i] + kernel.energy[i + 1]) + road.length[i] * bend / 8;
    }

    private static void stand(Hair hair, Course course, int row, double energy, int gear) {
        double v = Math.sqrt(2 * energy);
        hair.wheels.at(hair.rows, row * Road.STRIDE, v);
        if (!course.driving) {
            hair.wheels.engineDrag = hair.car.propulsion.drag(gear, v);
        }
    }

    /** What an acceleration takes beyond what there is: of grip, or of the engine's force, N. */
    private static double residual(Hair hair, boolean grip, double ax, double massFactor, int gear) {
        if (grip) {
            return Math.pow(hair.wheels.utilisation(ax, massFactor), 1 / hair.car.ellipseExponent) - 1;
        }
        hair.wheels.require(ax, massFactor);
        return hair.wheels.requiredForce - hair.car.propulsion.force(gear, hair.wheels.speed);
    }

    /** The gear is that of the solved lap, whatever the energy. */
    private double slope(Hair hair, Course course, int row, double energy) {
        int gear = kernel.gear(cell(row), course.energy[row]);
        double massFactor = hair.car.propulsion.massFactor[gear];
        stand(hair, course, row, energy, gear);
        double over = residual(hair, course.grip[row], course.ax[row], massFactor, gear);
        double moved = -over / (over > 0 ? course.rateOver[row] : course.rateUnder[row]);
        return course.ax[row] + moved - hair.wheels.climb;
    }
}
