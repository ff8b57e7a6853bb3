package dev.lapwright.cli.brief;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.report.JsonLayout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BriefCommandTest {
    @TempDir
    private Path folder;

    private static Run run(String... more) {
        return Run.of(Stream.concat(Stream.of("brief"), Stream.of(more)).toArray(String[]::new));
    }

    /** A demo car of which nothing can be turned, under a name that is not fit for HTML. */
    private String carWithoutAdjustments() throws IOException {
        Path car = folder.resolve("bare.json");
        assertThat(Run.of(
                                "demo",
                                "student-pipit",
                                "--to",
                                folder.resolve("copy").toString())
                        .code())
                .isZero();
        Path copy;
        try (Stream<Path> files = Files.walk(folder.resolve("copy"))) {
            copy = files.filter(file -> file.getFileName().toString().equals("student-pipit.json"))
                    .findFirst()
                    .orElseThrow();
        }
        Map<String, Object> tree = JsonTree.object(Files.readString(copy));
        tree.remove("adjustments");
        tree.put("name", "Pipit <b>& \"Co\"");
        Files.writeString(car, JsonLayout.text(tree));
        return car.toString();
    }

    @Test
    void aCarWithoutAdjustmentsStillGetsTheRestOfItsBriefAndNamesAreEscaped() throws IOException {
        String car = carWithoutAdjustments();
        Run run = run(car, "harrowmere", "--out", folder.resolve("brief").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("what is worth changing: ").doesNotContain("Exception");
        String page = Files.readString(folder.resolve("brief").resolve("brief-bare-harrowmere.html"));
        assertThat(page).contains("Missing here.").contains("What to do:").contains("Fuel for the race");
        assertThat(page).contains("Pipit &lt;b&gt;&amp; ").doesNotContain("<b>&");

        Run again = run(car, "harrowmere", "--out", folder.resolve("again").toString());
        assertThat(again.code()).isEqualTo(2);
        for (String name : new String[] {"brief-bare-harrowmere.html", "brief-bare-harrowmere.json"}) {
            assertThat(folder.resolve("again").resolve(name))
                    .hasSameBinaryContentAs(folder.resolve("brief").resolve(name));
        }
    }

    @Test
    @Tag("long")
    void aLogFromAnotherCircuitIsToldAndTheRestIsWritten() throws IOException {
        Run run = run(
                "gt-talvex",
                "harrowmere",
                "--after",
                "castelvane-wings.csv",
                "--vary",
                "rear-wing",
                "--out",
                folder.resolve("x.html").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err())
                .contains("the laps driven: lap log: ")
                .contains("cannot be a log of this car at Harrowmere");
        assertThat(Files.readString(folder.resolve("x.html")))
                .contains("cannot be a log of this car at Harrowmere")
                .contains("The fastest setup found beside the current one");
        assertThat(folder.resolve("x.json")).isNotEmptyFile();
    }

    @Test
    void whatCannotBeWrittenDoesNotStopTheOther() throws IOException {
        String car = carWithoutAdjustments();
        // A folder by the name of the page: no permission can be taken from a superuser who runs the tests.
        Files.createDirectory(folder.resolve("y.html"));
        Run run = run(
                car, "harrowmere", "--force", "--out", folder.resolve("y.html").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("y.html").contains("this is a folder, not a file");
        assertThat(run.out()).contains("Wrote " + folder.resolve("y.json"));
        assertThat(folder.resolve("y.json")).isNotEmptyFile();
    }

    @ParameterizedTest
    @CsvSource({"html", "json"})
    void nothingIsOverwrittenUnasked(String ending) throws IOException {
        Path there = folder.resolve("z." + ending);
        Files.writeString(there, "mine");
        Run run =
                run("gt-talvex", "castelvane", "--out", folder.resolve("z.html").toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("the file exists already").contains("--force");
        assertThat(there).hasContent("mine");
        assertThat(run.out()).isEmpty();
    }

    @Test
    void aPlaceWithoutAFolderIsRefusedBeforeTheWork() {
        refused(
                "does not exist",
                "--out",
                folder.resolve("none").resolve("a.html").toString());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--out|page.pdf|end a file in .html",
                "--test-laps|2|outside its range",
                "--scatter-s|NaN|not a number",
                "--draws|7|no number of cars to draw",
                "--minutes|0|outside its range",
                "--race-laps|0|outside its range",
                "--vary|sail|sail",
                "--after|none.csv|none.csv",
                "--pressures|none.csv|none.csv",
                "--with|front-bar=6|--after",
                "--air-temp-c|900|outside its range"
            })
    void badInputIsOneClearLine(String option, String value, String told) {
        refused(told, "--out", folder.toString(), option, value);
    }

    /** Each before any lap is driven: the driver waits for nothing. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "harrowmere|castelvane-laps.csv|front-bar=6|long and Harrowmere",
                "castelvane|castelvane-laps.csv|front-bra=6|perhaps you meant front-bar",
                "castelvane|castelvane-laps.csv|front-bar=60|60",
                "castelvane|castelvane-wings.csv|front-bar=6|leave one of the two out"
            })
    void aLogThatDoesNotFitIsRefusedBeforeTheWork(String circuit, String log, String with, String told) {
        Run run = run("gt-talvex", circuit, "--out", folder.toString(), "--after", log, "--with", with);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(told).doesNotContain("Exception");
        assertThat(folder).isEmptyDirectory();
    }

    /** Logs have laps that do not count; of typed ones all do. */
    @Test
    void typedLapsBesideALogAreRefusedBeforeTheWork() {
        refused(
                "some laps are typed, and others in a log",
                "--out",
                folder.toString(),
                "--after",
                "1:36.2 1:35.9 1:36.1",
                "--after",
                "castelvane-wings.csv");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--after castelvane-laps.csv|holds 1 run, and the card of",
                "--after castelvane-wings.csv|leave --card out",
                "--after castelvane-laps.csv --with front-bar=6|--with does too",
                "-s rear-wing=5|there is no log of it"
            })
    void aCardThatIsNotThatOfTheLogIsRefusedBeforeTheWork(String more, String told) throws IOException {
        Path card = Files.createDirectory(folder.resolve("cards")).resolve("brief.json");
        Files.writeString(
                card,
                "{\"lapwright\": \"brief/2\", \"tests\": {\"runs\": [{\"fate\": \"drive\","
                        + " \"changes\": [{\"name\": \"front-bar\", \"to\": 6}]}]}}");
        Run run = run(Stream.concat(
                        Stream.of("gt-talvex", "castelvane", "--out", folder.toString(), "--card", card.toString()),
                        Stream.of(more.split(" ")))
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains(told);
    }

    @ParameterizedTest
    @CsvSource({"'',empty", "'lap,time,setup\n',no laps", "'time,speed,distance\n',no samples"})
    void anEmptyLogIsRefusedBeforeTheWork(String text, String told) throws IOException {
        Path log = Files.createDirectory(folder.resolve("logs")).resolve("log.csv");
        Files.writeString(log, text.replace("\\n", "\n"));
        Run run = run("gt-talvex", "castelvane", "--out", folder.toString(), "--after", log.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains("log.csv").contains(told);
    }

    @Test
    void aRaceThatIsBothCountedAndTimedIsRefused() {
        refused("both counted and timed", "--out", folder.toString(), "--minutes", "20", "--race-laps", "12");
    }

    @ParameterizedTest
    @CsvSource({"gt-talvex,gt-talvex", "cars/my car.JSON,my-car", "a/b.c.json,b.c", "Ä?*.json,Ä-"})
    void theNameOfThePageComesFromTheDocuments(String document, String word) {
        assertThat(BriefCommand.word(document)).isEqualTo(word);
    }

    private void refused(String told, String... more) {
        Run run = run(Stream.concat(Stream.of("gt-talvex", "castelvane"), Stream.of(more))
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).contains(told).matches("lapwright: .+; .+");
        assertThat(run.out()).isEmpty();
        assertThat(folder).isEmptyDirectory();
    }
}
