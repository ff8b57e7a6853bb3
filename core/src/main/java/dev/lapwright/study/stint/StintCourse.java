package dev.lapwright.study.stint;

import dev.lapwright.car.Quantity;
import java.util.ArrayList;
import java.util.List;

/** Course of a stint lap by lap: fuel burns and tyres wear, each lap as a law has it. */
final class StintCourse {
    /** Fuel on board is settled to this, kg. */
    private static final double SETTLED = 1e-4;

    private static final int MOST_PASSES = 30;

    /** Steps by which a law that goes straight is known, kg and share. */
    private static final double STEP_KG = 20;

    private static final double STEP_GRIP = 0.02;

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

    /**
     * A law that goes straight with fuel and grip from some on, by three laps of another.
     *
     * @param fuel kg
     */
    static Law straight(Law law, double fuel, double grip) {
        double step = fuel + STEP_KG > Quantity.FUEL_MASS.max() ? -STEP_KG : STEP_KG;
        Taken here = law.lap(fuel, grip);
        Taken heavier = law.lap(fuel + step, grip);
        Taken grippier = law.lap(fuel, grip - STEP_GRIP);
        return (kg, held) -> {
            double byFuel = (kg - fuel) / step;
            double byGrip = (grip - held) / STEP_GRIP;
            return new Taken(
                    here.time() + byFuel * (heavier.time() - here.time()) + byGrip * (grippier.time() - here.time()),
                    here.fuel() + byFuel * (heavier.fuel() - here.fuel()) + byGrip * (grippier.fuel() - here.fuel()));
        };
    }

    /** The run that begins with the fuel that it needs. */
    StintResult.Run settled(Compound compound) {
        return settled(compound, 0, 0);
    }

    /** The same, sought from what it needs by a law that is nearly this one. */
    StintResult.Run settled(Compound compound, Law near) {
        StintCourse course = new StintCourse(race, near);
        StintResult.Run about = course.settled(compound);
        StintResult.Run more = course.run(compound, about.fuelNeeded() + 1);
        // A kilogram may cost a lap of the race: then it tells nothing of the laps that are driven in both.
        boolean comparable = more.laps().size() == about.laps().size();
        return settled(compound, about.fuelNeeded(), comparable ? more.fuelNeeded() - about.fuelNeeded() : 0);
    }

    /** @param perKg by how much more is needed if a kilogram more is carried, below 1 */
    private StintResult.Run settled(Compound compound, double start, double perKg) {
        double fuel = start;
        StintResult.Run run = run(compound, fuel);
        for (int pass = 0; pass < MOST_PASSES && Math.abs(run.fuelNeeded() - fuel) >= SETTLED; pass++) {
            fuel += (run.fuelNeeded() - fuel) / (1 - perKg);
            StintResult.Run next = run(compound, fuel);
            // A timed race on the brink of another lap may go to and fro between the two: then the longer one
            // counts.
            boolean brink = pass >= MOST_PASSES / 2 && next.fuelNeeded() > run.fuelNeeded();
            run = next;
            if (brink) {
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
