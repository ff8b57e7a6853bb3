package dev.lapwright.charts.setup;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.PlacedText;
import java.awt.Color;
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
 * Bars from zero in rows, each with its value at its end; above them a heading. Every other row is shaded, or
 * instead a band about zero.
 */
final class RowBars extends AbstractXYAnnotation {
    private static final long serialVersionUID = 1L;
    private static final double GAP = 4;
    /** A higher row is not filled, px. */
    private static final double THICKEST = 34;

    /**
     * A bar from zero.
     *
     * @param row from 0
     * @param value where it ends; NaN for none, with its text beside zero
     * @param top where it begins within the height of its row, 0 to 1
     * @param bottom where it ends within the height of its row, 0 to 1
     * @param colour of its face and outline
     * @param filled whether it has a face
     * @param text at its end
     */
    record Bar(int row, double value, double top, double bottom, Color colour, boolean filled, String text) {}

    /**
     * What stands above the rows.
     *
     * @param title in the middle
     * @param below what values below zero mean
     * @param above what values above zero mean
     */
    record Heading(String title, String below, String above) {}

    private final transient Heading heading;
    private final transient List<Bar> bars;
    private final int rows;
    private final double band;
    private final ChartStyle style;

    /** @param band reach of the shaded band either side of zero; NaN for none */
    RowBars(Heading heading, List<Bar> bars, int rows, double band, ChartStyle style) {
        this.heading = heading;
        this.bars = List.copyOf(bars);
        this.rows = rows;
        this.band = band;
        this.style = style;
    }

    List<Bar> bars() {
        return bars;
    }

    double band() {
        return band;
    }

    @Override
    public void draw(
            Graphics2D g2,
            XYPlot plot,
            Rectangle2D area,
            ValueAxis values,
            ValueAxis places,
            int rendererIndex,
            PlotRenderingInfo info) {
        double height = area.getHeight() / (rows + RowPanels.heading(rows));
        double zero = values.valueToJava2D(0, area, RectangleEdge.BOTTOM);
        double first = area.getMaxY() - rows * height;
        if (Double.isNaN(band)) {
            drawStripes(g2, area, first, height);
        }
        List<PlacedText> notes = new ArrayList<>();
        for (Bar bar : bars) {
            notes.add(note(g2, area, bar, face(area, bar, values, first, height)));
        }
        if (!Double.isNaN(band)) {
            drawBand(g2, area, values, first, height, notes);
        }
        g2.setPaint(style.palette().muted());
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(new Line2D.Double(zero, first, zero, area.getMaxY()));
        drawHeading(g2, area, zero, first);
        for (int i = 0; i < bars.size(); i++) {
            Bar bar = bars.get(i);
            boolean none = Double.isNaN(bar.value);
            if (!none) {
                Rectangle2D face = face(area, bar, values, first, height);
                g2.setPaint(bar.filled ? bar.colour : style.palette().background());
                g2.fill(face);
                g2.setPaint(bar.colour);
                g2.setStroke(ChartStyle.solid(1));
                g2.draw(face);
            }
            notes.get(i)
                    .draw(g2, none ? style.palette().muted() : style.palette().ink());
        }
    }

    /** The bar itself; of no length where it has no value. */
    private static Rectangle2D face(Rectangle2D area, Bar bar, ValueAxis values, double first, double height) {
        double zero = values.valueToJava2D(0, area, RectangleEdge.BOTTOM);
        double end = Double.isNaN(bar.value) ? zero : values.valueToJava2D(bar.value, area, RectangleEdge.BOTTOM);
        double thick = Math.min(height, THICKEST);
        double top = first + (bar.row + 0.5) * height - thick / 2;
        return new Rectangle2D.Double(
                Math.min(zero, end), top + bar.top * thick, Math.abs(end - zero), (bar.bottom - bar.top) * thick);
    }

    private PlacedText note(Graphics2D g2, Rectangle2D area, Bar bar, Rectangle2D face) {
        boolean left = bar.value < 0;
        PlacedText beyond = beside(bar, face, left, left ? face.getMinX() : face.getMaxX());
        Rectangle2D box = beyond.box(g2);
        if (box.getMinX() < area.getMinX() + GAP || box.getMaxX() > area.getMaxX()) {
            // On the other side of zero, where the row's only bar is not.
            PlacedText across = beside(bar, face, !left, left ? face.getMaxX() : face.getMinX());
            Rectangle2D there = across.box(g2);
            boolean alone = bars.stream().filter(other -> other.row == bar.row).count() == 1;
            if (alone && there.getMinX() >= area.getMinX() && there.getMaxX() <= area.getMaxX()) {
                return across;
            }
        }
        return beyond.within(g2, area.getMinX(), area.getMaxX());
    }

    private PlacedText beside(Bar bar, Rectangle2D face, boolean left, double edge) {
        return new PlacedText(
                bar.text,
                left ? edge - GAP : edge + GAP,
                face.getCenterY(),
                left ? TextAnchor.CENTER_RIGHT : TextAnchor.CENTER_LEFT,
                style.small());
    }

    private void drawStripes(Graphics2D g2, Rectangle2D area, double first, double height) {
        g2.setPaint(style.palette().band());
        for (int row = 0; row < rows; row += 2) {
            g2.fill(new Rectangle2D.Double(area.getX(), first + row * height, area.getWidth(), height));
        }
    }

    private void drawBand(
            Graphics2D g2, Rectangle2D area, ValueAxis values, double first, double height, List<PlacedText> notes) {
        double left = Math.max(area.getMinX(), values.valueToJava2D(-band, area, RectangleEdge.BOTTOM));
        double right = Math.min(area.getMaxX(), values.valueToJava2D(band, area, RectangleEdge.BOTTOM));
        g2.setPaint(style.palette().grid());
        g2.fill(new Rectangle2D.Double(left, first, right - left, area.getMaxY() - first));
        g2.setPaint(style.palette().muted());
        g2.setStroke(ChartStyle.dashed(1));
        for (double edge : new double[] {left, right}) {
            for (int row = 0; row < rows; row++) {
                double top = first + row * height;
                Line2D line = new Line2D.Double(edge, top, edge, top + height);
                // Not through a label: the shading goes on beneath it.
                boolean free = notes.stream().noneMatch(note -> line.intersects(note.box(g2)));
                if (free && edge > area.getMinX() && edge < area.getMaxX()) {
                    g2.draw(line);
                }
            }
        }
    }

    private void drawHeading(Graphics2D g2, Rectangle2D area, double zero, double first) {
        PlacedText title =
                new PlacedText(heading.title, area.getCenterX(), area.getMinY(), TextAnchor.TOP_CENTER, style.strong());
        title.draw(g2, style.palette().ink());
        for (PlacedText side : List.of(
                new PlacedText(heading.below, zero - GAP, first - 1, TextAnchor.BOTTOM_RIGHT, style.small()),
                new PlacedText(heading.above, zero + GAP, first - 1, TextAnchor.BOTTOM_LEFT, style.small()))) {
            Rectangle2D box = side.box(g2);
            boolean high = box.getMinY() >= title.box(g2).getMaxY() - 3;
            // There are no bars on a side that has no room for its name.
            if (box.getMinX() >= area.getMinX()
                    && box.getMaxX() <= area.getMaxX()
                    && (high || !box.intersects(title.box(g2)))) {
                side.draw(g2, style.palette().muted());
            }
        }
    }
}
