package dev.lapwright.cli;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** One run of the command inside this process, and what came of it. */
record Run(int code, String out, String err) {

    /** Runs it as in a pipe: no terminal. */
    static Run of(String... arguments) {
        return of(false, false, arguments);
    }

    static Run of(boolean styled, boolean errIsTerminal, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Lapwright.run(new Console(out, err, styled, errIsTerminal), arguments);
        return new Run(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    List<String> lines() {
        return out.lines().toList();
    }

    List<String> errorLines() {
        return err.lines().toList();
    }

    /** The first line of the result that begins so, spaces aside. */
    String line(String beginning) {
        return out.lines()
                .filter(line -> line.strip().startsWith(beginning))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no line begins with '" + beginning + "' in:\n" + out));
    }
}
