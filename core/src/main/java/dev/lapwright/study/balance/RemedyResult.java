package dev.lapwright.study.balance;

import dev.lapwright.car.Caution;
import dev.lapwright.lap.LapTimeDifference;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Remedies found against a complaint.
 *
 * @param complaint of the driver
 * @param understeer what the model says of it: mean over the corners complained of of rear less front limit, m/s²
 * @param steps all that were tried, whether they help or not, in the order of the car's adjustments
 * @param remedies against it, best first: those that cost no time by what they gain, then the others by what they gain
 *     per tenth of a second
 * @param belowTheLimit steps that leave the limits as they are and move the understeer gradient against the complaint
 * @param failures steps that give no car or no lap, and why
 */
public record RemedyResult(
        BalanceComplaint complaint,
        double understeer,
        List<Remedy> steps,
        List<Remedy> remedies,
        List<Remedy> belowTheLimit,
        List<String> failures) {
    public RemedyResult {
        steps = List.copyOf(steps);
        remedies = List.copyOf(remedies);
        belowTheLimit = List.copyOf(belowTheLimit);
        failures = List.copyOf(failures);
    }

    /** Whether the model has the axle give up first of which the driver complains. */
    public boolean isConfirmed() {
        return complaint.understeer() ? understeer > 0 : understeer < 0;
    }

    /**
     * Step of one adjustment, and what it does.
     *
     * @param adjustment its name
     * @param from setting now
     * @param to setting one step away
     * @param gain balance gained in the phase complained of, m/s² of lateral acceleration, positive against the complaint
     * @param difference of the lap time, s, minus where faster
     * @param shifts change of rear less front limit by phase, mean over the corners, m/s², positive towards understeer; the
     *     phase complained of over the corners complained of
     * @param disturbed phases, other than that complained of, whose limits part further
     * @param gradientShift change of the understeer gradient at rest without what toe adds, rad per m/s²
     * @param cautions where it can hurt
     */
    public record Remedy(
            String adjustment,
            double from,
            double to,
            double gain,
            double difference,
            Map<BalancePhase, Double> shifts,
            List<BalancePhase> disturbed,
            double gradientShift,
            Set<Caution> cautions) {
        private static final double TENTH = 0.1;

        public Remedy {
            Map<BalancePhase, Double> copy = new EnumMap<>(BalancePhase.class);
            copy.putAll(shifts);
            shifts = Collections.unmodifiableMap(copy);
            disturbed = List.copyOf(disturbed);
            cautions = Set.copyOf(cautions);
        }

        /** Whether it costs no lap time that counts. */
        public boolean isFree() {
            return difference < LapTimeDifference.COUNTS;
        }

        /** Balance gained per tenth of a second lost or gained, m/s²; what does not count stands for the least that does. */
        public double gainPerTenth() {
            return gain * TENTH / Math.max(LapTimeDifference.COUNTS, Math.abs(difference));
        }
    }
}
