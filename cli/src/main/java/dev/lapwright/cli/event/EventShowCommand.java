package dev.lapwright.cli.event;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.report.Report;
import dev.lapwright.results.event.EventReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
        footer = {"  lapwright event show mine/day", "      Inside the folder 'lapwright event show' alone does."})
public final class EventShowCommand extends StudyCommand<EventReport> {
    @Mixin
    private EventPlace place;

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
        return EventReport.of(folder.read(), folder.texts());
    }

    @Override
    public Report report(EventReport found) {
        return found.report();
    }
}
