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
}
