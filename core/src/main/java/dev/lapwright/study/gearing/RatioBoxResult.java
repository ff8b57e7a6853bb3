package dev.lapwright.study.gearing;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Best combination of the ratios in the box for each number of things changed.
 *
 * @param circuits by name
 * @param lapTimes of the car as it stands on each, s
 * @param choices by number of things changed, from none; a number that no combination has is left out
 * @param driven how many combinations there are
 */
public record RatioBoxResult(List<String> circuits, List<Double> lapTimes, List<Choice> choices, int driven) {
    public RatioBoxResult {
        circuits = List.copyOf(circuits);
        lapTimes = List.copyOf(lapTimes);
        choices = List.copyOf(choices);
    }

    /**
     * Combination.
     *
     * @param changed what is changed, by name; unmodifiable
     * @param minutes that the work takes
     * @param lapTimes on each circuit, s; in a result the differences to the car as it stands, minus is faster
     * @param mean of those, by weight
     */
    public record Choice(Map<String, Double> changed, double minutes, List<Double> lapTimes, double mean) {
        public Choice {
            changed = Collections.unmodifiableMap(new LinkedHashMap<>(changed));
            lapTimes = List.copyOf(lapTimes);
        }

        /** The same as differences to another. */
        Choice beside(Choice other) {
            List<Double> differences = new ArrayList<>();
            for (int i = 0; i < lapTimes.size(); i++) {
                differences.add(lapTimes.get(i) - other.lapTimes.get(i));
            }
            return new Choice(changed, minutes, differences, mean - other.mean);
        }
    }

    /** The fastest of all. */
    public Choice best() {
        return choices.stream()
                .min((a, b) -> Double.compare(a.mean(), b.mean()))
                .orElseThrow();
    }
}
