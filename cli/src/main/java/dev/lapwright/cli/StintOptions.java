package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** How far, on what, and what the engine drinks. */
final class StintOptions {
    @Option(names = "--minutes", paramLabel = "M", description = "A timed race: the lap under way is finished.")
    Double minutes;

    @Option(names = "--laps", paramLabel = "N", description = "A counted race.")
    Integer laps;

    @Option(
            names = "--formation-laps",
            paramLabel = "N",
            defaultValue = "1",
            description = "Laps before the start. Default: 1.")
    int formationLaps;

    @Option(
            names = "--formation-percent",
            paramLabel = "P",
            defaultValue = "60",
            description = "Fuel of a formation lap, in percent of a racing lap. Default: 60 (common practice, no"
                    + " source).")
    double formationPercent;

    @Option(
            names = "--reserve-laps",
            paramLabel = "N",
            defaultValue = "1",
            description = "Racing laps for which fuel is left at the flag. Default: 1.")
    double reserveLaps;

    @Option(
            names = "--consumption",
            paramLabel = "G_PER_KWH",
            defaultValue = "304",
            description = "Specific fuel consumption at full load, g/kWh, or a map of it over engine speed:"
                    + " 3000=310,6000=290,8000=320. Default: 304 (0.5 lb/hp h, racing engine without a turbocharger).")
    String consumption;

    @Option(
            names = "--density-kg-per-l",
            paramLabel = "D",
            defaultValue = "0.745",
            description = "Density of the fuel. Default: 0.745 (EN 228 petrol: 0.720 to 0.775).")
    double density;

    @Option(
            names = "--compound",
            paramLabel = "NAME:GRIP:WEAR",
            description = "A tyre: grip when new, 1 for that of the car's document, and the percent of it lost on each"
                    + " lap, as in soft:1.01:0.2; ':LAPS:WEAR' behind adds wear after so many laps. May be repeated, to"
                    + " compare. Without it: tyre:1:0.1 (common practice, no source).")
    List<String> compounds = new ArrayList<>();
}
