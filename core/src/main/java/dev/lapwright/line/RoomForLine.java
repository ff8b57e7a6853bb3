package dev.lapwright.line;

import dev.lapwright.numerics.BandedQpSolver;

/**
 * Move of a line into the room that a road leaves a car, with as little change of its shape as that takes: the moves δ of the nodes
 * with the least ½ Σ (δ″² + δ²/ℓ⁴) h such that no node lies beyond its bounds. That is an elastic beam on an elastic
 * bed of the characteristic length ℓ, pushed aside by obstacles (S. Timoshenko, <i>Strength of Materials</i>, part II, beams on elastic
 * foundation; cited from memory): it leaves them with a continuous curvature, and is back where it was some ℓ farther.
 */
final class RoomForLine {
    /** Length over which a line comes back to where it was, m: about what a car takes to change its line. Our choice, no source. */
    private static final double LENGTH = 20;
    /** Offsets beyond a bound by less than this have been rounded, m. */
    private static final double ROUNDED = 1e-6;
    /** How near to the least the programme is solved; of the size of δ″² h for a move of 0.1 mm. */
    private static final double ACCURACY = 1e-12;
    /** What a bound gives way, m, so that there is room between the two of a node. */
    private static final double SLACK = 1e-9;

    private final RoadNodes road;

    RoomForLine(RoadNodes road) {
        this.road = road;
    }

    /** Offsets within the road that are as asked, but where that is not possible and near by. A new array. */
    double[] squeezed(double[] asked) {
        int n = asked.length;
        double[] squeezed = new double[n];
        double most = 0;
        for (int i = 0; i < n; i++) {
            squeezed[i] = road.within(i, asked[i]);
            most = Math.max(most, Math.abs(squeezed[i] - asked[i]));
        }
        if (most <= ROUNDED) {
            return squeezed;
        }
        double[] moves = moves(asked);
        for (int i = 0; i < n; i++) {
            squeezed[i] = road.within(i, asked[i] + moves[i]);
        }
        return squeezed;
    }

    private double[] moves(double[] asked) {
        int n = asked.length;
        double h = road.s[1] - road.s[0];
        BandedQpSolver programme = new BandedQpSolver(n, 3, ACCURACY);
        double bed = h / (LENGTH * LENGTH * LENGTH * LENGTH);
        double beam = 1 / (h * h * h);
        for (int i = 0; i < n; i++) {
            programme.within(i, road.lower[i] - asked[i] - SLACK, road.upper[i] - asked[i] + SLACK);
            programme.square(i, bed);
            if (road.closed || (i > 0 && i < n - 1)) {
                programme.square(i - 1, beam, 1, -2, 1);
            }
        }
        return programme.minimise();
    }
}
