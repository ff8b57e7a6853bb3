package dev.lapwright.cli.study;

import dev.lapwright.cli.output.Console;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.evidence.MeanDifference;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;

/** The plain answer. */
public final class EvidenceVerdict {
    private final EvidenceResult result;

    public EvidenceVerdict(EvidenceResult result) {
        this.result = result;
    }

    public String text(Console console) {
        if (result.comparison().isEmpty()) {
            return console.bold("Nothing to compare:") + " all laps are with one setup, "
                    + result.paces().get(0).setup() + ". Name the setups in a column setup." + plan();
        }
        EvidenceResult.Comparison comparison = result.comparison().get();
        EvidenceResult.Verdict verdict = comparison.verdict();
        List<String> sentences = new ArrayList<>();
        switch (verdict.finding()) {
            case REAL -> real(console, comparison, sentences);
            case NOT_SHOWN -> notShown(console, comparison, sentences);
            case DRIFTED -> drifted(console, comparison, sentences);
            case TOO_FEW -> tooFew(console, comparison, sentences);
        }
        comparison.tests().ifPresent(tests -> doubts(tests, sentences));
        return String.join(" ", sentences);
    }

    /** What a test against another setup would take. */
    private String plan() {
        double spread = result.paces().get(0).spread();
        double change =
                Math.abs(result.choices().predicted().orElse(result.choices().worth()));
        if (!(spread > 0) || !(change > 0)) {
            return "";
        }
        int needed = LapsToSee.perSetup(change, spread);
        return needed == Integer.MAX_VALUE
                ? ""
                : " With this spread it takes " + EvidenceReport.count(needed, "clean lap")
                        + " with each of two setups to see a change of " + Numbers.fixed(change, 3)
                        + " s four times in five.";
    }

    private static MeanDifference decisive(EvidenceResult.Comparison comparison) {
        boolean drifted =
                comparison.returned().map(EvidenceResult.ReturnCheck::drifted).orElse(false);
        return drifted
                ? comparison.returned().get().bracketed()
                : comparison.tests().orElseThrow().welch();
    }

    private void real(Console console, EvidenceResult.Comparison comparison, List<String> sentences) {
        MeanDifference difference = decisive(comparison);
        sentences.add(console.bold("Real:") + " " + comparison.after().setup() + " is "
                + (difference.difference() < 0 ? "faster" : "slower") + " than "
                + comparison.before().setup() + " by "
                + Numbers.fixed(Math.abs(difference.difference()), 3) + " s a lap, give or take "
                + Numbers.fixed(difference.high() - difference.difference(), 3) + ".");
        if (comparison.returned().map(EvidenceResult.ReturnCheck::drifted).orElse(false)) {
            sentences.add("The old setup drifted meanwhile, but the new one lies beyond both its runs; an even drift is"
                    + " taken out.");
        }
        result.choices()
                .predicted()
                .ifPresent(predicted -> sentences.add(
                        EvidenceReport.inside(difference, predicted)
                                ? "The model's prediction fits the laps."
                                : "The model predicted something else: believe the laps, and look for what it does not"
                                        + " know."));
        returnWanted(comparison, sentences);
    }

    private static void returnWanted(EvidenceResult.Comparison comparison, List<String> sentences) {
        if (comparison.returned().isEmpty()) {
            sentences.add("But tyres, road, air and driver changed with the setup; only running "
                    + comparison.before().setup() + " again can tell them apart.");
        } else if (!comparison.returned().get().drifted()
                && !comparison.returned().get().cameBack()) {
            sentences.add("Whether " + comparison.before().setup()
                    + " came back, these laps cannot tell to within that difference: run it longer.");
        }
    }

    private static void notShown(Console console, EvidenceResult.Comparison comparison, List<String> sentences) {
        MeanDifference difference = comparison.tests().orElseThrow().welch();
        EvidenceResult.Verdict verdict = comparison.verdict();
        sentences.add(
                console.bold("Not shown:") + " with a scatter of " + Numbers.fixed(comparison.scatter(), 3) + " s, "
                        + EvidenceReport.count(verdict.needed(), "clean lap")
                        + " with each setup would show a change of " + Numbers.fixed(verdict.target(), 3)
                        + " s four times in five, and these do not.");
        sentences.add("If there is a change, it lies between " + Numbers.signed(difference.low(), 3) + " and "
                + Numbers.signed(difference.high(), 3) + " s.");
    }

    private static void drifted(Console console, EvidenceResult.Comparison comparison, List<String> sentences) {
        EvidenceResult.ReturnCheck check = comparison.returned().orElseThrow();
        String before = comparison.before().setup();
        sentences.add(console.bold("Not shown:") + " " + before + " did not come back when it was run again, but was "
                + Numbers.fixed(Math.abs(check.change().difference()), 3) + " s "
                + (check.change().difference() < 0 ? "faster" : "slower")
                + ": something else changed by as much as the change looked for. Run "
                + comparison.after().setup()
                + " and " + before + " again, in short runs by turns.");
    }

    private void tooFew(Console console, EvidenceResult.Comparison comparison, List<String> sentences) {
        EvidenceResult.Verdict verdict = comparison.verdict();
        sentences.add(console.bold("Too few laps to tell:"));
        if (comparison.tests().isEmpty()) {
            sentences.add(comparison.before().clean() + " clean with "
                    + comparison.before().setup() + " and "
                    + comparison.after().clean() + " with " + comparison.after().setup() + ", where no fewer than "
                    + Evidence.LEAST_LAPS + " of each are tested.");
        }
        if (verdict.needed() == 0) {
            sentences.add("Run some more with each, to know how they scatter.");
            return;
        }
        String change = Numbers.fixed(verdict.target(), 3) + " s"
                + (result.choices().predicted().isPresent() ? ", as predicted," : "");
        String scatter = (comparison.tests().isPresent() ? "with" : "With") + " a scatter of "
                + Numbers.fixed(comparison.scatter(), 3) + " s ";
        if (verdict.needed() == Integer.MAX_VALUE) {
            sentences.add(scatter + "a change of " + change + " takes more than a million laps to see.");
            return;
        }
        sentences.add(scatter + "it takes " + EvidenceReport.count(verdict.needed(), "clean lap")
                + " with each setup to see a change of " + change + " four times in five.");
        sentences.add("Run " + verdict.moreBefore() + " more with "
                + comparison.before().setup() + " and " + verdict.moreAfter() + " more with "
                + comparison.after().setup() + ", by turns.");
    }

    private void doubts(EvidenceResult.Tests tests, List<String> sentences) {
        boolean significant = tests.welch().isSignificant();
        if (!tests.rankSumAgrees()) {
            sentences.add(
                    significant
                            ? "Mann-Whitney does not agree: a few laps make the difference."
                            : "Mann-Whitney does see a difference: a few odd laps may hide it from the means.");
        }
        if (!tests.bootstrapAgrees()) {
            sentences.add("The bootstrap does not agree: it is a close call.");
        }
    }
}
