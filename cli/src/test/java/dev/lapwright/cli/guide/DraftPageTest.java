package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.tables.DraftTables;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The page on a car in ten questions holds the tables of classes as they are. */
class DraftPageTest {
    @Test
    void theTablesOfClassesAreTheRealOnes() throws IOException {
        assertThat(Files.readString(Path.of("..", "docs", "car-new.md")))
                .contains(String.join("\n", DraftTables.classes()));
    }
}
