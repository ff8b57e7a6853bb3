package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What the study gives, and where it goes. */
final class PressuresOutputOptions {
    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description = "A folder for everything: result and tables. Or one file: .json for the result, .csv for"
                    + " the table of tyres.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
