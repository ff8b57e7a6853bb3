package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a sweep gives, and where it goes. */
final class SweepOutputOptions {
    @Option(names = "--chart", paramLabel = "FILE", description = "Draws the lap time over the sweep as .svg or .png.")
    String chart;

    @Option(
            names = "--trade-off",
            paramLabel = "FILE",
            description = "Draws top speed against speed in corners as .svg or .png.")
    String tradeOff;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description = "A folder for everything: result, table and charts. Or one file: .json for the result,"
                    + " .csv for the table, .svg or .png for the chart of the lap time.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
