package dev.lapwright.charts.track;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.map.MapLabels;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.map.MapScaleBar;
import dev.lapwright.charts.map.RoadOutline;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PagedPanels;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.charts.plot.SeriesRenderers;
import dev.lapwright.track.Stations;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.PlotState;
import org.jfree.chart.ui.TextAnchor;

/** The road in plan with lines driven on it, some corners enlarged beside it, and panels over distance beneath. */
final class LineMapPlot extends Plot {
    private static final long serialVersionUID = 1L;
    /** Share of the height that plan and enlarged corners take. */
    private static final double PLAN = 0.67;
    /** Share of what the enlarged corners leave that the plan takes on a narrow picture. */
    private static final double PLAN_OF_NARROW = 0.58;
    /** Most of the width that one column of enlarged corners takes. */
    private static final double COLUMN = 0.26;

    /** What the panels beneath show. */
    private static final String OFFSETS = "offsets";

    private static final double GAP = 14;
    private static final double HEAD = 20;
    /** How far inside its edge the driving direction is shown, px. */
    private static final double INSIDE = 22;

    private final transient Stations road;
    private final transient List<DrivenLine> lines;
    private final transient CornerCloseUps views;
    private final double[] eastings;
    private final double[] northings;
    private final PagedPanels panels;
    private final ChartStyle style;

    LineMapPlot(Stations road, List<DrivenLine> lines, CornerCloseUps views, PagedPanels panels, ChartStyle style) {
        this.road = road;
        this.lines = List.copyOf(lines);
        this.views = views;
        eastings = road.x();
        northings = road.y();
        this.panels = panels;
        this.style = style;
        setBackgroundPaint(null);
    }

    @Override
    public String getPlotType() {
        return "line map";
    }

    Plot panels() {
        return panels;
    }

    CornerCloseUps views() {
        return views;
    }

    @Override
    public void draw(Graphics2D g2, Rectangle2D area, Point2D anchor, PlotState parent, PlotRenderingInfo info) {
        if (info != null) {
            info.setPlotArea(area);
            info.setDataArea(area);
        }
        if (area.getWidth() < CircuitMap.NARROW) {
            drawNarrow(g2, area, anchor);
            return;
        }
        double height = area.getHeight() - panels.heightBeneath(area.getWidth(), (1 - PLAN) * area.getHeight());
        int count = views.all().size();
        int columns = (count + 1) / 2;
        int rows = Math.min(count, 2);
        double square = rows == 0 ? 0 : Math.min((height - rows * HEAD - rows * GAP) / rows, COLUMN * area.getWidth());
        double viewsWidth = columns * (square + GAP);
        drawPlan(g2, new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth() - viewsWidth, height));
        for (int i = 0; i < count; i++) {
            double left = area.getMaxX() - viewsWidth + (i % columns) * (square + GAP) + GAP;
            double top = area.getY() + (i / columns) * (square + HEAD + GAP);
            drawView(g2, views.all().get(i), new Rectangle2D.Double(left, top + HEAD, square, square), false);
        }
        Rectangle2D beneath =
                new Rectangle2D.Double(area.getX(), area.getY() + height, area.getWidth(), area.getHeight() - height);
        panels.drawBeneath(g2, beneath, anchor, OFFSETS, style);
    }

    /** Plan, enlarged corners in two columns, and panels beneath each other. */
    private void drawNarrow(Graphics2D g2, Rectangle2D area, Point2D anchor) {
        int count = views.all().size();
        int rows = (count + 1) / 2;
        double square = (area.getWidth() - GAP) / 2;
        double viewsHeight = rows * (square + 2 * HEAD + GAP);
        double rest = Math.max(0, area.getHeight() - viewsHeight);
        double planHeight = rest - panels.heightBeneath(area.getWidth(), (1 - PLAN_OF_NARROW) * rest);
        drawPlan(g2, new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), planHeight));
        for (int i = 0; i < count; i++) {
            double left = area.getX() + (i % 2) * (square + GAP);
            double top = area.getY() + planHeight + (i / 2) * (square + 2 * HEAD + GAP);
            drawView(g2, views.all().get(i), new Rectangle2D.Double(left, top + 2 * HEAD, square, square), true);
        }
        double top = planHeight + viewsHeight;
        panels.drawBeneath(
                g2,
                new Rectangle2D.Double(area.getX(), area.getY() + top, area.getWidth(), area.getHeight() - top),
                anchor,
                OFFSETS,
                style);
    }

    private void drawPlan(Graphics2D g2, Rectangle2D area) {
        MapScale scale = MapScale.labelled(eastings, northings, area, 1, MapLabels.foot(area.getWidth()));
        RoadOutline drawn = new RoadOutline(road, scale);
        drawn.drawPlain(g2, area, style);
        drawLines(g2, scale, area);
        MapLabels labels = new MapLabels(g2, style, scale, road, area, drawn.halfWidth());
        for (CornerCloseUps.View view : views.all()) {
            double half = views.side() / 2 * scale.pixelsPerMetre();
            Rectangle2D frame =
                    new Rectangle2D.Double(scale.px(view.x()) - half, scale.py(view.y()) - half, 2 * half, 2 * half);
            g2.setPaint(style.palette().muted());
            g2.setStroke(ChartStyle.solid(1));
            g2.draw(frame);
            labels.avoid(frame);
        }
        labels.keepFootClear();
        labels.drawStart(road.track().isClosed());
        labels.drawCorners();
        Rectangle2D foot = new Rectangle2D.Double(area.getX(), area.getY(), area.getWidth(), area.getHeight() - 8);
        new MapScaleBar(style, scale).draw(g2, foot);
        MapScaleBar.drawRemark(g2, drawn.isWidened() ? "road drawn wider than it is" : "road to scale", foot, style);
    }

    private void drawLines(Graphics2D g2, MapScale scale, Rectangle2D window) {
        g2.setPaint(style.palette().muted());
        g2.setStroke(SeriesRenderers.centreLine());
        drawPath(g2, scale, window, eastings, northings);
        for (int i = 0; i < lines.size(); i++) {
            g2.setPaint(style.colour(i));
            g2.setStroke(ChartStyle.line(i));
            drawPath(g2, scale, window, lines.get(i).x(), lines.get(i).y());
        }
    }

    private static void drawPath(Graphics2D g2, MapScale scale, Rectangle2D window, double[] x, double[] y) {
        for (int[] run : scale.within(window, x, y)) {
            g2.draw(scale.path(x, y, run[0], run[1]));
        }
    }

    private void drawView(Graphics2D g2, CornerCloseUps.View view, Rectangle2D square, boolean twoLines) {
        double half = views.side() / 2;
        MapScale scale = new MapScale(
                new double[] {view.x() - half, view.x() + half},
                new double[] {view.y() - half, view.y() + half},
                square);
        Shape clip = g2.getClip();
        g2.clip(square);
        new RoadOutline(road, scale).drawPlain(g2, square, style);
        drawDirection(g2, view, scale, square);
        drawLines(g2, scale, square);
        g2.setClip(clip);
        g2.setPaint(style.palette().muted());
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(square);
        String apart = NumberText.fixed(1).format(view.spread()) + " m";
        PlacedText title = new PlacedText(
                view.corner().label(),
                square.getMinX(),
                square.getMinY() - (twoLines ? HEAD : 4),
                TextAnchor.BOTTOM_LEFT,
                style.strong());
        PlacedText spread = new PlacedText(
                lines.size() > 1 ? apart + " apart" : apart + " off the centre line",
                twoLines ? square.getMinX() : square.getMaxX(),
                square.getMinY() - 4,
                twoLines ? TextAnchor.BOTTOM_LEFT : TextAnchor.BOTTOM_RIGHT,
                style.small());
        double beside = twoLines ? 0 : spread.box(g2).getWidth() + HEAD / 2;
        title.cut(g2, square.getWidth() - beside).draw(g2, style.palette().ink());
        spread.draw(g2, style.palette().muted());
        drawBar(g2, scale, square);
    }

    /** The scale bar in the corner of the square where the road leaves it most room. */
    private void drawBar(Graphics2D g2, MapScale scale, Rectangle2D square) {
        double width = square.getWidth() / 3;
        double most = -1;
        double bestX = 0;
        double bestY = 0;
        for (double y : new double[] {square.getMaxY() - 8, square.getMinY() + 24}) {
            for (double x : new double[] {square.getMinX() + 10, square.getMaxX() - 10 - width}) {
                double room = Double.POSITIVE_INFINITY;
                for (int i = 0; i < road.count(); i++) {
                    double dx = Math.max(0, Math.max(x - scale.px(eastings[i]), scale.px(eastings[i]) - x - width));
                    double dy = Math.max(0, Math.max(y - 20 - scale.py(northings[i]), scale.py(northings[i]) - y));
                    room = Math.min(room, Math.hypot(dx, dy));
                }
                if (room > most + 1) {
                    most = room;
                    bestX = x;
                    bestY = y;
                }
            }
        }
        new MapScaleBar(style, scale).drawBar(g2, bestX, bestY, width);
    }

    /** An arrowhead on the centre line where it has come into the square. */
    private void drawDirection(Graphics2D g2, CornerCloseUps.View view, MapScale scale, Rectangle2D square) {
        Rectangle2D inner = new Rectangle2D.Double(
                square.getX() + INSIDE,
                square.getY() + INSIDE,
                square.getWidth() - 2 * INSIDE,
                square.getHeight() - 2 * INSIDE);
        int last = road.count() - 1;
        int i = view.widest();
        for (int back = 0; back < last && inner.contains(scale.px(eastings[i]), scale.py(northings[i])); back++) {
            if (i == 0 && !road.track().isClosed()) {
                break;
            }
            // On a closed road the last station is the first again.
            i = i == 0 ? last - 1 : i - 1;
        }
        double heading = road.heading()[i];
        double ux = Math.cos(heading);
        double uy = -Math.sin(heading);
        double px = scale.px(eastings[i]);
        double py = scale.py(northings[i]);
        Path2D head = new Path2D.Double();
        head.moveTo(px + 7 * ux, py + 7 * uy);
        head.lineTo(px - 5 * ux - 5 * uy, py - 5 * uy + 5 * ux);
        head.lineTo(px - 5 * ux + 5 * uy, py - 5 * uy - 5 * ux);
        head.closePath();
        g2.setPaint(style.palette().muted());
        g2.fill(head);
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
