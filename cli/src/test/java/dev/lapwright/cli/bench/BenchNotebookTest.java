package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Logs dropped on the page in a real browser, and the runs of an event that they become. */
class BenchNotebookTest extends InTheBrowser {
    private static final String TIMES = """
            run,lap,time,setup
            1,1,40.2,rear-flap=30
            1,2,23.3,rear-flap=30
            1,3,23.4,rear-flap=30
            2,1,40.1,rear-flap=32
            2,2,23.2,rear-flap=32
            2,3,23.3,rear-flap=32
            """;

    /** A file let go over the page. */
    private void drop(String name, String text) throws IOException, InterruptedException {
        page.browser.value(
                "(() => { const data = new DataTransfer(); data.items.add(new File([`" + text + "`], `" + name
                        + "`)); document.getElementById('view').dispatchEvent(new DragEvent('drop',"
                        + " {dataTransfer: data, bubbles: true, cancelable: true})); return 0; })()");
    }

    @Test
    void logsDroppedOnThePageBecomeRuns() throws Exception {
        Path runs = page.car.resolveSibling("runs");
        drop("times.csv", TIMES);
        page.awaitText(".found", "times.csv: run 1, run 2 of Test day.");
        assertThat(Files.readString(runs.resolve("run-002.txt")))
                .contains("setup: rear-flap=32")
                .contains("laps: 0:40.100, 0:23.200, 0:23.300")
                .contains("expected: ");
        assertThat(page.text(".found")).contains("rear-flap=32 deg after standard");
        // The same once more, laps of another circuit, and no log at all: each is said, and no run is written.
        drop("again.csv", TIMES);
        page.awaitText(".found", "again.csv: its laps are those of run 1");
        drop("other.csv", "lap,time\n1,95.3\n2,95.1\n3,95.2\n");
        page.awaitText(".found", "they are of another circuit");
        drop("words.csv", "this is no log");
        page.awaitText(".found", "words.csv");
        drop("tyres.csv", "tyre,cold (psi),hot (psi)\nfront,12,14\nrear,12,13.5\n");
        page.awaitText(".found", "tyres.csv: the pressures of run 2 of Test day.");
        assertThat(Files.readString(runs.resolve("run-002.txt"))).contains("hot: FL 96.5 kPa");
        try (var all = Files.list(runs)) {
            assertThat(all.filter(file -> file.toString().endsWith(".txt"))).hasSize(2);
        }
        page.click("what the runs show");
        page.awaitText(".found", "Next cold setting at 15.0 °C");
        page.audit();
        page.clean();
    }

    /** A bench that was started beside no event begins one, of what lies on the sheet. */
    @Test
    void aNotebookIsBegunOnThePage(@TempDir Path own) throws Exception {
        Path circuit = Files.writeString(own.resolve("triangle.json"), BenchPage.TRIANGLE);
        try (BenchRoom other = new BenchRoom("student-pipit", circuit.toString(), own.resolve("kept"))) {
            page.open(other.address);
            page.turn("rear-flap", "ArrowRight");
            drop("times.csv", "lap,time\n1,40.2\n2,23.3\n3,23.4\n");
            page.awaitText(".found", "Logs become runs of a notebook");
            page.type("field-name", "../day");
            page.click("begin it");
            page.awaitText(".found", "is no name for a file here");
            page.type("field-name", "A day");
            page.click("begin it");
            page.awaitText(".found", "times.csv: run 1 of A day.");
            assertThat(Files.readString(own.resolve("kept/A day/setup.json"))).contains("\"rear-flap\": 32");
            assertThat(Files.readString(own.resolve("kept/A day/runs/run-001.txt")))
                    .contains("setup: rear-flap=32");
            page.awaitText("#notebook .where", "A day");
            assertThat(page.browser.complaints()).isEmpty();
        }
    }
}
