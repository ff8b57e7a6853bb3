package dev.lapwright.cli.document;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Command {@code circuit}, which lists the commands about circuits. */
@Command(
        name = "circuit",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Makes a circuit of points (circuit import); shows or corrects it (show, edit)."},
        customSynopsis = {
            "lapwright circuit import FILE --out FILE [OPTIONS]",
            "       lapwright circuit show CIRCUIT [OPTIONS]",
            "       lapwright circuit edit CIRCUIT --out FILE [OPTIONS]"
        },
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright circuit import thornmere.geojson --out thornmere.json",
            "      Makes a circuit document of a demo survey; then: lapwright lap gt-talvex thornmere.json",
            "  lapwright circuit show castelvane --chart castelvane.svg",
            "      Lists the corners of a circuit and draws its map."
        })
public final class CircuitCommand implements Runnable {
    private final Console console;

    @Spec
    private CommandSpec spec;

    @Mixin
    public HelpOption help;

    public CircuitCommand(Console console) {
        this.console = console;
    }

    @Override
    public void run() {
        console.text(spec.commandLine().getUsageMessage(spec.commandLine().getColorScheme()));
    }
}
