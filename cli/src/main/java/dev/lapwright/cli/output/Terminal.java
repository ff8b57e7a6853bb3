package dev.lapwright.cli.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Test of whether a stream leads to a terminal, and so to a person. */
public final class Terminal {
    private static final Path STREAMS = Path.of("/proc/self/fd");
    private static final int INPUT = 0;
    private static final int OUTPUT = 1;
    private static final int ERROR = 2;

    private Terminal() {}

    public static boolean isInput() {
        return is(INPUT);
    }

    public static boolean isOutput() {
        return is(OUTPUT);
    }

    public static boolean isError() {
        return is(ERROR);
    }

    /** Columns where nobody says how many there are. */
    private static final int UNKNOWN = 80;

    private static final int LEAST = 40;
    private static final int MOST = 1000;

    /** Columns of the terminal, as the launcher or the shell has them in COLUMNS; 80 if unknown. */
    public static int width() {
        String columns = System.getenv("COLUMNS");
        return columns != null && columns.matches("[1-9][0-9]{0,3}")
                ? Math.max(LEAST, Math.min(MOST, Integer.parseInt(columns)))
                : UNKNOWN;
    }

    /**
     * Whether the locale's characters are those of Unicode; not so in the locale C, of which the launcher tells, for it gives
     * Java another.
     */
    public static boolean isUnicode() {
        return !"ASCII".equals(System.getenv("LAPWRIGHT_CHARSET"))
                && System.getProperty("native.encoding", "")
                        .toUpperCase(Locale.ROOT)
                        .startsWith("UTF");
    }

    private static boolean is(int stream) {
        if (Files.isDirectory(STREAMS)) {
            try {
                String device = Files.readSymbolicLink(STREAMS.resolve(Integer.toString(stream)))
                        .toString();
                return device.startsWith("/dev/pts/") || device.startsWith("/dev/tty") || device.equals("/dev/console");
            } catch (IOException e) {
                return false;
            }
        }
        // Elsewhere Java only tells whether input and output are both a terminal; from version 22 on not even that.
        return System.console() != null && Runtime.version().feature() < 22;
    }
}
