package dev.lapwright.line;

import dev.lapwright.numerics.BandedQpSolver;

/**
 * Discrete curvature of a line at its nodes, with its derivatives by the offsets: the curvature of the circle through each node
 * and its neighbours (K. Menger's: four times the area of the triangle over the product of its sides). Zero at an open end,
 * which has a neighbour on one side only.
 */
final class LineCurvature {
    private final RoadNodes road;
    private final int n;
    private final double[] px;
    private final double[] py;

    /** Curvature, 1/m, and its derivatives by the offsets of the node before, its own and that behind, 1/m². */
    final double[] curvature;

    final double[] byBefore;
    final double[] byOwn;
    final double[] byAfter;
    /** Distance from each node to the next, m, and its derivatives by the offsets of its ends. */
    final double[] chord;

    final double[] chordByStart;
    final double[] chordByEnd;

    LineCurvature(RoadNodes road) {
        this.road = road;
        n = road.count;
        px = new double[n];
        py = new double[n];
        curvature = new double[n];
        byBefore = new double[n];
        byOwn = new double[n];
        byAfter = new double[n];
        chord = new double[n];
        chordByStart = new double[n];
        chordByEnd = new double[n];
    }

    void at(double[] offsets) {
        for (int i = 0; i < n; i++) {
            px[i] = road.x[i] + offsets[i] * road.normalX[i];
            py[i] = road.y[i] + offsets[i] * road.normalY[i];
        }
        for (int i = 0; i < n; i++) {
            int b = (i + 1) % n;
            double ux = px[b] - px[i];
            double uy = py[b] - py[i];
            chord[i] = Math.hypot(ux, uy);
            chordByStart[i] = -(road.normalX[i] * ux + road.normalY[i] * uy) / chord[i];
            chordByEnd[i] = (road.normalX[b] * ux + road.normalY[b] * uy) / chord[i];
        }
        for (int i = road.closed ? 0 : 1; i < (road.closed ? n : n - 1); i++) {
            bend(i);
        }
    }

    private void bend(int i) {
        int p = (i + n - 1) % n;
        int q = (i + 1) % n;
        double ux = px[i] - px[p];
        double uy = py[i] - py[p];
        double vx = px[q] - px[i];
        double vy = py[q] - py[i];
        double wx = ux + vx;
        double wy = uy + vy;
        double c = Math.hypot(wx, wy);
        double product = chord[p] * chord[i] * c;
        double k = 2 * (ux * vy - uy * vx) / product;
        double cByBefore = -(road.normalX[p] * wx + road.normalY[p] * wy) / c;
        double cByAfter = (road.normalX[q] * wx + road.normalY[q] * wy) / c;
        curvature[i] = k;
        byBefore[i] = -2 * (road.normalX[p] * vy - road.normalY[p] * vx) / product
                - k * (chordByStart[p] / chord[p] + cByBefore / c);
        byOwn[i] = 2 * (road.normalX[i] * wy - road.normalY[i] * wx) / product
                - k * (chordByEnd[p] / chord[p] + chordByStart[i] / chord[i]);
        byAfter[i] = 2 * (ux * road.normalY[q] - uy * road.normalX[q]) / product
                - k * (chordByEnd[i] / chord[i] + cByAfter / c);
    }

    /** Length of the line that each node stands for, m. */
    double share(int i) {
        double before = road.closed || i > 0 ? chord[(i + n - 1) % n] : 0;
        double after = road.closed || i < n - 1 ? chord[i] : 0;
        return 0.5 * (before + after);
    }

    /** Sum of squared curvature times length over the whole line, Σ κ² h, 1/m. */
    double energy() {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += curvature[i] * curvature[i] * share(i);
        }
        return sum;
    }

    /** Gauss-Newton quadratic program of the curvature: ½ Σ (κ + δκ)² h over moves of the offsets within the road. */
    BandedQpSolver qp(double[] offsets) {
        BandedQpSolver qp = new BandedQpSolver(n, 3, 1e-10);
        for (int i = 0; i < n; i++) {
            double w = share(i);
            double r = w * curvature[i];
            qp.square(i - 1, w, byBefore[i], byOwn[i], byAfter[i]);
            qp.linear(i - 1, r * byBefore[i]);
            qp.linear(i, r * byOwn[i]);
            qp.linear(i + 1, r * byAfter[i]);
            qp.within(i, road.lower[i] - offsets[i], road.upper[i] - offsets[i]);
        }
        // Σ κ² h depends on the line's length too: half of each κ² goes with the lengths of the chords beside it.
        for (int i = 0; i < (road.closed ? n : n - 1); i++) {
            int q = (i + 1) % n;
            double mean = 0.25 * (curvature[i] * curvature[i] + curvature[q] * curvature[q]);
            qp.linear(i, mean * chordByStart[i]);
            qp.linear(q, mean * chordByEnd[i]);
        }
        return qp;
    }
}
