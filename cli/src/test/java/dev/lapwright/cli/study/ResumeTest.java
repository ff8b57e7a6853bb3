package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Child;
import dev.lapwright.cli.Run;
import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Work that was broken off goes on where it was, and comes to the same; sweeps and plans in tests of their own. */
@Tag("heavy")
class ResumeTest {
    @TempDir
    private Path folder;

    private Run run(String words, String... more) {
        List<String> all = new ArrayList<>(List.of(words.split(" ")));
        all.addAll(List.of(more));
        return Run.of(all.toArray(String[]::new));
    }

    private void goesOn(String words, String... studies) throws IOException {
        goesOn(words, new String[0], studies);
    }

    private void goesOn(String words, String[] more, String... studies) throws IOException {
        Path journal = folder.resolve("journal");
        String[] resumed = Stream.concat(Stream.of("--json", "--resume", journal.toString()), Stream.of(more))
                .toArray(String[]::new);
        Run whole =
                run(words, Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new));
        assertThat(whole.code()).as(whole.err()).isZero();
        assertThat(run(words, resumed).out()).isEqualTo(whole.out());
        List<String> lines = Files.readAllLines(journal);
        for (String study : studies) {
            assertThat(lines).anyMatch(line -> line.startsWith(study + " "));
        }
        String half = String.join("\n", lines.subList(0, lines.size() / 2));
        Files.writeString(journal, half.substring(0, half.length() - 10));
        assertThat(run(words, resumed).out()).isEqualTo(whole.out());
        // What had been done was not done again, or it would stand there twice.
        assertThat(Files.readAllLines(journal)).hasSameSizeAs(lines);
        assertThat(Set.copyOf(Files.readAllLines(journal))).isEqualTo(Set.copyOf(lines));
        Run other = run(words + " --air-temp-c 31", resumed);
        assertThat(other.code()).isEqualTo(2);
        assertThat(other.err()).contains("the journal of another study");
    }

    @Test
    void optimiseGoesOnWithItsSearchAndItsDraws() throws IOException {
        goesOn(
                "optimise gt-talvex harrowmere --line middle --over rear-wing --draws 20 --no-second-opinion",
                "setups",
                "draws-of-1");
    }

    @Test
    void compareGoesOnWithItsDraws() throws IOException {
        goesOn("compare gt-talvex harrowmere --line middle --against rear-wing=3 --draws 20", "draws");
    }

    @Test
    void stintGoesOnWithItsDraws() throws IOException {
        goesOn(
                "stint gt-talvex harrowmere --line middle --laps 5 --draws 20 --compound soft:1.01:0.2 --compound hard:1:0.05",
                "draws");
    }

    @Test
    void pressuresGoOnWithTheirDraws() throws IOException {
        goesOn("pressures gt-talvex harrowmere --line middle --pair all:1.2bar:1.7bar --draws 20", "draws");
    }

    @Test
    void balanceGoesOnWithItsDraws() throws IOException {
        goesOn("balance gt-talvex harrowmere --line middle --complaint oversteer:exit:T3 --draws 20", "draws/choices");
    }

    /** The first wing that a step of it eases, and what a kerb asks. */
    @Test
    @Tag("long")
    void balanceGoesOnWithTheDrawsOfAKerb() throws IOException {
        goesOn(
                "balance gt-talvex harrowmere --line middle --draws 20",
                new String[] {"--complaint", "harsh over kerbs, loose on power out of T3"},
                "draws/choices",
                "draws/kerb");
    }

    @Test
    @Tag("long")
    void briefGoesOnWithItsSetupsAndDraws() throws IOException {
        goesOn(
                "brief touring-merrow harrowmere --line middle --draws 20 --force --out " + folder.resolve("brief"),
                "brief/setups",
                "brief/draws/1",
                "brief/draws/verdicts/look2");
    }

    /** With the driver's words, which cars are heard to go with; and without them, to say what they change. */
    @Test
    @Tag("long")
    void briefGoesOnWithWhatTheDriverSays() throws IOException {
        goesOn(
                "brief touring-merrow harrowmere --line middle --draws 20 --driver T1=front --force --out "
                        + folder.resolve("brief"),
                "brief/draws/heard",
                "brief/draws/1",
                "brief/draws/deaf/1",
                "brief/draws/verdicts/heard");
    }

    @Test
    @Tag("long")
    void briefAfterDrivingGoesOnWithItsFit() throws IOException {
        goesOn(
                "brief gt-talvex castelvane --draws 20 --after castelvane-laps.csv --force --out "
                        + folder.resolve("brief"),
                "brief/rounds",
                "brief/draws/fitted/1");
    }

    /** The power going, once some of its draws are there. */
    @Test
    @Tag("long")
    void aProcessThatWasKilledGoesOnWithItsDraws() throws Exception {
        Path journal = folder.resolve("journal");
        String words = "compare gt-talvex harrowmere --line middle --against rear-wing=3 --draws 400 --json";
        final String whole = child(words).out();
        Child killed = start(words + " --resume " + journal);
        while (!Files.exists(journal) || Files.readAllLines(journal).size() < 50) {
            TimeUnit.MILLISECONDS.sleep(10);
        }
        killed.signal("9");
        assertThat(killed.end()).as(killed.err()).isNotZero();
        int kept = Files.readAllLines(journal).size();
        Child resumed = child(words + " --resume " + journal);
        assertThat(resumed.out()).isEqualTo(whole);
        List<String> lines = Files.readAllLines(journal);
        assertThat(lines).hasSize(1 + 400).doesNotHaveDuplicates();
        assertThat(kept).isBetween(50, 400);
    }

    /**
     * A sweep keeps 48 bytes for each lap and makes all else as it is asked for: 400 000 laps, 19 MB, are read and written with 56 MB, of which the
     * command itself takes some 25. As its journal has them, none but the last few are driven.
     */
    @Test
    @Tag("long")
    void aLongSweepTakesNoMoreMemoryThanItsNumbers() throws Exception {
        int laps = 400_000;
        Path journal = folder.resolve("journal");
        Path table = folder.resolve("sweep.csv");
        String words =
                "sweep gt-talvex harrowmere --line middle --vary rear-wing=0:9.99:0.01 --vary chassis.massKg=1200:1239.9:0.1"
                        + " --out " + table + " --resume " + journal;
        Child begun = start(words, "-Xmx56m");
        while (!Files.exists(journal) || Files.readAllLines(journal).size() < 5) {
            TimeUnit.MILLISECONDS.sleep(10);
        }
        begun.signal("9");
        begun.end();
        List<String> lines = Files.readAllLines(journal);
        String figures = lines.get(1).split(" ", 3)[2];
        try (Writer all = Files.newBufferedWriter(journal)) {
            all.write(lines.get(0) + "\n");
            for (int i = 0; i < laps - 100; i++) {
                all.write("laps " + i + " " + figures + "\n");
            }
        }
        Child ended = start(words, "-Xmx56m");
        assertThat(ended.end()).as(ended.err()).isZero();
        try (Stream<String> rows = Files.lines(table)) {
            assertThat(rows.count()).isEqualTo(1 + laps);
        }
        assertThat(ended.out()).contains("Of 400000 laps the fastest 20 are shown");
    }

    private Child start(String words, String... options) throws IOException {
        Path printed = Files.createTempDirectory(folder, "printed");
        List<String> all = Child.words(List.of(options), words.split(" "));
        return Child.start(Child.builder(all, printed.resolve("cache")), printed);
    }

    private Child child(String words) throws IOException {
        Child child = start(words);
        assertThat(child.end()).as(child.err()).isZero();
        return child;
    }

    @Test
    void aJournalOfDrawsIsRefusedWhereNothingIsDrawn() {
        for (String words : List.of(
                "compare gt-talvex harrowmere --against rear-wing=3 --no-doubt",
                "compare gt-talvex harrowmere --against-model fuller",
                "stint gt-talvex harrowmere --laps 5 --no-doubt",
                "pressures gt-talvex harrowmere --pair all:1.2bar:1.7bar --no-doubt",
                "balance gt-talvex harrowmere",
                "gearing gt-talvex harrowmere",
                "sensitivity gt-talvex harrowmere")) {
            Path journal = folder.resolve("journal");
            Run refused = run(words, "--resume", journal.toString());
            assertThat(refused.code()).as(words).isEqualTo(2);
            assertThat(refused.err()).as(words).contains("--resume", "no cars are drawn");
            assertThat(journal).doesNotExist();
        }
    }

    @Test
    void fitGoesOnWithItsRounds() throws IOException {
        goesOn("fit gt-talvex castelvane castelvane-laps.csv --lap 5 --fit grip,power", "rounds");
    }

    /** Told to end, a fit says what it has come to; gone on with, it comes to the same. */
    @Test
    @Tag("long")
    void aFitThatIsInterruptedSaysItsBestAndGoesOn() throws Exception {
        Path journal = folder.resolve("journal");
        String words =
                "fit gt-talvex castelvane castelvane-laps.csv --also castelvane-laps-bar.csv --with front-bar=6 --json";
        Child ended = start(words + " --resume " + journal);
        while (!Files.exists(journal) || Files.readAllLines(journal).size() < 3) {
            TimeUnit.MILLISECONDS.sleep(10);
        }
        ended.signal(ended.heeds(2) ? "2" : "15");
        assertThat(ended.end()).as(ended.err()).isIn(130, 143);
        assertThat(ended.err())
                .containsPattern(
                        "Best so far: grip [01]\\.\\d+, drag-area \\d\\.\\d+ m².*; the same command goes on from here\n");
        assertThat(child(words + " --resume " + journal).out())
                .isEqualTo(child(words).out());
    }

    /** All parameters of two runs: one that is held after the first search begins others, with fewer unknowns. */
    @Test
    @Tag("long")
    void fitOfTwoRunsGoesOnWithItsRounds() throws IOException {
        goesOn(
                "fit gt-talvex castelvane castelvane-laps.csv --also castelvane-laps-bar.csv --with front-bar=6"
                        + " --doubt load-sensitivity=100",
                "rounds");
    }

    @Test
    @Tag("long")
    void gearingGoesOnWithItsDraws() throws IOException {
        goesOn(
                "gearing gt-talvex harrowmere --line middle --final-drives 3.6,3.8 --draws 20 --no-second-opinion",
                "draws-gearbox.finalDrive");
    }

    @Test
    @Tag("long")
    void sensitivityGoesOnWithItsDraws() throws IOException {
        goesOn("sensitivity touring-merrow harrowmere --line middle --draws 20 --no-second-opinion", "draws");
    }
}
