package dev.lapwright.study.optimise;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What an optimisation found.
 *
 * @param car as it was set up before
 * @param circuits that the setup is to serve
 * @param days air, wind and grip it is to serve
 * @param worst whether the least gain on any day was made large, not the mean
 * @param limits it had to keep
 * @param seed of the random numbers
 * @param axes adjustments searched
 * @param kept adjustments left alone
 * @param before the setup that was there before, which need not stand on legal steps
 * @param between the best found between the legal steps
 * @param best the best legal setup; where none was found that keeps the limits, the one that misses them least
 * @param misses limits that it misses; empty where it keeps all
 * @param fewest the setup with few changes: as many adjustments as possible back where they were, at a loss of no more than
 *     {@link Optimisation#FLAT_S} against the best
 * @param flat how flat the optimum is; without setups and ranges where limits are missed
 * @param front setups that no other found beats both in lap time and in top speed, the fastest lap first
 * @param gains where the best gains, for each circuit
 * @param met all legal setups driven that keep the limits, the least cost first
 * @param driven number of setups driven, between the steps and on them
 */
public record OptimisationResult(
        Car car,
        List<OptimisationCircuit> circuits,
        List<Conditions> days,
        boolean worst,
        OptimisationLimits limits,
        long seed,
        List<OptimisationAxis> axes,
        List<OptimisationKept> kept,
        OptimisationPoint before,
        OptimisationPoint between,
        OptimisationPoint best,
        List<OptimisationMiss> misses,
        OptimisationPoint fewest,
        OptimisationFlat flat,
        List<OptimisationPoint> front,
        List<OptimisationGain> gains,
        List<OptimisationPoint> met,
        int driven) {
    public OptimisationResult {
        circuits = List.copyOf(circuits);
        days = List.copyOf(days);
        axes = List.copyOf(axes);
        kept = List.copyOf(kept);
        misses = List.copyOf(misses);
        front = List.copyOf(front);
        gains = List.copyOf(gains);
        met = List.copyOf(met);
    }

    /** Whether the best setup keeps all limits. */
    public boolean isMet() {
        return misses.isEmpty();
    }

    /** Limits that the setup that was there before misses. */
    public List<OptimisationMiss> missesBefore() {
        return limits.misses(before);
    }

    /** Gain of a setup over the one that was there before, s; positive is faster. */
    public double gain(OptimisationPoint point) {
        return before.lapTime() - point.lapTime();
    }

    /** A setup found, as a setup: what had been set on the car, and the settings searched. */
    public Setup setup(String name, OptimisationPoint point) {
        Map<String, Double> settings = new LinkedHashMap<>(car.settings());
        for (int i = 0; i < axes.size(); i++) {
            settings.put(axes.get(i).name(), point.settings().get(i));
        }
        return new Setup(name, settings);
    }
}
