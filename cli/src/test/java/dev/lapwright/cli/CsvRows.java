package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads comma-separated values without quotes into rows by column name. */
public final class CsvRows {
    private CsvRows() {}

    public static List<Map<String, String>> of(String text) {
        List<String> lines = text.lines().toList();
        String[] names = lines.get(0).split(",", -1);
        List<Map<String, String>> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            if (cells.length != names.length) {
                throw new AssertionError(cells.length + " cells under " + names.length + " names: " + line);
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < names.length; i++) {
                row.put(names[i], cells[i]);
            }
            rows.add(row);
        }
        return rows;
    }
}
