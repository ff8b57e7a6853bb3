package dev.lapwright.study.optimise;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.track.Corner;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Limit balance and upshifts of a lap in its corners, for limits on a setup.
 *
 * <p>Limit balance: where the grip of an axle holds the car at the highest steady speed of the place, in a corner, the share
 * of the front axle's grip that is taken less that of the rear axle, in percent, as the mean over the time spent there. Above
 * zero the front axle is first at its limit (understeer), below zero the rear axle (oversteer); the size is what the other
 * axle has in reserve.
 *
 * <p>An upshift counts as one in a corner where the lateral acceleration is at least half of the corner's greatest: our
 * choice, no source. At the entry and exit of a long corner, where the car hardly leans, a shift disturbs nobody.
 */
final class LimitBalance {
    /** Share of the highest steady speed from which on the car counts as driven at it. */
    private static final double AT_LIMIT = 0.999;

    private static final double LEANING = 0.5;

    private LimitBalance() {}

    /** Limit balance of a lap, percent; NaN if nothing in a corner is driven at the limit. */
    static double percent(Lap lap) {
        double sum = 0;
        double time = 0;
        List<Corner> corners = lap.stations().corners();
        for (int i = 0; i < lap.count(); i++) {
            boolean grip = lap.limit(i) == Limit.FRONT_GRIP || lap.limit(i) == Limit.REAR_GRIP;
            boolean held = lap.value(Channel.SPEED, i) >= AT_LIMIT * lap.value(Channel.SPEED_LIMIT, i);
            if (grip
                    && held
                    && Corner.at(corners, lap.value(Channel.DISTANCE, i)).isPresent()) {
                int before = Math.max(0, i - 1);
                int after = Math.min(lap.count() - 1, i + 1);
                double spent = 0.5 * (lap.value(Channel.TIME, after) - lap.value(Channel.TIME, before));
                sum += spent * (lap.value(Channel.UTILISATION_FRONT, i) - lap.value(Channel.UTILISATION_REAR, i));
                time += spent;
            }
        }
        return time > 0 ? 100 * sum / time : Double.NaN;
    }

    /** Number of upshifts of a lap that fall where the car leans on its tyres. */
    static int upshiftsInCorners(Lap lap) {
        List<Corner> corners = lap.stations().corners();
        Map<Corner, Double> greatest = new HashMap<>();
        for (int i = 0; i < lap.count(); i++) {
            double lateral = Math.abs(lap.value(Channel.LATERAL_ACCELERATION, i));
            Corner.at(corners, lap.value(Channel.DISTANCE, i))
                    .ifPresent(corner -> greatest.merge(corner, lateral, Math::max));
        }
        int upshifts = 0;
        for (int i = 1; i < lap.count(); i++) {
            boolean up = lap.value(Channel.GEAR, i) > lap.value(Channel.GEAR, i - 1) && lap.limit(i) != Limit.BRAKES;
            double lateral = Math.abs(lap.value(Channel.LATERAL_ACCELERATION, i));
            Optional<Corner> corner = up ? Corner.at(corners, lap.value(Channel.DISTANCE, i)) : Optional.empty();
            if (corner.isPresent() && lateral >= LEANING * greatest.get(corner.get())) {
                upshifts++;
            }
        }
        return upshifts;
    }
}
