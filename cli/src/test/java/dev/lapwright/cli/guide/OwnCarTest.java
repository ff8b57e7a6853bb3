package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.Run;
import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What docs/own-car.md reads from a trace stands in it. */
class OwnCarTest {
    @TempDir
    private Path folder;

    @Test
    void aHundredIsReachedWhenThePageSays() throws IOException {
        Path trace = folder.resolve("start.csv");
        Run run = Run.of(
                "lap",
                "../docs/examples/brindle.json",
                "../docs/examples/standing-start.json",
                "--trace",
                trace.toString());
        assertThat(run.code()).as(run.err()).isZero();
        List<Map<String, String>> rows = CsvRows.of(Files.readString(trace));
        int i = 0;
        while (speed(rows.get(i)) < 100) {
            i++;
        }
        double share = (100 - speed(rows.get(i - 1))) / (speed(rows.get(i)) - speed(rows.get(i - 1)));
        double time = time(rows.get(i - 1)) + share * (time(rows.get(i)) - time(rows.get(i - 1)));
        assertThat(String.join(" ", ShownCommands.lines("own-car.md")))
                .contains(String.format(Locale.ROOT, "**%.1f s** against", time));
    }

    private static double speed(Map<String, String> row) {
        return Double.parseDouble(row.get("speedKmh"));
    }

    private static double time(Map<String, String> row) {
        return Double.parseDouble(row.get("timeS"));
    }
}
