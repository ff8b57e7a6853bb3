package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.TextTable;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class TextTableTest {
    private static List<String> printed(TextTable table, boolean styled) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Console console = new Console(out, new ByteArrayOutputStream(), styled, false);
        table.printTo(console);
        console.flush();
        return out.toString(StandardCharsets.UTF_8).lines().toList();
    }

    @Test
    void wordsAreSetLeftAndNumbersRightUnderTheirUnits() {
        TextTable table = new TextTable().words("corner").numbers("speed", "km/h");
        table.row("T1", "9.5").row("T10 Bend", "123.4");
        assertThat(printed(table, false))
                .containsExactly(
                        "  corner    speed", //
                        "             km/h",
                        "  T1          9.5",
                        "  T10 Bend  123.4");
    }

    @Test
    void withoutUnitsThereIsOneHeaderLine() {
        assertThat(printed(new TextTable().words("a").row("b"), false)).containsExactly("  a", "  b");
    }

    @Test
    void aLongPathIsBrokenAtItsPoints() {
        TextTable table = new TextTable().numbers("conditions.airTempC", "degC").numbers("gain", "s");
        table.row("30", "0");
        assertThat(printed(table, false))
                .containsExactly(
                        "  conditions.", //
                        "     airTempC  gain",
                        "         degC     s",
                        "           30     0");
    }

    @Test
    void aMarkedRowStandsOutOnATerminalOnly() {
        TextTable table = new TextTable().words("a").row(List.of("b"), true);
        assertThat(printed(table, true).get(1)).startsWith("\u001B[1m").endsWith("\u001B[0m");
        assertThat(printed(table, false).get(1)).isEqualTo("  b");
    }

    @Test
    void aRowMustFillAllColumns() {
        TextTable table = new TextTable().words("a").words("b");
        assertThatThrownBy(() -> table.row("one")).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void wordsThatAreTooWideGoOnUnderThemselves() {
        TextTable table = new TextTable().words("a").words("moves");
        table.row("b", "word ".repeat(30).strip());
        List<String> lines = printed(table, false);
        assertThat(lines)
                .hasSize(3)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        assertThat(lines.get(2)).startsWith("     word");
    }
}
