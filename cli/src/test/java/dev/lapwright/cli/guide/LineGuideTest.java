package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The guide to lines shows what the command really prints. */
@Tag("heavy")
class LineGuideTest {
    private static final String PROMPT = "$ ./lapwright ";
    private static final String FENCE = "```";

    static Stream<Arguments> shown() throws IOException {
        List<String> lines = Files.readAllLines(Path.of("..", "docs", "line.md"));
        List<Arguments> blocks = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).startsWith(PROMPT)) {
                int end = i;
                while (!lines.get(end).equals(FENCE)) {
                    end++;
                }
                blocks.add(Arguments.of(
                        lines.get(i).substring(PROMPT.length()), String.join("\n", lines.subList(i + 1, end))));
            }
        }
        return blocks.stream();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("shown")
    void shownOutputIsTheRealOne(String command, String output) {
        Run run = Run.of(command.split(" "));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out().strip()).isEqualTo(output);
    }
}
