package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.WingTrade;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.results.DifferenceWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/** Section of a brief on aerodynamics: what a wing costs in drag and brings in grip. */
public final class BriefAero {
    private final BriefReport brief;
    private final BriefCharts charts;

    public BriefAero(BriefReport brief, BriefCharts charts) {
        this.brief = brief;
        this.charts = charts;
    }

    public Page.Section section() {
        BriefResult.Part<List<WingTrade>> wings = brief.result().wings();
        BriefResult.Part<BriefResult.AeroExchange> exchange = brief.result().exchange();
        List<Page.Block> blocks = new ArrayList<>();
        exchange.value()
                .ifPresentOrElse(
                        found -> blocks.add(Page.Block.paragraph(exchange(found))),
                        () -> blocks.add(BriefPage.missing(exchange)));
        wings.value().ifPresentOrElse(found -> found.forEach(wing -> wing(blocks, wing)), () -> {
            if (exchange.isThere() || !wings.problem().equals(exchange.problem())) {
                blocks.add(BriefPage.missing(wings));
            }
        });
        return new Page.Section(
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
        return "One percent less drag makes the lap " + DifferenceWords.said(found.lessDrag())
                + ", one percent more downforce " + DifferenceWords.said(found.moreDownforce())
                + ", one percent more grip of all tyres " + DifferenceWords.said(found.moreGrip())
                + ". The car's drag area (CdA) is " + Numbers.fixed(found.dragArea(), 2)
                + " m², its downforce area (ClA) " + Numbers.fixed(found.downforceArea(), 2) + " m²." + rule;
    }

    private void wing(List<Page.Block> blocks, WingTrade wing) {
        blocks.add(Page.Block.subheading(BriefWords.name(wing.adjustment())));
        blocks.add(Page.Block.paragraph(verdict(wing)));
        if (wing.fastest().isPresent() && wing.choices().size() > 2) {
            blocks.add(charts.lapTimeOverWing(
                    wing,
                    "Lap time over the setting: the lower, the faster. The broken line is the car as it stands, the ring the"
                            + " fastest setting."));
            if (!Double.isNaN(brief.result().lap().figures().meanCornerSpeed())) {
                blocks.add(charts.topSpeedOverCorners(
                        wing,
                        "Each point is one setting: the further up, the faster on the straight; the further right, the"
                                + " faster in the corners. Larger points are faster laps."));
            }
        }
        blocks.add(Page.Block.table(choices(wing), wing.choices()));
    }

    private static String verdict(WingTrade wing) {
        Optional<WingTrade.Setting> fastest = wing.fastest();
        if (fastest.isEmpty()) {
            return "No setting gives a lap.";
        }
        String at = BriefWords.setting(wing.adjustment(), fastest.get().setting());
        String now = BriefWords.setting(wing.adjustment(), wing.setting());
        double difference =
                fastest.get().effect().map(BriefResult.ChangeEffect::difference).orElse(0.0);
        if (fastest.get().setting() == wing.setting() || LapTimeDifference.isNone(difference)) {
            return "It stands at " + now + ", and no other setting tried is faster.";
        }
        BriefResult.ChangeEffect effect = fastest.get().effect().orElseThrow();
        return "It stands at " + now + "; the fastest tried is " + at + ", " + DifferenceWords.said(difference) + ": "
                + Numbers.signed(effect.inCorners(), 3) + " s in corners, "
                + Numbers.signed(effect.onStraights(), 3) + " s on straights (minus is faster).";
    }

    private static Table<WingTrade.Setting> choices(WingTrade wing) {
        return Table.<WingTrade.Setting>of("Every setting tried; the one it stands at stands out")
                .words("", "Setting", tried -> BriefWords.setting(wing.adjustment(), tried.setting()))
                .text(
                        "Lap",
                        "min:s",
                        tried -> lap(tried, (figures, effect) -> Numbers.lapTime(figures.lapTime()), "no lap"))
                .with(Table.Trait.LESSER)
                .text("Delta", "s", tried -> lap(tried, (figures, effect) -> BriefWords.signed(effect.difference())))
                .text(
                        "In corners",
                        "s",
                        tried -> lap(tried, (figures, effect) -> BriefWords.signed(effect.inCorners())))
                .text(
                        "On straights",
                        "s",
                        tried -> lap(tried, (figures, effect) -> BriefWords.signed(effect.onStraights())))
                .text("Top speed", "km/h", tried -> lap(tried, (figures, effect) -> Numbers.kmh(figures.topSpeed())))
                .with(Table.Trait.LESSER)
                .text(
                        "Corner mean",
                        "km/h",
                        tried -> lap(tried, (figures, effect) -> Numbers.kmh(figures.meanCornerSpeed())))
                .with(Table.Trait.LESSER)
                .text("Drag area", "m²", tried -> lap(tried, (figures, effect) -> Numbers.fixed(tried.dragArea(), 3)))
                .with(Table.Trait.LESSER)
                .text(
                        "Downforce area",
                        "m²",
                        tried -> lap(tried, (figures, effect) -> Numbers.fixed(tried.downforceArea(), 3)))
                .with(Table.Trait.LESSER)
                .marking(tried -> tried.setting() == wing.setting());
    }

    private static String lap(WingTrade.Setting tried, BiFunction<LapFigures, BriefResult.ChangeEffect, String> said) {
        return lap(tried, said, "-");
    }

    private static String lap(
            WingTrade.Setting tried, BiFunction<LapFigures, BriefResult.ChangeEffect, String> said, String none) {
        return tried.figures()
                .flatMap(figures -> tried.effect().map(effect -> said.apply(figures, effect)))
                .orElse(none);
    }
}
