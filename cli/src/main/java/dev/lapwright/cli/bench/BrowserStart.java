package dev.lapwright.cli.bench;

import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** Start of the machine's own browser, by the program that each system has for it. */
final class BrowserStart {
    private BrowserStart() {}

    /** Tries to open an address; whether a program took it. */
    static boolean open(String address) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        List<String> command = system.contains("win")
                ? List.of("rundll32", "url.dll,FileProtocolHandler", address)
                : system.contains("mac") ? List.of("open", address) : List.of("xdg-open", address);
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return true;
        } catch (IOException none) {
            return false;
        }
    }
}
