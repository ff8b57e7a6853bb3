package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
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
public final class HeatMap extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final int LINES = 10;
    private static final double SHORTEST_DRAWN = 20;
    private static final double SHORTEST_LABELLED = 60;

    private final double[] x;
    private final double[] y;
    private final double[][] z;
    private final transient ColourScale ramp;
    private final double baseline;
    private final String baselineText;
    private final transient IntFunction<NumberFormat> formats;
    private final ChartStyle style;

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
        Contours contours = new Contours(x, y, z);
        NumberFormat format =
                formats.apply(UnitAxis.decimals(UnitAxis.step((ramp.getUpperBound() - ramp.getLowerBound()) / LINES)));
        LabelSpace space = new LabelSpace();
        List<PlacedText> notes = new ArrayList<>();
        g2.setPaint(style.palette().ink());
        g2.setStroke(ChartStyle.dashed(2));
        drawLines(g2, contours.at(baseline), baselineText, area, domain, range, space, notes);
        g2.setStroke(ChartStyle.solid(1));
        for (double level : levels()) {
            drawLines(g2, contours.at(level), format.format(level), area, domain, range, space, notes);
        }
        for (PlacedText note : notes) {
            note.drawOn(g2, style.palette().ink(), style.palette().background());
        }
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

    /** Half-way to the neighbour on a side; the outermost cells reach as far out as in. */
    public static double edge(double[] values, int i, int side) {
        int neighbour = i + side;
        if (neighbour < 0 || neighbour >= values.length) {
            return values[i] + (values[i] - values[i - side]) / 2;
        }
        return (values[i] + values[neighbour]) / 2;
    }

    private void drawLines(
            Graphics2D g2,
            List<double[][]> lines,
            String text,
            Rectangle2D area,
            ValueAxis domain,
            ValueAxis range,
            LabelSpace space,
            List<PlacedText> notes) {
        for (double[][] line : lines) {
            Path2D path = new Path2D.Double();
            List<Point2D> points = new ArrayList<>();
            double length = 0;
            for (double[] p : line) {
                Point2D here = new Point2D.Double(
                        domain.valueToJava2D(p[0], area, RectangleEdge.BOTTOM),
                        range.valueToJava2D(p[1], area, RectangleEdge.LEFT));
                if (points.isEmpty()) {
                    path.moveTo(here.getX(), here.getY());
                } else {
                    path.lineTo(here.getX(), here.getY());
                    length += here.distance(points.get(points.size() - 1));
                }
                points.add(here);
            }
            if (length > SHORTEST_DRAWN) {
                g2.draw(path);
            }
            if (length > SHORTEST_LABELLED) {
                addNote(g2, text, points, area, space, notes);
            }
        }
    }

    /** Labels a line at its middle, or nearer to an end where the middle is taken. */
    private void addNote(
            Graphics2D g2,
            String text,
            List<Point2D> line,
            Rectangle2D area,
            LabelSpace space,
            List<PlacedText> notes) {
        for (double share : new double[] {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
            Point2D at = line.get((int) (share * (line.size() - 1)));
            PlacedText note = new PlacedText(text, at.getX(), at.getY(), TextAnchor.CENTER, style.small());
            if (area.contains(note.box(g2)) && space.isFree(note.box(g2), 4)) {
                space.take(note.box(g2));
                notes.add(note);
                return;
            }
        }
    }
}
