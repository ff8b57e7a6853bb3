package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Conditions;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import dev.lapwright.line.LineSearch;
import dev.lapwright.report.JsonLayout;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The server lets nobody in but its own page, loses nothing, and tells what the studies say. */
@TestInstance(Lifecycle.PER_CLASS)
@Tag("heavy")
class BenchServerTest {
    private Path folder;
    private BenchRoom room;

    @BeforeAll
    void open(@TempDir Path given) {
        folder = given.resolve("saved");
        room = new BenchRoom(folder);
    }

    @AfterAll
    void close() {
        room.close();
    }

    private static List<Map<String, Object>> messages(String answer) {
        List<Map<String, Object>> messages = new ArrayList<>();
        answer.lines().filter(line -> line.startsWith("{\"")).forEach(line -> messages.add(JsonTree.object(line)));
        return messages;
    }

    private static Map<String, Object> message(String answer, String type) {
        return messages(answer).stream()
                .filter(one -> one.get("type").equals(type))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + type + " in " + answer));
    }

    private String lap(long number, Map<String, ?> set, Map<String, ?> more) throws IOException {
        return room.post("lap", BenchRoom.state(number, set, more));
    }

    /** The first message of a kind about a state. */
    private Map<String, Object> first(String type, long number, Map<String, ?> set, Map<String, ?> more)
            throws IOException {
        return message(room.until("lap", BenchRoom.state(number, set, more), type), type);
    }

    // --- The door -------------------------------------------------------------------------------------------------

    @ParameterizedTest
    @ValueSource(strings = {"", "bench.css", "main.js", "start"})
    void ourPageIsServedUnderAStrictPolicy(String asked) throws IOException {
        String answer = room.said(room.head("GET", asked, 0));
        assertThat(answer).startsWith("HTTP/1.1 200");
        assertThat(answer.toLowerCase(java.util.Locale.ROOT))
                .contains("content-security-policy: default-src 'none'; script-src 'self'")
                .contains("x-content-type-options: nosniff")
                .contains("referrer-policy: no-referrer")
                .contains("cache-control: no-store");
    }

    @Test
    void noScriptStandsInThePage() {
        assertThat(new PageFiles().text(PageFiles.PAGE))
                .doesNotContainPattern("<script(?![^>]*src=)")
                .doesNotContain("style=")
                .doesNotContainPattern(" on[a-z]+=");
    }

    @Test
    void itListensOnThisMachineAlone() throws IOException {
        assertThat(room.address.getHost()).isEqualTo("127.0.0.1");
        // Another address of the same loopback net is not listened on.
        InetAddress other = InetAddress.getByAddress(new byte[] {127, 0, 0, 2});
        assertThatThrownBy(() -> new Socket(other, room.port()).close()).isInstanceOf(IOException.class);
    }

    /** A page elsewhere that knows the port, or makes a name of its own lead here, is turned away. */
    @ParameterizedTest
    @CsvSource({
        "evil.example,,,403",
        "127.0.0.1,,,403",
        "127.0.0.1:1,,,403",
        "OURS,http://evil.example,,403",
        "OURS,null,,403",
        "OURS,,cross-site,403",
        "OURS,,same-site,403",
        "OURS,,none,200",
        "OURS,,same-origin,200",
    })
    void strangersAreTurnedAway(String host, String origin, String site, int status) throws IOException {
        String answer = room.said("GET " + room.path("start") + " HTTP/1.1\r\nHost: "
                + (host.equals("OURS") ? "127.0.0.1:" + room.port() : host) + "\r\n"
                + (origin == null ? "" : "Origin: " + origin + "\r\n")
                + (site == null ? "" : "Sec-Fetch-Site: " + site + "\r\n") + "Connection: close\r\n\r\n");
        assertThat(answer).startsWith("HTTP/1.1 " + status);
    }

    @Test
    void aPostNeedsOurOriginAndAFormIsRefused() throws IOException {
        String body = BenchRoom.state(1, Map.of(), Map.of());
        String head = room.head("POST", "lap", body.length());
        assertThat(room.said(head.replaceFirst("Origin: [^\r]*\r\n", "") + body))
                .startsWith("HTTP/1.1 403");
        assertThat(room.said(head.replace("application/json", "text/plain") + body))
                .startsWith("HTTP/1.1 415");
        assertThat(room.said(head.replace("application/json", "application/x-www-form-urlencoded") + body))
                .startsWith("HTTP/1.1 415");
    }

    /** Without the secret there is nothing, and no path of a request is ever a file's. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/start",
                "/bench.html",
                "/guess/start",
                "SECRET/../../../../etc/passwd",
                "SECRET/..%2f..%2fetc%2fpasswd",
                "SECRET/%2e%2e/main.js",
                "SECRET/main.js/",
                "SECRET//etc/passwd",
                "SECRET/Guard.class",
                "SECRET/package-info.class",
                "SECRET/bench.html%00.js",
                "SECRET"
            })
    void nothingElseIsThere(String path) throws IOException {
        String secret = room.path("").substring(0, room.path("").length() - 1);
        String answer = room.said("GET " + path.replace("SECRET", secret) + " HTTP/1.1\r\nHost: 127.0.0.1:"
                + room.port() + "\r\nConnection: close\r\n\r\n");
        assertThat(answer).startsWith("HTTP/1.1 404").doesNotContain("root:");
    }

    @ParameterizedTest
    @ValueSource(strings = {"PUT", "DELETE", "OPTIONS", "TRACE", "HEAD"})
    void otherMethodsAreRefused(String method) throws IOException {
        assertThat(room.said(room.head(method, "start", 0))).startsWith("HTTP/1.1 405");
    }

    @Test
    void anEndlessBodyIsRefusedAndASlowOneIsLeft() throws IOException {
        assertThat(room.status(room.head("POST", "lap", 50_000_000) + "{")).startsWith("HTTP/1.1 413");
        String chunked = room.head("POST", "lap", 0).replaceFirst("Content-Length: 0", "Transfer-Encoding: chunked");
        String chunk = Integer.toHexString(70_000) + "\r\n" + "x".repeat(70_000) + "\r\n0\r\n\r\n";
        assertThat(room.status(chunked + chunk)).startsWith("HTTP/1.1 413");
        // Half a request keeps nobody waiting: others are answered meanwhile.
        try (Socket slow = new Socket(InetAddress.getLoopbackAddress(), room.port())) {
            OutputStream out = slow.getOutputStream();
            out.write(room.head("POST", "lap", 1000).getBytes(StandardCharsets.US_ASCII));
            out.flush();
            assertThat(room.said(room.head("GET", "start", 0))).startsWith("HTTP/1.1 200");
        }
    }

    /** Points may come as a whole file, which is larger than a state; what is wrong with it is said, and no file is written. */
    @Test
    void aCircuitOfPointsIsReadAsTheCommandReadsIt() throws IOException {
        assertThat(room.status(room.head("POST", "circuit", 5_000_000) + "{")).startsWith("HTTP/1.1 413");
        StringBuilder circle = new StringBuilder("x,y\n");
        for (int i = 0; i < 4000; i++) {
            double angle = 2 * Math.PI * i / 4000;
            circle.append(300 * Math.cos(angle))
                    .append(',')
                    .append(300 * Math.sin(angle))
                    .append('\n');
        }
        String told = drafted("Circle", circle.toString(), Map.of());
        assertThat(circle.length()).isGreaterThan(Guard.MOST_BYTES);
        assertThat(told).contains("\"type\":\"road\"").contains("4000 used of 4000");
        assertThat(drafted("Circle", "x,y\n1,2\n", Map.of())).contains("\"type\":\"fault\"");
        assertThat(drafted("Circle", circle.toString(), Map.of("edits", List.of(Map.of("corner", 900, "radiusM", 30)))))
                .contains("\"type\":\"fault\"");
        assertThat(drafted("Circle", circle.toString(), Map.of("path", "/etc/passwd")))
                .contains("nothing of that name is known here");
        String out = JsonLayout.text(Map.of(
                "car", "gt-talvex",
                "do", "keep",
                "draft", Map.of("name", "../outside", "file", "points.csv", "text", circle.toString())));
        assertThat(room.post("circuit", out)).contains("\"type\":\"fault\"");
        assertThat(folder.resolveSibling("outside.json")).doesNotExist();
    }

    private String drafted(String name, String points, Map<String, ?> more) throws IOException {
        Map<String, Object> draft = new LinkedHashMap<>(Map.of("name", name, "file", "points.csv", "text", points));
        draft.putAll(more);
        return room.post("circuit", JsonLayout.text(Map.of("car", "gt-talvex", "draft", draft)));
    }

    /** A request whose body never comes ends after ten seconds, which the server counts itself. */
    @Test
    @Tag("long")
    void aSlowBodyIsEnded() throws IOException {
        assertThat(room.said(room.head("POST", "lap", 1000) + "{")).isEmpty();
    }

    // --- States that are none -------------------------------------------------------------------------------------

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "[]",
                "null",
                "{",
                "{\"car\": 1}",
                "{\"car\": \"gt-talvex\"}",
                "{\"car\": \"/etc/passwd\", \"circuit\": \"harrowmere\"}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"../harrowmere.json\"}",
                "{\"unknown\": 1}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"now\": {\"set\": {\"rear-wing\": 99}}}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"now\": {\"set\": {\"no-such\": 1}}}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"now\": {\"set\": {\"rear-wing\": \"6\"}}}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"now\": {\"day\": {\"airTempC\": 1e9}}}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"line\": {\"kind\": \"scenic\"}}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"laps\": 1e300}",
                "{\"car\": \"gt-talvex\", \"circuit\": \"harrowmere\", \"pins\": [{},{},{},{},{},{},{}]}",
                "{\"car\": \"gt-talvex\", \"car\": \"student-pipit\"}",
                "{\"now\": {\"name\": \"a\\u0007b\"}}"
            })
    void aStateThatIsNoneIsRefusedInWords(String body) throws IOException {
        String answer = room.post("lap", body);
        boolean refused = answer.startsWith("HTTP/1.1 400");
        assertThat(refused || message(answer, "fault").get("what") instanceof String)
                .as(answer)
                .isTrue();
        assertThat(answer).doesNotContain("Exception").doesNotContain("root:");
    }

    @Test
    void nestingWithoutEndIsRefused() throws IOException {
        assertThat(room.post("lap", "{\"now\":".repeat(9000))).startsWith("HTTP/1.1 400");
        assertThat(room.post("lap", "[".repeat(60_000))).startsWith("HTTP/1.1 400");
    }

    // --- Answers --------------------------------------------------------------------------------------------------

    /** The lap of the page is the one that the library drives, through no code of the bench. */
    @Test
    void theLapIsTheOneThatTheLibraryDrives() throws IOException {
        Map<String, Object> lap = first("lap", 1, Map.of("rear-wing", 9), Map.of());
        var car = Documents.car("gt-talvex");
        var road = Documents.circuit("harrowmere");
        double alone = LapSolver.lap(
                        car.with("rear-wing", 9),
                        LineSearch.of(road, car, LineChoices.DEFAULT)
                                .smoothest()
                                .driven(),
                        Conditions.STANDARD)
                .time();
        assertThat((Double) lap.get("timeS")).isEqualTo(alone, Offset.offset(1e-9));
    }

    /** A line of a file is that of the command; without one on the command line it is refused in words. */
    @Test
    void aLineOfAFileIsDriven(@TempDir Path own) throws IOException {
        Path file = own.resolve("line.json");
        double length = Documents.circuit("harrowmere").length();
        Files.writeString(
                file,
                "{\"lapwright\": \"line/1\", \"name\": \"By hand\", \"road\": \"Harrowmere\", \"roadLengthM\": "
                        + length
                        + ", \"distancesM\": [0, 500, 1000, 1500, 2000, 2500, " + length
                        + "], \"offsetsM\": [1, 1, 0, -1, 0, 1, 1]}");
        Map<String, Object> wish = Map.of("line", Map.of("kind", "file"));
        try (BenchRoom with = new BenchRoom("gt-talvex", "harrowmere", file.toString(), own, LineFinder.SEARCH)) {
            Map<String, Object> lap = message(with.until("lap", BenchRoom.state(1, Map.of(), wish), "lap"), "lap");
            Run alone = Run.of("lap", "gt-talvex", "harrowmere", "--line", file.toString(), "--json");
            assertThat((Double) lap.get("timeS"))
                    .isEqualTo((double) JsonTree.object(alone.out()).get("lapTimeS"), Offset.offset(1e-9));
        }
        assertThat(room.until("lap", BenchRoom.state(1, Map.of(), wish), "fault")
                        .toString())
                .contains("start it with --line FILE");
    }

    /** Who is asked for the fastest line may have it already. */
    @Test
    void theFastestLineIsAskedOfWhoeverKeepsThem(@TempDir Path own) throws IOException {
        AtomicInteger asked = new AtomicInteger();
        LineFinder keeper = (search, vehicle) -> {
            asked.incrementAndGet();
            return search.middle();
        };
        try (BenchRoom with = new BenchRoom("gt-talvex", "harrowmere", "", own, keeper)) {
            Map<String, Object> wish = Map.of("line", Map.of("kind", "fastest"));
            message(with.until("lap", BenchRoom.state(1, Map.of(), wish), "lap"), "lap");
        }
        assertThat(asked).hasValue(1);
    }

    /** The words are the command's. */
    @Test
    void theHeadlineSaysWhatTheCommandsSay() throws IOException {
        Map<String, Object> lap = first("lap", 2, Map.of("rear-wing", 2), Map.of());
        String printed = Run.of("compare", "gt-talvex", "harrowmere", "--against", "rear-wing=2", "--no-doubt")
                .out()
                .replaceAll("\\s+", " ");
        @SuppressWarnings("unchecked")
        List<String> headline = (List<String>) lap.get("headline");
        assertThat(headline).hasSize(3);
        // "rear-wing=2 is 0.1 s slower: 0.2 s lost in corners, …"
        assertThat(printed).contains(headline.get(0).replace(" than standard", "") + ": " + headline.get(1));
        assertThat(headline.get(2)).startsWith("30 laps, 15 with each, that scatter by 0.3 s show ");
    }

    @Test
    @Tag("heavy")
    void everyKnobHasItsLandscape() throws IOException {
        String answer = lap(3, Map.of(), Map.of("hand", "final-drive"));
        Map<String, Object> sheet = message(room.post("sheet", BenchRoom.state(3, Map.of(), Map.of())), "sheet");
        List<Object> knobs = JsonTree.objects(sheet, "knobs").stream()
                .map(knob -> knob.get("name"))
                .toList();
        List<Map<String, Object>> landscapes = messages(answer).stream()
                .filter(one -> one.get("type").equals("landscape"))
                .toList();
        List<Object> complete = landscapes.stream()
                .filter(one -> one.get("complete").equals(true))
                .map(one -> one.get("name"))
                .toList();
        assertThat(complete).containsExactlyInAnyOrderElementsOf(knobs);
        assertThat(knobs).contains("rear-wing", "fuel-litres", "conditions.airTempC", "conditions.grip");
        assertThat(landscapes.stream()
                        .filter(one -> "not in this model".equals(one.get("verdict")))
                        .map(one -> one.get("name")))
                .containsExactlyInAnyOrder("front-fast-bump", "rear-fast-bump");
        List<Map<String, Object>> bands = messages(answer).stream()
                .filter(one -> one.get("type").equals("band"))
                .toList();
        assertThat(bands.stream().map(one -> one.get("name"))).contains("rear-wing", "final-drive", "conditions.grip");
        assertThat(knobs).containsAll(bands.stream().map(one -> one.get("name")).toList());
        // One rule's words; of the day, and of pressures and brakes, none.
        assertThat(bands.stream().map(one -> one.get("verdict")).distinct())
                .isSubsetOf("", "already right", "makes no difference", "cannot be told");
        // First the band of few cars, then what can be said by as many as a sensitivity draws.
        List<Map<String, Object>> wing = bands.stream()
                .filter(one -> one.get("name").equals("rear-wing"))
                .toList();
        assertThat(wing).hasSize(2);
        assertThat(wing.get(0).get("verdict")).isEqualTo("");
        assertThat(wing.get(1).get("points")).isEqualTo(wing.get(0).get("points"));
        assertThat(wing.get(1).get("words").toString()).contains("of 100 of them: ");
        assertThat(bands.stream().filter(one -> one.get("name").toString().matches("conditions.*|.*pressure|brake.*")))
                .isNotEmpty()
                .allSatisfy(one -> assertThat(one.get("verdict")).isEqualTo(""));
        // Words rest on the laps of the bands, and on more.
        double forBands = ((Number) message(answer, "bands").get("laps")).doubleValue();
        assertThat(((Number) message(answer, "words").get("laps")).doubleValue())
                .isGreaterThan(forBands);
        assertThat(message(answer, "end")).isNotNull();
    }

    @Test
    @Tag("heavy")
    void theHeadlineSaysHowSureItIs() throws IOException {
        List<Map<String, Object>> told = messages(lap(41, Map.of("rear-wing", 2), Map.of())).stream()
                .filter(one -> one.get("type").equals("doubt"))
                .toList();
        assertThat(told).hasSize(2);
        for (Map<String, Object> sure : told) {
            assertThat(sure.get("first").toString()).contains(" than standard");
            assertThat(sure.get("lines").toString())
                    .contains("in nine of ten of 60 cars that this one may be")
                    .contains("The difference hangs");
        }
        // Last, as it takes longest.
        assertThat(told.get(0).get("lines").toString()).contains("the fuller model is being asked");
        assertThat(told.get(1).get("lines").toString()).contains(" s by the fuller model, ");
    }

    @Test
    @Tag("long")
    void theHeadlineListensToTheDriver() throws IOException {
        Map<String, Object> heard = first("doubt", 42, Map.of("rear-wing", 2), Map.of("said", List.of("rear")));
        assertThat(heard.get("lines").toString()).contains("What the driver says goes with");
        Map<String, Object> nowhere = first("doubt", 43, Map.of("rear-wing", 2), Map.of("said", List.of("T99=rear")));
        assertThat(nowhere.get("failure").toString()).contains("no corner of that name");
        Map<String, Object> unread = first("doubt", 44, Map.of("rear-wing", 2), Map.of("said", List.of("quickly")));
        assertThat(unread.get("failure").toString()).contains("no word of a driver");
    }

    /** The first that is looked at; which is told first is a matter of threads. */
    @Test
    void theKnobInHandComesFirst() {
        List<Knob> knobs = Knob.of(Documents.car("gt-talvex"));
        List<String> seen = knobs.stream()
                .filter(knob -> knob.traits().seen())
                .map(Knob::name)
                .filter(name -> !name.equals("final-drive"))
                .toList();
        List<String> order = LandscapeAnswer.order(knobs, "final-drive").stream()
                .map(Knob::name)
                .toList();
        assertThat(order)
                .startsWith("final-drive")
                .endsWith(seen.toArray(String[]::new))
                .hasSize(seen.size() + 1);
        assertThat(LandscapeAnswer.order(knobs, ""))
                .extracting(Knob::name)
                .first()
                .isNotEqualTo("final-drive");
    }

    /** What has been overtaken is not worked on any more. */
    @Test
    void theNewestQuestionOfAWindowStopsTheOlder() throws IOException {
        first("lap", 101, Map.of("rear-wing", 5), Map.of("window", "one"));
        String older = lap(100, Map.of("rear-wing", 4), Map.of("window", "one"));
        assertThat(messages(older)).extracting(one -> one.get("type")).containsExactly("stopped");
        first("landscape", 1, Map.of("rear-wing", 4), Map.of("window", "other"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"balance", "gears", "air", "tyres"})
    void eachViewIsToldForBothSetups(String view) throws IOException {
        Map<String, Object> told = first("view", 4, Map.of("rear-wing", 3), Map.of("view", view, "window", view));
        assertThat(told).containsKeys("now", "reference").containsEntry("view", view);
        assertThat(JsonTree.objects(told, "blocks")).isNotEmpty();
        assertThat(told).doesNotContainKey("failure");
    }

    @Test
    void aComplaintIsAnsweredWithChangesToTakeOver() throws IOException {
        String body = BenchRoom.state(
                5, Map.of(), Map.of("study", "complaint", "complaint", "understeer:entry", "window", "c"));
        Map<String, Object> result = message(room.post("study", body), "result");
        List<Map<String, Object>> take = JsonTree.objects(result, "take");
        assertThat(take).isNotEmpty();
        assertThat(take.get(0)).containsKeys("label", "words", "set");
        assertThat(result.get("blocks").toString())
                .contains("one step each, best first")
                .contains("Turn first:")
                .contains("Common practice");
        String nonsense = BenchRoom.state(6, Map.of(), Map.of("study", "complaint", "complaint", "slow"));
        assertThat((String) message(room.post("study", nonsense), "fault").get("what"))
                .contains("does not say which end slides");
    }

    @Test
    void sensitivityTellsItsProgressAndWhatToTakeOver() throws IOException {
        String answer = room.post("study", BenchRoom.state(7, Map.of(), Map.of("study", "sensitivity")));
        assertThat(message(answer, "progress")).containsKeys("done", "total");
        assertThat(message(answer, "result").get("blocks").toString())
                .contains("Differences of the lap time by each alone");
    }

    /** On a car that cannot drive a lap the words say why; the next state is answered as ever. */
    @Test
    void aCarWithoutALapSaysWhy(@TempDir Path own) throws IOException {
        String car =
                Files.writeString(own.resolve("car.json"), BenchPage.carText()).toString();
        try (BenchRoom with = new BenchRoom(car, "harrowmere", own)) {
            Map<String, Object> more = Map.of("car", car, "window", "weak");
            String answer = with.post("lap", BenchRoom.state(8, Map.of("restrictor", 0.01), more));
            assertThat((String) message(answer, "fault").get("what")).contains("the car comes to rest there");
            message(with.until("lap", BenchRoom.state(9, Map.of(), more), "lap"), "lap");
        }
    }

    /** A day that has a name is told by it, and any other as one that was turned. */
    @Test
    void aDayIsToldByItsName() throws IOException {
        Map<String, Object> hot = Map.of("airTempC", 34, "airPressureHpa", 1004, "humidityPercent", 50);
        Map<String, Object> still = new LinkedHashMap<>(hot);
        still.putAll(Map.of("windSpeedMps", 1, "windFromDeg", 180, "grip", 0.97));
        String named = first("lap", 11, Map.of(), now(still)).get("day").toString();
        // The values are those of the demo document hot-afternoon.
        assertThat(named).startsWith("Hot afternoon: 34.0 °C");
        assertThat(first("lap", 12, Map.of(), now(hot)).get("day").toString()).startsWith("day as turned: 34.0 °C");
        assertThat(room.post("lap", BenchRoom.state(13, Map.of(), now(Map.of("snow", 1)))))
                .contains("conditions.snow");
    }

    private static Map<String, Object> now(Map<String, Object> day) {
        return Map.of("now", Map.of("name", "now", "set", Map.of(), "day", day));
    }

    // --- Saving ---------------------------------------------------------------------------------------------------

    private String save(String kind, String name) throws IOException {
        return room.post(
                "save", BenchRoom.state(10, Map.of("rear-wing", 8), Map.of("kind", kind, "name", name, "window", "s")));
    }

    @Test
    void aSetupIsSavedAsADocumentAndNeverOverAnother() throws IOException {
        assertThat(save("setup", "steep wing")).startsWith("HTTP/1.1 200");
        Path file = folder.resolve("steep wing.json");
        assertThat(Documents.setup(file.toString(), Documents.car("gt-talvex")).settings())
                .containsExactly(Map.entry("rear-wing", 8.0));
        String before = Files.readString(file);
        assertThat(save("state", "steep wing")).startsWith("HTTP/1.1 400").contains("left alone");
        assertThat(Files.readString(file)).isEqualTo(before);
    }

    @Test
    void aStateIsSavedAndReadsBackAsTheSame() throws IOException {
        assertThat(save("state", "state-1")).startsWith("HTTP/1.1 200");
        Question read = Question.of(Fields.of("state", Files.readString(folder.resolve("state-1.json"))));
        assertThat(read.now().set()).containsExactly(Map.entry("rear-wing", 8.0));
        assertThat(read.pins()).hasSize(1);
        assertThat(read.car()).isEqualTo("gt-talvex");
    }

    @Test
    void aPageToSendHoldsEverythingAndAsksForNothing(@TempDir Path own) throws IOException {
        String car =
                Files.writeString(own.resolve("car.json"), BenchPage.carText()).toString();
        String circuit = Files.writeString(own.resolve("triangle.json"), BenchPage.TRIANGLE)
                .toString();
        try (BenchRoom with = new BenchRoom(car, circuit, own)) {
            Map<String, Object> more =
                    Map.of("car", car, "circuit", circuit, "kind", "page", "name", "frozen-1", "minutes", 5);
            assertThat(with.post("save", BenchRoom.state(10, Map.of("rear-flap", 40), more)))
                    .startsWith("HTTP/1.1 200");
        }
        String page = Files.readString(own.resolve("frozen-1.html"));
        assertThat(page)
                .contains("default-src 'none'")
                .contains("\"type\":\"landscape\"")
                .contains("\"view\":\"tyres\"")
                .doesNotContain("src=\"main.js\"")
                .doesNotContain(room.address.getPath())
                // Nor does it tell whoever gets it where the documents lie.
                .contains("\"car\":\"car.json\"")
                .doesNotContain(own.toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                ".",
                "..",
                ".hidden",
                "../out",
                "a/b",
                "a\\b",
                "/etc/cron.d/x",
                "C:x",
                "con",
                "NUL",
                "aux.x",
                "-rf",
                "name.",
                "name ",
                "a\u0000b",
                "a\nb",
                "a:b",
                "x\u202Ey"
            })
    void aNameThatLeadsElsewhereIsRefused(String name) throws IOException {
        for (String kind : List.of("setup", "state", "page")) {
            assertThat(save(kind, name)).startsWith("HTTP/1.1 400");
        }
    }

    @Test
    void withoutAnEventThereIsNoNotebook() throws IOException {
        for (String kind : List.of("notebook", "run")) {
            String answer = room.post("study", BenchRoom.state(14, Map.of(), Map.of("study", kind)));
            assertThat((String) message(answer, "fault").get("what")).contains("this bench has no notebook");
        }
    }

    // --- Crowds ---------------------------------------------------------------------------------------------------

    /** Fifty windows at once: each gets the lap that it asked for. */
    @Test
    void fiftyAtOnceAreAllAnswered() {
        List<CompletableFuture<Void>> all = IntStream.range(0, 50)
                .mapToObj(i -> CompletableFuture.runAsync(() -> {
                    try {
                        String window = "crowd" + i;
                        // A newer question right behind: the older one's landscapes are not waited for.
                        CompletableFuture<String> first = CompletableFuture.supplyAsync(() -> asked(window, 1, i % 13));
                        String second = asked(window, 2, (i + 1) % 13);
                        assertThat(message(second, "lap").get("time")).isNotNull();
                        assertThat(messages(first.get())).isNotEmpty();
                        room.post("lap", BenchRoom.state(3, Map.of("no-such", 1), Map.of("window", window)));
                    } catch (Exception e) {
                        throw new AssertionError(e);
                    }
                }))
                .toList();
        all.forEach(CompletableFuture::join);
        assertThat(room.server.windows().open()).isZero();
    }

    private String asked(String window, long number, int wing) {
        try {
            String body = BenchRoom.state(number, Map.of("rear-wing", wing), Map.of("window", window));
            return room.until("lap", body, "landscape");
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** As many windows as there may be, and no more. */
    @Test
    void windowsAreLimited() throws IOException, InterruptedException {
        List<Socket> sockets = new ArrayList<>();
        try (BenchRoom full = new BenchRoom(folder)) {
            for (int i = 0; i < BenchServer.MOST_WINDOWS; i++) {
                Socket socket = new Socket(InetAddress.getLoopbackAddress(), full.port());
                sockets.add(socket);
                socket.getOutputStream().write(full.head("GET", "presence", 0).getBytes(StandardCharsets.US_ASCII));
            }
            await(full, BenchServer.MOST_WINDOWS);
            assertThat(full.said(full.head("GET", "presence", 0)))
                    .startsWith("HTTP/1.1 503")
                    .contains("windows open already");
            assertThat(full.said(full.head("GET", "start", 0))).startsWith("HTTP/1.1 200");
        } finally {
            for (Socket socket : sockets) {
                socket.close();
            }
        }
    }

    /** Java 17's server counts a connection as open for ever whose answer met nobody, unless it is told so. */
    @Test
    void whoGoesBeforeTheAnswerIsNoBurden() throws IOException {
        for (int i = 0; i < BenchServer.MOST_CONNECTIONS + 50; i++) {
            gone(room, "sheet", BenchRoom.state(1, Map.of(), Map.of("window", "gone")));
            assertThat(room.said(room.head("GET", "start", 0))).as("after " + i).startsWith("HTTP/1.1 200");
        }
    }

    /** Studies are done one at a time: those behind a long one that wait for nobody go, or they would take all threads meanwhile. */
    @Test
    @Tag("heavy")
    void whoGoesWhileItWaitsIsNotWaitedFor() throws IOException, InterruptedException {
        String study = BenchRoom.state(1, Map.of(), Map.of("study", "optimise"));
        try (BenchRoom full = new BenchRoom(folder);
                Socket waits = new Socket(InetAddress.getLoopbackAddress(), full.port())) {
            OutputStream out = waits.getOutputStream();
            out.write((full.head("POST", "study", study.length()) + study).getBytes(StandardCharsets.US_ASCII));
            out.flush();
            assertThat(waits.getInputStream().read()).isEqualTo('H');
            for (int i = 0; i < BenchServer.MOST_THREADS + 40; i++) {
                gone(full, "study", study);
            }
            // A sign each fifth of a second, of which the second meets nobody; the optimisation takes much longer.
            Thread.sleep(3000);
            assertThat(full.said(full.head("GET", "start", 0))).startsWith("HTTP/1.1 200");
        }
    }

    private static void gone(BenchRoom room, String asked, String body) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), room.port())) {
            socket.getOutputStream()
                    .write((room.head("POST", asked, body.length()) + body).getBytes(StandardCharsets.US_ASCII));
        }
    }

    private static void await(BenchRoom room, int windows) throws InterruptedException {
        for (int i = 0; i < 1200 && room.server.windows().open() != windows; i++) {
            Thread.sleep(50);
        }
        assertThat(room.server.windows().open()).isEqualTo(windows);
    }

    private void many(int count) {
        HttpClient client = HttpClient.newHttpClient();
        HttpRequest request = HttpRequest.newBuilder(URI.create(room.server.address() + "start"))
                .build();
        List<CompletableFuture<Void>> threads = IntStream.range(0, 8)
                .mapToObj(thread -> CompletableFuture.runAsync(() -> {
                    for (int i = 0; i < count / 8; i++) {
                        try {
                            HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
                            assertThat(answer.statusCode()).isEqualTo(200);
                            assertThat(answer.body()).contains("\"type\":\"start\"");
                        } catch (IOException | InterruptedException e) {
                            throw new AssertionError(e);
                        }
                    }
                }))
                .toList();
        threads.forEach(CompletableFuture::join);
    }

    @Test
    void aThousandRequestsAreAllAnswered() {
        many(1000);
    }

    @Test
    @Tag("long")
    void tenThousandRequestsAreAllAnswered() {
        many(10_000);
    }

    // --- Around it ------------------------------------------------------------------------------------------------

    @Test
    void aPortThatIsTakenIsSaid() {
        assertThatThrownBy(() -> new BenchServer(
                        new Sheets(new Catalogue("", "", "", ""), LineFinder.SEARCH),
                        new SavedFiles(folder),
                        Question.of(Fields.of("state", "{}")),
                        room.port(),
                        60))
                .isInstanceOf(LapwrightException.class)
                .hasMessageContaining("--port " + room.port())
                .hasMessageContaining("leave --port out");
    }

    /** A document that is edited is noticed, left alone, and read again only when that is asked for. */
    @Test
    void anEditedDocumentIsNoticed(@TempDir Path own) throws IOException {
        Path car = own.resolve("mine.json");
        String text = Documents.demoText(DocumentKind.CAR, "gt-talvex");
        Files.writeString(car, text);
        Catalogue catalogue = new Catalogue(car.toString(), "harrowmere", "", "");
        assertThat(catalogue.car(car.toString()).name()).isEqualTo("Talvex GT");
        assertThat(catalogue.news()).isEmpty();
        String edited = text.replaceFirst("Talvex GT", "Talvex Two");
        Files.writeString(car, edited);
        assertThat(catalogue.news()).singleElement().asString().contains("mine.json was edited after it was read");
        assertThat(catalogue.car(car.toString()).name()).isEqualTo("Talvex GT");
        int before = catalogue.edition();
        catalogue.again();
        assertThat(catalogue.car(car.toString()).name()).isEqualTo("Talvex Two");
        assertThat(catalogue.edition()).isEqualTo(before + 1);
        assertThat(Files.readString(car)).isEqualTo(edited);
        Files.writeString(car, "{");
        assertThatThrownBy(catalogue::again).isInstanceOf(LapwrightException.class);
        assertThat(catalogue.car(car.toString()).name()).isEqualTo("Talvex Two");
        Files.delete(car);
        assertThat(catalogue.news()).singleElement().asString().contains("can no longer be read");
    }
}
