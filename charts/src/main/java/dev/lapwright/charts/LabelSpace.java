package dev.lapwright.charts;

import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;

/** The room that labels have taken in a picture, so that no two lie upon each other. Made for one drawing. */
final class LabelSpace {
    private final List<Rectangle2D> taken = new ArrayList<>();

    /** Whether nothing has been put within {@code gap} px of this place. */
    boolean isFree(Rectangle2D place, double gap) {
        for (Rectangle2D other : taken) {
            if (other.intersects(
                    place.getX() - gap, place.getY() - gap, place.getWidth() + 2 * gap, place.getHeight() + 2 * gap)) {
                return false;
            }
        }
        return true;
    }

    /** Marks a place as taken. */
    void take(Rectangle2D place) {
        taken.add((Rectangle2D) place.clone());
    }
}
