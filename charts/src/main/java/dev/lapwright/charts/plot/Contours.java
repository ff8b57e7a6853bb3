package dev.lapwright.charts.plot;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Lines of equal value on a grid, by marching squares (W. E. Lorensen and H. E. Cline, 1987, in the plane): in each cell the
 * line crosses the edges whose ends lie on either side of the level, with linear variation along the edge. Where all four
 * edges are crossed the mean of the corners decides which way the two pieces run. Cells with a NaN corner have no line.
 */
public final class Contours {
    private final double[] x;
    private final double[] y;
    private final double[][] z;

    /**
     * @param x rising; not copied
     * @param y rising; not copied
     * @param z values, [y][x]; not copied
     */
    public Contours(double[] x, double[] y, double[][] z) {
        this.x = x;
        this.y = y;
        this.z = z;
    }

    /** The lines at a level, each as [points][2]; a closed line ends where it starts. */
    public List<double[][]> at(double level) {
        Map<Integer, List<Integer>> links = new HashMap<>();
        List<Integer> edges = new ArrayList<>();
        for (int j = 0; j + 1 < y.length; j++) {
            for (int i = 0; i + 1 < x.length; i++) {
                addCell(i, j, level, links, edges);
            }
        }
        List<double[][]> lines = new ArrayList<>();
        Map<Integer, Boolean> used = new HashMap<>();
        // Open lines from their ends first, then what is left: closed ones.
        for (int pass = 0; pass < 2; pass++) {
            for (int edge : edges) {
                if (!used.containsKey(edge) && (pass == 1 || links.get(edge).size() == 1)) {
                    lines.add(follow(edge, level, links, used));
                }
            }
        }
        return lines;
    }

    private double[][] follow(int start, double level, Map<Integer, List<Integer>> links, Map<Integer, Boolean> used) {
        List<double[]> points = new ArrayList<>();
        Integer edge = start;
        Integer last = null;
        while (edge != null) {
            used.put(edge, true);
            points.add(crossing(edge, level));
            last = edge;
            Integer next = null;
            for (int candidate : links.get(edge)) {
                if (!used.containsKey(candidate)) {
                    next = candidate;
                    break;
                }
            }
            edge = next;
        }
        if (points.size() > 2 && links.get(last).contains(start)) {
            points.add(points.get(0).clone());
        }
        return points.toArray(new double[0][]);
    }

    private void addCell(int i, int j, double level, Map<Integer, List<Integer>> links, List<Integer> edges) {
        double a = z[j][i] - level;
        double b = z[j][i + 1] - level;
        double c = z[j + 1][i + 1] - level;
        double d = z[j + 1][i] - level;
        if (Double.isNaN(a + b + c + d)) {
            return;
        }
        List<Integer> crossed = new ArrayList<>(4);
        addIf(crossed, a, b, across(i, j));
        addIf(crossed, b, c, upward(i + 1, j));
        addIf(crossed, c, d, across(i, j + 1));
        addIf(crossed, d, a, upward(i, j));
        if (crossed.size() == 4) {
            boolean withMiddle = (a > 0) == (a + b + c + d > 0);
            int first = withMiddle ? 1 : 3;
            link(links, edges, crossed.get(0), crossed.get(first));
            link(links, edges, crossed.get(2), crossed.get(4 - first));
        } else if (crossed.size() == 2) {
            link(links, edges, crossed.get(0), crossed.get(1));
        }
    }

    private static void addIf(List<Integer> crossed, double from, double to, int edge) {
        if ((from > 0) != (to > 0)) {
            crossed.add(edge);
        }
    }

    private static void link(Map<Integer, List<Integer>> links, List<Integer> edges, int one, int other) {
        for (int edge : new int[] {one, other}) {
            if (!links.containsKey(edge)) {
                links.put(edge, new ArrayList<>(2));
                edges.add(edge);
            }
        }
        links.get(one).add(other);
        links.get(other).add(one);
    }

    /** The edge from node (i, j) to (i + 1, j). */
    private int across(int i, int j) {
        return 2 * (j * x.length + i);
    }

    /** The edge from node (i, j) to (i, j + 1). */
    private int upward(int i, int j) {
        return 2 * (j * x.length + i) + 1;
    }

    private double[] crossing(int edge, double level) {
        int i = edge / 2 % x.length;
        int j = edge / 2 / x.length;
        boolean up = edge % 2 == 1;
        double from = z[j][i];
        double to = up ? z[j + 1][i] : z[j][i + 1];
        double w = (level - from) / (to - from);
        return up
                ? new double[] {x[i], y[j] + w * (y[j + 1] - y[j])}
                : new double[] {x[i] + w * (x[i + 1] - x[i]), y[j]};
    }
}
