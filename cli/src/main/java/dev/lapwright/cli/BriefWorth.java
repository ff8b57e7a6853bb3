package dev.lapwright.cli;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageFact;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.cli.page.PageTable;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** What is worth changing, and what is not. */
final class BriefWorth {
    private static final int MOST_BARS = 14;

    private final BriefOutcome outcome;
    private final BriefCharts charts;

    BriefWorth(BriefOutcome outcome, BriefCharts charts) {
        this.outcome = outcome;
        this.charts = charts;
    }

    PageSection section() {
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
            blocks.add(PageBlock.table(worthChanging(found)));
        }
        blocks.add(PageBlock.subheading("Not worth changing"));
        if (found.notWorthChanging().isEmpty()) {
            blocks.add(PageBlock.paragraph("Nothing: every adjustment gains " + worth() + " or more somewhere."));
        } else {
            blocks.add(PageBlock.paragraph(
                    "No setting of these gains " + worth() + ". Leave them, or set them to the driver's liking."));
            blocks.add(PageBlock.table(notWorthChanging(found)));
        }
        if (!found.leftAlone().isEmpty()) {
            blocks.add(PageBlock.subheading("Not for a lap time to decide"));
            blocks.add(PageBlock.terms(leftAlone(found)));
        }
    }

    private static Stream<SensitivityResult.Gain> others(BriefResult.Priorities found) {
        return found.notWorthChanging().stream().filter(gain -> gain.range() >= SensitivityResult.Gain.NOTHING);
    }

    static String worth() {
        return Numbers.plain(BriefResult.Priorities.WORTH_S) + " s";
    }

    private PageTable worthChanging(BriefResult.Priorities found) {
        PageTable table = new PageTable("Worth changing, what gains most first")
                .words("Adjustment")
                .numbers("Now → fastest", "")
                .numbers("Gain", "s")
                .words("Most of it in")
                .lesser()
                .numbers("Laps to see it", "each setting")
                .lesser()
                .words("Seen in " + found.study().laps() + " laps?");
        List<SensitivityResult.Gain> gains = new ArrayList<>(found.worthChanging());
        gains.sort(Comparator.comparingDouble(
                        (SensitivityResult.Gain gain) -> gain.best().gain())
                .reversed());
        for (SensitivityResult.Gain gain : gains) {
            table.row(
                    BriefWords.name(gain.adjustment()),
                    Numbers.plain(gain.setting()) + " → "
                            + BriefWords.setting(gain.adjustment(), gain.best().setting()),
                    BriefWords.signed(gain.best().gain()),
                    sector(gain),
                    BriefWords.laps(gain.lapsToSee()),
                    found.study().canBeSeen(gain) ? "yes" : "no");
        }
        return table;
    }

    private static String sector(SensitivityResult.Gain gain) {
        int main = 0;
        for (int i = 1; i < gain.sectorGains().size(); i++) {
            main = gain.sectorGains().get(i) > gain.sectorGains().get(main) ? i : main;
        }
        return gain.sectorGains().size() > 1 ? "sector " + (main + 1) : "the lap";
    }

    private static PageTable notWorthChanging(BriefResult.Priorities found) {
        PageTable table = new PageTable("Not worth changing")
                .words("Adjustment")
                .numbers("Now", "")
                .numbers("Most it gains", "s")
                .numbers("Most it costs", "s");
        for (SensitivityResult.Gain gain : found.notWorthChanging()) {
            table.row(
                    BriefWords.name(gain.adjustment()),
                    BriefWords.setting(gain.adjustment(), gain.setting()),
                    cell(gain.best().gain()),
                    cell(-gain.worst().gain()));
        }
        return table;
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
