package dev.lapwright.lap;

import java.util.Arrays;

/**
 * Adjoint of a lap that a kernel has just solved: how much the lap time changes with the slope de/ds at each place and with
 * each limit. One pass back over the lap gives it; the derivative by any quantity is then a sum of local changes, each of one
 * evaluation of the car's forces.
 *
 * <p>Over a stretch that is driven freely errors of energy grow by exp(∫ ∂a/∂e ds), and a change of the slope adds itself over the length;
 * under braking the same backwards. Cells in which gears change are asked as a whole, by the solver's own step. A station on its limit has the error of the limit and forgets what came before. Where drive meets
 * braking the place moves, and that changes no time to first order. Integrals by Simpson's rule over
 * each cell. Source: costate equations
 * of an initial value problem, Bryson and Ho, Applied Optimal Control (1975), chapter 2, from memory.
 */
final class LapAdjoint {
    private static final int MOST_ROUNDS = 200;
    private static final double SETTLED = 1e-12;

    private final Kernel kernel;
    private final Road road;
    private final Vehicle car;
    private final LocalSlopes local;

    /** What bounds a station's energy. */
    private enum Source {
        LIMIT,
        DRIVE,
        BRAKE,
        GIVEN
    }

    private final Source[] source;

    /** Direct share of each station's energy in the lap time, s per m²/s². */
    private final double[] weight;

    /** Seconds per m/s² of slope under drive and under brakes, by row of the road. */
    private final double[] perDrive;

    private final double[] perBrake;
    /** Seconds per m²/s² of each station's limit. */
    private final double[] perLimit;
    /** Seconds per m²/s² of the energy at the far end of each cell in which gears change: where it ends, or under braking begins. */
    private final double[] perStep;

    private final double[] perStepBack;
    /** The same by rows of the road, for quantities that leave the gears where they are: seconds per m/s² of slope. */
    private final double[] perShift;

    LapAdjoint(Kernel kernel, Vehicle car) {
        this.kernel = kernel;
        this.car = car;
        road = kernel.road;
        int n = road.cells + 1;
        source = new Source[n];
        weight = new double[n];
        perDrive = new double[2 * n - 1];
        perBrake = new double[2 * n - 1];
        perLimit = new double[n];
        perStep = new double[road.cells];
        perShift = new double[2 * n - 1];
        perStepBack = new double[road.cells];
        local = new LocalSlopes(kernel, car);
        for (int j = 0; j < n; j++) {
            source[j] = sourceOf(j);
        }
        for (int i = 0; i < road.cells; i++) {
            weigh(i);
        }
        if (road.closed) {
            weight[0] += weight[road.cells];
            weight[road.cells] = 0;
        }
        handOn();
        local.thinDrive(perDrive);
        local.thinBrake(perBrake);
    }

    private int cellAfter(int j) {
        return j < road.cells ? j : road.closed ? 0 : -1;
    }

    private int cellBefore(int j) {
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
        follow(carried, Source.BRAKE, 1);
        follow(carried, Source.DRIVE, -1);
        for (int j = 0; j < source.length; j++) {
            if (source[j] == Source.LIMIT) {
                perLimit[j] += carried[j];
            }
        }
    }

    /** Follows courses of one kind from their ends to where they begin: brakes forwards, drive backwards. */
    private void follow(double[] carried, Source kind, int way) {
        int count = road.closed ? road.cells : road.cells + 1;
        int from = way > 0 ? 0 : count - 1;
        double[] moving = new double[count];
        double again = Double.POSITIVE_INFINITY;
        // A course that never meets a limit goes round and round, and fades.
        for (int round = 0; round < MOST_ROUNDS && again > SETTLED; round++) {
            again = 0;
            for (int c = 0; c < count; c++) {
                int j = from + way * c;
                double here = moving[j];
                moving[j] = 0;
                if (source[j] != kind) {
                    carried[j] += here;
                    continue;
                }
                here += round == 0 ? carried[j] : 0;
                if (here == 0) {
                    continue;
                }
                int to = road.closed ? Math.floorMod(j + way, count) : j + way;
                double passed = kind == Source.DRIVE ? passDrive(j, here) : passBrake(j, here);
                moving[to] += passed;
                if (to != j + way) {
                    again = Math.max(again, Math.abs(passed));
                }
            }
        }
    }

    private double passDrive(int j, double here) {
        int cell = cellBefore(j);
        double h = road.length[cell];
        if (h == 0) {
            return here;
        }
        if (local.isShifting(cell)) {
            double growth = local.stepGrowth(cell);
            double share = h / 6 * here;
            perStep[cell] += here;
            perShift[2 * cell] += share * growth;
            perShift[2 * cell + 1] += 4 * share * Math.sqrt(Math.max(growth, 0));
            perShift[2 * cell + 2] += share;
            return here * growth;
        }
        int row = 2 * cell;
        double middle = local.drivePerEnergy(row + 1);
        double first = Math.exp(0.25 * h * (local.drivePerEnergy(row) + middle));
        double second = Math.exp(0.25 * h * (middle + local.drivePerEnergy(row + 2)));
        double sixth = h / 6 * here;
        perDrive[row] += sixth * first * second;
        perDrive[row + 1] += 4 * sixth * second;
        perDrive[row + 2] += sixth;
        return here * first * second;
    }

    private double passBrake(int j, double here) {
        int cell = cellAfter(j);
        double h = road.length[cell];
        if (h == 0) {
            return here;
        }
        if (local.isShiftingDown(cell)) {
            perStepBack[cell] += here;
            return here * local.stepGrowthBack(cell);
        }
        int row = 2 * cell;
        double middle = local.brakePerEnergy(row + 1);
        double first = Math.exp(-0.25 * h * (local.brakePerEnergy(row) + middle));
        double second = Math.exp(-0.25 * h * (middle + local.brakePerEnergy(row + 2)));
        double sixth = h / 6 * here;
        perBrake[row] -= sixth;
        perBrake[row + 1] -= 4 * sixth * first;
        perBrake[row + 2] -= sixth * first * second;
        return here * first * second;
    }

    /** Seconds per unit of a quantity that another car has a step more of. */
    double derivative(LocalSlopes.Hair other, double step) {
        boolean gearsStay = Arrays.equals(other.car.propulsion.breakEnergy, car.propulsion.breakEnergy);
        double sum = 0;
        for (int row = 0; row < perDrive.length; row++) {
            if (gearsStay && perShift[row] != 0) {
                sum += perShift[row] * local.shiftChange(other, row);
            }
            if (perDrive[row] != 0) {
                sum += perDrive[row] * local.driveChange(other, row);
            }
            if (perBrake[row] != 0) {
                sum += perBrake[row] * local.brakeChange(other, row);
            }
        }
        for (int j = 0; j < perLimit.length; j++) {
            if (perLimit[j] != 0) {
                sum += perLimit[j] * local.limitChange(other, j);
            }
        }
        for (int i = 0; i < perStep.length; i++) {
            if (!gearsStay && perStep[i] != 0) {
                sum += perStep[i] * local.stepChange(other, i);
            }
            if (perStepBack[i] != 0) {
                sum += perStepBack[i] * local.stepChangeBack(other, i);
            }
        }
        return sum / step;
    }
}
