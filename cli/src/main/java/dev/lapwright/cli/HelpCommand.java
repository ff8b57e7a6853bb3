package dev.lapwright.cli;

import dev.lapwright.car.Nearest;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.fault.InvalidValueException;
import java.util.concurrent.Callable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Command {@code help}: help on the command as a whole or on one of its commands. */
@Command(
        name = "help",
        helpCommand = true,
        descriptionHeading = "%n",
        description = {"Shows the help of a command, or of all."},
        customSynopsis = "lapwright help [COMMAND]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright help",
            "      Lists the commands.",
            "  lapwright help sweep",
            "      Says how to sweep; the same as 'lapwright sweep --help'."
        })
final class HelpCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Parameters(arity = "0..1", paramLabel = "COMMAND", description = "The command to explain.")
    private String command;

    @Mixin
    HelpOption help;

    HelpCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        CommandLine all = spec.parent().commandLine();
        CommandLine wanted = command == null ? all : all.getSubcommands().get(command);
        if (wanted == null) {
            throw new InvalidValueException(
                    command,
                    "there is no such command",
                    Nearest.remedy(command, all.getSubcommands().keySet()));
        }
        console.text(wanted.getUsageMessage(all.getColorScheme()));
        return ExitCode.DONE;
    }
}
