package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Run;
import dev.lapwright.cli.ShownCommands;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages for readers show what their commands really print, run one after the other as a reader would. */
class ReaderPagesTest {
    @TempDir
    private Path folder;

    @TestFactory
    @Tag("heavy")
    Stream<DynamicTest> engineer() throws IOException {
        return page("engineer.md");
    }

    @TestFactory
    Stream<DynamicTest> strategist() throws IOException {
        return page("strategist.md");
    }

    @TestFactory
    Stream<DynamicTest> student() throws IOException {
        return page("student.md");
    }

    @TestFactory
    @Tag("heavy")
    Stream<DynamicTest> firstHour() throws IOException {
        return page("first-hour.md");
    }

    @TestFactory
    @Tag("heavy")
    Stream<DynamicTest> ownCar() throws IOException {
        return page("own-car.md");
    }

    @TestFactory
    Stream<DynamicTest> carNew() throws IOException {
        return page("car-new.md");
    }

    @TestFactory
    Stream<DynamicTest> event() throws IOException {
        return page("event.md");
    }

    private Stream<DynamicTest> page(String page) throws IOException {
        List<ShownCommands.Shown> commands = ShownCommands.on(page);
        assertThat(commands).isNotEmpty();
        Path own = Files.createDirectory(folder.resolve(page));
        // The bench goes on until it is stopped: BenchCommandTest starts it.
        return commands.stream()
                .filter(ShownCommands.Shown::isRunnable)
                .map(shown -> DynamicTest.dynamicTest(shown.command(), () -> {
                    Run run = shown.run(own);
                    shown.verify(run, own);
                }));
    }

    /** A command in running text would not be run; pages show them with what they print. */
    @ParameterizedTest
    @ValueSource(strings = {"engineer.md", "strategist.md", "student.md", "own-car.md", "first-hour.md"})
    void noCommandStandsInRunningText(String page) throws IOException {
        assertThat(ShownCommands.lines(page))
                .noneMatch(line -> line.contains("`lapwright ") || line.contains("`./lapwright "));
    }
}
