package dev.lapwright.charts;

import dev.lapwright.track.Corner;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/**
 * The smallest radius of each corner, m, beyond the peak of its curvature (1/km). Where there is not room for all, the
 * tightest corners come first. Says, too, which side of zero turns left.
 */
final class CornerRadii extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double GAP = 3;
    private static final double BETWEEN = 3;
    private static final double SIDE = 4;

    private final transient List<Corner> tightestFirst;
    private final ChartStyle style;

    CornerRadii(List<Corner> corners, ChartStyle style) {
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
            double peak = (corner.left() ? 1000 : -1000) / corner.minimumRadius();
            double x = distance.valueToJava2D(corner.apex(), area, RectangleEdge.BOTTOM);
            double y = curvature.valueToJava2D(peak, area, RectangleEdge.LEFT);
            Note note = new Note(
                            Numbers.fixed(0).format(corner.minimumRadius()) + " m",
                            x,
                            corner.left() ? y - GAP : y + GAP,
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
        Note note = new Note(text, area.getMinX() + SIDE, y, anchor, style.small());
        space.take(note.box(g2));
        note.draw(g2, style.palette().muted());
    }
}
