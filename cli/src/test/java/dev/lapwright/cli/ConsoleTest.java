package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class ConsoleTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    private static final class Refusing extends OutputStream {
        private final String reason;

        Refusing(String reason) {
            this.reason = reason;
        }

        @Override
        public void write(int b) throws IOException {
            throw new IOException(reason);
        }
    }

    @Test
    void textGoesOutAsUtf8WithPlainLineFeeds() {
        Console console = new Console(out, err, false, false);
        console.line("1.2 m²");
        console.flush();
        assertThat(out.toByteArray()).isEqualTo("1.2 m²\n".getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void withoutATerminalNothingIsStyled() {
        Console console = new Console(out, err, false, false);
        assertThat(console.bold("x")).isEqualTo("x");
        assertThat(console.faint("x")).isEqualTo("x");
    }

    @Test
    void remarksStayOutOfTheResult() {
        Console console = new Console(out, err, false, false);
        console.remark("by the way");
        console.flush();
        assertThat(out.size()).isZero();
        assertThat(err.toString(StandardCharsets.UTF_8)).isEqualTo("by the way\n");
    }

    @Test
    void aReaderWhoStopsReadingIsNoFault() {
        int code = Lapwright.run(new Console(new Refusing("Broken pipe"), err, false, false), "demo");
        assertThat(code).isZero();
        assertThat(err.size()).isZero();
    }

    @Test
    void aFullDiskBehindTheOutputIsReported() {
        int code = Lapwright.run(new Console(new Refusing("No space left on device"), err, false, false), "demo");
        assertThat(code).isEqualTo(ExitCode.BAD_INPUT);
        assertThat(err.toString(StandardCharsets.UTF_8).lines())
                .singleElement()
                .asString()
                .startsWith("lapwright: standard output: ")
                .contains("No space left on device");
    }

    private static final String HOSTILE = "a\u001B[2Jb\u001B]0;title\u0007c\u009B31md\u202Ee\re\u001B[Kf";
    private static final String HARMLESS = "a?[2Jb?]0;title?c?31md?e?e?[Kf";

    @Test
    void noTextMovesTheCursorOrTurnsTheWriting() {
        Console console = new Console(out, err, true, true);
        console.line(HOSTILE);
        console.text(HOSTILE + "\n");
        console.remark(HOSTILE);
        console.progress(HOSTILE);
        console.flush();
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo(HARMLESS + "\n" + HARMLESS + "\n");
        assertThat(err.toString(StandardCharsets.UTF_8)).isEqualTo(HARMLESS + "\n" + HARMLESS);
    }

    @Test
    void whatWeTellATerminalOurselvesStays() {
        Console console = new Console(out, err, true, true);
        console.line(console.bold("x") + "\u0001" + console.faint("y"));
        console.progress("\r\u001B[Kstep 1");
        console.flush();
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("\u001B[1mx\u001B[0m?\u001B[2my\u001B[0m\n");
        assertThat(err.toString(StandardCharsets.UTF_8)).isEqualTo("\r\u001B[Kstep 1");
    }

    @Test
    void whatAProgramReadsIsNotChanged() {
        Console console = new Console(out, err, false, false);
        console.text("{\"a\": \"\u202E\"}\n");
        console.flush();
        assertThat(out.toString(StandardCharsets.UTF_8)).isEqualTo("{\"a\": \"\u202E\"}\n");
    }
}
