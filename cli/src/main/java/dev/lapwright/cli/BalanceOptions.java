package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** What the driver says. */
final class BalanceOptions {
    @Option(
            names = "--complaint",
            paramLabel = "COMPLAINT",
            description = "What the driver complains of: understeer or oversteer, the phase of the corner (entry,"
                    + " lift-off, middle, exit) and, if it is one corner only, that corner: understeer:entry,"
                    + " oversteer:exit:T3. Gives what to turn against it.")
    String complaint;
}
