package dev.lapwright.cli.study;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.lap.SpeedComparison;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.DoubtOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ModelOption;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.option.UsualDoubtOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Report;
import dev.lapwright.results.ComparisonReport;
import dev.lapwright.results.LapModel;
import dev.lapwright.results.Standings;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.robust.ModelChoices;
import dev.lapwright.study.robust.Robustness;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code compare}: two setups, or two cars, side by side. */
@Command(
        name = "compare",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says where on a circuit one setup or car is faster, and what limits it there."},
        customSynopsis = {
            "lapwright compare CAR CIRCUIT [--setup SETUP] [-s NAME=VALUE]...",
            "                  [--against-car CAR] [--against SETUP] [--against-model MODEL]",
            "                  [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright compare gt-talvex castelvane --against rear-wing=3 --out wings",
            "      Where a flatter wing is faster and slower; trace and chart go to the folder wings.",
            "  lapwright compare gt-talvex harrowmere --against-car touring-merrow --json",
            "      Two cars corner by corner, for another program to read."
        })
public final class CompareCommand extends StudyCommand<ComparisonReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nComparison:%n")
    private final Other compared = new Other();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nLong work (of --draws):%n")
    private final ResumeOption resume = new ResumeOption();

    @ArgGroup(validate = false, heading = "%nDoubt (of two setups of one car):%n")
    private final UsualDoubtOptions doubt = new UsualDoubtOptions();

    public CompareCommand(Console console) {
        super(
                console,
                new StudyFiles<>(ComparisonReport::report)
                        .json("comparison.json")
                        .csv(ComparisonReport.TRACE)
                        .option(
                                "--trace",
                                found -> found.trace().json(),
                                "Writes the difference in time and both speeds station by station as .csv or .json.")
                        .chart("comparison.svg", CompareCommand::chart)
                        .option(
                                "--chart",
                                "Draws both speeds and the difference in time over distance as .svg or .png.")
                        .out("A folder for everything: result, trace and chart. Or one file, by its ending:"
                                + " .json for the result, .csv for the trace, .svg or .png for the chart."));
    }

    @Override
    public void check() {
        doubt.check(line);
        resume.check(doubt.isDrawing() && compared.model == null && compared.car == null);
        if (compared.model != null && (compared.car != null || !compared.against.isEmpty() || doubt.isAsked())) {
            throw new InvalidValueException(
                    "--against-model",
                    "another setup, car or draws are asked for as well",
                    "compare the two models of one car by itself");
        }
        if (doubt.isAsked() && compared.car != null) {
            throw new InvalidValueException(
                    DoubtOptions.DRAWS,
                    "two cars have errors of their own, and only those of one car are drawn",
                    "compare two setups of one car, or leave it out");
        }
    }

    @Override
    public ComparisonReport study() {
        if (compared.against.size() > 1) {
            throw new InvalidValueException(
                    "--against",
                    compared.against.size() + " setups are named",
                    "give it once, or lay several over each other with 'lapwright lap'");
        }
        String against = compared.against.isEmpty() ? "" : compared.against.get(0);
        boolean models = compared.model != null;
        if (against.isEmpty() && compared.car == null && !models) {
            throw new InvalidValueException(
                    "compare",
                    "there is nothing to compare with",
                    "add --against SETUP, --against NAME=VALUE, --against-car CAR or --against-model fuller");
        }
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Subject other = other(subject, against);
        LapSolver solver = LapSolver.on(subject.driven());
        Lap first = lap(solver, subject);
        if (models) {
            LapModel model = ModelOption.read("--against-model", compared.model);
            return new ComparisonReport(
                    subject,
                    "The " + model.word() + " model",
                    subject,
                    Comparison.of(first, lap(model.on(subject.driven()), subject)));
        }
        Comparison comparison = Comparison.of(first, lap(solver, other));
        Optional<Standings> standing = standing(subject, other);
        return new ComparisonReport(
                subject,
                name(other, against),
                other,
                comparison,
                standing,
                standing.map(drawn -> ModelChoices.between(
                        subject.car(),
                        subject.day(),
                        other.car(),
                        other.day(),
                        subject.driven(),
                        subject.line().line().map(found -> subject.track()))));
    }

    /** Of two cars none, as each has errors of its own. */
    private Optional<Standings> standing(Subject subject, Subject other) {
        if (compared.car != null) {
            return Optional.empty();
        }
        try (ResumeOption.Kept kept = resume.kept(console, List.of(subject, other), doubt.asked())) {
            return doubt.standings(
                    () -> Robustness.of(subject.car(), subject.driven(), subject.day())
                            .against(other.car(), other.day(), Double.NaN)
                            .remembering(kept.of("draws")),
                    StudyRun.onAllCores(),
                    console);
        }
    }

    @Override
    public Report report(ComparisonReport found) {
        return found.report();
    }

    private Subject other(Subject subject, String against) {
        Subject base = subject;
        if (compared.car != null) {
            Car bare = Documents.car(compared.car);
            base = new Subject(bare, Setup.STANDARD, bare, subject.track(), subject.line(), subject.day());
        }
        if (against.isEmpty()) {
            return base;
        }
        if (!against.contains("=")) {
            return base.in(SetupOptions.read(against, base.bare(), console));
        }
        Subject other = base.with(Arrays.asList(against.split(",")));
        SetupOptions.remark(other, base, console);
        return other;
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

    private static Drawing chart(ComparisonReport found) {
        return LapCommand.comparison(List.of(
                new SpeedComparison.NamedLap(
                        found.firstName(), found.comparison().first()),
                new SpeedComparison.NamedLap(found.name(), found.comparison().second())));
    }

    /** What is compared with the car and setup above. */
    public static final class Other {
        @Option(
                names = "--against",
                paramLabel = "SETUP",
                description = "The other setup: by file or demo name, or changes to the setup above: rear-wing=3 or"
                        + " rear-wing=3,front-bar=2. Also changes of the conditions: conditions.grip=0.8.")
        List<String> against = new ArrayList<>();

        @Option(
                names = "--against-model",
                paramLabel = "MODEL",
                description = "The same car in the same setup by another model of a lap: fuller.")
        String model;

        @Option(
                names = "--against-car",
                paramLabel = "CAR",
                completionCandidates = DemoNames.Cars.class,
                description = "Another car, as its document has it; --against then sets up or changes that car.")
        String car;
    }
}
