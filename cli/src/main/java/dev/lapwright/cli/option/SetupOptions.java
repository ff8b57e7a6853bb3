package dev.lapwright.cli.option;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.cli.output.Console;
import dev.lapwright.documents.Documents;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Options for the setup of the car. */
public final class SetupOptions {
    @Option(
            names = "--setup",
            paramLabel = "SETUP",
            completionCandidates = DemoNames.Setups.class,
            description = "Setup for the car: a file, or the name of a demo.")
    public String setup;

    @Option(
            names = {"-s", "--set"},
            paramLabel = "NAME=VALUE",
            description = "Changes one thing in place; may be repeated. NAME is an adjustment of the car, one of its"
                    + " quantities, or one of the conditions: rear-wing=6, front-pressure=\"24 psi\","
                    + " chassis.massKg=1250, conditions.grip=0.8. 'lapwright show CAR' lists them.")
    public List<String> settings = new ArrayList<>();

    /** A setup for a car: a file, or the name of a demo. What was read otherwise than it is written, or lies between two steps, is remarked upon. */
    public static Setup read(String name, Car car, Console console) {
        Setup setup = Documents.setup(name, car);
        Subject.notes(car, setup).forEach(note -> console.remark("Note: " + note));
        return setup;
    }

    /** Remarks on what is noteworthy of a setup and not of another, which has been remarked upon. */
    public static void remark(Subject subject, Subject before, Console console) {
        List<String> said = before.notes();
        subject.notes().stream().filter(note -> !said.contains(note)).forEach(note -> console.remark("Note: " + note));
    }

    /** A car set up so; the circuit may be null. What was read otherwise than it is written, or lies between two steps, is remarked upon. */
    public Subject subject(String car, String circuit, Conditions day, Console console) {
        Subject subject = Subject.of(car, circuit, setup, settings, day);
        subject.notes().forEach(note -> console.remark("Note: " + note));
        return subject;
    }
}
