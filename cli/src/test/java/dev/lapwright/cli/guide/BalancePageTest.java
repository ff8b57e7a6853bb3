package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The page on balance shows what the command really prints. */
class BalancePageTest {
    private static final String PROMPT = "$ ./lapwright ";
    private static final String FENCE = "```";

    private record Shown(String command, String output) {
        @Override
        public String toString() {
            return command;
        }
    }

    static Stream<Shown> shown() throws IOException {
        List<String> lines = Files.readAllLines(Path.of("..", "docs", "balance.md"));
        List<Shown> shown = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).startsWith(PROMPT)) {
                int end = i;
                while (!lines.get(end).equals(FENCE)) {
                    end++;
                }
                shown.add(new Shown(
                        lines.get(i).substring(PROMPT.length()), String.join("\n", lines.subList(i + 1, end))));
            }
        }
        assertThat(shown).isNotEmpty();
        return shown.stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("shown")
    void shownOutputIsTheRealOne(Shown shown) {
        Run run = Run.of(Run.words(shown.command()));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out().strip()).isEqualTo(shown.output().strip());
    }
}
