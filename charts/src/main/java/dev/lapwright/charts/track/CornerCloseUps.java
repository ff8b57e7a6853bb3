package dev.lapwright.charts.track;

import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Choice of the corners shown enlarged: those where the lines lie farthest apart (a single line: farthest from the road's own
 * path), all seen in squares of one size. Of a long corner the part is shown where they do.
 *
 * @param all in driving order
 * @param side of each square, m
 */
record CornerCloseUps(List<View> all, double side) {
    /** How many at most. */
    private static final int MOST = 4;

    private static final double LEAST_SIDE = 110;
    private static final double MOST_SIDE = 160;
    /** Road shown round what matters of a corner, m. */
    private static final double ROUND = 25;
    /** Lines that lie closer than this all through a corner show nothing there, m. */
    private static final double WORTH = 0.25;
    /** Nearer than this share of a side, two squares would show the same. */
    private static final double APART = 0.55;

    /**
     * A corner.
     *
     * @param corner which
     * @param x middle of the square, m
     * @param y middle of the square, m
     * @param widest station beside which the lines lie farthest apart
     * @param spread how far apart, m
     */
    record View(Corner corner, double x, double y, int widest, double spread) {}

    static CornerCloseUps of(Stations road, List<DrivenLine> lines) {
        double[] s = road.s();
        double[] x = road.x();
        double[] y = road.y();
        List<View> candidates = new ArrayList<>();
        List<Rectangle2D> boxes = new ArrayList<>();
        for (Corner corner : road.corners()) {
            int widest = -1;
            double spread = 0;
            for (int i = 0; i < s.length; i++) {
                if (isIn(corner, s[i]) && spread(lines, s[i]) > spread) {
                    widest = i;
                    spread = spread(lines, s[i]);
                }
            }
            Rectangle2D box = null;
            for (int i = 0; i < s.length && widest >= 0; i++) {
                double away = Math.abs(s[i] - s[widest]);
                boolean near = Math.min(away, road.track().length() - away) <= (MOST_SIDE - 2 * ROUND) / 2;
                if (isIn(corner, s[i]) && near) {
                    box = box == null ? new Rectangle2D.Double(x[i], y[i], 0, 0) : box;
                    box.add(x[i], y[i]);
                }
            }
            if (box != null && spread >= WORTH) {
                candidates.add(new View(corner, box.getCenterX(), box.getCenterY(), widest, spread));
                boxes.add(box);
            }
        }
        double side = LEAST_SIDE;
        List<View> chosen = new ArrayList<>();
        List<View> byWorth = new ArrayList<>(candidates);
        byWorth.sort(Comparator.comparingDouble(View::spread).reversed());
        for (View view : byWorth) {
            Rectangle2D box = boxes.get(candidates.indexOf(view));
            double wanted = Math.min(MOST_SIDE, Math.max(box.getWidth(), box.getHeight()) + 2 * ROUND);
            double wider = Math.max(side, wanted);
            boolean news = chosen.stream()
                    .noneMatch(other ->
                            Math.max(Math.abs(other.x - view.x), Math.abs(other.y - view.y)) < APART * LEAST_SIDE);
            if (news && chosen.size() < MOST) {
                chosen.add(view);
                side = wider;
            }
        }
        chosen.sort(Comparator.comparingInt(view -> view.corner.number()));
        return new CornerCloseUps(List.copyOf(chosen), side);
    }

    private static boolean isIn(Corner corner, double s) {
        return corner.entry() <= corner.exit()
                ? s >= corner.entry() && s <= corner.exit()
                : s >= corner.entry() || s <= corner.exit();
    }

    /** How far apart the lines lie beside a place, m; a single line from the road's own path. */
    private static double spread(List<DrivenLine> lines, double s) {
        double least = lines.size() == 1 ? 0 : Double.POSITIVE_INFINITY;
        double most = lines.size() == 1 ? 0 : Double.NEGATIVE_INFINITY;
        for (DrivenLine line : lines) {
            double offset = line.offsetAt(s);
            least = Math.min(least, offset);
            most = Math.max(most, offset);
        }
        return most - least;
    }
}
