package dev.lapwright.cli.bench;

import static dev.lapwright.cli.bench.BenchPage.FIRST;
import static dev.lapwright.cli.bench.BenchPage.TIME;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The four readers of docs/bench.md: each step of theirs, by keys and the mouse, finds what the page says is there. */
@Tag("long")
class BenchReadersTest extends InTheBrowser {
    private BenchRoom castelvane;
    private BenchRoom harrowmere;

    @BeforeAll
    void openOthers(@TempDir Path given) {
        castelvane = new BenchRoom("gt-talvex", "castelvane", given);
        harrowmere = new BenchRoom("gt-talvex", "harrowmere", given);
    }

    @AfterAll
    void closeOthers() {
        if (castelvane != null) {
            castelvane.close();
            harrowmere.close();
        }
    }

    @BeforeEach
    void narrower() {
        page.browser.width(1280);
    }

    @Test
    void anEngineerChoosesARearWing() throws Exception {
        page.open(castelvane.address);
        page.mouse("mousePressed", page.place("[data-knob=rear-wing]", 0.5, 0.5));
        page.mouse("mouseReleased", page.place("[data-knob=rear-wing]", 0.5, 0.5));
        page.await("document.activeElement.dataset.knob === 'rear-wing'");
        page.awaitText(".inhand .note", "worth ");
        assertThat(page.text(".inhand .note")).contains("fastest");
        page.press("ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowLeft");
        page.await(FIRST + ".includes('than standard')");
        assertThat(page.text("#more")).contains("gained on straights").contains("30 laps");
        page.press("4");
        page.awaitText("#view", "Downforce over air speed");
        assertThat(page.count("#view canvas")).isOne();
    }

    @Test
    void aStrategistChoosesAFinalDrive() throws Exception {
        page.open(harrowmere.address);
        page.press("3");
        page.awaitText("#view", "Gears");
        page.awaitText("#view", "Values of final-drive");
        assertThat(page.text("#view")).contains("makes no difference here that counts");
        page.focus("final-drive");
        page.press("ArrowRight");
        page.await(FIRST + ".includes('than standard')");
        page.press("5");
        page.await("document.querySelector('#minutes') !== null");
        page.enter("#minutes", "30");
        page.awaitText("#view", "Lap by lap");
        assertThat(page.count("[data-knob=fuel-litres]")).isOne();
    }

    @Test
    void aStudentSeesWhyASteeperWingIsSlowerHereAndFasterThere() throws Exception {
        page.open(castelvane.address);
        page.focus("rear-wing");
        page.press("ArrowRight", "ArrowRight", "ArrowRight");
        page.awaitText("#more", "gained in corners");
        page.awaitText("#mapwords", "time won on standard");
        page.mouse("mouseMoved", page.place(".traces canvas[tabindex]", 0.36, 0.3));
        page.awaitText("#under", "Limited by");
        page.press("p");
        page.await("document.querySelectorAll('.pins li').length === 2");
        String before = page.text("#time");
        page.focus("conditions.airTempC");
        page.press("PageUp");
        page.await(TIME + " !== '" + before + "'");
    }

    @Test
    void aDriverAsksWhatHelpsAgainstALooseRear() throws Exception {
        page.open(castelvane.address);
        page.enter("select[aria-label='The car']", "oversteer");
        page.enter("select[aria-label='In which phase']", "exit");
        page.enter("select[aria-label='In which corner']", ":T6");
        page.click("what helps?");
        page.await("document.querySelector('.found .take button') !== null");
        assertThat(page.text(".found")).contains("T6").contains("best first");
        page.browser.value("document.querySelector('.found .take button').click()");
        page.await(FIRST + ".includes('than standard')");
        page.press("2");
        page.awaitText("#view", "Which axle");
        page.press("u");
        page.await(FIRST + ".includes('as pinned')");
    }
}
