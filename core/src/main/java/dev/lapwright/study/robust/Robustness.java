package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.doubt.NineInTen;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.doubt.PlausibleRoads;
import dev.lapwright.doubt.Unknown;
import dev.lapwright.doubt.UnknownShare;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * Study of how settings stand on all the cars that a car may be: cars, days and roads are drawn from what is known of them ({@link
 * PlausibleCars}, {@link PlausibleRoads}), and on each of them all settings are driven, and the car as it stands. So what is off in both alike cancels, as it
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
    /** Fewest draws that tell an interval of 90 %: its ends then lie close to the least and the greatest ({@link dev.lapwright.doubt.NineInTen}). */
    public static final int FEWEST_DRAWS = 20;
    /** Most draws. */
    public static final int MOST_DRAWS = 100_000;

    /** Seed if nothing is said. */
    static final long SEED = 1;

    private static final int WHICH = -1;
    private static final int NOTHING = -2;

    private final Car present;
    private final Conditions day;
    private final List<Setting> settings;
    private final DrawnCars.Spread spread;
    /** Cars drawn before, asked again; empty where they are to be drawn. */
    private final Optional<DrawnCars> cars;
    /** Place of the setting that is asked of; negative if that is left to the study. */
    private final int asked;
    /** What the driver says of the car as it stands. */
    private final List<DriverWord> words;

    private final StudyMemory memory;

    /**
     * Setting that is driven.
     *
     * @param number that stands for it
     * @param without place of the setting of which a part is left out here; negative for none
     */
    private record Setting(Car car, Conditions day, double number, int without) {
        Setting(Car car, Conditions day, double number) {
            this(car, day, number, -1);
        }
    }

    private Robustness(
            Car present,
            Conditions day,
            List<Setting> settings,
            DrawnCars.Spread spread,
            Optional<DrawnCars> cars,
            int asked,
            List<DriverWord> words,
            StudyMemory memory) {
        this.present = present;
        this.day = day;
        this.settings = settings;
        this.spread = spread;
        this.cars = cars;
        this.asked = asked;
        this.words = words;
        this.memory = memory;
    }

    /** A study about a car as it stands; add settings before running it. */
    public static Robustness of(Car present, Track track, Conditions day) {
        return of(present, track, StationSpacing.DEFAULT, day);
    }

    /**
     * The same on stations that lie otherwise: twice as far apart as usual a lap takes three quarters of the time, and differences are off by a
     * few milliseconds (docs/performance.md).
     */
    public static Robustness of(Car present, Track track, StationSpacing spacing, Conditions day) {
        DrawnCars.Spread spread = new DrawnCars.Spread(present, track, spacing, day, DRAWS, SEED, true);
        return new Robustness(present, day, List.of(), spread, Optional.empty(), -1, List.of(), StudyMemory.NONE);
    }

    /**
     * A study on cars drawn before, their laps remembered: about the car that they were drawn about, in a setting that it may have come to since.
     * With other draws it draws anew.
     */
    public static Robustness of(Car present, DrawnCars cars) {
        DrawnCars.Spread spread = cars.spread();
        return new Robustness(
                present, spread.day(), List.of(), spread, Optional.of(cars), -1, List.of(), StudyMemory.NONE);
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

    /**
     * A study of what a sensitivity shows of each adjustment, its best setting or where none is faster its worst, in its order; behind them
     * the settings by which each is judged ({@link JudgedAdjustments}). Laps and draws are those of {@link SettledVerdicts}, which so says the same.
     */
    public static Robustness of(SensitivityResult sensitivity) {
        Car car = sensitivity.car();
        Robustness study = of(car, sensitivity.track(), SettledVerdicts.SPACING, sensitivity.conditions());
        for (SensitivityResult.Worth worth : sensitivity.worths()) {
            study = study.against(
                    car.with(worth.adjustment().name(), worth.shown().setting()));
        }
        for (Car judged : JudgedAdjustments.of(sensitivity).cars()) {
            study = study.against(judged);
        }
        return study;
    }

    /** Verdicts on the adjustments of a sensitivity that was drawn by {@link #of(SensitivityResult)}, in its order. */
    public static List<AdjustmentVerdict> verdicts(SensitivityResult sensitivity, RobustnessResult drawn) {
        int shown = sensitivity.worths().size();
        return JudgedAdjustments.of(sensitivity)
                .verdicts(drawn.standings().subList(shown, drawn.standings().size()));
    }

    /** A study of the gearings of one axis that have a lap as given, in their order. */
    public static Robustness of(GearingResult gearing, String axis) {
        Robustness study = of(gearing.car(), gearing.track(), gearing.conditions());
        for (GearingResult.Candidate choice : gearing.asGiven().choices(axis)) {
            if (choice.lap().isPresent()) {
                study = study.against(choice.car(), gearing.conditions(), choice.value());
            }
        }
        return study;
    }

    /** A study of the hot pressures logged last, and of all tyres so far above the ideal as is costed, beside the car's ideal. */
    public static Robustness of(PressureResult pressures) {
        Vehicle ideal = pressures.lap().vehicle();
        Robustness study =
                of(ideal.car(), pressures.lap().track(), ideal.conditions()).against(pressures.logged());
        for (PressureResult.Cost cost : pressures.costs()) {
            study = study.against(pressures.away(cost.awayKpa()));
        }
        return study.asking(0);
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
        return new Robustness(present, day, List.copyOf(more), spread, cars, asked, words, memory);
    }

    /**
     * The same, asking what a part of one of its settings does: told is the lap time of that setting less that without the part. It is no rival of
     * the other settings.
     *
     * @param place of the setting, in the order given
     * @param setUp the same car without the part
     */
    public Robustness without(int place, Car setUp) {
        List<Setting> more = new ArrayList<>(settings);
        more.add(new Setting(setUp, day, Double.NaN, place));
        return new Robustness(present, day, List.copyOf(more), spread, cars, asked, words, memory);
    }

    /** The same with this many cars drawn. */
    public Robustness withDraws(int count) {
        return drawing(spread.withCount(checkedDraws("draws", count)));
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
        return drawing(spread.withSeed(other));
    }

    /**
     * The same, its shares those of the difference that one setting makes. If none is asked of they are those of which number is best,
     * where settings have numbers, or else of the setting that loses least on average.
     *
     * @param place of the setting, in the order given
     */
    public Robustness asking(int place) {
        return new Robustness(present, day, settings, spread, cars, place, words, memory);
    }

    /**
     * The same, counting only drawn cars that go with what the driver says of the car as it stands, here on this day: each is kept with the
     * chance that a driver of it would say all these words (rejection sampling). So those that are left are as many as they count for.
     */
    public Robustness hearing(List<DriverWord> said) {
        return new Robustness(present, day, settings, spread, cars, asked, List.copyOf(said), memory);
    }

    /** The same, going on from what a memory recalls of these very draws and settings, and keeping there what it drives. */
    public Robustness remembering(StudyMemory drives) {
        return new Robustness(present, day, settings, spread, cars, asked, words, drives);
    }

    /** The same by what the car's document states alone: of what it does not speak of nothing is assumed. */
    public Robustness asStated() {
        return drawing(spread.asStated());
    }

    private Robustness drawing(DrawnCars.Spread other) {
        return new Robustness(
                present, day, settings, other, cars.filter(drawn -> other.equals(spread)), asked, words, memory);
    }

    /** Number of laps it will drive. */
    public long laps() {
        return (long) spread.count() * (settings.size() + 1);
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
        DrawnCars drawn = cars.orElseGet(() -> new DrawnCars(spread, false));
        List<Unknown> unknowns = drawn.days().unknowns();
        Optional<Hearing> hearing =
                words.isEmpty() ? Optional.empty() : Optional.of(drawn.hearing(words, present, day));
        int draws = spread.count();
        Drive[] drives = recalled(draws);
        int[] missing = IntStream.range(0, draws).filter(i -> drives[i] == null).toArray();
        how.allInParallel(
                missing.length,
                drawn::asDescribed,
                (solver, k) -> {
                    int i = missing[k];
                    drives[i] = drive(drawn, i, hearing, drawn.solver(i, solver));
                    keep(i, drives[i]);
                    return null;
                },
                done -> how.report(draws - missing.length + done, draws));
        RobustnessResult all = new Reading(unknowns, drawn.draws(), Arrays.asList(drives)).result(Optional.empty());
        return hearing.map(heard -> heard(heard, all, drawn, drives)).orElse(all);
    }

    private RobustnessResult heard(Hearing hearing, RobustnessResult all, DrawnCars drawn, Drive[] drives) {
        List<Drive> heard = new ArrayList<>();
        for (Drive drive : drives) {
            heard.add(hearing.keeps(drive.likelihood()) ? drive : Drive.NONE);
        }
        hearing.checkEnough("draw more, doubt the word, or the car's document");
        return new Reading(drawn.days().unknowns(), drawn.draws(), heard).result(Optional.of(all));
    }

    /**
     * What was driven on one drawn car.
     *
     * @param times of the car as it stands, then of each setting, s; NaN where there is none
     * @param likelihood of what the driver says
     */
    private record Drive(double[] times, double likelihood) {
        /** One that does not count. */
        private static final Drive NONE = new Drive(new double[] {Double.NaN}, 0);
    }

    /** What is remembered of so many draws, null where nothing is; what is none of these draws is as if it were not there. */
    private Drive[] recalled(int draws) {
        Drive[] drives = new Drive[draws];
        memory.recallCounted(draws, (i, numbers, words) -> {
            if (numbers.length == settings.size() + 2) {
                drives[i] = new Drive(Arrays.copyOf(numbers, numbers.length - 1), numbers[numbers.length - 1]);
            }
        });
        return drives;
    }

    private void keep(int draw, Drive drive) {
        double[] numbers = Arrays.copyOf(drive.times(), settings.size() + 2);
        numbers[numbers.length - 1] = drive.likelihood();
        memory.keep(Integer.toString(draw), numbers, "");
    }

    private Drive drive(DrawnCars drawn, int draw, Optional<Hearing> hearing, LapSolver solver) {
        double[] times = times(drawn, draw, solver, j -> true);
        if (Double.isNaN(times[0])) {
            return new Drive(times, 0);
        }
        return new Drive(
                times,
                hearing.map(heard -> drawn.likelihood(heard, drawn.draws()[draw], present, day, solver))
                        .orElse(1.0));
    }

    /** Lap time of the car as it stands, then of each setting that is wanted, s; NaN where there is none. */
    private double[] times(DrawnCars drawn, int draw, LapSolver solver, IntPredicate wanted) {
        double[] times = new double[settings.size() + 1];
        times[0] = drawn.time(draw, present, day, solver);
        for (int j = 1; j < times.length; j++) {
            Setting setting = settings.get(j - 1);
            times[j] = Double.isNaN(times[0]) || !wanted.test(j - 1)
                    ? Double.NaN
                    : drawn.time(draw, setting.car(), setting.day(), solver);
        }
        return times;
    }

    /**
     * Laps on some of the cars drawn before.
     *
     * @param draws places of these cars
     * @param wanted whether on the draw at a place a setting is to be driven
     * @param rows what is known of these draws of what is asked here
     * @return of each of these draws the lap time of the car as it stands, then of each setting, s; NaN where there is none, or none was wanted
     */
    List<double[]> times(List<Integer> draws, Wanted wanted, Rows rows, StudyRun how) {
        DrawnCars drawn = cars.orElseThrow();
        return how.inParallel(
                draws.size(),
                drawn::asDescribed,
                (solver, k) -> {
                    int draw = draws.get(k);
                    IntPredicate here = j -> wanted.test(draw, j);
                    double[] known = rows.known[draw];
                    if (known != null) {
                        recall(drawn, draw, known, here);
                        return known;
                    }
                    double[] times = times(drawn, draw, drawn.solver(draw, solver), here);
                    rows.memory.keep(Integer.toString(draw), times, "");
                    return times;
                },
                done -> {});
    }

    /** Makes cars drawn before know what was driven on one of them. */
    private void recall(DrawnCars drawn, int draw, double[] times, IntPredicate wanted) {
        drawn.recall(draw, present, day, times[0]);
        for (int j = 1; j < times.length; j++) {
            if (!Double.isNaN(times[0]) && wanted.test(j - 1)) {
                Setting setting = settings.get(j - 1);
                drawn.recall(draw, setting.car(), setting.day(), times[j]);
            }
        }
    }

    /** Rows of {@link #times} that a memory knows, each of one draw, and will know; every draw is asked once. */
    final class Rows {
        private final double[][] known;
        private final StudyMemory memory;

        Rows(StudyMemory memory) {
            this.memory = memory;
            known = new double[spread.count()][];
            memory.recallCounted(known.length, (draw, numbers, words) -> {
                if (numbers.length == settings.size() + 1) {
                    known[draw] = numbers;
                }
            });
        }
    }

    /** Whether a setting is to be driven on a draw. */
    @FunctionalInterface
    interface Wanted {
        boolean test(int draw, int setting);
    }

    /** What the lap times say. */
    private final class Reading {
        private final List<Unknown> unknowns;
        private final List<double[]> drawn = new ArrayList<>();
        private final List<double[]> times = new ArrayList<>();
        /** Of each draw that counts: place of the fastest, 0 for the car as it stands. */
        private final int[] fastest;

        Reading(List<Unknown> unknowns, double[][] drawn, List<Drive> all) {
            this.unknowns = unknowns;
            for (int i = 0; i < all.size(); i++) {
                if (!Double.isNaN(all.get(i).times()[0])) {
                    this.drawn.add(drawn[i]);
                    times.add(all.get(i).times());
                }
            }
            fastest = times.stream().mapToInt(this::fastest).toArray();
        }

        private int fastest(double[] row) {
            // Any setting before the car as it stands, which may be one of them.
            int best = 1;
            for (int j = 2; j < row.length; j++) {
                if (settings.get(j - 1).without() < 0 && (row[j] < row[best] || Double.isNaN(row[best]))) {
                    best = j;
                }
            }
            return row[0] < row[best] || Double.isNaN(row[best]) ? 0 : best;
        }

        RobustnessResult result(Optional<RobustnessResult> before) {
            List<RobustnessResult.Standing> standings = new ArrayList<>();
            for (int j = 1; j <= settings.size(); j++) {
                standings.add(standing(j));
            }
            double least = times.size() < FEWEST_DRAWS ? 1 : UnknownShare.least(unknowns, times.size());
            int of = question(standings);
            return new RobustnessResult(
                    spread.count(),
                    times.size(),
                    spread.seed(),
                    unknowns,
                    standings,
                    standing(0),
                    of,
                    shares(of),
                    least,
                    before);
        }

        /** Of a setting to the car as it stands, or of a setting to itself without a part. */
        private double difference(double[] row, int j) {
            int whole = j == 0 ? -1 : settings.get(j - 1).without();
            return whole < 0 ? row[j] - row[0] : row[whole + 1] - row[j];
        }

        private RobustnessResult.Standing standing(int j) {
            double[] differences = new double[times.size()];
            int laps = 0;
            int gains = 0;
            int best = 0;
            double cost = 0;
            for (int i = 0; i < times.size(); i++) {
                double[] row = times.get(i);
                double difference = difference(row, j);
                if (!Double.isNaN(difference)) {
                    differences[laps++] = difference;
                    gains += LapTimeDifference.isFaster(difference) ? 1 : 0;
                    best += fastest[i] == j ? 1 : 0;
                    cost += row[j] - row[fastest[i]];
                }
            }
            if (laps == 0) {
                return new RobustnessResult.Standing(0, Double.NaN, Double.NaN, Double.NaN, 0, 0, Double.NaN);
            }
            double[] lapped = Arrays.copyOf(differences, laps);
            return new RobustnessResult.Standing(
                    laps,
                    NineInTen.low(lapped),
                    NineInTen.middle(lapped),
                    NineInTen.high(lapped),
                    gains,
                    best,
                    cost / laps);
        }

        private List<UnknownShare> shares(int of) {
            if (of == NOTHING || times.size() < FEWEST_DRAWS) {
                return List.of();
            }
            double[] answers = of == WHICH
                    ? Arrays.stream(fastest)
                            .mapToDouble(place -> settings.get(place - 1).number())
                            .toArray()
                    : times.stream().mapToDouble(row -> difference(row, of + 1)).toArray();
            return UnknownShare.told(unknowns, drawn.toArray(new double[0][]), answers);
        }

        /** The setting that is asked of; WHICH number is best; or NOTHING. */
        private int question(List<RobustnessResult.Standing> standings) {
            boolean numbered = settings.size() > 1
                    && settings.stream().noneMatch(setting -> Double.isNaN(setting.number()))
                    && Arrays.stream(fastest).noneMatch(place -> place == 0);
            if (asked < 0 && numbered) {
                return WHICH;
            }
            int question = asked < 0 ? NOTHING : asked;
            double cost = Double.POSITIVE_INFINITY;
            for (int j = 0; j < standings.size() && asked < 0; j++) {
                if (standings.get(j).laps() == times.size() && standings.get(j).cost() < cost) {
                    question = j;
                    cost = standings.get(j).cost();
                }
            }
            return question >= 0 && standings.get(question).laps() < times.size() ? NOTHING : question;
        }
    }
}
