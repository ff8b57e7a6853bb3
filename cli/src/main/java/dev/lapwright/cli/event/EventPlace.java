package dev.lapwright.cli.event;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.EventFolder;
import java.nio.file.Path;
import picocli.CommandLine.Parameters;

/** Argument FOLDER of the commands of an event: the one that this folder lies in if left out. */
final class EventPlace {
    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "FOLDER",
            description = "The event's folder; the one that this folder lies in if left out.")
    private String folder;

    /** The folder. */
    EventFolder folder() {
        if (folder != null) {
            return EventFolder.of(SafeFile.path(folder));
        }
        return EventFolder.about(Path.of(""))
                .orElseThrow(() -> new InvalidValueException(
                        "event",
                        "this folder lies in no event",
                        "name the event's folder, or make one with 'lapwright event new FOLDER --car CAR --circuit"
                                + " CIRCUIT'"));
    }
}
