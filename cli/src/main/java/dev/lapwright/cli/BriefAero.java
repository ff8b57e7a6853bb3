package dev.lapwright.cli;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.WingTrade;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.cli.page.PageTable;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Wing against drag against grip. */
final class BriefAero {
    private final BriefOutcome outcome;
    private final BriefCharts charts;

    BriefAero(BriefOutcome outcome, BriefCharts charts) {
        this.outcome = outcome;
        this.charts = charts;
    }

    PageSection section() {
        BriefResult.Part<List<WingTrade>> wings = outcome.result().wings();
        BriefResult.Part<BriefResult.AeroExchange> exchange = outcome.result().exchange();
        List<PageBlock> blocks = new ArrayList<>();
        exchange.value()
                .ifPresentOrElse(
                        found -> blocks.add(PageBlock.paragraph(exchange(found))),
                        () -> blocks.add(BriefPage.missing(exchange)));
        wings.value().ifPresentOrElse(found -> found.forEach(wing -> wing(blocks, wing)), () -> {
            if (exchange.isThere() || !wings.problem().equals(exchange.problem())) {
                blocks.add(BriefPage.missing(wings));
            }
        });
        return new PageSection(
                "aero",
                "Wing, drag and grip",
                "More wing presses the car down and makes it faster in corners, and holds it back on straights: the"
                        + " tables show both sides of that trade at every setting.",
                blocks);
    }

    private static String exchange(BriefResult.AeroExchange found) {
        double price = found.dragForDownforce();
        String rule = Double.isFinite(price) && price > 0
                ? " So a part that adds downforce pays here as long as each square metre of downforce area costs less than "
                        + Numbers.fixed(price, 2) + " m² of drag area."
                : "";
        return "One percent less drag makes the lap " + BriefWords.gain(found.lessDrag())
                + ", one percent more downforce " + BriefWords.gain(found.moreDownforce())
                + ", one percent more grip of all tyres " + BriefWords.gain(found.moreGrip())
                + ". The car's drag area (CdA) is " + Numbers.fixed(found.dragArea(), 2)
                + " m², its downforce area (ClA) " + Numbers.fixed(found.downforceArea(), 2) + " m²." + rule;
    }

    private void wing(List<PageBlock> blocks, WingTrade wing) {
        blocks.add(PageBlock.subheading(BriefWords.name(wing.adjustment())));
        blocks.add(PageBlock.paragraph(verdict(wing)));
        if (wing.fastest().isPresent() && wing.choices().size() > 2) {
            blocks.add(charts.lapTimeOverWing(
                    wing,
                    "Lap time over the setting: the lower, the faster. The broken line is the car as it stands, the ring the"
                            + " fastest setting."));
            if (!Double.isNaN(outcome.result().lap().figures().meanCornerSpeed())) {
                blocks.add(charts.topSpeedOverCorners(
                        wing,
                        "Each point is one setting: the further up, the faster on the straight; the further right, the"
                                + " faster in the corners. Larger points are faster laps."));
            }
        }
        blocks.add(PageBlock.table(choices(wing)));
    }

    private static String verdict(WingTrade wing) {
        Optional<WingTrade.Setting> fastest = wing.fastest();
        if (fastest.isEmpty()) {
            return "No setting gives a lap.";
        }
        String at = BriefWords.setting(wing.adjustment(), fastest.get().setting());
        String now = BriefWords.setting(wing.adjustment(), wing.setting());
        double gain = fastest.get().effect().map(BriefResult.ChangeEffect::gain).orElse(0.0);
        if (fastest.get().setting() == wing.setting() || BriefWords.isNothing(gain)) {
            return "It stands at " + now + ", and no other setting tried is faster.";
        }
        BriefResult.ChangeEffect effect = fastest.get().effect().orElseThrow();
        return "It stands at " + now + "; the fastest tried is " + at + ", " + BriefWords.gain(gain) + ": "
                + Numbers.signed(effect.inCorners(), 3) + " s in corners, "
                + Numbers.signed(effect.onStraights(), 3) + " s on straights (+ is faster).";
    }

    private static PageTable choices(WingTrade wing) {
        PageTable table = new PageTable("Every setting tried; the one it stands at stands out")
                .words("Setting")
                .numbers("Lap", "min:s")
                .lesser()
                .numbers("Gain", "s")
                .numbers("In corners", "s")
                .numbers("On straights", "s")
                .numbers("Top speed", "km/h")
                .lesser()
                .numbers("Corner mean", "km/h")
                .lesser()
                .numbers("Drag area", "m²")
                .lesser()
                .numbers("Downforce area", "m²")
                .lesser();
        for (WingTrade.Setting subject : wing.choices()) {
            boolean now = subject.setting() == wing.setting();
            List<String> cells = new ArrayList<>();
            cells.add(BriefWords.setting(wing.adjustment(), subject.setting()));
            if (subject.figures().isPresent() && subject.effect().isPresent()) {
                LapFigures figures = subject.figures().get();
                BriefResult.ChangeEffect effect = subject.effect().get();
                cells.add(Numbers.lapTime(figures.lapTime()));
                cells.add(BriefWords.signed(effect.gain()));
                cells.add(BriefWords.signed(effect.inCorners()));
                cells.add(BriefWords.signed(effect.onStraights()));
                cells.add(Numbers.kmh(figures.topSpeed()));
                cells.add(Numbers.kmh(figures.meanCornerSpeed()));
                cells.add(Numbers.fixed(subject.dragArea(), 3));
                cells.add(Numbers.fixed(subject.downforceArea(), 3));
            } else {
                cells.addAll(List.of("no lap", "-", "-", "-", "-", "-", "-", "-"));
            }
            table.row(cells, now);
        }
        return table;
    }
}
