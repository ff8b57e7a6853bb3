package dev.lapwright.documents;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Plan of many laps as it is written down: every car at every circuit in all conditions, with settings by a design.
 *
 * @param name for people
 * @param cars files, or names of demos
 * @param circuits the same
 * @param conditions the same; none for a standard day
 * @param line word for the line that is driven
 * @param design one of {@link #DESIGNS}
 * @param points of a design that is no grid
 * @param seed of a Latin hypercube
 * @param vary values by what is varied, as a user types them behind {@code --vary}; empty for an adjustment's whole range
 */
public record PlanDocument(
        String name,
        List<String> cars,
        List<String> circuits,
        List<String> conditions,
        String line,
        String design,
        int points,
        long seed,
        Map<String, String> vary) {
    /** All combinations. */
    public static final String GRID = "grid";
    /** Evenly on each axis. */
    public static final String LATIN_HYPERCUBE = "latin hypercube";
    /** Evenly in the room. */
    public static final String SOBOL = "sobol";
    /** All designs. */
    public static final List<String> DESIGNS = List.of(GRID, LATIN_HYPERCUBE, SOBOL);

    public PlanDocument {
        cars = List.copyOf(cars);
        circuits = List.copyOf(circuits);
        conditions = List.copyOf(conditions);
        vary = Collections.unmodifiableMap(new LinkedHashMap<>(vary));
    }

    /** Values by what is varied, in the order of the document. */
    @Override
    public Map<String, String> vary() {
        return new LinkedHashMap<>(vary);
    }
}
