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
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

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

    /** Draws between two looks at what is settled: alike for one thread, two or four. */
    private static final int AT_ONCE = 4;
    /** Slower than any lap, s. */
    private static final double FAR = 1e6;

    private final Car car;
    private final Track track;
    private final Conditions day;
    private final JudgedAdjustments judged;
    private final List<DriverWord> words;
    private final StudyMemory memory;

    private SettledVerdicts(
            Car car,
            Track track,
            Conditions day,
            JudgedAdjustments judged,
            List<DriverWord> words,
            StudyMemory memory) {
        this.car = car;
        this.track = track;
        this.day = day;
        this.judged = judged;
        this.words = words;
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
                StudyMemory.NONE);
    }

    /** A study of adjustments of a car, on what it drives. */
    public static SettledVerdicts of(Car car, Track driven, Conditions day, JudgedAdjustments judged) {
        return new SettledVerdicts(car, driven, day, judged, List.of(), StudyMemory.NONE);
    }

    /** The same on cars that go with what the driver says of the car as it stands: {@link DrawnCars#heard}. */
    public SettledVerdicts hearing(List<DriverWord> said) {
        return new SettledVerdicts(car, track, day, judged, List.copyOf(said), memory);
    }

    /** The same, going on from what a memory recalls of these very questions, and keeping there what it drives. */
    public SettledVerdicts remembering(StudyMemory drives) {
        return new SettledVerdicts(car, track, day, judged, words, drives);
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
        DrawnCars drawn = DrawnCars.about(car, track, SPACING, day, DRAWS).heard(words, memory.of("heard"), how);
        int draws = drawn.count();
        Robustness study = Robustness.of(car, drawn);
        for (Car setUp : judged.cars()) {
            study = study.against(setUp);
        }
        Looks looks = new Looks(draws);
        // The settings that decide alone if they are faster come first; of the others only those that are still needed.
        for (boolean firsts : new boolean[] {true, false}) {
            Robustness.Rows rows = study.new Rows(memory.of(firsts ? "first" : "rest"));
            for (int from = 0; from < draws; from += AT_ONCE) {
                how.report(firsts ? from : draws + from, 2 * draws);
                boolean[] wanted = looks.wanted(firsts, from);
                if (!any(wanted)) {
                    continue;
                }
                int to = Math.min(draws, from + AT_ONCE);
                looks.note(from, study.times(from, to, j -> wanted[j], rows, how), wanted);
            }
        }
        how.report(2 * draws, 2 * draws);
        return new Result(looks.verdicts(), draws, Robustness.SEED, drawn.driven());
    }

    private static boolean any(boolean[] all) {
        for (boolean one : all) {
            if (one) {
                return true;
            }
        }
        return false;
    }

    /** What has been driven, and what it settles. */
    private final class Looks {
        private final double[][] differences;
        private final int[] looked;
        private final int draws;

        Looks(int draws) {
            this.draws = draws;
            differences = new double[judged.cars().size()][draws];
            looked = new int[differences.length];
        }

        /** Settings to drive on the draws from one on: the first of those that may be faster, or all that are needed beside. */
        boolean[] wanted(boolean firsts, int from) {
            boolean[] wanted = new boolean[differences.length];
            for (int i = 0; i < judged.asked().size(); i++) {
                JudgedAdjustments.Asked one = judged.asked().get(i);
                boolean open = one.undrawn().isEmpty() && settled(i).isEmpty();
                int count = firsts && isFaster(i) ? 1 : one.count();
                for (int j = one.first(); open && j < one.first() + count; j++) {
                    wanted[j] = looked[j] == from && possible(j).size() > 1;
                }
            }
            return wanted;
        }

        private boolean isFaster(int i) {
            return AdjustmentVerdict.isAsked(judged.asked().get(i).difference());
        }

        void note(int from, List<double[]> times, boolean[] wanted) {
            for (int j = 0; j < wanted.length; j++) {
                for (int k = 0; wanted[j] && k < times.size(); k++) {
                    differences[j][from + k] = times.get(k)[j + 1] - times.get(k)[0];
                    looked[j] = from + k + 1;
                }
            }
        }

        /** The verdict on an adjustment if no rest of the laps can change it. */
        private Optional<AdjustmentVerdict> settled(int i) {
            JudgedAdjustments.Asked one = judged.asked().get(i);
            List<Set<RobustnessResult.Verdict>> possible = new ArrayList<>();
            for (int j = one.first(); j < one.first() + one.count(); j++) {
                possible.add(possible(j));
            }
            return AdjustmentVerdict.of(isFaster(i), possible);
        }

        /** What can still be said of a setting; nothing of one that has no lap on any drawn car. */
        private Set<RobustnessResult.Verdict> possible(int j) {
            if (looked[j] >= FIRST && isNearlyNone(j)) {
                return EnumSet.of(RobustnessResult.Verdict.ALIKE);
            }
            double[] fastest = rests(j, -FAR);
            double[] slowest = rests(j, FAR);
            Set<RobustnessResult.Verdict> possible = EnumSet.noneOf(RobustnessResult.Verdict.class);
            for (double[] low : new double[][] {fastest, slowest}) {
                for (double[] high : new double[][] {fastest, slowest}) {
                    if (low.length > 0) {
                        possible.add(RobustnessResult.Verdict.of(NineInTen.low(low), NineInTen.high(high)));
                    }
                }
            }
            return possible;
        }

        private boolean isNearlyNone(int j) {
            return Arrays.stream(differences[j], 0, FIRST)
                    .allMatch(difference -> Math.abs(difference) < NEARLY_NONE * LapTimeDifference.COUNTS);
        }

        /** Differences of a setting if all to come are so much, s. */
        private double[] rests(int j, double rest) {
            double[] known = Arrays.stream(differences[j], 0, looked[j])
                    .filter(difference -> !Double.isNaN(difference))
                    .toArray();
            double[] all = Arrays.copyOf(known, known.length + draws - looked[j]);
            Arrays.fill(all, known.length, all.length, rest);
            return all;
        }

        List<AdjustmentVerdict> verdicts() {
            List<AdjustmentVerdict> verdicts = new ArrayList<>();
            for (int i = 0; i < judged.asked().size(); i++) {
                int place = i;
                verdicts.add(judged.asked()
                        .get(i)
                        .undrawn()
                        .orElseGet(() -> settled(place).orElseThrow()));
            }
            return verdicts;
        }
    }
}
