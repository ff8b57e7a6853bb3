package dev.lapwright.lap;

/**
 * Model of what a car's tyres allow at a place, from which a lap is solved: highest steady speed, greatest acceleration under drive and
 * under brakes. A solver moves {@link FourWheels} to the place and asks. What it does not know it answers with NaN: there the lap's own model
 * stands in, and the place is marked unchecked. Mutable scratch of one solver; must allocate nothing where it answers.
 *
 * <p>Answers should be smooth in speed and place: a lap is as smooth as they are. A solver makes a new one for each lap.
 */
public interface StationLimits {
    /**
     * Highest speed that the car holds at the place, at most {@code cap}, as far as grip goes.
     *
     * @param cap m/s
     * @param guess that of the lap's own model, m/s
     * @return m/s, NaN where unknown
     */
    double highest(double cap, double guess);

    /**
     * Greatest dv/dt under drive.
     *
     * @param speed m/s
     * @param engine most that the engine puts to the wheels, N
     * @param massFactor of rotating parts in the gear, which the engine feels and tyres do not
     * @return m/s², NaN where unknown
     */
    double drive(double speed, double engine, double massFactor);

    /**
     * Lowest dv/dt under brakes.
     *
     * @param speed m/s
     * @param engineDrag of the engine at the wheels, N, not negative
     * @param massFactor of rotating parts in the gear
     * @return m/s², negative where it slows, NaN where unknown
     */
    double brake(double speed, double engineDrag, double massFactor);

    /** Force of engine, N, at the last answer of {@link #drive}. */
    double engineForce();

    /** What limited the last answer. */
    Limit limit();

    /** Maker of a model for one car: a solver owns what it makes. */
    @FunctionalInterface
    interface Maker {
        /** A model that reads these wheels, which the solver moves. */
        StationLimits on(FourWheels wheels);
    }
}
