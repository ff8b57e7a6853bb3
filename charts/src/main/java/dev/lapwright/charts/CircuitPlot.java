package dev.lapwright.charts;

import dev.lapwright.track.Stations;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.ui.TextAnchor;

/** The road in plan, alone or above panels over distance. */
final class CircuitPlot extends Plot {
    private static final long serialVersionUID = 1L;
    /** Share of the height that the plan takes. */
    private static final double PLAN = 0.64;
    /** Room for labels round the road, and beneath for scale and north arrow, px. */
    private static final double MARGIN = 58;

    private static final double FOOT = 34;

    private final transient Stations stations;
    private final Plot panels;
    private final ChartStyle style;

    /** @param panels what stands beneath the plan; null for the plan alone */
    CircuitPlot(Stations stations, Plot panels, ChartStyle style) {
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
        double planHeight = PLAN * area.getHeight();
        drawPlan(g2, new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), planHeight));
        panels.draw(
                g2,
                new Rectangle2D.Double(
                        area.getX(), area.getY() + planHeight, area.getWidth(), area.getHeight() - planHeight),
                anchor,
                parent,
                null);
    }

    private void drawPlan(Graphics2D g2, Rectangle2D area) {
        Rectangle2D land = new Rectangle2D.Double(
                area.getX() + MARGIN,
                area.getY() + MARGIN / 2,
                Math.max(1, area.getWidth() - 2 * MARGIN),
                Math.max(1, area.getHeight() - MARGIN - FOOT));
        MapScale scale = new MapScale(stations.x(), stations.y(), land);
        Road road = new Road(stations, scale);
        road.draw(g2, style);
        MapLabels labels = new MapLabels(g2, style, scale, stations, area, road.halfWidth());
        labels.drawStart(stations.track().isClosed());
        labels.drawCorners();
        Rectangle2D foot = new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - 8);
        new MapFoot(style, scale).draw(g2, foot);
        new Note(
                        (stations.corners().isEmpty() ? "" : "corners dark, ")
                                + (road.isWidened() ? "road drawn wider than it is" : "road to scale"),
                        area.getMaxX(),
                        foot.getMaxY() - 2,
                        TextAnchor.BOTTOM_RIGHT,
                        style.small())
                .draw(g2, style.palette().muted());
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
