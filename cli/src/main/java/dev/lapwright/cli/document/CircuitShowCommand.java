package dev.lapwright.cli.document;

import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.documents.Documents;
import dev.lapwright.report.Report;
import dev.lapwright.results.CircuitReport;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** Command {@code circuit show}: a circuit's corners and totals, its map and profile. */
@Command(
        name = "show",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Shows a circuit or open run: length, climb, widths, turning, and each corner with its radius, and with",
            "slope and bank at its apex."
        },
        customSynopsis = "lapwright circuit show CIRCUIT [OPTIONS]",
        parameterListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright circuit show castelvane --chart castelvane.svg --profile profile.svg",
            "      The table of corners; the map, and curvature, altitude and slope over distance as pictures.",
            "  lapwright circuit show castelvane --out corners.csv",
            "      The table of corners for a spreadsheet."
        })
public final class CircuitShowCommand extends StudyCommand<Stations> {
    @Parameters(
            index = "0",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "The circuit: a file, or the name of a demo.")
    private String circuit;

    public CircuitShowCommand(Console console) {
        super(
                console,
                new StudyFiles<>(CircuitReport::of)
                        .json("circuit.json")
                        .csv(CircuitReport.CORNERS)
                        .chart("map.svg", CircuitCharts::map)
                        .option("--chart", "Draws the map, with altitude and curvature beneath, as .svg or .png.")
                        .chart("profile.svg", CircuitCharts::profile)
                        .onlyInFolder()
                        .option("--profile", "Draws curvature, altitude and slope over distance as .svg or .png.")
                        .out("A folder for everything: content, corners and both charts. Or one file, by its ending:"
                                + " .json for the content, .csv for the corners, .svg or .png for the map."));
    }

    @Override
    public Stations study() {
        return Documents.circuit(circuit).stations(StationSpacing.DEFAULT);
    }

    @Override
    public Report report(Stations stations) {
        return CircuitReport.of(stations);
    }
}
