package dev.lapwright.charts.plot;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** Space in a picture already taken by labels, so that no two lie upon each other. Made for one drawing. */
public final class LabelSpace {
    private final List<Rectangle2D> taken = new ArrayList<>();

    /** Whether nothing has been put within {@code gap} px of this place. */
    public boolean isFree(Rectangle2D place, double gap) {
        for (Rectangle2D other : taken) {
            if (other.intersects(
                    place.getX() - gap, place.getY() - gap, place.getWidth() + 2 * gap, place.getHeight() + 2 * gap)) {
                return false;
            }
        }
        return true;
    }

    /** Whether a line runs through what has been put. */
    public boolean isCrossedBy(Line2D line) {
        return taken.stream().anyMatch(line::intersects);
    }

    /** Marks a thin line as taken. */
    public void takeLine(Line2D line) {
        double length = line.getP1().distance(line.getP2());
        int steps = 1 + (int) (length / 3);
        for (int i = 0; i <= steps; i++) {
            double w = (double) i / steps;
            double x = line.getX1() + w * (line.getX2() - line.getX1());
            double y = line.getY1() + w * (line.getY2() - line.getY1());
            taken.add(new Rectangle2D.Double(x - 0.5, y - 0.5, 1, 1));
        }
    }

    /** Marks a place as taken. */
    public void take(Rectangle2D place) {
        taken.add((Rectangle2D) place.clone());
    }
}
