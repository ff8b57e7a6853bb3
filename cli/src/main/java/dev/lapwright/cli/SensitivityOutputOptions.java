package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a study of sensitivities gives, and where it goes. */
final class SensitivityOutputOptions {
    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Draws what each adjustment is worth as .svg or .png.")
    String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description =
                    "A folder for everything: result, table and chart. Or one file: .json for the result, .csv for"
                            + " the table, .svg or .png for the chart.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
