package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileSetTest {
    @TempDir
    private Path folder;

    private static SafeFile.Content text(String text) {
        return out -> out.write(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> !file.equals(folder))
                    .map(file -> folder.relativize(file).toString())
                    .sorted()
                    .toList();
        }
    }

    @Test
    void allGetTheirNamesAtOnce() throws IOException {
        Files.writeString(folder.resolve("b.csv"), "old");
        FileSet files = new FileSet(true);
        files.folder(folder.resolve("x/y"));
        files.stage(folder.resolve("x/y/a.csv"), text("1"));
        files.stage(folder.resolve("b.csv"), text("2"));
        assertThat(folder.resolve("b.csv")).hasContent("old");
        assertThat(folder.resolve("x/y/a.csv")).doesNotExist();
        files.commit();
        assertThat(names()).containsExactly("b.csv", "x", "x/y", "x/y/a.csv");
        assertThat(folder.resolve("b.csv")).hasContent("2");
    }

    @Test
    void oneThatCannotHaveItsNameTakesTheOthersBack() throws IOException {
        Files.writeString(folder.resolve("b.csv"), "old");
        FileSet files = new FileSet(true);
        files.folder(folder.resolve("x"));
        files.stage(folder.resolve("x/a.csv"), text("1"));
        files.stage(folder.resolve("b.csv"), text("2"));
        files.stage(folder.resolve("c.csv"), text("3"));
        // A folder with something in it cannot be replaced by a file.
        Files.createDirectories(folder.resolve("c.csv/taken"));
        assertThatThrownBy(files::commit)
                .isInstanceOf(UnwritableFileException.class)
                .hasMessageContaining("c.csv");
        assertThat(names()).containsExactly("b.csv", "c.csv", "c.csv/taken");
        assertThat(folder.resolve("b.csv")).hasContent("old");
    }

    @Test
    void aFileThatCameInBetweenIsNotReplaced() throws IOException {
        FileSet files = new FileSet(false);
        files.stage(folder.resolve("a.csv"), text("1"));
        files.stage(folder.resolve("b.csv"), text("2"));
        Files.writeString(folder.resolve("b.csv"), "theirs");
        assertThatThrownBy(files::commit).hasMessageContaining("the file exists already");
        assertThat(names()).containsExactly("b.csv");
        assertThat(folder.resolve("b.csv")).hasContent("theirs");
    }

    @Test
    void whatIsNotFinishedIsRemoved() throws IOException {
        try (FileSet files = new FileSet(false)) {
            files.folder(folder.resolve("x/y"));
            files.stage(folder.resolve("x/y/a.csv"), text("1"));
        }
        assertThat(names()).isEmpty();
        FileSet files = new FileSet(false);
        files.stage(folder.resolve("a.csv"), text("1"));
        IOException full = new IOException("No space left on device");
        assertThatThrownBy(() -> files.stage(folder.resolve("b.csv"), out -> {
                    throw full;
                }))
                .isInstanceOf(UnwritableFileException.class)
                .hasMessageContaining("No space left on device");
        assertThat(names()).isEmpty();
        assertThatThrownBy(() -> files.stage(folder.resolve("b.csv"), out -> {
                    throw new UncheckedIOException(full);
                }))
                .isInstanceOf(UnwritableFileException.class)
                .hasMessageContaining("No space left on device");
    }

    /** 255 bytes are the most of ext4, XFS, NTFS (in characters) and APFS: each file system's documentation. */
    @Test
    void aNameIsTriedBeforeTheWork() throws IOException {
        Path longest = folder.resolve("a".repeat(251) + ".csv");
        SafeFile.check(longest, false);
        assertThat(names()).isEmpty();
        SafeFile.write(longest, false, "1");
        assertThat(longest).hasContent("1");
        Path longer = folder.resolve("é".repeat(126) + ".csv");
        assertThatThrownBy(() -> SafeFile.check(longer, false))
                .isInstanceOf(UnwritableFileException.class)
                .hasMessageContaining("name too long; give it a shorter name");
    }
}
