package dev.lapwright.cli;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.VersionText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.UnitSystem;
import java.util.ArrayList;
import java.util.List;
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
            "Exit codes: 0 done, 2 something to mend (command, document, disk, memory), 3 a fault",
            "of Lapwright, 130 and 143 ended by Ctrl-C or the system."
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

    /** Words of the option, for completion and help. */
    static final class Systems extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        Systems() {
            super(List.of("si", "imperial"));
        }
    }

    /** Takes the units in which the result is printed. */
    @Option(
            names = "--units",
            scope = ScopeType.INHERIT,
            paramLabel = "UNITS",
            completionCandidates = Systems.class,
            description =
                    "Units of what people read: si, or imperial for mph, ft, in, lb, psi and degF. JSON, CSV and drawings"
                            + " stay in SI, and so does what is typed without a unit.")
    void units(String word) {
        UnitSystem system = UnitSystem.of(word);
        if (system == null) {
            throw new InvalidValueException(
                    "--units " + word, "there is no such system of units here", "take si or imperial");
        }
        console.inUnits(system);
    }

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
