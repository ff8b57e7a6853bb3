package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** What was read off the tyres, and what is wanted. */
final class PressuresOptions {
    @Option(
            names = "--pair",
            paramLabel = "TYRE:COLD:HOT",
            description = "Gauge pressures as set cold and as read hot: FL:17psi:24psi. TYRE is FL, FR, RL, RR, front,"
                    + " rear, left, right or all; may be repeated.")
    List<String> pairs = new ArrayList<>();

    @Option(
            names = "--log",
            paramLabel = "FILE",
            description = "The same from a file of comma-separated values, a row for each tyre of each run: columns"
                    + " tyre, cold, hot and, if known, air, track, cold temp, inner, middle, outer, units in the"
                    + " headings, as in 'cold (psi)'.")
    String log;

    @Option(
            names = "--unit",
            paramLabel = "UNIT",
            defaultValue = "psi",
            description = "psi, kPa or bar: for pressures printed, and those given without a unit. Default: psi.")
    String unit;

    @Option(
            names = "--target",
            paramLabel = "TYRE:HOT",
            description = "Hot gauge pressure wanted; may be repeated. Without it: the car's ideal.")
    List<String> targets = new ArrayList<>();

    @Option(
            names = "--track-temp-c",
            paramLabel = "T",
            description = "Temperature of the track at the run, degrees Celsius. Without it: that of the air.")
    Double trackTempC;

    @Option(
            names = "--cold-temp-c",
            paramLabel = "T",
            description = "Temperature of the tyres when they were set cold. Without it: that of the air.")
    Double coldTempC;

    @Option(
            names = "--next-air-temp-c",
            paramLabel = "T",
            description = "Air temperature to set up for. Without it: as at the last run.")
    Double nextAirTempC;

    @Option(
            names = "--next-track-temp-c",
            paramLabel = "T",
            description = "Track temperature to set up for. Without it: moves with the air.")
    Double nextTrackTempC;

    @Option(
            names = "--next-cold-temp-c",
            paramLabel = "T",
            description = "Temperature of the tyres when they will be set. Without it: moves with the air.")
    Double nextColdTempC;

    @Option(
            names = "--tread",
            paramLabel = "TYRE:IN/MID/OUT",
            description = "Temperatures across a tread, degrees Celsius, inner edge first: FL:92/86/80; may be"
                    + " repeated. Says whether camber and pressure fit.")
    List<String> treads = new ArrayList<>();
}
