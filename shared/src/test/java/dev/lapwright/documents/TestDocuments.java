package dev.lapwright.documents;

import dev.lapwright.files.DocumentSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;

/** The documents among the test resources. */
public final class TestDocuments {
    private TestDocuments() {}

    /** Files of a folder such as {@code valid/car}, in order of their names. */
    public static List<Path> files(String folder, String ending) {
        try (Stream<Path> files = Files.list(root().resolve(folder))) {
            return files.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static Path root() {
        try {
            return Path.of(Objects.requireNonNull(TestDocuments.class.getResource("/documents"))
                    .toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    public static DocumentSource source(String file) {
        Path path = root().resolve(file);
        return named(path);
    }

    /** A document under its bare file name, so that messages do not depend on the machine. */
    public static DocumentSource named(Path path) {
        return new DocumentSource(
                path.getFileName().toString(), DocumentSource.ofFile(path).text());
    }

    /** Reads a document of any kind; a setup is for the complete car. */
    public static Object read(DocumentKind kind, DocumentSource source) {
        return switch (kind) {
            case CAR -> Documents.car(source);
            case SETUP -> Documents.setup(source, Documents.car(source("valid/car/complete.json")));
            case CIRCUIT -> Documents.circuit(source);
            case CONDITIONS -> Documents.conditions(source);
            case LINE -> Documents.line(source);
        };
    }
}
