package dev.lapwright.study.optimise;

/**
 * How good a point of a search is: first by how far it misses what is demanded, then by what it costs. Rule of Deb, "An
 * efficient constraint handling method for genetic algorithms", Comput. Methods Appl. Mech. Eng. 186 (2000): of two points
 * that meet the demands the cheaper is better, one that meets them beats one that does not, of two that do not the one that
 * misses less is better.
 *
 * @param shortfall 0 where all demands are met, else above 0
 * @param cost the less the better; NaN only where there is none, with a shortfall
 */
record OptimisationScore(double shortfall, double cost) {
    /** Less than this is noise of the last digits, in seconds or in the unit of a shortfall. */
    private static final double NOISE = 1e-9;

    /** Adds to a cost that cannot be had, so that every cost that can is below. */
    private static final double OUT_OF_REACH = 1e6;

    boolean isMet() {
        return shortfall <= 0;
    }

    /** Whether this is better than another by more than noise. */
    boolean beats(OptimisationScore other) {
        if (isMet() != other.isMet()) {
            return isMet();
        }
        return isMet() ? cost < other.cost - NOISE : shortfall < other.shortfall - NOISE;
    }

    /** One number in the same order, for a search that knows no demands. */
    double ranked() {
        return isMet() ? cost : OUT_OF_REACH + shortfall;
    }
}
