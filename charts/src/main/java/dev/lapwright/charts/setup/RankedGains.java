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
 * What each adjustment is worth: change of lap time (s) by one step each way, and at the fastest and the slowest setting of
 * its range; those with the widest range first. A shaded band tells what the timing screen cannot show.
 */
public final class RankedGains {
    private static final int MOST = 60;
    /** Room on each side for labels, as a share of the bars' reach to both sides; those of the range name a setting, too. */
    private static final double STEP_ROOM = 0.28;

    private static final double RANGE_ROOM = 0.45;
    /** The band is shown up to so many times the longest bar. */
    private static final double MOST_BAND = 2;
    /** Least reach of an axis, s. */
    private static final double LEAST = 0.002;

    /** One of the changes of lap time, s. */
    private interface Change extends ToDoubleFunction<GainBars> {}

    private RankedGains() {}

    /** The size it is designed for, with so many adjustments. */
    public static ImageSize size(int adjustments) {
        return RowPanels.size(adjustments);
    }

    /**
     * The chart.
     *
     * @param subject what has been looked at, such as {@code Talvex GT at Castelvane}
     * @param gains 1 to 60, in any order
     * @param visible the least difference of lap time that the timing screen can show, s; NaN if it is not known
     * @throws InvalidValueException if there are no adjustments or too many
     */
    public static JFreeChart of(String subject, List<GainBars> gains, double visible, ChartStyle style) {
        if (gains.isEmpty() || gains.size() > MOST) {
            throw new InvalidValueException(
                    "adjustments", gains.size() + " cannot be drawn in one chart", "give 1 to " + MOST);
        }
        if (!Double.isNaN(visible)) {
            Check.positive("visible difference (s)", visible);
        }
        List<GainBars> ranked = new ArrayList<>(gains);
        ranked.sort(Comparator.comparingDouble(GainBars::span).reversed());
        List<String> names = ranked.stream()
                .map(gain -> gain.step().isEmpty() ? gain.name() : gain.name() + ", " + gain.step())
                .toList();
        RowPanels panels = new RowPanels(names, style);
        UnitAxis step = axis(ranked, visible, STEP_ROOM, style, GainBars::stepDown, GainBars::stepUp);
        boolean seen = !(visible > step.getUpperBound());
        panels.add(step, steps(ranked, seen, visible, style), 42);
        UnitAxis range = axis(ranked, visible, RANGE_ROOM, style, GainBars::best, GainBars::worst);
        panels.add(range, ranges(ranked, visible, style), 58);
        JFreeChart chart = ChartLayout.chart(
                "What each adjustment is worth: " + subject,
                ChartLayout.facts(
                        "change of lap time from the car as it is set up",
                        Double.isNaN(visible)
                                ? "negative is faster"
                                : "shaded: less than " + NumberText.fixed(3).format(visible)
                                        + " s, which the timing screen cannot show"),
                panels.plot(),
                style);
        chart.addLegend(ChartLayout.legend(() -> legend(style), style));
        return chart;
    }

    /** The size in px of {@link #overTheRange} at this width, 600 to 10000, with so many adjustments. */
    public static ImageSize sizeOverTheRange(int width, int adjustments, ChartStyle style) {
        int around = 7 * style.textSize();
        return new ImageSize(width, Math.max(400, around + NamedRows.height(style) * adjustments));
    }

    /**
     * The fastest and the slowest setting of each adjustment alone, with its name above its bar, so that it fits a narrow page.
     *
     * @param gains 1 to 60, in the order to draw them
     * @param visible the least difference of lap time that the timing screen can show, s; NaN if it is not known
     * @throws InvalidValueException if there are no adjustments or too many
     */
    public static JFreeChart overTheRange(List<GainBars> gains, double visible, ChartStyle style) {
        if (gains.isEmpty() || gains.size() > MOST) {
            throw new InvalidValueException(
                    "adjustments", gains.size() + " cannot be drawn in one chart", "give 1 to " + MOST);
        }
        if (!Double.isNaN(visible)) {
            Check.positive("visible difference (s)", visible);
        }
        UnitAxis axis = axis(gains, visible, RANGE_ROOM, style, GainBars::best, GainBars::worst);
        axis.setLabel("Change of lap time (s): left is faster, right is slower");
        XYPlot plot = NamedRows.plot(gains.stream().map(GainBars::name).toList(), axis, style);
        plot.addAnnotation(new NamedRows(gains, visible, style));
        return ChartLayout.chart("What each adjustment is worth", "", plot, style);
    }

    /** Change of lap time to which an axis must reach on one side of zero, s, without its sign. */
    private static double reach(List<GainBars> gains, double sign, double least, Change one, Change other) {
        double reach = least;
        for (GainBars gain : gains) {
            for (double change : new double[] {one.applyAsDouble(gain), other.applyAsDouble(gain)}) {
                reach = Double.isNaN(change) ? reach : Math.max(reach, sign * change);
            }
        }
        return reach;
    }

    /** An axis with room for the bars and the band on either side of zero, and for the labels beyond them. */
    private static UnitAxis axis(
            List<GainBars> gains, double visible, double room, ChartStyle style, Change one, Change other) {
        double faster = reach(gains, -1, LEAST, one, other);
        double slower = reach(gains, 1, LEAST, one, other);
        double band = Double.isNaN(visible) ? 0 : Math.min(visible, MOST_BAND * Math.max(faster, slower));
        faster = Math.max(faster, band);
        slower = Math.max(slower, band);
        double labels = room * (faster + slower);
        UnitAxis axis = new UnitAxis("Change of lap time (s)", style, 0, NumberText::signed).withCloseTicks();
        axis.setRange(-faster - labels, slower + labels);
        return axis;
    }

    private static RowBars steps(List<GainBars> ranked, boolean seen, double visible, ChartStyle style) {
        List<RowBars.Bar> bars = new ArrayList<>();
        for (int row = 0; row < ranked.size(); row++) {
            GainBars gain = ranked.get(row);
            Color colour = style.colour(0);
            bars.add(new RowBars.Bar(row, gain.stepDown(), 0.1, 0.46, colour, false, step(gain.stepDown())));
            bars.add(new RowBars.Bar(row, gain.stepUp(), 0.54, 0.9, colour, true, step(gain.stepUp())));
        }
        RowBars.Heading heading =
                new RowBars.Heading(seen ? "One step" : "One step: not to be seen for any", "faster", "slower");
        return new RowBars(heading, bars, ranked.size(), visible, style);
    }

    private static RowBars ranges(List<GainBars> ranked, double visible, ChartStyle style) {
        List<RowBars.Bar> bars = new ArrayList<>();
        for (int row = 0; row < ranked.size(); row++) {
            GainBars gain = ranked.get(row);
            String best = gain.best() < 0 ? text(gain.best(), gain.bestAt()) : "";
            String worst = gain.worst() > 0 ? text(gain.worst(), gain.worstAt()) : "";
            bars.add(new RowBars.Bar(row, gain.best(), 0.22, 0.78, style.colour(2), true, best));
            bars.add(new RowBars.Bar(row, gain.worst(), 0.22, 0.78, style.colour(3), false, worst));
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
     * What an adjustment is worth, as {@link RankedGains} draws it. Changes are of lap time, s, from the car as it is set up:
     * negative is faster.
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
    public record GainBars(
            String name,
            String step,
            double stepDown,
            double stepUp,
            double best,
            String bestAt,
            double worst,
            String worstAt) {
        public GainBars {
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

        private final transient List<GainBars> gains;
        private final double band;
        private final ChartStyle style;

        /** @param band reach of the shaded band either side of zero, s; NaN for none */
        NamedRows(List<GainBars> gains, double band, ChartStyle style) {
            this.gains = List.copyOf(gains);
            this.band = band;
            this.style = style;
        }

        /** Height of a row, px. */
        static int height(ChartStyle style) {
            return 2 * style.textSize() + 18;
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

        List<GainBars> gains() {
            return gains;
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
            double height = area.getHeight() / gains.size();
            if (!Double.isNaN(band)) {
                double left = Math.max(area.getMinX(), values.valueToJava2D(-band, area, RectangleEdge.BOTTOM));
                double right = Math.min(area.getMaxX(), values.valueToJava2D(band, area, RectangleEdge.BOTTOM));
                g2.setPaint(style.palette().band());
                g2.fill(new Rectangle2D.Double(left, area.getY(), right - left, area.getHeight()));
            }
            for (int row = 0; row < gains.size(); row++) {
                GainBars gain = gains.get(row);
                double top = area.getY() + row * height;
                g2.setPaint(style.palette().grid());
                g2.setStroke(ChartStyle.solid(1));
                g2.draw(new Line2D.Double(area.getX(), top, area.getMaxX(), top));
                new PlacedText(gain.name(), area.getMinX() + GAP, top + 3, TextAnchor.TOP_LEFT, style.strong())
                        .drawOn(g2, style.palette().ink(), style.palette().background());
                double from = top + style.textSize() + 10;
                bar(g2, area, values, from, gain.best(), gain.bestAt(), style.colour(2), true);
                bar(g2, area, values, from, gain.worst(), gain.worstAt(), style.colour(3), false);
                if (gain.best() == 0 && gain.worst() == 0) {
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
                boolean filled) {
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
            String text = NumberText.signed(3).format(value) + (at.isEmpty() ? "" : " at " + at);
            note(g2, area, text, value < 0 ? face.getMinX() - GAP : face.getMaxX() + GAP, top, value < 0);
        }

        private void note(Graphics2D g2, Rectangle2D area, String text, double x, double top, boolean left) {
            TextAnchor anchor = left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT;
            new PlacedText(text, x, top + style.textSize() / 2.0, anchor, style.small())
                    .within(g2, area.getMinX(), area.getMaxX())
                    .draw(g2, style.palette().ink());
        }
    }
}
