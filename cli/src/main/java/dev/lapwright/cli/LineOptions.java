package dev.lapwright.cli;

import picocli.CommandLine.Option;

/** Which line is driven. */
final class LineOptions extends LineRoomOptions {
    static final String REFRESH = "refresh";

    @Option(
            names = "--line",
            paramLabel = "LINE",
            completionCandidates = LineWords.class,
            description =
                    "middle, the circuit's own path, driven if left out; smoothest, the least bending; fastest, the"
                            + " least time for the car as set up above; or a FILE that 'lapwright line' wrote. All laps are driven"
                            + " on this one line. With refresh each car drives the fastest line found anew for itself,"
                            + " which takes some seconds a lap.")
    String line;
}
