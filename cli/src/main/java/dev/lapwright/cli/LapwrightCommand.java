package dev.lapwright.cli;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.VersionText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** Top command {@code lapwright}, which lists the others. */
@Command(
        name = "lapwright",
        versionProvider = VersionText.class,
        sortOptions = false,
        customSynopsis = {"lapwright COMMAND [ARGUMENTS]", "       lapwright COMMAND --help"},
        descriptionHeading = "%n",
        description = {"Works out how fast a car can lap a circuit, and what each of its adjustments is worth there."},
        commandListHeading = "%nCommands:%n",
        optionListHeading = "%nOptions:%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright demo",
            "      Lists the cars and circuits that come with Lapwright, to be named like files.",
            "  lapwright lap gt-talvex harrowmere",
            "      Laps a demo circuit in a demo car.",
            "",
            "Exit codes: 0 done, 2 something to mend in the command or a document, 3 a fault of Lapwright."
        })
final class LapwrightCommand implements Runnable {
    private final Console console;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Shows this help.")
    boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Shows the version.")
    boolean version;

    @Option(
            names = "--debug",
            scope = ScopeType.INHERIT,
            description = "After an error also prints where in the program it arose.")
    boolean debug;

    LapwrightCommand(Console console) {
        this.console = console;
    }

    @Override
    public void run() {
        console.line("lapwright bench   turn a demo car's knobs in the browser and watch the lap");
        console.line("lapwright demo    the cars and circuits that come along, to be named like files");
        console.line("lapwright help    all commands; each has --help with examples");
    }
}
