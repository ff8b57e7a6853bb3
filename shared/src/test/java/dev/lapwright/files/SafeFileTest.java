package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SafeFileTest {
    @TempDir
    Path folder;

    private List<String> filesThere() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void writesTheContentAndNothingElse() throws IOException {
        SafeFile.write(folder.resolve("a.csv"), false, "é,1\n");
        assertThat(Files.readAllBytes(folder.resolve("a.csv"))).isEqualTo("é,1\n".getBytes(StandardCharsets.UTF_8));
        assertThat(filesThere()).containsExactly("a.csv");
    }

    @Test
    void leavesAnExistingFileAlone() throws IOException {
        Path file = folder.resolve("a.csv");
        Files.writeString(file, "old");
        assertThatThrownBy(() -> SafeFile.write(file, false, "new"))
                .isInstanceOf(UnwritableFileException.class)
                .hasMessage(file + ": the file exists already; choose another name, or allow it to be overwritten");
        assertThat(file).hasContent("old");
        assertThat(filesThere()).containsExactly("a.csv");
    }

    @Test
    void overwritesWhenTold() throws IOException {
        Path file = folder.resolve("a.csv");
        Files.writeString(file, "old");
        SafeFile.write(file, true, "new");
        assertThat(file).hasContent("new");
        assertThat(filesThere()).containsExactly("a.csv");
    }

    @Test
    void aFailureHalfWayLeavesTheOldFileWhole() throws IOException {
        Path file = folder.resolve("a.csv");
        Files.writeString(file, "old");
        assertThatThrownBy(() -> SafeFile.write(file, true, out -> {
                    out.write(new byte[100_000]);
                    throw new IOException("No space left on device");
                }))
                .isInstanceOf(UnwritableFileException.class)
                .hasMessage(
                        file + ": the file cannot be written: No space left on device; choose another place, or make"
                                + " room there");
        assertThat(file).hasContent("old");
        assertThat(filesThere()).containsExactly("a.csv");
    }

    @Test
    void aFaultOfTheWriterLeavesNothingBehind() throws IOException {
        assertThatThrownBy(() -> SafeFile.write(folder.resolve("a.csv"), false, out -> {
                    out.write(1);
                    throw new IllegalStateException("a fault of ours");
                }))
                .isInstanceOf(IllegalStateException.class);
        assertThat(filesThere()).isEmpty();
    }

    @Test
    void theFileDoesNotExistBeforeItIsWhole() {
        Path file = folder.resolve("a.csv");
        SafeFile.write(file, false, out -> {
            out.write(1);
            assertThat(file).doesNotExist();
        });
        assertThat(file).exists();
    }

    @Test
    void aFileThatAppearsMeanwhileIsNotOverwritten() {
        Path file = folder.resolve("a.csv");
        assertThatThrownBy(() -> SafeFile.write(file, false, out -> Files.writeString(file, "theirs")))
                .hasMessageContaining("the file exists already");
        assertThat(file).hasContent("theirs");
    }

    @Test
    void aMissingFolderIsNamed() {
        Path file = folder.resolve("nowhere").resolve("a.csv");
        assertThatThrownBy(() -> SafeFile.check(file, false))
                .hasMessage(file + ": its folder " + file.getParent() + " does not exist; create the folder first");
    }

    @Test
    void aFolderIsNoFile() {
        assertThatThrownBy(() -> SafeFile.check(folder, true))
                .hasMessage(folder + ": this is a folder, not a file; name a file inside it");
    }

    @Test
    void aFileIsNoFolder() throws IOException {
        Path file = Files.writeString(folder.resolve("a"), "x");
        assertThatThrownBy(() -> SafeFile.check(file.resolve("b.csv"), true))
                .hasMessage(file.resolve("b.csv") + ": " + file + " is a file, not a folder; choose another place");
    }

    @Test
    void anEmptyNameIsRefused() {
        assertThatThrownBy(() -> SafeFile.check(Path.of(""), false)).hasMessageContaining("this is no file name");
    }

    @Test
    void aNameThatCannotBeIsRefused() {
        assertThatThrownBy(() -> SafeFile.path("a\0b"))
                .isInstanceOf(UnwritableFileException.class)
                .hasMessageContaining("this cannot be a file name");
    }

    @Test
    void aLinkKeepsPointingAtTheFileBehindIt() throws IOException {
        Path file = Files.writeString(folder.resolve("a.csv"), "old");
        Path link = Files.createSymbolicLink(folder.resolve("link.csv"), file);
        SafeFile.write(link, true, "new");
        assertThat(Files.isSymbolicLink(link)).isTrue();
        assertThat(file).hasContent("new");
    }
}
