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
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Study of how a stint stands on all the cars that a car may be: on each drawn car the stint is driven, with what the engine burns and
 * each compound's grip and wear in doubt as well. A drawn car's laps go straight with fuel and grip, by three laps of it: on a car as
 * its document has it that is within hundredths of a second of laps solved one by one.
 */
public final class StintDoubt implements Study<StintDoubtResult> {
    /** Told of each compound on a drawn car. */
    private static final int NUMBERS = 3;

    private static final double[] NO_LAP = {};

    private final Driven stint;
    private final int draws;
    private final long seed;
    private final boolean assuming;
    private final StudyMemory memory;

    /** The stint on the car as its document has it. */
    record Driven(
            Car car,
            Track track,
            Conditions day,
            RaceLength race,
            FuelConsumption consumption,
            List<Compound> compounds) {}

    StintDoubt(Driven stint) {
        this(stint, Robustness.DRAWS, 1, true, StudyMemory.NONE);
    }

    private StintDoubt(Driven stint, int draws, long seed, boolean assuming, StudyMemory memory) {
        this.stint = stint;
        this.draws = draws;
        this.seed = seed;
        this.assuming = assuming;
        this.memory = memory;
    }

    /** The same with this many cars drawn. */
    public StintDoubt withDraws(int count) {
        return new StintDoubt(stint, Robustness.checkedDraws("draws", count), seed, assuming, memory);
    }

    /** The same with other draws. */
    public StintDoubt withSeed(long other) {
        return new StintDoubt(stint, draws, other, assuming, memory);
    }

    /** The same by what documents state alone; fuel and compounds have no document, and are in doubt all the same. */
    public StintDoubt asStated() {
        return new StintDoubt(stint, draws, seed, false, memory);
    }

    /** The same, going on from what a memory recalls of these very draws and this stint, and keeping there what it drives. */
    public StintDoubt remembering(StudyMemory drives) {
        return new StintDoubt(stint, draws, seed, assuming, drives);
    }

    @Override
    public StintDoubtResult run(StudyRun how) {
        List<Compound> compounds = stint.compounds();
        PlausibleDays days = PlausibleDays.of(stint.car(), stint.track(), stint.day(), assuming, others());
        double[][] drawn = days.draws(draws, seed);
        double[][] answers = answers(days, drawn, how);
        List<double[]> counted = new ArrayList<>();
        List<double[]> theirs = new ArrayList<>();
        for (int i = 0; i < draws; i++) {
            if (answers[i].length > 0) {
                counted.add(answers[i]);
                theirs.add(drawn[i]);
            }
        }
        List<StintDoubtResult.OnCompound> runs = new ArrayList<>();
        for (int c = 0; c < compounds.size(); c++) {
            runs.add(StintDoubtResult.OnCompound.of(
                    column(counted, NUMBERS * c), column(counted, NUMBERS * c + 1), column(counted, NUMBERS * c + 2)));
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
                enough && rivals > 1 ? shares(days, theirs, column(counted, NUMBERS * (rivals - 1) + 2)) : List.of(),
                enough ? UnknownShare.least(days.unknowns(), counted.size()) : 1);
    }

    /** Of each draw, as {@link #answer} has it: what is remembered, and what is driven for the rest. */
    private double[][] answers(PlausibleDays days, double[][] drawn, StudyRun how) {
        double[][] answers = new double[draws][];
        int numbers = NUMBERS * stint.compounds().size();
        memory.recallCounted(draws, (i, kept, words) -> {
            if (kept.length == numbers || kept.length == 0) {
                answers[i] = kept;
            }
        });
        int[] missing =
                IntStream.range(0, draws).filter(i -> answers[i] == null).toArray();
        how.allInParallel(
                missing.length,
                () -> LapSolver.on(stint.track()),
                (solver, k) -> {
                    int i = missing[k];
                    answers[i] = answer(days, drawn[i], solver);
                    memory.keep(Integer.toString(i), answers[i], "");
                    return null;
                },
                done -> how.report(draws - missing.length + done, draws));
        return answers;
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
        for (Compound compound : stint.compounds()) {
            unknowns.add(DoubtClass.COMPOUND_GRIP.unknown(compound.name()));
            unknowns.add(DoubtClass.WEAR.unknown(compound.name()));
        }
        return unknowns;
    }

    /** Of each compound on one drawn car: fuel that it needs, kg; laps short of the flag on what is set; time over the first, s. Nothing without a lap. */
    private double[] answer(PlausibleDays days, double[] draw, LapSolver plain) {
        double[] others = days.others(draw);
        List<Compound> compounds = stint.compounds();
        try {
            LapSolver solver = days.isRoadInDoubt() ? LapSolver.on(days.road(draw)) : plain;
            StintCourse course =
                    new StintCourse(stint.race(), law(days, draw, solver, DoubtClass.CONSUMPTION.factor(others[0])));
            List<StintResult.Run> needed = new ArrayList<>();
            double fuel = 0;
            for (int c = 0; c < compounds.size(); c++) {
                needed.add(course.settled(worn(compounds.get(c), others[1 + 2 * c], others[2 + 2 * c])));
                fuel = Math.max(fuel, needed.get(c).fuelNeeded());
            }
            double set = stint.car().value(Quantity.FUEL_MASS);
            StintResult.Run first = course.run(needed.get(0).compound(), fuel);
            double[] answer = new double[NUMBERS * compounds.size()];
            for (int c = 0; c < compounds.size(); c++) {
                StintResult.Run least = needed.get(c);
                StintResult.SetFuel onSet = StintResult.SetFuel.of(set, course.run(least.compound(), set), least);
                StintResult.Run run = course.run(least.compound(), fuel);
                int common = Math.min(first.laps().size(), run.laps().size());
                answer[NUMBERS * c] = least.fuelNeeded();
                answer[NUMBERS * c + 1] = onSet.laps() - onSet.lapsOfFuel();
                answer[NUMBERS * c + 2] = run.timeAfter(common) - first.timeAfter(common);
            }
            return answer;
        } catch (NoLapException | InvalidValueException none) {
            return NO_LAP;
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
        double grip = stint.compounds().get(0).grip();
        double fuel = stint.car().value(Quantity.FUEL_MASS);
        return StintCourse.straight((kg, held) -> taken(days, draw, solver, kg, held, thirst), fuel, grip);
    }

    private StintCourse.Taken taken(
            PlausibleDays days, double[] draw, LapSolver solver, double fuel, double grip, double thirst) {
        Car set = days.car(Stint.set(stint.car(), fuel, grip), draw);
        Lap lap = solver.solve(Vehicle.of(set, days.day(stint.day(), draw)));
        return new StintCourse.Taken(
                lap.time(),
                thirst * StintResult.FuelUse.of(lap, stint.consumption()).fuel());
    }
}
