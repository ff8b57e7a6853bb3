package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * A closed road of plain parts: straights, and corners that are each an arc between two transitions of equal length, over which the curvature
 * is linear. Where corners overlap their curvatures add, so that one may go over into the next. Its heading is known in closed form;
 * places are its integral by Simpson's rule. Immutable.
 *
 * <p>Its numbers are x and y (m) and heading (rad) of its start, its length (m), and of each corner the middles of the transitions before and
 * behind (m from the start), the arc's curvature to the left (1/m) and the logit of a transition's share of the length between those middles,
 * from the least to the whole: a longer transition is the same corner anew, with the two lengths exchanged.
 */
final class PlainRoad {
    /** Numbers of the road as a whole. */
    static final int OWN = 4;
    /** Numbers of a corner. */
    static final int EACH = 4;

    /** Shortest transition over the length between the middles of both. */
    private static final double LEAST_SHARE = 0.08;
    /** Logit of a share beyond which the road does not change, either way. */
    private static final double FARTHEST = 5;

    /** About how far apart nodes stand at which places are found, m. */
    private static final double STEP = 2;

    private final double[] numbers;
    private final int corners;
    private final int nodes;
    private final double step;
    private final double[] x;
    private final double[] y;
    private final double[] heading;

    /** @param numbers not copied */
    PlainRoad(double[] numbers) {
        this.numbers = numbers;
        corners = (numbers.length - OWN) / EACH;
        nodes = Math.max(8, (int) Math.ceil(length() / STEP));
        step = length() / nodes;
        x = new double[nodes + 1];
        y = new double[nodes + 1];
        heading = new double[nodes + 1];
        x[0] = numbers[0];
        y[0] = numbers[1];
        heading[0] = headingAt(0);
        for (int i = 0; i < nodes; i++) {
            double middle = headingAt((i + 0.5) * step);
            heading[i + 1] = headingAt((i + 1) * step);
            x[i + 1] = x[i] + step / 6 * (Math.cos(heading[i]) + 4 * Math.cos(middle) + Math.cos(heading[i + 1]));
            y[i + 1] = y[i] + step / 6 * (Math.sin(heading[i]) + 4 * Math.sin(middle) + Math.sin(heading[i + 1]));
        }
    }

    /**
     * A corner.
     *
     * @param from middle of the transition before, m
     * @param to middle of the one behind, m
     * @param curvature of the arc, to the left, 1/m
     * @param transition length of a transition, m
     */
    record PlainCorner(double from, double to, double curvature, double transition) {
        /** What it turns by to the left, rad. */
        double turning() {
            return curvature * (to - from);
        }
    }

    private double transition(int c) {
        return share(numbers[c + 3]) * (numbers[c + 1] - numbers[c]);
    }

    private static double share(double logit) {
        return LEAST_SHARE + (1 - LEAST_SHARE) / (1 + Math.exp(-logit));
    }

    int corners() {
        return corners;
    }

    PlainCorner corner(int i) {
        int at = OWN + EACH * i;
        return new PlainCorner(numbers[at], numbers[at + 1], numbers[at + 2], transition(at));
    }

    /** The road with other corners. */
    static PlainRoad of(double x, double y, double heading, double length, List<PlainCorner> corners) {
        double[] numbers = new double[OWN + EACH * corners.size()];
        numbers[0] = x;
        numbers[1] = y;
        numbers[2] = heading;
        numbers[3] = length;
        for (int i = 0; i < corners.size(); i++) {
            PlainCorner c = corners.get(i);
            int at = OWN + EACH * i;
            numbers[at] = c.from();
            numbers[at + 1] = c.to();
            numbers[at + 2] = c.curvature();
            double part = (c.transition() / (c.to() - c.from()) - LEAST_SHARE) / (1 - LEAST_SHARE);
            numbers[at + 3] = part <= 0
                    ? -FARTHEST
                    : part >= 1 ? FARTHEST : Math.max(-FARTHEST, Math.min(FARTHEST, Math.log(part / (1 - part))));
        }
        return new PlainRoad(numbers);
    }

    /** The road without some corner, and with others. */
    PlainRoad changed(List<Integer> without, List<PlainCorner> with) {
        List<PlainCorner> all = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            if (!without.contains(i)) {
                all.add(corner(i));
            }
        }
        all.addAll(with);
        all.sort((a, b) -> Double.compare(a.from() + a.to(), b.from() + b.to()));
        return of(numbers[0], numbers[1], numbers[2], numbers[3], all);
    }

    /** A copy. */
    double[] numbers() {
        return numbers.clone();
    }

    double length() {
        return numbers[3];
    }

    /** What the lap's end misses its start by: x and y, m, and heading, rad. */
    double[] gap() {
        return new double[] {
            x[nodes] - x[0], y[nodes] - y[0], Math.IEEEremainder(heading[nodes] - heading[0], 2 * Math.PI)
        };
    }

    /** A transition's course from 0 to 1, its middle at 0 and its length 1. */
    private static double ramp(double u) {
        return Math.max(0, Math.min(1, u + 0.5));
    }

    /** The integral of {@link #ramp}. */
    private static double ramped(double u) {
        return u <= -0.5 ? 0 : u >= 0.5 ? u : 0.5 * (u + 0.5) * (u + 0.5);
    }

    /** Curvature at a distance, 1/m. */
    double curvatureAt(double s) {
        double k = 0;
        for (int c = OWN; c < numbers.length; c += EACH) {
            double over = transition(c);
            k += numbers[c + 2] * (ramp((s - numbers[c]) / over) - ramp((s - numbers[c + 1]) / over));
        }
        return k;
    }

    /** Heading at a distance, rad. */
    double headingAt(double s) {
        double turned = numbers[2];
        for (int c = OWN; c < numbers.length; c += EACH) {
            double over = transition(c);
            turned += numbers[c + 2] * over * (ramped((s - numbers[c]) / over) - ramped((s - numbers[c + 1]) / over));
        }
        return turned;
    }

    /** Changes of the heading at a distance by each number, into a row. */
    void headingBy(double s, double[] row) {
        Arrays.fill(row, 0);
        row[2] = 1;
        for (int c = OWN; c < numbers.length; c += EACH) {
            double over = transition(c);
            double k = numbers[c + 2];
            double u = (s - numbers[c]) / over;
            double v = (s - numbers[c + 1]) / over;
            row[c] = -k * ramp(u);
            row[c + 1] = k * ramp(v);
            row[c + 2] = over * (ramped(u) - ramped(v));
            double byOver = k * (ramped(u) - u * ramp(u) - ramped(v) + v * ramp(v));
            double share = share(numbers[c + 3]);
            row[c] -= byOver * share;
            row[c + 1] += byOver * share;
            row[c + 3] =
                    byOver * (numbers[c + 1] - numbers[c]) * (share - LEAST_SHARE) * (1 - share) / (1 - LEAST_SHARE);
        }
    }

    /** x and y (m) and heading (rad) at a distance from 0 to the length, m. */
    double[] at(double s) {
        int i = Math.max(0, Math.min(nodes - 1, (int) (s / step)));
        double on = s - i * step;
        double middle = headingAt(i * step + on / 2);
        double end = headingAt(s);
        return new double[] {
            x[i] + on / 6 * (Math.cos(heading[i]) + 4 * Math.cos(middle) + Math.cos(end)),
            y[i] + on / 6 * (Math.sin(heading[i]) + 4 * Math.sin(middle) + Math.sin(end)),
            end
        };
    }

    /** The place on the road, m from its start, nearest to a point, from a place near it. */
    double foot(double px, double py, double near) {
        double s = near;
        for (int i = 0; i < 3; i++) {
            double[] p = at(s);
            s += (px - p[0]) * Math.cos(p[2]) + (py - p[1]) * Math.sin(p[2]);
            s = Math.max(0, Math.min(length(), s));
        }
        return s;
    }

    /** How far to the left of the road a point lies whose foot is known, m. */
    double beside(double px, double py, double foot) {
        double[] p = at(foot);
        return (py - p[1]) * Math.cos(p[2]) - (px - p[0]) * Math.sin(p[2]);
    }

    /**
     * By how much the road moves to its left at places, by each number: a row for each place, then three rows of what {@link #gap} changes
     * by.
     */
    double[][] moves(double[] places) {
        int n = numbers.length;
        double[][] byX = new double[nodes + 1][n];
        double[][] byY = new double[nodes + 1][n];
        byX[0][0] = 1;
        byY[0][1] = 1;
        double[] before = new double[n];
        double[] behind = new double[n];
        headingBy(0, before);
        for (int i = 0; i < nodes; i++) {
            headingBy((i + 1) * step, behind);
            double s0 = Math.sin(heading[i]);
            double s1 = Math.sin(heading[i + 1]);
            double c0 = Math.cos(heading[i]);
            double c1 = Math.cos(heading[i + 1]);
            for (int k = 0; k < n; k++) {
                byX[i + 1][k] = byX[i][k] - step / 2 * (s0 * before[k] + s1 * behind[k]);
                byY[i + 1][k] = byY[i][k] + step / 2 * (c0 * before[k] + c1 * behind[k]);
            }
            double[] kept = before;
            before = behind;
            behind = kept;
        }
        double[][] rows = new double[places.length + 3][];
        for (int p = 0; p < places.length; p++) {
            int i = Math.max(0, Math.min(nodes - 1, (int) (places[p] / step)));
            double share = places[p] / step - i;
            double turned = (1 - share) * heading[i] + share * heading[i + 1];
            double cos = Math.cos(turned);
            double sin = Math.sin(turned);
            double[] row = new double[n];
            for (int k = 0; k < n; k++) {
                row[k] = cos * ((1 - share) * byY[i][k] + share * byY[i + 1][k])
                        - sin * ((1 - share) * byX[i][k] + share * byX[i + 1][k]);
            }
            rows[p] = row;
        }
        // The place of the end, less that of the start; a longer road goes on as it ends.
        double[] endX = byX[nodes];
        double[] endY = byY[nodes];
        endX[0] -= 1;
        endY[1] -= 1;
        endX[3] += Math.cos(heading[nodes]);
        endY[3] += Math.sin(heading[nodes]);
        double[] turn = new double[n];
        headingBy(length(), turn);
        turn[2] -= 1;
        turn[3] += curvatureAt(length());
        rows[places.length] = endX;
        rows[places.length + 1] = endY;
        rows[places.length + 2] = turn;
        return rows;
    }
}
