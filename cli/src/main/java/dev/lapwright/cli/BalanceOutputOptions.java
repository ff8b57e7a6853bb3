package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What the balance gives, and where it goes. */
final class BalanceOutputOptions {
    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Draws the balance of each corner, phase by phase, as .svg or .png.")
    String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description = "A folder for everything: result, tables and chart. Or one file: .json for the result, .csv"
                    + " for the table of phases, .svg or .png for the chart.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
