package dev.lapwright.charts.map;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** The road in plan with its edges, corners darker than the rest. Made for one drawing. */
public final class RoadOutline {
    /** A narrower road is no longer seen as a road with two edges, px. */
    private static final double LEAST = 4;

    private final MapScale scale;
    private final double[] s;
    private final double[] x;
    private final double[] y;
    private final double[] heading;
    private final double[] left;
    private final double[] right;
    private final boolean widened;
    private final double widest;
    private final Stations stations;

    public RoadOutline(Stations stations, MapScale scale) {
        this.stations = stations;
        this.scale = scale;
        s = stations.s();
        x = stations.x();
        y = stations.y();
        heading = stations.heading();
        left = stations.widthLeft();
        right = stations.widthRight();
        double narrowest = Double.POSITIVE_INFINITY;
        double half = 0;
        for (double width : widths(stations)) {
            narrowest = Math.min(narrowest, width);
        }
        widened = !(narrowest * scale.pixelsPerMetre() >= LEAST);
        // All of it by one factor, so that narrow places stay narrow; a road of no width is given one.
        double factor = widened && narrowest > 0 ? LEAST / (narrowest * scale.pixelsPerMetre()) : 1;
        for (int i = 0; i < s.length; i++) {
            left[i] = narrowest > 0 ? factor * left[i] : LEAST / 2 / scale.pixelsPerMetre();
            right[i] = narrowest > 0 ? factor * right[i] : LEAST / 2 / scale.pixelsPerMetre();
            half = Math.max(half, Math.max(left[i], right[i]));
        }
        widest = 2 * half * scale.pixelsPerMetre();
    }

    /** Width at each station, m. */
    public static double[] widths(Stations stations) {
        double[] widths = stations.widthLeft();
        double[] right = stations.widthRight();
        for (int i = 0; i < widths.length; i++) {
            widths[i] += right[i];
        }
        return widths;
    }

    /** Whether it is drawn wider than it is. */
    public boolean isWidened() {
        return widened;
    }

    /** Half of the greatest width drawn, px. */
    public double halfWidth() {
        return widest / 2;
    }

    public void draw(Graphics2D g2, ChartStyle style) {
        int last = s.length - 1;
        g2.setPaint(style.palette().grid());
        g2.fill(stretch(0, last));
        g2.setPaint(style.palette().muted());
        for (Corner corner : stations.corners()) {
            if (corner.entry() <= corner.exit()) {
                g2.fill(stretch(at(corner.entry()), at(corner.exit())));
            } else {
                g2.fill(stretch(at(corner.entry()), last));
                g2.fill(stretch(0, at(corner.exit())));
            }
        }
        g2.setPaint(style.palette().ink());
        g2.setStroke(ChartStyle.solid(1));
        g2.draw(edge(left, 1, 0, last));
        g2.draw(edge(right, -1, 0, last));
    }

    /** Draws only what lies in a window and a little round it, corners no darker than the rest. */
    public void drawPlain(Graphics2D g2, Rectangle2D window, ChartStyle style) {
        for (int[] run : scale.within(window, x, y)) {
            g2.setPaint(style.palette().grid());
            g2.fill(stretch(run[0], run[1]));
            g2.setPaint(style.palette().ink());
            g2.setStroke(ChartStyle.solid(1));
            g2.draw(edge(left, 1, run[0], run[1]));
            g2.draw(edge(right, -1, run[0], run[1]));
        }
    }

    /** The last station not beyond a distance. */
    private int at(double distance) {
        int i = 0;
        while (i + 1 < s.length && s[i + 1] <= distance) {
            i++;
        }
        return i;
    }

    private Path2D stretch(int from, int to) {
        Path2D path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        path.moveTo(px(from, left[from]), py(from, left[from]));
        for (int i = from + 1; i <= to; i++) {
            path.lineTo(px(i, left[i]), py(i, left[i]));
        }
        for (int i = to; i >= from; i--) {
            path.lineTo(px(i, -right[i]), py(i, -right[i]));
        }
        path.closePath();
        return path;
    }

    private Path2D edge(double[] width, int side, int from, int to) {
        Path2D path = new Path2D.Double();
        path.moveTo(px(from, side * width[from]), py(from, side * width[from]));
        for (int i = from + 1; i <= to; i++) {
            path.lineTo(px(i, side * width[i]), py(i, side * width[i]));
        }
        return path;
    }

    /** Across the picture, px, of a point {@code aside} metres to the left of a station. */
    private double px(int i, double aside) {
        return scale.px(x[i] - aside * Math.sin(heading[i]));
    }

    private double py(int i, double aside) {
        return scale.py(y[i] + aside * Math.cos(heading[i]));
    }
}
