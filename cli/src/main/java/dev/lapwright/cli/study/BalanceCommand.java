package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.setup.BalancePhases;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Report;
import dev.lapwright.results.BalanceReport;
import dev.lapwright.results.Subject;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.List;
import java.util.Optional;
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
            "lapwright balance CAR CIRCUIT [--complaint COMPLAINT]",
            "                  [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright balance gt-talvex castelvane",
            "      Entry, lift-off, middle and exit of each corner, understeer gradient and aero balance.",
            "  lapwright balance gt-talvex castelvane --complaint understeer:entry",
            "      What to turn against understeer in the entries, and what each step costs or gains."
        })
public final class BalanceCommand extends StudyCommand<BalanceReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nComplaint:%n")
    private final Complaint said = new Complaint();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineOptions line = new LineOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    public BalanceCommand(Console console) {
        super(console, new StudyFiles<>(BalanceReport::report));
        files.json("balance.json")
                .csv("balance.csv")
                .chart("balance.svg", BalanceCommand::chart)
                .option("--chart", "Draws the balance of each corner, phase by phase, as .svg or .png.")
                .csv("remedies.csv")
                .onlyInFolder()
                .onlyIf(() -> said.complaint().isPresent())
                .out("A folder for everything: result, tables and chart. Or one file: .json for the result, .csv"
                        + " for the table of phases, .svg or .png for the chart.");
    }

    /** What the driver says. */
    public static final class Complaint {
        @Option(
                names = "--complaint",
                paramLabel = "COMPLAINT",
                description = "What the driver complains of: understeer or oversteer, the phase of the corner (entry,"
                        + " lift-off, middle, exit) and, if it is one corner only, that corner: understeer:entry,"
                        + " oversteer:exit:T3. Gives what to turn against it.")
        private List<String> complaints = List.of();

        /** The one complaint; empty if there is none. */
        Optional<String> complaint() {
            if (complaints.size() > 1) {
                throw new InvalidValueException(
                        "--complaint", "it is given " + complaints.size() + " times", BalanceComplaint.ONE_AT_A_TIME);
            }
            return complaints.stream().findFirst();
        }
    }

    @Override
    public BalanceReport study() {
        line.refuseRefresh();
        Subject subject = line.drive(documents.subject(setup, conditions.day(), console), console);
        Stations stations = subject.driven().stations(StationSpacing.DEFAULT);
        Optional<BalanceComplaint> complaint =
                said.complaint().map(text -> BalanceComplaint.parse(text, stations.corners()));
        BalanceResult result = Balance.of(new LapSolver(stations).solve(Vehicle.of(subject.car(), subject.day())))
                .run();
        return new BalanceReport(
                subject,
                result,
                complaint.map(against -> Remedies.against(against, result).run()));
    }

    @Override
    public Report report(BalanceReport found) {
        return found.report();
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
