package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Chromium;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.line.LineFinder;
import dev.lapwright.notebook.EventFolder;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The page in a real browser, and a hand at it. Car and circuit are files of its own: a demo car with a restrictor that can leave
 * it without a lap and a damper that no lap sees, and a circuit so short that nobody waits for its laps. They are the documents of an
 * event, so that there is a notebook.
 */
final class BenchPage implements AutoCloseable {
    static final String FIRST = "document.querySelector('#words .first').textContent";
    static final String TIME = "document.getElementById('time').textContent";
    static final String READY = "document.querySelectorAll('.strip .curve').length > 20 && " + TIME + ".includes(':')";

    /** A rounded triangle: by its angles it closes, whatever the length of its sides. */
    static final String TRIANGLE = """
            {"lapwright": "circuit/1", "name": "Triangle", "closed": true, "transitionLengthM": 20, "segments": [
              {"type": "straight", "lengthM": 200, "widthM": 10},
              {"name": "One", "type": "arc", "radiusM": 30, "turn": "left", "angleDeg": 120},
              {"type": "straight", "lengthM": 200},
              {"name": "Two", "type": "arc", "radiusM": 30, "turn": "left", "angleDeg": 120},
              {"type": "straight", "lengthM": 200},
              {"name": "Three", "type": "arc", "radiusM": 30, "turn": "left", "angleDeg": 120}]}
            """;

    private static final String MORE_KNOBS = """
            "adjustments": [
              {"name": "restrictor", "label": "Restrictor", "min": 0.01, "max": 1, "step": 0.01, "standard": 1,
               "moves": [{"quantity": "engine.powerScale"}]},
              {"name": "fast-bump", "label": "Damper, fast bump", "unit": "clicks", "min": 0, "max": 12, "step": 1, "standard": 6,
               "moves": [{"quantity": "suspension.front.fastBumpNsPerM", "perUnit": 100}]},""";

    final Path folder;
    final Path car;
    final Path circuit;
    final BenchRoom room;
    final Chromium browser;

    /** @param given an empty folder: the documents lie in it, and what the page saves in another within */
    BenchPage(Path given) throws IOException, InterruptedException {
        browser = new Chromium();
        folder = given.resolve("saved");
        EventFolder event = EventFolder.create(
                given.resolve("event"),
                new EventFolder.Beginning(
                        "Test day",
                        new DocumentSource("car", carText()),
                        new DocumentSource("circuit", TRIANGLE),
                        Optional.empty(),
                        Optional.empty()));
        car = event.path().resolve("car.json");
        circuit = event.path().resolve("circuit.json");
        room = new BenchRoom(car.toString(), circuit.toString(), "", folder, LineFinder.SEARCH);
    }

    /** A demo car with those knobs. */
    static String carText() {
        return Documents.demoText(DocumentKind.CAR, "student-pipit").replace("\"adjustments\": [", MORE_KNOBS);
    }

    @Override
    public void close() throws IOException {
        browser.close();
        room.close();
    }

    /** A page that has been laid out, on a screen as usual. */
    void begin() throws IOException, InterruptedException {
        browser.width(1400);
        browser.medium(false, false);
        fresh();
    }

    void fresh() throws IOException, InterruptedException {
        open(room.address);
    }

    void open(URI address) throws IOException, InterruptedException {
        // Another address in between: else only what stands behind the # would change.
        browser.open(URI.create("about:blank"));
        browser.open(address);
        browser.await(READY);
    }

    void await(String expression) throws IOException, InterruptedException {
        browser.await(expression);
    }

    /** Waits until an element holds a text. */
    void awaitText(String selector, String part) throws IOException, InterruptedException {
        browser.await("document.querySelector(`" + selector + "`)?.textContent.includes(`" + part + "`)");
    }

    void press(String... keys) throws IOException, InterruptedException {
        for (String key : keys) {
            browser.press(key);
        }
    }

    void focus(String knob) throws IOException, InterruptedException {
        browser.value("document.querySelector('[data-knob=\"" + knob + "\"]').focus()");
    }

    String knob(String name) throws IOException, InterruptedException {
        return (String) browser.value("document.querySelector('[data-knob=\"" + name + "\"]').textContent");
    }

    String text(String selector) throws IOException, InterruptedException {
        return (String) browser.value("document.querySelector(`" + selector + "`).textContent");
    }

    int count(String selector) throws IOException, InterruptedException {
        return ((Double) browser.value("document.querySelectorAll(`" + selector + "`).length")).intValue();
    }

    void click(String text) throws IOException, InterruptedException {
        Object found = browser.value("(() => { const b = [...document.querySelectorAll('button, a')].find((b) =>"
                + " b.textContent === `" + text + "` && b.checkVisibility()); b?.click(); return Boolean(b); })()");
        assertThat(found).as("a button '" + text + "'").isEqualTo(true);
    }

    /** Types into a field, or takes an entry of a list, and leaves it. */
    void enter(String selector, String value) throws IOException, InterruptedException {
        browser.value("(() => { const i = document.querySelector(`" + selector + "`); i.value = `" + value + "`;"
                + " i.dispatchEvent(new Event('change')); })()");
    }

    /** A place within an element, as shares of its width and height. */
    double[] place(String selector, double across, double down) throws IOException, InterruptedException {
        Object found = browser.value("(() => { const e = document.querySelector(`" + selector
                + "`); e.scrollIntoView({block: 'center', behavior: 'instant'}); const b = e.getBoundingClientRect();"
                + " return [b.left + b.width * " + across + ", b.top + b.height * " + down + "]; })()");
        return ((List<?>) found).stream().mapToDouble(value -> (Double) value).toArray();
    }

    void mouse(String kind, double... place) throws IOException, InterruptedException {
        browser.mouse(kind, place[0], place[1]);
    }

    /** Types a text into a field. */
    void type(String id, String text) throws IOException, InterruptedException {
        browser.value("document.getElementById(`" + id + "`).value = `" + text + "`");
    }

    /** Nothing on the console, and nothing asked of anybody but our server. */
    void clean() throws IOException, InterruptedException {
        assertThat(browser.complaints()).isEmpty();
        String own = room.server.address();
        assertThat(browser.requests()).allMatch(request -> request.startsWith(own) || request.startsWith("data:"));
    }

    /** The rules of an automatic audit: WCAG 2.1, levels A and AA, and good practice. */
    void audit() throws IOException, InterruptedException {
        try (InputStream in = BenchPage.class.getResourceAsStream("/axe.min.js")) {
            browser.value("(() => {" + new String(in.readAllBytes(), StandardCharsets.UTF_8) + "})()");
        }
        Object found =
                browser.value("axe.run(document, {resultTypes: ['violations']}).then((r) => r.violations.map((v) =>"
                        + " v.id + ': ' + v.nodes.map((n) => n.target.join(' ')).slice(0, 3).join(', ')).join('\\n'))");
        assertThat((String) found).isEmpty();
    }

    /** Turns a knob by a key, and waits for the lap. */
    void turn(String knob, String key) throws IOException, InterruptedException {
        focus(knob);
        press(key);
        await(FIRST + ".includes('than standard')");
    }

    @SuppressWarnings("unchecked")
    Map<String, Object> object(String expression) throws IOException, InterruptedException {
        return (Map<String, Object>) browser.value(expression);
    }
}
