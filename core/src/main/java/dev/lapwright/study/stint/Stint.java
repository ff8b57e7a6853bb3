package dev.lapwright.study.stint;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;

/**
 * Study of a stint: the fuel for a race, and its laps one by one as fuel burns and tyres wear. Each lap is solved by itself
 * with the fuel that is on board half-way and the grip of its tyres; all are flying laps driven at the limit, so neither
 * start, traffic nor saving of fuel is in them, and real use is rather less.
 */
public final class Stint implements Study<StintResult> {
    /** Fuel on board is settled to this, kg. */
    private static final double SETTLED = 1e-4;

    private static final int MOST_PASSES = 30;

    private static final List<Compound> ONE_TYRE = List.of(Compound.steady("tyre", 1, 0));

    private final Car car;
    private final Track track;
    private final Conditions conditions;
    private final RaceLength race;
    private final FuelConsumption consumption;
    private final List<Compound> compounds;

    private Stint(
            Car car,
            Track track,
            Conditions conditions,
            RaceLength race,
            FuelConsumption consumption,
            List<Compound> compounds) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        this.race = race;
        this.consumption = consumption;
        this.compounds = List.copyOf(compounds);
    }

    /**
     * A stint over a whole race with {@link FuelConsumption#RACING_ENGINE}, on a tyre that does not wear.
     *
     * @param car whose own fuel on board is judged by what the race needs
     */
    public static Stint of(Car car, Track track, Conditions conditions, RaceLength race) {
        FuelConsumption consumption = FuelConsumption.constant(FuelConsumption.RACING_ENGINE);
        return new Stint(car, track, conditions, race, consumption, ONE_TYRE);
    }

    /** The same with another engine's consumption. */
    public Stint withConsumption(FuelConsumption other) {
        return new Stint(car, track, conditions, race, other, compounds);
    }

    /** The same once on each of these compounds, at least one; all begin with the fuel that the thirstiest needs. */
    public Stint onCompounds(List<Compound> others) {
        return new Stint(car, track, conditions, race, consumption, others);
    }

    /** @throws InvalidValueException if the track is an open run, or there is no compound */
    @Override
    public StintResult run(StudyRun how) {
        if (!track.isClosed()) {
            throw new InvalidValueException(track.name(), "it is an open run, no circuit", "choose a closed circuit");
        }
        if (compounds.isEmpty()) {
            throw new InvalidValueException("compounds", "there is none", "give one at least");
        }
        return new Laps(how).result();
    }

    /** The laps of one run of the study, all on one solver. */
    private final class Laps {
        private final LapSolver solver = LapSolver.on(track);
        private final StudyRun how;

        Laps(StudyRun how) {
            this.how = how;
        }

        StintResult result() {
            double fuel = 0;
            List<StintResult.Run> needed = new ArrayList<>();
            for (int i = 0; i < compounds.size(); i++) {
                how.report(i, compounds.size());
                needed.add(settled(compounds.get(i)));
                fuel = Math.max(fuel, needed.get(i).fuelNeeded());
            }
            List<StintResult.Run> runs = new ArrayList<>();
            for (Compound compound : compounds) {
                runs.add(run(compound, fuel));
            }
            double set = car.value(Quantity.FUEL_MASS);
            List<StintResult.SetFuel> onSet = new ArrayList<>();
            for (StintResult.Run least : needed) {
                onSet.add(StintResult.SetFuel.of(set, run(least.compound(), set), least));
            }
            StintResult.RunLap first = runs.get(0).laps().get(0);
            double onBoard = first.fuelAtStart() - first.fuelUsed() / 2;
            Lap lap = lap(onBoard, first.grip());
            double kg = lap(onBoard + 1, first.grip()).time() - lap.time();
            double grip = lap(onBoard, 1.01 * first.grip()).time() - lap.time();
            return new StintResult(
                    lap, StintResult.FuelUse.of(lap, consumption), consumption, race, runs, fuel, kg, grip, onSet);
        }

        /** The run that begins with the fuel that it needs. */
        private StintResult.Run settled(Compound compound) {
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
        private StintResult.Run run(Compound compound, double fuel) {
            double perLap = StintResult.FuelUse.of(lap(fuel, compound.grip()), consumption)
                    .fuel();
            double formation = race.formationLaps() * race.formationShare() * perLap;
            double left = Math.max(0, fuel - formation);
            double time = 0;
            double used = 0;
            List<StintResult.RunLap> laps = new ArrayList<>();
            while (!race.isOver(laps.size(), time)) {
                double grip = compound.gripAfter(laps.size());
                Lap lap = lap(Math.max(0, left - perLap / 2), grip);
                perLap = StintResult.FuelUse.of(lap, consumption).fuel();
                laps.add(new StintResult.RunLap(laps.size() + 1, lap.time(), left, perLap, grip));
                left = Math.max(0, left - perLap);
                time += lap.time();
                used += perLap;
            }
            return new StintResult.Run(compound, laps, formation, used, race.reserveLaps() * used / laps.size());
        }

        private Lap lap(double fuel, double grip) {
            how.stopIfWanted();
            Car set = car.with(Quantity.FUEL_MASS, fuel)
                    .with(Quantity.COMPOUND_GRIP, car.value(Quantity.COMPOUND_GRIP) * grip);
            return solver.solve(Vehicle.of(set, conditions));
        }
    }
}
