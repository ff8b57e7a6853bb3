package dev.lapwright.fit;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Parameters that these laps do not tell apart, or one that they do not tell at all.
 *
 * <p>Along {@code together} the fitted speeds hardly change: moving each parameter by its entry in the map leaves the
 * lap as it is. Entries are in the parameters' own units; where one was held the greatest is as large as is usually in
 * doubt (a tenth of the grip, a fifth of the drag), else each is one standard error.
 * What is known is any sum that such a move leaves alone: of two parameters with entries a and b, the sum x/a − y/b.
 *
 * @param together change of each tied parameter that the laps cannot see; at least one
 * @param held those of them that were held at the car's own value; empty if the tie is loose enough to fit them all
 * @param correlation of the two estimates, −1 to 1, where two are tied loosely; NaN otherwise
 */
public record FitTie(Map<FitParameter, Double> together, List<FitParameter> held, double correlation) {
    public FitTie {
        together = Collections.unmodifiableMap(new LinkedHashMap<>(together));
        held = List.copyOf(held);
    }

    /** The parameters tied, at least one; one alone is not told by these laps at all. */
    public List<FitParameter> parameters() {
        return List.copyOf(together.keySet());
    }
}
