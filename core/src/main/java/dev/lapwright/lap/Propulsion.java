package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.numerics.CubicTable;
import dev.lapwright.powertrain.OverrunDrag;
import java.util.stream.DoubleStream;

/**
 * Drive force over road speed, as pieces between break speeds. In each piece one gear is engaged; pieces that follow a shift
 * point carry the shift.
 *
 * <p>A gear is left where the next one accelerates the car as hard, or at the rev limit. The time t_s without drive is not
 * an event but a density over speed, 6 x (1 - x) t_s / w with x = (v - v_shift) / w over a narrow band of width w: whoever
 * accelerates through the whole band goes without drive for t_s, and who starts within it for the part that remains. An event
 * would make the lap time jump by tens of milliseconds when a corner's speed moves across a shift point, which no driver
 * who picks his gear for the corner would see.
 */
final class Propulsion {
    /** Width of a shift's band over the speed of the shift, and the least width in m/s. */
    private static final double BAND_SHARE = 0.06;

    private static final double BAND_LEAST = 0.6;
    /** A band is crossed in this many steps at least. */
    private static final int BAND_PIECES = 2;

    private static final int TORQUE_CELLS = 400;

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

    final int pieces;
    final double topSpeed;

    Propulsion(Car car, double mass, double powerFactor) {
        double scale = powerFactor * car.value(Quantity.POWER_SCALE);
        double limit = car.value(Quantity.REV_LIMIT) * Math.PI / 30;
        torque = new CubicTable(
                0, limit, TORQUE_CELLS, w -> scale * car.torqueCurve().torque(w));
        double radius = car.value(Quantity.WHEEL_RADIUS);
        double efficiency = car.value(Quantity.EFFICIENCY);
        double[] ratios = car.gearRatios();
        int gears = ratios.length;
        axleInertia = 0.5 * car.value(Quantity.WHEEL_INERTIA) / (radius * radius);
        engineSpeedPerSpeed = new double[gears];
        forcePerTorque = new double[gears];
        massFactor = new double[gears];
        dragAtRest = new double[gears];
        revLimit = limit;
        double greatest = DoubleStream.of(car.torqueCurve().torqueNm()).max().orElse(0);
        double dragTorque = OverrunDrag.torque(greatest, car.value(Quantity.OVERRUN_DRAG) / 100, 0);
        for (int g = 0; g < gears; g++) {
            double overall = ratios[g] * car.value(Quantity.FINAL_DRIVE);
            engineSpeedPerSpeed[g] = overall / radius;
            forcePerTorque[g] = overall * efficiency / radius;
            // On the overrun the losses of the gears hold the car back too.
            dragAtRest[g] = dragTorque * engineSpeedPerSpeed[g] / efficiency;
            double inertia = car.value(Quantity.WHEEL_INERTIA) + car.value(Quantity.ENGINE_INERTIA) * overall * overall;
            massFactor[g] = 1 + inertia / (mass * radius * radius);
        }
        double shiftTime = car.value(Quantity.SHIFT_TIME);
        int most = gears * (BAND_PIECES + 1);
        double[] start = new double[most + 1];
        gear = new int[most];
        bandStart = new double[most];
        bandInverseWidth = new double[most];
        bandDensity = new double[most];
        int n = 0;
        int g = 0;
        double from = 0;
        gear[n++] = 0;
        while (g + 1 < gears) {
            double shift = Math.max(shiftSpeed(g, limit), from * 1.001 + 1e-3);
            double nextEnd = limit / engineSpeedPerSpeed[g + 1];
            g++;
            double room = 0.8 * ((g + 1 < gears ? shiftSpeed(g, limit) : nextEnd) - shift);
            double width = Math.min(Math.max(BAND_SHARE * shift, BAND_LEAST), room);
            from = shift;
            if (shiftTime > 0 && width > 1e-3) {
                for (int part = 0; part < BAND_PIECES; part++) {
                    start[n] = shift + width * part / BAND_PIECES;
                    gear[n] = g;
                    bandStart[n] = shift;
                    bandInverseWidth[n] = 1 / width;
                    bandDensity[n] = 6 * shiftTime / width;
                    n++;
                }
                from = shift + width;
            }
            start[n] = from;
            gear[n] = g;
            n++;
        }
        topSpeed = limit / engineSpeedPerSpeed[gears - 1];
        start[n] = topSpeed;
        pieces = n;
        breakEnergy = new double[n + 1];
        for (int i = 0; i <= n; i++) {
            breakEnergy[i] = 0.5 * start[i] * start[i];
        }
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
