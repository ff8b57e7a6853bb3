package dev.lapwright.car;

import dev.lapwright.fault.Check;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Settings for a car: adjustment name, or quantity name, to value, in the unit of each. What is not named stays as the car's
 * document has it. Immutable; keeps the order in which settings were given.
 *
 * @param name for people
 * @param settings by name
 */
public record Setup(String name, Map<String, Double> settings) {
    /** The car as its document describes it. */
    public static final Setup STANDARD = new Setup("standard", Map.of());

    public Setup {
        settings.forEach(Check::finite);
        settings = Collections.unmodifiableMap(new LinkedHashMap<>(settings));
    }

    /** The same setup with one setting changed or added. */
    public Setup with(String setting, double value) {
        Map<String, Double> changed = new LinkedHashMap<>(settings);
        changed.put(setting, value);
        return new Setup(name, changed);
    }

    /** The same settings under another name. */
    public Setup named(String newName) {
        return new Setup(newName, settings);
    }
}
