package dev.lapwright.charts.setup;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemCollection;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;

/**
 * Bars of what each adjustment is worth: change of lap time (s) by one step each way, and at the fastest and the slowest setting of
 * its range; those with the widest range first. A shaded band tells what the timing screen cannot show.
 */
public final class RankedWorth {
    /** Room on each side for labels, as a share of the bars' reach to both sides; those of the range name a setting, too. */
    private static final double STEP_ROOM = 0.28;

    private static final double RANGE_ROOM = 0.45;
    /** The band is shown up to so many times the longest bar. */
    private static final double MOST_BAND = 2;
    /** Least reach of an axis, s. */
    private static final double LEAST = 0.002;

    private static final String NONE = "there are no adjustments to show";

    /** One of the changes of lap time, s. */
    private interface Change extends ToDoubleFunction<WorthBars> {}

    private RankedWorth() {}

    /** Pages of less than this have room for {@link #overTheRange} only, px. */
    public static final int NARROW_BELOW = 1000;

    /** The size it is designed for, with so many adjustments. */
    public static ImageSize size(int adjustments) {
        return RowPanels.size(adjustments);
    }

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     * @param worths in any order; of more than 300 those with the widest range are drawn, and the chart says so
     * @param visible the least difference of lap time that the timing screen can show, s; NaN if it is not known
     */
    public static JFreeChart of(String subject, List<WorthBars> worths, double visible, ChartStyle style) {
        if (worths.isEmpty()) {
            return ChartLayout.message("What each adjustment is worth: " + subject, NONE, style);
        }
        if (!Double.isNaN(visible)) {
            Check.positive("visible difference (s)", visible);
        }
        List<WorthBars> ranked = new ArrayList<>(worths);
        ranked.sort(Comparator.comparingDouble(WorthBars::span).reversed());
        ranked.subList(Math.min(ranked.size(), RowPanels.MOST), ranked.size()).clear();
        List<String> names = ranked.stream()
                .map(worth -> worth.step().isEmpty() ? worth.name() : worth.name() + ", " + worth.step())
                .toList();
        RowPanels panels = new RowPanels(names, style);
        UnitAxis step = axis(ranked, visible, STEP_ROOM, style, WorthBars::stepDown, WorthBars::stepUp);
        boolean seen = !(visible > step.getUpperBound());
        panels.add(step, steps(ranked, seen, visible, style), 42);
        UnitAxis range = axis(ranked, visible, RANGE_ROOM, style, WorthBars::best, WorthBars::worst);
        panels.add(range, ranges(ranked, visible, style), 58);
        JFreeChart chart = ChartLayout.chart(
                "What each adjustment is worth: " + subject,
                facts(
                        "change of lap time from the car as it is set up"
                                + (ranked.size() < worths.size()
                                        ? ", the " + ranked.size() + " widest ranges of " + worths.size()
                                        : ""),
                        visible),
                panels.plot(),
                style);
        chart.addLegend(ChartLayout.legend(() -> legend(style), style));
        return chart;
    }

    private static String facts(String what, double visible) {
        return ChartLayout.facts(
                what,
                Double.isNaN(visible)
                        ? "minus is faster"
                        : "shaded: less than " + NumberText.fixed(3).format(visible)
                                + " s, which the timing screen cannot show");
    }

    /** The size in px of {@link #overTheRange} at this width, 320 to 10000, with so many adjustments. */
    public static ImageSize sizeOverTheRange(int width, int adjustments, ChartStyle style) {
        int around = 7 * style.textSize();
        return new ImageSize(
                width, Math.min(10_000, Math.max(240, around + NamedRows.height(width, style) * adjustments)));
    }

    /**
     * The fastest and the slowest setting of each adjustment alone, with its name above its bar, so that it fits a narrow page.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     * @param worths in the order to draw them
     * @param visible the least difference of lap time that the timing screen can show, s; NaN if it is not known
     */
    public static JFreeChart overTheRange(String subject, List<WorthBars> worths, double visible, ChartStyle style) {
        String heading = "What each adjustment is worth: " + subject;
        if (worths.isEmpty()) {
            return ChartLayout.message(heading, NONE, style);
        }
        if (!Double.isNaN(visible)) {
            Check.positive("visible difference (s)", visible);
        }
        UnitAxis axis = axis(worths, visible, RANGE_ROOM, style, WorthBars::best, WorthBars::worst);
        axis.setLabel("Change of lap time (s): left is faster, right is slower");
        XYPlot plot = NamedRows.plot(worths.stream().map(WorthBars::name).toList(), axis, style);
        plot.addAnnotation(new NamedRows(worths, visible, style));
        return ChartLayout.chart(heading, facts("fastest and slowest setting of the range", visible), plot, style);
    }

    /** Change of lap time to which an axis must reach on one side of zero, s, without its sign. */
    private static double reach(List<WorthBars> worths, double sign, double least, Change one, Change other) {
        double reach = least;
        for (WorthBars worth : worths) {
            for (double change : new double[] {one.applyAsDouble(worth), other.applyAsDouble(worth)}) {
                reach = Double.isNaN(change) ? reach : Math.max(reach, sign * change);
            }
        }
        return reach;
    }

    /** An axis with room for the bars and the band on either side of zero, and for the labels beyond them. */
    private static UnitAxis axis(
            List<WorthBars> worths, double visible, double room, ChartStyle style, Change one, Change other) {
        double faster = reach(worths, -1, LEAST, one, other);
        double slower = reach(worths, 1, LEAST, one, other);
        double band = Double.isNaN(visible) ? 0 : Math.min(visible, MOST_BAND * Math.max(faster, slower));
        faster = Math.max(faster, band);
        slower = Math.max(slower, band);
        double labels = room * (faster + slower);
        UnitAxis axis = new UnitAxis("Change of lap time (s)", style, 0, NumberText::signed).withCloseTicks();
        axis.setRange(-faster - labels, slower + labels);
        return axis;
    }

    private static RowBars steps(List<WorthBars> ranked, boolean seen, double visible, ChartStyle style) {
        List<RowBars.Bar> bars = new ArrayList<>();
        for (int row = 0; row < ranked.size(); row++) {
            WorthBars worth = ranked.get(row);
            Color colour = style.colour(0);
            bars.add(new RowBars.Bar(row, worth.stepDown(), 0.1, 0.46, colour, false, step(worth.stepDown())));
            bars.add(new RowBars.Bar(row, worth.stepUp(), 0.54, 0.9, colour, true, step(worth.stepUp())));
        }
        RowBars.Heading heading =
                new RowBars.Heading(seen ? "One step" : "One step: not to be seen for any", "faster", "slower");
        return new RowBars(heading, bars, ranked.size(), visible, style);
    }

    private static RowBars ranges(List<WorthBars> ranked, double visible, ChartStyle style) {
        List<RowBars.Bar> bars = new ArrayList<>();
        for (int row = 0; row < ranked.size(); row++) {
            WorthBars worth = ranked.get(row);
            String best = worth.best() < 0 ? text(worth.best(), worth.bestAt()) : "";
            String worst = worth.worst() > 0 ? text(worth.worst(), worth.worstAt()) : "";
            bars.add(new RowBars.Bar(row, worth.best(), 0.22, 0.78, style.colour(2), true, best));
            bars.add(new RowBars.Bar(row, worth.worst(), 0.22, 0.78, style.colour(3), false, worst));
        }
        RowBars.Heading heading = new RowBars.Heading("Over the range", "faster", "slower");
        return new RowBars(heading, bars, ranked.size(), visible, style);
    }

    private static String step(double change) {
        return Double.isNaN(change) ? "end of the range" : text(change, "");
    }

    private static String text(double change, String at) {
        String text = NumberText.signed(3).format(change);
        return at.isEmpty() ? text : text + " at " + at;
    }

    private static LegendItemCollection legend(ChartStyle style) {
        LegendItemCollection items = new LegendItemCollection();
        items.add(item("one step down", style.colour(0), false, style));
        items.add(item("one step up", style.colour(0), true, style));
        items.add(item("fastest of the range", style.colour(2), true, style));
        items.add(item("slowest of the range", style.colour(3), false, style));
        return items;
    }

    static LegendItem item(String text, Color colour, boolean filled, ChartStyle style) {
        return new LegendItem(
                text,
                null,
                null,
                null,
                new Rectangle2D.Double(-9, -4, 18, 8),
                filled ? colour : style.palette().background(),
                ChartStyle.solid(1),
                colour);
    }

    /**
     * What an adjustment is worth, as {@link RankedWorth} draws it. Changes are of lap time, s, from the car as it is set up:
     * minus is faster.
     *
     * @param name for people, such as {@code Rear wing}; not blank
     * @param step one step in words, such as {@code 1 deg}
     * @param stepDown change by one step down, s; NaN where there is none
     * @param stepUp change by one step up, s; NaN where there is none
     * @param best change at the fastest setting of the range, s, not above 0
     * @param bestAt that setting in words, such as {@code 9 deg}
     * @param worst change at the slowest setting of the range, s, not below 0
     * @param worstAt that setting in words
     */
    public record WorthBars(
            String name,
            String step,
            double stepDown,
            double stepUp,
            double best,
            String bestAt,
            double worst,
            String worstAt) {
        public WorthBars {
            Objects.requireNonNull(step, "step");
            Objects.requireNonNull(bestAt, "bestAt");
            Objects.requireNonNull(worstAt, "worstAt");
            if (name.isBlank()) {
                throw new InvalidValueException("adjustment name", "it is blank", "give each adjustment its name");
            }
            checkStep(name + " step down", stepDown);
            checkStep(name + " step up", stepUp);
            Check.inRange(name + " best", best, -Double.MAX_VALUE, 0);
            Check.inRange(name + " worst", worst, 0, Double.MAX_VALUE);
        }

        private static void checkStep(String name, double change) {
            if (!Double.isNaN(change)) {
                Check.finite(name, change);
            }
        }

        /** From the slowest setting to the fastest, s. */
        double span() {
            return worst - best;
        }
    }

    /** A row for each adjustment: its name, and beneath it bars to the fastest and the slowest setting of its range. */
    static final class NamedRows extends AbstractXYAnnotation {
        private static final long serialVersionUID = 1L;
        private static final double GAP = 4;
        /** Width of a picture that has room for figures beside the bars, px. */
        private static final int BESIDE_FROM = 500;

        private final transient List<WorthBars> worths;
        private final double band;
        private final ChartStyle style;

        /** @param band reach of the shaded band either side of zero, s; NaN for none */
        NamedRows(List<WorthBars> worths, double band, ChartStyle style) {
            this.worths = List.copyOf(worths);
            this.band = band;
            this.style = style;
        }

        /** Height of a row, px: with a line of its own for the figures where a picture of that width has no room beside bars. */
        static int height(int width, ChartStyle style) {
            return 2 * style.textSize() + 18 + (width < BESIDE_FROM ? style.textSize() + 3 : 0);
        }

        /** A plot of rows over an axis of values; rows have no axis. */
        static XYPlot plot(List<String> names, UnitAxis values, ChartStyle style) {
            NumberAxis rows = new NumberAxis();
            rows.setVisible(false);
            rows.setRange(0, names.size());
            XYPlot plot = new XYPlot(null, values, rows, null);
            ChartLayout.style(plot, style);
            plot.setRangeGridlinesVisible(false);
            // The label of a tick at the very end is half beyond it.
            plot.setInsets(new RectangleInsets(0, 1.2 * style.textSize(), 0, 0.8 * style.textSize()));
            return plot;
        }

        List<WorthBars> worths() {
            return worths;
        }

        @Override
        public void draw(
                Graphics2D g2,
                XYPlot plot,
                Rectangle2D area,
                ValueAxis values,
                ValueAxis rows,
                int rendererIndex,
                PlotRenderingInfo info) {
            double zero = values.valueToJava2D(0, area, RectangleEdge.BOTTOM);
            double height = area.getHeight() / worths.size();
            boolean beneath = area.getWidth() < BESIDE_FROM && height > 3 * style.textSize() + 10;
            if (!Double.isNaN(band)) {
                double left = Math.max(area.getMinX(), values.valueToJava2D(-band, area, RectangleEdge.BOTTOM));
                double right = Math.min(area.getMaxX(), values.valueToJava2D(band, area, RectangleEdge.BOTTOM));
                g2.setPaint(style.palette().band());
                g2.fill(new Rectangle2D.Double(left, area.getY(), right - left, area.getHeight()));
            }
            for (int row = 0; row < worths.size(); row++) {
                WorthBars worth = worths.get(row);
                double top = area.getY() + row * height;
                g2.setPaint(style.palette().grid());
                g2.setStroke(ChartStyle.solid(1));
                g2.draw(new Line2D.Double(area.getX(), top, area.getMaxX(), top));
                new PlacedText(worth.name(), area.getMinX() + GAP, top + 3, TextAnchor.TOP_LEFT, style.strong())
                        .cut(g2, area.getWidth() - 2 * GAP)
                        .drawOn(g2, style.palette().ink(), style.palette().background());
                double from = top + style.textSize() + 10;
                bar(g2, area, values, from, worth.best(), worth.bestAt(), style.colour(2), true, beneath);
                bar(g2, area, values, from, worth.worst(), worth.worstAt(), style.colour(3), false, beneath);
                if (beneath) {
                    String both = (worth.best() < 0 ? text(worth.best(), worth.bestAt()) : "")
                            + (worth.best() < 0 && worth.worst() > 0 ? " \u00b7 " : "")
                            + (worth.worst() > 0 ? text(worth.worst(), worth.worstAt()) : "");
                    note(g2, area, both, area.getMinX() + GAP, from + style.textSize() + 2, false);
                }
                if (worth.best() == 0 && worth.worst() == 0) {
                    note(g2, area, "no difference", zero + GAP, from, false);
                }
            }
            g2.setPaint(style.palette().muted());
            g2.setStroke(ChartStyle.solid(1));
            g2.draw(new Line2D.Double(zero, area.getY(), zero, area.getMaxY()));
        }

        private void bar(
                Graphics2D g2,
                Rectangle2D area,
                ValueAxis values,
                double top,
                double value,
                String at,
                Color colour,
                boolean filled,
                boolean beneath) {
            if (value == 0) {
                return;
            }
            double zero = values.valueToJava2D(0, area, RectangleEdge.BOTTOM);
            double end = values.valueToJava2D(value, area, RectangleEdge.BOTTOM);
            Rectangle2D face = new Rectangle2D.Double(Math.min(zero, end), top, Math.abs(end - zero), style.textSize());
            g2.setPaint(filled ? colour : style.palette().background());
            g2.fill(face);
            g2.setPaint(colour);
            g2.setStroke(ChartStyle.solid(1));
            g2.draw(face);
            if (!beneath) {
                double beside = value < 0 ? face.getMinX() - GAP : face.getMaxX() + GAP;
                note(g2, area, text(value, at), beside, top, value < 0);
            }
        }

        private void note(Graphics2D g2, Rectangle2D area, String text, double x, double top, boolean left) {
            TextAnchor anchor = left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT;
            new PlacedText(text, x, top + style.textSize() / 2.0, anchor, style.small())
                    .within(g2, area.getMinX(), area.getMaxX())
                    .draw(g2, style.palette().ink());
        }
    }
}
