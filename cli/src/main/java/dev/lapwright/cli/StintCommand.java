package dev.lapwright.cli;

import dev.lapwright.study.stint.Stint;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Fuel for a race, and its laps as fuel burns and tyres wear. */
@Command(
        name = "stint",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says how much fuel a race takes, and what fuel and wear do to each lap."},
        customSynopsis = {
            "lapwright stint CAR CIRCUIT (--minutes M | --laps N)",
            "                [--compound NAME:GRIP:WEAR]... [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright stint gt-talvex harrowmere --minutes 20",
            "      Fuel for a sprint of 20 minutes with a formation lap and a lap in reserve.",
            "  lapwright stint gt-talvex harrowmere --laps 20 --compound soft:1.01:0.2 --compound hard:1:0.05",
            "      Two compounds over the distance, and from which lap on the harder one is faster."
        })
final class StintCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nRace:%n")
    private final StintOptions stint = new StintOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final StintOutputOptions output = new StintOutputOptions();

    @Mixin
    HelpOption help;

    StintCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<StintOutcome> files = StintFiles.plan(output);
        StintReading reading = new StintReading(stint);
        double density = reading.density();
        Choice choice = Choice.of(documents, setup, conditions.day());
        StintOutcome outcome = new StintOutcome(
                choice,
                Stint.of(
                        choice.car(),
                        choice.track(),
                        choice.day(),
                        reading.consumption(),
                        reading.race(),
                        reading.compounds()),
                density);
        files.write(outcome);
        if (output.json) {
            console.text(StintJson.text(outcome));
        } else {
            new StintReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }
}
