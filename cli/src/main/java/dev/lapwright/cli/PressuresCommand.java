package dev.lapwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** From cold and hot tyre pressures to the next cold setting. */
@Command(
        name = "pressures",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says which cold tyre pressures to set next, and what a miss costs on a lap."},
        customSynopsis = {
            "lapwright pressures CAR CIRCUIT (--pair TYRE:COLD:HOT... | --log FILE)",
            "                    [--target TYRE:HOT]... [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright pressures gt-talvex harrowmere --pair front:17psi:25psi --pair rear:17psi:24psi",
            "      The next cold setting for the car's ideal hot pressures, and what being off them costs.",
            "  lapwright pressures gt-talvex harrowmere --pair all:1.2bar:1.7bar --next-air-temp-c 25",
            "      The same in other units, for a warmer day."
        })
final class PressuresCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nTyres:%n")
    private final PressuresOptions pressures = new PressuresOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final PressuresOutputOptions output = new PressuresOutputOptions();

    @Mixin
    HelpOption help;

    PressuresCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<PressuresOutcome> files = PressuresFiles.plan(output);
        PressuresReading reading = new PressuresReading(pressures);
        PressuresOutcome outcome = reading.study(documents.subject(setup, conditions.day(), console));
        files.write(outcome);
        if (output.json) {
            console.text(PressuresJson.text(outcome));
        } else {
            new PressuresReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }
}
