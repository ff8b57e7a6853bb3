package dev.lapwright.cli.bench;

import static dev.lapwright.cli.bench.BenchPage.FIRST;
import static dev.lapwright.cli.bench.BenchPage.READY;
import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Chromium;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.report.JsonLayout;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page in a real browser: what it asks that takes longer, what it keeps, and what goes on around it. */
class BenchDeskTest extends InTheBrowser {
    private void takeOver() throws Exception {
        page.await("document.querySelector('.found .take button') !== null");
        assertThat(page.text(".found .take button")).startsWith("take over ");
        page.browser.value("document.querySelector('.found .take button').click()");
    }

    // --- Asked ----------------------------------------------------------------------------------------------------

    @Test
    void aComplaintIsAnsweredAndTakenOver() throws Exception {
        page.browser.value("document.getElementById('driver-words').value = 'loose on power out of T2'");
        page.click("what helps?");
        page.await("document.querySelector('.found .take button') !== null");
        assertThat(page.text(".found")).contains("Turn first:").contains("one step each, best first");
        takeOver();
        page.await(FIRST + ".includes('than standard')");
        page.click("put away");
        assertThat(page.browser.value("document.querySelector('.found').childElementCount"))
                .isEqualTo(0.0);
        page.press("u");
        page.await(FIRST + ".includes('as pinned')");
        page.clean();
    }

    @Test
    void whatEachKnobIsWorthIsTakenOver() throws Exception {
        page.click("what each knob is worth");
        takeOver();
        page.await(FIRST + ".includes('faster than standard')");
        page.clean();
    }

    @Test
    void aStudyTellsItsProgressAndIsStopped() throws Exception {
        page.click("for the best setup");
        page.await("document.querySelector('.running progress') !== null");
        page.click("stop");
        page.awaitText(".found", "Stopped");
        // The bench is there for the next question.
        page.turn("rear-flap", "ArrowRight");
        page.clean();
    }

    /** A car with two things to turn: the search over all of them takes a quarter of a minute. */
    @Test
    @SuppressWarnings("unchecked")
    void theBestSetupIsFoundAndTakenOver(@TempDir Path own) throws Exception {
        Map<String, Object> few = JsonTree.object(Files.readString(page.car));
        List<String> kept = List.of("rear-flap", "fuel-litres");
        ((List<Map<String, Object>>) few.get("adjustments")).removeIf(one -> !kept.contains(one.get("name")));
        Path file = Files.writeString(own.resolve("few.json"), JsonLayout.text(few));
        try (BenchRoom other = new BenchRoom(file.toString(), page.circuit.toString(), own)) {
            page.browser.open(other.address);
            page.await(FIRST + ".includes('as pinned')");
            page.click("for the best setup");
            takeOver();
            page.await(FIRST + ".includes('faster than standard')");
            assertThat(page.text("#tasks")).contains("the best setup found");
            page.press("u");
            page.await(FIRST + ".includes('as pinned')");
            assertThat(page.browser.complaints()).isEmpty();
        }
    }

    @Test
    void theFastestLineIsFoundAndTakenOver() throws Exception {
        page.click("for the fastest line");
        page.awaitText(".found", "The fastest line found for this setup laps in");
        assertThat(page.text(".found .caution")).contains("Caution:");
        takeOver();
        page.await("document.querySelector('#subject .line').textContent.includes('fastest')");
        page.await(READY + " && " + FIRST + ".includes('as pinned')");
        page.click("back to the smoothest line");
        page.await("document.querySelector('#subject .line').textContent.includes('smoothest')");
        page.await(READY);
        page.clean();
    }

    // --- Kept -----------------------------------------------------------------------------------------------------

    @Test
    void aSetupAndAStateAreSavedAndNothingIsOverwritten() throws Exception {
        page.turn("rear-flap", "ArrowRight");
        page.browser.value("document.getElementById('save-name').value = 'from the page'");
        page.click("the setup");
        page.awaitText("#tasks", "Wrote ");
        assertThat(Files.readString(page.folder.resolve("from the page.json"))).contains("\"rear-flap\": 32");
        page.click("the setup");
        page.awaitText("#tasks", "left alone");
        page.browser.value("document.getElementById('save-name').value = 'a state'");
        page.click("this state");
        page.awaitText("#tasks", "a state.json");
        Question state = Question.of(Fields.of("state", Files.readString(page.folder.resolve("a state.json"))));
        assertThat(state.now().set()).containsEntry("rear-flap", 32.0);
        // The refusal is an answer of the server with a status of its own, which the browser writes down.
        assertThat(page.browser.complaints()).allMatch(said -> said.contains("400"));
    }

    /** A page that was sent opens without a server, shows all views, and turns nothing. */
    @Test
    void aFrozenPageNeedsNoServer() throws Exception {
        page.turn("rear-flap", "ArrowRight");
        String time = page.text("#time");
        page.browser.value("document.getElementById('save-name').value = 'frozen'");
        page.click("a page to send");
        page.awaitText("#tasks", "Wrote ");
        page.browser.open(page.folder.resolve("frozen.html"));
        page.await(READY);
        assertThat(page.text("#time")).isEqualTo(time);
        assertThat(page.text("#subject")).contains("A frozen page").contains("standard day");
        page.focus("rear-flap");
        page.press("ArrowRight");
        assertThat(page.knob("rear-flap")).isEqualTo("32 deg");
        for (String key : List.of("2", "3", "4", "5", "1")) {
            page.press(key);
            page.await("document.querySelector('#view table') !== null");
        }
        assertThat(page.browser.complaints()).isEmpty();
        assertThat(page.browser.requests())
                .allMatch(request -> request.startsWith("file:") || request.startsWith("data:"));
    }

    /** The brief drives thousands of laps: here it is begun and stopped, and leaves no file. */
    @Test
    void theBriefTellsItsProgressAndIsStopped() throws Exception {
        page.browser.value("document.getElementById('save-name').value = 'stopped brief'");
        page.click("the brief");
        page.await("document.querySelector('.running progress')?.max > 1");
        page.click("stop");
        page.awaitText(".found", "Stopped");
        assertThat(page.folder.resolve("stopped brief.html")).doesNotExist();
        page.clean();
    }

    @Test
    @Tag("long")
    void theBriefIsWrittenAndLookedAt() throws Exception {
        page.browser.value("document.getElementById('save-name').value = 'my brief'");
        page.click("the brief");
        page.awaitText(".found", "Wrote ");
        assertThat(page.text(".found")).contains("as the car stands");
        assertThat(Files.readString(page.folder.resolve("my brief.html"))).contains("<h1");
        String address = (String) page.browser.value("document.querySelector('.found a').href");
        page.browser.open(java.net.URI.create(address));
        assertThat(page.text("h1")).contains("Pipit ");
        page.clean();
    }

    /** A run is written down where the setup is in hand; what is wrong with it is said at its field. */
    @Test
    void aRunIsNotedAndShown() throws Exception {
        Path run = page.car.resolveSibling("runs").resolve("run-001.txt");
        page.turn("rear-flap", "ArrowRight");
        page.click("note a run");
        page.type("field-laps", "23.3, fast");
        page.type("field-driver", "pushes in T1");
        page.click("write it down");
        page.awaitText("#field-laps-wrong", "'fast' is no lap");
        assertThat(page.browser.value("document.activeElement.id")).isEqualTo("field-laps");
        assertThat(page.browser.value("document.activeElement.getAttribute('aria-invalid')"))
                .isEqualTo("true");
        page.type("field-laps", "1:53.3, 1:53.4");
        page.click("write it down");
        page.awaitText("#field-laps-wrong", "they are of another circuit");
        assertThat(run).doesNotExist();
        page.type("field-laps", "23.3, 23.4");
        page.click("write it down");
        page.awaitText(".found", "Wrote run 1 of Test day; expected: ");
        assertThat(Files.readString(run))
                .contains("setup: rear-flap=32")
                .contains("laps: 0:23.300, 0:23.400")
                .contains("expected: ")
                .contains("driver: pushes in T1");
        // What is known later is added to it, and its setup is there to be taken over.
        page.press("Backspace");
        page.click("note a run");
        page.enter("#run-number", "1");
        page.type("field-hot", "FL 14psi, FR 14psi, RL 13psi, RR 13psi");
        page.click("write it down");
        page.awaitText(".found", "Wrote run 1 of Test day.");
        assertThat(Files.readString(run)).contains("hot: ").contains("laps: 0:23.300, 0:23.400");
        page.browser.value("document.querySelector('[data-knob=rear-flap]').focus()");
        page.press("Backspace");
        page.click("what the runs show");
        page.await("document.querySelector('.found .take button') !== null");
        assertThat(page.text(".found")).contains("rear-flap=32 deg");
        takeOver();
        page.await("document.querySelector('[data-knob=rear-flap]').textContent === '32 deg'");
        page.clean();
    }

    /** Ten answers make a car; what contradicts itself is refused at both fields, in the command's words. */
    @Test
    void aCarOfTenAnswersIsDraftedAndDriven() throws Exception {
        page.click("a car of ten answers");
        page.type("car-name", "Brindle");
        page.click("draft it");
        page.awaitText("#field-mass-wrong", "it needs an answer");
        // The example of 'lapwright car new --help', but for a top speed that its gears do not reach.
        Map<String, String> answers = Map.of(
                "mass", "1045",
                "driven", "front",
                "power", "147kW@7100",
                "tyres", "205/50R15,track",
                "wheelbase", "2.47",
                "downforce", "none",
                "gears", "3.15,2.05,1.48,1.16,0.96,0.82:4.06",
                "top-speed", "335",
                "brakes", "1.0g");
        for (Map.Entry<String, String> answer : answers.entrySet()) {
            page.type("field-" + answer.getKey(), answer.getValue());
        }
        page.click("draft it");
        page.awaitText("#field-gears-wrong", "it cannot turn so fast");
        assertThat(page.count("[aria-invalid]")).isEqualTo(2);
        Run refused = Run.of(
                "car",
                "new",
                "Brindle",
                "--mass",
                "1045",
                "--driven",
                "front",
                "--power",
                "147kW@7100",
                "--tyres",
                "205/50R15,track",
                "--wheelbase",
                "2.47",
                "--downforce",
                "none",
                "--gears",
                "3.15,2.05,1.48,1.16,0.96,0.82:4.06",
                "--top-speed",
                "335",
                "--brakes",
                "1.0g");
        assertThat(refused.err()).contains(page.text("#field-gears-wrong"));
        assertThat(page.folder.resolve("Brindle.json")).doesNotExist();
        page.type("field-top-speed", "235");
        page.click("draft it");
        page.awaitText(".found", "Wrote ");
        assertThat(page.text(".found")).contains("off by so much").contains("bodies of downforce 'none'");
        assertThat(Documents.car(page.folder.resolve("Brindle.json").toString()).name())
                .isEqualTo("Brindle");
        takeOver();
        page.await("document.title.includes('Brindle')");
        page.await(FIRST + ".includes('as pinned')");
        page.await("document.querySelector('[data-knob=restrictor]') === null");
        assertThat(page.text("select[aria-label=Car] option:checked")).isEqualTo("Brindle");
        page.clean();
    }

    // --- Around it ------------------------------------------------------------------------------------------------

    @Test
    void twoWindowsDoNotDisturbEachOther() throws Exception {
        try (Chromium second = new Chromium()) {
            second.width(1400);
            second.open(page.room.address);
            second.await(READY);
            page.turn("rear-flap", "ArrowRight");
            assertThat((String) second.value(FIRST)).contains("as pinned");
            second.value("document.querySelector('[data-knob=rear-flap]').focus()");
            second.press("ArrowLeft");
            second.await(FIRST + ".includes('than standard')");
            assertThat(page.knob("rear-flap")).isEqualTo("32 deg");
            assertThat(second.complaints()).isEmpty();
        }
        page.clean();
    }

    /** A browser has six connections to a server: windows that are only open must not use them up. */
    @Test
    void manyTabsOfOneBrowserAreAllAnswered() throws Exception {
        page.browser.value("(window.tabs = Array.from({length: 6}, () => window.open(location.pathname)), 0)");
        page.await("tabs.every((tab) => tab.document.getElementById('time')?.textContent.includes(':'))");
        page.turn("rear-flap", "ArrowRight");
        page.browser.value("(tabs.forEach((tab) => tab.close()), 0)");
        page.clean();
    }

    /** It is said, nothing changes by itself, and the file is not written. */
    @Test
    void aDocumentEditedMeanwhileIsNoticedAndReadAgainWhenAsked() throws Exception {
        String before = Files.readString(page.car);
        String time = page.text("#time");
        String edited = before.replace("\"name\": \"Pipit SC\"", "\"name\": \"Pipit Two\"");
        Files.writeString(page.car, edited);
        page.awaitText("#notes", "car.json was edited after it was read");
        assertThat(page.text("#time")).isEqualTo(time);
        assertThat(page.browser.value("document.title")).asString().contains("Pipit SC");
        page.click("read it again");
        page.await(READY + " && document.title.includes('Pipit Two')");
        page.await("!document.getElementById('notes').textContent.includes('was edited')");
        assertThat(page.text("select[aria-label=Car] option:checked")).isEqualTo("Pipit Two");
        assertThat(Files.readString(page.car)).isEqualTo(edited);
        page.clean();
    }

    @Test
    void aServerThatHasGoneIsSaidAndThePageStays(@TempDir Path own) throws Exception {
        BenchRoom other = new BenchRoom("student-pipit", "harrowmere", own);
        page.open(other.address);
        String time = page.text("#time");
        other.close();
        page.awaitText("#notes", "The bench");
        assertThat(page.text("#time")).isEqualTo(time);
        page.focus("rear-flap");
        page.press("ArrowRight");
        assertThat(page.knob("rear-flap")).isEqualTo("32 deg");
    }
}
