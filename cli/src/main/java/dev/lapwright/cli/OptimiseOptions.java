package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** What is searched, for what, and how. */
final class OptimiseOptions {
    @Option(
            names = "--over",
            paramLabel = "NAMES",
            split = ",",
            description =
                    "Adjustments to search: rear-wing,rake,…. Without it all of the car's but those of fuel, mass,"
                            + " power, compound, tyre pressure, brake balance, toe and overrun locking, of which a lap time"
                            + " says too little.")
    List<String> over = new ArrayList<>();

    @Option(
            names = "--circuit",
            paramLabel = "NAME=WEIGHT",
            completionCandidates = DemoNames.Circuits.class,
            description = "Another circuit that the setup is to serve, and how much a lap of it counts beside one of"
                    + " CIRCUIT, which counts 1; may be repeated.")
    List<String> circuits = new ArrayList<>();

    @Option(
            names = "--range",
            paramLabel = "NAME=VALUES",
            description = "Several days that the setup is to serve: one of the conditions and its values, as in"
                    + " conditions.airTempC=5,35; may be repeated, every combination is then a day.")
    List<String> ranges = new ArrayList<>();

    @Option(
            names = "--worst",
            description = "With --range: makes the least gain on any of the days as large as it can be, not the mean.")
    boolean worst;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Seed of the random numbers of the search between the steps; 1 if left out.")
    Long seed;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "How many laps are driven at the same time; one for each processor core if left out.")
    Integer threads;
}
