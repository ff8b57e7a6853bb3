package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Standings;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Summary of a brief in a few sentences. */
public final class BriefShort {
    private static final int MOST_LIMITS = 3;

    private final BriefResult result;
    private final Optional<BriefLines> lines;
    private final BriefPlan plan;

    public BriefShort(BriefReport brief) {
        result = brief.result();
        lines = brief.lines();
        plan = new BriefPlan(brief);
    }

    public List<Page.Fact> facts() {
        List<Page.Fact> facts = new ArrayList<>(driven());
        facts.add(new Page.Fact("The lap", lap()));
        heard().ifPresent(text -> facts.add(new Page.Fact("The driver", text)));
        plan.reading().ifPresent(text -> facts.add(new Page.Fact("Change", text + ownLine())));
        List<String> verdicts = plan.verdicts().stream()
                .map(fact -> fact.name() + ": " + fact.text())
                .toList();
        if (!verdicts.isEmpty()) {
            facts.add(new Page.Fact("The others", String.join(" ", verdicts)));
        }
        result.pressures()
                .value()
                .flatMap(BriefTyresAndFuel::worth)
                .ifPresent(text -> facts.add(new Page.Fact("Pressures", text)));
        result.tests()
                .value()
                .ifPresent(found ->
                        facts.add(new Page.Fact("Test", BriefRunCard.shortly(found, result.isScatterLogged()))));
        result.stint().value().ifPresent(found -> facts.add(new Page.Fact("Fuel", BriefTyresAndFuel.carry(found))));
        return facts;
    }

    /** What the driver's words leave, and what was said before them; empty where there are none. */
    Optional<String> heard() {
        return result.heard()
                .map(heard -> "What the driver says goes with " + heard.left() + " of " + heard.drawn()
                        + " cars that this one may be; all intervals and chances are those of cars that it goes with."
                        + heard.before()
                                .map(before -> " Without it the whole plan would be " + Standings.interval(before)
                                        + " s in nine of ten, faster on "
                                        + Numbers.fixed(100.0 * before.gains() / before.laps(), 0) + " %.")
                                .orElse(""));
    }

    /** What was driven, and what it comes to; empty before driving. */
    List<Page.Fact> driven() {
        BriefDebrief debrief = new BriefDebrief(result.debrief());
        List<Page.Fact> facts = new ArrayList<>();
        debrief.changes().ifPresent(text -> facts.add(new Page.Fact("Driven", text)));
        debrief.figures().ifPresent(text -> facts.add(new Page.Fact("Known now", text)));
        debrief.kept().ifPresent(text -> facts.add(new Page.Fact("Kept", text)));
        return facts;
    }

    /** What the fastest line found anew makes of the plan; empty where no line is driven. */
    String ownLine() {
        return lines.flatMap(BriefLines::setup)
                .map(check -> " " + check.reading("it"))
                .orElse("");
    }

    String lap() {
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
}
