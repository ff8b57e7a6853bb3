package dev.lapwright.cli;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RoadClass;
import dev.lapwright.study.ride.RoadInput;
import picocli.CommandLine.Option;

/** What a wheel is driven over, and how fast. */
final class RideOptions {
    private static final double MM_PER_M = 1000;

    @Option(names = "--speed-kmh", paramLabel = "V", description = "Speed, km/h; 100 if left out.")
    Double speedKmh;

    @Option(
            names = "--corner",
            paramLabel = "CORNER",
            description = "Takes the speed from the lap in this corner of CIRCUIT: T3, 3, or its name.")
    String corner;

    @Option(
            names = "--at",
            paramLabel = "PLACE",
            description = "Where in that corner: entry, slowest (if left out) or exit.")
    String at;

    @Option(
            names = "--kerb",
            paramLabel = "SHAPE",
            description = "Section of the kerb along the wheel's way: half-sine (if left out), ramp or sawtooth.")
    String kerb = Kerb.Shape.HALF_SINE.label();

    @Option(names = "--kerb-height-mm", paramLabel = "H", description = "Height of the kerb, mm; 40 if left out.")
    double kerbHeightMm = 40;

    @Option(
            names = "--kerb-length-m",
            paramLabel = "L",
            description = "Length of the kerb along the wheel's way, m; 1 if left out.")
    double kerbLengthM = 1;

    @Option(
            names = "--kerb-teeth",
            paramLabel = "N",
            description = "How many of the shape stand in a row on that length; 1 if left out.")
    int kerbTeeth = 1;

    @Option(
            names = "--road",
            paramLabel = "CLASS",
            description = "Roughness of the road by ISO 8608, A (smooth, if left out) to H.")
    String road = "A";

    @Option(names = "--seed", paramLabel = "N", description = "Which road of that class; 1 if left out.")
    long seed = 1;

    @Option(
            names = "--contact-patch-mm",
            paramLabel = "A",
            description = "Length of the tyre's contact patch, over which it bridges the road, mm; 100 if left out.")
    double contactPatchMm = 100;

    @Option(
            names = "--best-for",
            paramLabel = "MEASURE",
            description = "What the map of fast bump and rebound shows and calls best: the least load (variation of the"
                    + " contact load, if left out), off-ground (time without contact) or body (peak acceleration).")
    String bestFor = RideMeasure.LOAD.word();

    RideMeasure measure() {
        return RideMeasure.named(bestFor);
    }

    RoadInput choices() {
        double height = Check.inRange("--kerb-height-mm", kerbHeightMm, 0, 500);
        double length = Check.inRange("--kerb-length-m", kerbLengthM, 0.01, 100);
        double patch = Check.inRange("--contact-patch-mm", contactPatchMm, 5, 1000);
        Kerb section = new Kerb(Kerb.Shape.named(kerb), height / MM_PER_M, length, kerbTeeth);
        return new RoadInput(section, RoadClass.named(road), seed, patch / MM_PER_M);
    }

    /** Refuses what contradicts itself. */
    void check(String circuit) {
        if (corner != null && circuit == null) {
            throw new InvalidValueException(
                    "--corner " + corner, "there is no circuit to drive", "name a circuit behind the car");
        }
        if (corner != null && speedKmh != null) {
            throw new InvalidValueException(
                    "--corner " + corner, "the speed is already given by --speed-kmh", "keep one of the two");
        }
        if (corner == null && circuit != null) {
            throw new InvalidValueException(
                    circuit, "a circuit only gives the speed in a corner", "add --corner, or leave the circuit out");
        }
        if (corner == null && at != null) {
            throw new InvalidValueException("--at " + at, "there is no corner", "add --corner");
        }
    }
}
