package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The reader, which checks documents when Lapwright runs, and the shipped JSON Schema, judged by a validator of its
 * own, refuse the same documents: the faulty ones among the test resources, and all that come from the valid ones by
 * changing one thing at every place.
 */
class SchemaVerdictTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    static Stream<Arguments> faulty() {
        return Stream.of(DocumentKind.values())
                .flatMap(kind -> TestDocuments.files("invalid/" + kind.word(), ".json").stream()
                        .map(file -> Arguments.of(kind, file)));
    }

    @ParameterizedTest
    @MethodSource("faulty")
    void agreeOnAFaultyDocument(DocumentKind kind, Path file) {
        SchemaVerdict verdict =
                new SchemaVerdict(kind, TestDocuments.named(file).text());
        assertThat(verdict.byReader()).isNotEmpty();
        assertThat(verdict.isUnanimous()).as(verdict::toString).isTrue();
    }

    static Stream<Arguments> valid() {
        return ValidDocumentsTest.documents();
    }

    @ParameterizedTest
    @MethodSource("valid")
    void agreeOnEveryChangeOfOneThing(DocumentKind kind, Path file) throws IOException {
        JsonNode document = MAPPER.readTree(TestDocuments.named(file).text());
        List<String> variants = new ArrayList<>();
        vary(document, document, variants);
        // Fewer would mean that the walk through the document did not reach its leaves.
        assertThat(variants.size()).isGreaterThan(20);
        List<String> disputed = variants.stream()
                .map(text -> new SchemaVerdict(kind, text))
                .filter(verdict -> !verdict.isUnanimous())
                .map(SchemaVerdict::toString)
                .toList();
        assertThat(disputed).isEmpty();
    }

    /** Collects the document with each child of {@code node}, and each of theirs, removed or replaced. */
    private static void vary(JsonNode document, JsonNode node, List<String> variants) {
        if (node instanceof ObjectNode object) {
            List<String> names = new ArrayList<>();
            object.fieldNames().forEachRemaining(names::add);
            with(document, variants, () -> object.put("zzz", 1), () -> object.remove("zzz"));
            for (String name : names) {
                JsonNode child = object.get(name);
                with(document, variants, () -> object.remove(name), () -> object.set(name, child));
                replace(document, child, (n, value) -> object.set(name, value), variants);
                vary(document, child, variants);
            }
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                int index = i;
                JsonNode child = array.get(i);
                with(document, variants, () -> array.remove(index), () -> array.insert(index, child));
                replace(document, child, (n, value) -> array.set(index, value), variants);
                vary(document, child, variants);
            }
        }
    }

    private static void replace(
            JsonNode document, JsonNode child, BiConsumer<JsonNode, JsonNode> set, List<String> variants) {
        List<JsonNode> others = List.of(
                NODES.nullNode(),
                NODES.booleanNode(true),
                NODES.booleanNode(false),
                NODES.textNode("zzz"),
                NODES.textNode(""),
                NODES.textNode("two\nlines"),
                NODES.textNode("z".repeat(3000)),
                NODES.numberNode(0),
                NODES.numberNode(1),
                NODES.numberNode(-3e9),
                NODES.numberNode(3e9),
                NODES.numberNode(1e-3),
                NODES.arrayNode(),
                NODES.objectNode());
        for (JsonNode other : others) {
            with(document, variants, () -> set.accept(child, other), () -> set.accept(child, child));
        }
    }

    private static void with(JsonNode document, List<String> variants, Runnable change, Runnable undo) {
        change.run();
        variants.add(document.toString());
        undo.run();
    }
}
