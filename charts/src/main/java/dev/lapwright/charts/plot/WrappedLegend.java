package dev.lapwright.charts.plot;

import java.awt.Graphics2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.LegendItem;
import org.jfree.chart.LegendItemSource;
import org.jfree.chart.block.Block;
import org.jfree.chart.block.BlockContainer;
import org.jfree.chart.block.BorderArrangement;
import org.jfree.chart.block.LabelBlock;
import org.jfree.chart.block.RectangleConstraint;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.Size2D;
import org.jfree.chart.ui.TextAnchor;

/** A legend whose names are broken into lines where they are wider than the picture. */
final class WrappedLegend extends LegendTitle {
    private static final long serialVersionUID = 1L;
    /** What an item has beside its name: the longest sample of a line, and room round it, px. */
    private static final double SAMPLE = 64;

    private transient Graphics2D measure;
    private transient double room = Double.POSITIVE_INFINITY;

    WrappedLegend(LegendItemSource source) {
        super(source);
    }

    @Override
    public Size2D arrange(Graphics2D g2, RectangleConstraint constraint) {
        measure = g2;
        double width = constraint.getWidthRange() == null
                ? constraint.getWidth()
                : constraint.getWidthRange().getUpperBound();
        room = width > SAMPLE ? width - SAMPLE : Double.POSITIVE_INFINITY;
        return super.arrange(g2, constraint);
    }

    @Override
    protected Block createLegendItemBlock(LegendItem item) {
        BlockContainer whole = (BlockContainer) super.createLegendItemBlock(item);
        if (measure == null || width(item.getLabel()) <= room) {
            return whole;
        }
        BlockContainer inner = (BlockContainer) whole.getBlocks().get(0);
        BlockContainer broken = new BlockContainer(new BorderArrangement());
        broken.add((Block) inner.getBlocks().get(0), RectangleEdge.LEFT);
        LabelBlock label = new LabelBlock(String.join("\n", lines(item.getLabel())), getItemFont(), getItemPaint());
        label.setPadding(getItemLabelPadding());
        broken.add(label);
        return broken;
    }

    private List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : text.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (line.isEmpty() || width(longer) <= room) {
                line = longer;
            } else {
                lines.add(line);
                line = word;
            }
        }
        lines.add(line);
        lines.replaceAll(each -> note(each).cut(measure, room).text());
        return lines;
    }

    private double width(String text) {
        return note(text).box(measure).getWidth();
    }

    private PlacedText note(String text) {
        return new PlacedText(text, 0, 0, TextAnchor.TOP_LEFT, getItemFont());
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
