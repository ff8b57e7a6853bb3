package dev.lapwright.study.stint;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.doubt.DoubtClass;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.UnknownShare;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * Study of how a stint stands on all the cars that a car may be: on each drawn car the stint is driven, with what the engine burns and
 * each compound's grip and wear in doubt as well. A drawn car's laps go straight with fuel and grip, by three laps of it: on a car as
 * its document has it that is within hundredths of a second of laps solved one by one.
 */
public final class StintDoubt implements Study<StintDoubtResult> {
    private final Car car;
    private final Track track;
    private final Conditions day;
    private final RaceLength race;
    private final FuelConsumption consumption;
    private final List<Compound> compounds;
    private final int draws;
    private final long seed;
    private final boolean assuming;

    StintDoubt(
            Car car,
            Track track,
            Conditions day,
            RaceLength race,
            FuelConsumption consumption,
            List<Compound> compounds) {
        this(car, track, day, race, consumption, compounds, Robustness.DRAWS, 1, true);
    }

    private StintDoubt(
            Car car,
            Track track,
            Conditions day,
            RaceLength race,
            FuelConsumption consumption,
            List<Compound> compounds,
            int draws,
            long seed,
            boolean assuming) {
        this.car = car;
        this.track = track;
        this.day = day;
        this.race = race;
        this.consumption = consumption;
        this.compounds = compounds;
        this.draws = draws;
        this.seed = seed;
        this.assuming = assuming;
    }

    /** The same with this many cars drawn. */
    public StintDoubt withDraws(int count) {
        int checked = Robustness.checkedDraws("draws", count);
        return new StintDoubt(car, track, day, race, consumption, compounds, checked, seed, assuming);
    }

    /** The same with other draws. */
    public StintDoubt withSeed(long other) {
        return new StintDoubt(car, track, day, race, consumption, compounds, draws, other, assuming);
    }

    /** The same by what documents state alone; fuel and compounds have no document, and are in doubt all the same. */
    public StintDoubt asStated() {
        return new StintDoubt(car, track, day, race, consumption, compounds, draws, seed, false);
    }

    @Override
    public StintDoubtResult run(StudyRun how) {
        PlausibleDays days = PlausibleDays.of(car, track, day, assuming, others());
        double[][] drawn = days.draws(draws, seed);
        List<double[]> answers = how.inParallel(
                draws,
                () -> LapSolver.on(track),
                (solver, i) -> answer(days, drawn[i], solver),
                done -> how.report(done, draws));
        List<double[]> counted = answers.stream().filter(Objects::nonNull).toList();
        List<double[]> theirs = new ArrayList<>();
        for (int i = 0; i < draws; i++) {
            if (answers.get(i) != null) {
                theirs.add(drawn[i]);
            }
        }
        List<StintDoubtResult.OnCompound> runs = new ArrayList<>();
        for (int c = 0; c < compounds.size(); c++) {
            runs.add(StintDoubtResult.OnCompound.of(
                    column(counted, 3 * c), column(counted, 3 * c + 1), column(counted, 3 * c + 2)));
        }
        boolean enough = counted.size() >= Robustness.FEWEST_DRAWS;
        int rivals = compounds.size();
        return new StintDoubtResult(
                draws,
                counted.size(),
                seed,
                days.unknowns(),
                runs,
                enough ? shares(days, theirs, column(counted, 0)) : List.of(),
                enough && rivals > 1 ? shares(days, theirs, column(counted, 3 * (rivals - 1) + 2)) : List.of(),
                enough ? UnknownShare.least(days.unknowns(), counted.size()) : 1);
    }

    private static List<UnknownShare> shares(PlausibleDays days, List<double[]> drawn, double[] answers) {
        return UnknownShare.told(days.unknowns(), drawn.toArray(new double[0][]), answers);
    }

    private static double[] column(List<double[]> rows, int place) {
        return rows.stream().mapToDouble(row -> row[place]).toArray();
    }

    private List<Unknown> others() {
        List<Unknown> unknowns = new ArrayList<>();
        unknowns.add(DoubtClass.CONSUMPTION.unknown(""));
        for (Compound compound : compounds) {
            unknowns.add(DoubtClass.COMPOUND_GRIP.unknown(compound.name()));
            unknowns.add(DoubtClass.WEAR.unknown(compound.name()));
        }
        return unknowns;
    }

    /** Of each compound on one drawn car: fuel that it needs, kg; laps short of the flag on what is set; time over the first, s. Null without a lap. */
    private double[] answer(PlausibleDays days, double[] draw, LapSolver plain) {
        double[] others = days.others(draw);
        try {
            LapSolver solver = days.isRoadInDoubt() ? LapSolver.on(days.road(draw)) : plain;
            StintCourse course =
                    new StintCourse(race, law(days, draw, solver, DoubtClass.CONSUMPTION.factor(others[0])));
            List<StintResult.Run> needed = new ArrayList<>();
            double fuel = 0;
            for (int c = 0; c < compounds.size(); c++) {
                needed.add(course.settled(worn(compounds.get(c), others[1 + 2 * c], others[2 + 2 * c])));
                fuel = Math.max(fuel, needed.get(c).fuelNeeded());
            }
            double set = car.value(Quantity.FUEL_MASS);
            StintResult.Run first = course.run(needed.get(0).compound(), fuel);
            double[] answer = new double[3 * compounds.size()];
            for (int c = 0; c < compounds.size(); c++) {
                StintResult.Run least = needed.get(c);
                StintResult.SetFuel onSet = StintResult.SetFuel.of(set, course.run(least.compound(), set), least);
                StintResult.Run run = course.run(least.compound(), fuel);
                int common = Math.min(first.laps().size(), run.laps().size());
                answer[3 * c] = least.fuelNeeded();
                answer[3 * c + 1] = onSet.laps() - onSet.lapsOfFuel();
                answer[3 * c + 2] = run.timeAfter(common) - first.timeAfter(common);
            }
            return answer;
        } catch (NoLapException | InvalidValueException none) {
            return null;
        }
    }

    /** Wear keeps within what a compound may have. */
    private static Compound worn(Compound compound, double grip, double wear) {
        double faster = DoubtClass.WEAR.factor(wear);
        return new Compound(
                compound.name(),
                compound.grip() * DoubtClass.COMPOUND_GRIP.factor(grip),
                compound.wear() * faster,
                compound.cliffLap(),
                compound.cliffWear() * faster);
    }

    private StintCourse.Law law(PlausibleDays days, double[] draw, LapSolver solver, double thirst) {
        double grip = compounds.get(0).grip();
        double fuel = car.value(Quantity.FUEL_MASS);
        return StintCourse.straight((kg, held) -> taken(days, draw, solver, kg, held, thirst), fuel, grip);
    }

    private StintCourse.Taken taken(
            PlausibleDays days, double[] draw, LapSolver solver, double fuel, double grip, double thirst) {
        Car set = days.car(Stint.set(car, fuel, grip), draw);
        Lap lap = solver.solve(Vehicle.of(set, days.day(day, draw)));
        return new StintCourse.Taken(
                lap.time(), thirst * StintResult.FuelUse.of(lap, consumption).fuel());
    }
}
