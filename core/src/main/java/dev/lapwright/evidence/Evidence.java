package dev.lapwright.evidence;

import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;

/** Whether a change of setup shows in a log of lap times. */
public final class Evidence {
    /** Fewer clean laps than this with a setup are not tested: common practice, no source. */
    public static final int LEAST_LAPS = 3;

    /** Laps that scatter by less than this are no measured times, s. */
    private static final double LEAST_SCATTER = 1e-6;

    private final EvidenceChoices choices;
    private final CleanLaps laps;
    private final Trend trend;

    private Evidence(TimingLog log, EvidenceChoices choices) {
        this.choices = choices;
        laps = CleanLaps.of(log, choices.rule());
        if (laps.clean().length == 0) {
            throw new InvalidValueException(
                    "lap log",
                    "of its " + log.laps().size() + " laps none is clean: each is flagged, or the first of its run",
                    "log more laps of each run, or count the first ones too");
        }
        trend = Trend.of(laps, choices.trend());
    }

    /**
     * What a log shows.
     *
     * @throws InvalidValueException if no lap is clean, the laps do not scatter, or it is not clear which setups to compare
     */
    public static EvidenceResult of(TimingLog log, EvidenceChoices choices) {
        return new Evidence(log, choices).result();
    }

    private EvidenceResult result() {
        checkScatter();
        List<SetupPace> paces = laps.log().setups().stream()
                .map(setup -> SetupPace.of(laps, trend, setup))
                .toList();
        return new EvidenceResult(choices, laps, trend, paces, comparison(paces));
    }

    /** Laps that are all equal were not measured. */
    private void checkScatter() {
        int[] clean = laps.clean();
        boolean several = false;
        double squares = 0;
        for (String setup : laps.log().setups()) {
            double[] without = without(trend, laps.clean(setup));
            several |= without.length >= LEAST_LAPS;
            squares += without.length > 1 ? (without.length - 1) * StatUtils.variance(without) : 0;
        }
        if (several) {
            requireScatter(Math.sqrt(squares / clean.length), clean.length);
        }
    }

    private static void requireScatter(double scatter, int count) {
        if (!(scatter > LEAST_SCATTER)) {
            throw new InvalidValueException(
                    "lap times",
                    "the " + count + " clean laps do not scatter at all, as measured ones do",
                    "give the times as they were measured, to the thousandth");
        }
    }

    private Optional<SetupComparison> comparison(List<SetupPace> paces) {
        List<String> setups = laps.log().setups();
        String before = named("before", choices.before(), setups);
        String after = named("after", choices.after(), setups);
        if (setups.size() == 1 && before.isEmpty() && after.isEmpty()) {
            return Optional.empty();
        }
        boolean open = before.isEmpty() || after.isEmpty();
        if (open && setups.size() > 2) {
            throw new InvalidValueException(
                    "setups",
                    "the log holds " + setups.size() + ": " + String.join(", ", setups),
                    "say which one to compare with (before), and which one to judge (after)");
        }
        if (before.isEmpty()) {
            before = setups.get(after.equals(setups.get(0)) ? setups.size() - 1 : 0);
        }
        if (after.isEmpty()) {
            after = setups.get(before.equals(setups.get(0)) ? setups.size() - 1 : 0);
        }
        if (before.equals(after)) {
            throw new InvalidValueException("setups", "both are " + before, "name two setups of the log");
        }
        return Optional.of(comparison(paces.get(setups.indexOf(before)), paces.get(setups.indexOf(after))));
    }

    private static String named(String role, String name, List<String> setups) {
        if (!name.isEmpty() && !setups.contains(name)) {
            throw new InvalidValueException(
                    "setup " + role,
                    "no lap was driven with '" + name + "'",
                    "the log holds: " + String.join(", ", setups));
        }
        return name;
    }

    private SetupComparison comparison(SetupPace before, SetupPace after) {
        int[] first = laps.clean(before.setup());
        int[] second = laps.clean(after.setup());
        double scatter = first.length + second.length > 2
                ? Sample.pooled(sample(trend, first), sample(trend, second))
                : Double.NaN;
        if (first.length < LEAST_LAPS || second.length < LEAST_LAPS) {
            double target = target(0);
            int needed = scatter > LEAST_SCATTER ? Math.max(LEAST_LAPS, LapsToSee.perSetup(target, scatter)) : 0;
            Verdict verdict = Verdict.of(Finding.TOO_FEW, target, needed, first.length, second.length);
            return new SetupComparison(before, after, scatter, Optional.empty(), Optional.empty(), verdict);
        }
        requireScatter(scatter, first.length + second.length);
        Map<TrendKind, MeanDifference> byTrend = differences(first, second);
        MeanDifference welch = byTrend.get(choices.trend());
        DifferenceTests tests = new DifferenceTests(
                welch,
                RankSum.of(without(trend, first), without(trend, second)),
                bootstrap(before.setup(), after.setup()),
                byTrend);
        Optional<ReturnCheck> returned = returned(first, second);
        double target = target(welch.difference());
        int needed = LapsToSee.perSetup(target, scatter);
        Finding finding = finding(welch, returned, Math.min(first.length, second.length) >= needed);
        return new SetupComparison(
                before,
                after,
                scatter,
                Optional.of(tests),
                returned,
                Verdict.of(finding, target, needed, first.length, second.length));
    }

    private Map<TrendKind, MeanDifference> differences(int[] first, int[] second) {
        Map<TrendKind, MeanDifference> byTrend = new EnumMap<>(TrendKind.class);
        for (TrendKind kind : TrendKind.values()) {
            byTrend.put(kind, contrast(Trend.of(laps, kind), List.of(first, second), -1, 1));
        }
        return byTrend;
    }

    /** The differences of the means alone, for each way to take out a trend. */
    static Map<TrendKind, MeanDifference> differences(TimingLog log, String before, String after) {
        Evidence evidence = new Evidence(log, EvidenceChoices.DEFAULT);
        return evidence.differences(evidence.laps.clean(before), evidence.laps.clean(after));
    }

    /** The change to look for: that predicted, or else that seen if it is worth knowing. */
    private double target(double seen) {
        double predicted = Math.abs(choices.predicted().orElse(0));
        return predicted > 0 ? predicted : Math.max(Math.abs(seen), choices.worth());
    }

    static Finding finding(MeanDifference welch, Optional<ReturnCheck> returned, boolean enough) {
        boolean drifted = returned.map(ReturnCheck::drifted).orElse(false);
        if (drifted) {
            return returned.get().isBeyondBoth() ? Finding.REAL : Finding.DRIFTED;
        }
        if (welch.isSignificant()) {
            return Finding.REAL;
        }
        return enough ? Finding.NOT_SHOWN : Finding.TOO_FEW;
    }

    private Optional<ReturnCheck> returned(int[] first, int[] second) {
        int from = second[0];
        int to = second[second.length - 1];
        int[] early = Arrays.stream(first).filter(i -> i < from).toArray();
        int[] late = Arrays.stream(first).filter(i -> i > to).toArray();
        if (early.length < 2 || late.length < 2) {
            return Optional.empty();
        }
        return Optional.of(new ReturnCheck(
                early.length,
                late.length,
                contrast(trend, List.of(early, late), -1, 1),
                contrast(trend, List.of(early, late, second), -0.5, -0.5, 1)));
    }

    private MeanDifference contrast(Trend other, List<int[]> samples, double... weights) {
        double lever = 0;
        for (int k = 0; k < weights.length; k++) {
            for (int lap : samples.get(k)) {
                lever += weights[k] * Trend.x(laps.log(), lap, other.kind()) / samples.get(k).length;
            }
        }
        // What is not known of the slope is not known of a difference between laps that lie apart.
        double more = lever * lever * other.error() * other.error();
        return MeanDifference.of(
                samples.stream().map(sample -> sample(other, sample)).toList(),
                weights,
                more,
                Math.max(1, other.freedom()));
    }

    private Sample sample(Trend other, int... indices) {
        return Sample.of(without(other, indices)).inflated(other.inflation());
    }

    private double[] without(Trend other, int... indices) {
        return Arrays.stream(indices)
                .mapToDouble(i -> other.without(laps.log(), i))
                .toArray();
    }

    private BootstrapInterval bootstrap(String before, String after) {
        int[] clean = laps.clean();
        // Only setups with clean laps have a place to draw from.
        List<String> setups = laps.log().setups().stream()
                .filter(setup -> laps.clean(setup).length > 0)
                .toList();
        int[] stratum = new int[clean.length];
        int[] group = new int[clean.length];
        double[] x = new double[clean.length];
        double[] y = new double[clean.length];
        double level = laps.log().laps().get(clean[0]).time();
        for (int k = 0; k < clean.length; k++) {
            TimedLap lap = laps.log().laps().get(clean[k]);
            stratum[k] = setups.indexOf(lap.setup());
            group[k] = Trend.group(laps.log(), clean[k], trend.kind());
            x[k] = Trend.x(laps.log(), clean[k], trend.kind()) - trend.reference();
            y[k] = lap.time() - level;
        }
        return BootstrapInterval.of(
                new BootstrapInterval.Points(stratum, group, x, y),
                setups.indexOf(before),
                setups.indexOf(after),
                trend.isTaken(),
                choices.resamples(),
                choices.seed());
    }
}
