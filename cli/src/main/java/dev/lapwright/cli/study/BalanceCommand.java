package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.setup.BalancePhases;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.OpinionOption;
import dev.lapwright.cli.option.ResumeOption;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Report;
import dev.lapwright.results.BalanceReport;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.advice.Advice;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.SlipBalance;
import dev.lapwright.study.balance.SlipBalanceResult;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Command {@code balance}: which axle gives up first, where, and what to turn against it. */
@Command(
        name = "balance",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Says which axle gives up first in each corner, and what to turn against it."},
        customSynopsis = {
            "lapwright balance CAR CIRCUIT [--complaint WORDS]...",
            "                  [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright balance gt-talvex castelvane",
            "      Entry, lift-off, middle and exit of each corner, understeer gradient and aero balance.",
            "  lapwright balance gt-talvex castelvane --complaint \"loose on power out of T6\"",
            "      One change against it, what it costs, what to try next, and what each other step does."
        })
public final class BalanceCommand extends StudyCommand<BalanceReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nComplaint:%n")
    private final Complaint said = new Complaint();

    @Option(
            names = "--free-body",
            paramLabel = "CORNER",
            description = "Tells every force on the car where a corner, by number or name, is slowest, by both models.")
    private String freeBody;

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nSecond opinion:%n")
    private final OpinionOption opinion = new OpinionOption();

    @ArgGroup(validate = false, heading = "%nLong work (of --draws):%n")
    private final ResumeOption resume = new ResumeOption();

    public BalanceCommand(Console console) {
        super(console, new StudyFiles<>(BalanceReport::report));
        files.json("balance.json")
                .csv("balance.csv")
                .chart("balance.svg", BalanceCommand::chart)
                .option("--chart", "Draws the balance of each corner, phase by phase, as .svg or .png.")
                .csv("remedies.csv")
                .onlyInFolder()
                .onlyIf(() -> said.isGiven())
                .out("A folder for everything: result, tables and chart. Or one file: .json for the result, .csv"
                        + " for the table of phases, .svg or .png for the chart.");
    }

    /** What the driver says. */
    public static final class Complaint {
        @Option(
                names = "--complaint",
                paramLabel = "WORDS",
                description =
                        "What the driver says, in the words of the trade: \"loose on power out of T3\", \"pushes in long"
                                + " corners\"; several parted by commas or \"and\", or the option again. Gives one change against it, its"
                                + " cost, what to try next and what common practice would do. Words: "
                                + DriverWords.VOCABULARY + ". Or short: oversteer:exit:T3.")
        private List<String> complaints = List.of();

        @Option(
                names = "--draws",
                paramLabel = "N",
                description = "Cars drawn to tell what the change costs with its interval; 40 if left out, 0 for none.")
        private int draws = Advice.DRAWS;

        /** Whether anything is said. */
        boolean isGiven() {
            return !complaints.isEmpty();
        }
    }

    @Override
    public void check() {
        resume.check(said.isGiven() && said.draws > 0);
    }

    @Override
    public BalanceReport study() {
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Stations stations = subject.driven().stations(StationSpacing.DEFAULT);
        Optional<DriverWords> words = said.isGiven()
                ? Optional.of(
                        DriverWords.read(said.complaints, stations.corners(), Advice.isFrontDriven(subject.car())))
                : Optional.empty();
        Optional<Corner> at = Optional.ofNullable(freeBody).map(word -> corner(stations, word));
        BalanceResult result = Balance.of(new LapSolver(stations).solve(Vehicle.of(subject.car(), subject.day())))
                .run();
        return new BalanceReport(
                subject,
                result,
                words.map(heard -> advice(heard, result, subject)),
                words.isPresent() ? Optional.empty() : slip(subject),
                at);
    }

    private AdviceResult advice(DriverWords words, BalanceResult result, Subject subject) {
        List<String> asked = List.of(said.complaints.toString(), Integer.toString(said.draws));
        try (ResumeOption.Kept kept = resume.kept(console, List.of(subject), asked)) {
            return Advice.on(words, result)
                    .withDraws(said.draws)
                    .remembering(kept.of("draws"))
                    .run(StudyRun.onAllCores());
        }
    }

    private Corner corner(Stations stations, String word) {
        if (said.isGiven() || !opinion.isWanted()) {
            throw new InvalidValueException(
                    "--free-body",
                    "it needs the fuller model, which is not asked here",
                    "leave out --complaint and --no-second-opinion");
        }
        return Corner.find(stations.corners(), word)
                .orElseThrow(() -> new InvalidValueException(
                        "--free-body",
                        "no corner '" + word + "' here",
                        "name one of "
                                + stations.corners().stream().map(Corner::label).collect(Collectors.joining(", "))));
    }

    private Optional<SlipBalanceResult> slip(Subject subject) {
        if (!opinion.isWanted()) {
            return Optional.empty();
        }
        try {
            return Optional.of(SlipBalance.of(subject.car(), subject.driven(), subject.day())
                    .run());
        } catch (InvalidValueException | NoLapException none) {
            console.remark("Note: no word of the fuller model: " + none.getMessage() + ".");
            return Optional.empty();
        }
    }

    @Override
    public Report report(BalanceReport found) {
        return found.report();
    }

    /** A car that has nothing to turn against what is said is bad input, told beside the result. */
    @Override
    public int end(BalanceReport found) {
        boolean nothing = found.advice().isPresent()
                && !found.advice().get().against().isEmpty()
                && found.advice().get().choices().isEmpty();
        if (nothing) {
            console.remark(
                    "lapwright: complaint: no adjustment of this car helps against it; see what common practice would"
                            + " turn, and list it in the car's document if there is one");
        }
        return nothing ? ExitCode.BAD_INPUT : ExitCode.DONE;
    }

    private static Drawing chart(BalanceReport found) {
        List<BalancePhases.BalanceBars> bars =
                found.result().corners().stream().map(BalanceCommand::bars).toList();
        return new Drawing(
                        BalancePhases.of(found.subject().title(), bars, ChartStyle.STANDARD),
                        BalancePhases.size(bars.size()))
                .withNarrowHeight(BalancePhases.narrowHeight(bars.size()), BalancePhases.NARROW_BELOW);
    }

    /** What a chart says of one corner. */
    public static BalancePhases.BalanceBars bars(BalanceResult.CornerBalance corner) {
        return new BalancePhases.BalanceBars(
                corner.corner().label(),
                reserve(corner, BalancePhase.ENTRY),
                reserve(corner, BalancePhase.LIFT_OFF),
                reserve(corner, BalancePhase.MIDDLE),
                reserve(corner, BalancePhase.EXIT));
    }

    /** None where the lap has no such phase, or an axle no limit. */
    private static double reserve(BalanceResult.CornerBalance corner, BalancePhase phase) {
        double understeer =
                corner.in(phase).map(one -> one.margins().understeer()).orElse(Double.NaN);
        return Double.isFinite(understeer) ? understeer : Double.NaN;
    }
}
