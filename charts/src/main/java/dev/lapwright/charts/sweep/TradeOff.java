package dev.lapwright.charts.sweep;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.ColourScale;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PointCloud;
import dev.lapwright.charts.plot.PointLabels;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.SweepResult;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.Range;
import org.jfree.data.general.DatasetUtils;
import org.jfree.data.xy.DefaultXYDataset;
import org.jfree.data.xy.XYDataset;

/**
 * Drag against grip: top speed (km/h) over mean speed in the corners (km/h), one point for each setting, joined in order, the
 * larger the shorter its lap time.
 */
public final class TradeOff {
    /** The size it is designed for. */
    public static final ImageSize SIZE = ImageSize.WIDE;

    /** Least length of an axis, km/h: smaller effects are drawn small. */
    private static final double LEAST_SPAN = 0.5;
    /** Colours told apart. */
    private static final int SHADES = 24;
    /** Radius of the ring round the largest of the sized points, px. */
    private static final double WIDE_RING = SizedPoints.LARGEST + 4;

    private TradeOff() {}

    /** The chart of a sweep of one or two axes; where there is nothing that it could show, it says why. */
    public static JFreeChart of(SweepResult sweep, ChartStyle style) {
        String obstacle = SweepGrid.obstacle(sweep);
        if (obstacle.isEmpty() && Double.isNaN(sweep.baseline().meanCornerSpeed())) {
            obstacle = "there are no corners to trade top speed against";
        }
        if (!obstacle.isEmpty()) {
            return ChartLayout.message(heading(sweep), obstacle, style);
        }
        SweepGrid table = SweepGrid.of(sweep);
        return table.fitsLines() ? lines(table, style) : cloud(table, style);
    }

    private static String heading(SweepResult sweep) {
        return "Top speed against cornering speed: " + sweep.track().name();
    }

    private static double[] point(LapFigures figures) {
        return new double[] {NumberText.kmh(figures.meanCornerSpeed()), NumberText.kmh(figures.topSpeed())};
    }

    private static double[][] series(List<SweepGrid.Entry> entries) {
        double[][] series = new double[2][entries.size()];
        for (int i = 0; i < entries.size(); i++) {
            double[] point = point(entries.get(i).figures());
            series[0][i] = point[0];
            series[1][i] = point[1];
        }
        return series;
    }

    /** Labels that must be there: the fastest setting and the baseline. */
    private static List<PointLabels.Label> landmarks(SweepGrid table, String bestText) {
        List<PointLabels.Label> labels = new ArrayList<>();
        int[] place = table.fastest();
        double[] best = point(table.at(place[0], place[1]));
        labels.add(new PointLabels.Label(best[0], best[1], bestText, true, WIDE_RING));
        double[] base = point(table.sweep().baseline());
        String text = "baseline, " + NumberText.lapTime(table.sweep().baseline().lapTime());
        labels.add(new PointLabels.Label(base[0], base[1], text, true, SeriesRenderers.DIAMOND));
        return labels;
    }

    /** The plot with baseline and fastest setting marked; the points of the dataset have no renderer yet. */
    private static XYPlot plot(SweepGrid table, XYDataset data, ChartStyle style) {
        double[] base = point(table.sweep().baseline());
        XYDataset baseline = SeriesRenderers.single("baseline", base[0], base[1]);
        int[] place = table.fastest();
        double[] best = point(table.at(place[0], place[1]));
        UnitAxis corners = new UnitAxis("Mean corner speed (km/h)", style, 0);
        UnitAxis top = new UnitAxis("Top speed (km/h)", style, 0);
        corners.setRange(range(DatasetUtils.findDomainBounds(data), DatasetUtils.findDomainBounds(baseline)));
        top.setRange(range(DatasetUtils.findRangeBounds(data), DatasetUtils.findRangeBounds(baseline)));
        XYPlot plot = new XYPlot(data, corners, top, null);
        plot.setDataset(1, baseline);
        plot.setRenderer(1, SeriesRenderers.baseline(style));
        plot.setDataset(2, SeriesRenderers.single("fastest", best[0], best[1]));
        plot.setRenderer(2, SeriesRenderers.fastest(style, WIDE_RING));
        ChartLayout.style(plot, style);
        return plot;
    }

    private static Range range(Range data, Range baseline) {
        Range both = Range.combine(data, baseline);
        Range wide = UnitAxis.wide(both, LEAST_SPAN);
        return UnitAxis.padded(wide.getLowerBound(), wide.getUpperBound(), 0.1);
    }

    private static JFreeChart sheet(SweepGrid table, XYPlot plot, String reading, ChartStyle style) {
        return ChartLayout.chart(
                heading(table.sweep()), ChartLayout.facts(SweepTime.facts(table), reading), plot, style);
    }

    /** A line for each value of the second axis, or one line where there is none. */
    private static JFreeChart lines(SweepGrid table, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        List<double[]> lapTimes = new ArrayList<>();
        List<PointLabels.Label> labels = new ArrayList<>(landmarks(table, SweepTime.bestText(table)));
        double[] families = table.families();
        for (int f = 0; f < families.length; f++) {
            List<SweepGrid.Entry> entries = table.entries(f);
            if (entries.isEmpty()) {
                continue;
            }
            String name = table.hasFamilies() ? table.familyText().named(families[f]) : "settings";
            data.addSeries(name, series(entries));
            lapTimes.add(
                    entries.stream().mapToDouble(e -> e.figures().lapTime()).toArray());
            label(table, f, entries, labels);
        }
        XYPlot plot = plot(table, data, style);
        plot.setRenderer(0, new SizedPoints(lapTimes.toArray(new double[0][]), style));
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        plot.addAnnotation(new PointLabels(labels, data, true, new double[0], style));
        String points = AxisText.inSentence(table.acrossText().label());
        JFreeChart chart =
                sheet(table, plot, "points labelled by " + points + ", larger for a shorter lap time", style);
        if (table.hasFamilies()) {
            chart.addLegend(ChartLayout.legend(() -> plot.getRenderer(0).getLegendItems(), style));
        }
        return chart;
    }

    /**
     * Ends first: where room is short, the label of an end says more than one between. With several lines only that of the
     * fastest lap is labelled throughout.
     */
    private static void label(
            SweepGrid table, int family, List<SweepGrid.Entry> entries, List<PointLabels.Label> labels) {
        int[] fastest = table.fastest();
        int last = entries.size() - 1;
        int count = family == fastest[0] ? entries.size() : Math.min(2, entries.size());
        for (int i = 0; i < count; i++) {
            int from = i == 0 ? 0 : i == 1 ? last : i - 1;
            SweepGrid.Entry entry = entries.get(from);
            double[] point = point(entry.figures());
            boolean named = entry.figures().equals(table.at(fastest[0], fastest[1]));
            if (!named) {
                labels.add(new PointLabels.Label(
                        point[0], point[1], table.acrossText().value(entry.setting()), false, SizedPoints.LARGEST));
            }
        }
    }

    /** Two axes with many values each: points coloured by lap time. */
    private static JFreeChart cloud(SweepGrid table, ChartStyle style) {
        List<SweepGrid.Entry> entries = table.byLapTime();
        double low = entries.get(0).figures().lapTime();
        double high = entries.get(entries.size() - 1).figures().lapTime();
        ColourScale ramp = new ColourScale(low, high, style.palette(), true);
        DefaultXYDataset data = new DefaultXYDataset();
        PointCloud cloud = new PointCloud();
        for (int shade = SHADES - 1; shade >= 0; shade--) {
            double from = low + (high - low) * shade / SHADES;
            double to = shade == SHADES - 1 ? Double.POSITIVE_INFINITY : low + (high - low) * (shade + 1) / SHADES;
            List<SweepGrid.Entry> within = entries.stream()
                    .filter(e -> e.figures().lapTime() >= from && e.figures().lapTime() < to)
                    .toList();
            if (!within.isEmpty()) {
                int series = data.getSeriesCount();
                data.addSeries(NumberText.lapTime(Math.max(low, from)), series(within));
                cloud.setSeriesPaint(series, ramp.getPaint((from + Math.min(to, high)) / 2));
                cloud.setSeriesShape(series, new Ellipse2D.Double(-4, -4, 8, 8));
            }
        }
        XYPlot plot = plot(table, data, style);
        plot.setRenderer(0, cloud);
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        // Two settings are too long a label among so many points: they stand in the facts.
        int[] place = table.fastest();
        String best =
                "fastest, " + NumberText.lapTime(table.at(place[0], place[1]).lapTime());
        plot.addAnnotation(new PointLabels(landmarks(table, best), data, false, new double[0], style));
        JFreeChart chart = sheet(
                table,
                plot,
                ChartLayout.facts(SweepTime.bestText(table), "each point a pair of settings: ")
                        + AxisText.inSentence(table.acrossText().name()) + ", "
                        + AxisText.inSentence(table.familyText().name()),
                style);
        UnitAxis scale = new UnitAxis(NumberText.lapTimeLabel(high), style, 0, NumberText::lapTimes);
        chart.addSubtitle(ChartLayout.colourScale(ramp, scale, style));
        return chart;
    }

    /** Dots that are the larger the shorter the lap time, on lines in the style's colours and strokes. */
    static final class SizedPoints extends XYLineAndShapeRenderer {
        private static final long serialVersionUID = 1L;
        private static final double SMALLEST = 3;
        static final double LARGEST = 8;
        /** More points than this are drawn half as large. */
        private static final int MANY = 80;

        private final double[][] lapTimes;
        private final double shortest;
        private final double longest;
        private final double scale;

        /** @param lapTimes s, [series][item] as in the dataset that is drawn */
        SizedPoints(double[][] lapTimes, ChartStyle style) {
            super(true, true);
            this.lapTimes = lapTimes;
            double low = Double.POSITIVE_INFINITY;
            double high = Double.NEGATIVE_INFINITY;
            for (double[] series : lapTimes) {
                for (double time : series) {
                    low = Math.min(low, time);
                    high = Math.max(high, time);
                }
            }
            shortest = low;
            longest = high;
            scale = Arrays.stream(lapTimes).mapToInt(series -> series.length).sum() > MANY ? 0.5 : 1;
            setDrawSeriesLineAsPath(true);
            setDefaultLegendShape(new Ellipse2D.Double(-SMALLEST, -SMALLEST, 2 * SMALLEST, 2 * SMALLEST));
            setLegendLine(SeriesRenderers.legendLine());
            for (int i = 0; i < lapTimes.length; i++) {
                setSeriesPaint(i, style.colour(i));
                setSeriesStroke(i, ChartStyle.line(i));
            }
        }

        @Override
        public Shape getItemShape(int series, int item) {
            double slow = longest > shortest ? (lapTimes[series][item] - shortest) / (longest - shortest) : 0;
            double r = scale * (LARGEST - slow * (LARGEST - SMALLEST));
            return new Ellipse2D.Double(-r, -r, 2 * r, 2 * r);
        }

        @Override
        public boolean equals(Object other) {
            return this == other;
        }

        @Override
        public int hashCode() {
            return System.identityHashCode(this);
        }
    }
}
