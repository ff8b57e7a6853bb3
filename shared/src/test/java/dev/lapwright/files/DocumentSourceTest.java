package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.documents.Documents;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DocumentSourceTest {
    @TempDir
    Path folder;

    @Test
    void aMissingFileIsNamed() {
        Path file = folder.resolve("a.json");
        assertThatThrownBy(() -> DocumentSource.ofFile(file))
                .isInstanceOf(DocumentException.class)
                .hasMessage(file + ": there is no such file; check its name and the folder you are in");
    }

    @Test
    void aFolderIsNoDocument() {
        assertThatThrownBy(() -> DocumentSource.ofFile(folder))
                .hasMessage(folder + ": this is a folder, not a file; name a file inside it");
    }

    @Test
    void anEmptyFileIsSaidToBeEmpty() throws IOException {
        Path file = Files.createFile(folder.resolve("a.json"));
        assertThatThrownBy(() -> Documents.car(DocumentSource.ofFile(file)))
                .hasMessage(file + ": it is empty; write a JSON document into it");
    }

    @Test
    void aFileInAnotherEncodingIsRefusedWithTheLine() throws IOException {
        Path file = folder.resolve("a.json");
        Files.write(file, "{\n\"name\": \"Coupé\"}".getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> DocumentSource.ofFile(file))
                .hasMessage(file + ": line 2 holds bytes that are not UTF-8 text; save the file as UTF-8");
    }

    @Test
    void aCharacterCutInTwoAtTheEndIsRefused() {
        byte[] cut = {'{', '}', (byte) 0xC3};
        assertThatThrownBy(() -> DocumentSource.ofBytes("a.json", cut)).hasMessageContaining("not UTF-8");
    }

    @Test
    void aByteOrderMarkIsPassedOver() throws IOException {
        Path file = Files.writeString(folder.resolve("a.json"), "\uFEFF{}");
        assertThat(DocumentSource.ofFile(file).text()).isEqualTo("{}");
    }

    @Test
    void aHugeFileIsRefused() {
        byte[] huge = new byte[DocumentSource.MAX_BYTES + 1];
        assertThatThrownBy(() -> DocumentSource.ofBytes("huge.json", huge))
                .hasMessage("huge.json: the file is longer than 20 MB; check that it is a document for Lapwright");
    }
}
