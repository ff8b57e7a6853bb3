package dev.lapwright.charts.distance;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.LabelSpace;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.charts.plot.SignLabels;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYDifferenceRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.DefaultXYDataset;

/** Panels over distance that show what a road is like: altitude, curvature, slope. */
public final class RoadPanels {
    /** Least height of the axis of altitude, m: a bump is not drawn as a mountain. */
    private static final double LEAST_RISE = 10;
    /** Least reach of the axis of curvature either side of straight, 1/km. */
    private static final double LEAST_BEND = 1;
    /** Least reach of the axis of slope either side of level, deg. */
    private static final double LEAST_SLOPE = 1;

    private static final double METRES_PER_KILOMETRE = 1000;
    /** Names of the band's edges. */
    private static final String[] BAND = {"least in nine of ten", "greatest in nine of ten"};

    private RoadPanels() {}

    /** Altitude, m. */
    public static XYPlot altitude(Stations stations, ChartStyle style) {
        double[] z = stations.z();
        UnitAxis axis = new UnitAxis("Altitude (m)", style, 0).withCloseTicks();
        double low = Arrays.stream(z).min().orElseThrow();
        double high = Arrays.stream(z).max().orElseThrow();
        axis.setRange(UnitAxis.wide(UnitAxis.padded(low, Math.max(high, low + 1e-3), 0.1), LEAST_RISE));
        return new XYPlot(line("altitude", stations.s(), z), null, axis, SeriesRenderers.of(1, style));
    }

    /** Curvature, 1/km, left turns up, with the radii of the corners. */
    public static XYPlot curvature(Stations stations, ChartStyle style) {
        double[] curvature = stations.curvature();
        double low = -LEAST_BEND;
        double high = LEAST_BEND;
        for (int i = 0; i < curvature.length; i++) {
            curvature[i] *= METRES_PER_KILOMETRE;
            low = Math.min(low, curvature[i]);
            high = Math.max(high, curvature[i]);
        }
        double[][] band = band(stations);
        for (int i = 0; band.length > 0 && i < curvature.length; i++) {
            low = Math.min(low, band[0][i]);
            high = Math.max(high, band[1][i]);
        }
        UnitAxis axis = new UnitAxis("Curvature (1/km)", style, 0, NumberText::signed).withCloseTicks();
        // Room for the radii beyond the peaks.
        axis.setRange(UnitAxis.padded(low, high, 0.25));
        XYPlot plot = new XYPlot(line("curvature", stations.s(), curvature), null, axis, SeriesRenderers.of(1, style));
        if (band.length > 0) {
            DefaultXYDataset edges = new DefaultXYDataset();
            edges.addSeries(BAND[0], new double[][] {stations.s(), band[0]});
            edges.addSeries(BAND[1], new double[][] {stations.s(), band[1]});
            plot.setDataset(1, edges);
            XYDifferenceRenderer shade = new XYDifferenceRenderer(
                    style.palette().grid(), style.palette().grid(), false);
            Color clear = new Color(0, 0, 0, 0);
            shade.setSeriesPaint(0, clear);
            shade.setSeriesPaint(1, clear);
            plot.setRenderer(1, shade);
        }
        markZero(plot, style);
        plot.addAnnotation(new CornerRadii(stations.corners(), style));
        return plot;
    }

    /** Least and greatest curvature that the true one lies between nine times of ten, 1/km; empty if it is not known. */
    private static double[][] band(Stations stations) {
        if (stations.track().curvatureDeviation().length == 0) {
            return new double[0][];
        }
        double[] s = stations.s();
        double[][] band = {stations.curvature(), stations.curvature()};
        for (int i = 0; i < s.length; i++) {
            double half = Track.NINE_OF_TEN
                    * stations.track()
                            .curvatureDeviationAt(
                                    Math.min(s[i], stations.track().length()));
            band[0][i] = METRES_PER_KILOMETRE * (band[0][i] - half);
            band[1][i] = METRES_PER_KILOMETRE * (band[1][i] + half);
        }
        return band;
    }

    /** Slope, deg, uphill positive. */
    public static XYPlot slope(Stations stations, ChartStyle style) {
        double[] slope = stations.slope();
        double reach = LEAST_SLOPE;
        for (int i = 0; i < slope.length; i++) {
            slope[i] = Math.toDegrees(slope[i]);
            reach = Math.max(reach, Math.abs(slope[i]));
        }
        UnitAxis axis = new UnitAxis("Slope (deg)", style, 0, NumberText::signed).withCloseTicks();
        axis.setRange(UnitAxis.padded(-reach, reach, 0.1));
        XYPlot plot = new XYPlot(line("slope", stations.s(), slope), null, axis, SeriesRenderers.of(1, style));
        markZero(plot, style);
        plot.addAnnotation(new SignLabels("+ uphill", "\u2212 downhill", style));
        return plot;
    }

    /** A line at zero, beneath the data. */
    public static void markZero(XYPlot plot, ChartStyle style) {
        ValueMarker zero = new ValueMarker(0, style.palette().muted(), ChartStyle.solid(1));
        zero.setAlpha(1);
        plot.addRangeMarker(zero, Layer.BACKGROUND);
    }

    private static DefaultXYDataset line(String name, double[] s, double[] values) {
        DefaultXYDataset data = new DefaultXYDataset();
        data.addSeries(name, new double[][] {s, values});
        return data;
    }

    /**
     * The smallest radius of each corner, m, beyond the peak of its curvature (1/km). Where there is not room for all, the
     * tightest corners come first. Says, too, which side of zero turns left.
     */
    private static final class CornerRadii extends AbstractXYAnnotation {
        private static final long serialVersionUID = 1L;
        private static final double GAP = 3;
        private static final double BETWEEN = 3;
        private static final double SIDE = 4;

        private final transient List<Corner> tightestFirst;
        private final ChartStyle style;

        public CornerRadii(List<Corner> corners, ChartStyle style) {
            tightestFirst = corners.stream()
                    .sorted(Comparator.comparingDouble(Corner::minimumRadius))
                    .toList();
            this.style = style;
        }

        @Override
        public void draw(
                Graphics2D g2,
                XYPlot plot,
                Rectangle2D area,
                ValueAxis distance,
                ValueAxis curvature,
                int rendererIndex,
                PlotRenderingInfo info) {
            LabelSpace space = new LabelSpace();
            side(g2, "left turns", area.getMinY() + 1, area, TextAnchor.TOP_LEFT, space);
            side(g2, "right turns", area.getMaxY() - 1, area, TextAnchor.BOTTOM_LEFT, space);
            for (Corner corner : tightestFirst) {
                if (!distance.getRange().contains(corner.apex())) {
                    continue;
                }
                double peak = (corner.left() ? 1000 : -1000) / corner.minimumRadius();
                double x = distance.valueToJava2D(corner.apex(), area, RectangleEdge.BOTTOM);
                double y = curvature.valueToJava2D(peak, area, RectangleEdge.LEFT);
                // A low panel has no room beyond the peak: there it stands upon it.
                double high = style.small().getSize() + 2.0;
                double beyond = corner.left()
                        ? Math.max(y - GAP, area.getMinY() + high)
                        : Math.min(y + GAP, area.getMaxY() - high);
                PlacedText note = new PlacedText(
                                NumberText.fixed(0).format(corner.minimumRadius()) + " m",
                                x,
                                beyond,
                                corner.left() ? TextAnchor.BOTTOM_CENTER : TextAnchor.TOP_CENTER,
                                style.small())
                        .within(g2, area.getMinX(), area.getMaxX());
                Rectangle2D box = note.box(g2);
                if (space.isFree(box, BETWEEN)) {
                    space.take(box);
                    // Upon a patch: the line between two sectors may run through it.
                    note.drawOn(g2, style.palette().ink(), style.palette().background());
                }
            }
        }

        private void side(Graphics2D g2, String text, double y, Rectangle2D area, TextAnchor anchor, LabelSpace space) {
            PlacedText note = new PlacedText(text, area.getMinX() + SIDE, y, anchor, style.small());
            space.take(note.box(g2));
            note.drawOn(g2, style.palette().muted(), style.palette().background());
        }
    }
}
