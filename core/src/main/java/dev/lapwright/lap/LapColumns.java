package dev.lapwright.lap;

import dev.lapwright.aero.Platform;

/** Writer of a solved lap's columns: evaluates the forces once more at every station and says what limits the car there. */
final class LapColumns {
    private static final double ON_LIMIT = 1 - 1e-7;

    private final Vehicle car;
    private final Kernel kernel;
    private final Road road;
    private final double[][] columns;
    private final Limit[] limits;
    private final WheelForces wheels;
    private final AccelerationLimits acceleration;
    private final CornerLimit cornerLimit;
    /** A fuller model that the lap was solved by, or null. */
    private final StationLimits fuller;

    private final FourWheels fullerWheels;

    LapColumns(Vehicle car, Kernel kernel) {
        this.car = car;
        this.kernel = kernel;
        road = kernel.road;
        int n = road.cells + 1;
        columns = new double[Channel.values().length][n];
        limits = new Limit[n];
        wheels = new WheelForces(car);
        fullerWheels = kernel.fuller == null ? null : new FourWheels(car);
        fuller = kernel.fuller == null ? null : kernel.fuller.on(fullerWheels);
        acceleration = fuller == null
                ? AccelerationLimits.toTell(car, wheels)
                : AccelerationLimits.of(car, wheels, fuller, fullerWheels);
        cornerLimit = new CornerLimit(car, wheels);
    }

    Lap lap(double time) {
        double t = 0;
        for (int i = 0; i <= road.cells; i++) {
            explain(i);
            put(Channel.DISTANCE, i, road.s[i]);
            put(Channel.TIME, i, i == road.cells ? time : t);
            if (i < road.cells) {
                t += kernel.time[i];
            }
        }
        return new Lap(
                car,
                road.stations,
                columns,
                limits,
                fuller == null ? null : kernel.unchecked(),
                time,
                Math.sqrt(2 * kernel.peakEnergy));
    }

    private void explain(int i) {
        double e = kernel.energy[i];
        int row = 2 * i * Road.STRIDE;
        // At a limit's start the cell behind counts, at the end of an open run there is only that.
        int cell = i < road.cells ? i : road.closed ? 0 : i - 1;
        boolean braking = kernel.mode[cell] == Kernel.BRAKING;
        int piece = car.propulsion.pieceAt(e);
        int gear = kernel.gear(cell, e);
        double massFactor = car.propulsion.massFactor[gear];
        double a;
        double limit = kernel.limit(i);
        if (e >= limit * ON_LIMIT && limit > 0) {
            limits[i] = limitOfSteadySpeed(i, row, e);
            a = braking ? slopeOfEnergy(cell) : Math.min(0, slopeOfEnergy(cell));
            wheels.at(road.rows, row, Math.sqrt(2 * e));
        } else if (braking) {
            a = acceleration.brake(road.rows, row, e, gear);
            limits[i] = Limit.BRAKES;
        } else {
            a = acceleration.drive(road.rows, row, e, gear, kernel.shift(cell, piece)) / acceleration.stretch;
            limits[i] = acceleration.limit;
            // On the limiter: at a shift point the gear above cannot hold.
            boolean held =
                    piece > 0 && e == car.propulsion.breakEnergy[piece] && i < road.cells && kernel.energy[i + 1] == e;
            if (held) {
                gear = car.propulsion.gear[piece - 1];
                massFactor = car.propulsion.massFactor[gear];
                a = 0;
                limits[i] = Limit.REV_LIMIT;
            }
        }
        if (braking) {
            wheels.engineDrag = car.propulsion.drag(gear, Math.sqrt(2 * e));
        }
        wheels.utilisation(a + wheels.climb, massFactor);
        record(i, e, a, gear);
    }

    private Limit limitOfSteadySpeed(int i, int row, double e) {
        double rule = road.rows[row + Road.RULE];
        if (e >= 0.5 * rule * rule * ON_LIMIT) {
            return Limit.SPEED_RULE;
        }
        double top = car.propulsion.topSpeed;
        if (e >= 0.5 * top * top * ON_LIMIT) {
            return Limit.REV_LIMIT;
        }
        if (fuller != null) {
            fullerWheels.at(road.rows, row);
            double v = Math.sqrt(2 * e);
            if (!Double.isNaN(fuller.highest(2 * v, v))) {
                return fuller.limit();
            }
        }
        cornerLimit.excess(road.rows, row, kernel.limit(i));
        return wheels.tightest();
    }

    private double slopeOfEnergy(int cell) {
        double h = road.length[cell];
        return h > 0 ? (kernel.energy[cell + 1] - kernel.energy[cell]) / h : 0;
    }

    private void record(int i, double e, double a, int gear) {
        double v = Math.sqrt(2 * e);
        put(Channel.SPEED, i, v);
        put(Channel.ACCELERATION, i, a);
        put(Channel.LONGITUDINAL_ACCELERATION, i, a + wheels.climb);
        put(Channel.LATERAL_ACCELERATION, i, wheels.lateral);
        put(Channel.NORMAL_ACCELERATION, i, wheels.normal);
        put(Channel.GEAR, i, gear + 1);
        put(Channel.ENGINE_SPEED, i, v * car.propulsion.engineSpeedPerSpeed[gear] * 30 / Math.PI);
        put(Channel.DRIVE_FORCE, i, Math.max(wheels.requiredForce, 0));
        put(Channel.BRAKE_FORCE, i, Math.max(-wheels.requiredForce, 0));
        put(Channel.DRAG, i, wheels.drag);
        put(Channel.CORNERING_DRAG, i, wheels.cornering);
        put(Channel.DOWNFORCE_FRONT, i, wheels.liftFront);
        put(Channel.DOWNFORCE_REAR, i, wheels.liftRear);
        Platform.State platform =
                car.platformAt(v + road.rows[2 * i * Road.STRIDE + Road.HEAD_WIND], a + wheels.climb, wheels.normal);
        put(Channel.RIDE_HEIGHT_FRONT, i, platform.frontMm());
        put(Channel.RIDE_HEIGHT_REAR, i, platform.rearMm());
        // In a left turn (positive) the left wheels are the inner ones.
        double side = Math.signum(wheels.lateral);
        put(Channel.LOAD_FRONT_LEFT, i, wheels.frontLoad / 2 - side * wheels.frontTransfer);
        put(Channel.LOAD_FRONT_RIGHT, i, wheels.frontLoad / 2 + side * wheels.frontTransfer);
        put(Channel.LOAD_REAR_LEFT, i, wheels.rearLoad / 2 - side * wheels.rearTransfer);
        put(Channel.LOAD_REAR_RIGHT, i, wheels.rearLoad / 2 + side * wheels.rearTransfer);
        put(Channel.LATERAL_UTILISATION_FRONT, i, wheels.frontLateralUtilisation);
        put(Channel.LATERAL_UTILISATION_REAR, i, wheels.rearLateralUtilisation);
        double inverse = 1 / car.ellipseExponent;
        put(Channel.UTILISATION_FRONT, i, Math.pow(wheels.frontUtilisation, inverse));
        put(Channel.UTILISATION_REAR, i, Math.pow(wheels.rearUtilisation, inverse));
        put(Channel.SPEED_LIMIT, i, Math.sqrt(2 * kernel.limit(i)));
    }

    private void put(Channel channel, int i, double value) {
        columns[channel.ordinal()][i] = value;
    }
}
