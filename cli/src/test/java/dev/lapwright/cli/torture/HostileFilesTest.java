package dev.lapwright.cli.torture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.Documents;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.surveys.Surveys;
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
import java.util.regex.Pattern;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Tag;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.lifecycle.BeforeContainer;

/** However a file that comes along has been damaged, each command that takes it does its work or refuses in words, and says no number that is none. */
class HostileFilesTest {
    private static final String FILE = "FILE";
    private static final Pattern NO_NUMBER = Pattern.compile("\\bNaN\\b|Infinity|\u221E|1\\.79769");
    private static final Map<String, String> DOCUMENTS = new LinkedHashMap<>();
    private static final Map<String, String> SAMPLES = new LinkedHashMap<>();
    private static final List<Path> PLACE = new ArrayList<>();

    private static final List<String> KINDS =
            List.of("car", "car", "car", "circuit", "circuit", "conditions", "setup", "line", "plan", "event");

    /** What is asked of a file, by its kind. */
    private static final Map<String, List<String>> COMMANDS = Map.of(
            "car",
            List.of(
                    "check FILE",
                    "show FILE",
                    "lap FILE harrowmere --line middle",
                    "lap FILE harrowmere --line middle --json",
                    "weight FILE harrowmere --line middle",
                    "ride FILE",
                    "balance FILE harrowmere --line middle"),
            "circuit",
            List.of(
                    "check FILE",
                    "circuit show FILE",
                    "lap touring-merrow FILE --line middle",
                    "lap gt-talvex FILE",
                    "stint gt-talvex FILE --laps 3 --line middle"),
            "conditions",
            List.of("check FILE", "lap gt-talvex harrowmere --line middle --conditions FILE"),
            "setup",
            List.of("check FILE --car CAR", "lap CAR harrowmere --line middle --setup FILE"),
            "line",
            List.of("check FILE", "lap gt-talvex harrowmere --line FILE", "show FILE"),
            "plan",
            List.of("plan FILE --part 1/1000000"),
            "event",
            List.of("event show FOLDER", "lap --event FOLDER --line middle"));

    /** Commands that take seconds: a build does without them. */
    private static final Pattern SLOW = Pattern.compile("(ride|balance|stint|circuit) .*|lap gt-talvex FILE");

    private static final List<String> OF_SURVEYS = List.of(
            "check FILE",
            "circuit import FILE --name Damaged --out NEW",
            "circuit import FILE --name Damaged --open --out NEW");

    private static final Map<String, List<String>> OF_LOGS = Map.of(
            "castelvane-wings.csv",
            List.of("check FILE", "evidence FILE"),
            "pressures.csv",
            List.of("check FILE", "pressures gt-talvex harrowmere --line middle --no-doubt --log FILE"));

    private static final String PRESSURES = """
            tyre,cold (psi),hot (psi)
            FL,24,27
            FR,24,27.2
            RL,23,26
            RR,23,26.1
            """;

    private static final String PLAN = """
            {"lapwright": "plan/1", "name": "wings", "cars": ["gt-talvex"], "circuits": ["harrowmere"],
             "conditions": ["hot-afternoon", "mild-day"], "line": "middle", "design": "latin hypercube", "points": 3, "seed": 2,
             "vary": {"rear-wing": "2:8:2", "chassis.massKg": "1250,1300"}}
            """;

    @BeforeContainer
    static void gather() throws IOException {
        Path place = Files.createTempDirectory("torture");
        PLACE.add(place);
        for (Demos.Document demo : Documents.demos()) {
            DOCUMENTS.put(demo.kind().word() + " " + demo.name(), Documents.demoText(demo.kind(), demo.name()));
        }
        try (Stream<Path> examples = Files.list(Path.of("..", "docs", "examples"))) {
            for (Path file : examples.filter(file -> file.toString().endsWith(".json"))
                    .sorted()
                    .toList()) {
                String text = Files.readString(file);
                String kind = text.contains("\"car/1\"") ? "car " : "circuit ";
                DOCUMENTS.put(kind + file.getFileName(), text);
            }
        }
        double length = Documents.circuit("harrowmere").length();
        DOCUMENTS.put(
                "line by hand",
                "{\"lapwright\": \"line/1\", \"name\": \"By hand\", \"road\": \"Harrowmere\", \"roadLengthM\": "
                        + length
                        + ", \"distancesM\": [0, 500, 1000, 1500, 2000, 2500, " + length
                        + "], \"offsetsM\": [1, 1, 0, -1, 0, 1, 1]}");
        DOCUMENTS.put("plan wings", PLAN);
        Path day = place.resolve("day");
        String event = day.toString();
        for (String line : List.of(
                "event new EVENT --car gt-talvex --circuit harrowmere --name Day",
                "event run EVENT --no-expectation -s rear-wing=7 --laps 1:09.2,1:09.1,1:09.0 --driver loose")) {
            Run run = Run.wide(Lines.WIDTH, line.replace("EVENT", event).split(" "));
            assertThat(run.code()).as(run.err()).isZero();
        }
        try (Stream<Path> files = Files.walk(day)) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(file -> file.getFileName().toString().contains("."))
                    .filter(file -> !file.getFileName().toString().startsWith("."))
                    .sorted()
                    .toList()) {
                DOCUMENTS.put("event " + day.relativize(file), Files.readString(file));
            }
        }
        SAMPLES.put("pressures.csv", PRESSURES);
        Surveys.demos()
                .forEach(survey -> SAMPLES.put(
                        survey.fileName(), Surveys.find(survey.fileName()).text()));
        LapLogs.demos()
                .forEach(log ->
                        SAMPLES.put(log.fileName(), LapLogs.find(log.fileName()).text()));
    }

    @AfterContainer
    static void clear() throws IOException {
        for (Path place : PLACE) {
            try (Stream<Path> files = Files.walk(place)) {
                for (Path file : files.sorted((a, b) -> b.compareTo(a)).toList()) {
                    Files.delete(file);
                }
            }
        }
    }

    @Torture(cases = 40, percent = 15)
    void aDamagedDocumentIsUsedOrRefusedInWords(@ForAll long seed) throws IOException {
        Random random = new Random(seed);
        String kind = one(KINDS, random);
        String name = one(
                DOCUMENTS.keySet().stream()
                        .filter(document -> document.startsWith(kind + ' '))
                        .toList(),
                random);
        String command = command(COMMANDS.get(kind), random);
        String rest = name.substring(name.indexOf(' ') + 1);
        Path place = PLACE.get(0);
        Path file = kind.equals("event") ? place.resolve("day").resolve(rest) : place.resolve("damaged.json");
        String car = Stream.of("student-pipit", "touring-merrow", "gt-talvex")
                .filter(rest::startsWith)
                .findFirst()
                .orElse("gt-talvex");
        String whole = DOCUMENTS.get(name);
        Files.writeString(file, damaged(whole, random));
        ask(command, file, "CAR", car, "FOLDER", place.resolve("day").toString());
        Files.writeString(file, whole);
    }

    @Torture(cases = 3, percent = 12)
    void aDamagedSurveyOrLogIsUsedOrRefusedInWords(@ForAll long seed) throws IOException {
        Random random = new Random(seed);
        String name = one(List.copyOf(SAMPLES.keySet()), random);
        asked(name, command(OF_LOGS.getOrDefault(name, OF_SURVEYS), random), random);
    }

    /** With many laps or a long way between samples a fit takes half a minute. */
    @Torture(cases = 2, percent = 8)
    @Tag("long")
    void aDamagedLogIsFittedOrRefusedInWords(@ForAll long seed) throws IOException {
        Random random = new Random(seed);
        asked(
                one(List.of("castelvane-laps.csv", "castelvane-laps-bar.csv"), random),
                "fit gt-talvex castelvane FILE --line middle",
                random);
    }

    private static void asked(String name, String command, Random random) throws IOException {
        Path place = PLACE.get(0);
        Path file = place.resolve("damaged" + name.substring(name.lastIndexOf('.')));
        Files.writeString(file, damaged(SAMPLES.get(name), random));
        Path made = place.resolve("made.json");
        ask(command, file, "NEW", made.toString(), "\u0000", "");
        Files.deleteIfExists(made);
        Files.delete(file);
    }

    private static <T> T one(List<T> all, Random random) {
        return all.get(random.nextInt(all.size()));
    }

    private static String command(List<String> all, Random random) {
        return one(
                all.stream()
                        .filter(command ->
                                !TortureHook.isShort() || !SLOW.matcher(command).matches())
                        .toList(),
                random);
    }

    /** Once in twenty it is another program's file. */
    private static String damaged(String text, Random random) {
        return random.nextInt(20) == 0
                ? "x" + new String(new char[random.nextInt(100)]).replace('\0', (char) random.nextInt(0xD000))
                : Damage.to(text, random);
    }

    private static void ask(String command, Path file, String key, String value, String otherKey, String otherValue)
            throws IOException {
        String[] words = Stream.of(command.split(" "))
                .map(word -> word.equals(FILE)
                        ? file.toString()
                        : word.equals(key) ? value : word.equals(otherKey) ? otherValue : word)
                .toArray(String[]::new);
        Run run = Run.wide(Lines.WIDTH, words);
        TortureHook.count(run.code() == 0 ? "used" : "refused");
        String told = command + "\n" + run.err();
        assertThat(run.code()).as(told).isIn(0, 2);
        assertThat(run.err()).as(command).doesNotContain("Exception").doesNotContain("\tat ");
        if (run.code() == 2 && !command.startsWith("check")) {
            assertThat(run.out()).as(told).isEmpty();
            assertThat(run.errorLines()).as(command).anyMatch(line -> line.matches("lapwright: .+"));
        }
        String given = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        if (!NO_NUMBER.matcher(given).find()) {
            assertThat(run.out()).as(command).doesNotContainPattern(NO_NUMBER);
        }
    }
}
