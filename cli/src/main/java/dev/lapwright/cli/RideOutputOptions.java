package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a study of the ride gives, and where it goes. */
final class RideOutputOptions {
    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description = "A folder for everything: result, map, passes over time, and charts. Or one file: .json for"
                    + " the result, .csv for the map.")
    String out;

    @Option(
            names = "--map",
            paramLabel = "FILE",
            description = "Chart of the front axle's map of fast bump and rebound, .svg or .png.")
    String map;

    @Option(
            names = "--pass",
            paramLabel = "FILE",
            description = "Chart of the front wheel's pass over the kerb, .svg or .png.")
    String pass;

    @Option(names = "--rear", description = "These two charts of the rear axle instead.")
    boolean rear;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
