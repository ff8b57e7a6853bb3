package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class GrowingFileTest {
    @TempDir
    private Path folder;

    @Test
    void readingChangesNothingAndCuttingLeavesWholeLines() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "öne\ntwo\nthr");
        List<String> lines = new ArrayList<>();
        try (GrowingFile grows = GrowingFile.open(file, "list")) {
            assertThat(grows.lines((line, number) -> lines.add(number + line))).isEqualTo("thr");
            assertThat(lines).containsExactly("1öne", "2two");
            assertThat(Files.readString(file)).isEqualTo("öne\ntwo\nthr");
            grows.cut();
            grows.out().write("three\n".getBytes(StandardCharsets.UTF_8));
        }
        assertThat(Files.readString(file)).isEqualTo("öne\ntwo\nthree\n");
    }

    @Test
    void twoDoNotWriteAtOnce() throws IOException {
        Path file = folder.resolve("file");
        try (GrowingFile grows = GrowingFile.open(file, "list")) {
            assertThat(grows.isEmpty()).isTrue();
            assertThatThrownBy(() -> GrowingFile.open(file, "list")).hasMessageContaining("is writing this list");
        }
        assertThatThrownBy(() -> GrowingFile.open(folder, "list")).hasMessageContaining("no file");
    }
}
