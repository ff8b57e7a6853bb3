package dev.lapwright.cli;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.results.Subject;
import dev.lapwright.study.compare.Comparison;
import java.util.Arrays;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Two setups, or two cars, side by side. */
@Command(
        name = "compare",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says where on a circuit one setup or car gains on another, and what limits it there."},
        customSynopsis = {
            "lapwright compare CAR CIRCUIT [--setup SETUP] [-s NAME=VALUE]...",
            "                  [--against-car CAR] [--against SETUP] [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright compare gt-talvex castelvane --against rear-wing=3 --out wings",
            "      Where a flatter wing gains and loses; trace and chart go to the folder wings.",
            "  lapwright compare gt-talvex harrowmere --against-car touring-merrow --json",
            "      Two cars corner by corner, for another program to read."
        })
final class CompareCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nComparison:%n")
    private final CompareOptions compared = new CompareOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final CompareOutputOptions output = new CompareOutputOptions();

    @Mixin
    HelpOption help;

    CompareCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (compared.against.size() > 1) {
            throw new InvalidValueException(
                    "--against",
                    compared.against.size() + " setups are named",
                    "give it once, or lay several over each other with 'lapwright lap'");
        }
        String against = compared.against.isEmpty() ? "" : compared.against.get(0);
        if (against.isEmpty() && compared.car == null) {
            throw new InvalidValueException(
                    "compare",
                    "there is nothing to compare with",
                    "add --against SETUP, --against NAME=VALUE or --against-car CAR");
        }
        ResultFiles<CompareOutcome> files = CompareFiles.plan(output);
        Subject subject = documents.subject(setup, conditions.day(), console);
        Subject other = other(subject, against);
        LapSolver solver = LapSolver.on(subject.track());
        Comparison comparison = Comparison.of(lap(solver, subject), lap(solver, other));
        CompareOutcome outcome = new CompareOutcome(subject, name(other, against), other, comparison);
        files.write(outcome);
        if (output.json) {
            console.text(CompareJson.text(outcome));
        } else {
            new CompareReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private Subject other(Subject subject, String against) {
        Subject base = subject;
        if (compared.car != null) {
            Car bare = Documents.car(compared.car);
            base = new Subject(bare, Setup.STANDARD, bare, subject.track(), subject.day());
        }
        if (against.isEmpty()) {
            return base;
        }
        return against.contains("=")
                ? base.with(Arrays.asList(against.split(",")))
                : base.in(SetupOptions.read(against, base.bare(), console));
    }

    private String name(Subject other, String against) {
        String setup = against.contains("=") || against.isEmpty()
                ? against
                : other.setup().name();
        if (compared.car == null) {
            return setup;
        }
        return other.bare().name() + (setup.isEmpty() ? "" : " with " + setup);
    }

    private static Lap lap(LapSolver solver, Subject subject) {
        return solver.solve(Vehicle.of(subject.car(), subject.day()));
    }
}
