package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A fit of laps that were driven on another line than the model's. */
class FitOnDrivenLineTest {
    @TempDir
    private Path folder;

    /** A lap of the model's own on its fastest line, fitted on the smoothest and then on the line that the log itself holds. */
    @Test
    @Tag("long")
    void whereTheLineIsToBlameTheLogsOwnIsOfferedAndServes() {
        String log = folder.resolve("driven.csv").toString();
        String own = folder.resolve("own.json").toString();
        assertThat(Run.of("lap", "gt-talvex", "harrowmere", "--line", "fastest", "--trace", log)
                        .code())
                .isZero();
        Run off = Run.of("fit", "gt-talvex", "harrowmere", log);
        assertThat(off.code()).as(off.err()).isZero();
        assertThat(String.join(" ", off.out().split("\\s+")))
                .contains(
                        "Likelier culprit: the line", "'lapwright circuit import " + log + " --log --out driven.json'");
        assertThat(Run.of("circuit", "import", log, "--log", "--out", own).code())
                .isZero();
        Run on = Run.of("fit", "gt-talvex", own, log, "--json");
        assertThat(on.code()).as(on.err()).isZero();
        assertThat(on.out()).doesNotContain("circuit import");
        // The interval holds the truth, 1: the log was driven by this very car.
        Map<String, Object> grip = JsonTree.objects(JsonTree.object(on.out()), "estimates").stream()
                .filter(estimate -> estimate.get("parameter").equals("gripFactor"))
                .findFirst()
                .orElseThrow();
        assertThat(1.0).isBetween(JsonTree.number(grip, "lower"), JsonTree.number(grip, "upper"));
    }
}
