package dev.lapwright.study.gearing;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.List;

/** Reader of a lap for its use of the gears. */
final class GearingReader {
    private final Lap lap;
    private final Drivetrain drivetrain;
    private final List<Corner> corners;
    private final double[] s;
    private final double[] t;
    private final double[] v;
    private final double[] timeInGear;
    private final List<GearingResult.Shift> shifts = new ArrayList<>();

    private GearingReader(Lap lap) {
        this.lap = lap;
        drivetrain = Drivetrain.of(lap.vehicle());
        corners = lap.stations().corners();
        s = lap.column(Channel.DISTANCE);
        t = lap.column(Channel.TIME);
        v = lap.column(Channel.SPEED);
        timeInGear = new double[drivetrain.gears()];
    }

    /**
     * @param without difference of the lap without the limiter, s, found by other laps
     * @param freeRevLimit at which that was found, 1/min
     */
    static GearingResult.GearedLap read(Lap lap, double without, double freeRevLimit) {
        return new GearingReader(lap).read(without, freeRevLimit);
    }

    /** Time on the rev limiter, s. */
    static double limiterTime(Lap lap) {
        return lap.time() * lap.limitShares().getOrDefault(Limit.REV_LIMIT, 0.0);
    }

    private GearingResult.GearedLap read(double without, double freeRevLimit) {
        for (int i = 0; i + 1 < s.length; i++) {
            cell(i);
        }
        int fastest = 0;
        for (int i = 1; i < v.length; i++) {
            fastest = v[i] > v[fastest] ? i : fastest;
        }
        LapFigures figures = lap.figures();
        double top = figures.topSpeed();
        int gear = drivetrain.gearAt(top);
        return new GearingResult.GearedLap(
                lap.time(),
                new GearingResult.TopSpeed(
                        top,
                        s[fastest],
                        Corner.after(corners, lap.track(), s[fastest]),
                        gear,
                        drivetrain.engineSpeed(gear, top)),
                figures.minimumSpeed(),
                List.copyOf(used()),
                timeInGear,
                new GearingResult.Limiter(drivetrain.revLimit(), limiterTime(lap), without, freeRevLimit),
                shifts);
    }

    /** Shares out a cell's time among the gears, at the places where the shift speeds are passed. */
    private void cell(int i) {
        int gear = drivetrain.gearAt(v[i]);
        int last = drivetrain.gearAt(v[i + 1]);
        double from = t[i];
        while (gear != last) {
            int next = gear < last ? gear + 1 : gear - 1;
            double speed = drivetrain.shiftSpeed(Math.min(gear, next));
            double at = passed(i, speed);
            double time = Math.max(from, Math.min(t[i + 1], t[i] + 2 * (at - s[i]) / (v[i] + speed)));
            timeInGear[gear - 1] += time - from;
            shifts.add(new GearingResult.Shift(
                    gear,
                    next,
                    at,
                    time,
                    speed,
                    drivetrain.engineSpeed(gear, speed),
                    drivetrain.engineSpeed(next, speed),
                    Corner.at(corners, at),
                    timeToBraking(i, time)));
            from = time;
            gear = next;
        }
        timeInGear[gear - 1] += t[i + 1] - from;
    }

    /** Where in a cell a speed is passed, m. */
    private double passed(int i, double speed) {
        double gained = speed * speed - v[i] * v[i];
        double part = gained / (v[i + 1] * v[i + 1] - v[i] * v[i]);
        double even = s[i] + Math.max(0, Math.min(1, part)) * (s[i + 1] - s[i]);
        // v² varies all but linearly with distance, up to an upshift as it does where the cell begins, then less.
        double a = lap.value(Channel.ACCELERATION, i);
        return speed > v[i] && a > 0 ? Math.min(even, s[i] + gained / (2 * a)) : even;
    }

    /** Time from a moment in cell i until the next station that is braked at, s. */
    private double timeToBraking(int i, double time) {
        for (int j = i; j < s.length; j++) {
            if (lap.limit(j) == Limit.BRAKES) {
                return Math.max(0, t[j] - time);
            }
        }
        for (int j = 0; j < i && lap.track().isClosed(); j++) {
            if (lap.limit(j) == Limit.BRAKES) {
                return lap.time() - time + t[j];
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    private List<Integer> used() {
        boolean[] driven = new boolean[timeInGear.length];
        for (int i = 0; i < v.length; i++) {
            if (lap.limit(i) != Limit.BRAKES) {
                driven[drivetrain.gearAt(v[i]) - 1] = true;
            }
        }
        List<Integer> used = new ArrayList<>();
        for (int gear = 1; gear <= driven.length; gear++) {
            if (driven[gear - 1]) {
                used.add(gear);
            }
        }
        return used;
    }
}
