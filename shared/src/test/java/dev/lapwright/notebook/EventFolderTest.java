package dev.lapwright.notebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.UnwritableFileException;
import dev.lapwright.tyre.TreadTemperatures;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EventFolderTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));

    @TempDir
    private Path folder;

    private EventFolder begun() {
        return EventFolder.create(
                folder.resolve("day"),
                new EventFolder.Beginning(
                        "Test day",
                        TestDocuments.source("valid/car/complete.json"),
                        TestDocuments.source("valid/circuit/segments.json"),
                        Optional.of(TestDocuments.source("valid/conditions/complete.json")),
                        Optional.of(TestDocuments.source("valid/setup/complete.json"))));
    }

    private static EventRun whole() {
        return new EventRun(
                Map.of("rear-wing", 7.0, "front-pressure", 26.5),
                List.of(
                        new EventRun.TimedLap(128.25, TimingLog.Flag.OUT),
                        new EventRun.TimedLap(81.103, TimingLog.Flag.NONE),
                        new EventRun.TimedLap(80.9, TimingLog.Flag.SPOILT),
                        new EventRun.TimedLap(131, TimingLog.Flag.IN)),
                new EventRun.TyreReadings(
                        Map.of("FL", 152.0, "RR", 145.5),
                        Map.of("FL", 186.0),
                        Map.of("FL", new TreadTemperatures(92, 86, 80.5))),
                OptionalDouble.of(38),
                new EventRun.Expected(OptionalDouble.of(-0.25), OptionalDouble.of(0.1)),
                new EventRun.Words("loose on power out of T3: really", "set 2, 12 laps", "brake pads changed"),
                Optional.of(new EventRun.KeptLog("run-1.csv", List.of("speed=GPS v:km/h"))));
    }

    @Test
    void aRunsTextReadsBackAsTheRun() {
        String text = RunText.of(whole(), CAR);
        EventRun read = RunText.read(new DocumentSource("run", text), CAR);
        assertThat(read).isEqualTo(whole());
        assertThat(text).contains("driver: loose on power out of T3: really").contains("1:21.103, 1:20.900 spoilt");
    }

    @Test
    void theEventIsWhatWasWrittenDown() {
        EventFolder event = begun();
        assertThat(event.add(whole(), CAR)).isEqualTo(1);
        Event read = event.read();
        assertThat(read.name()).isEqualTo("Test day");
        assertThat(read.day().name()).isEqualTo("Warm afternoon");
        assertThat(read.runs()).containsExactly(new Event.Numbered(1, whole()));
        assertThat(read.settingsNow()).isEqualTo(whole().settings());
        assertThat(read.log().orElseThrow().laps()).hasSize(4);
        assertThat(EventFolder.about(folder.resolve("day/runs"))).isPresent();
        assertThat(EventFolder.about(folder)).isEmpty();
    }

    @Test
    void writersAtOnceLoseNoRun() throws InterruptedException, ExecutionException, IOException {
        final int writers = 6;
        final int each = 15;
        EventFolder event = begun();
        ExecutorService pool = Executors.newFixedThreadPool(writers);
        List<Future<Set<Integer>>> jobs = new ArrayList<>();
        for (int w = 0; w < writers; w++) {
            int writer = w;
            jobs.add(pool.submit(() -> {
                Set<Integer> numbers = new TreeSet<>();
                for (int i = 0; i < each; i++) {
                    EventRun run =
                            EventRun.of(Map.of()).with(new EventRun.Words("writer " + writer + " run " + i, "", ""));
                    numbers.add(event.add(run, CAR));
                }
                return numbers;
            }));
        }
        Set<Integer> all = new TreeSet<>();
        int given = 0;
        for (Future<Set<Integer>> job : jobs) {
            given += job.get().size();
            all.addAll(job.get());
        }
        pool.shutdown();
        assertThat(given).as("numbers given").isEqualTo(writers * each);
        assertThat(all).as("no number twice").hasSize(writers * each);
        assertThat(event.read().runs().stream().map(run -> run.run().words().driver()))
                .as("every run is there")
                .doesNotHaveDuplicates()
                .hasSize(writers * each);
        try (Stream<Path> files = Files.list(folder.resolve("day/runs"))) {
            assertThat(files.map(file -> file.getFileName().toString())).allMatch(name -> name.startsWith("run-"));
        }
    }

    @Test
    void changersAtOnceLoseNothing() throws InterruptedException, ExecutionException {
        final int writers = 4;
        EventFolder event = begun();
        event.add(EventRun.of(Map.of()), CAR);
        ExecutorService pool = Executors.newFixedThreadPool(writers);
        List<Future<?>> jobs = new ArrayList<>();
        for (int w = 0; w < writers; w++) {
            double time = 80 + w;
            jobs.add(pool.submit(() -> event.change(1, CAR, run -> {
                List<EventRun.TimedLap> laps = new ArrayList<>(run.laps());
                laps.add(new EventRun.TimedLap(time, TimingLog.Flag.NONE));
                return run.with(laps);
            })));
        }
        for (Future<?> job : jobs) {
            job.get();
        }
        pool.shutdown();
        assertThat(event.read().runs().get(0).run().laps().stream().map(EventRun.TimedLap::time))
                .containsExactlyInAnyOrder(80.0, 81.0, 82.0, 83.0);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lapz: 1:20.1 | 'lapz' is nothing of a run; perhaps you meant laps",
                "laps: 1:20.1, fast | 'fast' is no lap",
                "laps: 1:20,103 | '103' is no lap",
                "laps: 1:20.1 slowly | '1:20.1 slowly' is no lap",
                "setup: rear-wing=40 deg | rear-wing: 40",
                "setup: rear-wings=4 | perhaps you meant rear-wing",
                "cold: FL 24psi, FL 23psi | it is given twice",
                "cold: XX 24psi | is no tyre",
                "tread: FL 92/86 | 'FL 92/86' is none",
                "fuel: full | 'full' is none",
                "expected: soon | 'soon' is none"
            })
    void whatIsNoLineOfARunIsToldByItsLine(String line, String problem) {
        assertThatThrownBy(() -> RunText.read(new DocumentSource("run-001.txt", "# a run\n" + line + "\n"), CAR))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("run-001.txt")
                .hasMessageContaining(problem);
    }

    @Test
    void aFolderThatIsNoEventIsRefused() throws IOException {
        assertThatThrownBy(() -> EventFolder.of(folder)).hasMessageContaining("this folder is no event");
        assertThatThrownBy(() -> EventFolder.of(folder.resolve("none")))
                .hasMessageContaining("there is no such folder");
        // Of another program.
        Files.writeString(folder.resolve("event.json"), "{\"title\": \"Fair\"}");
        assertThat(EventFolder.about(folder)).isEmpty();
        assertThatThrownBy(() -> EventFolder.of(folder).read()).hasMessageContaining("title");
        Files.writeString(
                folder.resolve("event.json"),
                "{\"lapwright\": \"event/1\", \"name\": \"x\", \"car\": \"../car.json\", \"circuit\": \"c.json\"}");
        assertThatThrownBy(() -> EventFolder.of(folder).read()).hasMessageContaining("is no file of this folder");
        EventFolder event = begun();
        assertThatThrownBy(this::begun)
                .isInstanceOf(UnwritableFileException.class)
                .hasMessageContaining("is an event already");
        Files.delete(event.path().resolve("car.json"));
        assertThatThrownBy(event::read).hasMessageContaining("car.json");
    }

    @Test
    void aPackGivesTheSameFilesBackAndTellsWhatWasChanged() {
        EventFolder event = begun();
        event.add(whole(), CAR);
        String text = new EventPack("1", event.texts(), "{}").text();
        EventPack pack = EventPack.read(new DocumentSource("pack.json", text));
        EventFolder there = pack.unpack(folder.resolve("there"));
        assertThat(there.texts()).isEqualTo(event.texts());
        assertThat(there.read().runs()).isEqualTo(event.read().runs());
        assertThatThrownBy(() -> EventPack.read(new DocumentSource("pack.json", text.replace("set 2", "set 3"))))
                .hasMessageContaining("runs/run-001.txt is not what it was");
        assertThatThrownBy(() -> EventPack.read(
                        new DocumentSource("pack.json", text.replace("runs/run-001.txt", "../run-001.txt"))))
                .hasMessageContaining("belongs to no event");
        assertThatThrownBy(() -> EventPack.read(new DocumentSource("car.json", "{}")))
                .hasMessageContaining("it is no packed event");
        assertThatThrownBy(() -> pack.unpack(folder.resolve("there"))).hasMessageContaining("is an event already");
    }
}
