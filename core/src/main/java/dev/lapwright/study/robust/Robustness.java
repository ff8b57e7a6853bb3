package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.VarianceShares;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;

/**
 * Study of how settings stand on all the cars that a car may be: cars and days are drawn from what is known of them ({@link
 * PlausibleCars}), and on each of them all settings are driven, and the car as it stands. So what is off in both alike cancels, as it
 * does on the track. The result is the same for any number of threads.
 *
 * <pre>{@code
 * RobustnessResult wings = Robustness.of(car, track, Conditions.STANDARD)
 *         .against(car.with("rear-wing", 4))
 *         .against(car.with("rear-wing", 8))
 *         .run();
 * }</pre>
 */
public final class Robustness implements Study<RobustnessResult> {
    /** Cars drawn if nothing is said. */
    public static final int DRAWS = 200;
    /** Fewest draws that tell an interval of 90 %, roughly: one of them lies beyond each end. */
    public static final int FEWEST_DRAWS = 20;
    /** Most draws. */
    public static final int MOST_DRAWS = 100_000;

    private static final double LOW = 5;
    private static final double MIDDLE = 50;
    private static final double HIGH = 95;

    private final Car present;
    private final Stations stations;
    private final Conditions day;
    private final List<Setting> settings;
    private final int draws;
    private final long seed;
    private final boolean assuming;

    /** Setting that is driven, and what number stands for it. */
    private record Setting(Car car, Conditions day, double number) {}

    private Robustness(
            Car present,
            Stations stations,
            Conditions day,
            List<Setting> settings,
            int draws,
            long seed,
            boolean assuming) {
        this.present = present;
        this.stations = stations;
        this.day = day;
        this.settings = settings;
        this.draws = draws;
        this.seed = seed;
        this.assuming = assuming;
    }

    /** A study about a car as it stands; add settings before running it. */
    public static Robustness of(Car present, Track track, Conditions day) {
        return new Robustness(present, track.stations(StationSpacing.DEFAULT), day, List.of(), DRAWS, 1, true);
    }

    /** A study of the settings of a sweep that have a lap, in its order, held against its baseline, all on the line that was swept on. */
    public static Robustness of(SweepResult sweep) {
        Robustness study = of(sweep.car(), sweep.track(), sweep.conditions());
        boolean single = sweep.axes().size() == 1;
        for (SweepResult.Point point : sweep.points()) {
            if (point.figures().isPresent()) {
                Car setUp = sweep.car();
                Conditions on = sweep.conditions();
                for (int k = 0; k < sweep.axes().size(); k++) {
                    String name = sweep.axes().get(k).name();
                    double value = point.settings().get(k);
                    boolean condition = Conditions.NAMES.contains(name);
                    setUp = condition ? setUp : setUp.with(name, value);
                    on = condition ? on.with(name, value) : on;
                }
                study = study.against(setUp, on, single ? point.settings().get(0) : Double.NaN);
            }
        }
        return study;
    }

    /** The same with one more setting of the car. */
    public Robustness against(Car setUp) {
        return against(setUp, day, Double.NaN);
    }

    /**
     * The same with one more setting of the car.
     *
     * @param on its conditions, off by the same errors
     * @param number that stands for the setting, as its angle: if all have one, the best of them is what shares explain; NaN if it has none
     */
    public Robustness against(Car setUp, Conditions on, double number) {
        List<Setting> more = new ArrayList<>(settings);
        more.add(new Setting(setUp, on, number));
        return new Robustness(present, stations, day, List.copyOf(more), draws, seed, assuming);
    }

    /** The same with this many cars drawn. */
    public Robustness withDraws(int count) {
        return new Robustness(present, stations, day, settings, checkedDraws("draws", count), seed, assuming);
    }

    /**
     * Returns the number if so many cars can be drawn.
     *
     * @param name as which it was given
     */
    public static int checkedDraws(String name, int count) {
        if (count < FEWEST_DRAWS || count > MOST_DRAWS) {
            throw new InvalidValueException(
                    name,
                    count + " are no number of cars to draw that tells an interval",
                    "give " + FEWEST_DRAWS + " to " + MOST_DRAWS);
        }
        return count;
    }

    /** The same with other draws. */
    public Robustness withSeed(long other) {
        return new Robustness(present, stations, day, settings, draws, other, assuming);
    }

    /** The same by what the car's document states alone: of what it does not speak of nothing is assumed. */
    public Robustness asStated() {
        return new Robustness(present, stations, day, settings, draws, seed, false);
    }

    /** Number of laps it will drive. */
    public long laps() {
        return (long) draws * (settings.size() + 1);
    }

    /**
     * Runs it. A drawn car on which the car as it stands has no lap does not count; the result says how many do.
     *
     * @throws InvalidValueException if no setting was given, or nothing is in doubt
     */
    @Override
    public RobustnessResult run(StudyRun how) {
        if (settings.isEmpty()) {
            throw new InvalidValueException("robustness", "no setting was given", "name at least one to hold against");
        }
        PlausibleCars cars = assuming ? PlausibleCars.of(present) : PlausibleCars.asStated(present);
        if (cars.unknowns().isEmpty()) {
            throw new InvalidValueException(
                    "doubt",
                    "the document of " + present.name() + " states no doubt",
                    "assume it by class, or state some");
        }
        double[][] drawn = cars.draws(draws, seed);
        List<double[]> times = how.inParallel(
                draws,
                () -> new LapSolver(stations),
                (solver, i) -> times(cars, drawn[i], solver),
                done -> how.report(done, draws));
        return new Reading(cars.unknowns(), drawn, times).result();
    }

    /** Lap time of the car as it stands, then of each setting, s; NaN where there is none. */
    private double[] times(PlausibleCars cars, double[] draw, LapSolver solver) {
        double[] times = new double[settings.size() + 1];
        times[0] = time(cars, new Setting(present, day, Double.NaN), draw, solver);
        for (int j = 1; j < times.length; j++) {
            times[j] = Double.isNaN(times[0]) ? Double.NaN : time(cars, settings.get(j - 1), draw, solver);
        }
        return times;
    }

    private static double time(PlausibleCars cars, Setting setting, double[] draw, LapSolver solver) {
        try {
            return solver.lapTime(Vehicle.of(cars.car(setting.car(), draw), cars.day(setting.day(), draw)));
        } catch (NoLapException | InvalidValueException noLap) {
            return Double.NaN;
        }
    }

    /** What the lap times say. */
    private final class Reading {
        private final List<Unknown> unknowns;
        private final List<double[]> drawn = new ArrayList<>();
        private final List<double[]> times = new ArrayList<>();
        /** Of each draw that counts: place of the fastest, 0 for the car as it stands. */
        private final int[] fastest;

        Reading(List<Unknown> unknowns, double[][] drawn, List<double[]> all) {
            this.unknowns = unknowns;
            for (int i = 0; i < all.size(); i++) {
                if (!Double.isNaN(all.get(i)[0])) {
                    this.drawn.add(drawn[i]);
                    times.add(all.get(i));
                }
            }
            fastest = times.stream().mapToInt(Reading::fastest).toArray();
        }

        private static int fastest(double[] row) {
            // Any setting before the car as it stands, which may be one of them.
            int best = 1;
            for (int j = 2; j < row.length; j++) {
                if (row[j] < row[best] || Double.isNaN(row[best])) {
                    best = j;
                }
            }
            return row[0] < row[best] || Double.isNaN(row[best]) ? 0 : best;
        }

        RobustnessResult result() {
            List<RobustnessResult.Standing> standings = new ArrayList<>();
            for (int j = 1; j <= settings.size(); j++) {
                standings.add(standing(j));
            }
            double least = times.size() < FEWEST_DRAWS ? 1 : VarianceShares.chance(times.size(), unknowns.size());
            return new RobustnessResult(
                    draws, times.size(), seed, unknowns, standings, standing(0), shares(standings, least), least);
        }

        private RobustnessResult.Standing standing(int j) {
            double[] differences = new double[times.size()];
            int laps = 0;
            int gains = 0;
            int best = 0;
            double cost = 0;
            for (int i = 0; i < times.size(); i++) {
                double[] row = times.get(i);
                if (!Double.isNaN(row[j])) {
                    double difference = row[j] - row[0];
                    differences[laps++] = difference;
                    gains += LapTimeDifference.isFaster(difference) ? 1 : 0;
                    best += fastest[i] == j ? 1 : 0;
                    cost += row[j] - row[fastest[i]];
                }
            }
            if (laps == 0) {
                return new RobustnessResult.Standing(0, Double.NaN, Double.NaN, Double.NaN, 0, 0, Double.NaN);
            }
            Percentile percentile = new Percentile().withEstimationType(Percentile.EstimationType.R_7);
            percentile.setData(differences, 0, laps);
            return new RobustnessResult.Standing(
                    laps,
                    percentile.evaluate(LOW),
                    percentile.evaluate(MIDDLE),
                    percentile.evaluate(HIGH),
                    gains,
                    best,
                    cost / laps);
        }

        private List<RobustnessResult.Share> shares(List<RobustnessResult.Standing> standings, double least) {
            Optional<double[]> answers = answers(standings);
            if (answers.isEmpty() || unknowns.isEmpty() || times.size() < FEWEST_DRAWS) {
                return List.of();
            }
            double[] shares = VarianceShares.firstOrder(drawn.toArray(new double[0][]), answers.get());
            List<RobustnessResult.Share> told = new ArrayList<>();
            for (int k = 0; k < shares.length; k++) {
                if (shares[k] > least) {
                    told.add(new RobustnessResult.Share(unknowns.get(k), Math.min(1, shares[k])));
                }
            }
            told.sort(Comparator.comparingDouble(RobustnessResult.Share::share).reversed());
            return told;
        }

        /** What is asked, for each draw: which number is best, or else the difference of the setting that loses least. */
        private Optional<double[]> answers(List<RobustnessResult.Standing> standings) {
            boolean numbered = settings.size() > 1
                    && settings.stream().noneMatch(setting -> Double.isNaN(setting.number()))
                    && Arrays.stream(fastest).noneMatch(place -> place == 0);
            if (numbered) {
                return Optional.of(Arrays.stream(fastest)
                        .mapToDouble(place -> settings.get(place - 1).number())
                        .toArray());
            }
            int asked = 0;
            double cost = Double.POSITIVE_INFINITY;
            for (int j = 0; j < standings.size(); j++) {
                if (standings.get(j).laps() == times.size() && standings.get(j).cost() < cost) {
                    asked = j + 1;
                    cost = standings.get(j).cost();
                }
            }
            int place = asked;
            return place == 0
                    ? Optional.empty()
                    : Optional.of(times.stream()
                            .mapToDouble(row -> row[place] - row[0])
                            .toArray());
        }
    }
}
