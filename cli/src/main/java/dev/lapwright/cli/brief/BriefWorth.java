package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Section of a brief on adjustments: which are worth changing, and which are not. */
public final class BriefWorth {
    private static final int MOST_BARS = 14;

    private final BriefReport brief;
    private final BriefCharts charts;

    public BriefWorth(BriefReport brief, BriefCharts charts) {
        this.brief = brief;
        this.charts = charts;
    }

    public Page.Section section() {
        BriefResult.Part<BriefResult.Priorities> part = brief.result().sensitivity();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "worth",
                "What is worth changing, and what is not",
                "Each adjustment turned by itself over its whole range, the rest left as it is: how much faster the"
                        + " best setting is than yours, and how much slower the worst.",
                blocks);
    }

    private void fill(List<Page.Block> blocks, BriefResult.Priorities found) {
        SensitivityResult study = found.study();
        List<SensitivityResult.Worth> drawn = Stream.concat(found.worthChanging().stream(), others(found))
                .limit(MOST_BARS)
                .toList();
        if (!drawn.isEmpty()) {
            blocks.add(charts.worth(
                    drawn,
                    study.visible(),
                    "What is worth changing stands first. To the left, filled: how much faster at the fastest setting. To the right, outlined: how much slower at the slowest."
                            + " Bars inside the shaded band are less than "
                            + Numbers.fixed(study.visible(), 3)
                            + " s, which " + study.laps() + " laps that scatter by "
                            + Numbers.plain(study.scatter())
                            + " s cannot show on the timing screen."));
        }
        blocks.add(Page.Block.subheading("Worth changing"));
        if (found.worthChanging().isEmpty()) {
            blocks.add(Page.Block.paragraph("Nothing: no single change makes the lap faster by "
                    + DifferenceWords.least() + " or more, the least that" + " counts."));
        } else {
            blocks.add(worthChanging(found));
        }
        blocks.add(Page.Block.subheading("Not worth changing"));
        if (found.notWorthChanging().isEmpty()) {
            blocks.add(Page.Block.paragraph("Nothing: every adjustment makes the lap faster by "
                    + DifferenceWords.least() + " or more somewhere."));
        } else {
            blocks.add(Page.Block.paragraph("No setting of these makes the lap faster by " + DifferenceWords.least()
                    + ", the least that counts. Leave them, or set them to the driver's liking."));
            blocks.add(notWorthChanging(found));
        }
        if (!found.leftAlone().isEmpty()) {
            blocks.add(Page.Block.subheading("Not for a lap time to decide"));
            blocks.add(Page.Block.terms(leftAlone(found)));
        }
    }

    private static Stream<SensitivityResult.Worth> others(BriefResult.Priorities found) {
        return found.notWorthChanging().stream().filter(worth -> !LapTimeDifference.isNone(worth.range()));
    }

    private Page.Block worthChanging(BriefResult.Priorities found) {
        Table<SensitivityResult.Worth> table = Table.<SensitivityResult.Worth>of(
                        "Worth changing, what makes the lap fastest first")
                .words("", "Adjustment", worth -> BriefWords.name(worth.adjustment()))
                .text(
                        "Now → fastest",
                        "",
                        worth -> Numbers.plain(worth.setting()) + " → "
                                + BriefWords.setting(
                                        worth.adjustment(), worth.best().setting()))
                .text("Delta", "s", worth -> BriefWords.signed(worth.best().difference()))
                .words("", "Most of it in", BriefWorth::sector)
                .with(Table.Trait.LESSER)
                .text("Laps to see it", "each setting", worth -> BriefWords.laps(worth.lapsToSee()))
                .with(Table.Trait.LESSER)
                .words(
                        "",
                        "Seen in " + found.study().laps() + " laps?",
                        worth -> found.study().canBeSeen(worth) ? "yes" : "no");
        List<SensitivityResult.Worth> ranked = new ArrayList<>(found.worthChanging());
        ranked.sort(Comparator.comparingDouble(worth -> worth.best().difference()));
        return Page.Block.table(table, ranked);
    }

    private static String sector(SensitivityResult.Worth worth) {
        int main = 0;
        for (int i = 1; i < worth.bySector().size(); i++) {
            main = worth.bySector().get(i) < worth.bySector().get(main) ? i : main;
        }
        return worth.bySector().size() > 1 ? "sector " + (main + 1) : "the lap";
    }

    private static Page.Block notWorthChanging(BriefResult.Priorities found) {
        Table<SensitivityResult.Worth> table = Table.<SensitivityResult.Worth>of("Not worth changing")
                .words("", "Adjustment", worth -> BriefWords.name(worth.adjustment()))
                .text("Now", "", worth -> BriefWords.setting(worth.adjustment(), worth.setting()))
                .text("At its fastest", "s", worth -> cell(worth.best().difference()))
                .text("At its slowest", "s", worth -> cell(worth.worst().difference()));
        return Page.Block.table(table, found.notWorthChanging());
    }

    private static String cell(double seconds) {
        return LapTimeDifference.isNone(seconds) ? "none" : Numbers.signed(seconds, 3);
    }

    private static List<Page.Fact> leftAlone(BriefResult.Priorities found) {
        List<Page.Fact> facts = new ArrayList<>();
        for (SensitivityResult.Worth worth : found.leftAlone()) {
            String reason = found.reasons().stream()
                    .filter(kept -> kept.name().equals(worth.adjustment().name()))
                    .map(OptimisationResult.LeftAlone::reason)
                    .findFirst()
                    .orElse("a lap time says too little about it");
            facts.add(new Page.Fact(
                    BriefWords.name(worth.adjustment()) + ", now "
                            + BriefWords.setting(worth.adjustment(), worth.setting()),
                    "The model would be " + DifferenceWords.said(worth.best().difference()) + " at "
                            + BriefWords.setting(
                                    worth.adjustment(), worth.best().setting()) + ", but: " + reason + "."));
        }
        return facts;
    }
}
