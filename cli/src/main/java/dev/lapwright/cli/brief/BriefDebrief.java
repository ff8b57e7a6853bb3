package dev.lapwright.cli.brief;

import dev.lapwright.brief.Debrief;
import dev.lapwright.brief.Proof;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.FitReport;
import dev.lapwright.results.Subject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Debrief after driving, said once for page, terminal and machines: each change as expected, as seen and together; what is known of the car
 * now; what is kept.
 *
 * @param debrief what was found
 */
public record BriefDebrief(Debrief debrief) {
    private static final int DECIMALS = 2;
    private static final int PERCENT = 100;

    /** Half of a 95 % interval of the normal distribution over its standard deviation (its tables). */
    private static final double NORMAL_95 = 1.96;

    private static final String NONE = "-";

    /** The changes, one row each: as they stand on the page, and in JSON. */
    public static final Table<Proof.Change> CHANGES = Table.<Proof.Change>of(
                    "Each change: what the model expected, what the laps show, and both together, give or take at 95 %; minus is faster")
            .words("", "Change", BriefDebrief::title)
            .value("before", Proof.Change::before)
            .value("after", Proof.Change::after)
            .text("Expected", "s a lap", change -> expected(change).orElse(NONE))
            .value(
                    "expectedS",
                    change -> change.expected()
                            .value()
                            .map(one -> one.difference())
                            .orElse(null))
            .value("expectedHalfS", change -> expectedHalf(change).orElse(null))
            .text("Seen", "s a lap", change -> seen(change).orElse(NONE))
            .value("seenS", change -> change.difference().map(one -> one.mean()).orElse(null))
            .value(
                    "seenHalfS",
                    change -> change.difference().map(one -> one.once().half()).orElse(null))
            .text("Together", "s a lap", change -> together(change).orElse(NONE))
            .value(
                    "togetherS",
                    change -> change.together().map(one -> one.mean()).orElse(null))
            .value("togetherHalfS", change -> togetherHalf(change).orElse(null))
            .text("Faster", "chances of 100", change -> chance(change).orElse(NONE))
            .value(
                    "chanceFaster",
                    change -> change.chance().isPresent() ? change.chance().getAsDouble() : null)
            .words("", "Then", change -> change.fate().label())
            .value(
                    "fate",
                    change -> change.fate().name().toLowerCase(Locale.ROOT).replace('_', ' '));

    /** Of settings that stand in both names those alone that differ are told first. */
    private static String title(Proof.Change change) {
        List<String> before = List.of(change.before().strip().split("[,;\\s]+"));
        List<String> more = new ArrayList<>(List.of(change.after().strip().split("[,;\\s]+")));
        boolean onTop = more.size() > before.size() && more.containsAll(before);
        more.removeAll(before);
        return onTop
                ? Report.verbatim(String.join(", ", more)) + " on top of " + Report.verbatim(String.join(", ", before))
                : Report.verbatim(change.after()) + " against " + Report.verbatim(change.before());
    }

    private static String giveOrTake(double mean, double half) {
        return Numbers.signed(mean, DECIMALS) + " ± " + Numbers.fixed(half, DECIMALS);
    }

    private static Optional<String> expected(Proof.Change change) {
        return change.expected()
                .value()
                .map(effect -> expectedHalf(change)
                        .map(half -> giveOrTake(effect.difference(), half))
                        .orElse(Numbers.signed(effect.difference(), DECIMALS)));
    }

    /** By the doubt with which it is weighed against the laps. */
    private static Optional<Double> expectedHalf(Proof.Change change) {
        return change.expected().isThere()
                ? change.seen()
                        .value()
                        .map(seen -> NORMAL_95 * seen.how().doubt())
                        .or(() -> change.doubt().map(standing -> NORMAL_95 * standing.deviation()))
                : Optional.empty();
    }

    private static Optional<String> seen(Proof.Change change) {
        return change.difference()
                .map(seen -> giveOrTake(seen.mean(), seen.once().half()));
    }

    private static Optional<Double> togetherHalf(Proof.Change change) {
        return change.together()
                .map(known -> known.interval(LapsToSee.SIGNIFICANCE).half());
    }

    private static Optional<String> together(Proof.Change change) {
        return change.together()
                .map(known -> giveOrTake(known.mean(), togetherHalf(change).orElseThrow()));
    }

    /** Never nought nor all: nobody knows that. */
    private static Optional<String> chance(Proof.Change change) {
        return change.chance().isEmpty()
                ? Optional.empty()
                : Optional.of(Numbers.fixed(
                        Math.max(
                                1,
                                Math.min(PERCENT - 1, PERCENT * change.chance().getAsDouble())),
                        0));
    }

    /** What each change came to, in one sentence; empty where nothing was driven, or with one setup alone. */
    public Optional<String> changes() {
        return debrief.proof()
                .value()
                .filter(proof -> !proof.changes().isEmpty())
                .map(proof -> String.join(
                                "; ",
                                proof.changes().stream().map(BriefDebrief::said).toList())
                        + ". Give or take at 95 %, minus is faster.");
    }

    private static String said(Proof.Change change) {
        List<String> parts = new ArrayList<>();
        expected(change).ifPresent(text -> parts.add("expected " + text));
        parts.add(seen(change).map(text -> "seen " + text).orElse("too few clean laps to see anything"));
        together(change).ifPresent(text -> parts.add("together " + text));
        return title(change) + ": " + String.join(", ", parts) + " s a lap"
                + chance(change)
                        .map(text -> ", faster by " + text + " chances in 100")
                        .orElse("")
                + ": " + change.fate().label();
    }

    /** What is kept, and for which car the rest is said; empty before driving. */
    public Optional<String> kept() {
        return debrief.proof().value().map(proof -> {
            if (!debrief.isKeptTold()) {
                return "Best stands " + Report.verbatim(proof.kept())
                        + ", but its name does not say what was set: all else here is said of the car as it was given. Name setups by"
                        + " what was set, as in " + example() + ", and the plan goes on from there.";
            }
            return "From here on the car stands as " + (debrief.kept().isEmpty() ? "it stood" : "kept: " + settings())
                    + ".";
        });
    }

    private String example() {
        return debrief.given().adjustments().isEmpty()
                ? "chassis.massKg=1250"
                : debrief.given().adjustments().get(0).name() + "=VALUE";
    }

    private String settings() {
        List<String> said = new ArrayList<>();
        debrief.kept().forEach((name, value) -> said.add(Subject.said(debrief.given(), name, value)));
        return String.join(", ", said);
    }

    /** What the laps told of the car, in a few sentences; empty where nothing was fitted. */
    public Optional<String> figures() {
        return debrief.fit()
                .value()
                .map(fit -> FitReport.figures(fit) + " All else here is said of the car so fitted, with that doubt."
                        + FitReport.culprits(fit).map(text -> " " + text).orElse(""));
    }

    /** All of it for machines. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put(
                "changes",
                debrief.proof()
                        .value()
                        .<Object>map(proof -> CHANGES.maps(proof.changes()))
                        .orElse(List.of()));
        tree.put("kept", debrief.proof().value().map(Proof::kept).orElse(null));
        tree.put("keptSettings", debrief.kept());
        tree.put(
                "scatterS",
                debrief.proof()
                        .value()
                        .filter(proof -> proof.scatter().isPresent())
                        .map(proof -> proof.scatter().getAsDouble())
                        .orElse(null));
        tree.put("fit", debrief.fit().value().map(FitReport::found).orElseGet(() -> {
            Map<String, Object> missing = new LinkedHashMap<>();
            missing.put("missing", debrief.fit().problem());
            missing.put("remedy", debrief.fit().remedy());
            return missing;
        }));
        List<String> reading = new ArrayList<>();
        changes().ifPresent(reading::add);
        kept().ifPresent(reading::add);
        figures().ifPresent(reading::add);
        tree.put("reading", reading.stream().map(Report::plain).toList());
        return tree;
    }
}
