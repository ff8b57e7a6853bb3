package dev.lapwright.charts.track;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.distance.DistancePanels;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.SignLabels;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.SeriesRenderingOrder;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.DefaultXYDataset;

/**
 * Lines driven along a road: the road in plan with its edges; the corners where the lines differ most, enlarged to one
 * scale; and the offset of each line from the road's own path (m, left positive) over distance along the road (m).
 */
public final class LineMap {
    /** The size it is designed for. */
    public static final ImageSize SIZE = new ImageSize(1200, 1080);

    /** Its height on a narrow page, where the enlarged corners stand beneath the plan, px. */
    public static final int NARROW_HEIGHT = 1000;

    private static final int MOST_LINES = 3;
    private static final double SAME_LENGTH = 1e-6;
    /** Room beyond the road's edges in the panel, as a share of its width. */
    private static final double MARGIN = 0.08;
    /** Least width of road that the panel shows, m. */
    private static final double LEAST_WIDTH = 2;

    private LineMap() {}

    /**
     * The map of some lines. Of more than three, which cannot be told apart, the first three are drawn, and the chart says so.
     *
     * @throws InvalidValueException if two carry one name, or if a line's distances do not lie on the road
     */
    public static JFreeChart of(Stations road, List<DrivenLine> all, ChartStyle style) {
        check(road, all);
        if (all.isEmpty()) {
            return CircuitMap.of(road, style);
        }
        List<DrivenLine> lines = all.subList(0, Math.min(all.size(), MOST_LINES));
        DistancePanels panels = new DistancePanels(road, new double[0], style);
        XYPlot offsets = offsets(road, lines, style);
        panels.add(offsets, 260);
        CornerCloseUps views = CornerCloseUps.of(road, lines);
        JFreeChart chart = ChartLayout.chart(
                (lines.size() > 1 ? "Driven lines: " : "Driven line: ")
                        + road.track().name(),
                facts(road, lines, views)
                        + (lines.size() < all.size()
                                ? ", the first " + lines.size() + " of " + all.size() + " lines"
                                : ""),
                new LineMapPlot(road, lines, views, panels.plot(), style),
                style);
        chart.addLegend(ChartLayout.legend(offsets, style));
        return chart;
    }

    private static void check(Stations road, List<DrivenLine> lines) {
        Set<String> names = new HashSet<>();
        double length = road.track().length();
        for (DrivenLine line : lines) {
            if (!names.add(line.name())) {
                throw new InvalidValueException(
                        "lines", "two are called '" + line.name() + "'", "give each line its own name");
            }
            double[] distance = line.distanceAlongRoad();
            double last = distance[distance.length - 1];
            if (!(distance[0] >= 0 && last <= length * (1 + SAME_LENGTH))) {
                throw new InvalidValueException(
                        "line " + line.name(),
                        "its distances run from " + Check.text(distance[0]) + " m to " + Check.text(last) + " m, but "
                                + road.track().name() + " is " + Check.text(length) + " m long",
                        "give a line of this road");
            }
        }
    }

    private static String facts(Stations road, List<DrivenLine> lines, CornerCloseUps views) {
        List<String> facts = new ArrayList<>();
        facts.add(NumberText.fixed(0).format(road.track().length()) + " m");
        DrivenLine first = lines.get(0);
        for (DrivenLine line : lines.subList(1, lines.size())) {
            double difference = line.lapTime() - first.lapTime();
            if (!Double.isNaN(difference)) {
                facts.add(line.name() + " " + NumberText.difference(difference) + " against " + first.name());
            }
        }
        if (!views.all().isEmpty()) {
            facts.add("enlarged: where the "
                    + (lines.size() > 1 ? "lines are farthest apart" : "line is farthest from the centre line"));
        }
        return ChartLayout.facts(facts.toArray(new String[0]));
    }

    private static XYPlot offsets(Stations road, List<DrivenLine> lines, ChartStyle style) {
        DefaultXYDataset data = new DefaultXYDataset();
        for (DrivenLine line : lines) {
            data.addSeries(line.label(), new double[][] {line.distanceAlongRoad(), line.offset()});
        }
        double[] left = road.widthLeft();
        double[] right = road.widthRight();
        double high = 0;
        double low = 0;
        for (int i = 0; i < left.length; i++) {
            right[i] = -right[i];
            high = Math.max(high, left[i]);
            low = Math.min(low, right[i]);
        }
        for (DrivenLine line : lines) {
            for (double offset : line.offset()) {
                high = Math.max(high, offset);
                low = Math.min(low, offset);
            }
        }
        UnitAxis axis = new UnitAxis("Offset (m)", style, 0, NumberText::signed).withCloseTicks();
        axis.setRange(UnitAxis.wide(UnitAxis.padded(low, Math.max(high, low + 1e-3), MARGIN), LEAST_WIDTH));
        XYPlot plot = new XYPlot(data, null, axis, SeriesRenderers.of(lines.size(), style));
        plot.setSeriesRenderingOrder(SeriesRenderingOrder.FORWARD);
        DefaultXYDataset edges = new DefaultXYDataset();
        edges.addSeries("centre line", new double[][] {{0, road.track().length()}, {0, 0}});
        edges.addSeries("edges of the road", new double[][] {road.s(), left});
        edges.addSeries("right edge", new double[][] {road.s(), right});
        plot.setDataset(1, edges);
        plot.setRenderer(1, SeriesRenderers.road(style));
        plot.addAnnotation(new SignLabels("+ left of the centre line", "\u2212 right", style));
        return plot;
    }
}
