package dev.lapwright.cli.study;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.lap.TrackMap;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.charts.track.DrivenLine;
import dev.lapwright.charts.track.LineMap;
import dev.lapwright.cli.option.CarAndCircuit;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.LineRoomOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.LineKind;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.report.Report;
import dev.lapwright.results.LineReport;
import dev.lapwright.results.Subject;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.List;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Command {@code line}: the lines that a car can take along a circuit. */
@Command(
        name = "line",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Finds the line that bends least and the line of least time along a circuit."},
        customSynopsis = "lapwright line CAR CIRCUIT [--setup SETUP] [-s NAME=VALUE]... [OPTIONS]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright line gt-talvex castelvane --out line",
            "      Both lines; documents, a table and charts go to the folder line. Then drive one:",
            "      lapwright lap gt-talvex castelvane --line line/fastest.json",
            "  lapwright line student-pipit harrowmere --margin-m 0.5 -s rear-flap=10 --json",
            "      With half a metre free on each side and another wing, for another program to read."
        })
public final class LineCommand extends StudyCommand<LineReport> {
    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineRoomOptions room = new LineRoomOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    public LineCommand(Console console) {
        super(
                console,
                new StudyFiles<>(LineReport::report)
                        .json("lines.json")
                        .onlyInFolder()
                        .csv(LineReport.TABLE)
                        .text("smoothest.json", found -> DocumentWriter.text(found.stored(LineKind.SMOOTHEST)))
                        .onlyInFolder()
                        .text("fastest.json", found -> DocumentWriter.text(found.stored(LineKind.FASTEST)))
                        .onlyInFolder()
                        .chart("lines.svg", LineCommand::map)
                        .option("--chart", "Draws the lines on their road as .svg or .png.")
                        .chart("speed-map.svg", LineCommand::speedMap)
                        .out("A folder for everything: a document of each line, for --line of other commands; the table"
                                + " of offset, place, curvature and speed; result and charts. Or one file: .csv for the"
                                + " table, .svg or .png for the map."));
    }

    @Override
    public LineReport study() {
        Subject subject = documents.subject(setup, conditions.day(), console);
        LineChoices choices = room.choices();
        LineSearch search = LineSearch.of(subject.track(), subject.car(), choices);
        Vehicle vehicle = Vehicle.of(subject.car(), subject.day());
        Lap middle = LapSolver.on(subject.track()).solve(vehicle);
        Line smoothest = search.smoothest();
        Line fastest;
        try (ProgressBar progress = new ProgressBar(console, "steps")) {
            fastest = room.finder(console).fastest(search.reporting(progress), vehicle);
        }
        return new LineReport(
                subject,
                choices,
                List.of(
                        new LineReport.Row(LineKind.MIDDLE, null, middle),
                        row(LineKind.SMOOTHEST, smoothest, vehicle),
                        row(LineKind.FASTEST, fastest, vehicle)));
    }

    private static LineReport.Row row(LineKind kind, Line line, Vehicle vehicle) {
        return new LineReport.Row(kind, line, LapSolver.on(line.driven()).solve(vehicle));
    }

    @Override
    public Report report(LineReport found) {
        return found.report();
    }

    /** The lines found, on the road. */
    private static Drawing map(LineReport found) {
        return map(
                found.subject().track(),
                found.rows().stream()
                        .filter(row -> row.line() != null)
                        .map(row -> DrivenLine.of(row.kind().word(), row.lap().time(), row.line()))
                        .toList());
    }

    /** Lines on their road. */
    public static Drawing map(Track road, List<DrivenLine> lines) {
        return new Drawing(LineMap.of(road.stations(StationSpacing.DEFAULT), lines, ChartStyle.STANDARD), LineMap.SIZE)
                .withNarrowHeight(LineMap.NARROW_HEIGHT, CircuitMap.NARROW_BELOW);
    }

    /** Speed on the fastest line. */
    private static Drawing speedMap(LineReport found) {
        return new Drawing(TrackMap.of(found.row(LineKind.FASTEST).lap(), ChartStyle.STANDARD), TrackMap.SIZE);
    }
}
