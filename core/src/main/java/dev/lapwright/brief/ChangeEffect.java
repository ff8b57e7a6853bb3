package dev.lapwright.brief;

import dev.lapwright.lap.Limit;
import dev.lapwright.study.compare.Comparison;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a change does to the lap, where, and by what. Gains are positive where the change is faster.
 *
 * @param comparison the lap without the change first, the lap with it second; its differences are negative where the change
 *     is faster
 */
public record ChangeEffect(Comparison comparison) {
    /** Of the whole lap, s. */
    public double gain() {
        return -comparison.difference();
    }

    /** In each timing sector, s; adds up to the whole. */
    public List<Double> sectorGains() {
        List<Double> gains = new ArrayList<>();
        for (double difference : comparison.bySector()) {
            gains.add(-difference);
        }
        return gains;
    }

    /** Number of the timing sector, from 1, that changes most in the direction of the whole; of equals the first. */
    public int mainSector() {
        double sign = Math.signum(gain());
        List<Double> gains = sectorGains();
        int main = 0;
        for (int i = 1; i < gains.size(); i++) {
            if (sign * gains.get(i) > sign * gains.get(main)) {
                main = i;
            }
        }
        return main + 1;
    }

    /** Corners and straights, the one that gains most first, the one that loses most last. */
    public List<Comparison.Part> places() {
        return comparison.parts().stream()
                .sorted(Comparator.comparingDouble(Comparison.Part::difference))
                .toList();
    }

    /** In all corners together, s. */
    public double inCorners() {
        return -comparison.inCorners();
    }

    /** On all straights together, s. */
    public double onStraights() {
        return -comparison.onStraights();
    }

    /** By what limits the car, s; adds up to the whole. A copy. */
    public Map<Limit, Double> byCause() {
        Map<Limit, Double> gains = new EnumMap<>(Limit.class);
        comparison.byCause().forEach((limit, seconds) -> gains.put(limit, -seconds));
        return gains;
    }
}
