package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What a study of gearing gives, and where it goes. */
final class GearingOutputOptions {
    @Option(
            names = "--chart",
            paramLabel = "FILE",
            description = "Draws engine speed over road speed in each gear as .svg or .png.")
    String chart;

    @Option(
            names = "--traction-chart",
            paramLabel = "FILE",
            description =
                    "Draws the force of each gear against the resistance, also in the tow and the wind, as .svg or"
                            + " .png.")
    String tractionChart;

    @Option(
            names = "--out",
            paramLabel = "FOLDER|FILE",
            description =
                    "A folder for everything: result, table of gearings, shifts, force in each gear over speed, and charts."
                            + " Or one file: .json for the result, .csv for the table of gearings, .svg or .png for the"
                            + " chart of engine speed.")
    String out;

    @Option(names = "--json", description = "Prints the result for machines, as JSON.")
    boolean json;

    @Option(names = "--force", description = "Lets existing files be overwritten.")
    boolean force;
}
