package dev.lapwright.charts.distance;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.LabelSpace;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.track.Corner;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/**
 * The strip above a trace that names corners and sectors. Corners carry their number, and their name where it finds room;
 * labels take as many rows as they need, hang on a line that leads to their corner and never lie upon each other.
 */
public final class CornerStrip extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double ROW_GAP = 1;
    private static final double LABEL_GAP = 4;
    private static final double LEADER_GAP = 3;
    /** How far the edge may push a label off the middle of its corner, px. */
    private static final double MOST_SHIFT = 8;
    /** How many neighbours either side may be shortened to make room. */
    private static final int REACH = 3;

    private final transient List<Corner> corners;
    private final transient List<Sector> sectors;
    private final ChartStyle style;

    /** A stretch to name: distances in m, and what to write, the long form first. */
    public record Sector(double from, double to, List<String> texts) {}

    public CornerStrip(List<Corner> corners, List<Sector> sectors, ChartStyle style) {
        this.corners = List.copyOf(corners);
        this.sectors = List.copyOf(sectors);
        this.style = style;
    }

    public List<Corner> corners() {
        return corners;
    }

    public List<Sector> sectors() {
        return sectors;
    }

    public record Placed(PlacedText note, boolean leads, double at) {}

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis distance,
            ValueAxis none,
            int rendererIndex,
            PlotRenderingInfo info) {
        double rowHeight = note("T0", 0, 0, TextAnchor.TOP_LEFT).box(g2).getHeight() + ROW_GAP;
        boolean sectorsFit = !sectors.isEmpty() && area.getHeight() >= 2 * rowHeight;
        if (sectorsFit) {
            drawSectors(g2, area, distance, rowHeight);
        }
        int rows = Math.max(1, (int) ((area.getHeight() - (sectorsFit ? rowHeight : 0)) / rowHeight));
        List<Placed> placed = place(g2, area, distance, rows, rowHeight);
        draw(g2, area, placed);
    }

    private void draw(Graphics2D g2, Rectangle2D area, List<Placed> placed) {
        g2.setStroke(ChartStyle.solid(1));
        g2.setPaint(style.palette().muted());
        for (Placed p : placed) {
            if (p.leads) {
                double top = p.note.box(g2).getMinY() + 2;
                g2.draw(new Line2D.Double(p.at, top, p.at, area.getMaxY()));
            }
        }
        for (Placed p : placed) {
            p.note.draw(g2, style.palette().ink());
        }
    }

    private PlacedText note(String text, double x, double y, TextAnchor anchor) {
        return new PlacedText(text, x, y, anchor, style.small());
    }

    private void drawSectors(Graphics2D g2, Rectangle2D area, ValueAxis distance, double rowHeight) {
        for (Sector sector : sectors) {
            double from = Math.max(area.getMinX(), distance.valueToJava2D(sector.from, area, RectangleEdge.BOTTOM));
            double to = Math.min(area.getMaxX(), distance.valueToJava2D(sector.to, area, RectangleEdge.BOTTOM));
            if (from >= to) {
                continue;
            }
            if (from > area.getMinX() + 1) {
                g2.setPaint(style.palette().muted());
                g2.setStroke(ChartStyle.solid(1));
                g2.draw(new Line2D.Double(from, area.getMinY(), from, area.getMinY() + rowHeight));
            }
            for (String text : sector.texts) {
                PlacedText note = note(text, (from + to) / 2, area.getMinY(), TextAnchor.TOP_CENTER);
                if (note.box(g2).getWidth() <= to - from - 2 * LABEL_GAP) {
                    note.draw(g2, style.palette().muted());
                    break;
                }
            }
        }
    }

    /**
     * Places every label, shortening first the one that finds no room and then its nearest neighbours; a label that even then
     * finds none is left out.
     */
    public List<Placed> place(Graphics2D g2, Rectangle2D area, ValueAxis distance, int rows, double rowHeight) {
        int[] shortened = new int[corners.size()];
        while (true) {
            LabelSpace space = new LabelSpace();
            List<Placed> placed = new ArrayList<>();
            boolean again = false;
            // From the right: a label reaches to the right of its leader, so those it must clear are known.
            for (int i = corners.size() - 1; i >= 0 && !again; i--) {
                if (!distance.getRange().contains(corners.get(i).apex())) {
                    continue;
                }
                double at = distance.valueToJava2D(corners.get(i).apex(), area, RectangleEdge.BOTTOM);
                Placed found = place(g2, area, space, text(i, shortened[i]), at, rows, rowHeight);
                if (found != null) {
                    placed.add(found);
                } else {
                    again = shorten(shortened, i);
                }
            }
            if (!again) {
                return placed;
            }
        }
    }

    private String text(int corner, int shortened) {
        Corner c = corners.get(corner);
        return shortened == 0 ? c.label() : (shortened == 1 ? "T" : "") + c.number();
    }

    private static boolean shorten(int[] shortened, int at) {
        for (int level = 0; level < 2; level++) {
            for (int away = 0; away < shortened.length; away++) {
                for (int i : new int[] {at + away, at - away}) {
                    if (i >= 0 && i < shortened.length && shortened[i] == level && away < REACH) {
                        shortened[i]++;
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private Placed place(
            Graphics2D g2, Rectangle2D area, LabelSpace space, String text, double at, int rows, double rowHeight) {
        PlacedText centred = note(text, at, area.getMaxY(), TextAnchor.BOTTOM_CENTER);
        PlacedText held = centred.within(g2, area.getMinX(), area.getMaxX());
        boolean fits = space.isFree(inner(held.box(g2)), LABEL_GAP);
        if (fits && Math.abs(held.x() - centred.x()) <= MOST_SHIFT) {
            space.take(inner(held.box(g2)));
            return new Placed(held, false, at);
        }
        for (int row = 1; row < rows; row++) {
            for (int side : new int[] {1, -1}) {
                TextAnchor anchor = side > 0 ? TextAnchor.BOTTOM_LEFT : TextAnchor.BOTTOM_RIGHT;
                PlacedText note = note(text, at + side * LEADER_GAP, area.getMaxY() - row * rowHeight, anchor);
                Rectangle2D box = inner(note.box(g2));
                Rectangle2D leader = new Rectangle2D.Double(at - 0.5, box.getY(), 1, area.getMaxY() - box.getY());
                boolean inside = box.getMinX() >= area.getMinX() && box.getMaxX() <= area.getMaxX();
                if (inside && space.isFree(box, LABEL_GAP) && space.isFree(leader, LEADER_GAP)) {
                    space.take(box);
                    space.take(leader);
                    return new Placed(note, true, at);
                }
            }
        }
        if (fits) {
            space.take(inner(held.box(g2)));
            return new Placed(held, false, at);
        }
        return null;
    }

    /** A label's box without the room above and below the letters, so that rows do not touch. */
    private static Rectangle2D inner(Rectangle2D box) {
        return new Rectangle2D.Double(box.getX(), box.getY() + 4, box.getWidth(), box.getHeight() - 8);
    }
}
