package dev.lapwright.logs;

import dev.lapwright.documents.Demos;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Entrance to lap logs: comma-separated values under headings in any order. One column holds lap times ({@code 1:44.851} or
 * seconds); others may hold lap numbers, setups, runs and flags.
 */
public final class LapLogs {
    private static final String TIME = "(?:\\d+[:'])?\\d+(?:[.,]\\d+)?";
    private static final Pattern TIMES = Pattern.compile(TIME + "(?:(?:\\s*;\\s*|,?\\s+)" + TIME + ")*");

    private LapLogs() {}

    /**
     * Lap times typed in place of a log's name: {@code 1:36.2 1:35.9 1:36.4}, all in one setup, each a flying lap.
     *
     * @return their log; empty for what is no list of times, or is the name of a file
     */
    public static Optional<DocumentSource> typed(String text) {
        String times = text.strip();
        if (!TIMES.matcher(times).matches() || Files.exists(SafeFile.path(times))) {
            return Optional.empty();
        }
        String lines = String.join("\n", times.split("\\s*;\\s*|,?\\s+")).replace(',', '.');
        return Optional.of(new DocumentSource("lap times typed", "time\n" + lines + "\n"));
    }

    /** The demo logs on the class path; empty if the module that holds them is not there. */
    public static List<Demos.Log> demos() {
        return Demos.load().logs();
    }

    /**
     * The text of a log, unchecked: an existing file, or else the demo log of that name.
     *
     * @throws DocumentException if there is neither
     */
    public static DocumentSource find(String nameOrFile) {
        Path file = SafeFile.path(nameOrFile);
        if (!Files.exists(file)) {
            for (Demos.Log demo : demos()) {
                if (demo.fileName().equals(nameOrFile)) {
                    return new DocumentSource(nameOrFile, demo.text());
                }
            }
        }
        return DocumentSource.ofFile(file);
    }

    /**
     * The laps in a text.
     *
     * @throws DocumentException with all that is wrong with it
     */
    public static LapLogFile read(DocumentSource source) {
        return new LapLogReader(source).file();
    }
}
