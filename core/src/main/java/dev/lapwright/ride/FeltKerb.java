package dev.lapwright.ride;

import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** The mean height of a kerb over the contact patch. */
final class FeltKerb implements RoadProfile {
    /** Time after the kerb in which the car still answers to it, s. */
    private static final double SETTLING = 0.5;

    private final Kerb kerb;
    private final double patch;

    FeltKerb(Kerb kerb, double patch) {
        this.kerb = kerb;
        this.patch = patch;
    }

    @Override
    public double length() {
        return kerb.length() + patch;
    }

    // The patch reaches from distance - patch to distance, measured from the kerb's beginning.
    @Override
    public double height(double distance) {
        return (kerb.area(distance) - kerb.area(distance - patch)) / patch;
    }

    @Override
    public double slope(double distance) {
        return (kerb.at(distance) - kerb.at(distance - patch)) / patch;
    }

    @Override
    public double[] joints() {
        double pitch = kerb.length() / kerb.teeth();
        return IntStream.range(0, kerb.teeth())
                .boxed()
                .flatMapToDouble(tooth -> DoubleStream.of(kerb.shape().joints()).map(joint -> (tooth + joint) * pitch))
                .flatMap(joint -> DoubleStream.of(joint, joint + patch))
                .sorted()
                .distinct()
                .toArray();
    }

    @Override
    public double settling() {
        return SETTLING;
    }
}
