package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.tables.DoubtTables;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The page on doubt holds the table of classes as it is. */
class DoubtPageTest {
    @Test
    void theTableOfClassesIsTheRealOne() throws IOException {
        assertThat(Files.readString(Path.of("..", "docs", "doubt.md")))
                .contains(String.join("\n", DoubtTables.classes()));
    }
}
