package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** Results on terminals of 80 columns, which is what a terminal is taken for that does not say. */
class TerminalWidthTest {
    private static final int WIDTH = 80;

    private static List<String> printed(Report report, int width) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Console console = new Console(out, new ByteArrayOutputStream(), false, false, width);
        TerminalReport.print(console, report);
        console.flush();
        return out.toString(StandardCharsets.UTF_8).lines().toList();
    }

    @ParameterizedTest
    @Tag("heavy")
    @ValueSource(
            strings = {
                "lap gt-talvex castelvane --against rear-wing=3",
                "compare gt-talvex castelvane --against rear-wing=3",
                "sweep gt-talvex castelvane --vary rear-wing=2:10:4 --vary rake=10:34:12",
                "sensitivity gt-talvex harrowmere",
                "gearing gt-talvex castelvane --tow-percent 20 --head-wind-kmh 30",
                "balance gt-talvex castelvane",
                "balance gt-talvex castelvane --complaint understeer:entry",
                "line student-pipit harrowmere",
                "stint gt-talvex harrowmere --laps 3 --compound soft:1.01:0.2 --compound hard:1:0.05",
                "pressures gt-talvex harrowmere --pair all:17psi:24psi",
                "evidence castelvane-wings.csv --predicted-s -0.28",
                "weight gt-talvex harrowmere",
                "ride gt-talvex harrowmere --corner T3",
                "show gt-talvex",
                "show gt-talvex --quantities",
                "show castelvane",
                "demo"
            })
    void noLineIsWiderThanTheTerminal(String command) {
        // A terminal as is usual, half a screen, and a phone.
        Optional<Report> studied = studied(command.split(" "));
        for (int width : new int[] {WIDTH, 60, 40}) {
            List<String> lines = studied.map(report -> printed(report, width))
                    .orElseGet(() -> Run.wide(width, command.split(" ")).lines());
            assertThat(lines).isNotEmpty();
            // A name that is longer than the terminal stands alone: broken, it could not be copied.
            assertThat(lines.stream().filter(line -> line.strip().indexOf(' ') >= 0))
                    .allSatisfy(line -> assertThat(line.codePointCount(0, line.length()))
                            .as("%d: %s", width, line)
                            .isLessThanOrEqualTo(width));
        }
    }

    /** What a study tells, found once for all widths; empty for a command that is none. */
    private static Optional<Report> studied(String... arguments) {
        Console bare = new Console(new ByteArrayOutputStream(), new ByteArrayOutputStream(), false, false, WIDTH);
        Console console = Run.keepingLines(bare);
        CommandLine line = Lapwright.commandLine(new LapwrightCommand(console), console, arguments);
        Object command = line.parseArgs(arguments).subcommand().commandSpec().userObject();
        return command instanceof StudyCommand<?> study ? Optional.of(told(study)) : Optional.empty();
    }

    private static <R> Report told(StudyCommand<R> study) {
        study.check();
        return study.report(study.study());
    }

    @Test
    void whereNoTableFindsRoomEachRowIsToldWithAllItsCells() {
        Table<Double> table = Table.<Double>of("t")
                .words("", "part", value -> "T1")
                .number("", "lap time", "m:ss.mmm", Numbers::lapTime, value -> 60 * value)
                .number("", "slowest", "km/h", Numbers.fixed(1), value -> value)
                .with(Table.Trait.LESSER)
                .number("", "delta", "s", Numbers.signed(3), value -> value);
        assertThat(printed(new Report().rows(table, List.of(1.0)), 20))
                .containsExactly(
                        "  T1, lap time", "    1:00.000,", "    slowest 1.0", "    km/h, delta", "    +1.000 s");
    }

    @Test
    void whatIsLeftOutForWantOfRoomIsNamed() {
        Table<Double> table = Table.<Double>of("t")
                .words("", "part", value -> "T1")
                .number("", "first", "s", Numbers.fixed(3), value -> value)
                .with(Table.Trait.LESSER)
                .number("", "second", "s", Numbers.fixed(3), value -> value);
        Report report = new Report().rows(table, List.of(1.0));
        assertThat(printed(report, 22))
                .containsExactly("  part  first  second", "            s       s", "  T1    1.000   1.000");
        assertThat(printed(report, 20)).startsWith("  part  second", "             s", "  T1     1.000");
        assertThat(String.join(" ", printed(report, 20)).replaceAll(" +", " ")).contains("without first");
    }

    /** Two columns for each: Unicode Standard Annex 11. */
    @Test
    void charactersOfEastAsiaTakeTwoColumns() {
        Table<String> table =
                Table.<String>of("t").words("", "corner", name -> name).text("at", "m", name -> "7");
        assertThat(printed(new Report().rows(table, List.of("東京", "Spina", "e\u0301")), WIDTH))
                .containsExactly(
                        "  corner  at", //
                        "           m",
                        "  東京     7",
                        "  Spina    7",
                        "  e\u0301        7");
    }

    @Test
    void aNameThatIsTooLongStandsOnALineOfItsOwn() {
        Table<String> table =
                Table.<String>of("t").words("", "corner", name -> name).text("at", "m", name -> "7");
        assertThat(printed(new Report().rows(table, List.of("Spina Lunga")), 14))
                .contains("  Spina Lunga", "             7");
    }
}
