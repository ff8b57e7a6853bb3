package dev.lapwright.cli.bench;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;

/** Start of the machine's own browser, by the program that each system has for it. */
final class BrowserStart {
    /** A program that finds no browser says so by then; one that has become the browser goes on. */
    private static final int PATIENCE_S = 2;

    private BrowserStart() {}

    /** Tries to open an address; whether a program took it. */
    static boolean open(String address) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        return isTaken(
                system.contains("win")
                        ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                        : system.contains("mac") ? List.of("open", address) : List.of("xdg-open", address));
    }

    /** Whether there is such a program, and it does not fail at once. */
    static boolean isTaken(List<String> command) {
        try {
            Process started = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return !started.waitFor(PATIENCE_S, TimeUnit.SECONDS) || started.exitValue() == 0;
        } catch (IOException none) {
            return false;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return true;
        }
    }
}
