package dev.lapwright.charts.plot;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.ui.TextAnchor;

/**
 * A short text at a place in a picture, with px coordinates.
 *
 * @param text what it says
 * @param x of the anchor
 * @param y of the anchor
 * @param anchor which part of the text lies at (x, y)
 * @param font of the text
 */
public record PlacedText(String text, double x, double y, TextAnchor anchor, Font font) {
    /** The same held within a range across, as far as it fits. */
    public PlacedText within(Graphics2D g2, double left, double right) {
        Rectangle2D box = box(g2);
        double shift = Math.min(0, right - box.getMaxX());
        shift = Math.max(shift, left - box.getMinX());
        return new PlacedText(text, x + shift, y, anchor, font);
    }

    /** The same cut to a width, px, with an ellipsis in the place of what is lost. */
    public PlacedText cut(Graphics2D g2, double width) {
        if (box(g2).getWidth() <= width) {
            return this;
        }
        int[] signs = text.codePoints().toArray();
        for (int kept = signs.length - 1; kept > 0; kept--) {
            String shorter = new String(signs, 0, kept).stripTrailing() + "\u2026";
            PlacedText cut = new PlacedText(shorter, x, y, anchor, font);
            if (cut.box(g2).getWidth() <= width) {
                return cut;
            }
        }
        return new PlacedText("\u2026", x, y, anchor, font);
    }

    /** Where it will lie. */
    public Rectangle2D box(Graphics2D g2) {
        g2.setFont(font);
        return TextUtils.calcAlignedStringBounds(text, g2, (float) x, (float) y, anchor);
    }

    public void draw(Graphics2D g2, Color colour) {
        g2.setFont(font);
        g2.setPaint(colour);
        TextUtils.drawAlignedString(text, g2, (float) x, (float) y, anchor);
    }

    /** Draws it upon a patch of {@code ground}, so that lines beneath do not cross the letters. */
    public void drawOn(Graphics2D g2, Color colour, Color ground) {
        Rectangle2D box = box(g2);
        g2.setPaint(new Color(ground.getRed(), ground.getGreen(), ground.getBlue(), 215));
        g2.fill(new Rectangle2D.Double(box.getX() - 2, box.getY(), box.getWidth() + 4, box.getHeight()));
        draw(g2, colour);
    }
}
