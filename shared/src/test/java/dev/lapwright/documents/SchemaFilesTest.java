package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.text.ClassPathText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The schemas shipped are those made from the fields by which documents are read; those of a car come from
 * {@link dev.lapwright.car.Quantity}. To write them anew after a change:
 *
 * <pre>mvn -q -pl shared -am test -Dtest=SchemaFilesTest -Dsurefire.failIfNoSpecifiedTests=false -Dschemas.write=true</pre>
 */
class SchemaFilesTest {
    @ParameterizedTest
    @EnumSource(DocumentKind.class)
    void theShippedSchemaIsMadeFromTheFieldsThatAreRead(DocumentKind kind) throws IOException {
        String expected = DocumentSchemas.text(kind);
        if (Boolean.getBoolean("schemas.write")) {
            Path folder = Path.of("src/main/resources/" + ClassPathText.SCHEMAS);
            Files.createDirectories(folder);
            Files.writeString(folder.resolve(kind.word() + ".schema.json"), expected);
        } else {
            assertThat(Documents.schemaText(kind)).isEqualTo(expected);
        }
    }
}
