package dev.lapwright.cli.bench;

import dev.lapwright.report.UnitSystem;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Message in the units that a page reads: its tables by the units of their columns, its texts by the measures in them. What is typed or turned keeps its own. */
final class ShownMessage {
    /** Units of what the page draws itself. */
    private static final List<String> DRAWN = List.of("km/h", "m", "kN");

    /** What is no text for people, or is written as somebody types it. */
    private static final Set<String> KEPT = Set.of(
            "absent",
            "car",
            "circuit",
            "fields",
            "file",
            "kind",
            "knobs",
            "label",
            "lay",
            "name",
            "notebook",
            "page",
            "path",
            "place",
            "quantity",
            "range",
            "saved",
            "set",
            "setup",
            "state",
            "study",
            "take",
            "title",
            "type",
            "view",
            "what",
            "worths");

    private ShownMessage() {}

    /** The same message in these units. */
    static Map<String, ?> in(UnitSystem units, Map<String, ?> message) {
        return units == UnitSystem.SI ? message : map(units, message);
    }

    private static Map<String, Object> map(UnitSystem units, Map<?, ?> map) {
        if ("table".equals(map.get("kind"))) {
            return table(units, map);
        }
        Map<String, Object> shown = new LinkedHashMap<>();
        map.forEach(
                (key, value) -> shown.put(key.toString(), KEPT.contains(key.toString()) ? value : value(units, value)));
        return shown;
    }

    private static Object value(UnitSystem units, Object value) {
        if (value instanceof Map<?, ?> map) {
            return map(units, map);
        } else if (value instanceof List<?> list) {
            List<Object> shown = new ArrayList<>();
            list.forEach(item -> shown.add(value(units, item)));
            return shown;
        }
        return value instanceof String text ? units.told(text) : value;
    }

    private static Map<String, Object> table(UnitSystem units, Map<?, ?> table) {
        Map<String, Object> shown = new LinkedHashMap<>();
        List<String> before = new ArrayList<>();
        List<Object> columns = new ArrayList<>();
        for (Object column : (List<?>) table.get("columns")) {
            Map<String, Object> other = new LinkedHashMap<>();
            ((Map<?, ?>) column).forEach((key, value) -> other.put(key.toString(), value));
            String unit = String.valueOf(other.get("unit"));
            before.add(unit);
            other.put("unit", units.symbol(unit));
            columns.add(other);
        }
        List<Object> rows = new ArrayList<>();
        for (Object row : (List<?>) table.get("rows")) {
            List<Object> cells = new ArrayList<>();
            List<?> told = (List<?>) row;
            for (int i = 0; i < told.size(); i++) {
                String text = String.valueOf(told.get(i));
                cells.add(before.get(i).isEmpty() ? units.told(text) : units.numbers(text, before.get(i)));
            }
            rows.add(cells);
        }
        table.forEach((key, value) -> shown.put(key.toString(), value));
        shown.put("caption", value(units, table.get("caption")));
        shown.put("columns", columns);
        shown.put("rows", rows);
        return shown;
    }

    /** Symbols and factors of what the page draws itself, by the units that it is told them in. */
    static Map<String, Object> drawn(UnitSystem units) {
        Map<String, Object> tree = new LinkedHashMap<>();
        for (String unit : DRAWN) {
            tree.put(unit, Map.of("symbol", units.symbol(unit), "factor", units.factor(unit)));
        }
        return tree;
    }
}
