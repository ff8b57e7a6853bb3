package dev.lapwright.line;

/**
 * Minimum-curvature line: the offsets with the least Σ κ² over the line's length. Each iteration solves a quadratic
 * program in the offsets with the curvature linearised about the last line, until the line stands still (Gauss-Newton with
 * bounds).
 */
final class MinimumCurvature {
    private static final int MOST_ROUNDS = 60;
    /** A line that moves less than this stands still, m. */
    private static final double STILL = 1e-3;

    private static final double LEAST_STEP = 1e-3;

    private final RoadNodes road;

    MinimumCurvature(RoadNodes road) {
        this.road = road;
    }

    /** Offsets of the line found, m, starting from the middle of the room. */
    double[] offsets() {
        int n = road.count;
        double[] offsets = new double[n];
        for (int i = 0; i < n; i++) {
            offsets[i] = road.within(i, 0);
        }
        LineCurvature shape = new LineCurvature(road);
        shape.at(offsets);
        double energy = shape.energy();
        for (int round = 1; round <= MOST_ROUNDS; round++) {
            double[] move = shape.qp(offsets).minimise();
            double share = 1;
            double[] tried = moved(offsets, move, share);
            shape.at(tried);
            while (!(shape.energy() <= energy) && share > LEAST_STEP) {
                share /= 2;
                tried = moved(offsets, move, share);
                shape.at(tried);
            }
            if (!(shape.energy() <= energy)) {
                break;
            }
            double largest = 0;
            for (int i = 0; i < n; i++) {
                largest = Math.max(largest, Math.abs(tried[i] - offsets[i]));
            }
            offsets = tried;
            energy = shape.energy();
            if (largest < STILL) {
                break;
            }
        }
        return offsets;
    }

    private double[] moved(double[] offsets, double[] move, double share) {
        double[] moved = new double[offsets.length];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = road.within(i, offsets[i] + share * move[i]);
        }
        return moved;
    }
}
