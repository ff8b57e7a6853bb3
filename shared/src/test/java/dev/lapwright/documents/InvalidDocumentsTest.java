package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import dev.lapwright.files.DocumentSource;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each faulty document among the test resources has beside it the message that a user shall read, word for word. */
class InvalidDocumentsTest {
    /** Faulty documents of a kind; those that are not JSON at all are read as conditions. */
    static Stream<Arguments> documents() {
        Stream<Arguments> kinds = Stream.of(DocumentKind.values()).flatMap(kind -> of(kind, kind.word()));
        return Stream.concat(kinds, of(DocumentKind.CONDITIONS, "syntax"));
    }

    private static Stream<Arguments> of(DocumentKind kind, String folder) {
        return TestDocuments.files("invalid/" + folder, ".json").stream().map(file -> Arguments.of(kind, file));
    }

    @ParameterizedTest
    @MethodSource("documents")
    void isRefusedInTheseWords(DocumentKind kind, Path file) throws IOException {
        String words = Files.readString(Path.of(file.toString().replace(".json", ".txt")), StandardCharsets.UTF_8);
        DocumentException refusal = refusal(kind, TestDocuments.named(file));
        assertThat(refusal.getMessage() + "\n").isEqualTo(words);
    }

    @Test
    void oneFaultIsOneLine() {
        DocumentException refusal =
                refusal(DocumentKind.CONDITIONS, TestDocuments.source("invalid/conditions/out-of-range.json"));
        assertThat(refusal.getMessage()).doesNotContain("\n");
    }

    @Test
    void severalFaultsAreALineEachUnderTheFilesName() {
        DocumentException refusal =
                refusal(DocumentKind.CONDITIONS, TestDocuments.source("invalid/conditions/several-faults.json"));
        assertThat(refusal.getMessage().lines()).hasSize(1 + refusal.faults().size());
    }

    @Test
    void aFaultSaysWhereItIs() {
        DocumentException refusal =
                refusal(DocumentKind.CIRCUIT, TestDocuments.source("invalid/circuit/radius-too-small.json"));
        DocumentFault fault = refusal.faults().get(0);
        assertThat(refusal.source()).isEqualTo("radius-too-small.json");
        assertThat(fault.path()).isEqualTo("segments[1].radiusM");
        assertThat(fault.line()).isEqualTo(7);
        assertThat(fault.column()).isEqualTo(21);
        assertThat(fault.kind()).isEqualTo(DocumentFault.Kind.FORM);
    }

    @Test
    void aFloodOfFaultsIsCutShortInTheMessageOnly() {
        StringBuilder text = new StringBuilder("{ \"lapwright\": \"conditions/1\", \"name\": \"Day\"");
        for (int i = 0; i < 50; i++) {
            text.append(", \"zzzzzzzz").append(i).append("\": 1");
        }
        DocumentException refusal = refusal(
                DocumentKind.CONDITIONS,
                new DocumentSource("flood.json", text.append("}").toString()));
        assertThat(refusal.faults()).hasSize(50);
        assertThat(refusal.getMessage()).startsWith("flood.json: 50 faults\n").endsWith("\n  and 30 more");
    }

    @Test
    void aTextThatEndsInsideQuotesIsRefused() {
        DocumentException refusal =
                refusal(DocumentKind.CONDITIONS, new DocumentSource("cut.json", "{\n  \"name\": \"Da"));
        assertThat(refusal.getMessage())
                .isEqualTo("cut.json, line 2, column 14: the text ends inside quotes; close them with \"");
    }

    @Test
    void nestingWithoutEndIsRefused() {
        String text = "[".repeat(100_000);
        DocumentException refusal = refusal(DocumentKind.CONDITIONS, new DocumentSource("deep.json", text));
        assertThat(refusal.getMessage())
                .startsWith("deep.json, line 1, column ")
                .contains("objects nested too deep");
    }

    static DocumentException refusal(DocumentKind kind, DocumentSource source) {
        DocumentException refusal =
                catchThrowableOfType(DocumentException.class, () -> TestDocuments.read(kind, source));
        assertThat(refusal).as("%s was accepted", source.name()).isNotNull();
        return refusal;
    }
}
