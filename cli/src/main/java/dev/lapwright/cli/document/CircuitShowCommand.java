package dev.lapwright.cli.document;

import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.cli.output.ResultFiles;
import dev.lapwright.documents.Documents;
import dev.lapwright.report.JsonLayout;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A circuit's corners and totals, its map and profile. */
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
public final class CircuitShowCommand implements Callable<Integer> {
    private final Console console;

    @Parameters(
            index = "0",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "The circuit: a file, or the name of a demo.")
    private String circuit;

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final Output output = new Output();

    @Mixin
    public HelpOption help;

    public static final class Output {
        @Option(
                names = "--chart",
                paramLabel = "FILE",
                description = "Draws the map, with altitude and curvature beneath, as .svg or .png.")
        String chart;

        @Option(
                names = "--profile",
                paramLabel = "FILE",
                description = "Draws curvature, altitude and slope over distance as .svg or .png.")
        String profile;

        @Option(
                names = "--out",
                paramLabel = "FOLDER|FILE",
                description = "A folder for everything: content, corners and both charts. Or one file, by its ending:"
                        + " .json for the content, .csv for the corners, .svg or .png for the map.")
        String out;

        @Option(names = "--json", description = "Prints the content for machines, as JSON.")
        boolean json;

        @Option(names = "--force", description = "Lets existing files be overwritten.")
        boolean force;
    }

    public CircuitShowCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<CircuitSheet> files = files();
        CircuitSheet sheet = new CircuitSheet(Documents.circuit(circuit));
        files.write(sheet);
        if (output.json) {
            console.text(JsonLayout.text(sheet.tree()));
        } else {
            sheet.print(console);
        }
        files.report(console, output.json);
        return ExitCode.DONE;
    }

    /** Plans and checks all files before the circuit is read. */
    private ResultFiles<CircuitSheet> files() {
        ResultFiles<CircuitSheet> files = new ResultFiles<>(output.force);
        if (output.chart != null) {
            String chart = Outputs.checkEnding("--chart", output.chart, ".svg", ".png");
            files.picture(chart, sheet -> sheet.map(chart));
        }
        if (output.profile != null) {
            String profile = Outputs.checkEnding("--profile", output.profile, ".svg", ".png");
            files.picture(profile, sheet -> sheet.profile(profile));
        }
        if (output.out != null) {
            out(files, output.out);
        }
        return files;
    }

    private static void out(ResultFiles<CircuitSheet> files, String out) {
        if (Outputs.isNamed(out, ".json")) {
            files.text(out, sheet -> JsonLayout.text(sheet.tree()));
        } else if (Outputs.isNamed(out, ".csv")) {
            files.text(out, CircuitSheet::cornersCsv);
        } else if (Outputs.isNamed(out, ".svg") || Outputs.isNamed(out, ".png")) {
            files.picture(out, sheet -> sheet.map(out));
        } else {
            Outputs.checkFolder("--out", out, ".json", ".csv", ".svg", ".png");
            files.textIn(out, "circuit.json", sheet -> JsonLayout.text(sheet.tree()));
            files.textIn(out, "corners.csv", CircuitSheet::cornersCsv);
            files.pictureIn(out, "map.svg", sheet -> sheet.map("map.svg"));
            files.pictureIn(out, "profile.svg", sheet -> sheet.profile("profile.svg"));
        }
    }
}
