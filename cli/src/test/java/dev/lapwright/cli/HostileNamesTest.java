package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;

/** Names that a page, a picture or a spreadsheet could take for something else than text. */
class HostileNamesTest {
    @TempDir
    private Path folder;

    /** Every name begins with a hyphen and a number, which on the terminal would get a minus sign were it no name. */
    @ParameterizedTest
    @Tag("heavy")
    @ValueSource(
            strings = {
                "show CAR",
                "show CIRCUIT",
                "lap CAR CIRCUIT --setup SETUP --conditions DAY --against SETUP",
                "compare CAR CIRCUIT --conditions DAY --against SETUP",
                "compare CAR CIRCUIT --against SETUP --json",
                "gearing CAR CIRCUIT --setup SETUP",
                "weight CAR CIRCUIT --setup SETUP",
                "balance CAR CIRCUIT --complaint understeer:entry",
                "ride CAR CIRCUIT --corner T3",
                "pressures CAR CIRCUIT --setup SETUP --pair all:17psi:24psi",
                "stint CAR CIRCUIT --laps 12 --compound -1soft:1.01:0.2 --compound -1hard:1:0.05",
                "brief CAR CIRCUIT --setup SETUP --vary rear-wing --line middle --draws 20 --out OUT"
            })
    void aNameThatBeginsAsANegativeNumberIsPrintedAsItIsWritten(String command) throws IOException {
        Path car = folder.resolve("car.json");
        Files.writeString(
                car,
                Documents.demoText(DocumentKind.CAR, "gt-talvex")
                        .replaceAll("\"(name|label)\": \"([A-Z])", "\"$1\": \"-1$2"));
        Path setup = folder.resolve("setup.json");
        Files.writeString(setup, "{\"lapwright\": \"setup/1\", \"name\": \"-1set\", \"settings\": {\"rear-wing\": 5}}");
        Path day = folder.resolve("day.json");
        Files.writeString(day, "{\"lapwright\": \"conditions/1\", \"name\": \"-1day\"}");
        List<String> arguments = new ArrayList<>();
        for (String word : command.split(" ")) {
            arguments.add(
                    switch (word) {
                        case "CAR" -> car.toString();
                        case "CIRCUIT" -> circuit("-1ring").toString();
                        case "SETUP" -> setup.toString();
                        case "DAY" -> day.toString();
                        case "OUT" -> folder.toString();
                        default -> word;
                    });
        }
        Run run = Run.of(arguments.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out() + run.err())
                .contains("-1")
                .doesNotContainPattern("\u22121\\p{L}")
                .doesNotContain("\\u0004");
        try (Stream<Path> files = Files.list(folder)) {
            for (Path page :
                    files.filter(file -> file.toString().endsWith(".html")).toList()) {
                assertThat(Files.readString(page))
                        .contains("-1ring")
                        .doesNotContainPattern("\u22121\\p{L}|\u0004|\ufffd");
            }
        }
    }

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
