package dev.lapwright.cli.event;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Command {@code event}, which lists the commands of the notebook. */
@Command(
        name = "event",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Keeps the notebook of an event: car, circuit, day, and a text file a run.",
            "Inside its folder, or with --event FOLDER, commands need no CAR and CIRCUIT."
        },
        customSynopsis = {
            "lapwright event new FOLDER --car CAR --circuit CIRCUIT [OPTIONS]",
            "       lapwright event run [FOLDER] [-s NAME=VALUE]... [--laps TIMES] [OPTIONS]",
            "       lapwright event show [FOLDER] [OPTIONS]",
            "       lapwright event pack [FOLDER] --out FILE",
            "       lapwright event unpack FILE --to FOLDER"
        },
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright event new --help",
            "      How a notebook is begun, with an example.",
            "  lapwright event run --help",
            "      What of a run can be noted, and how it is written."
        })
public final class EventCommand implements Runnable {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    public HelpOption help;

    public EventCommand(Console console) {
        this.console = console;
    }

    @Override
    public void run() {
        console.text(spec.commandLine().getUsageMessage(spec.commandLine().getColorScheme()));
    }
}
