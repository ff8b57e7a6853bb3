package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What an optimisation gives, and where it goes. */
final class OptimiseOutputOptions {
    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Draws lap time against top speed of all setups driven as .svg or .png.")
    String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description =
                    "A folder for everything: result, table of setups, chart, and the best setup as a document"
                            + " for --setup. Or one file: .json for the result, .csv for the table, .svg or .png for the chart.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
