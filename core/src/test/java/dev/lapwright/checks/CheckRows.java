package dev.lapwright.checks;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.ArgumentsProvider;
import org.junit.jupiter.params.support.AnnotationConsumer;
import org.junit.jupiter.params.support.ParameterDeclarations;

/** Reads the rows of a check file: comma separated, a header first, fields with commas in quotes, # starts a remark. */
final class CheckRows implements ArgumentsProvider, AnnotationConsumer<CheckFile> {
    private CheckFile annotation;

    @Override
    public void accept(CheckFile checkFile) {
        annotation = checkFile;
    }

    @Override
    public Stream<Arguments> provideArguments(ParameterDeclarations parameters, ExtensionContext context)
            throws IOException {
        return of(annotation).stream().map(Arguments::of);
    }

    /** The rows that an annotation asks for; an error if there are none. */
    static List<CheckRow> of(CheckFile annotation) throws IOException {
        Set<String> wanted = Set.of(annotation.quantities());
        List<CheckRow> rows = new ArrayList<>();
        for (CheckRow row : read(annotation.value())) {
            if (wanted.isEmpty() || wanted.contains(row.quantity())) {
                rows.add(row);
            }
        }
        if (rows.isEmpty()) {
            throw new IllegalStateException("no row of " + annotation.value() + " is of kind " + wanted);
        }
        return rows;
    }

    /** All rows of a file. */
    static List<CheckRow> read(String file) throws IOException {
        List<CheckRow> rows = new ArrayList<>();
        table(file).forEach((line, fields) -> rows.add(new CheckRow(file, line, fields)));
        return rows;
    }

    /** What a file says of itself above its header, in one paragraph. */
    static String remarks(String file) throws IOException {
        return lines(file).stream()
                .takeWhile(line -> line.startsWith("#"))
                .map(line -> line.substring(1).strip())
                .collect(Collectors.joining(" "));
    }

    private static List<String> lines(String file) throws IOException {
        try (InputStream in = CheckRows.class.getResourceAsStream("/checks/" + file)) {
            if (in == null) {
                throw new IllegalStateException("there is no check file " + file);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
        }
    }

    /** The fields of a file by heading, over the number of the line they stand on. */
    static SortedMap<Integer, Map<String, String>> table(String file) throws IOException {
        List<String> header = null;
        SortedMap<Integer, Map<String, String>> rows = new TreeMap<>();
        int number = 0;
        for (String line : lines(file)) {
            number++;
            if (line.isBlank() || line.startsWith("#")) {
                continue;
            }
            List<String> fields = fields(line);
            if (header == null) {
                header = fields;
                continue;
            }
            if (fields.size() != header.size()) {
                throw new IllegalStateException(file + " line " + number + ": " + fields.size() + " fields under "
                        + header.size() + " headings");
            }
            Map<String, String> row = new LinkedHashMap<>();
            for (int i = 0; i < fields.size(); i++) {
                row.put(header.get(i), fields.get(i));
            }
            rows.put(number, row);
        }
        return rows;
    }

    private static List<String> fields(String line) {
        List<String> fields = new ArrayList<>();
        StringBuilder field = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            if (c == '"') {
                boolean doubled = quoted && i + 1 < line.length() && line.charAt(i + 1) == '"';
                if (doubled) {
                    field.append(c);
                    i++;
                } else {
                    quoted = !quoted;
                }
            } else if (c == ',' && !quoted) {
                fields.add(field.toString());
                field.setLength(0);
            } else {
                field.append(c);
            }
        }
        fields.add(field.toString());
        return fields;
    }
}
