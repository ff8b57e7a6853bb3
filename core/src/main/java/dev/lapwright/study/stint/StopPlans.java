package dev.lapwright.study.stint;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Search for when to stop for tyres: all plans of up to two stops on some compounds, each race driven lap by lap with what fuel and grip make of
 * it. Plans are ranked by lap times read between laps solved on a grid of fuel and grip; those that are told are then driven with every
 * lap solved. The fuel is what the race takes without neutralised laps, for nobody knows of them; there is no refuelling.
 */
public final class StopPlans implements Study<StopPlansResult> {
    /** Laps after which stopping is dearer than the best lap by less than this, s, are told as its window. */
    private static final double WINDOW = 1;

    private static final int MOST_STOPS = 2;
    private static final double LONGEST_STOP = 600;
    private static final int FUELS = 4;
    private static final int GRIPS = 9;
    private static final double LEAST_SPAN = 0.01;
    private static final double EDGE = 1e-9;
    private static final int MOST_LAPS = 120;
    private static final int MOST_TOLD = 8;
    /** More laps in a timed race first, then less time. */
    private static final Comparator<StopPlansResult.Plan> BY_RANK = Comparator.comparingInt(
                    (StopPlansResult.Plan plan) -> -plan.laps())
            .thenComparingDouble(StopPlansResult.Plan::time);

    private final Car car;
    private final Track track;
    private final Conditions conditions;
    private final StintResult stint;
    private final double stopLoss;
    private final int mostStops;
    private final Neutralised neutralised;

    private StopPlans(
            Car car,
            Track track,
            Conditions conditions,
            StintResult stint,
            double stopLoss,
            int mostStops,
            Neutralised neutralised) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
        this.stint = stint;
        this.stopLoss = stopLoss;
        this.mostStops = mostStops;
        this.neutralised = neutralised;
    }

    /**
     * Plans for the race of a stint, with its compounds, its engine and the fuel it needs.
     *
     * @param stopLoss time that a stop costs beside driving on, s
     */
    public static StopPlans of(Car car, Track track, Conditions conditions, StintResult stint, double stopLoss) {
        Check.inRange("loss of a stop (s)", stopLoss, 0, LONGEST_STOP);
        return new StopPlans(car, track, conditions, stint, stopLoss, MOST_STOPS, Neutralised.NEVER);
    }

    /** The same with at most so many stops, 0 to 2. */
    public StopPlans withMostStops(int stops) {
        Check.inRange("stops at most", stops, 0, MOST_STOPS);
        return new StopPlans(car, track, conditions, stint, stopLoss, stops, neutralised);
    }

    /** The same with neutralised laps. */
    public StopPlans neutralised(Neutralised laps) {
        return new StopPlans(car, track, conditions, stint, stopLoss, mostStops, laps);
    }

    /**
     * Drives all plans.
     *
     * @throws InvalidValueException if the race is longer than plans are looked through for, or a tyre loses half its grip on all of them
     */
    @Override
    public StopPlansResult run(StudyRun how) {
        int laps =
                stint.runs().stream().mapToInt(run -> run.laps().size()).max().orElseThrow();
        if (laps > MOST_LAPS) {
            throw new InvalidValueException(
                    "race", laps + " laps are too many to look through", "give at most " + MOST_LAPS);
        }
        Drive drive = new Drive(how);
        List<StopPlansResult.Plan> best = new ArrayList<>();
        for (int stops = 0; stops <= mostStops; stops++) {
            for (List<Compound> order : orders(stops + 1)) {
                StopPlansResult.Plan found = drive.best(order, laps);
                if (found != null) {
                    best.add(found);
                }
            }
        }
        if (best.isEmpty()) {
            throw new InvalidValueException(
                    "compounds",
                    "each would have lost half of its grip before the next stop",
                    "allow more stops, or give less wear");
        }
        List<StopPlansResult.Plan> told =
                best.stream().sorted(BY_RANK).limit(MOST_TOLD).toList();
        List<StopPlansResult.Plan> exact = new ArrayList<>();
        for (StopPlansResult.Plan plan : told) {
            exact.add(drive.exactly(plan));
        }
        exact.sort(BY_RANK);
        return new StopPlansResult(exact, stopLoss, neutralised, stint.startFuel());
    }

    /** All orders of so many stints. */
    private List<List<Compound>> orders(int stints) {
        List<List<Compound>> orders = new ArrayList<>();
        orders.add(List.of());
        for (int i = 0; i < stints; i++) {
            List<List<Compound>> longer = new ArrayList<>();
            for (List<Compound> order : orders) {
                for (StintResult.Run run : stint.runs()) {
                    List<Compound> more = new ArrayList<>(order);
                    more.add(run.compound());
                    longer.add(more);
                }
            }
            orders = longer;
        }
        return orders;
    }

    /** Time of a racing lap, s, and its fuel, kg. */
    private record Paced(double time, double fuel) {}

    /** Laps of this race, on one solver. */
    private final class Drive {
        private final LapSolver solver = LapSolver.on(track);
        private final StudyRun how;
        private final double mostFuel = Math.max(1, stint.startFuel());
        private final double leastGrip;
        private final double mostGrip;
        private final Paced[][] grid = new Paced[FUELS][GRIPS];

        Drive(StudyRun how) {
            this.how = how;
            mostGrip = stint.runs().stream()
                    .mapToDouble(run -> run.compound().grip())
                    .max()
                    .orElseThrow();
            double least = mostGrip;
            for (StintResult.Run run : stint.runs()) {
                least = Math.min(least, gripAfter(run.compound(), run.laps().size()));
            }
            leastGrip = Math.min(least, mostGrip - LEAST_SPAN);
            for (int f = 0; f < FUELS; f++) {
                for (int g = 0; g < GRIPS; g++) {
                    how.report(f * GRIPS + g, FUELS * GRIPS);
                    grid[f][g] =
                            solved(mostFuel * f / (FUELS - 1), leastGrip + (mostGrip - leastGrip) * g / (GRIPS - 1));
                }
            }
        }

        /** Grip after so many laps; what is left of half where it would have lost more. */
        private double gripAfter(Compound compound, double laps) {
            try {
                return compound.gripAfter(laps);
            } catch (InvalidValueException worn) {
                return compound.grip() / 2;
            }
        }

        private Paced solved(double onBoard, double grip) {
            how.stopIfWanted();
            Car set = car.with(Quantity.FUEL_MASS, onBoard)
                    .with(Quantity.COMPOUND_GRIP, car.value(Quantity.COMPOUND_GRIP) * grip);
            Lap lap = solver.solve(Vehicle.of(set, conditions));
            return new Paced(
                    lap.time(), StintResult.FuelUse.of(lap, stint.consumption()).fuel());
        }

        /** Between the laps of the grid, linear in fuel and grip. */
        private Paced between(double onBoard, double grip) {
            double x = Math.max(0, Math.min(FUELS - 1 - EDGE, onBoard / mostFuel * (FUELS - 1)));
            double y =
                    Math.max(0, Math.min(GRIPS - 1 - EDGE, (grip - leastGrip) / (mostGrip - leastGrip) * (GRIPS - 1)));
            int f = (int) x;
            int g = (int) y;
            double u = x - f;
            double w = y - g;
            return new Paced(
                    mixed(u, w, grid[f][g].time, grid[f + 1][g].time, grid[f][g + 1].time, grid[f + 1][g + 1].time),
                    mixed(u, w, grid[f][g].fuel, grid[f + 1][g].fuel, grid[f][g + 1].fuel, grid[f + 1][g + 1].fuel));
        }

        private double mixed(double u, double w, double a, double b, double c, double d) {
            return (1 - w) * ((1 - u) * a + u * b) + w * ((1 - u) * c + u * d);
        }

        /** The best laps to stop after, for one order of compounds; null where a tyre would be worn out on all. */
        StopPlansResult.Plan best(List<Compound> order, int laps) {
            StopPlansResult.Plan best = null;
            List<StopPlansResult.Plan> single = new ArrayList<>();
            for (int[] after : stops(order.size() - 1, laps)) {
                StopPlansResult.Plan plan = driven(order, after, false);
                if (plan != null) {
                    if (after.length == 1) {
                        single.add(plan);
                    }
                    if (best == null || BY_RANK.compare(plan, best) < 0) {
                        best = plan;
                    }
                }
            }
            return best == null ? null : best.between(window(single, best));
        }

        /** First and last lap about the best after which a single stop costs little more. */
        private int[] window(List<StopPlansResult.Plan> single, StopPlansResult.Plan best) {
            int from = Integer.MAX_VALUE;
            int to = 0;
            for (StopPlansResult.Plan plan : single) {
                if (plan.laps() == best.laps() && plan.time() <= best.time() + WINDOW) {
                    from = Math.min(from, plan.after().get(0));
                    to = Math.max(to, plan.after().get(0));
                }
            }
            return to == 0 ? new int[0] : new int[] {from, to};
        }

        private List<int[]> stops(int count, int laps) {
            List<int[]> all = new ArrayList<>();
            if (count == 0) {
                all.add(new int[0]);
            } else if (count == 1) {
                for (int n = 1; n < laps; n++) {
                    all.add(new int[] {n});
                }
            } else {
                for (int n = 1; n < laps - 1; n++) {
                    for (int m = n + 1; m < laps; m++) {
                        all.add(new int[] {n, m});
                    }
                }
            }
            return all;
        }

        /** A plan with every lap solved. */
        StopPlansResult.Plan exactly(StopPlansResult.Plan plan) {
            int[] after = plan.after().stream().mapToInt(n -> n).toArray();
            return driven(plan.order(), after, true).between(plan.window());
        }

        private StopPlansResult.Plan driven(List<Compound> order, int[] after, boolean exact) {
            RaceLength race = stint.race();
            double perLap = stint.use().fuel();
            double left = Math.max(0, stint.startFuel() - race.formationLaps() * race.formationShare() * perLap);
            double time = 0;
            double age = 0;
            int laps = 0;
            int stop = 0;
            while (!race.isOver(laps, time)) {
                boolean slow = neutralised.holds(laps + 1);
                Compound compound = order.get(stop);
                double grip = gripAfter(compound, age);
                if (grip <= compound.grip() / 2) {
                    return null;
                }
                double onBoard = Math.max(0, left - perLap / 2);
                Paced lap = exact ? solved(onBoard, grip) : between(onBoard, grip);
                perLap = lap.fuel;
                time += slow ? lap.time / neutralised.pace() : lap.time;
                left = Math.max(0, left - (slow ? neutralised.fuel() : 1) * lap.fuel);
                age += slow ? neutralised.wear() : 1;
                laps++;
                if (stop < after.length && laps == after[stop] && !race.isOver(laps, time)) {
                    time += slow ? neutralised.stopLoss() : stopLoss;
                    age = 0;
                    stop++;
                }
            }
            return stop < after.length ? null : new StopPlansResult.Plan(order, ints(after), new int[0], laps, time);
        }

        private List<Integer> ints(int... values) {
            List<Integer> list = new ArrayList<>();
            for (int value : values) {
                list.add(value);
            }
            return list;
        }
    }
}
