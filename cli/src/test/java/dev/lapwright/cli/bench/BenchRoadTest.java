package dev.lapwright.cli.bench;

import static dev.lapwright.cli.bench.BenchPage.READY;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.surveys.Surveys;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A circuit made on the page in a real browser: by clicks, of a file, over a picture. */
class BenchRoadTest extends InTheBrowser {
    private static final String PLANE = "#road-plane";

    @BeforeEach
    void plane() throws IOException, InterruptedException {
        page.click("a circuit");
        page.await("document.querySelector('" + PLANE + "') !== null");
    }

    /** Sets points, as shares of the plane's width and height; the mouse itself takes half a second for each. */
    private void click(double... shares) throws IOException, InterruptedException {
        page.browser.value("(() => { const plane = document.querySelector('" + PLANE
                + "'); const box = plane.getBoundingClientRect(); const all = " + Arrays.toString(shares)
                + "; for (let i = 0; i < all.length; i += 2) { for (const kind of ['pointerdown', 'pointerup']) {"
                + " plane.dispatchEvent(new PointerEvent(kind, {clientX: box.left + all[i] * box.width,"
                + " clientY: box.top + all[i + 1] * box.height})); } } })()");
    }

    private double size(String side) throws IOException, InterruptedException {
        return (Double) page.browser.value("document.querySelector('" + PLANE + "')." + side);
    }

    /** Clicks along two straights and two half circles, in pixels of the plane, the way round that turns left. */
    private void oval(int onEach, double straight, double radius) throws IOException, InterruptedException {
        double[] all = new double[4 * onEach * 2];
        for (int i = 0; i < 2 * onEach; i++) {
            int on = i % onEach;
            boolean bend = i >= onEach;
            double angle = -Math.PI / 2 + Math.PI * on / onEach;
            double x = bend ? straight / 2 + radius * Math.cos(angle) : straight * ((double) on / onEach - 0.5);
            double y = bend ? -radius * Math.sin(angle) : radius;
            for (int half = 0; half < 2; half++) {
                int at = 2 * (i + half * 2 * onEach);
                all[at] = 0.5 + (half == 0 ? x : -x) / size("clientWidth");
                all[at + 1] = 0.5 + (half == 0 ? y : -y) / size("clientHeight");
            }
        }
        click(all);
    }

    private void name(String name) throws IOException, InterruptedException {
        page.type("road-name", name);
    }

    private Track kept(String name) throws IOException, InterruptedException {
        name(name);
        page.click("keep it and drive");
        page.await(READY + " && document.title.includes('" + name + "')");
        return Documents.circuit(page.folder.resolve(name + ".json").toString());
    }

    /** A straight of length l and a half circle of radius r, twice: 2 (l + π r) (geometry). Clicks have no error here. */
    @Test
    @Tag("long")
    void clicksBecomeARoadThatIsCorrectedAndDriven() throws Exception {
        page.mouse("mousePressed", page.place(PLANE, 0.1, 0.1));
        page.mouse("mouseReleased", page.place(PLANE, 0.1, 0.1));
        page.awaitText("#road-said", "1 points: a road is laid through 8 or more");
        page.click("take the last point back");
        oval(10, 500, 100);
        page.enter("#road-corners", "2");
        page.await("document.querySelectorAll('[id^=radiusM]').length === 2");
        page.audit();
        double metre = 1000 / size("clientWidth");
        Track road = kept("Oval");
        double around = 2 * (500 + Math.PI * 100) * metre;
        // Smoothing cuts where curvature would jump; the points hold it to less than one in a hundred.
        assertThat(road.length()).isCloseTo(around, within(0.01 * around));
        assertThat(road.stations(StationSpacing.DEFAULT).corners()).hasSize(2);
        page.clean();
    }

    /** A radius typed, then dragged: the corner has it, and the road still closes. */
    @Test
    @Tag("long")
    void aCornerIsTypedAndDragged() throws Exception {
        oval(10, 500, 100);
        page.await("document.querySelectorAll('[id^=radiusM]').length > 0");
        page.enter("#radiusM-1", "60");
        page.await("document.querySelector('#radiusM-1').placeholder === '60.0'");
        page.awaitText(".found", "the rest moved by up to");
        // The ring of the corner to the right: the middle of all that has its colour there.
        List<?> ring = (List<?>) page.browser.value("(() => { const c = document.querySelector('" + PLANE
                + "'); const d = c.getContext('2d').getImageData(0, 0, c.width, c.height).data; let [n, x, y] = [0, 0, 0];"
                + " for (let i = 0; i < d.length; i += 4) { const at = (i / 4) % c.width; if (at > c.width / 2 && d[i] === 154 &&"
                + " d[i + 1] === 74 && d[i + 2] === 0) { n++; x += at; y += Math.floor(i / 4 / c.width); } }"
                + " return [x / n / c.width, y / n / c.height]; })()");
        double[] from = page.place(PLANE, (Double) ring.get(0), (Double) ring.get(1));
        page.mouse("mouseMoved", from);
        page.mouse("mousePressed", from);
        page.mouse("mouseMoved", from[0] + 12, from[1]);
        page.mouse("mouseReleased", from[0] + 12, from[1]);
        page.await("document.querySelector('#radiusM-1').value !== '60'");
        double dragged = Double.parseDouble((String) page.browser.value("document.querySelector('#radiusM-1').value"));
        assertThat(dragged).isBetween(40.0, 80.0);
        page.await("Math.abs(document.querySelector('#radiusM-1').placeholder - " + dragged + ") < 0.11");
        Track road = kept("Corrected");
        // The radius is told to a tenth of a metre.
        assertThat(road.stations(StationSpacing.DEFAULT).corners().get(0).minimumRadius())
                .isCloseTo(dragged, within(0.1));
        assertThat(road.isClosed()).isTrue();
        page.clean();
    }

    /** Two half circles: one of them is two corners to a driver, and one again. The remedies are fields of the page. */
    @Test
    void cornersAreSplitAndMergedAndRemediesAreFields() throws Exception {
        oval(10, 500, 100);
        page.enter("#road-corners", "2");
        page.await("document.querySelectorAll('[id^=radiusM]').length === 2");
        page.click("merge with the next");
        page.await("document.querySelectorAll('[id^=radiusM]').length === 1");
        page.click("undo the last merge or split");
        page.await("document.querySelectorAll('[id^=radiusM]').length === 2");
        page.enter("#split-2", "200");
        page.browser.value(
                "[...document.querySelectorAll('button')].filter((b) => b.textContent === 'split at')[1].click()");
        page.awaitText("#road-said", "is no place inside it");
        page.enter("#split-2", "");
        page.browser.value(
                "[...document.querySelectorAll('button')].filter((b) => b.textContent === 'split at')[1].click()");
        page.await("document.querySelectorAll('[id^=radiusM]').length === 3");
        page.awaitText(".found .items", "the field 'width'");
        assertThat(page.text(".found")).doesNotContain("--width-m");
        Track road = kept("Split");
        assertThat(road.stations(StationSpacing.DEFAULT).corners()).hasSize(3);
        page.clean();
    }

    /** The same points by the command give the same document. */
    @Test
    void aFileBecomesTheCircuitOfTheCommand(@TempDir Path own) throws Exception {
        Path file = own.resolve("Thornmere again.geojson");
        Files.writeString(file, Surveys.find("thornmere.geojson").text());
        page.browser.choose("#road-file", file);
        page.awaitText(".found .items", "restricted likelihood");
        Track here = kept("Thornmere again");
        Path there = own.resolve("command.json");
        Run run = Run.of("circuit", "import", file.toString(), "--out", there.toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(page.folder.resolve("Thornmere again.json")).hasSameTextualContentAs(there);
        assertThat(here.isClosed()).isTrue();
        page.clean();
    }

    @Test
    void aPictureNeedsAScale(@TempDir Path own) throws Exception {
        Path picture = own.resolve("map.png");
        ImageIO.write(new BufferedImage(800, 500, BufferedImage.TYPE_INT_RGB), "png", picture.toFile());
        page.browser.choose("#road-file", picture);
        page.awaitText("#road-said", "The picture has no scale yet");
        oval(6, 150, 110);
        assertThat(page.text("#road-said")).contains("no scale yet");
        page.click("click two places whose distance you know");
        // From edge to edge of the picture, which fills the plane's height: 500 of its pixels are 500 m.
        click(0.01, 0.02, 0.01, 0.98);
        page.enter("#road-known", "480");
        page.awaitText(".found .items", "24 used of 24");
        Track oval = kept("Over a picture");
        double around = 2 * (150 + Math.PI * 110) * 500 / size("clientHeight");
        assertThat(oval.length()).isCloseTo(around, within(0.015 * around));
        page.clean();
    }

    @Test
    void whatCannotBeARoadIsSaid(@TempDir Path own) throws Exception {
        // Lissajous' figure of eight.
        double[] eight = new double[32];
        for (int i = 0; i < 16; i++) {
            eight[2 * i] = 0.5 + 0.15 * Math.sin(Math.PI * (i + 0.5) / 8);
            eight[2 * i + 1] = 0.5 + 0.3 * Math.sin(Math.PI * (i + 0.5) / 4);
        }
        click(eight);
        page.awaitText(".found .items", "the line crosses itself");
        assertThat(page.text(".found")).contains("tick 'meant to cross itself'").doesNotContain("--figure-of-eight");
        Path text = Files.writeString(own.resolve("words.csv"), "this is no survey\n");
        page.browser.choose("#road-file", text);
        page.awaitText("#road-said", "words.csv");
        assertThat(page.count(".found .items")).isZero();
        page.clean();
    }
}
