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
        check();
        return new Laps(how).result();
    }

    private void check() {
        if (!track.isClosed()) {
            throw new InvalidValueException(track.name(), "it is an open run, no circuit", "choose a closed circuit");
        }
        if (compounds.isEmpty()) {
            throw new InvalidValueException("compounds", "there is none", "give one at least");
        }
    }

    /** A car with so much fuel (kg) on tyres of so much grip over those of its document. */
    static Car set(Car car, double fuel, double grip) {
        return car.with(Quantity.FUEL_MASS, fuel)
                .with(Quantity.COMPOUND_GRIP, car.value(Quantity.COMPOUND_GRIP) * grip);
    }

    /**
     * How what it finds stands on all the cars that this one may be.
     *
     * @throws InvalidValueException if the track is an open run, or there is no compound
     */
    public StintDoubt doubted() {
        check();
        return new StintDoubt(new StintDoubt.Driven(car, track, conditions, race, consumption, compounds));
    }

    /** The laps of one run of the study, all on one solver. */
    private final class Laps {
        private final LapSolver solver = LapSolver.on(track);
        private final StudyRun how;
        private final StintCourse course = new StintCourse(race, this::taken);

        Laps(StudyRun how) {
            this.how = how;
        }

        private StintCourse.Taken taken(double fuel, double grip) {
            Lap lap = lap(fuel, grip);
            return new StintCourse.Taken(
                    lap.time(), StintResult.FuelUse.of(lap, consumption).fuel());
        }

        StintResult result() {
            double fuel = 0;
            double set = car.value(Quantity.FUEL_MASS);
            // The fuel that is needed is all but found by a few laps; what is told is driven lap by lap.
            StintCourse.Law near =
                    StintCourse.straight(this::taken, set, compounds.get(0).grip());
            List<StintResult.Run> needed = new ArrayList<>();
            for (int i = 0; i < compounds.size(); i++) {
                how.report(i, compounds.size());
                needed.add(course.settled(compounds.get(i), near));
                fuel = Math.max(fuel, needed.get(i).fuelNeeded());
            }
            List<StintResult.Run> runs = new ArrayList<>();
            for (StintResult.Run least : needed) {
                runs.add(least.fuelNeeded() == fuel ? least : course.run(least.compound(), fuel));
            }
            List<StintResult.SetFuel> onSet = new ArrayList<>();
            for (StintResult.Run least : needed) {
                onSet.add(StintResult.SetFuel.of(set, course.run(least.compound(), set), least));
            }
            StintResult.RunLap first = runs.get(0).laps().get(0);
            double onBoard = first.fuelAtStart() - first.fuelUsed() / 2;
            Lap lap = lap(onBoard, first.grip());
            double kg = lap(onBoard + 1, first.grip()).time() - lap.time();
            double grip = lap(onBoard, 1.01 * first.grip()).time() - lap.time();
            return new StintResult(
                    lap, StintResult.FuelUse.of(lap, consumption), consumption, race, runs, fuel, kg, grip, onSet);
        }

        private Lap lap(double fuel, double grip) {
            how.stopIfWanted();
            return solver.solve(Vehicle.of(set(car, fuel, grip), conditions));
        }
    }
}
