package dev.lapwright.cli.option;

import dev.lapwright.car.Conditions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.results.Subject;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Arguments CAR and CIRCUIT, the two documents that every lap needs. */
public final class CarAndCircuit {
    @Parameters(
            index = "0",
            paramLabel = "CAR",
            completionCandidates = DemoNames.Cars.class,
            description = "Car: a file, or the name of a demo (see 'lapwright demo').")
    public String car;

    @Parameters(
            index = "1",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "Circuit or open run: a file, or the name of a demo.")
    public String circuit;

    @Option(
            names = "--event",
            paramLabel = "FOLDER",
            description =
                    "An event's folder in place of CAR and CIRCUIT: its car as set up in its last run, its circuit and"
                            + " day. Inside such a folder neither is needed (see 'lapwright event').")
    public String event;

    /** Both read, the car set up. */
    public Subject subject(SetupOptions setup, Conditions day, Console console) {
        return setup.subject(car, circuit, day, console);
    }
}
