package dev.lapwright.evidence;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.TDistribution;
import org.apache.commons.math3.stat.StatUtils;

/** Comparison of two setups of a log by a model of the day, under several assumptions about it. */
final class Comparer {
    /** Laps that scatter by less than this are no measured times, s. */
    private static final double LEAST_SCATTER = 1e-6;
    /** With so few runs the answer leans on the prior, and it is said how much. */
    static final int FEW_RUNS = 3;
    /** From so many runs on their spread is looked at without a prior too. */
    private static final int MANY_RUNS = 6;

    private final Evidence how;
    private final CleanLaps laps;

    Comparer(TimingLog log, Evidence how) {
        this.how = how;
        laps = CleanLaps.of(log, how.rule());
        if (laps.clean().length == 0) {
            throw new InvalidValueException(
                    "lap log",
                    "of its " + log.laps().size() + " laps none is clean: each is flagged, or the first of its run",
                    "log more laps of each run, or count the first ones too");
        }
    }

    EvidenceResult result() {
        boolean several =
                laps.log().setups().stream().anyMatch(setup -> laps.clean(setup).length >= Evidence.LEAST_LAPS);
        if (several) {
            requireScatter(laps.log().setups());
        }
        DayModel day = DayModel.of(laps, how.prior());
        EvidenceResult.Course course = several ? course(day) : EvidenceResult.Course.FLAT;
        List<EvidenceResult.SetupPace> paces = laps.log().setups().stream()
                .map(setup -> EvidenceResult.SetupPace.of(laps, course, setup))
                .toList();
        Optional<EvidenceResult.Comparison> comparison = setups(paces).map(two -> comparison(day, two));
        return new EvidenceResult(how, laps, course, paces, comparison, plan(day, paces, comparison));
    }

    private static EvidenceResult.Course course(DayModel day) {
        List<EvidenceResult.Slope> slopes = day.courses().combinations().stream()
                .map(EvidenceResult.Slope::of)
                .toList();
        return new EvidenceResult.Course(
                slopes.get(0),
                slopes.get(1),
                slopes.get(2),
                day.middle().lapOfRun(),
                day.middle().lapOfSession());
    }

    /** Laps that are all equal were not measured. */
    private void requireScatter(List<String> setups) {
        double squares = 0;
        int count = 0;
        for (String setup : setups) {
            double[] times = laps.times(setup);
            squares += times.length > 1 ? (times.length - 1) * StatUtils.variance(times) : 0;
            count += times.length;
        }
        if (!(Math.sqrt(squares / count) > LEAST_SCATTER)) {
            throw new InvalidValueException(
                    "lap times",
                    "the " + count + " clean laps do not scatter at all, as measured ones do",
                    "give the times as they were measured, to the thousandth");
        }
    }

    /** The two to compare, if there are two. */
    private Optional<List<EvidenceResult.SetupPace>> setups(List<EvidenceResult.SetupPace> paces) {
        List<String> setups = laps.log().setups();
        String before = named("before", how.before(), setups);
        String after = named("after", how.after(), setups);
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
        return Optional.of(List.of(paces.get(setups.indexOf(before)), paces.get(setups.indexOf(after))));
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

    private EvidenceResult.Comparison comparison(DayModel day, List<EvidenceResult.SetupPace> two) {
        EvidenceResult.SetupPace before = two.get(0);
        EvidenceResult.SetupPace after = two.get(1);
        if (Math.min(before.clean(), after.clean()) < Evidence.LEAST_LAPS) {
            return new EvidenceResult.Comparison(
                    before,
                    after,
                    Map.of(),
                    Optional.empty(),
                    Optional.empty(),
                    new EvidenceResult.Verdict(EvidenceResult.Finding.OPEN, target(0), List.of()));
        }
        List<String> setups = List.of(before.setup(), after.setup());
        requireScatter(setups);
        MixedModel.Posterior posterior = day.posterior(setups.get(0), setups.get(1));
        NormalMixture known = posterior.combinations().get(0);
        MixedModel.Variances alone = day.model().reml(how.prior().mostCorrelation() > 0);
        double[] combination = day.difference(setups.get(0), setups.get(1));
        int runs = before.runs() + after.runs();
        OptionalDouble freedom = runs < MANY_RUNS
                ? OptionalDouble.empty()
                : OptionalDouble.of(Math.max(1, day.model().freedom(alone, combination)));
        Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences =
                differences(day, setups, EvidenceResult.Difference.of(known, how.share()), runs);
        freedom.ifPresent(degrees -> differences.put(
                EvidenceResult.Assumption.RUNS_ALONE,
                alone(day.model().at(alone).estimate(combination), degrees)));
        EvidenceResult.Scatter scatter = new EvidenceResult.Scatter(
                posterior.mean(MixedModel.Variances::lap),
                posterior.mean(MixedModel.Variances::run),
                alone.run(),
                posterior.mean(MixedModel.Variances::correlation),
                freedom);
        Optional<NormalMixture> together = how.predicted().isPresent()
                ? Optional.of(known.together(how.predicted().getAsDouble(), how.doubt()))
                : Optional.empty();
        return new EvidenceResult.Comparison(
                before, after, differences, Optional.of(scatter), together, verdict(differences, target(known.mean())));
    }

    /** Of further runs where the laps do not decide; of a whole day where there is one setup yet. */
    private Optional<DayPlan> plan(
            DayModel day, List<EvidenceResult.SetupPace> paces, Optional<EvidenceResult.Comparison> comparison) {
        if (comparison.isEmpty()) {
            EvidenceResult.SetupPace pace = paces.get(0);
            return pace.clean() < Evidence.LEAST_LAPS
                    ? Optional.empty()
                    : Optional.of(DayPlan.fresh(target(0), pace.spread(), how));
        }
        EvidenceResult.Comparison seen = comparison.get();
        if (seen.scatter().isEmpty() || seen.verdict().finding() != EvidenceResult.Finding.OPEN) {
            return Optional.empty();
        }
        List<String> setups = List.of(seen.before().setup(), seen.after().setup());
        return Optional.of(DayPlan.further(
                day, setups, seen.verdict().target(), day.posterior(setups.get(0), setups.get(1)), how));
    }

    /** By the t distribution, with the variances of greatest restricted likelihood. */
    private EvidenceResult.Difference alone(double[] estimate, double freedom) {
        TDistribution t = new TDistribution(null, freedom);
        double error = Math.sqrt(estimate[1]);
        double once = t.inverseCumulativeProbability(1 - LapsToSee.SIGNIFICANCE / 2) * error;
        double repeated = t.inverseCumulativeProbability(1 - how.share() / 2) * error;
        return new EvidenceResult.Difference(
                estimate[0],
                new NormalMixture.Interval(estimate[0] - once, estimate[0] + once),
                new NormalMixture.Interval(estimate[0] - repeated, estimate[0] + repeated),
                t.cumulativeProbability(-estimate[0] / error));
    }

    private Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences(
            DayModel day, List<String> setups, EvidenceResult.Difference decisive, int runs) {
        Evidence.Prior prior = how.prior();
        Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences =
                new EnumMap<>(EvidenceResult.Assumption.class);
        differences.put(EvidenceResult.Assumption.DAY, decisive);
        differences.put(EvidenceResult.Assumption.EVEN_DRIFT, under(day, setups, prior.drift(prior.drift(), 0)));
        differences.put(EvidenceResult.Assumption.NO_DRIFT, under(day, setups, prior.drift(0, 0)));
        if (runs <= FEW_RUNS && prior.runToRun() > 0) {
            differences.put(
                    EvidenceResult.Assumption.RUNS_HALF, under(day, setups, prior.runToRun(prior.runToRun() / 2)));
            differences.put(
                    EvidenceResult.Assumption.RUNS_TWICE, under(day, setups, prior.runToRun(prior.runToRun() * 2)));
        }
        return differences;
    }

    private EvidenceResult.Difference under(DayModel day, List<String> setups, Evidence.Prior prior) {
        return EvidenceResult.Difference.of(day.with(prior).known(setups.get(0), setups.get(1)), how.share());
    }

    /** The change to look for: that predicted, or else that seen if it is worth knowing. */
    private double target(double seen) {
        double predicted = Math.abs(how.predicted().orElse(0));
        return predicted > 0 ? predicted : Math.max(Math.abs(seen), how.worth());
    }

    static EvidenceResult.Verdict verdict(
            Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences, double target) {
        EvidenceResult.Difference decisive = differences.get(EvidenceResult.Assumption.DAY);
        boolean sure = decisive.repeated().isSure();
        List<EvidenceResult.Assumption> dissent = new ArrayList<>();
        for (EvidenceResult.Assumption assumption : EvidenceResult.Assumption.values()) {
            EvidenceResult.Difference other = differences.get(assumption);
            if (sure && other != null && !decisive.agrees(other)) {
                dissent.add(assumption);
            }
        }
        EvidenceResult.Finding finding = EvidenceResult.Finding.OPEN;
        if (sure && dissent.isEmpty()) {
            finding = EvidenceResult.Finding.REAL;
        } else if (decisive.repeated().low() > -target && decisive.repeated().high() < target) {
            finding = EvidenceResult.Finding.SMALLER;
        }
        return new EvidenceResult.Verdict(finding, target, dissent);
    }
}
