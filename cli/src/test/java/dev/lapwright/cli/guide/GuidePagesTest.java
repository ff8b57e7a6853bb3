package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The pages of the guide show what their commands really print. */
class GuidePagesTest {
    private static final String BEGINNING = "```console";
    private static final String PROMPT = "$ ./lapwright ";

    @TempDir
    private Path folder;

    static Stream<Arguments> shownCommands() throws IOException {
        return shownCommands(
                "doubt.md",
                "sensitivity.md",
                "weight.md",
                "gearing.md",
                "compare.md",
                "second-opinion.md",
                "ride.md",
                "pressures.md",
                "stint.md",
                "evidence.md");
    }

    static Stream<Arguments> heavyCommands() throws IOException {
        return shownCommands("brief.md", "optimise.md", "fit.md");
    }

    private static Stream<Arguments> shownCommands(String... pages) throws IOException {
        List<Arguments> shown = new ArrayList<>();
        for (String page : pages) {
            List<String> lines = Files.readAllLines(Path.of("..", "docs", page));
            for (int i = 0; i + 1 < lines.size(); i++) {
                if (lines.get(i).equals(BEGINNING) && lines.get(i + 1).startsWith(PROMPT)) {
                    int end = i + 2;
                    while (!lines.get(end).equals("```")) {
                        end++;
                    }
                    String command = lines.get(i + 1).substring(PROMPT.length());
                    shown.add(Arguments.of(page, command, String.join("\n", lines.subList(i + 2, end))));
                }
            }
        }
        return shown.stream();
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("heavyCommands")
    @Tag("heavy")
    void outputOfWholeEventsSearchesAndFitsIsTheRealOne(String page, String command, String output) {
        shownOutputIsTheRealOne(page, command, output);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("shownCommands")
    void shownOutputIsTheRealOne(String page, String command, String output) {
        // Files go into a folder of the test, and are told as if they had not.
        String[] arguments =
                command.replace(" --out ", " --out " + folder + "/").split(" ");
        Run run = Run.of(arguments);
        assertThat(run.code()).as(run.err()).isZero();
        String said = run.out().strip().replace(folder + "/", "");
        // A line of "…" stands for output left out.
        List<String> parts = Arrays.stream(output.split("(?m)^…$"))
                .map(String::strip)
                .filter(part -> !part.isEmpty())
                .toList();
        if (output.lines().noneMatch("…"::equals)) {
            assertThat(said).as(page).isEqualTo(output);
        } else {
            assertThat(said).as(page).containsSubsequence(parts);
        }
    }
}
