package dev.lapwright.charts.lap;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.map.MapLabels;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.map.MapScaleBar;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Stations;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;

/** The road of a lap in plan, and what is written beside it; how the road is drawn is for others to say. */
abstract class LapPlan extends Plot {
    private static final long serialVersionUID = 1L;

    /** Room beneath for scale and north arrow, px. */
    private static final double FOOT = 34;

    private final transient Lap lap;
    private final ChartStyle style;
    private final double room;
    private final double width;

    /**
     * @param room for labels, as {@link MapScale#labelled} has it
     * @param width of the road as drawn, at most, px
     */
    LapPlan(Lap lap, ChartStyle style, double room, double width) {
        this.lap = lap;
        this.style = style;
        this.room = room;
        this.width = width;
        setBackgroundPaint(null);
    }

    final Lap lap() {
        return lap;
    }

    final ChartStyle style() {
        return style;
    }

    abstract void drawRoad(Graphics2D g2, MapScale scale, double[] x, double[] y);

    @Override
    public final void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
        if (info != null) {
            info.setPlotArea(area);
            info.setDataArea(area);
        }
        Stations stations = lap.stations();
        MapScale scale = MapScale.labelled(stations.x(), stations.y(), area, room, FOOT);
        drawRoad(g2, scale, stations.x(), stations.y());
        MapLabels labels = new MapLabels(g2, style, scale, stations, area, width / 2);
        labels.drawStart(lap.track().isClosed());
        labels.drawCorners();
        new MapScaleBar(style, scale).draw(g2, area);
    }

    @Override
    public final boolean equals(Object other) {
        return this == other;
    }

    @Override
    public final int hashCode() {
        return System.identityHashCode(this);
    }
}
