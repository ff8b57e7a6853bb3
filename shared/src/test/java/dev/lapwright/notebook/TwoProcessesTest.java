package dev.lapwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.documents.TestDocuments;
import dev.lapwright.evidence.TimingLog;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A notebook that two processes write into, as a bench and a command do: no run is lost, and no lap of one. */
class TwoProcessesTest {
    private static final int RUNS = 15;
    private static final int PATIENCE_S = 300;

    @TempDir
    private Path folder;

    /** The other process: writes runs of its own, and a lap for each into the first run. */
    static final class Writer {
        private Writer() {}

        public static void main(String... words) {
            EventFolder event = EventFolder.of(Path.of(words[0]));
            Event read = event.read();
            for (int i = 0; i < RUNS; i++) {
                event.add(EventRun.of(Map.of()).with(new EventRun.Words("", "", words[1] + " " + i)), read.car());
                double time = Double.parseDouble(words[2]) + i;
                event.change(1, read.car(), run -> {
                    List<EventRun.TimedLap> laps = new ArrayList<>(run.laps());
                    laps.add(new EventRun.TimedLap(time, TimingLog.Flag.NONE));
                    return run.with(laps);
                });
            }
        }
    }

    private Process writer(String name, String first) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        Writer.class.getName(),
                        folder.toString(),
                        name,
                        first)
                .redirectErrorStream(true)
                .start();
    }

    @Test
    void twoProcessesLoseNothingOfEachOther() throws Exception {
        EventFolder event = EventFolder.create(
                folder,
                new EventFolder.Beginning(
                        "Two",
                        TestDocuments.source("valid/car/complete.json"),
                        TestDocuments.source("valid/circuit/segments.json"),
                        Optional.empty(),
                        Optional.empty()));
        event.add(EventRun.of(Map.of()), event.read().car());
        Process one = writer("one", "100");
        Process other = writer("other", "200");
        for (Process process : List.of(one, other)) {
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(process.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
            assertThat(process.exitValue()).as(said).isZero();
        }
        Event read = event.read();
        assertThat(read.runs()).hasSize(1 + 2 * RUNS);
        List<String> remarks = new ArrayList<>();
        List<Double> laps = new ArrayList<>();
        for (int i = 0; i < RUNS; i++) {
            remarks.addAll(List.of("one " + i, "other " + i));
            laps.addAll(List.of(100.0 + i, 200.0 + i));
        }
        assertThat(read.runs().stream().skip(1).map(run -> run.run().words().remark()))
                .containsExactlyInAnyOrderElementsOf(remarks);
        assertThat(read.runs().get(0).run().laps().stream().map(EventRun.TimedLap::time))
                .containsExactlyInAnyOrderElementsOf(laps);
        try (Stream<Path> files = Files.list(folder.resolve("runs"))) {
            assertThat(files.map(file -> file.getFileName().toString())).noneMatch(name -> name.endsWith(".part"));
        }
    }
}
