package dev.lapwright.cli;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/**
 * A headless Chromium driven by Selenium. Browser and driver are those of the machine and are named to it, so that it fetches none.
 * Run by itself it takes pictures of a page and says what is wrong with it; DEVELOPERS.md has the command.
 */
public final class Chromium implements AutoCloseable {
    private static final List<String> BROWSERS =
            List.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");
    private static final List<String> DRIVERS = List.of("/usr/bin/chromedriver", "/usr/lib/chromium/chromedriver");
    private static final Duration PATIENCE = Duration.ofSeconds(60);
    /** Held here, or its level is lost: it warns of each Chromium that is newer than it knows. */
    private static final Logger LOG = Logger.getLogger("org.openqa.selenium");

    private final ChromeDriver driver;
    private final List<String> requests = new ArrayList<>();
    private final List<String> complaints = new ArrayList<>();

    private static Optional<File> program(String variable, List<String> usual) {
        String named = System.getenv(variable);
        Stream<String> names = named == null ? usual.stream() : Stream.of(named);
        return names.map(File::new).filter(File::canExecute).findFirst();
    }

    /** Starts one with an empty page; a test is left out where the machine has none. */
    public Chromium() {
        Optional<File> browser = program("CHROMIUM", BROWSERS);
        Optional<File> itsDriver = program("CHROMEDRIVER", DRIVERS);
        assumeTrue(browser.isPresent(), "there is no Chromium on this machine");
        assumeTrue(itsDriver.isPresent(), "there is no chromedriver on this machine");
        LOG.setLevel(Level.SEVERE);
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.get());
        options.addArguments(
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--disable-quic",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--hide-scrollbars");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.WARNING);
        logs.enable(LogType.PERFORMANCE, Level.ALL);
        options.setCapability(ChromeOptions.LOGGING_PREFS, logs);
        options.setExperimentalOption("perfLoggingPrefs", Map.of("enableNetwork", true, "enablePage", false));
        driver = new ChromeDriver(
                new ChromeDriverService.Builder()
                        .usingDriverExecutable(itsDriver.get())
                        .build(),
                options);
        driver.manage().timeouts().scriptTimeout(PATIENCE);
        // A window that nobody has clicked into fires no events of focus.
        driver.executeCdpCommand("Emulation.setFocusEmulationEnabled", Map.of("enabled", true));
    }

    /** Opens a file and waits until it is there. */
    public void open(Path page) {
        open(page.toUri());
    }

    /** Opens an address and waits until it is there. */
    public void open(URI address) {
        hear();
        requests.clear();
        complaints.clear();
        driver.get(address.toString());
    }

    /** Loads the page anew and waits until it is there. */
    public void reload() {
        driver.navigate().refresh();
    }

    /** Takes down what the browser's logs hold; each entry is handed out once. */
    private void hear() {
        for (LogEntry entry : driver.manage().logs().get(LogType.PERFORMANCE)) {
            // Most entries tell of data that came in, and are not worth reading.
            if (entry.getMessage().contains("\"Network.requestWillBeSent\"")) {
                Map<String, Object> message = object(JsonTree.object(entry.getMessage()), "message");
                requests.add(
                        (String) object(object(message, "params"), "request").get("url"));
            }
        }
        for (LogEntry entry : driver.manage().logs().get(LogType.BROWSER)) {
            complaints.add(entry.getMessage());
        }
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> object(Map<String, Object> parent, String name) {
        return (Map<String, Object>) parent.get(name);
    }

    /** What the page has asked for since it was opened, itself included. */
    public List<String> requests() {
        hear();
        return List.copyOf(requests);
    }

    /** Errors and warnings of the page's console since it was opened. */
    public List<String> complaints() {
        hear();
        return List.copyOf(complaints);
    }

    /** Value of an expression in the page: a text, number, truth value, list or map; a promise is waited for. */
    public Object value(String expression) {
        return plain(driver.executeScript("return (" + expression.strip() + ");"));
    }

    /** All numbers as doubles, as the page has them. */
    private static Object plain(Object value) {
        if (value instanceof Number number) {
            return number.doubleValue();
        }
        if (value instanceof List<?> list) {
            return list.stream().map(Chromium::plain).toList();
        }
        if (value instanceof Map<?, ?> map) {
            Map<Object, Object> plain = new LinkedHashMap<>();
            map.forEach((name, one) -> plain.put(name, plain(one)));
            return plain;
        }
        return value;
    }

    /** Waits until an expression holds in the page; fails with it where it never does. */
    public void await(String expression) throws IOException, InterruptedException {
        WebDriverException fault = null;
        for (long i = 0; i < PATIENCE.toMillis() / 50; i++) {
            try {
                if (Boolean.TRUE.equals(value("Boolean(" + expression + ")"))) {
                    return;
                }
                fault = null;
            } catch (WebDriverException notYet) {
                // A page that is being loaded has nothing to ask yet.
                fault = notYet;
            }
            Thread.sleep(50);
        }
        throw new IOException("never came true: " + expression, fault);
    }

    /** Presses a key by its name, as in {@code ArrowRight}, or one that writes a letter. */
    public void press(String key) {
        String named = key.replace("Backspace", "BackSpace")
                .replaceAll("(?<=[a-z])(?=[A-Z])", "_")
                .toUpperCase(Locale.ROOT);
        hand().sendKeys(key.length() == 1 ? key : Keys.valueOf(named)).perform();
    }

    /** Chooses a file in a field for files. */
    public void choose(String selector, Path file) {
        driver.findElement(By.cssSelector(selector))
                .sendKeys(file.toAbsolutePath().toString());
    }

    /** Moves the mouse, or presses or releases its left button: {@code mouseMoved}, {@code mousePressed}, {@code mouseReleased}. */
    public void mouse(String kind, double x, double y) {
        Actions moved = hand().moveToLocation((int) Math.round(x), (int) Math.round(y));
        switch (kind) {
            case "mousePressed" -> moved.clickAndHold().perform();
            case "mouseReleased" -> moved.release().perform();
            default -> moved.perform();
        }
    }

    /** Without the time that a hand takes. */
    private Actions hand() {
        return new Actions(driver, Duration.ZERO);
    }

    /** Wants less motion, and dark or light. */
    public void lessMotion(boolean dark) {
        media("screen", dark, Map.of("name", "prefers-reduced-motion", "value", "reduce"));
    }

    /** Prefers dark or light, on screen or on paper. */
    public void medium(boolean dark, boolean paper) {
        media(paper ? "print" : "screen", dark, Map.of("name", "prefers-reduced-motion", "value", ""));
    }

    private void media(String kind, boolean dark, Map<String, Object> motion) {
        Map<String, Object> scheme = Map.of("name", "prefers-color-scheme", "value", dark ? "dark" : "light");
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia", Map.of("media", kind, "features", List.of(scheme, motion)));
    }

    /** Makes the screen so wide, px. */
    public void width(int pixels) {
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", pixels, "height", 900, "deviceScaleFactor", 1, "mobile", pixels < 700));
    }

    /** What a script finds wrong: the list of texts that it gives. */
    public List<String> faults(String script) {
        return ((String) value("(" + script + ").join('\\n')")).lines().toList();
    }

    /** A picture of all of the page. */
    public byte[] picture() {
        return data("Page.captureScreenshot", Map.of("format", "png", "captureBeyondViewport", true));
    }

    /** A picture of what the screen shows. */
    public byte[] screen() {
        return driver.getScreenshotAs(OutputType.BYTES);
    }

    /** The page on A4 paper, as PDF. */
    public byte[] paper() {
        return data("Page.printToPDF", Map.of("preferCSSPageSize", true, "printBackground", true));
    }

    private byte[] data(String method, Map<String, Object> parameters) {
        return Base64.getDecoder()
                .decode((String) driver.executeCdpCommand(method, parameters).get("data"));
    }

    @Override
    public void close() {
        driver.quit();
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
