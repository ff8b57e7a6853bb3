package dev.lapwright.study.balance;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Stations of a lap that stand for the phases of a corner. Middle: where the tyres are used most across the car. Entry and
 * exit: of the stations with brakes, or with drive, from there outwards, the one whose lateral acceleration is nearest to
 * {@link #SHARE} of the corner's greatest. Lift-off: where turning in begins. Ours; no standard says.
 */
final class PhaseStations {
    /** At which an axle on a friction circle spends as much along as across. */
    private static final double SHARE = Math.sqrt(0.5);
    /** Below this share of a corner's greatest lateral acceleration the car is not turning yet, or no more. */
    private static final double TURNING = 0.2;

    /** Share of the middle's yaw rate by which it must change at one place to be a step: below is rounding at a joint. */
    private static final double STEP = 1e-3;

    private final Lap lap;
    private final List<Corner> corners;
    private final boolean closed;
    private final int last;
    private final int[] middles;
    private final double[] s;
    private final double[] curvature;

    /**
     * Stations of one corner's phases.
     *
     * @param entry station, or -1
     */
    record Places(Corner corner, int entry, int liftOff, int middle, int exit, YawPeak turningIn, YawPeak unwinding) {
        int station(BalancePhase phase) {
            return switch (phase) {
                case ENTRY -> entry;
                case LIFT_OFF -> liftOff;
                case MIDDLE -> middle;
                case EXIT -> exit;
            };
        }
    }

    /** Greatest yaw acceleration of a stretch, rad/s², positive into the corner; infinite at a step of curvature. */
    record YawPeak(double distance, double acceleration) {}

    PhaseStations(Lap lap) {
        this.lap = lap;
        corners = lap.stations().corners();
        closed = lap.track().isClosed();
        last = lap.count() - 1;
        s = lap.column(Channel.DISTANCE);
        curvature = lap.stations().curvature();
        middles = new int[corners.size()];
        for (int k = 0; k < middles.length; k++) {
            middles[k] = middle(corners.get(k));
        }
    }

    private int middle(Corner corner) {
        int best = -1;
        double most = -1;
        for (int i = 0; i <= last; i++) {
            double utilisation = Math.max(
                    lap.value(Channel.LATERAL_UTILISATION_FRONT, i), lap.value(Channel.LATERAL_UTILISATION_REAR, i));
            if (corner.contains(s[i]) && utilisation > most && across(i, corner) > 0) {
                most = utilisation;
                best = i;
            }
        }
        return best >= 0 ? best : nearest(corner.apex());
    }

    private int nearest(double distance) {
        int best = 0;
        for (int i = 1; i <= last; i++) {
            if (Math.abs(s[i] - distance) < Math.abs(s[best] - distance)) {
                best = i;
            }
        }
        return best;
    }

    /** Lateral acceleration towards the corner's inside. */
    private double across(int i, Corner corner) {
        double ay = lap.value(Channel.LATERAL_ACCELERATION, i);
        return corner.left() ? ay : -ay;
    }

    Places of(int k) {
        Corner corner = corners.get(k);
        int middle = middles[k];
        int before = k > 0 ? middles[k - 1] : closed ? middles[middles.length - 1] : -1;
        int after = k + 1 < middles.length ? middles[k + 1] : closed ? middles[0] : -1;
        double most = across(middle, corner);
        for (int i = 0; i <= last; i++) {
            if (corner.contains(s[i])) {
                most = Math.max(most, across(i, corner));
            }
        }
        int entry = best(corner, middle, before, -1, most, i -> lap.value(Channel.BRAKE_FORCE, i) > 0);
        int exit = best(
                corner,
                middle,
                after,
                1,
                most,
                i -> lap.value(Channel.DRIVE_FORCE, i) > 0 && lap.value(Channel.ACCELERATION, i) > 0);
        return new Places(
                corner,
                entry,
                turnIn(corner, middle, before, most),
                middle,
                exit,
                yaw(corner, middle, before, -1),
                yaw(corner, middle, after, 1));
    }

    /** The next station in a direction; -1 where the run ends. */
    private int step(int i, int way) {
        int next = i + way;
        if (next < 0 || next > last) {
            return closed ? (way > 0 ? 1 : last - 1) : -1;
        }
        return next;
    }

    private boolean ends(int i, int end) {
        return i < 0 || i == end || (closed && i % last == end % last && end >= 0);
    }

    private int best(Corner corner, int middle, int end, int way, double most, IntPredicate pedals) {
        int best = -1;
        double nearest = Double.POSITIVE_INFINITY;
        int i = step(middle, way);
        for (int n = 0; n < last && !ends(i, end) && across(i, corner) >= TURNING * most; n++) {
            double off = Math.abs(across(i, corner) / most - SHARE);
            if (pedals.test(i) && off < nearest) {
                nearest = off;
                best = i;
            }
            i = step(i, way);
        }
        return best;
    }

    private int turnIn(Corner corner, int middle, int end, double most) {
        int first = middle;
        int i = step(middle, -1);
        for (int n = 0; n < last && !ends(i, end) && across(i, corner) >= TURNING * most; n++) {
            first = i;
            i = step(i, -1);
        }
        return first;
    }

    private double yawRate(int i, Corner corner) {
        double rate = lap.value(Channel.SPEED, i) * curvature[i];
        return corner.left() ? rate : -rate;
    }

    /** The greatest change of yaw rate on the way in (-1) or out (1), while the path bends towards the corner's inside. */
    private YawPeak yaw(Corner corner, int middle, int end, int way) {
        double[] t = lap.column(Channel.TIME);
        YawPeak peak = new YawPeak(s[middle], 0);
        double whole = yawRate(middle, corner);
        int inner = middle;
        for (int n = 0; n < last && yawRate(inner, corner) > 0; n++) {
            int outer = step(inner, way);
            if (ends(outer, end)) {
                break;
            }
            double gained = yawRate(inner, corner) - yawRate(outer, corner);
            double spent = time(t, inner, outer, way);
            double acceleration = spent > 0 ? gained / spent : gained > STEP * whole ? Double.POSITIVE_INFINITY : 0;
            if (acceleration > Math.abs(peak.acceleration())) {
                peak = new YawPeak(s[outer], way < 0 ? acceleration : -acceleration);
            }
            inner = outer;
        }
        return peak;
    }

    /** Time between neighbours; over the start line it begins anew. */
    private static double time(double[] t, int inner, int outer, int way) {
        if (Math.abs(outer - inner) == 1) {
            return Math.abs(t[outer] - t[inner]);
        }
        return way > 0 ? t[outer] - t[outer - 1] : t[outer + 1] - t[outer];
    }
}
