package dev.lapwright.evidence;

import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.math3.stat.StatUtils;

/** The comparison of two setups of a log by the means of their clean laps. */
final class Comparer {
    /** Laps that scatter by less than this are no measured times, s. */
    private static final double LEAST_SCATTER = 1e-6;

    private final Evidence choices;
    private final CleanLaps laps;
    private final Trend trend;

    Comparer(TimingLog log, Evidence choices) {
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

    EvidenceResult result() {
        checkScatter();
        List<EvidenceResult.SetupPace> paces = laps.log().setups().stream()
                .map(setup -> EvidenceResult.SetupPace.of(laps, trend, setup))
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
            several |= without.length >= Evidence.LEAST_LAPS;
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

    private Optional<EvidenceResult.Comparison> comparison(List<EvidenceResult.SetupPace> paces) {
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

    private EvidenceResult.Comparison comparison(EvidenceResult.SetupPace before, EvidenceResult.SetupPace after) {
        int[] first = laps.clean(before.setup());
        int[] second = laps.clean(after.setup());
        double scatter = first.length + second.length > 2
                ? MeanDifference.Sample.pooled(sample(trend, first), sample(trend, second))
                : Double.NaN;
        if (first.length < Evidence.LEAST_LAPS || second.length < Evidence.LEAST_LAPS) {
            double target = target(0);
            int needed =
                    scatter > LEAST_SCATTER ? Math.max(Evidence.LEAST_LAPS, LapsToSee.perSetup(target, scatter)) : 0;
            EvidenceResult.Verdict verdict = EvidenceResult.Verdict.of(
                    EvidenceResult.Finding.TOO_FEW, target, needed, first.length, second.length);
            return new EvidenceResult.Comparison(before, after, scatter, Optional.empty(), Optional.empty(), verdict);
        }
        requireScatter(scatter, first.length + second.length);
        Map<Trend.Kind, MeanDifference> byTrend = differences(first, second);
        MeanDifference welch = byTrend.get(choices.trend());
        EvidenceResult.Tests tests = new EvidenceResult.Tests(
                welch,
                RankSum.of(without(trend, first), without(trend, second)),
                bootstrap(before.setup(), after.setup()),
                byTrend);
        Optional<EvidenceResult.ReturnCheck> returned = returned(first, second);
        double target = target(welch.difference());
        int needed = LapsToSee.perSetup(target, scatter);
        EvidenceResult.Finding finding = finding(welch, returned, Math.min(first.length, second.length) >= needed);
        return new EvidenceResult.Comparison(
                before,
                after,
                scatter,
                Optional.of(tests),
                returned,
                EvidenceResult.Verdict.of(finding, target, needed, first.length, second.length));
    }

    private Map<Trend.Kind, MeanDifference> differences(int[] first, int[] second) {
        Map<Trend.Kind, MeanDifference> byTrend = new EnumMap<>(Trend.Kind.class);
        for (Trend.Kind kind : Trend.Kind.values()) {
            byTrend.put(kind, contrast(Trend.of(laps, kind), List.of(first, second), -1, 1));
        }
        return byTrend;
    }

    /** The differences of the means alone, for each way to take out a trend. */
    static Map<Trend.Kind, MeanDifference> differences(TimingLog log, String before, String after) {
        Comparer comparer = new Comparer(log, Evidence.DEFAULT);
        return comparer.differences(comparer.laps.clean(before), comparer.laps.clean(after));
    }

    /** The change to look for: that predicted, or else that seen if it is worth knowing. */
    private double target(double seen) {
        double predicted = Math.abs(choices.predicted().orElse(0));
        return predicted > 0 ? predicted : Math.max(Math.abs(seen), choices.worth());
    }

    static EvidenceResult.Finding finding(
            MeanDifference welch, Optional<EvidenceResult.ReturnCheck> returned, boolean enough) {
        boolean drifted = returned.map(EvidenceResult.ReturnCheck::drifted).orElse(false);
        if (drifted) {
            return returned.get().isBeyondBoth() ? EvidenceResult.Finding.REAL : EvidenceResult.Finding.DRIFTED;
        }
        if (welch.isSignificant()) {
            return EvidenceResult.Finding.REAL;
        }
        return enough ? EvidenceResult.Finding.NOT_SHOWN : EvidenceResult.Finding.TOO_FEW;
    }

    private Optional<EvidenceResult.ReturnCheck> returned(int[] first, int[] second) {
        int from = second[0];
        int to = second[second.length - 1];
        int[] early = Arrays.stream(first).filter(i -> i < from).toArray();
        int[] late = Arrays.stream(first).filter(i -> i > to).toArray();
        if (early.length < 2 || late.length < 2) {
            return Optional.empty();
        }
        return Optional.of(new EvidenceResult.ReturnCheck(
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

    private MeanDifference.Sample sample(Trend other, int... indices) {
        return MeanDifference.Sample.of(without(other, indices)).inflated(other.inflation());
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
            TimingLog.Lap lap = laps.log().laps().get(clean[k]);
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
