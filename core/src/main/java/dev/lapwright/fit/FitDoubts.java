package dev.lapwright.fit;

import dev.lapwright.fault.Check;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;

/**
 * Doubts with which the nuisances of a fit are taken, one standard deviation each, in the nuisance's unit; 0 is known exactly.
 * Immutable.
 */
public final class FitDoubts {
    /** The usual doubt of each nuisance: {@link FitNuisance#usual}. */
    public static final FitDoubts USUAL = new FitDoubts(Map.of());

    private final Map<FitNuisance, Double> stated;

    private FitDoubts(Map<FitNuisance, Double> stated) {
        this.stated = stated;
    }

    /** No doubt at all: everything that is not fitted is exactly as given, and intervals know of noise alone. */
    public static FitDoubts none() {
        FitDoubts none = USUAL;
        for (FitNuisance nuisance : FitNuisance.values()) {
            none = none.with(nuisance, 0);
        }
        return none;
    }

    /** These with one stated: 0 to a hundred times what is usual. */
    public FitDoubts with(FitNuisance nuisance, double doubt) {
        Check.inRange("doubt of " + nuisance.title(), doubt, 0, 100 * nuisance.usual());
        Map<FitNuisance, Double> all = new EnumMap<>(FitNuisance.class);
        all.putAll(stated);
        all.put(nuisance, doubt);
        return new FitDoubts(Collections.unmodifiableMap(all));
    }

    /** Doubt of a nuisance, in its unit. */
    public double of(FitNuisance nuisance) {
        return stated.getOrDefault(nuisance, nuisance.usual());
    }

    /** Whether it was stated, and is not just the usual one. */
    public boolean isStated(FitNuisance nuisance) {
        return stated.containsKey(nuisance);
    }
}
