package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.SuggestedSetup;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.results.DifferenceWords;
import java.util.ArrayList;
import java.util.List;

/** Section of a brief on the setup: the suggested one beside the current one. */
public final class BriefSetup {
    private final BriefReport brief;
    private final Car now;

    public BriefSetup(BriefReport brief) {
        this.brief = brief;
        this.now = brief.result().car();
    }

    public Page.Section section() {
        BriefResult.Part<SuggestedSetup> part = brief.result().suggestion();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "setup",
                "The fastest setup found beside the current one",
                "The setup with the fewest changes that is within " + DifferenceWords.least()
                        + " of the best that the model finds on legal settings: where the plan on the first sheet leads, and not to be"
                        + " gone to in one step.",
                blocks);
    }

    private void fill(List<Page.Block> blocks, SuggestedSetup found) {
        blocks.add(Page.Block.paragraph(inAll(found)));
        if (!now.adjustments().isEmpty()) {
            blocks.add(Page.Block.subheading("The whole setup sheet"));
            blocks.add(sheet(found));
        }
        if (!found.chosen()) {
            blocks.add(Page.Block.paragraph(named(found)));
        }
    }

    private String inAll(SuggestedSetup found) {
        String lap = Numbers.lapTime(brief.result().lap().time());
        if (found.changes().isEmpty()) {
            return "No legal setup found is worth changing to: yours, at " + lap + ", is within "
                    + DifferenceWords.least() + " of the best.";
        }
        BriefResult.ChangeEffect effect = found.effect();
        List<String> sectors = new ArrayList<>();
        for (int i = 0; i < effect.bySector().size(); i++) {
            sectors.add(Numbers.signed(effect.bySector().get(i), 3) + " s in sector " + (i + 1));
        }
        String bySector = sectors.size() > 1 ? " By sector: " + String.join(", ", sectors) + "." : "";
        return "From " + lap + " as the car stands to "
                + Numbers.lapTime(brief.result().lap().time() + effect.difference()) + ": "
                + DifferenceWords.said(effect.difference()) + ", of which " + Numbers.signed(effect.inCorners(), 3)
                + " s in corners and " + Numbers.signed(effect.onStraights(), 3) + " s on straights (minus is faster)."
                + bySector + left(found);
    }

    private static String left(SuggestedSetup found) {
        double left = found.leftToBest();
        return LapTimeDifference.isFaster(left)
                ? " The very best found has more changes and is only " + DifferenceWords.than(left, "that") + "."
                : " Nothing found is faster.";
    }

    private Page.Block sheet(SuggestedSetup found) {
        Table<Adjustment> table = Table.<Adjustment>of("Every adjustment of the car; what changes stands out")
                .words("", "Adjustment", BriefWords::name)
                .text("Now", "", adjustment -> BriefWords.setting(adjustment, now.setting(adjustment.name())))
                .text(
                        "Suggested",
                        "",
                        adjustment -> BriefWords.setting(adjustment, found.car().setting(adjustment.name())))
                .text(
                        "Change",
                        "",
                        adjustment -> moved(found, adjustment)
                                ? Numbers.signed(
                                        found.car().setting(adjustment.name()) - now.setting(adjustment.name()))
                                : "–")
                .marking(adjustment -> moved(found, adjustment));
        return Page.Block.table(table, now.adjustments());
    }

    private boolean moved(SuggestedSetup found, Adjustment adjustment) {
        double from = now.setting(adjustment.name());
        double to = found.car().setting(adjustment.name());
        return Math.abs(to - from) > 1e-9 * Math.max(1, Math.abs(from));
    }

    /** What alone was allowed to turn. */
    private String named(SuggestedSetup found) {
        List<String> names = found.study().search().axes().stream()
                .map(axis -> BriefWords.inSentence(now.adjustment(axis.name())))
                .toList();
        return "Only what was named was allowed to turn: " + BriefWords.listed(names) + ".";
    }
}
