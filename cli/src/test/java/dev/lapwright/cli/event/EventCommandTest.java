package dev.lapwright.cli.event;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EventCommandTest {
    @TempDir
    private Path folder;

    private String day;

    @BeforeEach
    void begin() {
        day = folder.resolve("day").toString();
        assertThat(Run.of("event", "new", day, "--car", "gt-talvex", "--circuit", "castelvane", "--name", "Test day")
                        .code())
                .isZero();
    }

    private Run noted(String... what) {
        List<String> words = new ArrayList<>(List.of("event", "run", day));
        words.addAll(List.of(what));
        return Run.of(words.toArray(String[]::new));
    }

    @Test
    void aDayBecomesRunsAndTheirEvidence() {
        Run log = noted("--log", "castelvane-wings.csv", "--no-expectation");
        assertThat(log.code()).as(log.err()).isZero();
        assertThat(noted("--no-expectation", "-s", "rear-wing=7", "--driver", "loose on power")
                        .code())
                .isZero();
        Run laps = noted("--number", "4", "--laps", "1:46.2,1:46.1,1:46.0", "--hot", "FL 27psi");
        assertThat(laps.code()).as(laps.err()).isZero();
        Run show = Run.of("event", "show", day);
        assertThat(show.code()).as(show.err()).isZero();
        assertThat(show.out())
                .contains("Test day: Talvex GT at Castelvane, 4 runs")
                .contains("rear-wing=7 deg after rear-wing=2 deg")
                .contains("loose on power")
                .contains("FL 186 kPa (27.0 psi)");
        // The laps of the log and the three of run 4 are one body of evidence: the log alone has 25 clean laps.
        Run json = Run.of("event", "show", day, "--json");
        assertThat(json.out()).contains("\"differenceSeenS\"").contains("\"inputsSha256\"");
    }

    @Test
    void aCommandInTheEventIsTheSameAsTypedOut() {
        assertThat(noted("--no-expectation", "-s", "rear-wing=4", "-s", "front-bar=5")
                        .code())
                .isZero();
        Run inside = Run.of("lap", "--event", day, "--line", "middle", "-s", "rear-wing=6", "--json");
        Run typed = Run.of(
                "lap",
                "gt-talvex",
                "castelvane",
                "-s",
                "front-bar=5",
                "-s",
                "rear-wing=6",
                "--line",
                "middle",
                "--json");
        assertThat(inside.code()).as(inside.err()).isZero();
        assertThat(lapTime(inside)).isEqualTo(lapTime(typed));
        assertThat(inside.err()).contains("Event Test day: Talvex GT at Castelvane, as in run 1");
        Run none = Run.of("lap", "--event=" + folder.resolve("none"), "--line", "middle");
        assertThat(none.code()).isEqualTo(2);
        assertThat(none.err()).contains("there is no such folder").hasLineCount(1);
    }

    private static String lapTime(Run run) {
        return run.out()
                .lines()
                .filter(line -> line.contains("\"lapTimeS\""))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theModelSaysWhatItExpects() throws IOException {
        Run run = noted("-s", "final-drive=4.222");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.line("Expected")).contains("s a lap, give or take");
        assertThat(Files.readString(Path.of(day, "runs", "run-001.txt")))
                .contains("expected: ")
                .contains("give or take");
    }

    @Test
    void lapsOfAnotherCircuitAndRunsThatContradictTheirSetupAreRefused() {
        Run other = noted("--laps", "1:15.2,1:15.4,1:15.1");
        assertThat(other.code()).isEqualTo(2);
        assertThat(other.err())
                .contains("they are of another circuit, or of another car")
                .hasLineCount(1);
        Run contradiction = noted("--log", "castelvane-wings.csv", "-s", "rear-wing=9", "--no-expectation");
        assertThat(contradiction.code()).isEqualTo(2);
        assertThat(contradiction.err()).contains("the log says that its laps were driven with rear-wing=2");
        assertThat(Path.of(day, "runs").toFile().list()).isEmpty();
        assertThat(noted("--number", "1", "--laps", "1:45.1").err()).contains("run 1: there is none");
        assertThat(noted("--number", "1", "-s", "rear-wing=3").err()).contains("is what it was driven with");
        assertThat(Run.of("event", "show", folder.toString()).err()).contains("this folder is no event");
        assertThat(Run.of("event", "show").err()).contains("this folder lies in no event");
    }

    /** Three laps with their speeds are kept with the run, and the car is fitted to them as by 'lapwright fit'. */
    @Test
    @Tag("long")
    void aLogWithSpeedsIsKeptAndFittedAndHandedOn() throws IOException {
        assertThat(noted("--log", "castelvane-laps.csv", "--cold", "FL 24psi", "--hot", "FL 29psi")
                        .code())
                .isZero();
        assertThat(Files.readString(Path.of(day, "runs", "run-001.txt")))
                .contains("log: castelvane-laps.csv")
                .contains("1:37.800, 1:37.800, 1:38.000, 0:16.400 spoilt");
        Run again = noted("--log", "castelvane-laps.csv");
        assertThat(again.code()).isEqualTo(2);
        assertThat(again.err()).contains("its laps are those of run 1").hasLineCount(1);
        Run full = Run.of("event", "show", day, "--in-full");
        assertThat(full.code()).as(full.err()).isZero();
        Run alone = Run.of("fit", "gt-talvex", "castelvane", "castelvane-laps.csv");
        assertThat(full.line("drag area")).isEqualTo(alone.line("drag area"));
        assertThat(full.out()).contains("Next cold setting at 15.0 degC");
        String pack = folder.resolve("pack.json").toString();
        assertThat(Run.of("event", "pack", day, "--out", pack).code()).isZero();
        Run unpacked =
                Run.of("event", "unpack", pack, "--to", folder.resolve("there").toString());
        assertThat(unpacked.out()).contains("The same answers come out.");
        assertThat(folder.resolve("there/logs/castelvane-laps.csv"))
                .hasSameTextualContentAs(Path.of(day, "logs", "castelvane-laps.csv"));
    }

    /** Readings of one run; two rows a tyre are of two runs, and nobody says which. */
    @Test
    void aLogOfPressuresBelongsToARun() throws IOException {
        String rows = "tyre,cold (psi),hot (psi)\nfront,24,27\nrear,23,26\n";
        Path log = Files.writeString(folder.resolve("pressures.csv"), rows);
        assertThat(noted("--log", log.toString()).err()).contains("run 0: there is none");
        assertThat(noted("--laps", "1:45.1,1:45.3").code()).isZero();
        assertThat(noted("--log", log.toString()).out()).contains("Added to run 1.");
        // 24 psi are 165.5 kPa: NIST SP 811, appendix B.9, 1 psi is 6.894 757 kPa.
        assertThat(Files.readString(Path.of(day, "runs", "run-001.txt"))).contains("cold: FL 165.5 kPa, FR 165.5 kPa");
        Files.writeString(log, rows + "front,23,26\n");
        assertThat(noted("--log", log.toString()).err()).contains("it has several rows for FL");
        assertThat(noted("--log", log.toString(), "-s", "rear-wing=4").err()).contains("belong to a run that there is");
    }

    @Test
    void lapsWithSpeedsOfAnotherCircuitAreRefused() {
        String other = folder.resolve("other").toString();
        assertThat(Run.of("event", "new", other, "--car", "gt-talvex", "--circuit", "harrowmere")
                        .code())
                .isZero();
        Run refused = Run.of("event", "run", other, "--log", "castelvane-laps.csv");
        assertThat(refused.code()).isEqualTo(2);
        assertThat(refused.err()).contains("m long and Harrowmere").hasLineCount(1);
        assertThat(Path.of(other, "logs")).doesNotExist();
        assertThat(Path.of(other, "runs").toFile().list()).isEmpty();
    }

    @Test
    void whatIsHandedOnGivesTheSameAnswers() throws IOException {
        assertThat(noted("--log", "castelvane-wings.csv", "--no-expectation").code())
                .isZero();
        String pack = folder.resolve("pack.json").toString();
        assertThat(Run.of("event", "pack", day, "--out", pack).code()).isZero();
        String there = folder.resolve("there").toString();
        Run unpacked = Run.of("event", "unpack", pack, "--to", there);
        assertThat(unpacked.code()).as(unpacked.err()).isZero();
        assertThat(unpacked.out()).contains("The same answers come out.");
        assertThat(Run.of("event", "show", there).out())
                .isEqualTo(Run.of("event", "show", day).out());
        Files.writeString(Path.of(pack), Files.readString(Path.of(pack)).replace("1:46.", "1:45."));
        Run changed =
                Run.of("event", "unpack", pack, "--to", folder.resolve("other").toString());
        assertThat(changed.code()).isEqualTo(2);
        assertThat(changed.err())
                .contains("is not what it was when it was packed")
                .hasLineCount(1);
    }
}
