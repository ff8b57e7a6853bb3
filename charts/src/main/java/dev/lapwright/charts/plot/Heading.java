package dev.lapwright.charts.plot;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import org.jfree.chart.block.LengthConstraintType;
import org.jfree.chart.block.RectangleConstraint;
import org.jfree.chart.title.TextTitle;
import org.jfree.chart.ui.Size2D;

/** Text above a chart, broken between words alone: a number or the name of a file stays whole where a line has room for it. */
final class Heading extends TextTitle {
    private static final long serialVersionUID = 1L;

    private final String whole;
    private String remark = "";

    Heading(String text, Font font) {
        super(text, font);
        whole = text;
    }

    /** The text as given, without the ends of its lines. */
    @Override
    public String getText() {
        return whole;
    }

    /** Writes a remark behind the text from now on; nothing for none. */
    void remark(String text) {
        remark = text;
    }

    @Override
    public Size2D arrange(Graphics2D g2, RectangleConstraint constraint) {
        RectangleConstraint inside = toContentConstraint(constraint);
        double room = LengthConstraintType.RANGE.equals(inside.getWidthConstraintType())
                ? inside.getWidthRange().getUpperBound()
                : LengthConstraintType.FIXED.equals(inside.getWidthConstraintType())
                        ? inside.getWidth()
                        : Double.POSITIVE_INFINITY;
        setText(broken(g2.getFontMetrics(getFont()), room));
        return super.arrange(g2, constraint);
    }

    private String broken(FontMetrics metrics, double room) {
        StringBuilder lines = new StringBuilder();
        String line = "";
        for (String word : (whole + remark).split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (line.isEmpty() || metrics.stringWidth(longer) <= room) {
                line = longer;
            } else {
                lines.append(line).append('\n');
                line = word;
            }
        }
        return lines.append(line).toString();
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
