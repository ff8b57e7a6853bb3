package dev.lapwright.demo;

import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The demo documents as they lie in this module's resources, parsed strictly. */
final class DemoFiles {
    static final Path ROOT = Path.of("src", "main", "resources", "dev", "lapwright", "demo");

    /** Folder of each kind of document. */
    static final Map<String, String> FOLDERS =
            Map.of("car", "cars", "circuit", "circuits", "setup", "setups", "conditions", "conditions");

    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private DemoFiles() {}

    static JsonNode read(Path file) {
        try {
            return MAPPER.readTree(Files.readString(file));
        } catch (IOException e) {
            throw new UncheckedIOException(file.toString(), e);
        }
    }

    /** Entries of the index. */
    static List<JsonNode> index() {
        return read(ROOT.resolve("index.json")).path("demos").valueStream().toList();
    }

    /** Entries of the index for surveys. */
    static List<JsonNode> surveys() {
        return read(ROOT.resolve("index.json")).path("surveys").valueStream().toList();
    }

    /** Entries of the index for lap logs. */
    static List<JsonNode> logs() {
        return read(ROOT.resolve("index.json")).path("logs").valueStream().toList();
    }

    /** Documents of a kind by name, the file's without its ending. */
    static Map<String, JsonNode> ofKind(String kind) {
        Map<String, JsonNode> documents = new TreeMap<>();
        for (Path file : files(ROOT.resolve(FOLDERS.get(kind)))) {
            String name = file.getFileName().toString();
            documents.put(name.substring(0, name.length() - ".json".length()), read(file));
        }
        return documents;
    }

    /** All files below a folder. */
    static List<Path> files(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
