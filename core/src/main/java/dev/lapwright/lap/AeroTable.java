package dev.lapwright.lap;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Platform;

/**
 * The three areas over dynamic pressure, platform settled: cubics with continuous slope on even steps, interleaved so that
 * one look-up finds all three. Where ride heights follow acceleration, second-order response surfaces over it stand beside them, one
 * at each of fewer steps of dynamic pressure: exact for a map that is linear in ride height.
 */
final class AeroTable {
    static final int CELLS = 96;
    static final int RESPONSE_CELLS = 24;
    /** Coefficients of a response: per n, n², x, x², n x with n the normal acceleration less g and x along the car, m/s². */
    static final int RESPONSES = 5;
    /** Accelerations at which the responses are found, m/s²: common in a race car, and not too large for any. */
    private static final double ALONG = 10;

    private static final double NORMAL = 4;

    final double inverseStep;
    final double[] coefficients;

    /** Whether ride heights follow acceleration. */
    final boolean follows;

    final double responseInverseStep;
    /** By cell, then area (drag, front, rear), then response, then power of the place in the cell. */
    final double[] responses;

    /**
     * @param frontPitch load that the front springs gain for each m/s² along the car, N; and so on
     */
    AeroTable(
            Platform platform,
            double maxDynamicPressure,
            double frontPitch,
            double rearPitch,
            double frontHeave,
            double rearHeave) {
        double step = maxDynamicPressure / CELLS;
        inverseStep = 1 / step;
        double[][] y = new double[3][CELLS + 1];
        Platform.State[] settled = new Platform.State[CELLS + 1];
        Platform.State state = null;
        for (int i = 0; i <= CELLS; i++) {
            state = platform.at(i * step, state);
            settled[i] = state;
            write(state.areas(), y, 0, i);
        }
        coefficients = cubics(y, CELLS);
        follows = frontPitch != 0 || rearPitch != 0 || frontHeave != 0 || rearHeave != 0;
        responseInverseStep = inverseStep * RESPONSE_CELLS / CELLS;
        if (!follows) {
            responses = new double[0];
            return;
        }
        double[][] d = new double[3 * RESPONSES][RESPONSE_CELLS + 1];
        double[][] areas = new double[3][7];
        for (int i = 0; i <= RESPONSE_CELLS; i++) {
            int node = i * CELLS / RESPONSE_CELLS;
            for (int k = 0; k < 7; k++) {
                double n = NORMAL * HEAVED[k];
                double x = ALONG * PITCHED[k];
                Platform.State moved = platform.at(
                        node * step, frontPitch * x + frontHeave * n, rearPitch * x + rearHeave * n, settled[node]);
                write(moved.areas(), areas, 0, k);
            }
            for (int area = 0; area < 3; area++) {
                double[] a = areas[area];
                int row = RESPONSES * area;
                d[row][i] = (a[1] - a[2]) / (2 * NORMAL);
                d[row + 1][i] = (a[1] + a[2] - 2 * a[0]) / (2 * NORMAL * NORMAL);
                d[row + 2][i] = (a[3] - a[4]) / (2 * ALONG);
                d[row + 3][i] = (a[3] + a[4] - 2 * a[0]) / (2 * ALONG * ALONG);
                // Both corners together: their odd parts cancel, the squares are known.
                d[row + 4][i] = (a[5] + a[6] - a[1] - a[2] - a[3] - a[4] + 2 * a[0]) / (2 * NORMAL * ALONG);
            }
        }
        responses = cubics(d, RESPONSE_CELLS);
    }

    private static final int[] HEAVED = {0, 1, -1, 0, 0, 1, -1};
    private static final int[] PITCHED = {0, 0, 0, 1, -1, 1, -1};

    private static void write(Areas areas, double[][] y, int first, int i) {
        y[first][i] = areas.drag();
        y[first + 1][i] = areas.liftFront();
        y[first + 2][i] = areas.liftRear();
    }

    private static double[] cubics(double[][] y, int cells) {
        int columns = y.length;
        double[] c = new double[4 * columns * cells];
        for (int column = 0; column < columns; column++) {
            double[] d = slopes(y[column]);
            for (int i = 0; i < cells; i++) {
                double y0 = y[column][i];
                double y1 = y[column][i + 1];
                int k = 4 * (columns * i + column);
                c[k] = y0;
                c[k + 1] = d[i];
                c[k + 2] = 3 * (y1 - y0) - 2 * d[i] - d[i + 1];
                c[k + 3] = 2 * (y0 - y1) + d[i] + d[i + 1];
            }
        }
        return c;
    }

    private static double[] slopes(double[] y) {
        int n = y.length;
        double[] d = new double[n];
        for (int i = 1; i < n - 1; i++) {
            d[i] = 0.5 * (y[i + 1] - y[i - 1]);
        }
        d[0] = -1.5 * y[0] + 2 * y[1] - 0.5 * y[2];
        d[n - 1] = 1.5 * y[n - 1] - 2 * y[n - 2] + 0.5 * y[n - 3];
        return d;
    }

    /** Value of a response of an area at a place in a cell, 0 to 1. */
    double response(int cell, int area, int response, double t) {
        int k = 4 * (3 * RESPONSES * cell + RESPONSES * area + response);
        return responses[k] + t * (responses[k + 1] + t * (responses[k + 2] + t * responses[k + 3]));
    }
}
