package dev.lapwright.charts;

import dev.lapwright.lap.Limit;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/**
 * How points limited by one thing are marked: each limit by its own shape, so that none needs its colour to be told.
 *
 * @param series the palette's series whose colour it takes
 * @param shape about the origin, px
 * @param filled or drawn as an outline
 */
record LimitMark(int series, Shape shape, boolean filled) {
    private static final double R = 3.4;

    static LimitMark of(Limit limit) {
        return switch (limit) {
            case FRONT_GRIP -> new LimitMark(2, polygon(3, -90), true);
            case REAR_GRIP -> new LimitMark(1, new Ellipse2D.Double(-R, -R, 2 * R, 2 * R), true);
            case POWER -> new LimitMark(0, cross(), false);
            case REV_LIMIT -> new LimitMark(5, polygon(4, 0), false);
            case BRAKES -> new LimitMark(4, new Rectangle2D.Double(-R, -R, 2 * R, 2 * R), false);
            case ROLL_OVER -> new LimitMark(3, polygon(3, 90), false);
            case PITCH_OVER -> new LimitMark(3, polygon(4, 0), true);
            case SPEED_RULE -> new LimitMark(3, new Ellipse2D.Double(-R, -R, 2 * R, 2 * R), false);
        };
    }

    private static Shape polygon(int corners, double firstDegrees) {
        Path2D path = new Path2D.Double();
        for (int i = 0; i < corners; i++) {
            double angle = Math.toRadians(firstDegrees + 360.0 * i / corners);
            double x = 1.25 * R * Math.cos(angle);
            double y = 1.25 * R * Math.sin(angle);
            if (i == 0) {
                path.moveTo(x, y);
            } else {
                path.lineTo(x, y);
            }
        }
        path.closePath();
        return path;
    }

    /** Two strokes: the commonest mark of a lap should cost least in a file. */
    private static Shape cross() {
        Path2D path = new Path2D.Double();
        path.append(new Line2D.Double(-R, 0, R, 0), false);
        path.append(new Line2D.Double(0, -R, 0, R), false);
        return path;
    }
}
