package dev.lapwright.documents;

import dev.lapwright.car.Quantity;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The shape of a car document as the paths of {@link Quantity} give it: sections within sections, each with its
 * quantities. Made from that enum, so that nothing is listed twice.
 */
final class CarSection {
    private static final CarSection ROOT = make();

    private final String path;
    private final Map<Quantity, NumberField> quantities = new LinkedHashMap<>();
    private final Map<String, CarSection> sections = new LinkedHashMap<>();

    private CarSection(String path) {
        this.path = path;
    }

    /** The whole document. */
    static CarSection root() {
        return ROOT;
    }

    private static CarSection make() {
        CarSection root = new CarSection("");
        for (Quantity quantity : Quantity.values()) {
            String[] parts = quantity.path().split("\\.");
            CarSection section = root;
            for (int i = 0; i < parts.length - 1; i++) {
                section = section.child(parts[i]);
            }
            section.quantities.put(quantity, NumberField.of(quantity));
        }
        return root;
    }

    private CarSection child(String name) {
        return sections.computeIfAbsent(name, n -> new CarSection(path.isEmpty() ? n : path + "." + n));
    }

    /** Sections in which each field name stands, from this section on. */
    Map<String, List<String>> homes() {
        Map<String, List<String>> homes = new HashMap<>();
        quantities.values().forEach(field -> field.names().forEach(name -> homes.put(name, List.of(path))));
        sections.values()
                .forEach(section -> section.homes().forEach((name, paths) -> {
                    List<String> all = new ArrayList<>(homes.getOrDefault(name, List.of()));
                    all.addAll(paths);
                    homes.put(name, all);
                }));
        return homes;
    }

    /** Quantities that stand in this section itself. */
    Map<Quantity, NumberField> quantities() {
        return quantities;
    }

    /** Sections within this one, by name. */
    Map<String, CarSection> sections() {
        return sections;
    }

    /** Path of the section, {@code suspension.front}; empty for the document. */
    String path() {
        return path;
    }

    /** Whether it holds something that must be given. */
    boolean isRequired() {
        return !requiredNames().isEmpty();
    }

    /** Names of what must be given, from this section on: {@code front.springNPerMm}. */
    List<String> requiredNames() {
        List<String> names = new ArrayList<>();
        quantities.forEach((quantity, field) -> {
            if (quantity.isRequired()) {
                names.add(field.name());
            }
        });
        sections.forEach((name, section) -> section.requiredNames().forEach(inner -> names.add(name + "." + inner)));
        return names;
    }
}
