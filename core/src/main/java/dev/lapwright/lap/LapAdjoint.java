package dev.lapwright.lap;

import java.util.stream.IntStream;

/**
 * Adjoint of a lap that a kernel has just solved: how much the lap time changes with the slope de/ds at each place and with
 * each limit. One pass back over the {@linkplain LapCourses lap's courses} gives it; the derivative by any quantity is then a sum of local
 * changes, each of one evaluation of the car's forces. Source: costate equations of an initial value problem, Bryson and Ho, Applied
 * Optimal Control (1975), chapter 2, from memory.
 */
final class LapAdjoint {
    private final Kernel kernel;
    private final Road road;
    private final LapCourses courses;
    private final LocalSlopes local;

    /** Direct share of each station's energy in the lap time, s per m²/s². */
    private final double[] weight;

    /** Seconds per m/s² of slope under drive and under brakes, by row of the road. */
    private final double[] perDrive;

    private final double[] perBrake;
    /** The same before rows were left out. */
    private final double[] perRowDriven;

    private final double[] perRowBraked;
    private final double[] perRowShifted;
    /** Seconds per m²/s² of each station's limit. */
    private final double[] perLimit;
    /** Stations whose limit counts. */
    private final int[] limits;
    /** Seconds per m²/s² of the energy at the far end of each cell in which gears change: where it ends, or under braking begins. */
    private final double[] perStep;

    private final double[] perStepBack;
    /** The same by rows of the road, for quantities that leave the gears where they are: seconds per m/s² of slope. */
    private final double[] perShift;

    private final double[] perShiftBack;

    LapAdjoint(Kernel kernel, Vehicle car) {
        this.kernel = kernel;

        road = kernel.road;
        int n = road.cells + 1;
        courses = new LapCourses(kernel, car);
        local = courses.local;
        weight = new double[n];
        perDrive = new double[2 * n - 1];
        perBrake = new double[2 * n - 1];
        perLimit = new double[n];
        perStep = new double[road.cells];
        perStepBack = new double[road.cells];
        perShift = new double[2 * n - 1];
        perShiftBack = new double[2 * n - 1];
        for (int i = 0; i < road.cells; i++) {
            weigh(i);
        }
        if (road.closed) {
            weight[0] += weight[road.cells];
            weight[road.cells] = 0;
        }
        handOn();
        perRowDriven = perDrive.clone();
        perRowBraked = perBrake.clone();
        perRowShifted = perShift.clone();
        for (int row = 0; row < perShiftBack.length; row++) {
            perRowBraked[row] += perShiftBack[row];
        }
        courses.driveRows.gather(perDrive);
        courses.brakeRows.gather(perBrake);
        courses.shiftRows.gather(perShift);
        courses.shiftBackRows.gather(perShiftBack);
        limits = IntStream.range(0, n).filter(j -> perLimit[j] != 0).toArray();
    }

    private void weigh(int i) {
        double v0 = Math.sqrt(2 * kernel.energy[i]);
        double v1 = Math.sqrt(2 * kernel.energy[i + 1]);
        double h = road.length[i];
        if (kernel.mode[i] == Kernel.TURNING) {
            turn(i, v0, v1, h);
        } else if (h > 0) {
            double perMean = -2 * h / ((v0 + v1) * (v0 + v1));
            weight[i] += v0 > 0 ? perMean / v0 : 0;
            weight[i + 1] += v1 > 0 ? perMean / v1 : 0;
        }
    }

    /** A cell in which drive meets braking: each part weighs what it lasts. */
    private void turn(int i, double v0, double v1, double h) {
        double top = Math.sqrt(2 * kernel.peak[i]);
        double up = kernel.turn[i] * h;
        double down = h - up;
        double upMean = 0.5 * (v0 + top);
        double downMean = 0.5 * (top + v1);
        double perUp = -up / (upMean * upMean * upMean);
        double perDown = -down / (downMean * downMean * downMean);
        weight[i] += perUp * Math.exp(0.5 * up * local.drivePerEnergy(2 * i));
        weight[i + 1] += perDown * Math.exp(-0.5 * down * local.brakePerEnergy(2 * i + 2));
        perDrive[2 * i] += 0.5 * up * perUp;
        perBrake[2 * i + 2] -= 0.5 * down * perDown;
    }

    /** Hands each station's weight on to what its energy comes from. */
    private void handOn() {
        // What was braked from is a limit, what was driven from too: so the two kinds of courses do not touch.
        double[] carried = weight.clone();
        follow(carried, LapCourses.Source.BRAKE, 1);
        follow(carried, LapCourses.Source.DRIVE, -1);
        for (int j = 0; j < carried.length; j++) {
            if (courses.source[j] == LapCourses.Source.LIMIT) {
                perLimit[j] += carried[j];
            }
        }
    }

    /** Follows courses of one kind from their ends to where they begin: brakes forwards, drive backwards. */
    private void follow(double[] carried, LapCourses.Source kind, int way) {
        int count = courses.stations();
        int from = way > 0 ? 0 : count - 1;
        double[] moving = new double[count];
        double again = Double.POSITIVE_INFINITY;
        // A course that never meets a limit goes round and round, and fades.
        for (int round = 0; round < LapCourses.MOST_ROUNDS && again > LapCourses.SETTLED; round++) {
            again = 0;
            for (int c = 0; c < count; c++) {
                int j = from + way * c;
                double here = moving[j];
                moving[j] = 0;
                if (courses.source[j] != kind) {
                    carried[j] += here;
                    continue;
                }
                here += round == 0 ? carried[j] : 0;
                if (here == 0) {
                    continue;
                }
                int to = road.closed ? Math.floorMod(j + way, count) : j + way;
                double passed = kind == LapCourses.Source.DRIVE
                        ? pass(courses.cellBefore(j), here, courses.driven, perDrive, perShift, perStep)
                        : pass(courses.cellAfter(j), here, courses.braked, perBrake, perShiftBack, perStepBack);
                moving[to] += passed;
                if (to != j + way) {
                    again = Math.max(again, Math.abs(passed));
                }
            }
        }
    }

    private static double pass(
            int cell,
            double here,
            LapCourses.Passage[] passages,
            double[] perRow,
            double[] perShiftingRow,
            double[] perShiftingStep) {
        LapCourses.Passage passage = passages[cell];
        double[] rows = passage.shifting() ? perShiftingRow : perRow;
        rows[2 * cell] += here * passage.first();
        rows[2 * cell + 1] += here * passage.middle();
        rows[2 * cell + 2] += here * passage.last();
        if (passage.shifting()) {
            perShiftingStep[cell] += here;
        }
        return here * passage.growth();
    }

    /** Seconds per unit of a quantity that other cars have a step less and a step more of. */
    LapDerivatives.Sides derivative(LocalSlopes.Hairs hairs, double step) {
        return hairs.nothing ? hairs.none() : new Sum(hairs).sides(step);
    }

    /**
     * Seconds at each row of the road that what other cars, or this car on other roads, change there by a step less and a step more is worth for each
     * unit, the mean of both sides.
     */
    double[] byRow(LocalSlopes.Hairs hairs, double step) {
        double[] found = new double[perRowDriven.length];
        hairs.tellBothSides();
        for (int row = 0; row < found.length; row++) {
            if (perRowDriven[row] != 0) {
                local.driveChange(hairs, row);
                found[row] += perRowDriven[row] * hairs.mean() / step;
            }
            if (perRowBraked[row] != 0) {
                local.brakeChange(hairs, row);
                found[row] += perRowBraked[row] * hairs.mean() / step;
            }
            if (perRowShifted[row] != 0) {
                local.shiftChange(hairs, row);
                found[row] += perRowShifted[row] * hairs.mean() / step;
            }
        }
        for (int j : limits) {
            local.limitChange(hairs, j);
            found[2 * j] += perLimit[j] * hairs.mean() / step;
        }
        return found;
    }

    /** The same without sides whose changes do not shrink with the step: there is no way that leads there. */
    LapDerivatives.Sides unlessJump(LapDerivatives.Sides found, LocalSlopes.Hairs hairs, LocalSlopes.Hairs closer) {
        if (hairs.nothing) {
            return found;
        }
        compare(closer);
        return new LapDerivatives.Sides(
                closer.jumpsLess(hairs) ? Double.NaN : found.below(),
                closer.jumpsMore(hairs) ? Double.NaN : found.above());
    }

    private void compare(LocalSlopes.Hairs hairs) {
        local.compare(hairs, courses.driveRows.kept, courses.brakeRows.kept, limits);
    }

    /** Sum over the lap of what one quantity changes, s. */
    private final class Sum {
        private final LocalSlopes.Hairs hairs;
        private double less;
        private double more;

        Sum(LocalSlopes.Hairs hairs) {
            this.hairs = hairs;
        }

        private void add(double weight) {
            less += weight * hairs.atLess;
            more += weight * hairs.atMore;
        }

        LapDerivatives.Sides sides(double step) {
            compare(hairs);
            boolean shiftAlike = hairs.shiftAlike();
            for (int row : courses.driveRows.kept) {
                local.driveChange(hairs, row);
                add(perDrive[row]);
            }
            for (int row : courses.brakeRows.kept) {
                local.brakeChange(hairs, row);
                add(perBrake[row]);
            }
            if (shiftAlike) {
                for (int row : courses.shiftRows.kept) {
                    local.shiftChange(hairs, row);
                    add(perShift[row]);
                }
                for (int row : courses.shiftBackRows.kept) {
                    local.brakeChange(hairs, row);
                    add(perShiftBack[row]);
                }
            }
            for (int j : limits) {
                local.limitChange(hairs, j);
                add(perLimit[j]);
            }
            for (int i = 0; !shiftAlike && i < perStep.length; i++) {
                if (perStep[i] != 0) {
                    step(i);
                }
                if (perStepBack[i] != 0) {
                    stepBack(i);
                }
            }
            return new LapDerivatives.Sides(-less / step, more / step);
        }

        private void step(int cell) {
            if (local.movesGears(hairs, cell)) {
                local.stepChange(hairs, cell);
                add(perStep[cell]);
                return;
            }
            LapCourses.Passage passage = courses.driven[cell];
            for (int k = 0; k < 3; k++) {
                local.shiftChange(hairs, 2 * cell + k);
                add(perStep[cell] * passage.per(k));
            }
        }

        private void stepBack(int cell) {
            if (local.movesGears(hairs, cell)) {
                local.stepChangeBack(hairs, cell);
                add(perStepBack[cell]);
                return;
            }
            LapCourses.Passage passage = courses.braked[cell];
            for (int k = 0; k < 3; k++) {
                local.brakeChange(hairs, 2 * cell + k);
                add(perStepBack[cell] * passage.per(k));
            }
        }
    }
}
