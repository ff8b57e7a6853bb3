package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Proof;
import dev.lapwright.brief.SuggestedSetup;
import dev.lapwright.brief.TestPlan;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Summary of a brief in a few sentences. */
public final class BriefShort {
    private static final int MOST_CHANGES = 3;
    private static final int MOST_LEFT = 6;
    private static final int MOST_LIMITS = 3;

    private final BriefResult result;
    private final Optional<BriefLines> lines;

    public BriefShort(BriefReport brief) {
        result = brief.result();
        lines = brief.lines();
    }

    public List<Page.Fact> facts() {
        List<Page.Fact> facts = new ArrayList<>();
        facts.add(new Page.Fact("The lap", lap()));
        worthDoing().ifPresent(text -> facts.add(new Page.Fact("Worth doing", text)));
        leaveAlone().ifPresent(text -> facts.add(new Page.Fact("Leave alone", text)));
        result.tests().value().ifPresent(plan -> facts.add(new Page.Fact("Test", tests(plan))));
        result.stint().value().ifPresent(found -> facts.add(new Page.Fact("Fuel", BriefTyresAndFuel.carry(found))));
        proved().ifPresent(text -> facts.add(new Page.Fact("Driven", text)));
        return facts;
    }

    private String lap() {
        LapFigures figures = result.lap().figures();
        List<Map.Entry<Limit, Double>> shares =
                new ArrayList<>(result.lap().limitShares().entrySet());
        shares.sort((a, b) -> Double.compare(b.getValue(), a.getValue()));
        List<String> said = shares.stream()
                .filter(share -> share.getValue() >= 0.005)
                .limit(MOST_LIMITS)
                .map(share -> share.getKey().label() + " (" + Numbers.fixed(100 * share.getValue(), 0) + " %)")
                .toList();
        return Numbers.lapTime(result.lap().time()) + " as the car stands, at "
                + whole(figures.meanSpeed()) + " km/h on average and "
                + whole(figures.topSpeed()) + " km/h at the most. What limits it, by time: "
                + BriefWords.listed(said) + "."
                + lines.map(own -> " On the line that is fastest for it: " + Numbers.lapTime(own.lapTime()) + ".")
                        .orElse("");
    }

    private static String whole(double speed) {
        return Numbers.fixed(Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR), 0);
    }

    private Optional<String> worthDoing() {
        Optional<SuggestedSetup> suggested = result.suggestion().value();
        if (suggested.isPresent() && !suggested.get().changes().isEmpty()) {
            return Optional.of(changes(suggested.get()));
        }
        return result.sensitivity().value().map(BriefShort::singly);
    }

    private String changes(SuggestedSetup suggested) {
        List<SuggestedSetup.Change> all = suggested.changes();
        List<String> said = all.stream()
                .limit(MOST_CHANGES)
                .map(change -> BriefWords.change(change.change()) + worth(change))
                .toList();
        String rest = all.size() > MOST_CHANGES ? "; " + more(all.size() - MOST_CHANGES) : "";
        return BriefWords.sentence(BriefWords.listed(said) + rest)
                + (all.size() > 1 ? " Together " : " That is ")
                + DifferenceWords.size(suggested.effect().difference()) + " a lap "
                + DifferenceWords.way(suggested.effect().difference()) + ": "
                + Numbers.lapTime(result.lap().time() + suggested.effect().difference()) + "."
                + lines.flatMap(BriefLines::setup)
                        .map(check -> " " + check.reading("it"))
                        .orElse("");
    }

    private static String more(int count) {
        return count + (count == 1 ? " more is below" : " more are below");
    }

    private static String worth(SuggestedSetup.Change change) {
        return change.undone()
                .value()
                .filter(effect -> LapTimeDifference.isFaster(effect.difference()))
                .map(effect -> " (" + BriefWords.signed(effect.difference()) + " s)")
                .orElse("");
    }

    private static String singly(BriefResult.Priorities found) {
        if (found.worthChanging().isEmpty()) {
            return "Nothing: no single change makes the lap faster by " + DifferenceWords.least() + ".";
        }
        List<String> said = found.worthChanging().stream()
                .sorted(Comparator.comparingDouble(
                        (SensitivityResult.Worth worth) -> worth.best().difference()))
                .limit(MOST_CHANGES)
                .map(worth -> BriefWords.inSentence(worth.adjustment()) + " to "
                        + BriefWords.setting(worth.adjustment(), worth.best().setting()) + " ("
                        + BriefWords.signed(worth.best().difference()) + " s)")
                .toList();
        return BriefWords.sentence(BriefWords.listed(said))
                + (said.size() == 1 ? "" : " Each by itself: they need not add up.");
    }

    private Optional<String> leaveAlone() {
        List<SensitivityResult.Worth> left = result.sensitivity()
                .value()
                .map(BriefResult.Priorities::notWorthChanging)
                .orElse(List.of());
        if (left.isEmpty()) {
            return Optional.empty();
        }
        List<String> names = new ArrayList<>(left.stream()
                .limit(MOST_LEFT)
                .map(worth -> BriefWords.inSentence(worth.adjustment()))
                .toList());
        if (left.size() > MOST_LEFT) {
            names.add((left.size() - MOST_LEFT) + " more");
        }
        return Optional.of(BriefWords.sentence(BriefWords.listed(names))
                + (left.size() == 1 ? " By itself it does not make" : " By themselves none of them makes")
                + " the lap faster by " + DifferenceWords.least() + ".");
    }

    private static String tests(TestPlan plan) {
        List<TestPlan.Run> drive = plan.toDrive();
        String laps = plan.laps() + " laps that scatter by " + Numbers.plain(plan.scatter()) + " s";
        if (drive.isEmpty()) {
            return "In " + laps + " no change is large enough to show on the timing screen.";
        }
        String count = drive.size() == 1 ? "one test is" : drive.size() + " tests are";
        return "In " + laps + " " + count + " worth driving; begin with " + first(drive.get(0)) + ", "
                + drive.get(0).laps() + " laps.";
    }

    private static String first(TestPlan.Run run) {
        return run.isWhole()
                ? "the suggested setup as a whole"
                : BriefWords.change(run.changes().get(0));
    }

    private Optional<String> proved() {
        return result.proof()
                .value()
                .filter(proof -> !proof.changes().isEmpty())
                .map(proof -> String.join(
                                "; ",
                                proof.changes().stream().map(BriefShort::proved).toList()) + ".");
    }

    /** A change as its setups are named in the log. */
    private static String proved(Proof.Change change) {
        return change.after() + " against " + change.before() + ": "
                + change.comparison()
                        .map(comparison -> comparison.verdict().finding().label())
                        .orElse("cannot be compared")
                + change.difference()
                        .map(seen -> ", " + Numbers.signed(seen.mean(), 3) + " s a lap")
                        .orElse("")
                + change.expected()
                        .value()
                        .map(effect -> ", where the model expected " + Numbers.signed(effect.difference(), 3) + " s")
                        .orElse("");
    }
}
