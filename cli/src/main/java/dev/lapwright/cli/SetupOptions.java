package dev.lapwright.cli;

import dev.lapwright.car.Conditions;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** How the car is set up. */
final class SetupOptions {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(
            names = "--setup",
            paramLabel = "SETUP",
            completionCandidates = DemoNames.Setups.class,
            description = "Setup for the car: a file, or the name of a demo.")
    String setup;

    @Option(
            names = {"-s", "--set"},
            paramLabel = "NAME=VALUE",
            description = "Changes one thing in place; may be repeated. NAME is an adjustment of the car, one of its"
                    + " quantities, or one of the conditions: rear-wing=6, front-pressure=\"24 psi\","
                    + " chassis.massKg=1250, conditions.grip=0.8. 'lapwright show CAR' lists them.")
    List<String> settings = new ArrayList<>();

    /** A car set up so; the circuit may be null. */
    Subject subject(String car, String circuit, Conditions day) {
        Subject subject = Subject.of(car, circuit, setup, settings, day);
        LapwrightCommand root = (LapwrightCommand) command.root().userObject();
        subject.setup().notes().forEach(note -> root.console().remark("Note: " + note));
        return subject;
    }
}
