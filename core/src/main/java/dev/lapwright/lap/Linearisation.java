package dev.lapwright.lap;

/** Linearisation of what a kernel has just solved, as a {@link LinearLap}; derivatives are differences of the car's own forces. */
final class Linearisation {
    private static final double RELATIVE_STEP = 1e-6;
    private static final double CURVATURE_STEP = 1e-7;
    /** Brings accelerations (m/s²) to the size of uses. */
    private static final double ACCELERATION = 10;

    private final Kernel kernel;
    private final Road road;
    private final Vehicle car;
    private final WheelForces wheels;
    private final double inverseExponent;

    /** Excess of utilisation and of the required force over what is there, in the state last looked at. */
    private double gripExcess;

    private double driveExcess;

    Linearisation(Kernel kernel, Vehicle car) {
        this.kernel = kernel;
        this.car = car;
        road = kernel.road;
        wheels = new WheelForces(car);
        inverseExponent = 1 / car.ellipseExponent;
    }

    LinearLap about(double time) {
        LinearLap lap = new LinearLap(time, kernel.time);
        int cells = road.cells;
        for (int i = 0; i <= cells; i++) {
            double e = kernel.energy[i];
            lap.limitSlack[i] = Math.max(0, kernel.limit(i) / e - 1);
            lap.limitPerCurvature[i] = kernel.limitSlope(i, CURVATURE_STEP) / e;
        }
        for (int i = 0; i < cells; i++) {
            if (road.length[i] > 0) {
                cell(i, lap.grip(), lap.drive());
            }
        }
        return lap;
    }

    /**
     * One state of each cell is looked at: under drive that where it ends, under braking that where it begins, each with
     * the acceleration over the cell. So what one end may do follows from the other with a factor between 0 and 1, as it
     * does on the road; states in the middle would let energies rise and fall by turns.
     */
    private void cell(int i, LinearLap.Rows grip, LinearLap.Rows drive) {
        boolean atEnd = kernel.mode[i] == Kernel.DRIVING && kernel.energy[i + 1] >= kernel.energy[i];
        double e0 = kernel.energy[i];
        double e1 = kernel.energy[i + 1];
        double h = road.length[i];
        int row = atEnd ? 2 * i + 2 : 2 * i;
        look(row, atEnd, e0, e1, h);
        double grip0 = gripExcess;
        double drive0 = driveExcess;
        slacks(i, grip0, drive0, grip, drive);
        look(row, atEnd, e0 * (1 + RELATIVE_STEP), e1, h);
        grip.perStart[i] = (gripExcess - grip0) / RELATIVE_STEP;
        drive.perStart[i] = (driveExcess - drive0) / RELATIVE_STEP;
        look(row, atEnd, e0, e1 * (1 + RELATIVE_STEP), h);
        grip.perEnd[i] = (gripExcess - grip0) / RELATIVE_STEP;
        drive.perEnd[i] = (driveExcess - drive0) / RELATIVE_STEP;
        look(row, atEnd, e0, e1, h * (1 + RELATIVE_STEP));
        grip.perLength[i] = (gripExcess - grip0) / (RELATIVE_STEP * h);
        drive.perLength[i] = (driveExcess - drive0) / (RELATIVE_STEP * h);
        road.bend(row, CURVATURE_STEP);
        look(row, atEnd, e0, e1, h);
        road.bend(row, -CURVATURE_STEP);
        double gripPerBend = (gripExcess - grip0) / CURVATURE_STEP;
        double drivePerBend = (driveExcess - drive0) / CURVATURE_STEP;
        (atEnd ? grip.perCurvatureEnd : grip.perCurvatureStart)[i] = gripPerBend;
        (atEnd ? drive.perCurvatureEnd : drive.perCurvatureStart)[i] = drivePerBend;
    }

    /** What bounds the solved lap has nothing left, whatever one state makes of a cell: so ε = 0 is its own best. */
    private void slacks(int i, double grip0, double drive0, LinearLap.Rows grip, LinearLap.Rows drive) {
        grip.slack[i] = Math.max(0, -grip0);
        drive.slack[i] = Math.max(0, -drive0);
        if (kernel.mode[i] == Kernel.BRAKING) {
            grip.slack[i] = 0;
        } else if (kernel.mode[i] == Kernel.DRIVING
                && kernel.energy[i + 1] == kernel.freeEnd[i]
                && !kernel.onLimit(i + 1)) {
            // At a limit that does not rise nothing was integrated, and nothing but the limit binds.
            if (grip0 > drive0) {
                grip.slack[i] = 0;
            } else {
                drive.slack[i] = 0;
            }
        }
    }

    private void look(int row, boolean atEnd, double e0, double e1, double h) {
        double energy = atEnd ? e1 : e0;
        double v = Math.sqrt(2 * energy);
        int gear = kernel.gear((row - (atEnd ? 1 : 0)) / 2, energy);
        wheels.at(road.rows, row * Road.STRIDE, v);
        wheels.engineDrag = car.propulsion.drag(gear, v);
        double ax = (e1 - e0) / h + wheels.climb;
        double utilisation = wheels.utilisation(ax, car.propulsion.massFactor[gear]);
        gripExcess = Math.pow(utilisation, inverseExponent) - 1;
        driveExcess = (wheels.requiredForce - car.propulsion.force(gear, v)) / (ACCELERATION * car.mass);
    }
}
