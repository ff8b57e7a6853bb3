package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.CubicTable;
import dev.lapwright.powertrain.Engine;
import dev.lapwright.powertrain.OverrunDrag;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Drive force over road speed, as pieces between break speeds. In each piece one gear is engaged; the pieces on both sides of a
 * shift point carry the shift.
 *
 * <p>A gear is left where the next one accelerates the car as hard, or at the rev limit. The time t_s without drive is not
 * an event but a density over speed, 6 x (1 - x) t_s / w with x = (v - v_shift) / w + 1/2 over a narrow band of width w with the
 * shift in its middle: whoever accelerates through the whole band goes without drive for t_s, and who starts within it for the
 * part that remains. An event would make the lap time jump by tens of milliseconds when a corner's speed moves across a shift
 * point, which no driver who picks his gear for the corner would see.
 */
final class Propulsion {
    /** Width of a shift's band over the speed of the shift, and the least width in m/s. */
    private static final double BAND_SHARE = 0.06;

    private static final double BAND_LEAST = 0.6;
    /** A band takes at most this share of the way from its shift to the next one, up or down. */
    private static final double BAND_ROOM = 0.4;
    /** Pieces for each gear: the band of the shift into it, itself, the band of the shift out of it. */
    private static final int PIECES_PER_GEAR = 3;

    private static final int TORQUE_CELLS = 400;
    /** A car must be able to do this, m/s. */
    private static final double LEAST_TOP_SPEED = 1;

    /** Engine torque over engine speed (rad/s), in Nm, in this air. */
    final CubicTable torque;
    /** Engine speed over road speed, rad/m, by gear. */
    final double[] engineSpeedPerSpeed;
    /** Wheel force over engine torque, 1/m, by gear. */
    final double[] forcePerTorque;
    /** Mass factor δ of engine, gearbox and all wheels, by gear. */
    final double[] massFactor;
    /** Engine drag at the wheels at rest, throttle shut, N, by gear; at the rev limit it is twice that. */
    private final double[] dragAtRest;

    private final double revLimit;
    /** Inertia of the two wheels of an axle over the radius squared, kg. */
    final double axleInertia;
    /** Energy v²/2 at which each piece begins; one more entry, the last, is where drive ends for good. */
    final double[] breakEnergy;

    final int[] gear;
    final double[] bandStart;
    final double[] bandInverseWidth;
    /** Six times shift time over width, s per m/s; zero where no shift is under way. */
    final double[] bandDensity;
    /** Gear (from 0) that the shift under way leads to. */
    final int[] bandGear;

    /** Energy v²/2 at the rev limit, by gear. */
    final double[] limitEnergy;
    /** Lowest gear used on a lap, from 0; an open run may start below it. */
    final int lowestGear;

    final double shiftTime;
    /** Energies at which the band of the shift into each gear begins and ends. */
    private final double[] bandFrom;

    private final double[] bandTo;

    final int pieces;
    final double topSpeed;

    Propulsion(Car car, double mass, double powerFactor) {
        double scale = powerFactor * car.value(Quantity.POWER_SCALE);
        double limit = car.value(Quantity.REV_LIMIT) * Math.PI / 30;
        torque = new CubicTable(0, limit, TORQUE_CELLS, w -> scale * torque(car.engine(), w));
        double radius = car.value(Quantity.WHEEL_RADIUS);
        double efficiency = car.value(Quantity.EFFICIENCY);
        double[] ratios = car.gearRatios();
        int gears = ratios.length;
        axleInertia = 0.5 * car.value(Quantity.WHEEL_INERTIA) / (radius * radius);
        engineSpeedPerSpeed = new double[gears];
        forcePerTorque = new double[gears];
        massFactor = new double[gears];
        limitEnergy = new double[gears];
        double slip = 1 + car.value(Quantity.TYRE_SLIP) / 100;
        dragAtRest = new double[gears];
        revLimit = limit;
        double dragTorque =
                OverrunDrag.torque(greatestTorque(car.engine(), limit), car.value(Quantity.OVERRUN_DRAG) / 100, 0);
        for (int g = 0; g < gears; g++) {
            double overall = ratios[g] * car.value(Quantity.FINAL_DRIVE);
            engineSpeedPerSpeed[g] = overall / radius * slip;
            forcePerTorque[g] = overall * efficiency / radius;
            // On the overrun the losses of the gears hold the car back too.
            dragAtRest[g] = dragTorque * overall / (radius * efficiency);
            double inertia = car.value(Quantity.WHEEL_INERTIA) + car.value(Quantity.ENGINE_INERTIA) * overall * overall;
            massFactor[g] = 1 + inertia / (mass * radius * radius);
            double top = limit / engineSpeedPerSpeed[g];
            limitEnergy[g] = 0.5 * top * top;
        }
        lowestGear = (int) car.value(Quantity.LOWEST_GEAR) - 1;
        topSpeed = limit / engineSpeedPerSpeed[gears - 1];
        if (!(topSpeed > LEAST_TOP_SPEED)) {
            throw new InvalidValueException(
                    "gearbox",
                    "its gears leave no speed range: at the rev limit in top gear the car does "
                            + Check.text(3.6 * topSpeed) + " km/h",
                    "check gearbox.ratios, gearbox.finalDrive, drive.wheelRadiusM and engine.revLimitRpm");
        }
        double[] shift = shiftSpeeds(gears, limit);
        shiftTime = car.value(Quantity.SHIFT_TIME);
        bandFrom = new double[gears];
        bandTo = new double[gears];
        int most = PIECES_PER_GEAR * gears;
        double[] start = new double[most + 1];
        gear = new int[most];
        bandStart = new double[most];
        bandInverseWidth = new double[most];
        bandDensity = new double[most];
        bandGear = new int[most];
        int n = 0;
        for (int g = 0; g < gears; g++) {
            // From the shift into the gear to the shift out of it.
            double half = g > 0 ? halfBand(shift, g) : 0;
            bandFrom[g] = 0.5 * Math.pow(shift[g] - half, 2);
            bandTo[g] = 0.5 * Math.pow(shift[g] + half, 2);
            if (shiftTime > 0 && half > 0) {
                n = band(n, g, shift[g], shift[g], half, start);
            }
            start[n] = shift[g] + (shiftTime > 0 ? half : 0);
            gear[n++] = g;
            half = g + 1 < gears ? halfBand(shift, g + 1) : 0;
            if (shiftTime > 0 && half > 0) {
                n = band(n, g + 1, shift[g + 1] - half, shift[g + 1], half, start);
                gear[n - 1] = g;
            }
        }
        start[n] = topSpeed;
        pieces = n;
        breakEnergy = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            breakEnergy[i] = 0.5 * start[i] * start[i];
        }
    }

    private static double greatestTorque(Engine engine, double limit) {
        DoubleStream torques = engine instanceof TorqueCurve curve
                ? DoubleStream.of(curve.torqueNm())
                : IntStream.rangeClosed(0, TORQUE_CELLS).mapToDouble(i -> engine.torque(limit * i / TORQUE_CELLS));
        return torques.max().orElse(0);
    }

    private static double torque(Engine engine, double speed) {
        double torque = engine.torque(speed);
        if (!(torque >= 0 && torque < Double.POSITIVE_INFINITY)) {
            throw new InvalidValueException(
                    "engine",
                    "at " + Check.text(speed * 30 / Math.PI) + " 1/min its torque is " + Check.text(torque) + " Nm",
                    "an engine gives 0 Nm or more at every speed up to the rev limit");
        }
        return torque;
    }

    /** Adds half of the band of the shift to a gear; returns the number of pieces. */
    private int band(int n, int to, double from, double shift, double half, double[] start) {
        start[n] = from;
        gear[n] = to;
        bandGear[n] = to;
        bandStart[n] = shift - half;
        bandInverseWidth[n] = 0.5 / half;
        bandDensity[n] = 3 * shiftTime / half;
        return n + 1;
    }

    /** Half the width of the band of the shift into a gear, m/s. */
    private static double halfBand(double[] shift, int g) {
        double room = BAND_ROOM * Math.min(shift[g] - shift[g - 1], shift[g + 1] - shift[g]);
        return Math.min(0.5 * Math.max(BAND_SHARE * shift[g], BAND_LEAST), room);
    }

    /** Speed of the shift into each gear, m/s, 0 for the first; one more, the last, is the top speed. */
    private double[] shiftSpeeds(int gears, double limit) {
        double[] shift = new double[gears + 1];
        for (int g = 1; g < gears; g++) {
            // A gear that is never the best is passed by at once.
            shift[g] = Math.max(shiftSpeed(g - 1, limit), shift[g - 1] * 1.001 + 1e-3);
        }
        shift[gears] = Math.max(topSpeed, shift[gears - 1]);
        return shift;
    }

    /** Energy at which the band of the shift into a gear (from 0) begins. */
    double bandFrom(int g) {
        return bandFrom[g];
    }

    /** Share of the shift into a gear (from 0) that is behind a car that has gained an energy, 0 to 1. */
    double shifted(int g, double energy) {
        double from = Math.sqrt(2 * bandFrom[g]);
        double x = (Math.sqrt(2 * energy) - from) / (Math.sqrt(2 * bandTo[g]) - from);
        return x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - 2 * x);
    }

    /** Energy at which it ends. */
    double bandTo(int g) {
        return bandTo[g];
    }

    /** Where gear g is left for the next: the rev limit, or the lowest speed above which the next always pulls harder. */
    private double shiftSpeed(int g, double limit) {
        double top = limit / engineSpeedPerSpeed[g];
        if (pullsHarder(g, top)) {
            return top;
        }
        final int steps = 200;
        double high = top;
        for (int i = steps - 1; i > 0; i--) {
            double v = top * i / steps;
            if (pullsHarder(g, v)) {
                double low = v;
                for (int k = 0; k < 60; k++) {
                    double middle = 0.5 * (low + high);
                    if (pullsHarder(g, middle)) {
                        low = middle;
                    } else {
                        high = middle;
                    }
                }
                return high;
            }
            high = v;
        }
        return high;
    }

    private boolean pullsHarder(int g, double v) {
        return force(g, v) / massFactor[g] > force(g + 1, v) / massFactor[g + 1];
    }

    /** Full drive force in a gear (from 0), N; the rev limit is not looked at. */
    double force(int g, double v) {
        return forcePerTorque[g] * torque.value(v * engineSpeedPerSpeed[g]);
    }

    /** Gear (from 0) engaged in a piece when none below {@code lowest} and none above {@code highest} is used. */
    int gear(int piece, int lowest, int highest) {
        int g = gear[piece];
        return g < lowest ? lowest : g > highest ? highest : g;
    }

    /** Whether a piece carries part of a shift when only these gears are used. */
    boolean shifting(int piece, int lowest, int highest) {
        return bandDensity[piece] > 0 && bandGear[piece] > lowest && bandGear[piece] <= highest;
    }

    /** Engine drag at the wheels in a gear (from 0), throttle shut, N: see {@link OverrunDrag}. */
    double drag(int g, double v) {
        return dragAtRest[g] * (1 + Math.min(1, v * engineSpeedPerSpeed[g] / revLimit));
    }

    /** Index of the piece that holds at this energy. */
    int pieceAt(double energy) {
        int k = 0;
        while (k + 1 < pieces && energy >= breakEnergy[k + 1]) {
            k++;
        }
        return k;
    }
}
