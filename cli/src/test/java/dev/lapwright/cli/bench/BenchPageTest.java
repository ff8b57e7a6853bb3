package dev.lapwright.cli.bench;

import static dev.lapwright.cli.bench.BenchPage.FIRST;
import static dev.lapwright.cli.bench.BenchPage.READY;
import static dev.lapwright.cli.bench.BenchPage.TIME;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The page in a real browser, as a hand turns it: knobs, cursor, pins, views, and how it fits. */
class BenchPageTest extends InTheBrowser {
    @Test
    void aTurnedKnobIsSeenInTheHeadlineTheTracesAndTheTable() throws Exception {
        String before = page.text("#time");
        assertThat(page.text("#words .first")).contains("This is standard, as pinned");
        page.focus("rear-flap");
        page.press("ArrowRight");
        page.await(TIME + " !== '" + before + "'");
        assertThat(page.knob("rear-flap")).isEqualTo("32 deg");
        assertThat(page.text("#words .first")).contains("than standard");
        assertThat(page.text("#more")).contains("30 laps, 15 with each");
        page.awaitText("#parts caption", "of standard");
        page.awaitText(".inhand .note", "worth ");
        // The way back: undone, redone, and turned back to the pin.
        page.press("u");
        page.await(TIME + " === '" + before + "'");
        page.press("r");
        page.await(TIME + " !== '" + before + "'");
        page.press("Backspace");
        page.await(TIME + " === '" + before + "'");
        assertThat(page.knob("rear-flap")).isEqualTo("30 deg");
        page.clean();
    }

    @Test
    void aKnobStopsAtItsEnds() throws Exception {
        page.focus("rear-flap");
        page.press("End");
        page.await("document.querySelector('[data-knob=rear-flap]').textContent === '50 deg'");
        page.press("ArrowRight");
        assertThat(page.knob("rear-flap")).isEqualTo("50 deg");
        assertThat(page.text(".inhand .note")).contains("50 deg is its last click");
        page.press("Home");
        assertThat(page.knob("rear-flap")).isEqualTo("10 deg");
        page.press("PageUp");
        assertThat(page.knob("rear-flap")).isNotEqualTo("10 deg");
        page.clean();
    }

    @Test
    void theMouseTurnsAKnobByItsLandscapeAndItsClicks() throws Exception {
        String well = "[data-name=rear-flap] .strip";
        page.mouse("mousePressed", page.place(well, 0.5, 0.5));
        page.mouse("mouseReleased", page.place(well, 0.98, 0.5));
        page.mouse("mousePressed", page.place(well, 0.98, 0.5));
        page.mouse("mouseReleased", page.place(well, 0.98, 0.5));
        page.await("document.querySelector('[data-knob=rear-flap]').textContent === '50 deg'");
        page.click("was 30 deg");
        page.await("document.querySelector('[data-knob=rear-flap]').textContent === '30 deg'");
        String up = "[data-name=rear-flap] button[aria-label$=up]";
        page.mouse("mousePressed", page.place(up, 0.5, 0.5));
        page.mouse("mouseReleased", page.place(up, 0.5, 0.5));
        page.await("document.querySelector('[data-knob=rear-flap]').textContent === '32 deg'");
        page.clean();
    }

    /** A restrictor shut leaves no lap: the knob says why, marks where its range has none, and all else stays. */
    @Test
    void aKnobWithoutALapSaysWhyAndTheRestStays() throws Exception {
        String before = page.text("#time");
        page.focus("restrictor");
        page.press("Home");
        page.awaitText("#notes", "No lap so");
        assertThat(page.text("[data-name=restrictor] .note")).contains("the car comes to rest there");
        assertThat(page.count("[data-name=restrictor].refused")).isOne();
        assertThat(page.text("#time")).isEqualTo(before);
        page.press("ArrowUp", "End");
        page.await("!document.getElementById('notes').textContent.includes('No lap so')");
        page.await("document.querySelector('[data-name=restrictor] .strip .none') !== null");
        assertThat(page.count(".refused")).isZero();
        page.clean();
    }

    @Test
    void aLandscapeSaysWhatItsKnobIsWorth() throws Exception {
        assertThat(page.text("[data-name=fast-bump] .verdict")).isEqualTo("not in this model");
        assertThat(page.count("[data-name=fast-bump] .strip .hatch")).isOne();
        page.focus("fast-bump");
        page.awaitText("[data-name=fast-bump] .note", "a lap of this model knows no dampers");
        // Without wind it makes no difference where it comes from.
        page.awaitText("[data-name='conditions.windFromDeg'] .verdict", "makes no difference");
        page.awaitText("[data-name=rear-flap] .worth", " s");
        assertThat(page.count("[data-name=rear-flap] .strip .band")).isOne();
        page.click("most worth first");
        assertThat(page.text("#knobs h3")).isEqualTo("By what they are worth here");
        page.click("in groups");
        assertThat(page.count("#knobs h3")).isGreaterThan(4);
        // A caution stands where the hand goes near a limit, and not before.
        page.focus("front-pressure");
        assertThat(page.count("[data-name=front-pressure] .caution")).isZero();
        page.press("ArrowLeft");
        page.awaitText("[data-name=front-pressure] .caution", "Caution:");
        page.clean();
    }

    @Test
    void theAddressKeepsTheState() throws Exception {
        page.focus("rear-flap");
        page.press("ArrowLeft", "p");
        page.await("document.querySelectorAll('.pins li').length === 2");
        page.browser.value("performance.clearMarks('all told')");
        page.press("ArrowLeft");
        page.await("location.hash.length > 40 && " + FIRST + ".includes('than standard')");
        page.await("performance.getEntriesByName('all told').length > 0");
        String words = page.text("#words");
        String hash = (String) page.browser.value("location.hash");
        page.browser.reload();
        page.await(READY + " && document.getElementById('words').textContent === `" + words + "`");
        assertThat(page.browser.value("location.hash")).isEqualTo(hash);
        assertThat(page.knob("rear-flap")).isEqualTo("26 deg");
        assertThat(page.text(".pins")).contains("rear-flap 28 deg");
        page.clean();
    }

    @Test
    void pinsAreComparedExchangedAndTakenOff() throws Exception {
        page.focus("rear-flap");
        page.press("ArrowLeft", "p");
        page.await("document.querySelectorAll('.pins .held').length === 1");
        page.click("hold against");
        page.await(FIRST + ".includes('This is rear-flap 28 deg')");
        // The second pin is dragged onto the first, and put back by its keys.
        double[] second = page.place(".pins li:nth-child(2) .letter", 0.5, 0.5);
        double[] first = page.place(".pins li:nth-child(1) .name", 0.5, 0.5);
        page.mouse("mouseMoved", second);
        page.mouse("mousePressed", second);
        page.mouse("mouseMoved", first);
        page.mouse("mouseReleased", first);
        page.await("document.querySelector('.pins li .name').textContent === 'standard'");
        page.press("ArrowRight");
        page.await("document.querySelector('.pins li .name').textContent === 'rear-flap 28 deg'");
        page.click("go to it");
        page.press("p", "p", "p", "p", "p", "p");
        page.awaitText("#notes", "There are 6 pins already");
        assertThat(page.count(".pins li")).isEqualTo(6);
        for (int i = 0; i < 6; i++) {
            page.browser.value("document.querySelector('.pins button[aria-label^=Take]').click()");
        }
        assertThat(page.count(".pins li")).isZero();
        // Without a pin the table is that of the corners.
        page.await("document.querySelector('#parts caption').textContent === 'Corners of a lap'");
        page.clean();
    }

    @Test
    void eachViewShowsItsReport() throws Exception {
        for (List<String> view : List.of(
                List.of("2", "Which axle", "entry"),
                List.of("3", "no faster", "Gears"),
                List.of("4", "one knob", "Downforce over air speed"),
                List.of("5", "Energy that slip", "Lap by lap"))) {
            page.press(view.get(0));
            page.awaitText("#view", view.get(2));
            assertThat(page.text("#view")).contains(view.get(1));
            if (!view.get(0).equals("5")) {
                page.await(
                        "(() => { const c = document.querySelector('canvas.plot');"
                                + " return c.height > 100 && c.getContext('2d').getImageData(0, 0, c.width, c.height).data.some((v) => v > 0); })()");
            }
            page.audit();
        }
        // A longer race needs more fuel.
        String before = page.text("#view .scroll");
        page.enter("#minutes", "6");
        page.await("document.querySelector('#view .scroll').textContent !== `" + before + "`");
        // The row of views is one stop of the Tab key; arrows go along it.
        page.browser.value("document.getElementById('tab-tyres').focus()");
        page.press("ArrowRight");
        assertThat(page.browser.value("document.activeElement.id")).isEqualTo("tab-lap");
        page.awaitText("#zoom", "Drag over a part");
        page.clean();
    }

    /** One cursor: over traces, map and table, by keys and by the mouse. */
    @Test
    void theCursorTellsWhatIsUnderItEverywhere() throws Exception {
        page.await("document.querySelectorAll('#parts tbody tr').length > 5");
        page.browser.value("document.querySelector('.traces canvas[tabindex]').focus()");
        page.press("Home", "ArrowRight", "ArrowRight", "ArrowRight");
        page.awaitText("#under", "km/h in gear");
        assertThat(page.text("#under"))
                .contains("FL")
                .contains("RR")
                .contains("kN")
                .contains("Limited by");
        // The row of the part under it is marked.
        page.mouse("mouseMoved", page.place(".traces canvas[tabindex]", 0.35, 0.3));
        page.awaitText("#parts tr.under", "T1 One");
        page.awaitText("#under", "T1 One");
        // A row that is pointed at moves it there.
        page.browser.value(
                "[...document.querySelectorAll('#parts tbody tr')].find((r) => r.textContent.startsWith('T2 Two')).id = 'second'");
        page.mouse("mouseMoved", page.place("#second", 0.1, 0.5));
        page.awaitText("#under", "T2 Two");
        page.mouse("mouseMoved", page.place(".plan", 0.5, 0.5));
        page.awaitText("#under", "km/h in gear");
        page.clean();
    }

    @Test
    void aPartOfTheLapIsLookedAtClosely() throws Exception {
        page.press("n");
        page.awaitText("#zoom", "the whole lap");
        page.await("document.querySelector('#parts .chosen') !== null");
        page.press("b", "a");
        page.awaitText("#zoom", "Drag over a part");
        page.enter("#zoom select", "1");
        page.await("document.querySelector('#parts .chosen')?.textContent.startsWith('T2 Two')");
        page.click("T3 Three");
        page.await("document.querySelector('#parts .chosen')?.textContent.startsWith('T3 Three')");
        page.click("the whole lap");
        page.awaitText("#zoom", "Drag over a part");
        page.mouse("mouseMoved", page.place(".traces canvas[tabindex]", 0.3, 0.3));
        page.mouse("mousePressed", page.place(".traces canvas[tabindex]", 0.3, 0.3));
        page.mouse("mouseMoved", page.place(".traces canvas[tabindex]", 0.5, 0.3));
        page.mouse("mouseReleased", page.place(".traces canvas[tabindex]", 0.5, 0.3));
        page.awaitText("#zoom", " m: the whole lap");
        page.clean();
    }

    @Test
    void theDayAndFuelAreKnobs() throws Exception {
        String before = page.text("#time");
        page.focus("conditions.airTempC");
        page.press("ArrowRight");
        page.await(TIME + " !== '" + before + "'");
        assertThat(page.knob("conditions.airTempC")).isEqualTo("16 °C");
        assertThat(page.text("select[aria-label=Day] option:checked")).isEqualTo("day as turned");
        String warmer = page.text("#time");
        page.focus("fuel-litres");
        page.press("ArrowRight");
        page.await(TIME + " !== '" + warmer + "'");
        page.clean();
    }

    /** A day is taken whole; pins that stood on the same day go along, so that setups are compared and not days. */
    @Test
    void aDayIsChosenWhole() throws Exception {
        page.press("p");
        page.focus("conditions.grip");
        page.press("ArrowLeft", "p", "ArrowRight");
        page.await("document.querySelectorAll('.pins .figure').length > 3");
        page.enter("select[aria-label=Day]", "Hot afternoon");
        page.await("document.querySelector('.pins li')?.title.includes('Hot afternoon: 34.0')");
        assertThat(page.text("#words .first")).contains("This is standard, as pinned");
        assertThat(page.knob("conditions.airTempC")).isEqualTo("34 °C");
        assertThat(page.knob("conditions.windFromDeg")).isEqualTo("180 deg");
        assertThat(page.browser
                        .value("document.querySelector('.pins li:nth-child(3)').title")
                        .toString())
                .contains("day as turned: 15.0 °C");
        page.press("u");
        page.await("document.querySelector('.pins li')?.title.includes('standard day')");
        assertThat(page.knob("conditions.airTempC")).isEqualTo("15 °C");
        page.clean();
    }

    @Test
    void anotherCarAndAnotherCircuitAreChosen() throws Exception {
        page.enter("select[aria-label=Circuit]", "skarnfell");
        page.await(READY + " && document.title.includes('Skarnfell')");
        page.await("document.querySelector('#zoom option:nth-child(2)')?.textContent.includes('Gatepost')");
        page.enter("select[aria-label=Car]", "touring-merrow");
        page.await(READY + " && document.title.includes('Merrow TC') && document.querySelector('.inhand') === null");
        page.await("document.querySelector('[data-knob=rear-flap]') === null");
        assertThat(page.text("#words .first")).contains("as pinned");
        // Once all is told of it, nothing is left of what was told of the sheet before.
        page.browser.value("performance.clearMarks('all told')");
        page.focus("fuel-litres");
        page.press("ArrowRight");
        page.await("performance.getEntriesByName('all told').length > 0");
        assertThat(page.text("#notes")).doesNotContain("does not answer");
        page.clean();
    }

    /** More laps, or a steadier driver, show less. */
    @Test
    void theDriversLapsAreSaidAndCount() throws Exception {
        page.turn("rear-flap", "ArrowRight");
        page.enter("input[aria-label^=Laps]", "100");
        page.awaitText("#more", "100 laps, 50 with each");
        page.clean();
    }

    /** From an empty page by the keyboard alone: to a knob, a turn, a pin, a view, a study. */
    @Test
    void theKeyboardAloneDoesIt() throws Exception {
        page.press("Tab");
        assertThat(page.browser.value("document.activeElement.textContent")).isEqualTo("To the knobs");
        page.press("Enter");
        for (int i = 0;
                i < 20 && !"rear-flap".equals(page.browser.value("document.activeElement.dataset.knob ?? ''"));
                i++) {
            page.press("Tab");
        }
        assertThat(page.browser.value("document.activeElement.dataset.knob")).isEqualTo("rear-flap");
        assertThat(page.browser.value("getComputedStyle(document.activeElement).outlineStyle"))
                .isEqualTo("solid");
        page.press("ArrowUp");
        page.await(FIRST + ".includes('than standard')");
        page.press("p", "3");
        page.awaitText("#view", "Gears");
        page.press("?");
        assertThat(page.text("#notes")).contains("arrows turn one click");
        page.clean();
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
        page.browser.width(width);
        page.browser.lessMotion(dark);
        page.turn("rear-flap", "ArrowLeft");
        page.await("document.querySelectorAll('#parts tbody tr').length > 5");
        assertThat((Double) page.browser.value(
                        "document.documentElement.scrollWidth - document.documentElement.clientWidth"))
                .as("to scroll sideways")
                .isLessThanOrEqualTo(0);
        assertThat(page.browser.value("[...document.querySelectorAll('*')].flatMap((e) => e.getAnimations()).length"))
                .isEqualTo(0.0);
        page.audit();
        page.clean();
    }

    /** What is read follows; what is turned keeps the units of its document. */
    @Test
    void unitsAreThoseThatAreAskedFor() throws Exception {
        page.enter("select[aria-label=Units]", "imperial");
        page.await("document.querySelector('#zoom')?.textContent.includes('ft. Drag')");
        page.await(READY);
        assertThat(page.text("#facts")).contains("mph").doesNotContain("km/h");
        assertThat(page.text("#parts thead")).contains("mph").doesNotContain("km/h");
        page.enter("select[aria-label=Units]", "si");
        page.await("document.querySelector('#zoom')?.textContent.includes(' m. Drag')");
        page.await(READY);
        assertThat(page.text("#facts")).contains("km/h").doesNotContain("mph");
        page.clean();
    }

    @Test
    @Tag("long")
    void unitsStayWhenThePageIsLoadedAgain() throws Exception {
        page.enter("select[aria-label=Units]", "imperial");
        page.await("document.querySelector('#parts thead').textContent.includes('mph')");
        page.browser.reload();
        page.await("document.querySelector('#zoom')?.textContent.includes('ft. Drag')");
        page.clean();
    }
}
