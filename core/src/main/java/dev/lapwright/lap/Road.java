package dev.lapwright.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.track.Stations;

/**
 * A track as the kernel reads it: for each station and each middle of a cell one row of numbers, in one array. Row 2i is
 * station i, row 2i + 1 the middle of the cell after it.
 */
final class Road {
    /** Numbers in a row. */
    static final int STRIDE = 8;
    /** Lateral acceleration per v²: κ cos φ, 1/m. */
    static final int LATERAL_CURVATURE = 0;
    /** Gravity across the road: g sin φ cos θ, m/s². */
    static final int LATERAL_GRAVITY = 1;
    /** Gravity into the road: g cos θ cos φ, m/s². */
    static final int NORMAL_GRAVITY = 2;
    /** Acceleration into the road per v²: κ sin φ + κv, 1/m. */
    static final int NORMAL_CURVATURE = 3;
    /** Gravity against the direction of travel: g sin θ, m/s². */
    static final int CLIMB = 4;
    /** Grip factor. */
    static final int GRIP = 5;
    /** Head wind, m/s. */
    static final int HEAD_WIND = 6;
    /** Speed limit by rule, m/s. */
    static final int RULE = 7;

    final Stations stations;
    final boolean closed;
    final int cells;
    final double[] s;
    final double[] length;
    final double[] rows;

    Road(Stations stations, Wind wind) {
        this(stations, wind, RoadDerivatives.Column.GRIP, 0);
    }

    /** That with one column more by this at every station, its stations as they lie. */
    Road(Stations stations, Wind wind, RoadDerivatives.Column column, double more) {
        this.stations = stations;
        closed = stations.track().isClosed();
        s = stations.s();
        cells = s.length - 1;
        length = new double[cells];
        rows = new double[STRIDE * (2 * cells + 1)];
        double[] curvature = stations.curvature();
        double[] slope = stations.slope();
        double[] bank = stations.bank();
        double[] vertical = stations.verticalCurvature();
        double[] grip = stations.grip();
        double[] heading = stations.heading();
        double[] rule = stations.speedLimit();
        double[] changed = switch (column) {
            case CURVATURE -> curvature;
            case SLOPE -> slope;
            case BANK -> bank;
            case VERTICAL_CURVATURE -> vertical;
            case GRIP -> grip;
        };
        for (int i = 0; i < changed.length; i++) {
            changed[i] += more;
        }
        for (int i = 0; i <= cells; i++) {
            row(2 * i, curvature[i], slope[i], bank[i], vertical[i], grip[i], heading[i], rule[i], wind);
            if (i < cells) {
                int j = i + 1;
                length[i] = s[j] - s[i];
                double turned = length[i] * (3 * curvature[i] + curvature[j]) / 8;
                row(
                        2 * i + 1,
                        mean(curvature, i),
                        mean(slope, i),
                        mean(bank, i),
                        mean(vertical, i),
                        mean(grip, i),
                        heading[i] + turned,
                        Math.min(rule[i], rule[j]),
                        wind);
            }
        }
    }

    /** Changes the path's curvature in one row by this much, 1/m. */
    void bend(int row, double change) {
        int k = STRIDE * row;
        double across = rows[k + LATERAL_GRAVITY];
        double into = rows[k + NORMAL_GRAVITY];
        double whole = Math.hypot(across, into);
        rows[k + LATERAL_CURVATURE] += change * into / whole;
        rows[k + NORMAL_CURVATURE] += change * across / whole;
    }

    private static double mean(double[] column, int i) {
        return 0.5 * (column[i] + column[i + 1]);
    }

    private void row(
            int index,
            double curvature,
            double slope,
            double bank,
            double vertical,
            double grip,
            double heading,
            double rule,
            Wind wind) {
        int k = STRIDE * index;
        rows[k + LATERAL_CURVATURE] = curvature * Math.cos(bank);
        rows[k + LATERAL_GRAVITY] = StandardAtmosphere.GRAVITY * Math.sin(bank) * Math.cos(slope);
        rows[k + NORMAL_GRAVITY] = StandardAtmosphere.GRAVITY * Math.cos(slope) * Math.cos(bank);
        rows[k + NORMAL_CURVATURE] = curvature * Math.sin(bank) + vertical;
        rows[k + CLIMB] = StandardAtmosphere.GRAVITY * Math.sin(slope);
        rows[k + GRIP] = grip;
        rows[k + HEAD_WIND] = wind.headWind(heading);
        rows[k + RULE] = rule;
    }
}
