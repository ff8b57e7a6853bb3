package dev.lapwright.checks;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Collects what the checks computed and, when the run ends, writes one table for each check file to
 * {@code target/validation}, rows in the order of the file.
 */
final class ValidationLog implements AutoCloseable {
    private static final String HEADER = "check,source,provenance,seen,unit,expected,computed,error,tolerance,reason\n";
    private static final Path FOLDER = Path.of("target", "validation");

    private final Map<String, SortedMap<Integer, String>> tables = new ConcurrentHashMap<>();

    void add(String file, int line, CheckRow row, double computed) {
        String text = String.join(
                ",",
                quoted(row.toString()),
                quoted(row.text("source")),
                quoted(row.text("provenance")),
                quoted(row.text("seen")),
                quoted(row.text("unit")),
                row.text("expected"),
                number("%.10g", computed),
                number("%.3g", computed - row.expected()),
                number("%.3g", row.tolerance()),
                quoted(row.text("tolerance_reason")));
        SortedMap<Integer, String> table = tables.computeIfAbsent(file, f -> new TreeMap<>());
        synchronized (table) {
            table.put(line, text);
        }
    }

    private static String number(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }

    @Override
    public void close() {
        try {
            Files.createDirectories(FOLDER);
            for (String file :
                    tables.keySet().stream().sorted(Comparator.naturalOrder()).toList()) {
                StringBuilder text = new StringBuilder(HEADER);
                tables.get(file).values().forEach(line -> text.append(line).append('\n'));
                Files.writeString(FOLDER.resolve(file), text);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
