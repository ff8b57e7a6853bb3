package dev.lapwright.cli.event;

import dev.lapwright.car.Setup;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.results.Subject;
import dev.lapwright.results.event.EventReport;
import dev.lapwright.results.event.EventRuns;
import dev.lapwright.study.StudyRun;
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

    /** The event, and what its runs show with the pressures to set next and the car fitted to laps with speeds. */
    static EventReport inFull(EventFolder folder, Console console) {
        Event event = folder.read();
        Setup now = new Setup("as noted", event.settingsNow());
        Subject stands = new Subject(event.car(), now, event.car().with(now), event.track(), event.day());
        try (ProgressBar bar = new ProgressBar(console, "laps")) {
            return EventReport.of(event, folder.texts())
                    .inFull(
                            EventRuns.of(event, folder, LineOptions.driveStandard(stands, console)),
                            StudyRun.onAllCores().reporting(bar));
        }
    }

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
