package dev.lapwright.study.plan;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Plan of many laps: cases, each a car at a circuit on a day, and a design of settings that each case drives. Laps are numbered, the cases slowest, and a lap
 * depends on its number alone: so parts of a plan may be driven anywhere, in any order, and give the same numbers.
 *
 * <pre>{@code
 * LapPlan plan = LapPlan.of(PlanDesign.grid(axes)).with(gtAtHarrowmere).with(gtAtCastelvane);
 * plan.drive(0, plan.laps(), StudyRun.onAllCores(), lap -> write(lap));
 * }</pre>
 */
public final class LapPlan {
    /** Laps that are handed on together, in memory at once. */
    private static final int BLOCK = 512;

    private final PlanDesign design;
    private final List<Case> cases;

    private LapPlan(PlanDesign design, List<Case> cases) {
        this.design = design;
        this.cases = List.copyOf(cases);
    }

    /**
     * Car at a circuit on a day.
     *
     * @param name for people
     * @param car as it stands, before the design sets it
     * @param stations of what it drives
     * @param day its conditions
     */
    public record Case(String name, Car car, Stations stations, Conditions day) {}

    /**
     * One lap of a plan.
     *
     * @param number from 0
     * @param driven the case
     * @param values in the order of the design's axes; the caller's
     * @param figures of the lap; empty if it has none
     * @param fault why it has none; empty if it has one
     */
    public record PlannedLap(long number, Case driven, double[] values, Optional<LapFigures> figures, String fault) {
        public PlannedLap {
            values = values.clone();
        }

        /** In the order of the design's axes; a copy. */
        @Override
        public double[] values() {
            return values.clone();
        }
    }

    /** A plan of a design, without a case yet. */
    public static LapPlan of(PlanDesign design) {
        return new LapPlan(design, List.of());
    }

    /**
     * The same with one more case.
     *
     * @throws InvalidValueException if one of the design's values is none that its car or day can have
     */
    public LapPlan with(Case one) {
        for (SweepAxis axis : design.axes()) {
            for (int i = 0; i < axis.count(); i++) {
                set(one, axis.name(), axis.value(i));
            }
        }
        List<Case> more = new ArrayList<>(cases);
        more.add(one);
        return new LapPlan(design, more);
    }

    private static Case set(Case one, String name, double value) {
        return Conditions.isMeantBy(name)
                ? new Case(one.name(), one.car(), one.stations(), one.day().with(name, value))
                : new Case(one.name(), one.car().with(name, value), one.stations(), one.day());
    }

    public PlanDesign design() {
        return design;
    }

    public List<Case> cases() {
        return cases;
    }

    /** Number of laps. */
    public long laps() {
        return Math.multiplyExact(design.count(), (long) cases.size());
    }

    /** Place among the cases of that of a lap, by its number. */
    public int caseOf(long number) {
        return (int) (number / design.count());
    }

    /**
     * Drives laps and hands each on, in the order of their numbers and from the caller's thread.
     *
     * @param from first number
     * @param to behind the last
     * @throws InvalidValueException if there are no such laps
     */
    public void drive(long from, long to, StudyRun how, Consumer<PlannedLap> taker) {
        if (from < 0 || to < from || to > laps()) {
            throw new InvalidValueException(
                    "laps", from + " to " + to + " are no laps of the plan", "give numbers from 0 to " + laps());
        }
        how.begin(to - from, Integer.MAX_VALUE, new Trial(from, to));
        for (long begin = from; begin < to; begin += BLOCK) {
            long first = begin;
            int count = (int) Math.min(BLOCK, to - first);
            how.inParallel(
                            count,
                            Worker::new,
                            (worker, i) -> lap(first + i, worker),
                            done -> how.report(clamped(first - from + done), clamped(to - from)))
                    .forEach(taker);
        }
    }

    /** Laps to see how long they take, from places spread over all: in turn, as they will be driven, for each place costs a solver. */
    private final class Trial implements Runnable {
        private static final int PLACES = 4;
        private static final int IN_TURN = 16;

        private final long from;
        private final long to;
        private long tried;
        private Worker worker = new Worker();

        Trial(long from, long to) {
            this.from = from;
            this.to = to;
        }

        @Override
        public void run() {
            long place = tried / IN_TURN % PLACES;
            if (tried++ % IN_TURN == 0) {
                worker = new Worker();
            }
            long number = from + (to - from) / PLACES * place + tried % IN_TURN;
            lap(Math.min(number, to - 1), worker);
        }
    }

    /** Progress is counted in whole numbers of 31 bits. */
    private static int clamped(long laps) {
        return (int) Math.min(Integer.MAX_VALUE, laps);
    }

    /** A solver for the stations of the case in hand. */
    private static final class Worker {
        private Stations stations;
        private LapSolver solver;

        LapSolver on(Stations wanted) {
            if (stations != wanted) {
                solver = new LapSolver(wanted);
                stations = wanted;
            }
            return solver;
        }
    }

    private PlannedLap lap(long number, Worker worker) {
        Case driven = cases.get(caseOf(number));
        double[] values = design.values(number % design.count());
        try {
            Case set = driven;
            for (int k = 0; k < values.length; k++) {
                set = set(set, design.axes().get(k).name(), values[k]);
            }
            LapFigures figures = worker.on(set.stations()).figures(Vehicle.of(set.car(), set.day()));
            return new PlannedLap(number, driven, values, Optional.of(figures), "");
        } catch (NoLapException | InvalidValueException none) {
            return new PlannedLap(number, driven, values, Optional.empty(), none.getMessage());
        }
    }
}
