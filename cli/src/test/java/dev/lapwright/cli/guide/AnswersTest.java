package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Each question of the README leads to a short page that answers it, and the page shows what its command really prints. */
class AnswersTest {
    private static final Path TOP = Path.of("..");
    /** A row of the README's table: the question and its page, then the command. */
    private static final Pattern ROW =
            Pattern.compile("\\| \\[[^]]+\\?]\\((docs/\\S+\\.md)\\) \\| `lapwright ([a-z]+)[ `].*");
    /** What a reader takes in at one sitting: some three minutes at 200 words a minute (common practice, no source). */
    private static final int MOST_WORDS = 600;

    @TempDir
    private Path folder;

    private record Question(Path page, String command) {}

    private static List<String> rows() throws IOException {
        return Files.readString(TOP.resolve("README.md"))
                .replaceFirst("(?s).*\n## What it answers\n", "")
                .replaceFirst("(?s)\n## .*", "")
                .lines()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| question "))
                .toList();
    }

    private static List<Question> questions() throws IOException {
        return rows().stream()
                .map(ROW::matcher)
                .filter(Matcher::matches)
                .map(row -> new Question(TOP.resolve(row.group(1)), row.group(2)))
                .toList();
    }

    private static List<Path> answers() throws IOException {
        return ShownCommands.pages().stream()
                .filter(page -> page.startsWith(ShownCommands.ANSWERS))
                .toList();
    }

    @Test
    void everyQuestionLeadsToAPage() throws IOException {
        assertThat(rows()).isNotEmpty().allMatch(row -> ROW.matcher(row).matches());
        assertThat(questions()).allMatch(question -> Files.isRegularFile(question.page()));
    }

    @Test
    void everyPageIsShort() throws IOException {
        for (Question question : questions()) {
            long words = Pattern.compile("\\S+")
                    .matcher(Files.readString(question.page()))
                    .results()
                    .count();
            assertThat(words).as("words of " + question.page()).isBetween(100L, (long) MOST_WORDS);
        }
    }

    @Test
    void everyPageNamesTheCommandOfItsQuestion() throws IOException {
        for (Question question : questions()) {
            assertThat(Files.readString(question.page()))
                    .as(question.page().toString())
                    .containsPattern("lapwright " + question.command() + "\\b");
        }
    }

    @Test
    void everyAnswerHasItsQuestion() throws IOException {
        assertThat(answers())
                .isNotEmpty()
                .isSubsetOf(questions().stream().map(Question::page).toList());
    }

    @TestFactory
    Stream<DynamicTest> shownOutputIsTheRealOne() throws IOException {
        return answers().stream()
                .flatMap(page -> commands(page)
                        // The bench goes on until it is stopped: BenchCommandTest starts it.
                        .filter(ShownCommands.Shown::isRunnable)
                        .map(shown -> DynamicTest.dynamicTest(page.getFileName() + ": " + shown.command(), () -> {
                            Path own = Files.createTempDirectory(folder, "page");
                            Run run = shown.run(own);
                            shown.verify(run, own);
                        })));
    }

    private static Stream<ShownCommands.Shown> commands(Path page) {
        try {
            return ShownCommands.in(page).stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
