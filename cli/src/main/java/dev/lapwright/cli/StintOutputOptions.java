package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What the study gives, and where it goes. */
final class StintOutputOptions {
    @Option(names = "--chart", paramLabel = "FILE", description = "Draws the lap times as .svg or .png.")
    String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description =
                    "A folder for everything: result, table and chart. Or one file, by its ending: .json for the result, .csv for"
                            + " the table of laps, .svg or .png for the chart.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
