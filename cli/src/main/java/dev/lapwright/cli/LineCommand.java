package dev.lapwright.cli;

import dev.lapwright.documents.LineKind;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.results.LineTable;
import dev.lapwright.results.Subject;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The lines that a car can take. */
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
final class LineCommand implements Callable<Integer> {
    private final Console console;

    @Mixin
    private CarAndCircuit documents;

    @ArgGroup(validate = false, heading = "%nLine:%n")
    private final LineRoomOptions room = new LineRoomOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final Output output = new Output();

    @Mixin
    HelpOption help;

    static final class Output {
        @Option(
                names = "--out",
                paramLabel = "FOLDER|FILE",
                description =
                        "A folder for everything: a document of each line, for --line of other commands; the table of"
                                + " offset, place, curvature and speed; result and charts. Or one file: .csv for the table, .svg or .png for the map.")
        String out;

        @Option(names = "--json", description = "Prints the result for machines, as JSON.")
        boolean json;

        @Option(names = "--force", description = "Lets existing files be overwritten.")
        boolean force;
    }

    LineCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<LineOutcome> files = LineFiles.plan(output);
        Subject subject = documents.subject(setup, conditions.day(), console);
        LineOutcome outcome = find(subject, room.choices());
        files.write(outcome);
        if (output.json) {
            console.text(LineJson.text(outcome));
        } else {
            new LineReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private LineOutcome find(Subject subject, LineChoices choices) {
        LineSearch search = LineSearch.of(subject.track(), subject.car(), choices);
        Vehicle vehicle = Vehicle.of(subject.car(), subject.day());
        LineTable.Row middle = new LineTable.Row(
                LineKind.MIDDLE, null, LapSolver.on(subject.track()).solve(vehicle));
        Line smoothest = search.smoothest();
        Line fastest;
        try (SearchProgress progress = new SearchProgress(console)) {
            fastest = search.from(smoothest).reporting(progress).fastest(vehicle);
        }
        return new LineOutcome(
                subject,
                choices,
                List.of(middle, row(LineKind.SMOOTHEST, smoothest, vehicle), row(LineKind.FASTEST, fastest, vehicle)));
    }

    private static LineTable.Row row(LineKind kind, Line line, Vehicle vehicle) {
        return new LineTable.Row(kind, line, LapSolver.on(line.driven()).solve(vehicle));
    }
}
