package dev.lapwright.charts.track;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.distance.DistancePanels;
import dev.lapwright.charts.distance.RoadPanels;
import dev.lapwright.charts.map.MapLabels;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.map.MapScaleBar;
import dev.lapwright.charts.map.RoadOutline;
import dev.lapwright.charts.plot.ChartLayout;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PagedPanels;
import dev.lapwright.track.Corner;
import dev.lapwright.track.DoubtfulPlace;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;

/**
 * A circuit or open run by itself: the road in plan, north up and true to scale, with corners, start and driving direction;
 * beneath it altitude (m) and curvature (1/km) over distance (m), with the smallest radius of each corner (m). Where it is
 * known how sure the curvature is, places in doubt are ringed and the band of nine in ten is shaded.
 */
public final class CircuitMap {
    /** The size it is designed for. */
    public static final ImageSize SIZE = new ImageSize(1200, 1000);

    /** Its height on a narrow page, px. */
    public static final int NARROW_HEIGHT = 720;

    /** Pages of less than this have the narrow layout, px. */
    public static final int NARROW_BELOW = 700;

    /** Plots on such a page are narrower than this, px. */
    static final double NARROW = NARROW_BELOW - 40.0;

    private CircuitMap() {}

    /** The map of a track. */
    public static JFreeChart of(Stations stations, ChartStyle style) {
        DistancePanels panels = new DistancePanels(stations, new double[0], style);
        panels.add(RoadPanels.altitude(stations, style), 100);
        panels.add(RoadPanels.curvature(stations, style), 110);
        return ChartLayout.chart(
                heading(stations.track()), facts(stations), new CircuitPlot(stations, panels.plot(), style), style);
    }

    /** The plan of a track alone, without the panels beneath it. */
    public static JFreeChart plan(Stations stations, ChartStyle style) {
        return ChartLayout.chart(
                heading(stations.track()), facts(stations), new CircuitPlot(stations, null, style), style);
    }

    private static String heading(Track track) {
        return (track.isClosed() ? "Circuit: " : "Open run: ") + track.name();
    }

    /** Length, corners, width and altitude in one line. */
    static String facts(Stations stations) {
        List<Corner> corners = stations.corners();
        double[] z = stations.z();
        double[] widths = RoadOutline.widths(stations);
        String tightest = corners.stream()
                .min(Comparator.comparingDouble(Corner::minimumRadius))
                .map(corner -> count(corners.size()) + ", the tightest "
                        + NumberText.fixed(0).format(corner.minimumRadius()) + " m in " + corner.label())
                .orElse("no corners");
        return ChartLayout.facts(
                NumberText.fixed(0).format(stations.track().length()) + " m",
                tightest,
                between(widths, 1) + " m wide",
                "altitude " + between(z, 0) + " m, "
                        + (stations.climb() < 0.5
                                ? "no climb"
                                : "climbs " + NumberText.fixed(0).format(stations.climb()) + " m in all"));
    }

    private static String count(int corners) {
        return corners == 1 ? "1 corner" : corners + " corners";
    }

    /** The least and greatest of values, once where they are written alike. */
    private static String between(double[] values, int decimals) {
        String least =
                NumberText.fixed(decimals).format(Arrays.stream(values).min().orElseThrow());
        String greatest =
                NumberText.fixed(decimals).format(Arrays.stream(values).max().orElseThrow());
        return least.equals(greatest) ? least : least + " to " + greatest;
    }

    /** The road in plan, alone or above panels over distance. */
    static final class CircuitPlot extends Plot {
        private static final long serialVersionUID = 1L;
        /** Share of the height that the plan takes. */
        private static final double PLAN = 0.64;

        private static final double PLAN_OF_NARROW = 0.54;

        private final transient Stations stations;
        private final PagedPanels panels;
        private final ChartStyle style;

        /** @param panels what stands beneath the plan; null for the plan alone */
        CircuitPlot(Stations stations, PagedPanels panels, ChartStyle style) {
            this.stations = stations;
            this.panels = panels;
            this.style = style;
            setBackgroundPaint(null);
        }

        @Override
        public String getPlotType() {
            return "circuit map";
        }

        Plot panels() {
            return panels;
        }

        @Override
        public void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
            if (info != null) {
                info.setPlotArea(area);
                info.setDataArea(area);
            }
            if (panels == null) {
                drawPlan(g2, area);
                return;
            }
            double share = area.getWidth() < NARROW ? PLAN_OF_NARROW : PLAN;
            double planHeight =
                    area.getHeight() - panels.heightBeneath(area.getWidth(), (1 - share) * area.getHeight());
            drawPlan(g2, new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), planHeight));
            panels.drawBeneath(
                    g2,
                    new Rectangle2D.Double(
                            area.getX(), area.getY() + planHeight, area.getWidth(), area.getHeight() - planHeight),
                    anchor,
                    "altitude and bends",
                    style);
        }

        private void drawPlan(Graphics2D g2, Rectangle2D area) {
            MapScale scale = MapScale.labelled(stations.x(), stations.y(), area, 1, MapLabels.foot(area.getWidth()));
            RoadOutline road = new RoadOutline(stations, scale);
            road.draw(g2, style);
            MapLabels labels = new MapLabels(g2, style, scale, stations, area, road.halfWidth());
            labels.keepFootClear();
            labels.drawStart(stations.track().isClosed());
            labels.drawCorners();
            labels.drawDoubts(DoubtfulPlace.of(stations));
            Rectangle2D foot = new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - 8);
            new MapScaleBar(style, scale).draw(g2, foot);
            String remark = (stations.corners().isEmpty() ? "" : "corners shaded, ")
                    + (stations.track().curvatureDeviation().length > 0
                            ? "curvature's band of nine in ten shaded, "
                            : "")
                    + (road.isWidened() ? "road drawn wider than it is" : "road to scale");
            MapScaleBar.drawRemark(g2, remark, foot, style);
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
