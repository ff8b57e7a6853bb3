package dev.lapwright.charts.plot;

import dev.lapwright.charts.ChartStyle;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.axis.AxisSpace;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.PlotRenderingInfo;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.Range;

/**
 * Labels at the right ends of lines, in the place of a right-hand axis; labels that would lie upon each other are spread and
 * led to their lines.
 */
public final class EndLabelAxis extends NumberAxis {
    private static final long serialVersionUID = 1L;
    private static final double LEADER = 14;
    private static final double GAP = 3;
    /** Most of the width that labels may take; longer ones are cut. */
    private static final double MOST = 0.42;

    private final transient List<EndLabel> labels;
    private final ChartStyle style;

    /** What to write at a value of the line's axis. */
    public record EndLabel(double value, String text, Color colour) {}

    /** @param range that of the axis the lines are drawn on */
    public EndLabelAxis(List<EndLabel> labels, Range range, ChartStyle style) {
        List<EndLabel> fromTop = new ArrayList<>(labels);
        fromTop.sort(Comparator.comparingDouble(EndLabel::value).reversed());
        this.labels = List.copyOf(fromTop);
        this.style = style;
        setRange(range);
    }

    public List<EndLabel> labels() {
        return labels;
    }

    private PlacedText note(EndLabel label, double x, double y) {
        return new PlacedText(label.text, x, y, TextAnchor.CENTER_LEFT, style.text());
    }

    @Override
    public AxisSpace reserveSpace(Graphics2D g2, Plot plot, Rectangle2D area, RectangleEdge edge, AxisSpace space) {
        double width = 0;
        for (EndLabel label : labels) {
            width = Math.max(width, note(label, 0, 0).box(g2).getWidth());
        }
        width = Math.min(width, MOST * area.getWidth());
        AxisSpace reserved = space == null ? new AxisSpace() : space;
        reserved.add(width + LEADER + 2 * GAP, edge);
        return reserved;
    }

    @Override
    public AxisState draw(
            Graphics2D g2,
            double cursor,
            Rectangle2D plotArea,
            Rectangle2D dataArea,
            RectangleEdge edge,
            PlotRenderingInfo info) {
        double[] wanted = new double[labels.size()];
        for (int i = 0; i < wanted.length; i++) {
            wanted[i] = valueToJava2D(labels.get(i).value, dataArea, edge);
        }
        double height = labels.isEmpty() ? 0 : note(labels.get(0), 0, 0).box(g2).getHeight();
        double[] placed = spread(wanted, height, plotArea.getMinY() + height / 2, plotArea.getMaxY() - height / 2);
        for (int i = 0; i < placed.length; i++) {
            EndLabel label = labels.get(i);
            g2.setPaint(label.colour);
            g2.setStroke(ChartStyle.solid(1));
            g2.draw(new Line2D.Double(cursor + 1, wanted[i], cursor + LEADER, placed[i]));
            note(label, cursor + LEADER + GAP, placed[i])
                    .cut(g2, plotArea.getMaxX() - cursor - LEADER - GAP)
                    .draw(g2, style.palette().label(label.colour));
        }
        AxisState state = new AxisState(cursor);
        state.setTicks(List.of());
        return state;
    }

    /** Places at least {@code gap} apart, near those wanted (rising), within the limits as far as they suffice. */
    public static double[] spread(double[] wanted, double gap, double least, double most) {
        double[] placed = wanted.clone();
        // Neighbours that clash become a block centred on the mean of what they want; then blocks may clash, and so on.
        List<double[]> blocks = new ArrayList<>();
        for (double want : wanted) {
            blocks.add(new double[] {want, 1});
            while (blocks.size() > 1) {
                double[] last = blocks.get(blocks.size() - 1);
                double[] before = blocks.get(blocks.size() - 2);
                if (last[0] - before[0] >= gap * (last[1] + before[1]) / 2 - 1e-9) {
                    break;
                }
                double count = last[1] + before[1];
                before[0] = (before[0] * before[1] + last[0] * last[1]) / count;
                before[1] = count;
                blocks.remove(blocks.size() - 1);
            }
        }
        int k = 0;
        for (double[] block : blocks) {
            double first = block[0] - gap * (block[1] - 1) / 2;
            for (int i = 0; i < block[1]; i++) {
                placed[k++] = first + i * gap;
            }
        }
        for (int i = placed.length - 1; i >= 0; i--) {
            placed[i] = Math.min(placed[i], most - gap * (placed.length - 1 - i));
        }
        for (int i = 0; i < placed.length; i++) {
            placed[i] = Math.max(placed[i], least + gap * i);
        }
        return placed;
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
