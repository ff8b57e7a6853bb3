package dev.lapwright.cli;

import dev.lapwright.cli.output.Console;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One run of the command inside this process, and what came of it. A command line that reads and writes no file of a test
 * runs once, however many tests ask for it.
 */
record Run(int code, String out, String err) {
    /** Options that name what a run writes. */
    static final Set<String> OUTPUTS = Set.of(
            "--out", "--to", "--chart", "--trace", "--trade-off", "--traction-chart", "--profile", "--pass");

    private static final String FOLDER_OF_TESTS = System.getProperty("java.io.tmpdir");
    private static final Map<List<Object>, OnlyOnce> RUNS = new ConcurrentHashMap<>();

    /** Runs it as in a pipe: no terminal. */
    static Run of(String... arguments) {
        return of(false, false, arguments);
    }

    static Run of(boolean styled, boolean errIsTerminal, String... arguments) {
        if (!isPure(arguments)) {
            return anew(styled, errIsTerminal, arguments);
        }
        return RUNS.computeIfAbsent(List.of(styled, errIsTerminal, List.of(arguments)), key -> new OnlyOnce())
                .run(styled, errIsTerminal, arguments);
    }

    /** Whether the same words give the same result: files of a test lie in a folder of its own, with an absolute path. */
    private static boolean isPure(String... arguments) {
        return Arrays.stream(arguments)
                .noneMatch(word -> OUTPUTS.contains(word.split("=", 2)[0]) || word.contains(FOLDER_OF_TESTS));
    }

    private static Run anew(boolean styled, boolean errIsTerminal, String... arguments) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int code = Lapwright.run(new Console(out, err, styled, errIsTerminal), arguments);
        return new Run(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** A command line's only run; a second test that asks meanwhile waits for it. */
    private static final class OnlyOnce {
        private Run run;

        private synchronized Run run(boolean styled, boolean errIsTerminal, String... arguments) {
            if (run == null) {
                run = anew(styled, errIsTerminal, arguments);
            }
            return run;
        }
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
