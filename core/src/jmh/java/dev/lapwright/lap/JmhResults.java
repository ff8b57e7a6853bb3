package dev.lapwright.lap;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Results that JMH wrote as CSV: {@code -rf csv -rff FILE}. */
public final class JmhResults {
    private static final String PARAMETER = "Param: ";

    private final List<Map<String, String>> rows = new ArrayList<>();

    /** Reads a file, whose fields hold no commas. */
    public JmhResults(Path file) throws IOException {
        List<String> lines = Files.readAllLines(file);
        String[] names = fields(lines.get(0));
        for (String line : lines.subList(1, lines.size())) {
            String[] values = fields(line);
            Map<String, String> row = new HashMap<>();
            for (int i = 0; i < values.length; i++) {
                row.put(names[i], values[i]);
            }
            rows.add(row);
        }
    }

    private static String[] fields(String line) {
        return line.replace("\"", "").split(",", -1);
    }

    /**
     * Score of a benchmark, or of what a profiler measured of it.
     *
     * @param benchmark end of its name; for a profiler's figure followed by a colon and the figure's name
     * @param parameters name and value in turn
     */
    public double score(String benchmark, String... parameters) {
        return number("Score", benchmark, parameters);
    }

    /** Half the width of the interval of 99.9 % confidence about the score. */
    public double error(String benchmark, String... parameters) {
        return number("Score Error (99.9%)", benchmark, parameters);
    }

    private double number(String column, String benchmark, String... parameters) {
        for (Map<String, String> row : rows) {
            boolean matches = row.get("Benchmark").endsWith("." + benchmark);
            for (int i = 0; i < parameters.length; i += 2) {
                matches &= parameters[i + 1].equals(row.get(PARAMETER + parameters[i]));
            }
            if (matches) {
                return Double.parseDouble(row.get(column));
            }
        }
        throw new IllegalArgumentException("no result of " + benchmark + " " + String.join(" ", parameters));
    }
}
