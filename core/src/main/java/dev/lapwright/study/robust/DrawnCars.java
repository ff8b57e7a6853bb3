package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/**
 * Cars, days and roads drawn once about one car, and the laps that settings of it drove on them: several questions asked of the same cars
 * ({@link Robustness#of(Car, DrawnCars)}) drive each lap once. Not for two studies at the same time.
 *
 * <pre>{@code
 * DrawnCars cars = DrawnCars.about(car, track, StationSpacing.DEFAULT, Conditions.STANDARD, 40);
 * Car stiffer = car.with("front-bar", 4);
 * RobustnessResult first = Robustness.of(car, cars).against(stiffer).run();
 * RobustnessResult next = Robustness.of(stiffer, cars).against(stiffer.with("rear-wing", 5)).run();
 * }</pre>
 */
public final class DrawnCars {
    /** Stations of so many drawn roads are kept: some 0.3 MB each. Those of others are laid again for each question. */
    private static final int ROADS_KEPT = 200;

    /** So many times as many cars are looked at as are to go with what the driver says. */
    private static final int MOST_LOOKED = 20;

    private final Spread spread;
    private final PlausibleDays days;
    private final double[][] draws;
    private final Stations stated;
    private final boolean remembering;
    /** Cars drawn to find those that count. */
    private final int looked;

    private final List<Draw> memory;
    private final AtomicInteger driven;

    /**
     * What is drawn.
     *
     * @param reference car about which cars are drawn, in the setting in which it was measured
     * @param assuming whether what documents do not state is assumed by its class
     */
    record Spread(
            Car reference,
            Track track,
            StationSpacing spacing,
            Conditions day,
            int count,
            long seed,
            boolean assuming) {
        Spread withCount(int other) {
            return new Spread(reference, track, spacing, day, other, seed, assuming);
        }

        Spread withSeed(long other) {
            return new Spread(reference, track, spacing, day, count, other, assuming);
        }

        Spread asStated() {
            return new Spread(reference, track, spacing, day, count, seed, false);
        }
    }

    /** Setting of the car, the very object, and its day. */
    private record Asked(Car car, Conditions day) {}

    /** What is remembered of one draw. A study that was stopped may still have a thread at it when the next begins. */
    private static final class Draw {
        private final Map<Asked, Double> times = new HashMap<>();
        private Stations road;

        synchronized Double time(Asked asked) {
            return times.get(asked);
        }

        synchronized void keep(Asked asked, double time) {
            times.put(asked, time);
        }

        /** Whether it was not known before. */
        synchronized boolean learns(Asked asked, double time) {
            return times.putIfAbsent(asked, time) == null;
        }

        synchronized Stations road() {
            return road;
        }

        synchronized void keep(Stations found) {
            road = found;
        }
    }

    DrawnCars(Spread spread, boolean remembering) {
        this.spread = spread;
        this.remembering = remembering;
        days = PlausibleDays.of(spread.reference(), spread.track(), spread.day(), spread.assuming(), List.of());
        draws = days.draws(spread.count(), spread.seed());
        looked = draws.length;
        stated = spread.track().stations(spread.spacing());
        memory = nothingYet(draws.length);
        driven = new AtomicInteger();
    }

    /** Of cars drawn anew those that go with what the driver says. */
    private DrawnCars(DrawnCars before, double[][] heard, int looked) {
        spread = before.spread.withCount(heard.length);
        remembering = before.remembering;
        days = before.days;
        draws = heard;
        this.looked = looked;
        stated = before.stated;
        memory = nothingYet(draws.length);
        driven = new AtomicInteger();
    }

    /** Some of the cars drawn before. */
    private DrawnCars(DrawnCars all, int count) {
        spread = all.spread.withCount(count);
        remembering = all.remembering;
        days = all.days;
        draws = Arrays.copyOf(all.draws, count);
        looked = count;
        stated = all.stated;
        memory = all.memory.subList(0, count);
        driven = all.driven;
    }

    private static List<Draw> nothingYet(int draws) {
        return Stream.generate(Draw::new).limit(draws).toList();
    }

    /**
     * Cars drawn about one, by what is known of it and else by its class.
     *
     * @param reference in the setting in which it was measured
     * @param count of draws
     */
    public static DrawnCars about(Car reference, Track track, StationSpacing spacing, Conditions day, int count) {
        int checked = Robustness.checkedDraws("draws", count);
        return new DrawnCars(new Spread(reference, track, spacing, day, checked, Robustness.SEED, true), true);
    }

    /**
     * The first of these cars, with what is remembered of them: a study of few cars drives laps that one of all of them need not drive again, and the
     * other way round.
     *
     * @param count of cars, at most all of them
     */
    public DrawnCars first(int count) {
        return new DrawnCars(this, Math.min(draws.length, Robustness.checkedDraws("draws", count)));
    }

    Spread spread() {
        return spread;
    }

    /** How many cars there are. */
    public int count() {
        return draws.length;
    }

    /** How many were drawn to find those that count: as many where nobody said anything. */
    public int looked() {
        return looked;
    }

    /**
     * As many cars that go with what the driver says of the car as it was measured: cars are drawn anew, and each is kept with the chance that its
     * driver would say all these words (rejection sampling). Fewer where they do not go together well.
     *
     * @throws InvalidValueException if the track has no corner that is named, or so few go with it that nothing can be told
     */
    public DrawnCars heard(List<DriverWord> words, StudyRun how) {
        return heard(words, StudyMemory.NONE, how);
    }

    /** The same, going on from what a memory recalls of these very cars and words, and keeping there how likely they go together. */
    public DrawnCars heard(List<DriverWord> words, StudyMemory drives, StudyRun how) {
        if (words.isEmpty()) {
            return this;
        }
        Hearing hearing = hearing(words, spread.reference(), spread.day());
        int wanted = spread.count();
        double[][] candidates = days.draws(MOST_LOOKED * wanted, spread.seed());
        double[] known = new double[candidates.length];
        Arrays.fill(known, Double.NaN);
        drives.recallCounted(
                known.length, (i, numbers, said) -> known[i] = numbers.length == 1 ? numbers[0] : known[i]);
        List<double[]> kept = new ArrayList<>();
        while (hearing.seen() < candidates.length && kept.size() < wanted) {
            int from = hearing.seen();
            List<Double> likelihoods = how.inParallel(
                    wanted,
                    this::asDescribed,
                    (solver, i) -> {
                        if (!Double.isNaN(known[from + i])) {
                            return known[from + i];
                        }
                        double[] draw = candidates[from + i];
                        LapSolver there = days.isRoadInDoubt()
                                ? new LapSolver(days.road(draw).stations(spread.spacing()))
                                : solver;
                        double likelihood = likelihood(hearing, draw, spread.reference(), spread.day(), there);
                        drives.keep(Integer.toString(from + i), new double[] {likelihood}, "");
                        return likelihood;
                    },
                    done -> {});
            for (int i = 0; i < wanted && kept.size() < wanted; i++) {
                if (hearing.keeps(likelihoods.get(i))) {
                    kept.add(candidates[from + i]);
                }
            }
        }
        hearing.checkEnough("doubt the word, or the car's document");
        return new DrawnCars(this, kept.toArray(new double[0][]), hearing.seen());
    }

    /** What is said of a setting of the car on a day, to be heard of drawn ones. */
    Hearing hearing(List<DriverWord> words, Car setUp, Conditions day) {
        return new Hearing(words, spread.seed(), asDescribed().solve(Vehicle.of(setUp, day)));
    }

    /** How likely it would be said of a drawn car, on its road's solver; 0 where it has no lap. */
    double likelihood(Hearing hearing, double[] draw, Car setUp, Conditions day, LapSolver solver) {
        try {
            return hearing.likelihood(solver.solve(Vehicle.of(days.car(setUp, draw), days.day(day, draw))));
        } catch (NoLapException | InvalidValueException none) {
            return 0;
        }
    }

    PlausibleDays days() {
        return days;
    }

    /** Draws by unknowns; not to be written to. */
    double[][] draws() {
        return draws;
    }

    /** A solver for the road as it is described. */
    LapSolver asDescribed() {
        return new LapSolver(stated);
    }

    /** A solver on a drawn road; the one of the road as it is described where that is not in doubt. */
    LapSolver solver(int draw, LapSolver asDescribed) {
        if (!days.isRoadInDoubt()) {
            return asDescribed;
        }
        Stations kept = memory.get(draw).road();
        Stations road = kept != null ? kept : days.road(draws[draw]).stations(spread.spacing());
        if (remembering && draw < ROADS_KEPT) {
            memory.get(draw).keep(road);
        }
        return new LapSolver(road);
    }

    /** Lap time of a setting on a draw, on its {@link #solver}, s; NaN where it has none. */
    double time(int draw, Car setUp, Conditions day, LapSolver solver) {
        if (!remembering) {
            return drive(draw, setUp, day, solver);
        }
        Asked asked = new Asked(setUp, day);
        Double known = memory.get(draw).time(asked);
        if (known == null) {
            known = drive(draw, setUp, day, solver);
            memory.get(draw).keep(asked, known);
        }
        return known;
    }

    /**
     * Drives so many laps each time that it is run, as to see how long they take: of one drawn car after the other as it was measured, some of each, on
     * its road. Nothing is remembered.
     */
    public Runnable trial(int laps, int ofEach) {
        LapSolver asDescribed = asDescribed();
        LapSolver[] there = {asDescribed};
        int[] tried = {0};
        return () -> {
            for (int lap = 0; lap < laps; lap++) {
                int draw = tried[0] / ofEach % draws.length;
                if (tried[0]++ % ofEach == 0 && days.isRoadInDoubt()) {
                    there[0] = new LapSolver(days.road(draws[draw]).stations(spread.spacing()));
                }
                drive(draw, spread.reference(), spread.day(), there[0]);
            }
        };
    }

    /** Knows a lap time that was driven by an earlier run of the same questions, as if this one had. */
    void recall(int draw, Car setUp, Conditions day, double time) {
        if (memory.get(draw).learns(new Asked(setUp, day), time)) {
            driven.incrementAndGet();
        }
    }

    private double drive(int draw, Car setUp, Conditions day, LapSolver solver) {
        driven.incrementAndGet();
        try {
            return solver.lapTime(Vehicle.of(days.car(setUp, draws[draw]), days.day(day, draws[draw])));
        } catch (NoLapException | InvalidValueException noLap) {
            return Double.NaN;
        }
    }

    /** On how many of the cars, from the first on, a setting's lap is remembered, on the day that was described. */
    int remembered(Car setUp) {
        Asked asked = new Asked(setUp, spread.day());
        int count = 0;
        while (count < draws.length && memory.get(count).time(asked) != null) {
            count++;
        }
        return count;
    }

    /** Laps driven so far, of all cars that share what is remembered. */
    public int driven() {
        return driven.get();
    }
}
