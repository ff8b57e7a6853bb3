package dev.lapwright.study.advice;

import dev.lapwright.car.Caution;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.ride.DamperClicks;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Advice for a car that does not take kerbs: a wheel of each axle over the kerb of the study of ride ({@link
 * dev.lapwright.study.ride.RoadInput#STANDARD}), as the car stands and with one step of each adjustment.
 *
 * @param speed m/s: that of the slowest corner, where kerbs are ridden most (common practice, no source)
 * @param now passes as the car stands, front axle first; empty where there are none
 * @param steps that ease it, at most {@link AdviceResult#MOST_CHOICES}: first those that make no complaint of the balance worse, of these those
 *     that the lap time does not move with, then those that cost none that counts, and among these by how much they ease it
 * @param problem why the kerb was not driven over; empty where it was
 */
public record OverKerb(double speed, List<RidePass> now, List<Step> steps, String problem) {
    public OverKerb {
        now = List.copyOf(now);
        steps = List.copyOf(steps);
    }

    /**
     * Step of one adjustment that eases it.
     *
     * @param adjustment its name
     * @param from setting now
     * @param to setting one step away
     * @param passes with it, front axle first
     * @param gains balance gained against each complaint of it, m/s² of lateral acceleration; negative where it makes one worse
     * @param difference of the lap time, s, minus where faster
     * @param doubt how that stands on drawn cars; empty where none were drawn, or the lap time does not move with it
     * @param cautions where it can hurt
     */
    public record Step(
            String adjustment,
            double from,
            double to,
            List<RidePass> passes,
            List<Double> gains,
            double difference,
            Optional<RobustnessResult.Standing> doubt,
            Set<Caution> cautions) {
        public Step {
            passes = List.copyOf(passes);
            gains = List.copyOf(gains);
            cautions = Set.copyOf(cautions);
        }
    }

    /** Variation of the contact load, mean of both axles, percent of the load at rest: the study's first measure. */
    public static double variation(List<RidePass> passes) {
        return passes.stream().mapToDouble(RideMeasure.LOAD::of).average().orElse(Double.NaN);
    }

    /** What other passes make of it: below nought where they ease it, and nought where nobody could tell. */
    static double change(List<RidePass> before, List<RidePass> after) {
        double change = variation(after) - variation(before);
        return Math.abs(change) < DamperClicks.SAME ? 0 : change;
    }
}
