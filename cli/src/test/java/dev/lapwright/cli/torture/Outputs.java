package dev.lapwright.cli.torture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Child;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/**
 * Commands that write files, and what each writes when nothing comes between: to hold against what is left of one that was ended.
 *
 * @param words of the command; OUT stands for a folder or table in the place of a test
 * @param growing whether what it writes grows line by line, and is gone on with by the same command and these words
 */
record Outputs(String words, String growing) {
    private static final Map<String, Map<String, String>> WHOLE = new TreeMap<>();
    private static final String OUT = "OUT";

    static final Outputs LAP = new Outputs("lap gt-talvex harrowmere --line middle --out OUT", "");
    static final Outputs PLAN = new Outputs("plan PLAN --threads 2 --out OUT.csv", "--resume");
    static final List<Outputs> ALL = List.of(
            LAP,
            PLAN,
            new Outputs(
                    "sweep gt-talvex harrowmere --line middle --vary rear-wing=2:8:0.1 --resume OUT.journal --out OUT --force",
                    " "),
            new Outputs(
                    "optimise touring-merrow harrowmere --line middle --over rear-wing --draws 20 --no-second-opinion --resume OUT.journal --out OUT --force",
                    " "),
            new Outputs(
                    "stint gt-talvex harrowmere --line middle --laps 5 --draws 60 --resume OUT.journal --out OUT --force",
                    " "),
            new Outputs(
                    "brief touring-merrow harrowmere --line middle --draws 20 --resume OUT.journal --out OUT --force",
                    " "));

    private static final String WINGS = """
            {"lapwright": "plan/1", "name": "wings", "cars": ["gt-talvex"], "circuits": ["harrowmere"], "line": "middle",
             "vary": {"rear-wing": "2:8:0.1", "chassis.massKg": "1250,1300"}}
            """;

    /** Its words in a place of a test. */
    String[] in(Path place) throws IOException {
        Path plan = place.resolve("plan.json");
        if (!Files.exists(plan)) {
            Files.writeString(plan, WINGS);
        }
        return words(place);
    }

    /** The same where the plan is there already. */
    String[] words(Path place) {
        Path plan = place.resolve("plan.json");
        return words.replace("PLAN", plan.toString())
                .replace(OUT, place.resolve("out").toString())
                .split(" ");
    }

    /** What stands in a place, by name, but the plan and what a process printed. */
    static Map<String, String> found(Path place) throws IOException {
        Map<String, String> found = new TreeMap<>();
        try (Stream<Path> files = Files.walk(place)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String name = place.relativize(file).toString();
                if (!List.of("plan.json", "out.txt", "err.txt").contains(name)) {
                    found.put(name, Files.readString(file));
                }
            }
        }
        return found;
    }

    /** All that it writes when nothing comes between, by name. */
    Map<String, String> whole() throws IOException {
        synchronized (WHOLE) {
            if (!WHOLE.containsKey(words)) {
                Path place = Files.createTempDirectory("torture");
                run(place, "");
                WHOLE.put(words, found(place));
                delete(place);
            }
            return WHOLE.get(words);
        }
    }

    /** In a process of its own: tables and journals name the program that drives. */
    private void run(Path place, String more) throws IOException {
        List<String> all = new ArrayList<>(List.of(in(place)));
        if (!more.isBlank()) {
            all.add(more);
        }
        Path printed = Files.createTempDirectory("torture");
        List<String> words = Child.words(List.of(), all.toArray(String[]::new));
        Child child = Child.start(Child.builder(words, printed.resolve("cache")), printed);
        assertThat(child.end()).as(child.err()).isZero();
        delete(printed);
    }

    /** What is left of one that was ended is all or nothing; what grows is gone on with, to the same bytes. */
    void assertWhole(Path place, String how) throws IOException {
        Map<String, String> found = found(place);
        Map<String, String> whole = new TreeMap<>(whole());
        assertThat(found.keySet()).as(how).isSubsetOf(whole.keySet());
        found.keySet().removeIf(name -> name.endsWith(".journal") || name.equals("out.csv"));
        found.forEach((name, text) -> assertThat(text).as(how + ": " + name).isEqualTo(whole.get(name)));
        if (!found.isEmpty() && !isEachByItself()) {
            whole.keySet().removeIf(name -> name.endsWith(".journal") || name.equals("out.csv"));
            assertThat(found.keySet()).as(how).isEqualTo(whole.keySet());
        }
        if (!growing.isEmpty()) {
            run(place, growing);
            Map<String, String> all = whole();
            found(place).forEach((name, text) -> {
                if (!name.endsWith(".journal")) {
                    assertThat(text).as(how + ", gone on with: " + name).isEqualTo(all.get(name));
                }
            });
        }
    }

    /** Of a brief no file waits for another: the page is minutes of work. */
    private boolean isEachByItself() {
        return words.startsWith("brief");
    }

    static void delete(Path place) throws IOException {
        try (Stream<Path> files = Files.walk(place)) {
            for (Path file : files.sorted((a, b) -> b.compareTo(a)).toList()) {
                Files.delete(file);
            }
        }
    }
}
