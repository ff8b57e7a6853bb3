package dev.lapwright.checks;

import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.util.CombinatoricsUtils;

/**
 * What the checks ask of the solver. Where no spacing is given it is the default, of which a millisecond a lap is promised;
 * closed forms that are to be met to more digits are driven at {@link #FINE}.
 */
final class Runs {
    /** A stop, for the solver: it drives at any speed above zero. m/s. */
    static final double STANDSTILL = 0.01;

    /** A tenth of the default spacing: the third-order steps leave a thousandth of the default's error. */
    static final StationSpacing FINE = StationSpacing.DEFAULT.scaled(0.1);

    private Runs() {}

    /** Drives a road on the standard day. */
    static Lap drive(PlainCar car, Track road) {
        return LapSolver.on(road).solve(car.vehicle());
    }

    /** Drives a road on the standard day at a given spacing. */
    static Lap drive(PlainCar car, Track road, StationSpacing spacing) {
        return new LapSolver(road.stations(spacing)).solve(car.vehicle());
    }

    /** Speed that a car holds round a circle at its limit, m/s. */
    static double circleSpeed(PlainCar car, double radius, double bank) {
        Lap lap = drive(car, Roads.circle(radius, bank, Double.POSITIVE_INFINITY));
        return 2 * Math.PI * radius / lap.time();
    }

    /** Speed round a circle at the limit if cornering cost no drag, m/s. */
    static double freeCircleSpeed(PlainCar car, double radius, double bank) {
        return withoutCorneringDrag(car, 5, c -> circleSpeed(c, radius, bank));
    }

    /**
     * A result if cornering cost no drag. That drag falls as the inverse of the cornering stiffness, which the textbooks'
     * formulas take as infinite: the polynomial through the results at {@code points} stiffnesses, the greatest allowed and
     * its half, third and so on, read at no compliance.
     */
    static double withoutCorneringDrag(PlainCar car, int points, ToDoubleFunction<PlainCar> result) {
        double sum = 0;
        for (int k = 1; k <= points; k++) {
            double weight = CombinatoricsUtils.binomialCoefficientDouble(points, k) * (k % 2 == 1 ? 1 : -1);
            sum += weight * result.applyAsDouble(car.stiffness(PlainCar.STIFFEST / k));
        }
        return sum;
    }

    /** Speed at which the car settles on an endless straight (to the east), entered at a speed in m/s. */
    static double settledSpeed(Vehicle vehicle, double entrySpeed, double slope) {
        Lap lap = LapSolver.on(Roads.straight(entrySpeed, 60_000, slope)).solve(vehicle);
        return endSpeed(lap);
    }

    /** Speed at the end of a run, m/s. */
    static double endSpeed(Lap lap) {
        return lap.value(Channel.SPEED, lap.count() - 1);
    }

    /** Distance and time of the hardest braking from one speed to another. */
    record Braking(double distance, double time) {}

    /**
     * The shortest straight at whose end a car entered at {@code from} can be at {@code to}: on a shorter one the solver
     * refuses the entry speed. At that length all of it is braked.
     */
    static Braking brake(Vehicle vehicle, double from, double to, double slope, StationSpacing spacing) {
        double tooShort = 0;
        double longEnough = 1;
        while (!canSlow(vehicle, Roads.straightToSpeed(from, longEnough, slope, to), spacing)) {
            tooShort = longEnough;
            longEnough *= 2;
        }
        while (longEnough - tooShort > 1e-9 * longEnough) {
            double middle = 0.5 * (tooShort + longEnough);
            if (canSlow(vehicle, Roads.straightToSpeed(from, middle, slope, to), spacing)) {
                longEnough = middle;
            } else {
                tooShort = middle;
            }
        }
        Track road = Roads.straightToSpeed(from, longEnough, slope, to);
        Lap lap = new LapSolver(road.stations(spacing)).solve(vehicle);
        return new Braking(longEnough, lap.timeAt(longEnough));
    }

    private static boolean canSlow(Vehicle vehicle, Track road, StationSpacing spacing) {
        try {
            new LapSolver(road.stations(spacing)).lapTime(vehicle);
            return true;
        } catch (NoLapException tooFast) {
            if (!tooFast.place().equals("entry speed")) {
                throw tooFast;
            }
            return false;
        }
    }

    /** Time at which a run from rest first reaches a speed; exact where acceleration is even. */
    static double timeToSpeed(Lap lap, double speed) {
        double[] v = lap.column(Channel.SPEED);
        double[] t = lap.column(Channel.TIME);
        for (int i = 0; i + 1 < v.length; i++) {
            if (v[i + 1] >= speed) {
                return t[i] + (t[i + 1] - t[i]) * (speed - v[i]) / (v[i + 1] - v[i]);
            }
        }
        throw new AssertionError("the run ends at " + v[v.length - 1] + " m/s");
    }

    /** The station at a distance (m), which must be one. */
    static int stationAt(Lap lap, double distance) {
        double[] s = lap.column(Channel.DISTANCE);
        for (int i = 0; i < s.length; i++) {
            if (Math.abs(s[i] - distance) < 1e-9) {
                return i;
            }
        }
        throw new AssertionError("no station at " + distance + " m");
    }

    /** Load of an axle at a station, N. */
    static double axleLoad(Lap lap, int station, boolean front) {
        return front
                ? lap.value(Channel.LOAD_FRONT_LEFT, station) + lap.value(Channel.LOAD_FRONT_RIGHT, station)
                : lap.value(Channel.LOAD_REAR_LEFT, station) + lap.value(Channel.LOAD_REAR_RIGHT, station);
    }

    /** Root of a function within an interval at whose ends it differs in sign. */
    static double root(UnivariateFunction function, double low, double high) {
        return new BrentSolver(1e-10, 1e-9).solve(200, function, low, high);
    }
}
