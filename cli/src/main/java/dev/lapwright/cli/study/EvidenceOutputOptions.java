package dev.lapwright.cli.study;

import picocli.CommandLine.Option;

/** What a look at a log gives, and where it goes. */
public final class EvidenceOutputOptions {
    @Option(names = "--chart", paramLabel = "FILE", description = "Draws every lap as .svg or .png.")
    public String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description =
                    "A folder for everything: result, laps as judged, chart. Or one file, by its ending: .json for"
                            + " the result, .csv for the laps, .svg or .png for the chart.")
    public String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    public boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    public boolean force;
}
