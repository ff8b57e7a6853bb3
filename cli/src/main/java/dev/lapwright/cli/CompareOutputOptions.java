package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a comparison gives, and where it goes. */
final class CompareOutputOptions {
    @Option(
            names = "--trace",
            paramLabel = "FILE",
            description = "Writes the difference in time and both speeds station by station as .csv or .json.")
    String trace;

    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Draws both speeds and the difference in time over distance as .svg or .png.")
    String chart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description = "A folder for everything: result, trace and chart. Or one file, by its ending:"
                    + " .json for the result, .csv for the trace, .svg or .png for the chart.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
