package dev.lapwright.charts.map;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.LabelSpace;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.track.Corner;
import dev.lapwright.track.DoubtfulPlace;
import dev.lapwright.track.Stations;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.ui.TextAnchor;

/**
 * Labels of a map: start, driving direction, corners. A corner's label stands outside its bend, and further off, aslant or
 * inside where the road or another label is in the way. Made for one drawing.
 */
public final class MapLabels {
    /** A plan of less than this has little room at its foot, px. */
    private static final double NARROW = 500;

    /** Room between the road's edge and a label, px. */
    private static final double GAP = 4;

    private static final double[] DISTANCES = {0, 6, 14, 24, 36, 52, 72};
    private static final double[] ANGLES = {0, 30, -30, 60, -60, 180, 150, -150};
    /** More corners than this are named only as near as the first so many distances. */
    private static final int CROWDED = 60;

    private static final int CLOSE = 3;
    /** How far the start line reaches beyond the road's edge, and how far off it the arrow stands, px. */
    private static final double BAR_BEYOND = 6;

    private static final double ARROW_OFF = 12;
    private static final double ARROW_LENGTH = 34;
    /** A label nearer than this to the road needs no line to it, px. */
    private static final double LEADER_FROM = 14;

    private final Graphics2D g2;
    private final ChartStyle style;
    private final MapScale scale;
    private final Stations stations;
    private final Rectangle2D area;
    private final double halfRoad;
    private final double clear;
    private final double[] s;
    private final double[] x;
    private final double[] y;
    private final double[] heading;
    private final LabelSpace space = new LabelSpace();
    private final List<Point2D> road = new ArrayList<>();
    private final List<PlacedText> placed = new ArrayList<>();
    private final List<Line2D> leaders = new ArrayList<>();

    /** @param halfRoad half the width at which the road is drawn, px */
    public MapLabels(
            Graphics2D g2, ChartStyle style, MapScale scale, Stations stations, Rectangle2D area, double halfRoad) {
        this.g2 = g2;
        this.style = style;
        this.scale = scale;
        this.stations = stations;
        this.area = area;
        this.halfRoad = halfRoad;
        clear = halfRoad + GAP;
        s = stations.s();
        x = stations.x();
        y = stations.y();
        heading = stations.heading();
        sampleRoad();
    }

    /** Points no more than 4 px apart: what a label must not cover. */
    private void sampleRoad() {
        for (int i = 0; i + 1 < x.length; i++) {
            double px = scale.px(x[i]);
            double py = scale.py(y[i]);
            double dx = scale.px(x[i + 1]) - px;
            double dy = scale.py(y[i + 1]) - py;
            int steps = 1 + (int) (Math.hypot(dx, dy) / 4);
            for (int k = 0; k < steps; k++) {
                road.add(new Point2D.Double(px + dx * k / steps, py + dy * k / steps));
            }
        }
    }

    /** Labels drawn so far. */
    public List<PlacedText> placed() {
        return List.copyOf(placed);
    }

    /** Thin lines drawn so far from the road to labels that stand well off it. */
    public List<Line2D> leaders() {
        return List.copyOf(leaders);
    }

    /** Keeps labels off the lines of a frame; for frames drawn before the labels. */
    public void avoid(Rectangle2D frame) {
        double left = frame.getMinX();
        double right = frame.getMaxX();
        space.takeLine(new Line2D.Double(left, frame.getMinY(), right, frame.getMinY()));
        space.takeLine(new Line2D.Double(left, frame.getMaxY(), right, frame.getMaxY()));
        space.takeLine(new Line2D.Double(left, frame.getMinY(), left, frame.getMaxY()));
        space.takeLine(new Line2D.Double(right, frame.getMinY(), right, frame.getMaxY()));
    }

    /** Draws the start line, an arrow the way the cars go, and for an open run the finish. */
    public void drawStart(boolean closed) {
        int last = x.length - 1;
        drawLine(0);
        drawArrow();
        drawLabel(closed ? List.of("Start and finish", "Start") : List.of("Start"), 0, heading[0] + Math.PI / 2);
        if (!closed) {
            drawLine(last);
            drawLabel(List.of("Finish"), last, heading[last] + Math.PI / 2);
        }
    }

    private void drawLine(int station) {
        double across = heading[station] + Math.PI / 2;
        double dx = (halfRoad + BAR_BEYOND) * Math.cos(across);
        double dy = -(halfRoad + BAR_BEYOND) * Math.sin(across);
        double px = scale.px(x[station]);
        double py = scale.py(y[station]);
        g2.setPaint(style.palette().background());
        g2.setStroke(ChartStyle.solid(6));
        g2.draw(new Line2D.Double(px - dx, py - dy, px + dx, py + dy));
        g2.setPaint(style.palette().ink());
        g2.setStroke(ChartStyle.solid(3));
        g2.draw(new Line2D.Double(px - dx, py - dy, px + dx, py + dy));
    }

    /** An arrow on the right of the road, just after the start. */
    private void drawArrow() {
        double along = heading[0];
        double ux = Math.cos(along);
        double uy = -Math.sin(along);
        double arrowOff = halfRoad + ARROW_OFF;
        double fromX = scale.px(x[0]) - uy * arrowOff + ux * 6;
        double fromY = scale.py(y[0]) + ux * arrowOff + uy * 6;
        double toX = fromX + ux * ARROW_LENGTH;
        double toY = fromY + uy * ARROW_LENGTH;
        g2.setPaint(style.palette().ink());
        g2.setStroke(ChartStyle.solid(2));
        g2.draw(new Line2D.Double(fromX, fromY, toX - 6 * ux, toY - 6 * uy));
        Path2D head = new Path2D.Double();
        head.moveTo(toX, toY);
        head.lineTo(toX - 10 * ux - 5 * uy, toY - 10 * uy + 5 * ux);
        head.lineTo(toX - 10 * ux + 5 * uy, toY - 10 * uy - 5 * ux);
        head.closePath();
        g2.fill(head);
        Rectangle2D box = new Rectangle2D.Double(fromX, fromY, 0, 0);
        box.add(toX, toY);
        space.take(new Rectangle2D.Double(box.getX() - 6, box.getY() - 6, box.getWidth() + 12, box.getHeight() + 12));
    }

    /** Height of what stands beneath a plan so wide: arrow, bar and remarks; on a narrow one above each other, px. */
    public static double foot(double width) {
        return width < NARROW ? 66 : 34;
    }

    /** Keeps labels out of the foot. */
    public void keepFootClear() {
        double height = foot(area.getWidth());
        space.take(new Rectangle2D.Double(area.getX(), area.getMaxY() - height, area.getWidth(), height));
    }

    /** Names the corners; of very many those that find room close by, and says at the foot how many. */
    public void drawCorners() {
        List<Corner> corners = stations.corners();
        boolean crowded = corners.size() > CROWDED;
        int named = 0;
        for (Corner corner : corners) {
            int station = nearest(corner.apex());
            double outside = heading[station] + (corner.left() ? -1 : 1) * Math.PI / 2;
            List<String> texts = List.of(corner.label(), "T" + corner.number());
            named += drawLabel(texts, station, outside, crowded ? CLOSE : DISTANCES.length) ? 1 : 0;
        }
        if (named < corners.size()) {
            String text = named + " of " + corners.size() + " corners named";
            remark(text).draw(g2, style.palette().muted());
        }
    }

    /** Above the foot, or above a remark that a narrow one has lifted; where a label stands there, the next free place above it. */
    private PlacedText remark(String text) {
        double line = style.textSize();
        double bottom = area.getMaxY() - (area.getWidth() < NARROW ? 4.3 : 2.5) * line;
        for (double y = bottom; y > area.getMinY() + line; y -= 0.5 * line) {
            for (PlacedText placed : List.of(
                    new PlacedText(text, area.getMaxX(), y, TextAnchor.BOTTOM_RIGHT, style.small()),
                    new PlacedText(text, area.getMinX(), y, TextAnchor.BOTTOM_LEFT, style.small()))) {
                Rectangle2D box = placed.box(g2);
                if (space.isFree(box, 1) && isOffRoad(box)) {
                    return placed;
                }
            }
        }
        return new PlacedText(text, area.getMaxX(), bottom, TextAnchor.BOTTOM_RIGHT, style.small());
    }

    /** Rings the places where a corner is in doubt, each with its question beside it. */
    public void drawDoubts(List<DoubtfulPlace> doubts) {
        for (DoubtfulPlace doubt : doubts) {
            int station = nearest(doubt.s());
            double reach = halfRoad + GAP;
            Ellipse2D ring = new Ellipse2D.Double(
                    scale.px(x[station]) - reach, scale.py(y[station]) - reach, 2 * reach, 2 * reach);
            g2.setPaint(style.palette().ink());
            g2.setStroke(ChartStyle.solid(2));
            g2.draw(ring);
            double inside = heading[station] + (doubt.corner().left() ? 1 : -1) * Math.PI / 2;
            drawLabel(List.of(doubt.kind().question(), "?"), station, inside);
        }
    }

    private int nearest(double distance) {
        int best = 0;
        for (int i = 1; i < s.length; i++) {
            if (Math.abs(s[i] - distance) < Math.abs(s[best] - distance)) {
                best = i;
            }
        }
        return best;
    }

    /** Draws the first text that finds a free place near a station, looking first in the direction given (rad). */
    private void drawLabel(List<String> texts, int station, double direction) {
        drawLabel(texts, station, direction, DISTANCES.length);
    }

    private boolean drawLabel(List<String> texts, int station, double direction, int distances) {
        for (String text : texts) {
            for (double away : Arrays.copyOf(DISTANCES, distances)) {
                for (double turn : ANGLES) {
                    PlacedText note = beside(text, station, direction + Math.toRadians(turn), clear + away);
                    Rectangle2D box = note.box(g2);
                    if (!area.contains(box) || !space.isFree(box, 3) || !isOffRoad(box)) {
                        continue;
                    }
                    Optional<Line2D> leader = leader(station, box, away);
                    if (leader.filter(this::isCrossed).isEmpty()) {
                        space.take(box);
                        placed.add(note);
                        leader.ifPresent(this::drawLeader);
                        note.draw(g2, style.palette().ink());
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** A thin line from the road to a label that stands well off it. */
    private Optional<Line2D> leader(int station, Rectangle2D box, double away) {
        if (away <= DISTANCES[1]) {
            return Optional.empty();
        }
        double px = scale.px(x[station]);
        double py = scale.py(y[station]);
        double endX = Math.max(box.getMinX(), Math.min(px, box.getMaxX()));
        double endY = Math.max(box.getMinY(), Math.min(py, box.getMaxY()));
        double length = Math.hypot(endX - px, endY - py);
        return length > clear + LEADER_FROM
                ? Optional.of(new Line2D.Double(
                        px + (endX - px) * clear / length, py + (endY - py) * clear / length, endX, endY))
                : Optional.empty();
    }

    private boolean isCrossed(Line2D leader) {
        return space.isCrossedBy(leader) || leaders.stream().anyMatch(leader::intersectsLine);
    }

    private void drawLeader(Line2D leader) {
        g2.setPaint(style.palette().muted());
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(leader);
        space.takeLine(leader);
        leaders.add(leader);
    }

    /** A text whose box touches, from outside, the circle of radius {@code off} round the station. */
    private PlacedText beside(String text, int station, double direction, double off) {
        double ux = Math.cos(direction);
        double uy = -Math.sin(direction);
        Rectangle2D box = new PlacedText(text, 0, 0, TextAnchor.CENTER, style.text()).box(g2);
        double px = scale.px(x[station]) + ux * (off + box.getWidth() / 2 * Math.abs(ux));
        double py = scale.py(y[station]) + uy * (off + box.getHeight() / 2 * Math.abs(uy));
        return new PlacedText(text, px, py, TextAnchor.CENTER, style.text());
    }

    private boolean isOffRoad(Rectangle2D box) {
        for (Point2D point : road) {
            double dx = Math.max(0, Math.max(box.getMinX() - point.getX(), point.getX() - box.getMaxX()));
            double dy = Math.max(0, Math.max(box.getMinY() - point.getY(), point.getY() - box.getMaxY()));
            if (Math.hypot(dx, dy) < clear - 2) {
                return false;
            }
        }
        return true;
    }
}
