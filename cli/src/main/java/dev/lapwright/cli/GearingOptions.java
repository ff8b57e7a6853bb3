package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Which gearings are tried, and in which situations. */
final class GearingOptions {
    @Option(
            names = "--final-drives",
            paramLabel = "VALUES",
            description =
                    "Final drives to try, as the car's own adjustment counts them, in ratios or in teeth: first:last:step,"
                            + " or a list v1,v2,…. first:last takes what that adjustment allows between the two. Without this and --ratio: all that can be fitted.")
    String finalDrives;

    @Option(
            names = "--ratio",
            paramLabel = "GEAR=VALUES",
            description = "Ratios to try in one gear, the others as they are: 6=0.95,1,1.05; may be repeated.")
    List<String> ratios = new ArrayList<>();

    @Option(
            names = "--tow-percent",
            paramLabel = "P",
            description = "Also in the wake of another car that takes away this much of the drag, all the way round.")
    Double towPercent;

    @Option(
            names = "--head-wind-kmh",
            paramLabel = "V",
            description =
                    "Also with a steady wind that meets the car head on where it is fastest; below zero from behind."
                            + " It takes the place of the wind of the day.")
    Double headWindKmh;

    @Option(
            names = "--before-braking-s",
            paramLabel = "T",
            description = "An upshift this short a time before braking is pointed out; 1 s if left out.")
    double beforeBrakingS = 1;
}
