package dev.lapwright.study.stint;

import java.util.ArrayList;
import java.util.List;

/** Course of a stint lap by lap: fuel burns and tyres wear, each lap as a law has it. */
final class StintCourse {
    /** Fuel on board is settled to this, kg. */
    private static final double SETTLED = 1e-4;

    private static final int MOST_PASSES = 30;

    private final RaceLength race;
    private final Law law;

    /** What a lap takes by the fuel on board half-way (kg) and its tyres' grip. */
    @FunctionalInterface
    interface Law {
        Taken lap(double fuel, double grip);
    }

    /**
     * What a lap takes.
     *
     * @param time s
     * @param fuel kg
     */
    record Taken(double time, double fuel) {}

    StintCourse(RaceLength race, Law law) {
        this.race = race;
        this.law = law;
    }

    /** The run that begins with the fuel that it needs. */
    StintResult.Run settled(Compound compound) {
        StintResult.Run run = run(compound, 0);
        for (int pass = 0; pass < MOST_PASSES; pass++) {
            StintResult.Run next = run(compound, run.fuelNeeded());
            boolean settled = Math.abs(next.fuelNeeded() - run.fuelNeeded()) < SETTLED;
            // A timed race on the brink of another lap may go to and fro between the two: then the longer one
            // counts.
            boolean brink = pass >= MOST_PASSES / 2 && next.fuelNeeded() > run.fuelNeeded();
            run = next;
            if (settled || brink) {
                return run;
            }
        }
        return run;
    }

    /** A run with this fuel before the formation lap; where it is too little, the laps beyond go without any. */
    StintResult.Run run(Compound compound, double fuel) {
        double perLap = law.lap(fuel, compound.grip()).fuel();
        double formation = race.formationLaps() * race.formationShare() * perLap;
        double left = Math.max(0, fuel - formation);
        double time = 0;
        double used = 0;
        List<StintResult.RunLap> laps = new ArrayList<>();
        while (!race.isOver(laps.size(), time)) {
            double grip = compound.gripAfter(laps.size());
            Taken lap = law.lap(Math.max(0, left - perLap / 2), grip);
            perLap = lap.fuel();
            laps.add(new StintResult.RunLap(laps.size() + 1, lap.time(), left, perLap, grip));
            left = Math.max(0, left - perLap);
            time += lap.time();
            used += perLap;
        }
        return new StintResult.Run(compound, laps, formation, used, race.reserveLaps() * used / laps.size());
    }
}
