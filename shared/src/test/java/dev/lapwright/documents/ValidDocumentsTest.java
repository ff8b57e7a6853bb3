package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.lapwright.files.DocumentSource;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class ValidDocumentsTest {
    static Stream<Arguments> documents() {
        return Stream.of(DocumentKind.values())
                .flatMap(kind -> TestDocuments.files("valid/" + kind.word(), ".json").stream()
                        .map(file -> Arguments.of(kind, file)));
    }

    @ParameterizedTest
    @MethodSource("documents")
    void isReadAndFitsItsSchema(DocumentKind kind, Path file) {
        DocumentSource source = TestDocuments.named(file);
        assertThat(TestDocuments.read(kind, source)).isNotNull();
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(Documents.schemaText(kind), InputFormat.JSON);
        assertThat(schema.validate(source.text(), InputFormat.JSON)).isEmpty();
    }
}
