package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYDataset;

/**
 * Labels beside points, clear of the points, of the lines that join them and of each other. A label that must be there is
 * drawn farther off with a line to its point, or in several lines, or upon lines of the chart; another is left out where it
 * finds no room.
 */
public final class PointLabels extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    /** How far beyond the mark a label may stand, px; one that may be left out only as far as the first two. */
    private static final double[] DISTANCES = {2, 7, 16, 30, 48, 72, 102, 142, 192};

    private static final double[] ANGLES = {45, -45, 135, -135, 0, 180, 90, -90, 20, -20, 160, -160, 70, -70, 110, -110
    };
    private static final double CLEAR = 4;
    private static final double LEADER_FROM = 12;
    /** Longer labels are broken where they find no room in one line; a share of the width. */
    private static final double BREAK = 0.5;

    private final transient List<Label> labels;
    private final transient XYDataset data;
    private final boolean lines;
    private final double[] levels;
    private final ChartStyle style;

    /**
     * What to write beside a point.
     *
     * @param x in data units
     * @param y in data units
     * @param text what to write
     * @param must whether it is drawn at any price but that of another label
     * @param clear radius of the mark at the point, px
     */
    public record Label(double x, double y, String text, boolean must, double clear) {}

    /**
     * @param labels the more important first
     * @param data the points, which labels must keep clear of
     * @param lines whether lines join the points in order, to keep clear of too
     * @param levels horizontal lines that labels must keep clear of, in units of the range axis
     */
    public PointLabels(List<Label> labels, XYDataset data, boolean lines, double[] levels, ChartStyle style) {
        this.labels = List.copyOf(labels);
        this.data = data;
        this.lines = lines;
        this.levels = levels.clone();
        this.style = style;
    }

    public List<Label> labels() {
        return labels;
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis domain,
            ValueAxis range,
            int rendererIndex,
            PlotRenderingInfo info) {
        Obstacles obstacles = new Obstacles(area, domain, range);
        for (int series = 0; series < data.getSeriesCount(); series++) {
            if (lines) {
                obstacles.addLine(values(series));
            } else {
                obstacles.addPoints(values(series));
            }
        }
        for (double level : levels) {
            obstacles.addLevel(level);
        }
        LabelSpace space = new LabelSpace();
        for (Object other : plot.getAnnotations()) {
            if (other instanceof OwnLabels own) {
                own.labels(g2, area, domain, range).forEach(note -> space.take(note.box(g2)));
            }
        }
        for (Label label : labels) {
            double x = domain.valueToJava2D(label.x, area, RectangleEdge.BOTTOM);
            double y = range.valueToJava2D(label.y, area, RectangleEdge.LEFT);
            place(g2, label, x, y, area, new Taken(space, marksOfOthers(label, area, domain, range)), obstacles);
        }
    }

    /** Where labels stand, and marks of points that must be seen: upon neither is anything put. */
    private record Taken(LabelSpace labels, List<Rectangle2D> marks) {
        boolean isFree(Rectangle2D box) {
            return labels.isFree(box, 2) && marks.stream().noneMatch(box::intersects);
        }
    }

    private List<Rectangle2D> marksOfOthers(Label label, Rectangle2D area, ValueAxis domain, ValueAxis range) {
        List<Rectangle2D> marks = new ArrayList<>();
        for (Label other : labels) {
            boolean same = other.x == label.x && other.y == label.y;
            if (other.must && !same) {
                double x = domain.valueToJava2D(other.x, area, RectangleEdge.BOTTOM);
                double y = range.valueToJava2D(other.y, area, RectangleEdge.LEFT);
                marks.add(new Rectangle2D.Double(x - other.clear, y - other.clear, 2 * other.clear, 2 * other.clear));
            }
        }
        return marks;
    }

    private double[][] values(int series) {
        double[][] values = new double[2][data.getItemCount(series)];
        for (int i = 0; i < values[0].length; i++) {
            values[0][i] = data.getXValue(series, i);
            values[1][i] = data.getYValue(series, i);
        }
        return values;
    }

    private void place(
            Graphics2D g2, Label label, double x, double y, Rectangle2D area, Taken taken, Obstacles obstacles) {
        List<String> forms = List.of(label.text, withoutRemark(label.text), broken(g2, label, area));
        // Upon lines rather than not at all; upon another label never.
        for (Obstacles heeded : label.must ? Arrays.asList(obstacles, null) : List.of(obstacles)) {
            for (String text : forms) {
                Label shown = new Label(label.x, label.y, text, label.must, label.clear);
                if (isPlaced(g2, shown, x, y, area, taken, heeded)) {
                    return;
                }
            }
        }
    }

    /** The text in lines of half the area's width, where it is longer than that. */
    private String broken(Graphics2D g2, Label label, Rectangle2D area) {
        StringBuilder lines = new StringBuilder();
        String line = "";
        for (String word : withoutRemark(label.text).split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            boolean fits = text(label, longer, 0, 0).box(g2).getWidth() <= BREAK * area.getWidth();
            if (!fits && !line.isEmpty()) {
                lines.append(line).append('\n');
                line = word;
            } else {
                line = longer;
            }
        }
        return lines.append(line).toString();
    }

    private PlacedText text(Label label, String text, double x, double y) {
        return new PlacedText(text, x, y, TextAnchor.CENTER, label.must ? style.strong() : style.small());
    }

    /** The text without what stands in parentheses at its end, which is left out where room is short. */
    private static String withoutRemark(String text) {
        int open = text.lastIndexOf(" (");
        return open > 0 && text.endsWith(")") ? text.substring(0, open) : text;
    }

    private boolean isPlaced(
            Graphics2D g2, Label label, double x, double y, Rectangle2D area, Taken taken, Obstacles obstacles) {
        // Upon lines a leader would not be seen.
        int reach = !label.must ? 2 : obstacles == null ? 4 : DISTANCES.length;
        for (int k = 0; k < reach; k++) {
            for (double angle : ANGLES) {
                List<PlacedText> note = beside(g2, label, x, y, Math.toRadians(angle), label.clear + DISTANCES[k]);
                Rectangle2D box = box(g2, note);
                boolean free =
                        area.contains(box) && taken.isFree(box) && (obstacles == null || obstacles.leaves(box, CLEAR));
                Line2D leader = DISTANCES[k] > LEADER_FROM ? leader(label, x, y, box) : null;
                free &= leader == null || !taken.labels.isCrossedBy(leader);
                if (free && (label.must || obstacles.isNearest(box, x, y, CLEAR))) {
                    taken.labels.take(box);
                    if (leader != null) {
                        taken.labels.takeLine(leader);
                        g2.setPaint(style.palette().muted());
                        g2.setStroke(ChartStyle.solid(1));
                        g2.draw(leader);
                    }
                    for (PlacedText line : note) {
                        if (obstacles == null) {
                            line.drawOn(
                                    g2, style.palette().ink(), style.palette().background());
                        } else {
                            line.draw(g2, style.palette().ink());
                        }
                    }
                    return true;
                }
            }
        }
        return false;
    }

    private static Rectangle2D box(Graphics2D g2, List<PlacedText> lines) {
        Rectangle2D box = lines.get(0).box(g2);
        for (PlacedText line : lines) {
            box.add(line.box(g2));
        }
        return box;
    }

    /** The lines of a label, centred above each other. */
    private List<PlacedText> beside(Graphics2D g2, Label label, double x, double y, double angle, double distance) {
        double ux = Math.cos(angle);
        double uy = -Math.sin(angle);
        String[] lines = label.text.split("\n");
        double width = 0;
        double height = 0;
        for (String line : lines) {
            Rectangle2D box = text(label, line, 0, 0).box(g2);
            width = Math.max(width, box.getWidth());
            height = box.getHeight();
        }
        double cx = x + ux * distance + Math.signum(Math.rint(2 * ux)) * width / 2;
        double cy = y + uy * distance + Math.signum(Math.rint(2 * uy)) * lines.length * height / 2;
        List<PlacedText> placed = new ArrayList<>();
        for (int i = 0; i < lines.length; i++) {
            placed.add(text(label, lines[i], cx, cy + (i - (lines.length - 1) / 2.0) * height));
        }
        return placed;
    }

    /** From the edge of the mark to the nearest place of the label. */
    private static Line2D leader(Label label, double x, double y, Rectangle2D box) {
        double endX = Math.max(box.getMinX(), Math.min(x, box.getMaxX()));
        double endY = Math.max(box.getMinY(), Math.min(y, box.getMaxY()));
        double skip = Math.min(1, (label.clear + 1) / Math.hypot(endX - x, endY - y));
        return new Line2D.Double(x + skip * (endX - x), y + skip * (endY - y), endX, endY);
    }
}
