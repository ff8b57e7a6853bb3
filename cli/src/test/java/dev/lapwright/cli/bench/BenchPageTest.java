package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.lapwright.cli.Chromium;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page in a real browser, as a hand turns it. */
@TestInstance(Lifecycle.PER_CLASS)
class BenchPageTest {
    private static final String FIRST = "document.querySelector('#words .first').textContent";
    private static final String TIME = "document.getElementById('time').textContent";
    private static final String READY =
            "document.querySelectorAll('.strip .curve').length > 20 && " + TIME + ".includes(':')";

    private Path folder;
    private BenchRoom room;
    private Chromium browser;

    @BeforeAll
    void open(@TempDir Path given) throws IOException, InterruptedException {
        assumeTrue(Chromium.program().isPresent(), "there is no Chromium on this machine");
        folder = given.resolve("saved");
        room = new BenchRoom("student-pipit", "harrowmere", folder);
        browser = new Chromium();
    }

    @AfterAll
    void close() throws IOException {
        if (browser != null) {
            browser.close();
        }
        if (room != null) {
            room.close();
        }
    }

    /** Each test begins with a page that has been laid out. */
    @BeforeEach
    void begin() throws IOException, InterruptedException {
        browser.width(1400);
        browser.medium(false, false);
        fresh();
    }

    private void fresh() throws IOException, InterruptedException {
        // Another address in between: else only what stands behind the # would change.
        browser.open(URI.create("about:blank"));
        browser.open(room.address);
        browser.await(READY);
    }

    private void focus(String knob) throws IOException, InterruptedException {
        browser.value("document.querySelector('[data-knob=\"" + knob + "\"]').focus()");
    }

    private String knob(String name) throws IOException, InterruptedException {
        return (String) browser.value("document.querySelector('[data-knob=\"" + name + "\"]').textContent");
    }

    private String text(String selector) throws IOException, InterruptedException {
        return (String) browser.value("document.querySelector(`" + selector + "`).textContent");
    }

    private void click(String text) throws IOException, InterruptedException {
        Object found = browser.value("(() => { const b = [...document.querySelectorAll('button, a')].find((b) =>"
                + " b.textContent === `" + text + "` && b.checkVisibility()); b?.click(); return Boolean(b); })()");
        assertThat(found).as("a button '" + text + "'").isEqualTo(true);
    }

    private void clean() throws IOException, InterruptedException {
        assertThat(browser.complaints()).isEmpty();
        String own = room.server.address();
        assertThat(browser.requests()).allMatch(request -> request.startsWith(own) || request.startsWith("data:"));
    }

    @Test
    void aTurnedKnobIsSeenInTheHeadlineTheTracesAndTheTable() throws Exception {
        String before = text("#time");
        assertThat(text("#words .first")).contains("This is standard, as pinned");
        focus("rear-flap");
        browser.press("ArrowRight");
        browser.await(TIME + " !== '" + before + "'");
        assertThat(knob("rear-flap")).isEqualTo("32 deg");
        assertThat(text("#words .first")).contains("than standard");
        assertThat(text("#words")).contains("30 laps, 15 with each");
        assertThat(text("#parts caption")).contains("of standard");
        assertThat(text(".inhand .note")).contains("worth ");
        // The way back: undone, redone, and turned back to the pin.
        browser.press("u");
        browser.await(TIME + " === '" + before + "'");
        browser.press("r");
        browser.await(TIME + " !== '" + before + "'");
        browser.press("Backspace");
        browser.await(TIME + " === '" + before + "'");
        assertThat(knob("rear-flap")).isEqualTo("30 deg");
        clean();
    }

    @Test
    void aKnobStopsAtItsEnds() throws Exception {
        focus("rear-flap");
        browser.press("End");
        browser.await("document.querySelector('[data-knob=rear-flap]').textContent === '50 deg'");
        browser.press("ArrowRight");
        assertThat(knob("rear-flap")).isEqualTo("50 deg");
        assertThat(text(".inhand .note")).contains("50 deg is its last click");
        browser.press("Home");
        assertThat(knob("rear-flap")).isEqualTo("10 deg");
        browser.press("PageUp");
        assertThat(knob("rear-flap")).isNotEqualTo("10 deg");
        clean();
    }

    @Test
    void theLandscapeTakesTheMouse() throws Exception {
        @SuppressWarnings("unchecked")
        Map<String, Double> box = (Map<String, Double>)
                browser.value("(() => { const b = document.querySelector('[data-name=rear-flap] .strip')"
                        + ".getBoundingClientRect(); return {x: b.left, y: b.top, w: b.width, h: b.height}; })()");
        double y = box.get("y") + box.get("h") / 2;
        browser.mouse("mouseMoved", box.get("x") + box.get("w") / 2, y);
        browser.mouse("mousePressed", box.get("x") + box.get("w") / 2, y);
        browser.mouse("mouseReleased", box.get("x") + box.get("w") - 5, y);
        browser.await(
                FIRST
                        + ".includes('than standard') || document.querySelector('[data-knob=rear-flap]').textContent === '30 deg'");
        browser.mouse("mousePressed", box.get("x") + box.get("w") - 5, y);
        browser.mouse("mouseReleased", box.get("x") + box.get("w") - 5, y);
        browser.await("document.querySelector('[data-knob=rear-flap]').textContent === '50 deg'");
        click("was 30 deg");
        browser.await("document.querySelector('[data-knob=rear-flap]').textContent === '30 deg'");
        clean();
    }

    @Test
    void theAddressKeepsTheState() throws Exception {
        focus("rear-flap");
        browser.press("ArrowLeft");
        browser.press("p");
        browser.await("document.querySelectorAll('.pins li').length === 2");
        browser.press("ArrowLeft");
        browser.await("location.hash.length > 40 && " + FIRST + ".includes('than standard')");
        String words = settled();
        browser.reload();
        browser.await(READY + " && " + FIRST + ".includes('than standard')");
        assertThat(knob("rear-flap")).isEqualTo("26 deg");
        browser.await("document.getElementById('words').textContent === `" + words + "`");
        assertThat(text(".pins")).contains("rear-flap 28 deg");
        clean();
    }

    /** The headline once no later answer changes it. */
    private String settled() throws Exception {
        String before = "";
        String now = text("#words");
        while (!now.equals(before)) {
            before = now;
            Thread.sleep(1000);
            now = text("#words");
        }
        return now;
    }

    private double[] middle(String selector) throws Exception {
        Object found = browser.value("(() => { const b = document.querySelector('" + selector
                + "').getBoundingClientRect(); return [b.left + b.width / 2, b.top + b.height / 2]; })()");
        return ((List<?>) found).stream().mapToDouble(value -> (Double) value).toArray();
    }

    @Test
    void pinsAreComparedExchangedAndTakenOff() throws Exception {
        focus("rear-flap");
        browser.press("ArrowLeft");
        browser.press("p");
        browser.await("document.querySelectorAll('.pins .held').length === 1");
        click("hold against");
        browser.await(FIRST + ".includes('This is rear-flap 28 deg')");
        // The second pin is dragged onto the first, and put back by its keys.
        double[] first = middle(".pins li:nth-child(1) .name");
        double[] second = middle(".pins li:nth-child(2) .letter");
        browser.mouse("mouseMoved", second[0], second[1]);
        browser.mouse("mousePressed", second[0], second[1]);
        browser.mouse("mouseMoved", first[0], first[1]);
        browser.mouse("mouseReleased", first[0], first[1]);
        browser.await("document.querySelector('.pins li .name').textContent === 'standard'");
        browser.press("ArrowRight");
        browser.await("document.querySelector('.pins li .name').textContent === 'rear-flap 28 deg'");
        click("go to it");
        for (int i = 0; i < 6; i++) {
            browser.press("p");
        }
        browser.await("document.getElementById('notes').textContent.includes('There are 6 pins already')");
        assertThat(browser.value("document.querySelectorAll('.pins li').length"))
                .isEqualTo(6.0);
        browser.value(
                "[...document.querySelectorAll('.pins button')].filter((b) => b.textContent === '×').forEach((b) => b.click())");
        for (int i = 0; i < 6; i++) {
            browser.value("document.querySelector('.pins button[aria-label^=Take]')?.click()");
        }
        browser.await("document.querySelectorAll('.pins li').length === 0");
        // Without a pin the table is that of the corners.
        browser.await("document.querySelector('#parts caption').textContent === 'Corners of a lap'");
        clean();
    }

    @ParameterizedTest
    @CsvSource({
        "2,Which axle,entry",
        "3,no faster,Gears",
        "4,one knob,Downforce over air speed",
        "5,Energy that slip,Lap by lap"
    })
    void eachViewShowsItsReport(String key, String reading, String table) throws Exception {
        browser.press(key);
        browser.await("document.getElementById('view').textContent.includes('" + table + "')");
        assertThat(text("#view")).contains(reading);
        if (!key.equals("5")) {
            assertThat((Double) browser.value("document.querySelector('canvas.plot').height"))
                    .isGreaterThan(100);
            assertThat(
                            browser.value(
                                    "(() => { const c = document.querySelector('canvas.plot');"
                                            + " return c.getContext('2d').getImageData(0, 0, c.width, c.height).data.some((v) => v > 0); })()"))
                    .isEqualTo(true);
        }
        clean();
    }

    @Test
    void theCursorTellsWhatIsUnderIt() throws Exception {
        browser.value("document.querySelector('.traces canvas[tabindex]').focus()");
        browser.press("Home");
        for (int i = 0; i < 5; i++) {
            browser.press("ArrowRight");
        }
        browser.await("document.getElementById('under').textContent.includes('km/h in gear')");
        assertThat(text("#under")).contains("FL").contains("RR").contains("kN").contains("Limited by");
        browser.press("n");
        browser.await("document.getElementById('zoom').textContent.includes('the whole lap')");
        assertThat(browser.value("document.querySelector('#parts .chosen') !== null"))
                .isEqualTo(true);
        browser.press("a");
        browser.await("document.getElementById('zoom').textContent.includes('Drag over a part')");
        clean();
    }

    @Test
    void aDayAndFuelAreKnobs() throws Exception {
        String before = text("#time");
        focus("conditions.airTempC");
        browser.press("ArrowRight");
        browser.await(TIME + " !== '" + before + "'");
        assertThat(knob("conditions.airTempC")).isEqualTo("16 °C");
        String warmer = text("#time");
        focus("fuel-litres");
        browser.press("ArrowRight");
        browser.await(TIME + " !== '" + warmer + "'");
        clean();
    }

    /** More laps, or a steadier driver, show less. */
    @Test
    void theDriversLapsAreSaidAndCount() throws Exception {
        focus("rear-flap");
        browser.press("ArrowRight");
        browser.await(FIRST + ".includes('than standard')");
        browser.value("(() => { const i = document.querySelector('input[aria-label^=Laps]'); i.value = '100';"
                + " i.dispatchEvent(new Event('change')); })()");
        browser.await("document.getElementById('words').textContent.includes('100 laps, 50 with each')");
        clean();
    }

    @Test
    void aComplaintIsAnsweredAndTakenOver() throws Exception {
        click("what helps?");
        browser.await("document.querySelector('.found .take button') !== null");
        String label = text(".found .take button");
        assertThat(text(".found")).contains("Turn first:").contains("one step each, best first");
        browser.value("document.querySelector('.found .take button').click()");
        browser.await(FIRST + ".includes('than standard')");
        assertThat(label).startsWith("take over ");
        click("put away");
        assertThat(browser.value("document.querySelector('.found').childElementCount"))
                .isEqualTo(0.0);
        clean();
    }

    @Test
    void aStudyTellsItsProgressAndIsStopped() throws Exception {
        click("for the best setup");
        browser.await("document.querySelector('.running progress') !== null");
        click("stop");
        browser.await("document.querySelector('.found').textContent.includes('Stopped')");
        // The bench is there for the next question.
        focus("rear-flap");
        browser.press("ArrowRight");
        browser.await(FIRST + ".includes('than standard')");
        clean();
    }

    @Test
    void aSetupIsSavedAndRefusedASecondTime() throws Exception {
        browser.value("document.getElementById('save-name').value = 'from the page'");
        click("the setup");
        browser.await("document.querySelector('#tasks').textContent.includes('Wrote ')");
        assertThat(Files.readString(folder.resolve("from the page.json"))).contains("\"settings\"");
        click("the setup");
        browser.await("document.querySelector('#tasks').textContent.includes('left alone')");
        // The refusal is an answer of the server with a status of its own, which the browser writes down.
        assertThat(browser.complaints()).allMatch(said -> said.contains("400"));
    }

    /** A page that was sent opens without a server, shows all views, and turns nothing. */
    @Test
    void aFrozenPageNeedsNoServer() throws Exception {
        focus("rear-flap");
        browser.press("ArrowRight");
        browser.await(FIRST + ".includes('than standard')");
        String time = text("#time");
        browser.value("document.getElementById('save-name').value = 'frozen'");
        click("a page to send");
        browser.await("document.querySelector('#tasks').textContent.includes('Wrote ')");
        browser.open(folder.resolve("frozen.html"));
        browser.await(READY);
        assertThat(text("#time")).isEqualTo(time);
        assertThat(text("#subject")).contains("A frozen page");
        focus("rear-flap");
        browser.press("ArrowRight");
        assertThat(knob("rear-flap")).isEqualTo("32 deg");
        for (String key : List.of("2", "3", "4", "5", "1")) {
            browser.press(key);
            browser.await("document.querySelector('#view table') !== null");
        }
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).allMatch(request -> request.startsWith("file:") || request.startsWith("data:"));
    }

    /** What has no lap says so where the hand is; what was there stays. */
    @Test
    void aKnobWithoutALapSaysWhy() throws Exception {
        String before = text("#time");
        focus("rear-flap");
        browser.value("""
                (async () => {
                  const { toAddress } = await import(new URL('state.js', location.href));
                  const state = {lapwright: 'bench/1', car: 'student-pipit', circuit: 'harrowmere', line: {kind: 'smoothest'},
                    now: {name: 'now', set: {'powertrain.powerScale': 0.0001}, day: {}}, pins: [{name: 'standard', set: {}, day: {}}],
                    view: 'lap', laps: 30, scatterS: 0.3, minutes: 20};
                  location.hash = toAddress(state);
                })()""");
        browser.reload();
        browser.await("document.getElementById('notes').textContent.includes('No lap so')");
        assertThat(before).contains(":");
    }

    @Test
    void twoWindowsDoNotDisturbEachOther() throws Exception {
        try (Chromium second = new Chromium()) {
            second.width(1400);
            second.open(room.address);
            second.await(READY);
            focus("rear-flap");
            browser.press("ArrowRight");
            browser.await(FIRST + ".includes('than standard')");
            assertThat((String) second.value(FIRST)).contains("as pinned");
            second.value("document.querySelector('[data-knob=rear-flap]').focus()");
            second.press("ArrowLeft");
            second.await(FIRST + ".includes('than standard')");
            assertThat(knob("rear-flap")).isEqualTo("32 deg");
            assertThat(second.complaints()).isEmpty();
        }
        clean();
    }

    @Test
    void aServerThatHasGoneIsSaidAndThePageStays(@TempDir Path own) throws Exception {
        BenchRoom other = new BenchRoom("student-pipit", "harrowmere", own);
        browser.open(other.address);
        browser.await(READY);
        String time = text("#time");
        other.close();
        browser.await("document.getElementById('notes').textContent.includes('The bench')");
        assertThat(text("#time")).isEqualTo(time);
        focus("rear-flap");
        browser.press("ArrowRight");
        assertThat(knob("rear-flap")).isEqualTo("32 deg");
    }

    /** From an empty page by the keyboard alone: to a knob, a turn, a pin, a view, a study. */
    @Test
    void theKeyboardAloneDoesIt() throws Exception {
        for (int i = 0;
                i < 80 && !"rear-flap".equals(browser.value("document.activeElement.dataset.knob ?? ''"));
                i++) {
            browser.press("Tab");
        }
        assertThat(browser.value("document.activeElement.dataset.knob")).isEqualTo("rear-flap");
        assertThat(browser.value("getComputedStyle(document.activeElement).outlineStyle"))
                .isEqualTo("solid");
        browser.press("ArrowUp");
        browser.await(FIRST + ".includes('than standard')");
        browser.press("p");
        browser.press("3");
        browser.await("document.getElementById('view').textContent.includes('Gears')");
        browser.press("?");
        assertThat(text("#notes")).contains("arrows turn one click");
        clean();
    }

    @ParameterizedTest
    @CsvSource({"360,true", "1400,false"})
    void itFitsAndIsReadable(int width, boolean dark) throws Exception {
        fits(width, dark);
    }

    @ParameterizedTest
    @Tag("long")
    @CsvSource({"360,false", "800,false", "800,true", "1400,true"})
    void itFitsAndIsReadableInAllWidthsAndThemes(int width, boolean dark) throws Exception {
        fits(width, dark);
    }

    private void fits(int width, boolean dark) throws Exception {
        browser.width(width);
        browser.lessMotion(dark);
        fresh();
        focus("rear-flap");
        browser.press("ArrowLeft");
        browser.await(FIRST + ".includes('than standard')");
        assertThat((Double)
                        browser.value("document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .as("to scroll sideways")
                .isLessThanOrEqualTo(0);
        assertThat(browser.value("[...document.querySelectorAll('*')].flatMap((e) => e.getAnimations()).length"))
                .isEqualTo(0.0);
        audit();
        for (String key : dark || width == 800 ? List.<String>of() : List.of("2", "5")) {
            browser.press(key);
            browser.await("document.querySelector('#view table') !== null");
            audit();
        }
        clean();
    }

    /** The rules of an automatic audit: WCAG 2.1, levels A and AA, and good practice. */
    private void audit() throws IOException, InterruptedException {
        try (InputStream in = BenchPageTest.class.getResourceAsStream("/axe.min.js")) {
            browser.value(new String(in.readAllBytes(), StandardCharsets.UTF_8) + "; 0");
        }
        Object found =
                browser.value("axe.run(document, {resultTypes: ['violations']}).then((r) => r.violations.map((v) =>"
                        + " v.id + ': ' + v.nodes.map((n) => n.target.join(' ')).slice(0, 3).join(', ')).join('\\n'))");
        assertThat((String) found).isEmpty();
    }
}
