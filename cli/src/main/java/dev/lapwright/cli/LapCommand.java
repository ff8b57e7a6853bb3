package dev.lapwright.cli;

import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** One lap, or several setups side by side. */
@Command(
        name = "lap",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Laps a circuit in a car and says how, corner by corner."},
        customSynopsis = "lapwright lap CAR CIRCUIT [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright lap gt-talvex castelvane -s rear-wing=8 --out lap8",
            "      A lap with the rear wing at 8; result, trace and charts go to the folder lap8.",
            "  lapwright lap gt-talvex castelvane --against rear-wing=3 --chart wings.svg",
            "      Where on the circuit a flatter wing gains and loses: by sector, and as a chart."
        })
final class LapCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nComparison:%n")
    private final Comparison comparison = new Comparison();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final LapOutputOptions output = new LapOutputOptions();

    @Mixin
    HelpOption help;

    LapCommand(Console console) {
        this.console = console;
    }

    static final class Comparison {
        @Option(
                names = "--against",
                paramLabel = "SETUP",
                description = "Also laps in this setup and gives the difference by sector; may be repeated. Either a"
                        + " setup by file or demo name, or changes to the setup above: rear-wing=3 or"
                        + " rear-wing=3,front-bar=2.")
        List<String> against = new ArrayList<>();
    }

    @Override
    public Integer call() {
        ResultFiles<LapResult> files = LapFiles.plan(output, !comparison.against.isEmpty());
        checkComparable();
        Subject subject = documents.subject(setup, conditions.day(), console);
        List<NamedChoice> others = new ArrayList<>();
        for (String other : comparison.against) {
            others.add(named(subject, other));
        }
        ChosenLine chosen = ChosenLine.of(line, subject, console);
        LapSolver solver = LapSolver.on(chosen.driven());
        LapResult result = new LapResult(subject, chosen, lap(solver, subject), new ArrayList<>());
        for (NamedChoice other : others) {
            LapSolver own = chosen.isRefreshed()
                    ? LapSolver.on(chosen.refreshed(other.subject(), console).driven())
                    : solver;
            result.others().add(new LapResult.Other(other.name(), other.subject(), lap(own, other.subject())));
        }
        files.write(result);
        if (output.json) {
            console.text(LapJson.text(result));
        } else {
            new LapReport(console, result).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    /** Refuses a chart that is asked for by name and could not be drawn, before any lap is driven. */
    private void checkComparable() {
        boolean own = LineOptions.REFRESH.equals(line.line) && !comparison.against.isEmpty();
        String file = output.chart != null ? output.chart : LapFiles.isChart(output.out) ? output.out : null;
        if (own && file != null) {
            throw new InvalidValueException(
                    output.chart != null ? "--chart" : "--out " + file,
                    "laps on lines of their own are of several lengths and cannot be laid over each other",
                    "leave it out, or take --line fastest for all");
        }
    }

    private record NamedChoice(String name, Subject subject) {}

    private NamedChoice named(Subject base, String against) {
        if (against.contains("=")) {
            List<String> settings = Arrays.asList(against.split(","));
            return new NamedChoice(against, base.with(settings));
        }
        Setup other = SetupOptions.read(against, base.bare(), console);
        return new NamedChoice(other.name(), base.in(other));
    }

    private static Lap lap(LapSolver solver, Subject subject) {
        return solver.solve(Vehicle.of(subject.car(), subject.day()));
    }
}
