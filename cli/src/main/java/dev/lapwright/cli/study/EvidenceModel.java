package dev.lapwright.cli.study;

import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** What the lap model predicts for a change of setup. */
public final class EvidenceModel {
    @Option(
            names = "--change",
            paramLabel = "NAME=BEFORE:AFTER",
            description = "What was changed, for the model to predict: rear-wing=2:6; may be repeated. Needs --car and"
                    + " --circuit.")
    private List<String> changes = new ArrayList<>();

    @Option(
            names = "--car",
            paramLabel = "CAR",
            completionCandidates = DemoNames.Cars.class,
            description = "Car: a file, or the name of a demo.")
    private String car;

    @Option(
            names = "--circuit",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "Circuit: a file, or the name of a demo.")
    private String circuit;

    /** The change of lap time that it predicts, s, below nought being faster; none if nothing is said to have changed. */
    public OptionalDouble predicted(SetupOptions setup, ConditionsOptions conditions) {
        if (changes.isEmpty()) {
            if (car != null || circuit != null) {
                throw new InvalidValueException(
                        "--car and --circuit",
                        "they say nothing without a change",
                        "add --change NAME=BEFORE:AFTER, as in --change rear-wing=2:6");
            }
            return OptionalDouble.empty();
        }
        if (car == null || circuit == null) {
            throw new InvalidValueException(
                    "--change", "the model knows no car or no circuit", "give --car CAR --circuit CIRCUIT too");
        }
        List<String> before = new ArrayList<>();
        List<String> after = new ArrayList<>();
        changes.forEach(change -> read(change, before, after));
        Subject subject = setup.subject(car, circuit, conditions.day());
        LapSolver solver = LapSolver.on(subject.track());
        return OptionalDouble.of(lapTime(solver, subject.with(after)) - lapTime(solver, subject.with(before)));
    }

    private static void read(String change, List<String> before, List<String> after) {
        int equals = change.indexOf('=');
        int colon = change.indexOf(':', equals);
        if (equals < 0 || colon < 0) {
            throw new InvalidValueException(
                    "--change " + change, "it is no change", "write NAME=BEFORE:AFTER, as in rear-wing=2:6");
        }
        String name = change.substring(0, equals + 1);
        before.add(name + change.substring(equals + 1, colon));
        after.add(name + change.substring(colon + 1));
    }

    private static double lapTime(LapSolver solver, Subject subject) {
        return solver.lapTime(Vehicle.of(subject.car(), subject.day()));
    }
}
