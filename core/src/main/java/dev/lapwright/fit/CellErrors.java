package dev.lapwright.fit;

import dev.lapwright.track.Corner;
import java.util.List;

/**
 * Errors of a finished fit by cell, the mean of the laps: how far corners are driven at another radius, or lie elsewhere, than the
 * fitted model has it.
 *
 * @param error logged less modelled speed, m/s; NaN where no lap counts
 * @param speed modelled, m/s
 * @param clusters the corner that each cell belongs to
 * @param length of the track, m
 */
record CellErrors(double[] error, double[] speed, int[] clusters, double length) {
    /** Sum of squared slopes, 1/s², below which a stretch has no place: speed is even. */
    private static final double FLAT = 1e-3;

    /** Root mean square over corners of the radius driven over the modelled one, less one: twice the speed's share. */
    double radiusScatter(List<Corner> corners) {
        double squares = 0;
        int n = 0;
        for (Corner corner : corners) {
            double sum = 0;
            double speeds = 0;
            for (int c = 0; c < error.length; c++) {
                double place = (c + 0.5) * length / error.length;
                boolean within = corner.entry() <= corner.exit()
                        ? place >= corner.entry() && place <= corner.exit()
                        : place >= corner.entry() || place <= corner.exit();
                if (within && !Double.isNaN(error[c])) {
                    sum += error[c];
                    speeds += speed[c];
                }
            }
            if (speeds > 0) {
                squares += 4 * (sum / speeds) * (sum / speeds);
                n++;
            }
        }
        return n == 0 ? 0 : Math.sqrt(squares / n);
    }

    /** Root mean square over corners of how much further on the laps have them, m: least squares on dv/ds. */
    double placeScatter() {
        int most = 0;
        for (int cluster : clusters) {
            most = Math.max(most, cluster);
        }
        double[] cross = new double[most + 1];
        double[] square = new double[most + 1];
        double cell = length / error.length;
        for (int c = 1; c + 1 < error.length; c++) {
            if (!Double.isNaN(error[c])) {
                double slope = (speed[c + 1] - speed[c - 1]) / (2 * cell);
                cross[clusters[c]] -= slope * error[c];
                square[clusters[c]] += slope * slope;
            }
        }
        double squares = 0;
        int n = 0;
        for (int i = 0; i <= most; i++) {
            if (square[i] > FLAT) {
                squares += cross[i] / square[i] * (cross[i] / square[i]);
                n++;
            }
        }
        return n == 0 ? 0 : Math.sqrt(squares / n);
    }
}
