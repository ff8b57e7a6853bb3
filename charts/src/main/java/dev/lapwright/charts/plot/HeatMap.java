package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Palette;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import org.jfree.chart.annotations.AbstractXYAnnotation;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** Cells coloured by value, each reaching half-way to its neighbours, with labelled lines of equal value. */
public final class HeatMap extends AbstractXYAnnotation implements OwnLabels {
    private static final long serialVersionUID = 1L;
    private static final int LINES = 10;
    /** Lines on the cells; neither is a colour of a palette, which a viewer may exchange. */
    public static final Color ON_LIGHT = new Color(0x10171D);

    public static final Color ON_DARK = new Color(0xF4F6F8);
    private static final double SHORTEST_DRAWN = 20;
    private static final double SHORTEST_LABELLED = 60;
    /** Where on a line its label may stand, the best first. */
    private static final double[] SHARES = {
        0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.9, 0.1, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75
    };
    /** What is drawn over the map stays so far from a label, px. */
    private static final double CLEAR = 3;

    private final double[] x;
    private final double[] y;
    private final double[][] z;
    private final transient ColourScale ramp;
    private final double baseline;
    private final String baselineText;
    private final transient IntFunction<NumberFormat> formats;
    private final ChartStyle style;
    private final transient List<double[][]> drawnOver = new ArrayList<>();
    private final transient List<OwnLabels> labelledOver = new ArrayList<>();

    /**
     * @param x rising
     * @param y rising
     * @param z values, as lap times in s, [y][x]; NaN where there is none
     * @param baseline a value whose line is drawn dashed
     * @param baselineText what is written on it
     * @param formats how values are written, by the number of decimals
     */
    public HeatMap(
            double[] x,
            double[] y,
            double[][] z,
            ColourScale ramp,
            double baseline,
            String baselineText,
            IntFunction<NumberFormat> formats,
            ChartStyle style) {
        this.x = x;
        this.y = y;
        this.z = z;
        this.ramp = ramp;
        this.baseline = baseline;
        this.baselineText = baselineText;
        this.formats = formats;
        this.style = style;
    }

    /** Keeps the labels clear of a line, or a point, that will be drawn over the map: [2][n]. */
    public HeatMap clearOf(double[][] line) {
        drawnOver.add(line);
        return this;
    }

    /** Keeps the labels clear of others that will be drawn over the map. */
    public HeatMap clearOf(OwnLabels labels) {
        labelledOver.add(labels);
        return this;
    }

    /** Values at which lines are drawn: whole multiples of a step of 1, 2 or 5, ten or fewer. */
    public List<Double> levels() {
        double low = ramp.getLowerBound();
        double high = ramp.getUpperBound();
        double step = UnitAxis.step((high - low) / LINES);
        List<Double> levels = new ArrayList<>();
        for (long k = (long) Math.ceil(low / step); k * step < high; k++) {
            levels.add(k * step);
        }
        return levels;
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
        drawCells(g2, area, domain, range);
        for (Isoline line : isolines(area, domain, range)) {
            g2.setPaint(against(line.level));
            g2.setStroke(line.isBaseline ? ChartStyle.dashed(2) : ChartStyle.solid(1));
            if (line.length > SHORTEST_DRAWN) {
                g2.draw(line.path());
            }
        }
        for (PlacedText note : labels(g2, area, domain, range)) {
            note.drawOn(g2, style.palette().ink(), style.palette().background());
        }
    }

    /** A line of equal value in pixels. */
    private record Isoline(double level, String text, boolean isBaseline, List<Point2D> points, double length) {
        Path2D path() {
            Path2D path = new Path2D.Double();
            path.moveTo(points.get(0).getX(), points.get(0).getY());
            points.forEach(point -> path.lineTo(point.getX(), point.getY()));
            return path;
        }
    }

    /** That of the baseline first. */
    private List<Isoline> isolines(Rectangle2D area, ValueAxis domain, ValueAxis range) {
        Contours contours = new Contours(x, y, z);
        NumberFormat format =
                formats.apply(UnitAxis.decimals(UnitAxis.step((ramp.getUpperBound() - ramp.getLowerBound()) / LINES)));
        List<Isoline> isolines = new ArrayList<>();
        contours.at(baseline)
                .forEach(line -> isolines.add(isoline(baseline, baselineText, true, line, area, domain, range)));
        for (double level : levels()) {
            contours.at(level)
                    .forEach(line ->
                            isolines.add(isoline(level, format.format(level), false, line, area, domain, range)));
        }
        return isolines;
    }

    private static Isoline isoline(
            double level,
            String text,
            boolean isBaseline,
            double[][] line,
            Rectangle2D area,
            ValueAxis domain,
            ValueAxis range) {
        List<Point2D> points = new ArrayList<>();
        double length = 0;
        for (double[] p : line) {
            Point2D here = new Point2D.Double(
                    domain.valueToJava2D(p[0], area, RectangleEdge.BOTTOM),
                    range.valueToJava2D(p[1], area, RectangleEdge.LEFT));
            length += points.isEmpty() ? 0 : here.distance(points.get(points.size() - 1));
            points.add(here);
        }
        return new Isoline(level, text, isBaseline, points, length);
    }

    @Override
    public List<PlacedText> labels(Graphics2D g2, Rectangle2D area, ValueAxis domain, ValueAxis range) {
        Obstacles over = new Obstacles(area, domain, range);
        drawnOver.forEach(over::addLine);
        LabelSpace space = new LabelSpace();
        for (OwnLabels others : labelledOver) {
            others.labels(g2, area, domain, range).forEach(label -> space.take(label.box(g2)));
        }
        List<PlacedText> notes = new ArrayList<>();
        for (Isoline line : isolines(area, domain, range)) {
            if (line.length > SHORTEST_LABELLED) {
                addNote(g2, line, area, over, space, notes);
            }
        }
        return notes;
    }

    /** Dark on light cells and light on dark ones, whatever the paper: a line runs through cells of about its own value. */
    private Color against(double level) {
        Color cell = ramp.getPaint(level);
        return Palette.contrast(cell, ON_LIGHT) >= Palette.contrast(cell, ON_DARK) ? ON_LIGHT : ON_DARK;
    }

    private void drawCells(Graphics2D g2, Rectangle2D area, ValueAxis domain, ValueAxis range) {
        Object smoothing = g2.getRenderingHint(RenderingHints.KEY_ANTIALIASING);
        // Smoothed edges would leave hairlines between cells.
        g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_OFF);
        for (int j = 0; j < y.length; j++) {
            for (int i = 0; i < x.length; i++) {
                if (!Double.isNaN(z[j][i])) {
                    double left = domain.valueToJava2D(edge(x, i, -1), area, RectangleEdge.BOTTOM);
                    double right = domain.valueToJava2D(edge(x, i, 1), area, RectangleEdge.BOTTOM);
                    double bottom = range.valueToJava2D(edge(y, j, -1), area, RectangleEdge.LEFT);
                    double top = range.valueToJava2D(edge(y, j, 1), area, RectangleEdge.LEFT);
                    g2.setPaint(ramp.getPaint(z[j][i]));
                    g2.fill(new Rectangle2D.Double(
                            Math.rint(left),
                            Math.rint(top),
                            Math.rint(right) - Math.rint(left),
                            Math.rint(bottom) - Math.rint(top)));
                }
            }
        }
        if (smoothing != null) {
            g2.setRenderingHint(RenderingHints.KEY_ANTIALIASING, smoothing);
        }
    }

    /** Half-way to the neighbour on a side; the outermost cells reach as far out as in, a single one a little. */
    public static double edge(double[] values, int i, int side) {
        int neighbour = i + side;
        if (values.length == 1) {
            return values[0] + side * Math.max(0.5, 0.05 * Math.abs(values[0]));
        }
        if (neighbour < 0 || neighbour >= values.length) {
            return values[i] + (values[i] - values[i - side]) / 2;
        }
        return (values[i] + values[neighbour]) / 2;
    }

    /** Labels a line at its middle, or nearer to an end where the middle is taken; not at all where all of it is. */
    private void addNote(
            Graphics2D g2, Isoline line, Rectangle2D area, Obstacles over, LabelSpace space, List<PlacedText> notes) {
        for (double share : SHARES) {
            Point2D at = line.points.get((int) (share * (line.points.size() - 1)));
            PlacedText note = new PlacedText(line.text, at.getX(), at.getY(), TextAnchor.CENTER, style.small());
            Rectangle2D box = note.box(g2);
            if (area.contains(box) && space.isFree(box, 4) && over.leaves(box, CLEAR)) {
                space.take(box);
                notes.add(note);
                return;
            }
        }
    }
}
