package dev.lapwright.charts;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/**
 * The lowest speed of each corner, written in km/h beneath the trace, or beside it where the car speeds up or slows down all
 * through the corner; where two do not fit, the slower is kept.
 */
final class ApexSpeeds extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double DOT = 5;
    /** Speeds so near the lowest belong to it, m/s. */
    private static final double LEVEL = 0.03;

    /** Where a corner is slowest: m, m/s, and whether speed rises (1), falls (-1) or turns there (0). */
    record Lowest(double at, double speed, int trend) {}

    private final transient List<Lowest> slowestFirst;
    private final ChartStyle style;

    ApexSpeeds(Lap lap, ChartStyle style) {
        double[] s = lap.column(Channel.DISTANCE);
        double[] v = lap.column(Channel.SPEED);
        List<Lowest> all = new ArrayList<>();
        for (CornerFigures corner : lap.corners()) {
            all.add(lowest(corner, s, v));
        }
        all.sort(Comparator.comparingDouble(Lowest::speed));
        slowestFirst = List.copyOf(all);
        this.style = style;
    }

    List<Lowest> slowestFirst() {
        return slowestFirst;
    }

    /** The middle of the stretch driven at the lowest speed, which in a steady corner is long. */
    private static Lowest lowest(CornerFigures corner, double[] s, double[] v) {
        int first = 0;
        while (first + 1 < s.length && s[first] < corner.minimumSpeedAt()) {
            first++;
        }
        double most = corner.minimumSpeed() + LEVEL;
        int from = first;
        while (from > 0 && v[from - 1] <= most && v[from - 1] >= corner.minimumSpeed()) {
            from--;
        }
        int to = first;
        while (to + 1 < s.length && v[to + 1] <= most && v[to + 1] >= corner.minimumSpeed()) {
            to++;
        }
        boolean comesDown = from > 0 && v[from - 1] > most;
        boolean goesUp = to + 1 < s.length && v[to + 1] > most;
        int trend = comesDown == goesUp ? 0 : goesUp ? 1 : -1;
        return new Lowest((s[from] + s[to]) / 2, corner.minimumSpeed(), trend);
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis distance,
            ValueAxis speed,
            int rendererIndex,
            PlotRenderingInfo info) {
        LabelSpace space = new LabelSpace();
        for (Lowest lowest : slowestFirst) {
            double x = distance.valueToJava2D(lowest.at, area, RectangleEdge.BOTTOM);
            double y = speed.valueToJava2D(Numbers.kmh(lowest.speed), area, RectangleEdge.LEFT);
            TextAnchor anchor = lowest.trend == 0
                    ? TextAnchor.TOP_CENTER
                    : lowest.trend > 0 ? TextAnchor.TOP_LEFT : TextAnchor.TOP_RIGHT;
            Note note = new Note(
                            Numbers.wholeKmh(lowest.speed),
                            x + lowest.trend * DOT,
                            y + (lowest.trend == 0 ? DOT : 0),
                            anchor,
                            style.small())
                    .within(g2, area.getMinX(), area.getMaxX());
            if (space.isFree(note.box(g2), 1)) {
                space.take(note.box(g2));
                g2.setPaint(style.colour(0));
                g2.fill(new Ellipse2D.Double(x - DOT / 2, y - DOT / 2, DOT, DOT));
                note.draw(g2, style.palette().ink());
            }
        }
    }
}
