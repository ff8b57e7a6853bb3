package dev.lapwright.cli.document;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Command {@code car}, which lists the commands about cars. */
@Command(
        name = "car",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Drafts a whole car from the answers to ten questions (car new)."},
        customSynopsis = {"lapwright car new NAME --out FILE [OPTIONS]"},
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright car new --help",
            "      Tells the ten questions, how to answer them, and a whole example.",
            "  lapwright show gt-talvex --quantities",
            "      All the numbers of a car, which ten answers stand for."
        })
public final class CarCommand implements Runnable {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    public HelpOption help;

    public CarCommand(Console console) {
        this.console = console;
    }

    @Override
    public void run() {
        console.text(spec.commandLine().getUsageMessage(spec.commandLine().getColorScheme()));
    }
}
