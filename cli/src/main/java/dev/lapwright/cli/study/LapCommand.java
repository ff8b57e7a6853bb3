package dev.lapwright.cli.study;

import dev.lapwright.car.Setup;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.lap.GgDiagram;
import dev.lapwright.charts.lap.SpeedComparison;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.lap.TrackMap;
import dev.lapwright.charts.track.DrivenLine;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.ModelOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.documents.LineKind;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Report;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.LapReport;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code lap}: one lap, or several setups side by side. */
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
            "      Where on the circuit a flatter wing is faster and slower: by sector, and as a chart."
        })
public final class LapCommand extends StudyCommand<LapReport> {
    private static final String CHART = "--chart";
    /** Word for no other line. */
    private static final String NONE = "none";

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nModel:%n")
    private final ModelOption model = new ModelOption();

    @ArgGroup(validate = false, heading = "%nComparison:%n")
    private final Others others = new Others();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    public LapCommand(Console console) {
        super(console, new StudyFiles<>(LapReport::report));
        files.json("lap.json")
                .csv(LapReport.TRACE)
                .option("--trace", found -> found.trace().json(), "Writes the lap station by station as .csv or .json.")
                .chart(".svg", found -> isComparing() ? comparison(found) : speed(found))
                .onlyAlone()
                .option(
                        CHART,
                        "Draws speed and gear over distance as .svg or .png; setups to compare are laid over it.")
                .chart("speed.svg", LapCommand::speed)
                .chart("map.svg", found -> new Drawing(TrackMap.of(found.lap(), ChartStyle.STANDARD), TrackMap.SIZE))
                .chart("line.svg", LapCommand::line)
                .chart("gg.svg", found -> new Drawing(GgDiagram.of(found.lap(), ChartStyle.STANDARD), GgDiagram.SIZE))
                .chart("comparison.svg", found -> found.subject().line().isRefreshed() ? null : comparison(found))
                .onlyIf(this::isComparing)
                .out("A folder for everything: result, trace and all charts. Or one file, by its ending:"
                        + " .json for the result, .csv for the trace, .svg or .png for the chart.");
    }

    @Override
    public LapReport study() {
        if (others.beside.contains(NONE) && others.beside.size() > 1) {
            throw new InvalidValueException(
                    "--beside none", "another line is asked for as well", "leave one of both out");
        }
        checkComparable();
        model.check();
        Subject subject = documents.subject(setup, conditions.day(), console);
        List<NamedChoice> asked = new ArrayList<>();
        for (String other : others.against) {
            asked.add(named(subject, other));
        }
        Subject base = line.drive(subject, console);
        LapSolver solver = model.on(base.driven());
        Lap lap = lap(solver, base);
        List<LapReport.Other> driven = new ArrayList<>();
        for (NamedChoice other : asked) {
            LapSolver own = base.line().isRefreshed()
                    ? model.on(
                            line.refresh(base.line(), other.subject(), console).driven())
                    : solver;
            driven.add(new LapReport.Other(other.name(), other.subject(), lap(own, other.subject())));
        }
        LapReport found = new LapReport(base, lap, driven, List.of());
        return isToldLater() ? found : found.beside(beside(base));
    }

    /** Whether the fastest line is looked for when all the rest has been said: whoever only reads need not wait for it. */
    private boolean isToldLater() {
        return others.beside.isEmpty() && !files.isAnyAsked();
    }

    /** Laps of the same car on other lines; unless asked otherwise on its fastest, where the smoothest was driven. */
    private List<LapReport.Beside> beside(Subject base) {
        List<String> words = others.beside;
        if (words.isEmpty()) {
            words = base.line().isSmoothest() ? List.of(LineKind.FASTEST.word()) : List.of();
        } else if (words.contains(NONE)) {
            words = List.of();
        }
        List<LapReport.Beside> beside = new ArrayList<>();
        for (String word : words) {
            ChosenLine chosen = line.beside(word, base, console);
            beside.add(new LapReport.Beside(chosen, lap(model.on(chosen.driven()), base)));
        }
        return beside;
    }

    @Override
    public int end(LapReport found) {
        if (!files.isJson()) {
            LapReport whole = isToldLater() ? found.beside(beside(found.subject())) : found;
            TerminalReport.print(console, whole.besides());
        }
        return ExitCode.DONE;
    }

    @Override
    public Report report(LapReport found) {
        return found.report();
    }

    private boolean isComparing() {
        return !others.against.isEmpty();
    }

    /** Refuses a chart that is asked for by name and could not be drawn, before any lap is driven. */
    private void checkComparable() {
        if (!LineOptions.REFRESH.equals(line.line) || !isComparing()) {
            return;
        }
        String chart = files.given(CHART);
        String out = files.given("--out");
        boolean drawn = out != null && (Outputs.isNamed(out, ".svg") || Outputs.isNamed(out, ".png"));
        if (chart != null || drawn) {
            throw new InvalidValueException(
                    chart != null ? CHART : "--out " + out,
                    "laps on lines of their own are of several lengths and cannot be laid over each other",
                    "leave it out, or take --line fastest for all");
        }
    }

    private record NamedChoice(String name, Subject subject) {}

    private NamedChoice named(Subject base, String against) {
        if (against.contains("=")) {
            List<String> settings = Arrays.asList(against.split(","));
            Subject other = base.with(settings);
            SetupOptions.remark(other, base, console);
            return new NamedChoice(against, other);
        }
        Setup other = SetupOptions.read(against, base.bare(), console);
        return new NamedChoice(other.name(), base.in(other));
    }

    private static Lap lap(LapSolver solver, Subject subject) {
        return solver.solve(Vehicle.of(subject.car(), subject.day()));
    }

    private static Drawing speed(LapReport found) {
        return new Drawing(SpeedTrace.of(found.lap(), ChartStyle.STANDARD), SpeedTrace.SIZE);
    }

    private static Drawing line(LapReport found) {
        ChosenLine chosen = found.subject().line();
        return chosen.line()
                .map(line -> DrivenLine.of(chosen.name(), found.lap().time(), line))
                .map(line -> LineCommand.map(found.subject().track(), List.of(line)))
                .orElse(null);
    }

    private static Drawing comparison(LapReport found) {
        List<SpeedComparison.NamedLap> laps = new ArrayList<>();
        laps.add(new SpeedComparison.NamedLap(found.subject().setupText(), found.lap()));
        found.others().forEach(other -> laps.add(new SpeedComparison.NamedLap(other.name(), other.lap())));
        return comparison(laps);
    }

    /** Speeds of several laps laid over each other. */
    public static Drawing comparison(List<SpeedComparison.NamedLap> laps) {
        return new Drawing(SpeedComparison.of(laps, ChartStyle.STANDARD), SpeedComparison.SIZE);
    }

    /** What is compared with the setup above. */
    public static final class Others {
        @Option(
                names = "--against",
                paramLabel = "SETUP",
                description = "Also laps in this setup and gives the difference by sector; may be repeated. Either a"
                        + " setup by file or demo name, or changes to the setup above: rear-wing=3 or"
                        + " rear-wing=3,front-bar=2.")
        List<String> against = new ArrayList<>();

        @Option(
                names = "--beside",
                paramLabel = "LINE",
                completionCandidates = LineOptions.Words.class,
                description =
                        "Quotes the lap of the same car on another line, as --line names them, and the difference;"
                                + " may be repeated. Unless asked, beside the smoothest line the fastest, which takes a second or so"
                                + " where it was not found before; none quotes no other.")
        List<String> beside = new ArrayList<>();
    }
}
