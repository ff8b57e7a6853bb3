package dev.lapwright.study.gearing;

import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a lap makes of its gears.
 *
 * @param lapTime s
 * @param topSpeed highest speed reached, m/s
 * @param topSpeedAt where, m, to the nearest station
 * @param lowestSpeed lowest speed anywhere, m/s
 * @param nextCorner the corner that comes after that place, if any
 * @param gearAtTopSpeed from 1
 * @param engineSpeedAtTopSpeed 1/min
 * @param revLimit 1/min
 * @param gearsUsed those the car is driven in, rising; a gear passed only under braking is not used
 * @param timeInGear s, first gear first; adds up to the lap time
 * @param limiterTime time on the rev limiter, s
 * @param limiterCost what a rev limit that is never held would gain, s, the torque at the limit held up to the new one: at
 *     most what the limiter costs. Zero where the limiter is not held.
 * @param freeRevLimit that limit, 1/min: the car's own, raised in steps of a tenth of it until it is never held, at most to
 *     twice as much
 * @param shifts in driving order
 */
public record GearingLap(
        double lapTime,
        double topSpeed,
        double topSpeedAt,
        double lowestSpeed,
        Optional<Corner> nextCorner,
        int gearAtTopSpeed,
        double engineSpeedAtTopSpeed,
        double revLimit,
        List<Integer> gearsUsed,
        double[] timeInGear,
        double limiterTime,
        double limiterCost,
        double freeRevLimit,
        List<GearingShift> shifts) {
    public GearingLap {
        gearsUsed = List.copyOf(gearsUsed);
        timeInGear = timeInGear.clone();
        shifts = List.copyOf(shifts);
    }

    @Override
    public double[] timeInGear() {
        return timeInGear.clone();
    }

    /** Number of gears the car has. */
    public int gears() {
        return timeInGear.length;
    }

    /** Gears the car is never driven in, rising. */
    public List<Integer> gearsUnused() {
        List<Integer> unused = new ArrayList<>();
        for (int gear = 1; gear <= gears(); gear++) {
            if (!gearsUsed.contains(gear)) {
                unused.add(gear);
            }
        }
        return unused;
    }

    /** Whether the highest gear is never used. */
    public boolean topGearUnused() {
        return !gearsUsed.contains(gears());
    }

    /** How far the engine stays below the rev limit at the highest road speed, 1/min. */
    public double headroom() {
        return revLimit - engineSpeedAtTopSpeed;
    }

    /** Upshifts, in driving order. */
    public List<GearingShift> upshifts() {
        return shifts.stream().filter(GearingShift::up).toList();
    }

    /** Upshifts that fall in a corner. */
    public List<GearingShift> upshiftsInCorners() {
        return upshifts().stream().filter(shift -> shift.corner().isPresent()).toList();
    }
}
