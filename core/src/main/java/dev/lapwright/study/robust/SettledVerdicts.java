package dev.lapwright.study.robust;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.doubt.NineInTen;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Verdicts on adjustments ({@link AdjustmentVerdict}), those of a sensitivity for instance, without the intervals: cars are drawn in turn, and a setting is
 * driven on no more of them once nothing that the rest could show would change its adjustment's verdict. So the verdicts are those of {@link
 * Robustness#of(SensitivityResult)} with as many draws of the same seed, for a fifth or so of its laps.
 *
 * <p>That no rest changes a verdict: percentiles rise with every value, so those with all laps to come as slow as can be, and as fast as can
 * be, hold between them what the percentiles will be. A setting that makes less than half of what counts on each of the first cars is looked at no
 * further, and makes no difference: of the demo cars' no further car has shown one (docs/doubt.md).
 */
public final class SettledVerdicts implements Study<SettledVerdicts.Result> {
    /** Cars drawn: an interval's ends to a sixth of its width. */
    public static final int DRAWS = 100;

    /** Twice as far apart as usual: differences are off by 8 ms at the most (docs/performance.md), where nothing below 50 counts. */
    static final StationSpacing SPACING = StationSpacing.DEFAULT.scaled(2);

    /** Cars on which a setting that makes nearly no difference is looked at. */
    private static final int FIRST = Robustness.FEWEST_DRAWS;
    /** Share of what counts below which a difference is nearly none. */
    private static final double NEARLY_NONE = 0.5;

    /** Least number of draws between two looks at what is settled: alike for one thread, two or four. */
    private static final int AT_ONCE = 4;
    /** Share of the draws that agree where an interval of nine in ten lies to one side. */
    private static final double NINE_IN_TEN = 0.95;
    /** Slower than any lap, s. */
    private static final double FAR = 1e6;

    private final Car car;
    private final Track track;
    private final Conditions day;
    private final JudgedAdjustments judged;
    private final List<DriverWord> words;
    /** Cars drawn before; empty where they are to be drawn. */
    private final Optional<DrawnCars> cars;

    private final StudyMemory memory;

    private SettledVerdicts(
            Car car,
            Track track,
            Conditions day,
            JudgedAdjustments judged,
            List<DriverWord> words,
            Optional<DrawnCars> cars,
            StudyMemory memory) {
        this.car = car;
        this.track = track;
        this.day = day;
        this.judged = judged;
        this.words = words;
        this.cars = cars;
        this.memory = memory;
    }

    /** A study of all adjustments of a sensitivity. */
    public static SettledVerdicts of(SensitivityResult sensitivity) {
        return of(sensitivity, Set.of());
    }

    /** The same without some adjustments, by name: nothing is asked of them, and their verdict is that they cannot be told. */
    public static SettledVerdicts of(SensitivityResult sensitivity, Set<String> apart) {
        return new SettledVerdicts(
                sensitivity.car(),
                sensitivity.track(),
                sensitivity.conditions(),
                JudgedAdjustments.of(sensitivity, apart),
                List.of(),
                Optional.empty(),
                StudyMemory.NONE);
    }

    /** Cars as this study draws them, for other questions beside: what was driven for those is not driven again. */
    public static DrawnCars cars(Car reference, Track driven, Conditions day) {
        return DrawnCars.about(reference, driven, SPACING, day, DRAWS);
    }

    /**
     * A study of adjustments of a car on cars drawn before.
     *
     * @param cars as {@link #cars} draws them; laps that they remember of the very cars that are judged count
     */
    public static SettledVerdicts of(Car car, DrawnCars cars, JudgedAdjustments judged) {
        DrawnCars.Spread spread = cars.spread();
        return new SettledVerdicts(
                car, spread.track(), spread.day(), judged, List.of(), Optional.of(cars), StudyMemory.NONE);
    }

    /** The same on cars that go with what the driver says of the car as it stands: {@link DrawnCars#heard}. */
    public SettledVerdicts hearing(List<DriverWord> said) {
        return new SettledVerdicts(car, track, day, judged, List.copyOf(said), cars, memory);
    }

    /** The same, going on from what a memory recalls of these very questions, and keeping there what it drives. */
    public SettledVerdicts remembering(StudyMemory drives) {
        return new SettledVerdicts(car, track, day, judged, words, cars, drives);
    }

    /**
     * Verdicts, and what they rest on.
     *
     * @param verdicts in the order of the adjustments
     * @param draws cars drawn; 0 where none had to be
     * @param seed of the draws
     * @param laps driven
     */
    public record Result(List<AdjustmentVerdict> verdicts, int draws, long seed, int laps) {
        public Result {
            verdicts = List.copyOf(verdicts);
        }
    }

    @Override
    public Result run(StudyRun how) {
        if (judged.cars().isEmpty()) {
            return new Result(judged.verdicts(List.of()), 0, Robustness.SEED, 0);
        }
        DrawnCars drawn = cars.orElseGet(() -> cars(car, track, day)).heard(words, memory.of("heard"), how);
        int before = drawn.driven();
        Robustness study = Robustness.of(car, drawn);
        for (Car setUp : judged.cars()) {
            study = study.against(setUp);
        }
        Looks looks = new Looks(drawn.count());
        int look = 0;
        int[] upTo = judged.cars().stream().mapToInt(drawn::remembered).toArray();
        do {
            looks.drive(study, upTo, study.new Rows(memory.of("look" + ++look)), how);
            how.report(looks.settled(), judged.asked().size());
            upTo = looks.next();
        } while (!looks.isDriven(upTo));
        return new Result(looks.verdicts(), drawn.count(), Robustness.SEED, drawn.driven() - before);
    }

    /** What has been driven, and what it settles. */
    private final class Looks {
        private final double[][] differences;
        /** Draws on which each setting was driven, from the first on. */
        private final int[] looked;
        /** What can still be said of each setting. */
        private final List<Set<RobustnessResult.Verdict>> possible = new ArrayList<>();

        private final int draws;

        Looks(int draws) {
            this.draws = draws;
            differences = new double[judged.cars().size()][draws];
            looked = new int[differences.length];
            for (int j = 0; j < looked.length; j++) {
                possible.add(possible(j));
            }
        }

        boolean isDriven(int[] upTo) {
            return Arrays.equals(looked, upTo);
        }

        /** Drives each setting on the draws before its number. */
        void drive(Robustness study, int[] upTo, Robustness.Rows rows, StudyRun how) {
            List<Integer> wanted = IntStream.range(0, draws)
                    .filter(draw -> IntStream.range(0, upTo.length).anyMatch(j -> isNew(draw, j, upTo)))
                    .boxed()
                    .toList();
            List<double[]> times = study.times(wanted, (draw, j) -> isNew(draw, j, upTo), rows, how);
            for (int k = 0; k < wanted.size(); k++) {
                for (int j = 0; j < upTo.length; j++) {
                    if (isNew(wanted.get(k), j, upTo)) {
                        differences[j][wanted.get(k)] = times.get(k)[j + 1] - times.get(k)[0];
                    }
                }
            }
            for (int j = 0; j < upTo.length; j++) {
                if (looked[j] < upTo[j]) {
                    looked[j] = upTo[j];
                    possible.set(j, possible(j));
                }
            }
        }

        private boolean isNew(int draw, int j, int[] upTo) {
            return draw >= looked[j] && draw < upTo[j];
        }

        /** On how many draws each setting is to have been driven next: on more only where that may settle a verdict. */
        int[] next() {
            int[] next = looked.clone();
            for (int i = 0; i < judged.asked().size(); i++) {
                if (!isSettled(i)) {
                    for (int j : deciding(i)) {
                        next[j] = Math.min(draws, looked[j] + atOnce(j));
                    }
                }
            }
            return next;
        }

        /** Settings by which a verdict may be settled soonest. */
        private List<Integer> deciding(int i) {
            JudgedAdjustments.Asked one = judged.asked().get(i);
            if (isFaster(i)
                    && isOpen(one.first())
                    && possible.get(one.first()).contains(RobustnessResult.Verdict.FASTER)) {
                return List.of(one.first());
            }
            List<Integer> open = IntStream.range(one.first(), one.first() + one.count())
                    .filter(this::isOpen)
                    .boxed()
                    .toList();
            // One that cannot be told settles it alone; if there is none, all have to be driven.
            int likeliest = open.stream()
                    .max(Comparator.comparingDouble(this::untold).thenComparing(Comparator.reverseOrder()))
                    .orElseThrow();
            return untold(likeliest) > 0 ? List.of(likeliest) : open;
        }

        /** Draws to the next look at a setting: half of those that it takes at least, where nothing speaks for one that cannot be told. */
        private int atOnce(int j) {
            if (looked[j] < FIRST || untold(j) > 0) {
                return AT_ONCE;
            }
            double[] known = known(j);
            long agree = Math.max(
                    Arrays.stream(known)
                            .filter(difference -> !LapTimeDifference.counts(difference))
                            .count(),
                    Math.max(
                            Arrays.stream(known)
                                    .filter(LapTimeDifference::isFaster)
                                    .count(),
                            Arrays.stream(known)
                                    .filter(LapTimeDifference::isSlower)
                                    .count()));
            return Math.max(AT_ONCE, (int) (NINE_IN_TEN * draws - agree) / 2);
        }

        private boolean isOpen(int j) {
            return possible.get(j).size() > 1;
        }

        /** Share of the draws looked at that speak for a setting that cannot be told, or is faster; 1 before the first look. */
        private double untold(int j) {
            double[] known = known(j);
            if (known.length == 0) {
                return 1;
            }
            long less = Arrays.stream(known)
                    .filter(difference -> difference <= -LapTimeDifference.COUNTS)
                    .count();
            long more = Arrays.stream(known)
                    .filter(difference -> difference >= LapTimeDifference.COUNTS)
                    .count();
            long notSlower = Arrays.stream(known)
                    .filter(difference -> !LapTimeDifference.isSlower(difference))
                    .count();
            return (double) Math.min(notSlower, Math.max(less, more)) / known.length;
        }

        private boolean isFaster(int i) {
            return AdjustmentVerdict.isAsked(judged.asked().get(i).difference());
        }

        private boolean isSettled(int i) {
            return verdict(i).isPresent();
        }

        /** How many verdicts no rest of the laps can change. */
        int settled() {
            return (int) IntStream.range(0, judged.asked().size())
                    .filter(this::isSettled)
                    .count();
        }

        /** The verdict on an adjustment if no rest of the laps can change it. */
        private Optional<AdjustmentVerdict> verdict(int i) {
            JudgedAdjustments.Asked one = judged.asked().get(i);
            return one.undrawn()
                    .or(() -> AdjustmentVerdict.of(
                            isFaster(i), possible.subList(one.first(), one.first() + one.count())));
        }

        /** What can still be said of a setting; nothing of one that has no lap on any drawn car. */
        private Set<RobustnessResult.Verdict> possible(int j) {
            if (looked[j] >= FIRST && isNearlyNone(j)) {
                return EnumSet.of(RobustnessResult.Verdict.ALIKE);
            }
            double[] fastest = rests(j, -FAR);
            double[] slowest = rests(j, FAR);
            Set<RobustnessResult.Verdict> left = EnumSet.noneOf(RobustnessResult.Verdict.class);
            for (double[] low : new double[][] {fastest, slowest}) {
                for (double[] high : new double[][] {fastest, slowest}) {
                    if (low.length > 0) {
                        left.add(RobustnessResult.Verdict.of(NineInTen.low(low), NineInTen.high(high)));
                    }
                }
            }
            return left;
        }

        private boolean isNearlyNone(int j) {
            return Arrays.stream(differences[j], 0, FIRST)
                    .allMatch(difference -> Math.abs(difference) < NEARLY_NONE * LapTimeDifference.COUNTS);
        }

        private double[] known(int j) {
            return Arrays.stream(differences[j], 0, looked[j])
                    .filter(difference -> !Double.isNaN(difference))
                    .toArray();
        }

        /** Differences of a setting if all to come are so much, s. */
        private double[] rests(int j, double rest) {
            double[] known = known(j);
            double[] all = Arrays.copyOf(known, known.length + draws - looked[j]);
            Arrays.fill(all, known.length, all.length, rest);
            return all;
        }

        List<AdjustmentVerdict> verdicts() {
            return IntStream.range(0, judged.asked().size())
                    .mapToObj(i -> verdict(i).orElseThrow())
                    .toList();
        }
    }
}
