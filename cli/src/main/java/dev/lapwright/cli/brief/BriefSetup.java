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
import java.util.Optional;

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
                "The suggested setup beside the current one",
                "The setup with the fewest changes that is within " + DifferenceWords.least()
                        + " of the best that the model finds on legal settings; each change with what it is worth in"
                        + " that setup and why.",
                blocks);
    }

    private void fill(List<Page.Block> blocks, SuggestedSetup found) {
        blocks.add(Page.Block.paragraph(inAll(found)));
        brief.lines()
                .flatMap(BriefLines::setup)
                .ifPresent(check -> blocks.add(Page.Block.paragraph(check.reading("it") + " Lap times there: "
                        + Numbers.lapTime(check.before()) + " as the car stands, " + Numbers.lapTime(check.after())
                        + " in the suggested setup.")));
        if (!found.changes().isEmpty()) {
            blocks.add(changes(found));
            together(found).ifPresent(text -> blocks.add(Page.Block.paragraph(text)));
        }
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

    private static Page.Block changes(SuggestedSetup found) {
        Table<SuggestedSetup.Change> table = Table.<SuggestedSetup.Change>of("The changes, the one worth most first")
                .words("", "Change", change -> BriefWords.name(change.change().adjustment()))
                .text(
                        "Now",
                        "",
                        change -> BriefWords.setting(
                                change.change().adjustment(), change.change().from()))
                .text(
                        "Suggested",
                        "",
                        change -> BriefWords.setting(
                                change.change().adjustment(), change.change().to()))
                .text(
                        "Worth",
                        "s",
                        change -> change.undone()
                                .value()
                                .map(effect -> BriefWords.signed(effect.difference()))
                                .orElse("limit"))
                .words("", "Why", BriefSetup::why)
                .with(Table.Trait.LONG);
        return Page.Block.table(table, found.changes());
    }

    private static String why(SuggestedSetup.Change change) {
        Optional<BriefResult.ChangeEffect> undone = change.undone().value();
        if (undone.isEmpty()) {
            return BriefWords.sentence(
                    "it cannot be put back alone: " + change.undone().problem());
        }
        String alone = change.alone()
                .value()
                .map(effect -> " Made alone: " + DifferenceWords.said(effect.difference()) + ".")
                .orElse("");
        double difference = undone.get().difference();
        String lead = LapTimeDifference.isNone(difference)
                ? "Needed by the others rather than by itself"
                : (difference < 0 ? "" : "costs a little, for the sake of the others: ")
                        + BriefWords.where(undone.get());
        return BriefWords.sentence(lead) + alone;
    }

    private static Optional<String> together(SuggestedSetup found) {
        double together = found.together();
        if (!Double.isFinite(together) || found.changes().size() < 2 || LapTimeDifference.isNone(together)) {
            return Optional.empty();
        }
        return Optional.of(
                "Made together the changes are " + DifferenceWords.than(together, "the sum of that column") + ": "
                        + (together < 0
                                ? "one makes up for another."
                                : "each is worth more for the others, so make them together."));
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
