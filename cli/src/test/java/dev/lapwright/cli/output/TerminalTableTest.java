package dev.lapwright.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** How a report's tables are set at the terminal. */
class TerminalTableTest {
    private record Row(String word, String number) {}

    private static List<String> printed(Table<Row> table, boolean styled, Row... rows) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Console console = new Console(out, new ByteArrayOutputStream(), styled, false);
        TerminalReport.print(console, new Report().rows(table, List.of(rows)));
        console.flush();
        return out.toString(StandardCharsets.UTF_8).lines().toList();
    }

    private static Table<Row> words(String title) {
        return Table.<Row>of("").words("", title, Row::word);
    }

    @Test
    void wordsAreSetLeftAndNumbersRightUnderTheirUnits() {
        assertThat(printed(
                        words("corner").text("speed", "km/h", Row::number),
                        false,
                        new Row("T1", "9.5"),
                        new Row("T10 Bend", "123.4")))
                .containsExactly(
                        "  corner    speed", //
                        "             km/h",
                        "  T1          9.5",
                        "  T10 Bend  123.4");
    }

    @Test
    void withoutUnitsThereIsOneHeaderLine() {
        assertThat(printed(words("a"), false, new Row("b", ""))).containsExactly("  a", "  b");
    }

    @Test
    void aLongPathIsBrokenAtItsPoints() {
        Table<Row> table =
                Table.<Row>of("").text("conditions.airTempC", "degC", Row::word).text("gain", "s", Row::number);
        assertThat(printed(table, false, new Row("30", "0")))
                .containsExactly(
                        "  conditions.", //
                        "     airTempC  gain",
                        "         degC     s",
                        "           30     0");
    }

    @Test
    void aMarkedRowStandsOutOnATerminalOnly() {
        Table<Row> table = words("a").marking(row -> true);
        assertThat(printed(table, true, new Row("b", "")).get(1))
                .startsWith("\u001B[1m")
                .endsWith("\u001B[0m");
        assertThat(printed(table, false, new Row("b", "")).get(1)).isEqualTo("  b");
    }

    @Test
    void wordsThatAreTooWideGoOnUnderThemselves() {
        Table<Row> table = words("a").words("", "moves", Row::number);
        List<String> lines =
                printed(table, false, new Row("b", "word ".repeat(30).strip()));
        assertThat(lines)
                .hasSize(3)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        assertThat(lines.get(2)).startsWith("     word");
    }
}
