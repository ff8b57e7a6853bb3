package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What the timing screen can show, and how many laps are driven at once. */
final class SensitivityOptions {
    @Option(
            names = "--scatter-s",
            paramLabel = "S",
            description = "Standard deviation of the driver's lap times in one setup, s; 0.3 if left out.")
    double scatterS = 0.3;

    @Option(
            names = "--laps",
            paramLabel = "N",
            description = "Laps there are to try something, half of them with each of two setups; 30 if left out.")
    int laps = 30;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "How many laps are computed at the same time; one for each processor core if left out.")
    Integer threads;
}
