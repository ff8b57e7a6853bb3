package dev.lapwright.cli.torture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.torture.Torture;
import dev.lapwright.torture.TortureHook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Tag;

/** Several runs at the same time on one output, one table, one event or one cache: each does its work or says that it cannot, and nothing is lost or mixed. */
class ParallelRunsTest {
    private static final int RUNS = 3;

    private interface Numbered {
        Run run(int number) throws IOException;
    }

    private static List<Run> together(Numbered one) throws Exception {
        CyclicBarrier start = new CyclicBarrier(RUNS);
        ExecutorService pool = Executors.newFixedThreadPool(RUNS);
        try {
            List<Callable<Run>> all = new ArrayList<>();
            for (int i = 0; i < RUNS; i++) {
                int number = i;
                all.add(() -> {
                    start.await();
                    return one.run(number);
                });
            }
            List<Run> runs = new ArrayList<>();
            for (Future<Run> future : pool.invokeAll(all)) {
                Run run = future.get();
                assertThat(run.code()).as(run.err()).isIn(0, 2);
                TortureHook.count(run.code() == 0 ? "did their work" : "gave way");
                runs.add(run);
            }
            return runs;
        } finally {
            pool.shutdown();
        }
    }

    private static Run run(String words, Path place) {
        return Run.wide(Lines.WIDTH, words.replace("PLACE", place.toString()).split(" "));
    }

    @Torture(cases = 1, percent = 2)
    void oneOutputIsOfOneRunAlone(@ForAll long seed) throws Exception {
        int wing = new Random(seed).nextInt(9);
        String words = "lap gt-talvex harrowmere --line middle -s rear-wing=WING --out PLACE/out";
        Path place = Files.createTempDirectory("torture");
        List<Run> runs = together(i -> run(words.replace("WING", wing + "." + i), place));
        assertThat(runs).as(runs.toString()).filteredOn(run -> run.code() == 0).hasSize(1);
        int winner = runs.indexOf(
                runs.stream().filter(run -> run.code() == 0).findFirst().orElseThrow());
        Path alone = Files.createTempDirectory("torture");
        assertThat(run(words.replace("WING", wing + "." + winner), alone).code())
                .isZero();
        assertThat(Outputs.found(place)).isEqualTo(Outputs.found(alone));
        Outputs.delete(place);
        Outputs.delete(alone);
    }

    @Torture(cases = 1, percent = 2)
    void oneTableLosesAndDoublesNoLap(@ForAll long seed) throws Exception {
        Path place = Files.createTempDirectory("torture");
        Files.writeString(
                place.resolve("plan.json"), """
                {"lapwright": "plan/1", "name": "wings", "cars": ["touring-merrow"], "circuits": ["harrowmere"], "line": "middle",
                 "design": "latin hypercube", "points": 40, "seed": SEED, "vary": {"rear-wing": ""}}
                """.replace("SEED", Integer.toString(new Random(seed).nextInt(1000))));
        String words = "plan PLACE/plan.json --threads 1 --out PLACE/";
        together(i -> run(words + "out.csv --resume", place));
        assertThat(run(words + "out.csv --resume", place).code()).isZero();
        assertThat(run(words + "whole.csv", place).code()).isZero();
        Map<String, String> found = Outputs.found(place);
        assertThat(found.get("out.csv")).isEqualTo(found.get("whole.csv"));
        Outputs.delete(place);
    }

    @Torture(cases = 1, percent = 2)
    void oneEventLosesNoRun(@ForAll long seed) throws Exception {
        Path place = Files.createTempDirectory("torture");
        assertThat(run("event new PLACE/day --car gt-talvex --circuit harrowmere --name Day", place)
                        .code())
                .isZero();
        String time = "1:09." + (100 + new Random(seed).nextInt(800));
        List<Run> runs = together(i -> run(
                "event run PLACE/day --no-expectation -s rear-wing=" + i + " --laps " + time + ",1:09.95,1:09.96",
                place));
        long noted = runs.stream().filter(run -> run.code() == 0).count();
        List<String> found = Outputs.found(place).keySet().stream()
                .filter(name -> name.contains("run-"))
                .toList();
        assertThat(found).hasSize((int) noted).isNotEmpty();
        assertThat(run("event show PLACE/day", place).code()).isZero();
        Outputs.delete(place);
    }

    /** A search for a line takes seconds. */
    @Torture(cases = 1, percent = 3)
    @Tag("long")
    void oneCacheGivesAllTheSameLine(@ForAll long seed) throws Exception {
        Path cache = Files.createTempDirectory("torture");
        String wing = Integer.toString(new Random(seed).nextInt(9));
        String words = "lap gt-talvex harrowmere --line fastest -s rear-wing=" + wing;
        List<Run> runs = together(i -> Run.keeping(cache, words.split(" ")));
        Run again = Run.keeping(cache, words.split(" "));
        assertThat(again.code()).as(again.err()).isZero();
        assertThat(runs).allSatisfy(run -> assertThat(run.out()).isEqualTo(again.out()));
        // What is kept is no text.
        try (Stream<Path> files = Files.walk(cache)) {
            assertThat(files.filter(Files::isRegularFile)).hasSize(1);
        }
        Outputs.delete(cache);
    }
}
