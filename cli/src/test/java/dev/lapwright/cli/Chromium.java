package dev.lapwright.cli;

import dev.lapwright.report.JsonLayout;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.WebSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * A headless Chromium, asked over its debugging port. Run by itself it takes pictures of a page and says what is wrong with it,
 * from the top of the project with everything built before:
 *
 * <pre>java -cp cli/target/lapwright.jar:cli/target/test-classes dev.lapwright.cli.Chromium page.html folder</pre>
 */
public final class Chromium implements AutoCloseable {
    private static final List<String> NAMES =
            List.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
    private static final int PATIENCE_S = 60;

    private final Process process;
    private final Path profile;
    private final WebSocket socket;
    private final BlockingQueue<Map<String, Object>> messages = new LinkedBlockingQueue<>();
    private final List<String> requests = new ArrayList<>();
    private int last;

    /** The browser of this machine; empty where there is none. */
    public static Optional<Path> program() {
        String named = System.getenv("CHROMIUM");
        Stream<String> names = named == null ? NAMES.stream() : Stream.of(named);
        return names.map(Path::of).filter(Files::isExecutable).findFirst();
    }

    /** Starts one with an empty page. */
    public Chromium() throws IOException, InterruptedException {
        profile = Files.createTempDirectory("lapwright-browser");
        process = new ProcessBuilder(
                        program().orElseThrow().toString(),
                        "--headless",
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--no-first-run",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync",
                        "--hide-scrollbars",
                        "--user-data-dir=" + profile,
                        "--remote-debugging-port=0",
                        "about:blank")
                .redirectErrorStream(true)
                .redirectOutput(profile.resolve("chromium.log").toFile())
                .start();
        HttpClient client = HttpClient.newHttpClient();
        socket = client.newWebSocketBuilder()
                .buildAsync(URI.create(address(client)), new Listener())
                .join();
        command("Page.enable", Map.of());
        command("Network.enable", Map.of());
    }

    private String address(HttpClient client) throws IOException, InterruptedException {
        Path port = profile.resolve("DevToolsActivePort");
        for (int i = 0; i < 10 * PATIENCE_S; i++) {
            if (Files.exists(port) && Files.readAllLines(port).size() > 1) {
                String number = Files.readAllLines(port).get(0);
                HttpRequest list = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + number + "/json"))
                        .build();
                String answer =
                        client.send(list, HttpResponse.BodyHandlers.ofString()).body();
                for (Map<String, Object> target :
                        JsonTree.objects(JsonTree.object("{\"targets\":" + answer + "}"), "targets")) {
                    if (target.get("type").equals("page")) {
                        return (String) target.get("webSocketDebuggerUrl");
                    }
                }
            }
            Thread.sleep(100);
        }
        throw new IOException("Chromium did not start: " + Files.readString(profile.resolve("chromium.log")));
    }

    private final class Listener implements WebSocket.Listener {
        private final StringBuilder part = new StringBuilder();

        @Override
        public CompletionStage<?> onText(WebSocket from, CharSequence data, boolean end) {
            part.append(data);
            if (end) {
                messages.add(JsonTree.object(part.toString()));
                part.setLength(0);
            }
            from.request(1);
            return null;
        }
    }

    private Map<String, Object> command(String method, Map<String, Object> parameters)
            throws IOException, InterruptedException {
        int id = ++last;
        socket.sendText(JsonLayout.text(Map.of("id", id, "method", method, "params", parameters)), true)
                .join();
        while (true) {
            Map<String, Object> answer = next();
            if (answer.get("id") instanceof Double number && number == id) {
                if (answer.containsKey("error")) {
                    throw new IOException(method + ": " + answer.get("error"));
                }
                return object(answer, "result");
            }
        }
    }

    private Map<String, Object> next() throws IOException, InterruptedException {
        Map<String, Object> message = messages.poll(PATIENCE_S, TimeUnit.SECONDS);
        if (message == null) {
            throw new IOException("Chromium does not answer");
        }
        if ("Network.requestWillBeSent".equals(message.get("method"))) {
            requests.add((String) object(object(message, "params"), "request").get("url"));
        }
        return message;
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> object(Map<String, Object> parent, String name) {
        return (Map<String, Object>) parent.get(name);
    }

    /** Opens a file and waits until it is there. */
    public void open(Path page) throws IOException, InterruptedException {
        requests.clear();
        command("Page.navigate", Map.of("url", page.toUri().toString()));
        while (!"Page.loadEventFired".equals(next().get("method"))) {
            // Other news first.
        }
    }

    /** What the page has asked for since it was opened, itself included. */
    public List<String> requests() {
        return List.copyOf(requests);
    }

    /** Makes the screen so wide, px. */
    public void width(int pixels) throws IOException, InterruptedException {
        command(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", pixels < 700));
    }

    /** Prefers dark or light, on screen or on paper. */
    public void medium(boolean dark, boolean paper) throws IOException, InterruptedException {
        Map<String, Object> scheme = Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light");
        command("Emulation.setEmulatedMedia", Map.of("media", paper ? "print" : "screen", "features", List.of(scheme)));
    }

    /** What a script finds wrong: the list of texts that it gives. */
    public List<String> faults(String script) throws IOException, InterruptedException {
        Map<String, Object> result = command(
                "Runtime.evaluate", Map.of("expression", "(" + script + ").join('\\n')", "returnByValue", true));
        if (result.containsKey("exceptionDetails")) {
            throw new IOException(result.get("exceptionDetails").toString());
        }
        return ((String) object(result, "result").get("value")).lines().toList();
    }

    /** A picture of all of the page. */
    public byte[] picture() throws IOException, InterruptedException {
        return data(command("Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true)));
    }

    /** The page on A4 paper, as PDF. */
    public byte[] paper() throws IOException, InterruptedException {
        return data(command("Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", true)));
    }

    private static byte[] data(Map<String, Object> result) {
        return Base64.getDecoder().decode((String) result.get("data"));
    }

    @Override
    public void close() throws IOException {
        socket.abort();
        process.destroy();
        try {
            if (!process.waitFor(10, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        try (Stream<Path> files = Files.walk(profile)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(file);
            }
        } catch (IOException | UncheckedIOException busy) {
            // The browser's last processes may still hold a file of the temporary folder.
        }
    }

    /** The script that looks for faults of layout, left-overs and contrast. */
    public static String checks() throws IOException {
        try (InputStream in = Chromium.class.getResourceAsStream("page-checks.js")) {
            // An expression: without the remark above it and the semicolon behind.
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .replaceFirst("^//.*\\R", "")
                    .strip();
        }
    }

    /** Takes the pictures: three widths, light and dark, and paper. */
    public static void main(String... arguments) throws IOException, InterruptedException {
        Path page = Path.of(arguments[0]).toAbsolutePath();
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        String checks = checks();
        try (Chromium browser = new Chromium()) {
            for (boolean dark : new boolean[] {false, true}) {
                for (int width : new int[] {360, 800, 1200}) {
                    browser.medium(dark, false);
                    browser.width(width);
                    browser.open(page);
                    String name = width + (dark ? "-dark" : "-light");
                    Files.write(folder.resolve(name + ".png"), browser.picture());
                    System.out.println(name + ": " + browser.faults(checks));
                }
            }
            browser.medium(false, true);
            Files.write(folder.resolve("paper.pdf"), browser.paper());
        }
    }
}
