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
import java.util.LinkedHashMap;
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
    /** Virtual key codes of the keys that are pressed by name. */
    private static final Map<String, Integer> CODES = Map.ofEntries(
            Map.entry("Tab", 9),
            Map.entry("Enter", 13),
            Map.entry("Escape", 27),
            Map.entry("PageUp", 33),
            Map.entry("PageDown", 34),
            Map.entry("End", 35),
            Map.entry("Home", 36),
            Map.entry("ArrowLeft", 37),
            Map.entry("ArrowUp", 38),
            Map.entry("ArrowRight", 39),
            Map.entry("ArrowDown", 40),
            Map.entry("Backspace", 8));

    private final Process process;
    private final Path profile;
    private final WebSocket socket;
    private final BlockingQueue<Map<String, Object>> messages = new LinkedBlockingQueue<>();
    private final List<String> requests = new ArrayList<>();
    private final List<String> complaints = new ArrayList<>();
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
        command("Runtime.enable", Map.of());
        command("Log.enable", Map.of());
        // A window that nobody has clicked into fires no events of focus.
        command("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
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
        complaint(message).ifPresent(complaints::add);
        return message;
    }

    /** What the page's console says of an error or a warning. */
    private static Optional<String> complaint(Map<String, Object> message) {
        String method = String.valueOf(message.get("method"));
        Map<String, Object> news = object(message, "params");
        boolean called = method.equals("Runtime.consoleAPICalled") && !"log".equals(news.get("type"));
        boolean logged = method.equals("Log.entryAdded")
                && List.of("error", "warning").contains(object(news, "entry").get("level"));
        return called || logged || method.equals("Runtime.exceptionThrown")
                ? Optional.of(method + " " + news)
                : Optional.empty();
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> object(Map<String, Object> parent, String name) {
        return (Map<String, Object>) parent.get(name);
    }

    /** Opens a file and waits until it is there. */
    public void open(Path page) throws IOException, InterruptedException {
        open(page.toUri());
    }

    /** Opens an address and waits until it is there. */
    public void open(URI address) throws IOException, InterruptedException {
        requests.clear();
        complaints.clear();
        command("Page.navigate", Map.of("url", address.toString()));
        awaitLoaded();
    }

    /** Loads the page anew and waits until it is there; a script that does so may lose its own answer. */
    public void reload() throws IOException, InterruptedException {
        command("Page.reload", Map.of());
        awaitLoaded();
    }

    private void awaitLoaded() throws IOException, InterruptedException {
        while (!"Page.loadEventFired".equals(next().get("method"))) {
            // Other news first.
        }
    }

    /** What the page has asked for since it was opened, itself included. */
    public List<String> requests() {
        return List.copyOf(requests);
    }

    /** Errors and warnings of the page's console since it was opened. */
    public List<String> complaints() throws IOException, InterruptedException {
        // What was said before is heard with the answer.
        value("0");
        return List.copyOf(complaints);
    }

    /** Value of an expression in the page: a text, number, truth value, list or map; a promise is waited for. */
    public Object value(String expression) throws IOException, InterruptedException {
        Map<String, Object> result = command(
                "Runtime.evaluate",
                Map.of("expression", expression, "returnByValue", true, "awaitPromise", true, "userGesture", true));
        if (result.containsKey("exceptionDetails")) {
            throw new IOException(expression + ": " + result.get("exceptionDetails"));
        }
        return object(result, "result").get("value");
    }

    /** Waits until an expression holds in the page; fails with it where it never does. */
    public void await(String expression) throws IOException, InterruptedException {
        IOException fault = null;
        for (int i = 0; i < 20 * PATIENCE_S; i++) {
            try {
                if (Boolean.TRUE.equals(value("Boolean(" + expression + ")"))) {
                    return;
                }
                fault = null;
            } catch (IOException notYet) {
                // A page that is being loaded has nothing to ask yet.
                fault = notYet;
            }
            Thread.sleep(50);
        }
        throw new IOException("never came true: " + expression, fault);
    }

    /** Presses a key by its name, as in {@code ArrowRight}, or one that writes a letter. */
    public void press(String key) throws IOException, InterruptedException {
        boolean letter = key.length() == 1;
        Map<String, Object> down = new LinkedHashMap<>();
        down.put("type", letter ? "keyDown" : "rawKeyDown");
        down.put("key", key);
        if (letter) {
            down.put("text", key);
        } else {
            down.put("code", key);
            down.put("windowsVirtualKeyCode", CODES.getOrDefault(key, 0));
            if (key.equals("Enter")) {
                down.put("type", "keyDown");
                down.put("text", "\r");
            }
        }
        command("Input.dispatchKeyEvent", down);
        command("Input.dispatchKeyEvent", Map.of("type", "keyUp", "key", key));
    }

    /** Moves the mouse, or presses or releases its left button: {@code mouseMoved}, {@code mousePressed}, {@code mouseReleased}. */
    public void mouse(String kind, double x, double y) throws IOException, InterruptedException {
        boolean held = !kind.equals("mouseMoved");
        command(
                "Input.dispatchMouseEvent",
                Map.of("type", kind, "x", x, "y", y, "button", held ? "left" : "none", "clickCount", held ? 1 : 0));
    }

    /** Wants less motion, and dark or light. */
    public void lessMotion(boolean dark) throws IOException, InterruptedException {
        Map<String, Object> scheme = Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light");
        Map<String, Object> motion = Map.of("name", "prefers-reduced-motion", "value", "reduce");
        command("Emulation.setEmulatedMedia", Map.of("media", "screen", "features", List.of(scheme, motion)));
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

    /** A picture of what the screen shows. */
    public byte[] screen() throws IOException, InterruptedException {
        return data(command("Page.captureScreenshot", Map.of("format", "png")));
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
