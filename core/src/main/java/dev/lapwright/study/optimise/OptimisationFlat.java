package dev.lapwright.study.optimise;

import java.util.List;

/**
 * How flat the optimum is: legal setups no slower than the best by more than {@link Optimisation#FLAT_S} that keep the limits.
 *
 * @param setups those found, the best first
 * @param complete whether these are all that single steps lead to from the best without leaving them; if not, the search was
 *     ended with more to be found
 * @param ranges one for each adjustment searched
 */
public record OptimisationFlat(List<OptimisationPoint> setups, boolean complete, List<OptimisationRange> ranges) {
    public OptimisationFlat {
        setups = List.copyOf(setups);
        ranges = List.copyOf(ranges);
    }
}
