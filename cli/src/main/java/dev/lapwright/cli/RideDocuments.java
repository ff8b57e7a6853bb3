package dev.lapwright.cli;

import picocli.CommandLine.Parameters;

/** A car and, for the speed in one of its corners, a circuit. */
final class RideDocuments {
    @Parameters(
            index = "0",
            paramLabel = "CAR",
            completionCandidates = DemoNames.Cars.class,
            description = "Car: a file, or the name of a demo (see 'lapwright demo').")
    String car;

    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "With --corner: the circuit or open run that gives the speed, a file or the name of a demo.")
    String circuit;
}
