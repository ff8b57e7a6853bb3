package dev.lapwright.ride;

/** Waves without end, the first seconds of which do not count. */
record SineRoad(double amplitude, double waveLength, double length, double runUpLength) implements RoadProfile {
    /** Of an angular frequency (rad/s) when driven at 10 m/s. */
    static SineRoad at10(double amplitude, double omega, double seconds, double runUpSeconds) {
        return new SineRoad(amplitude, 2 * Math.PI * 10 / omega, 10 * seconds, 10 * runUpSeconds);
    }

    @Override
    public double height(double distance) {
        return amplitude * Math.sin(2 * Math.PI * distance / waveLength);
    }

    @Override
    public double slope(double distance) {
        double k = 2 * Math.PI / waveLength;
        return amplitude * k * Math.cos(k * distance);
    }

    @Override
    public double[] joints() {
        return new double[0];
    }

    @Override
    public double runUp(double speed) {
        return runUpLength;
    }
}
