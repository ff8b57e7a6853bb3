package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Work that was broken off goes on where it was, and comes to the same; sweeps and plans in tests of their own. */
class ResumeTest {
    @TempDir
    private Path folder;

    private Run run(String words, String... more) {
        List<String> all = new ArrayList<>(List.of(words.split(" ")));
        all.addAll(List.of(more));
        return Run.of(all.toArray(String[]::new));
    }

    private void goesOn(String words, String... studies) throws IOException {
        Path journal = folder.resolve("journal");
        Run whole = run(words, "--json");
        assertThat(whole.code()).as(whole.err()).isZero();
        assertThat(run(words, "--json", "--resume", journal.toString()).out()).isEqualTo(whole.out());
        List<String> lines = Files.readAllLines(journal);
        for (String study : studies) {
            assertThat(lines).anyMatch(line -> line.startsWith(study + " "));
        }
        String half = String.join("\n", lines.subList(0, lines.size() / 2));
        Files.writeString(journal, half.substring(0, half.length() - 10));
        assertThat(run(words, "--json", "--resume", journal.toString()).out()).isEqualTo(whole.out());
        // What had been done was not done again, or it would stand there twice.
        assertThat(Files.readAllLines(journal)).hasSameSizeAs(lines);
        assertThat(Set.copyOf(Files.readAllLines(journal))).isEqualTo(Set.copyOf(lines));
        Run other = run(words, "--json", "--air-temp-c", "31", "--resume", journal.toString());
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
    void fitGoesOnWithItsRounds() throws IOException {
        goesOn("fit gt-talvex castelvane castelvane-laps.csv --lap 5 --fit grip,power", "rounds");
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
