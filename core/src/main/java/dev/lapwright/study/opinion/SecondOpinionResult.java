package dev.lapwright.study.opinion;

import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Limit;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Both models' words on changes of a setup. Differences are lap times less that of the car that a change is held against: below zero is faster.
 *
 * @param fast lap of the car as it stands by the fast model
 * @param fuller the same by the fuller one; empty where that has none
 * @param refusal why it has none
 * @param opinions on each change, in the order they were asked for
 */
public record SecondOpinionResult(Lap fast, Optional<Lap> fuller, Optional<String> refusal, List<Opinion> opinions) {
    public SecondOpinionResult {
        opinions = List.copyOf(opinions);
    }

    /** What both models together leave of a change. */
    public enum Verdict {
        /** Both call it a gain that counts. */
        BOTH_GAIN,
        /** Neither calls it a gain that counts. */
        NO_GAIN,
        /** One calls it a gain that counts and the other a smaller one; or none, within what is in doubt or the other way round. */
        OPEN,
        /** The fuller model calls what the fast one gains no gain at all, by more than what is in doubt. */
        CONTRADICTED,
        /** The fuller model has no lap. */
        UNKNOWN
    }

    /**
     * Both models' words on one change.
     *
     * @param name of the change, for people
     * @param fast difference by the fast model, s; NaN where it has no lap
     * @param fuller the same by the fuller model
     * @param places corners and what lies between them, in driving order; empty where a model has no lap
     * @param apart the fuller model's difference less the fast one's by what limits the cars, s; adds up to that of the lap
     */
    public record Opinion(String name, double fast, double fuller, List<Place> places, Map<Limit, Double> apart) {
        public Opinion {
            places = List.copyOf(places);
            Map<Limit, Double> copy = new EnumMap<>(Limit.class);
            copy.putAll(apart);
            apart = copy;
        }

        /** By limit; a copy. */
        @Override
        public Map<Limit, Double> apart() {
            return new EnumMap<>(apart);
        }

        /**
         * What both together leave of the change.
         *
         * @param counts least difference that counts as one, s
         * @param doubt by how much the fast model's difference may be off for what is not known of the car, s
         */
        public Verdict verdict(double counts, double doubt) {
            if (Double.isNaN(fast) || Double.isNaN(fuller)) {
                return Verdict.UNKNOWN;
            }
            if (fast > -counts) {
                return fuller > -counts ? Verdict.NO_GAIN : Verdict.OPEN;
            }
            if (fuller <= -counts) {
                return Verdict.BOTH_GAIN;
            }
            return !LapTimeDifference.isFaster(fuller) && fuller - fast > doubt ? Verdict.CONTRADICTED : Verdict.OPEN;
        }

        /**
         * The corner where they part most, in the direction in which they do; empty if they part in none. On a straight they part by the speed at
         * which a corner was left.
         */
        public Optional<Place> most() {
            double sign = Math.signum(fuller - fast);
            return places.stream()
                    .filter(place -> place.corner() && sign * (place.fuller() - place.fast()) > 0)
                    .max(Comparator.comparingDouble(place -> sign * (place.fuller() - place.fast())));
        }
    }

    /**
     * Both models' words on one part of the lap.
     *
     * @param label the corner, or the corners that a straight lies between
     * @param corner whether it is a corner
     * @param fast difference of the time there by the fast model, s
     * @param fuller the same by the fuller one
     * @param fastLimit what limits the car as it stands where it is slowest there, by the fast model
     * @param fullerLimit the same by the fuller one
     */
    public record Place(String label, boolean corner, double fast, double fuller, Limit fastLimit, Limit fullerLimit) {}
}
