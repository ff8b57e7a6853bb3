package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** What is varied. */
final class SweepOptions {
    @Option(
            names = "--vary",
            paramLabel = "NAME=VALUES",
            description = "What to vary: an adjustment of the car, one of its quantities, or one of the conditions;"
                    + " give it once or twice. VALUES is first:last:step, or a list v1,v2,…; one may carry a"
                    + " unit: front-pressure=24:30:1psi. The name of an adjustment alone takes its whole range.")
    List<String> vary = new ArrayList<>();

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "How many laps are driven at the same time; one for each processor core if left out.")
    Integer threads;
}
