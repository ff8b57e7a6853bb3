package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.report.JsonLayout;
import dev.lapwright.torture.Damage;
import dev.lapwright.torture.Torture;
import dev.lapwright.torture.TortureHook;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;

/** However a request of the page has been damaged, the bench answers or turns it away, says no fault of its own, writes nothing elsewhere, and goes on. */
class HostileRequestsTest {
    private static final List<AutoCloseable> OPEN = new ArrayList<>();
    private static final List<Path> PLACE = new ArrayList<>();
    private static final String STATE = state(Map.of());
    /** The first of what is asked, which the bench answers at once. */
    private static final int QUICK = 3;

    private static final List<String[]> ASKED = List.of(
            new String[] {"sheet", STATE},
            new String[] {"lap", STATE},
            new String[] {"save", state(Map.of("kind", "setup", "name", "mine"))},
            new String[] {"study", state(Map.of("study", "begin", "name", "day"))},
            new String[] {"study", state(Map.of("study", "complaint", "complaint", "understeer:entry"))},
            new String[] {"car", state(Map.of("do", "try", "fields", Map.of("chassis.massKg", "1290")))},
            new String[] {
                "log", state(Map.of("study", "log", "logName", "laps.csv", "log", "lap,time\n1,69.2\n2,69.4\n"))
            },
            new String[] {
                "circuit",
                JsonLayout.text(Map.of(
                        "car", "gt-talvex", "draft", Map.of("name", "Ring", "file", "points.csv", "text", circle())))
            });

    private static String state(Map<String, ?> more) {
        Map<String, Object> tree = new LinkedHashMap<>(Map.of("laps", 20, "hand", "final-drive", "scatterS", 0.2));
        tree.putAll(more);
        return BenchRoom.state(7, Map.of("rear-wing", 8), tree);
    }

    private static String circle() {
        StringBuilder points = new StringBuilder("x,y\n");
        for (int i = 0; i < 60; i++) {
            points.append(100 * Math.cos(Math.PI * i / 30))
                    .append(',')
                    .append(100 * Math.sin(Math.PI * i / 30))
                    .append('\n');
        }
        return points.toString();
    }

    @BeforeContainer
    static void open() throws IOException {
        Path place = Files.createTempDirectory("torture");
        PLACE.add(place);
        OPEN.add(new BenchRoom(place.resolve("saved")));
    }

    @AfterContainer
    static void close() throws Exception {
        for (AutoCloseable one : OPEN) {
            one.close();
        }
        try (Stream<Path> files = Files.walk(PLACE.get(0))) {
            for (Path file : files.sorted((a, b) -> b.compareTo(a)).toList()) {
                Files.delete(file);
            }
        }
    }

    @Torture(cases = 30, percent = 8)
    void aDamagedRequestIsAnsweredOrTurnedAway(@ForAll long seed) throws IOException {
        BenchRoom room = (BenchRoom) OPEN.get(0);
        Random random = new Random(seed);
        String[] asked = ASKED.get(random.nextInt(TortureHook.isShort() ? QUICK : ASKED.size()));
        boolean headToo = random.nextInt(4) == 0;
        String body = headToo && random.nextBoolean() ? asked[1] : Damage.to(asked[1], random);
        String head = room.head("POST", asked[0], body.getBytes(StandardCharsets.UTF_8).length);
        if (headToo) {
            head = Damage.to(head, random);
            // What asks for more than it sends is left after ten seconds (aSlowBodyIsEnded).
            head = head.replaceAll("(?i)Content-Length: *[0-9]{3,}", "Content-Length: 3");
            head = head.contains("\r\n\r\n") ? head : head + "\r\n\r\n";
        }
        String status = status(room, head + body);
        TortureHook.count(
                status.isEmpty() ? "hung up on" : status.startsWith("HTTP/1.1 2") ? "answered" : "turned away");
        assertThat(status).as(asked[0] + " " + body).doesNotStartWith("HTTP/1.1 5");
        assertThat(status(room, room.head("GET", "start", 0)))
                .as(asked[0] + " " + body)
                .startsWith("HTTP/1.1 200");
        try (Stream<Path> files = Files.list(PLACE.get(0))) {
            assertThat(files.map(file -> file.getFileName().toString())).isSubsetOf("saved");
        }
    }

    /** Empty where the server ends the connection without a word, as for what is no HTTP. */
    private static String status(BenchRoom room, String request) {
        try {
            return room.status(request);
        } catch (IOException ended) {
            return "";
        }
    }
}
