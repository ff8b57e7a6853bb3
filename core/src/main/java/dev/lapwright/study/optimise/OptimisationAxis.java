package dev.lapwright.study.optimise;

import java.util.List;

/**
 * An adjustment that is searched.
 *
 * @param name of the adjustment
 * @param settings legal settings in its unit, rising, at least two
 */
public record OptimisationAxis(String name, List<Double> settings) {
    public OptimisationAxis {
        settings = List.copyOf(settings);
    }

    /** The setting so many steps from the first; between two of them in proportion. */
    double at(double steps) {
        int below = (int) Math.min(Math.floor(steps), settings.size() - 1.0);
        double share = steps - below;
        return share == 0 ? settings.get(below) : (1 - share) * settings.get(below) + share * settings.get(below + 1);
    }

    /** Steps to the legal setting nearest to a setting. */
    int nearest(double setting) {
        int nearest = 0;
        for (int i = 1; i < settings.size(); i++) {
            if (Math.abs(settings.get(i) - setting) < Math.abs(settings.get(nearest) - setting)) {
                nearest = i;
            }
        }
        return nearest;
    }
}
