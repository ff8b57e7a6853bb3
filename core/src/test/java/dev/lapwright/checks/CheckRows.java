package dev.lapwright.checks;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.extension.ExtensionContext.Namespace;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.ArgumentsProvider;
import org.junit.jupiter.params.support.AnnotationConsumer;
import org.junit.jupiter.params.support.ParameterDeclarations;

/** Reads the rows of a check file: comma separated, a header first, fields with commas in quotes, # starts a remark. */
final class CheckRows implements ArgumentsProvider, AnnotationConsumer<CheckFile> {
    private static final Namespace CHECKS = Namespace.create(CheckRows.class);

    private CheckFile annotation;

    @Override
    public void accept(CheckFile checkFile) {
        annotation = checkFile;
    }

    @Override
    public Stream<Arguments> provideArguments(ParameterDeclarations parameters, ExtensionContext context)
            throws IOException {
        // The root's store is closed when the whole run has ended; the log is written then.
        ValidationLog log = context.getRoot()
                .getStore(CHECKS)
                .getOrComputeIfAbsent(ValidationLog.class, key -> new ValidationLog(), ValidationLog.class);
        Set<String> wanted = Set.of(annotation.quantities());
        List<Arguments> rows = new ArrayList<>();
        for (CheckRow row : read(annotation.value(), log)) {
            if (wanted.isEmpty() || wanted.contains(row.quantity())) {
                rows.add(Arguments.of(row));
            }
        }
        if (rows.isEmpty()) {
            throw new IllegalStateException("no row of " + annotation.value() + " is of kind " + wanted);
        }
        return rows.stream();
    }

    private static List<CheckRow> read(String file, ValidationLog log) throws IOException {
        String text;
        try (InputStream in = CheckRows.class.getResourceAsStream("/checks/" + file)) {
            if (in == null) {
                throw new IllegalStateException("there is no check file " + file);
            }
            text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        List<String> header = null;
        List<CheckRow> rows = new ArrayList<>();
        int number = 0;
        for (String line : text.split("\\R")) {
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
            rows.add(new CheckRow(file, number, row, log));
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
