package dev.lapwright.cli.event;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.report.Report;
import dev.lapwright.results.event.EventReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code event show}: the runs of an event, and what they show of each change. */
@Command(
        name = "show",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Lists the runs of an event, and says of each change what was expected, what all laps so far",
            "show, and both together."
        },
        customSynopsis = "lapwright event show [FOLDER] [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright event show mine/day",
            "      Inside the folder 'lapwright event show' alone does. With --in-full pressures to set and the fitted car too;",
            "      the next card is that of 'lapwright brief --event mine/day', which counts all runs."
        })
public final class EventShowCommand extends StudyCommand<EventReport> {
    @Mixin
    private EventPlace place;

    @Option(
            names = "--in-full",
            description =
                    "Also what pressures to set next, by those read in all runs, and the car fitted to all laps that were"
                            + " logged with their speeds. That takes seconds.")
    private boolean inFull;

    public EventShowCommand(Console console) {
        super(
                console,
                new StudyFiles<>(EventReport::report)
                        .json("event.json")
                        .onlyAlone()
                        .out("A .json file for the result."));
    }

    @Override
    public EventReport study() {
        EventFolder folder = place.folder();
        return inFull ? EventPlace.inFull(folder, console) : EventReport.of(folder.read(), folder.texts());
    }

    @Override
    public Report report(EventReport found) {
        return found.report();
    }
}
