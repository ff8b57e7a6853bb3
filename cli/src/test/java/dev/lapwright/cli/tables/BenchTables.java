package dev.lapwright.cli.tables;

import dev.lapwright.cli.Chromium;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Times of the bench as docs/performance.md has them, and with a folder its pictures of docs/bench.md. In a real browser, from the top
 * of the project; DEVELOPERS.md has the command.
 */
public final class BenchTables {
    private static final String READY = "document.querySelectorAll('.strip .curve').length > 20";
    private static final String TOLD = "performance.getEntriesByName('all told').length > 0";
    private static final String FIRST = "document.querySelector('#words .first')?.textContent ?? ''";
    /** A circuit of clicks: a bean about the middle of the plane. */
    private static final String CLICKS = """
            (() => {
              const plane = document.querySelector('#road-plane');
              const box = plane.getBoundingClientRect();
              for (let i = 0; i < 44; i++) {
                const angle = (2 * Math.PI * i) / 44;
                const away = 150 + 35 * Math.cos(3 * angle) - 25 * Math.sin(2 * angle);
                plane.dispatchEvent(new PointerEvent('pointerdown', {
                  clientX: box.left + box.width / 2 + 2.4 * away * Math.cos(angle), clientY: box.top + box.height / 2 - away * Math.sin(angle)}));
                plane.dispatchEvent(new PointerEvent('pointerup'));
              }
            })()
            """;

    private static final int STARTS = 5;
    private static final int TURNS = 100;
    private static final int PATIENT_TURNS = 20;

    private BenchTables() {}

    public static void main(String... arguments) throws IOException, InterruptedException {
        if (arguments.length > 0) {
            pictures(Files.createDirectories(Path.of(arguments[0])));
        } else {
            times();
        }
    }

    /** The command in a process of its own. */
    private record Started(Process process, URI address, long begun) implements AutoCloseable {
        static Started of(String... words) throws IOException {
            List<String> command = new ArrayList<>(List.of("./lapwright", "bench"));
            command.addAll(Arrays.asList(words));
            command.add("--no-browser");
            long begun = System.nanoTime();
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            BufferedReader said =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
            String line = said.readLine();
            while (line.indexOf("http") < 0) {
                line = said.readLine();
            }
            return new Started(process, URI.create(line.substring(line.indexOf("http"))), begun);
        }

        @Override
        public void close() {
            process.destroy();
        }
    }

    private static void times() throws IOException, InterruptedException {
        double[] usable = new double[STARTS];
        try (Chromium browser = new Chromium()) {
            browser.width(1400);
            // The first start of all builds what later ones use.
            Started.of("gt-talvex", "castelvane").close();
            for (int i = 0; i < STARTS; i++) {
                try (Started bench = Started.of("gt-talvex", "castelvane")) {
                    browser.open(bench.address());
                    browser.await("document.getElementById('time').textContent.includes(':')");
                    usable[i] = (System.nanoTime() - bench.begun()) * 1e-6;
                    browser.open(URI.create("about:blank"));
                }
            }
            System.out.println("| what, ms | count | median | 95 of 100 | most |");
            System.out.println("|---|---|---|---|---|");
            row("from the command to a page with its lap", usable);
            try (Started bench = Started.of("gt-talvex", "castelvane")) {
                browser.open(bench.address());
                browser.await(TOLD);
                focus(browser);
                // Warm: the first hundred turns are not counted.
                turn(browser, TURNS, 30);
                browser.value("performance.clearMeasures()");
                turn(browser, TURNS, 30);
                row("from a turn to the drawn lap, turning on", measured(browser, "turned to drawn"));
                for (int i = 0; i < PATIENT_TURNS; i++) {
                    browser.value("performance.clearMarks('all told')");
                    browser.press(i % 2 == 0 ? "ArrowLeft" : "ArrowRight");
                    browser.await(TOLD);
                }
                row("from a turn to the drawn lap, one by one", last(measured(browser, "turned to drawn")));
                row("from a turn to all landscapes, first look", last(measured(browser, "turned to all landscapes")));
                row("from a turn to all landscapes, all settings", last(measured(browser, "turned to all told")));
                row("from a turn to all bands", last(measured(browser, "turned to all bands")));
                row("from a turn to all words", last(measured(browser, "turned to all words")));
                row("from a turn to how sure all of it is", last(measured(browser, "turned to all doubt told")));
                System.out.println();
                System.out.println(
                        "| laps of drawn cars, beside those of the headline | count | median | 95 of 100 | most |");
                System.out.println("|---|---|---|---|---|");
                row("until all bands are told", last(laps(browser, "turned to all bands")));
                row("until all words are told", last(laps(browser, "turned to all words")));
            }
        }
    }

    private static double[] last(double[] all) {
        return Arrays.copyOfRange(all, Math.max(0, all.length - PATIENT_TURNS), all.length);
    }

    private static void focus(Chromium browser) throws IOException, InterruptedException {
        browser.value("document.querySelector('[data-knob=rear-wing]').focus({preventScroll: true})");
    }

    /** Turns to and fro as a key that is held down does. */
    private static void turn(Chromium browser, int turns, int apartMs) throws IOException, InterruptedException {
        for (int i = 0; i < turns; i++) {
            browser.press(i / 6 % 2 == 0 ? "ArrowLeft" : "ArrowRight");
            Thread.sleep(apartMs);
        }
        browser.await(TOLD);
        Thread.sleep(500);
    }

    private static double[] measured(Chromium browser, String name) throws IOException, InterruptedException {
        return measured(browser, name, "duration");
    }

    private static double[] laps(Chromium browser, String name) throws IOException, InterruptedException {
        return measured(browser, name, "detail");
    }

    @SuppressWarnings("unchecked")
    private static double[] measured(Chromium browser, String name, String what)
            throws IOException, InterruptedException {
        List<Number> list = (List<Number>)
                browser.value("performance.getEntriesByName('" + name + "').map((entry) => entry." + what + ")");
        return list.stream().mapToDouble(Number::doubleValue).toArray();
    }

    private static void row(String what, double... values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int n = sorted.length;
        System.out.println(String.format(
                Locale.ROOT,
                "| %s | %d | %.0f | %.0f | %.0f |",
                what,
                n,
                sorted[n / 2],
                sorted[Math.min(n - 1, (int) Math.ceil(0.95 * n) - 1)],
                sorted[n - 1]));
    }

    private static void pictures(Path folder) throws IOException, InterruptedException {
        try (Chromium browser = new Chromium();
                Started bench = Started.of("gt-talvex", "castelvane", "--folder", "setups")) {
            for (boolean dark : new boolean[] {false, true}) {
                browser.medium(dark, false);
                browser.width(1280);
                lay(browser, bench);
                Files.write(folder.resolve(dark ? "bench-dark.png" : "bench.png"), browser.screen());
            }
            browser.medium(false, false);
            for (String key : List.of("2", "3", "4", "5")) {
                browser.value("performance.clearMarks('all told')");
                browser.press(key);
                browser.await("document.querySelector('#view table') !== null");
                browser.await(TOLD);
                Files.write(
                        folder.resolve("bench-"
                                + browser.value("document.querySelector('[aria-selected=true]').id.slice(4)") + ".png"),
                        browser.screen());
            }
            lay(browser, bench);
            browser.value(
                    "[...document.querySelectorAll('button')].find((b) => b.textContent === 'a circuit').click()");
            browser.value(CLICKS);
            browser.await("document.querySelectorAll('.found tbody tr').length > 3");
            browser.value("document.querySelector('#radiusM-2').value = 40");
            browser.value("document.querySelector('#radiusM-2').dispatchEvent(new Event('change'))");
            browser.await("document.querySelector('#radiusM-2').placeholder === '40.0'");
            browser.value("document.querySelector('.found h2').scrollIntoView()");
            Files.write(folder.resolve("bench-circuit.png"), browser.screen());
            browser.width(360);
            lay(browser, bench);
            Files.write(folder.resolve("bench-phone.png"), browser.screen());
        }
    }

    /** The rear wing turned from 6 to 2, the cursor in a corner. */
    private static void lay(Chromium browser, Started bench) throws IOException, InterruptedException {
        browser.open(URI.create("about:blank"));
        browser.open(bench.address());
        browser.await(READY);
        focus(browser);
        for (int i = 0; i < 4; i++) {
            browser.press("ArrowLeft");
        }
        browser.await("(" + FIRST + ").includes('slower') || (" + FIRST + ").includes('faster')");
        browser.await(TOLD);
        Thread.sleep(1500);
        browser.value(
                "(() => { const c = document.querySelector('.traces canvas[tabindex]'); const b = c.getBoundingClientRect();"
                        + " c.dispatchEvent(new PointerEvent('pointermove', {clientX: b.left + 0.36 * b.width, clientY: b.top + 60})); })()");
        Thread.sleep(500);
    }
}
