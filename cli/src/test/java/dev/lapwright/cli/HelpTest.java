package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class HelpTest {
    private static final String EXAMPLE = "  lapwright ";
    private static final String BRIEF = "brief";

    @TempDir
    private Path folder;

    private static List<String> commands() {
        List<String> names = new ArrayList<>();
        boolean listed = false;
        for (String line : Run.of("--help").lines()) {
            if (listed && line.isBlank()) {
                break;
            }
            if (listed) {
                names.add(line.strip().split("\\s+")[0]);
            }
            listed |= line.equals("Commands:");
        }
        return names;
    }

    private static List<String> examples(List<String> help) {
        List<String> examples = help.subList(help.indexOf("Examples:"), help.size());
        return examples.stream().filter(line -> line.startsWith(EXAMPLE)).toList();
    }

    static Stream<String> allExamples() {
        List<String> examples = new ArrayList<>(examples(Run.of("--help").lines()));
        for (String command : commands()) {
            if (!command.equals(BRIEF)) {
                examples.addAll(examples(Run.of(command, "--help").lines()));
            }
        }
        examples.addAll(examples(Run.of("circuit", "import", "--help").lines()));
        examples.addAll(examples(Run.of("circuit", "show", "--help").lines()));
        // The bench goes on until it is stopped: BenchCommandTest starts its examples.
        return examples.stream().filter(example -> !example.startsWith(EXAMPLE + "bench "));
    }

    static Stream<String> examplesOfBriefs() {
        return examples(Run.of(BRIEF, "--help").lines()).stream();
    }

    @Test
    void allCommandsAreListed() {
        assertThat(commands())
                .containsExactly(
                        "brief",
                        "bench",
                        "lap",
                        "sweep",
                        "plan",
                        "sensitivity",
                        "weight",
                        "optimise",
                        "compare",
                        "gearing",
                        "balance",
                        "line",
                        "ride",
                        "pressures",
                        "stint",
                        "evidence",
                        "fit",
                        "check",
                        "show",
                        "car",
                        "circuit",
                        "event",
                        "demo",
                        "completion",
                        "help");
    }

    @ParameterizedTest
    @MethodSource("commands")
    void everyHelpHasSynopsisAndTwoExamplesWithinAHundredColumns(String command) {
        Run run = Run.of(command, "--help");
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.lines().get(0)).startsWith("Usage: lapwright " + command);
        assertThat(examples(run.lines())).hasSize(2);
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "brief",
                "lap",
                "sweep",
                "sensitivity",
                "weight",
                "optimise",
                "compare",
                "gearing",
                "line",
                "ride",
                "pressures",
                "stint",
                "fit"
            })
    void optionsAreGrouped(String command) {
        assertThat(Run.of(command, "--help").lines()).contains("Conditions:", "Output:");
    }

    @ParameterizedTest
    @MethodSource("examplesOfBriefs")
    @Tag("heavy")
    void everyExampleOfABriefRuns(String example) throws IOException {
        everyExampleRuns(example);
    }

    @ParameterizedTest
    @MethodSource("allExamples")
    void everyExampleRuns(String example) throws IOException {
        Path plan = folder.resolve("wings.json");
        Files.writeString(plan, """
                {"lapwright": "plan/1", "name": "wings", "cars": ["gt-talvex"], "circuits": ["harrowmere"], "vary": {"rear-wing": "2:8:2"}}
                """);
        String asked = example.substring(EXAMPLE.length()).strip().replace("wings.json", plan.toString());
        Run run = Run.in(folder, Run.words(asked));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).isNotBlank();
    }

    @Test
    void theHelpCommandSaysTheSameAsTheOption() {
        assertThat(Run.of("help", "sweep").out())
                .isEqualTo(Run.of("sweep", "--help").out());
        assertThat(Run.of("help").out()).isEqualTo(Run.of("--help").out());
    }

    @Test
    void withoutAnArgumentThreeLinesSayWhereToBegin() {
        Run alone = Run.of();
        assertThat(alone.code()).isZero();
        assertThat(alone.lines()).hasSize(3);
        for (String line : alone.lines()) {
            String command = line.split("\\s+")[1];
            assertThat(Run.of(command, "--help").code()).as(command).isZero();
        }
    }

    @Test
    void helpIsStyledOnATerminalOnly() {
        assertThat(Run.of(true, false, "lap", "--help").out()).contains("\u001B[");
        assertThat(Run.of(false, false, "lap", "--help").out()).doesNotContain("\u001B");
    }

    @Test
    void theVersionNamesProgramAndJava() {
        Run run = Run.of("--version");
        assertThat(run.code()).isZero();
        assertThat(run.lines().get(0)).startsWith("lapwright ");
        assertThat(run.lines().get(1)).startsWith("Java " + System.getProperty("java.version"));
    }
}
