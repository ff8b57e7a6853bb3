package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a study of gearing gives, and where it goes. */
final class GearingOutputOptions {
    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description =
                    "A folder for everything: result, table of gearings, shifts, and force in each gear over speed."
                            + " Or one file: .json for the result, .csv for the table of gearings.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
