package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a fit gives, and where it goes. */
final class FitOutputOptions {
    @Option(
            names = "--to",
            paramLabel = "FILE",
            description = "Writes the car with the fitted values as a document to a .json file; where they come from"
                    + " is told in its description.")
    String to;

    @Option(
            names = "--name",
            paramLabel = "NAME",
            description = "Name of the car in that document; the car's own if left out, so that its setups go on"
                    + " fitting it.")
    String name;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Draws logged and simulated speed with their difference as .svg or .png.")
    String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description = "A folder for everything: result, tables, chart, and the fitted car. Or one file: .json for"
                    + " the result, .csv for the table of estimates, .svg or .png for the chart.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
