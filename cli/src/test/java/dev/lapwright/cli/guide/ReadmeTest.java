package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The README shows what the command really prints, and every command it names runs. */
class ReadmeTest {
    private static final String PROMPT = "$ ./lapwright ";
    private static final Pattern NAMED = Pattern.compile("`lapwright ([a-z][^`…]*)`");

    @TempDir
    private Path folder;

    private static List<String> readme() throws IOException {
        return Files.readAllLines(Path.of("..", "README.md"));
    }

    @Test
    void shownOutputIsTheRealOne() throws IOException {
        List<String> lines = readme();
        int command = 0;
        while (!lines.get(command).startsWith(PROMPT) || lines.get(command).startsWith(PROMPT + ShownCommands.BENCH)) {
            command++;
        }
        int end = command;
        while (!lines.get(end).equals("```")) {
            end++;
        }
        String shown = String.join("\n", lines.subList(command + 1, end));
        Run run = run(lines.get(command).substring(PROMPT.length()));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out().strip().replace(folder + "/", "")).isEqualTo(shown);
    }

    static Stream<String> namedCommands() throws IOException {
        return readme().stream()
                .flatMap(line -> NAMED.matcher(line).results().map(match -> match.group(1)))
                .filter(command -> !command.startsWith(ShownCommands.BENCH));
    }

    @ParameterizedTest
    @MethodSource("namedCommands")
    void everyNamedCommandRuns(String command) {
        Run run = run(command);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).isNotBlank();
    }

    /** Runs a command line, its outputs moved into a folder of the test. */
    private Run run(String commandLine) {
        List<String> arguments = new ArrayList<>(List.of(Run.words(commandLine.strip())));
        for (int i = 1; i < arguments.size(); i++) {
            Matcher output = Pattern.compile("--out|--to").matcher(arguments.get(i - 1));
            if (output.matches()) {
                arguments.set(i, folder.resolve(arguments.get(i)).toString());
            }
        }
        return Run.of(arguments.toArray(String[]::new));
    }
}
