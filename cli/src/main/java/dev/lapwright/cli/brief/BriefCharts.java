package dev.lapwright.cli.brief;

import dev.lapwright.brief.WingTrade;
import dev.lapwright.charts.ChartException;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.InlineImage;
import dev.lapwright.charts.gearing.GearSawtooth;
import dev.lapwright.charts.lap.LimitMap;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.log.LapLog;
import dev.lapwright.charts.setup.BalancePhases;
import dev.lapwright.charts.setup.RankedWorth;
import dev.lapwright.charts.sweep.SweepTime;
import dev.lapwright.charts.sweep.TradeOff;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.cli.output.MinusSign;
import dev.lapwright.cli.page.Page;
import dev.lapwright.cli.study.BalanceCommand;
import dev.lapwright.cli.study.GearingCharts;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.report.Report;
import dev.lapwright.results.SensitivityReport;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/** Charts on the page of a brief, drawn twice: for a page with room and for a small screen. */
public final class BriefCharts {
    private static final int WIDE = 860;
    private static final int NARROW = 320;
    private static final int HALF = 500;
    private static final ChartStyle FOR_WIDE = ChartStyle.STANDARD.withTextSize(14);

    /** A screen of 360 px shows the picture at 300 px of its 320 beside a scroll bar: the smallest letters, of 12 px, have 11.2 there. */
    private static final ChartStyle FOR_NARROW = ChartStyle.STANDARD.withTextSize(13);

    private final BriefReport brief;

    public BriefCharts(BriefReport brief) {
        this.brief = brief;
    }

    public Page.Block circuit(String caption) {
        String title = "Map of " + brief.subject().track().name();
        return both(
                title,
                caption,
                style -> InlineImage.svg(
                        CircuitMap.plan(brief.result().lap().stations(), style),
                        size(style, 520, 340),
                        style,
                        id("circuit", style),
                        title));
    }

    /** The map of the first sheet: laid out for half of its width, or for a small screen. */
    public Page.Block limits(String caption) {
        String title = "What limits the car where on " + brief.subject().track().name();
        try {
            return Page.Block.figure(new Page.Figure(
                    limits(title, "limits-half", new ImageSize(HALF, 280)),
                    limits(title, "limits-narrow", new ImageSize(NARROW, 320)),
                    false,
                    caption));
        } catch (ChartException broken) {
            return undrawn(title, broken);
        }
    }

    private String limits(String title, String id, ImageSize size) {
        return InlineImage.svg(LimitMap.of(brief.result().lap(), FOR_NARROW), size, FOR_NARROW, id, title);
    }

    public Page.Block speed(String caption) {
        String title = "Speed and gear over a lap of " + brief.subject().track().name();
        return both(
                title,
                caption,
                style -> InlineImage.svg(
                        SpeedTrace.of(brief.result().lap(), style),
                        size(style, 440, 400),
                        style,
                        id("speed", style),
                        title));
    }

    public Page.Block worth(List<SensitivityResult.Worth> worths, double visible, String caption) {
        String title = "What the fastest and the slowest setting of each adjustment do to the lap time";
        List<RankedWorth.WorthBars> bars =
                worths.stream().map(BriefCharts::bars).toList();
        return both(
                title,
                caption,
                true,
                style -> InlineImage.svg(
                        RankedWorth.overTheRange(brief.subject().title(), bars, visible, style),
                        RankedWorth.sizeOverTheRange(width(style), bars.size(), style),
                        style,
                        id("worth", style),
                        title));
    }

    private static RankedWorth.WorthBars bars(SensitivityResult.Worth worth) {
        boolean faster = worth.hasFaster();
        boolean slower = worth.hasSlower();
        return new RankedWorth.WorthBars(
                Report.plain(BriefWords.name(worth.adjustment())),
                "",
                Double.NaN,
                Double.NaN,
                faster ? worth.best().difference() : 0,
                MinusSign.in(SensitivityReport.setting(worth, worth.best().setting())),
                slower ? worth.worst().difference() : 0,
                MinusSign.in(SensitivityReport.setting(worth, worth.worst().setting())));
    }

    public Page.Block lapTimeOverWing(WingTrade wing, String caption) {
        String title = "Lap time over " + name(wing);
        return both(
                title,
                caption,
                style -> InlineImage.svg(
                        SweepTime.of(sweep(wing), style),
                        size(style, 400, 320),
                        style,
                        id("time-" + wing.adjustment().name(), style),
                        title));
    }

    public Page.Block topSpeedOverCorners(WingTrade wing, String caption) {
        String title = "Top speed against cornering speed over " + name(wing);
        return both(
                title,
                caption,
                style -> InlineImage.svg(
                        TradeOff.of(sweep(wing), style),
                        size(style, 440, 340),
                        style,
                        id("trade-" + wing.adjustment().name(), style),
                        title));
    }

    private static String name(WingTrade wing) {
        return Report.plain(BriefWords.inSentence(wing.adjustment()));
    }

    private SweepResult sweep(WingTrade wing) {
        List<WingTrade.Setting> choices = wing.choices();
        double[] values =
                choices.stream().mapToDouble(WingTrade.Setting::setting).toArray();
        List<SweepResult.Point> points = choices.stream()
                .map(set -> new SweepResult.Point(List.of(set.setting()), set.figures(), set.failure()))
                .toList();
        return new SweepResult(
                brief.result().car(),
                brief.result().track(),
                brief.result().conditions(),
                List.of(new SweepAxis(wing.adjustment().name(), values)),
                brief.result().lap().figures(),
                points);
    }

    /** Too full for a small screen, which has the table. */
    public Page.Block gears(GearingResult gearing, String caption) {
        String title = "Engine speed over road speed in each gear";
        return wide(
                title,
                caption,
                () -> InlineImage.svg(
                        GearSawtooth.of(brief.subject().title(), GearingCharts.curves(gearing), FOR_WIDE),
                        size(FOR_WIDE, 440, 440),
                        FOR_WIDE,
                        id("gears", FOR_WIDE),
                        title));
    }

    /** Too wide for a small screen, which has the table. */
    public Page.Block balance(BalanceResult balance, String caption) {
        String title = "Which axle reaches its limit first in each phase of each corner";
        List<BalancePhases.BalanceBars> bars =
                balance.corners().stream().map(BalanceCommand::bars).toList();
        return wide(
                title,
                caption,
                () -> InlineImage.svg(
                        BalancePhases.of(brief.subject().title(), bars, FOR_WIDE),
                        new ImageSize(960, BalancePhases.size(bars.size()).height()),
                        FOR_WIDE,
                        id("balance", FOR_WIDE),
                        title));
    }

    public Page.Block laps(String name, EvidenceResult evidence, String caption) {
        String title = "Every lap of the log";
        return both(
                title,
                caption,
                style -> InlineImage.svg(
                        LapLog.of(brief.subject().title(), evidence, style),
                        size(style, 460, 400),
                        style,
                        id(name, style),
                        title));
    }

    private static Page.Block both(String title, String caption, Function<ChartStyle, String> drawing) {
        return both(title, caption, false, drawing);
    }

    private static Page.Block both(String title, String caption, boolean tall, Function<ChartStyle, String> drawing) {
        try {
            return Page.Block.figure(
                    new Page.Figure(drawing.apply(FOR_WIDE), drawing.apply(FOR_NARROW), tall, caption));
        } catch (ChartException broken) {
            return undrawn(title, broken);
        }
    }

    private static Page.Block wide(String title, String caption, Supplier<String> drawing) {
        try {
            return Page.Block.figure(new Page.Figure(drawing.get(), null, true, caption));
        } catch (ChartException broken) {
            return undrawn(title, broken);
        }
    }

    private static Page.Block undrawn(String title, ChartException broken) {
        return Page.Block.missing(
                "The picture '" + title + "' could not be drawn: " + broken.problem() + ".",
                BriefWords.sentence(broken.remedy()));
    }

    private static int width(ChartStyle style) {
        return style.equals(FOR_WIDE) ? WIDE : NARROW;
    }

    private static ImageSize size(ChartStyle style, int wideHeight, int narrowHeight) {
        return new ImageSize(width(style), style.equals(FOR_WIDE) ? wideHeight : narrowHeight);
    }

    private static String id(String name, ChartStyle style) {
        return name + (style.equals(FOR_WIDE) ? "-wide" : "-narrow");
    }
}
