package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageFact;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** Section of a brief on adjustments: which are worth changing, and which are not. */
public final class BriefWorth {
    private static final int MOST_BARS = 14;

    private final BriefOutcome outcome;
    private final BriefCharts charts;

    public BriefWorth(BriefOutcome outcome, BriefCharts charts) {
        this.outcome = outcome;
        this.charts = charts;
    }

    public PageSection section() {
        BriefResult.Part<BriefResult.Priorities> part = outcome.result().sensitivity();
        List<PageBlock> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new PageSection(
                "worth",
                "What is worth changing, and what is not",
                "Each adjustment turned by itself over its whole range, the rest left as it is: how much faster the"
                        + " best setting is than yours, and how much slower the worst.",
                blocks);
    }

    private void fill(List<PageBlock> blocks, BriefResult.Priorities found) {
        SensitivityResult study = found.study();
        List<SensitivityResult.Gain> drawn = Stream.concat(found.worthChanging().stream(), others(found))
                .limit(MOST_BARS)
                .toList();
        if (!drawn.isEmpty()) {
            blocks.add(charts.worth(
                    drawn,
                    study.visibleGain(),
                    "What is worth changing stands first. To the left, filled: gained at the fastest setting. To the right, outlined: lost at the slowest."
                            + " Bars inside the shaded band are less than "
                            + Numbers.fixed(study.visibleGain(), 3)
                            + " s, which " + study.laps() + " laps that scatter by "
                            + Numbers.plain(study.scatter())
                            + " s cannot show on the timing screen."));
        }
        blocks.add(PageBlock.subheading("Worth changing"));
        if (found.worthChanging().isEmpty()) {
            blocks.add(PageBlock.paragraph("Nothing: no single change gains " + worth() + " or more."));
        } else {
            blocks.add(worthChanging(found));
        }
        blocks.add(PageBlock.subheading("Not worth changing"));
        if (found.notWorthChanging().isEmpty()) {
            blocks.add(PageBlock.paragraph("Nothing: every adjustment gains " + worth() + " or more somewhere."));
        } else {
            blocks.add(PageBlock.paragraph(
                    "No setting of these gains " + worth() + ". Leave them, or set them to the driver's liking."));
            blocks.add(notWorthChanging(found));
        }
        if (!found.leftAlone().isEmpty()) {
            blocks.add(PageBlock.subheading("Not for a lap time to decide"));
            blocks.add(PageBlock.terms(leftAlone(found)));
        }
    }

    private static Stream<SensitivityResult.Gain> others(BriefResult.Priorities found) {
        return found.notWorthChanging().stream().filter(gain -> gain.range() >= SensitivityResult.Gain.NOTHING);
    }

    public static String worth() {
        return Numbers.plain(BriefResult.Priorities.WORTH_S) + " s";
    }

    private PageBlock worthChanging(BriefResult.Priorities found) {
        Table<SensitivityResult.Gain> table = Table.<SensitivityResult.Gain>of("Worth changing, what gains most first")
                .words("", "Adjustment", gain -> BriefWords.name(gain.adjustment()))
                .text(
                        "Now → fastest",
                        "",
                        gain -> Numbers.plain(gain.setting()) + " → "
                                + BriefWords.setting(
                                        gain.adjustment(), gain.best().setting()))
                .text("Gain", "s", gain -> BriefWords.signed(gain.best().gain()))
                .words("", "Most of it in", BriefWorth::sector)
                .with(Table.Trait.LESSER)
                .text("Laps to see it", "each setting", gain -> BriefWords.laps(gain.lapsToSee()))
                .with(Table.Trait.LESSER)
                .words(
                        "",
                        "Seen in " + found.study().laps() + " laps?",
                        gain -> found.study().canBeSeen(gain) ? "yes" : "no");
        List<SensitivityResult.Gain> gains = new ArrayList<>(found.worthChanging());
        gains.sort(Comparator.comparingDouble(
                        (SensitivityResult.Gain gain) -> gain.best().gain())
                .reversed());
        return PageBlock.table(table, gains);
    }

    private static String sector(SensitivityResult.Gain gain) {
        int main = 0;
        for (int i = 1; i < gain.sectorGains().size(); i++) {
            main = gain.sectorGains().get(i) > gain.sectorGains().get(main) ? i : main;
        }
        return gain.sectorGains().size() > 1 ? "sector " + (main + 1) : "the lap";
    }

    private static PageBlock notWorthChanging(BriefResult.Priorities found) {
        Table<SensitivityResult.Gain> table = Table.<SensitivityResult.Gain>of("Not worth changing")
                .words("", "Adjustment", gain -> BriefWords.name(gain.adjustment()))
                .text("Now", "", gain -> BriefWords.setting(gain.adjustment(), gain.setting()))
                .text("Most it gains", "s", gain -> cell(gain.best().gain()))
                .text("Most it costs", "s", gain -> cell(-gain.worst().gain()));
        return PageBlock.table(table, found.notWorthChanging());
    }

    private static String cell(double seconds) {
        return BriefWords.isNothing(seconds) ? "nothing" : Numbers.fixed(seconds, 3);
    }

    private static List<PageFact> leftAlone(BriefResult.Priorities found) {
        List<PageFact> facts = new ArrayList<>();
        for (SensitivityResult.Gain gain : found.leftAlone()) {
            String reason = found.reasons().stream()
                    .filter(kept -> kept.name().equals(gain.adjustment().name()))
                    .map(OptimisationResult.LeftAlone::reason)
                    .findFirst()
                    .orElse("a lap time says too little about it");
            facts.add(new PageFact(
                    BriefWords.name(gain.adjustment()) + ", now "
                            + BriefWords.setting(gain.adjustment(), gain.setting()),
                    "The model would gain " + BriefWords.seconds(gain.best().gain()) + " at "
                            + BriefWords.setting(gain.adjustment(), gain.best().setting()) + ", but: " + reason + "."));
        }
        return facts;
    }
}
