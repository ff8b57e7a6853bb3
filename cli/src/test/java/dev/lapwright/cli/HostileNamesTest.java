package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;

/** Names that a page, a picture or a spreadsheet could take for something else than text. */
class HostileNamesTest {
    @TempDir
    private Path folder;

    private Path circuit(String name) throws IOException {
        String quoted = "\"" + name.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
        Path file = folder.resolve("circuit.json");
        Files.writeString(
                file,
                Documents.demoText(DocumentKind.CIRCUIT, "harrowmere")
                        .replaceAll("\"name\": \"[^\"]*\"", Matcher.quoteReplacement("\"name\": " + quoted)));
        return file;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "-1+1",
                "=1+1",
                "+cmd|' /C calc'!A0",
                "<script>alert(1)</script>",
                "</title></svg>&amp;\"'",
                "]]>--><!-- {{{page}}}",
                "\u0639\u0631\u0628\u064A \u6771\u4EAC"
            })
    void aNameIsTextOnTheTerminalInPicturesAndInTables(String name) throws Exception {
        Path out = folder.resolve("out");
        Run run = Run.of("lap", "gt-talvex", circuit(name).toString(), "--out", out.toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).startsWith("Talvex GT at " + name + ", closed").contains(" in T3 " + name);
        try (Stream<Path> files = Files.list(out)) {
            List<Path> pictures =
                    files.filter(file -> file.toString().endsWith(".svg")).toList();
            assertThat(pictures).isNotEmpty();
            for (Path picture : pictures) {
                Document svg = DocumentBuilderFactory.newInstance()
                        .newDocumentBuilder()
                        .parse(new ByteArrayInputStream(Files.readAllBytes(picture)));
                assertThat(svg.getElementsByTagName("script").getLength()).isZero();
                assertThat(svg.getElementsByTagName("title").item(0).getTextContent())
                        .contains(name);
            }
        }
        assertThat(JsonTree.object(Files.readString(out.resolve("lap.json")))).containsEntry("circuit", name);
    }
}
