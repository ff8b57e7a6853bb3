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
 * The lowest speed of each corner, written in km/h beneath the trace, or aside where the trace is in the way. Where there is
 * not room for all, the slowest corners come first.
 */
final class ApexSpeeds extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double DOT = 5;
    /** Speeds so near the lowest belong to it, m/s. */
    private static final double LEVEL = 0.03;

    private static final TextAnchor[] SIDES = {
        TextAnchor.TOP_CENTER,
        TextAnchor.TOP_LEFT,
        TextAnchor.TOP_RIGHT,
        TextAnchor.CENTER_LEFT,
        TextAnchor.CENTER_RIGHT,
        TextAnchor.BOTTOM_CENTER
    };

    /** Where a corner is slowest: m, m/s. */
    record Lowest(double at, double speed) {}

    private final transient List<Lowest> slowestFirst;
    private final double[][] trace;
    private final double[] sectorEnds;
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
        trace = SpeedAxis.series(lap);
        sectorEnds = lap.track().sectorEnds();
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
        return new Lowest((s[from] + s[to]) / 2, corner.minimumSpeed());
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
        Obstacles line = new Obstacles(area, distance, speed);
        line.addLine(trace);
        Obstacles both = new Obstacles(area, distance, speed);
        both.addLine(trace);
        for (double end : sectorEnds) {
            both.addUpright(end);
        }
        LabelSpace space = new LabelSpace();
        for (Lowest lowest : slowestFirst) {
            double x = distance.valueToJava2D(lowest.at, area, RectangleEdge.BOTTOM);
            double y = speed.valueToJava2D(Numbers.kmh(lowest.speed), area, RectangleEdge.LEFT);
            // Clear of the lines between sectors if there is a way, across one rather than not at all.
            Note note = note(g2, lowest, x, y, area, space, both);
            note = note == null ? note(g2, lowest, x, y, area, space, line) : note;
            if (note != null) {
                space.take(note.box(g2));
                g2.setPaint(style.colour(0));
                g2.fill(new Ellipse2D.Double(x - DOT / 2, y - DOT / 2, DOT, DOT));
                note.draw(g2, style.palette().ink());
            }
        }
    }

    /** The label where trace and other labels leave it room, or null. */
    private Note note(
            Graphics2D g2, Lowest lowest, double x, double y, Rectangle2D area, LabelSpace space, Obstacles line) {
        String text = Numbers.wholeKmh(lowest.speed);
        for (TextAnchor side : SIDES) {
            double dx = side.isLeft() ? DOT : side.isRight() ? -DOT : 0;
            double dy = side.equals(TextAnchor.TOP_CENTER) ? DOT : side.equals(TextAnchor.BOTTOM_CENTER) ? -DOT : 0;
            Note note = new Note(text, x + dx, y + dy, side, style.small()).within(g2, area.getMinX(), area.getMaxX());
            Rectangle2D box = note.box(g2);
            boolean free = space.isFree(box, 1) && area.contains(box);
            if (free && line.leaves(box, 1)) {
                return note;
            }
        }
        return null;
    }
}
