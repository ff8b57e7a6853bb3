package dev.lapwright.line;

/**
 * A line of one radius through a corner to the left between two straights, as offsets from the road's middle: along the
 * outer edge, round the arc that touches the inner edge, and straight on. Plane geometry.
 */
final class ArcLine {
    private static final double STEP = 0.5;

    private final double lead;
    private final double middle;
    private final double turn;
    private final double half;
    private final double radius;
    /** Where the arc begins, and its centre. */
    private final double begin;

    private final double centreY;

    /**
     * @param lead length of the straight before the corner, m
     * @param middle radius of the road's middle, m
     * @param turn rad
     * @param half width between the edges the line may touch, halved, m
     * @param radius of the line, m
     */
    ArcLine(double lead, double middle, double turn, double half, double radius) {
        this.lead = lead;
        this.middle = middle;
        this.turn = turn;
        this.half = half;
        this.radius = radius;
        centreY = radius - half;
        // Its centre lies radius - inner radius away from the corner's, so that the circles touch.
        double apart = radius - (middle - half);
        double across = centreY - middle;
        begin = lead - Math.sqrt(Math.max(0, apart * apart - across * across));
    }

    double begin() {
        return begin;
    }

    double[] distances(double length) {
        int steps = (int) Math.round(length / STEP);
        double[] s = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            s[i] = length * i / steps;
        }
        return s;
    }

    double[] offsets(double length) {
        double[] s = distances(length);
        double[] offsets = new double[s.length];
        for (int i = 0; i < s.length; i++) {
            offsets[i] = Math.max(-half, Math.min(half, offset(s[i])));
        }
        return offsets;
    }

    /** The road begins at the origin, to the east; the ray to the left at s meets the line at the offset. */
    private double offset(double s) {
        double arc = middle * turn;
        double angle = Math.max(0, Math.min(turn, (s - lead) / middle));
        double beyond = Math.max(0, s - lead - arc);
        double x = Math.min(s, lead) + middle * Math.sin(angle) + beyond * Math.cos(turn);
        double y = middle - middle * Math.cos(angle) + beyond * Math.sin(turn);
        double nx = -Math.sin(angle);
        double ny = Math.cos(angle);
        if (s <= begin) {
            return -half;
        }
        // The end of the arc, where it heads along the exit; beyond it the line is straight.
        double endX = begin + radius * Math.sin(turn);
        double endY = centreY - radius * Math.cos(turn);
        double past = (x - endX) * Math.cos(turn) + (y - endY) * Math.sin(turn);
        if (angle == turn && past >= 0) {
            return (endX - x) * nx + (endY - y) * ny;
        }
        // |P + n N - A| = R; the nearer crossing towards the outside.
        double dx = x - begin;
        double dy = y - centreY;
        double along = dx * nx + dy * ny;
        return -along - Math.sqrt(along * along - (dx * dx + dy * dy) + radius * radius);
    }
}
