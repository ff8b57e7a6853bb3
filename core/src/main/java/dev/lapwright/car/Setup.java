package dev.lapwright.car;

import dev.lapwright.fault.Check;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Settings for a car: adjustment name, or quantity name, to value, in the unit of each. What is not named stays as the car's
 * document has it. Immutable; keeps the order in which settings were given.
 *
 * @param name for people
 * @param settings by name
 * @param notes on what was read otherwise than it was written, whole sentences; may be empty
 */
public record Setup(String name, Map<String, Double> settings, List<String> notes) {
    /** The car as its document describes it. */
    public static final Setup STANDARD = new Setup("standard", Map.of());

    public Setup {
        settings.forEach(Check::finite);
        notes = List.copyOf(notes);
        settings = Collections.unmodifiableMap(new LinkedHashMap<>(settings));
    }

    /** A setup without notes. */
    public Setup(String name, Map<String, Double> settings) {
        this(name, settings, List.of());
    }

    /** The same setup with one setting changed or added. */
    public Setup with(String setting, double value) {
        Map<String, Double> changed = new LinkedHashMap<>(settings);
        changed.put(setting, value);
        return new Setup(name, changed, notes);
    }

    /** The same settings under another name. */
    public Setup named(String newName) {
        return new Setup(newName, settings, notes);
    }
}
