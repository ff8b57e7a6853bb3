package dev.lapwright.lap;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Platform;

/**
 * The three areas over dynamic pressure, platform settled: cubics with continuous slope on even steps, interleaved so that
 * one look-up finds all three.
 */
final class AeroTable {
    static final int CELLS = 96;

    final double inverseStep;
    final double[] coefficients;

    AeroTable(Platform platform, double maxDynamicPressure) {
        double step = maxDynamicPressure / CELLS;
        inverseStep = 1 / step;
        double[][] y = new double[3][CELLS + 1];
        Platform.State state = null;
        for (int i = 0; i <= CELLS; i++) {
            state = platform.at(i * step, state);
            Areas areas = state.areas();
            y[0][i] = areas.drag();
            y[1][i] = areas.liftFront();
            y[2][i] = areas.liftRear();
        }
        coefficients = new double[12 * CELLS];
        for (int column = 0; column < 3; column++) {
            double[] d = slopes(y[column]);
            for (int i = 0; i < CELLS; i++) {
                double y0 = y[column][i];
                double y1 = y[column][i + 1];
                int k = 12 * i + 4 * column;
                coefficients[k] = y0;
                coefficients[k + 1] = d[i];
                coefficients[k + 2] = 3 * (y1 - y0) - 2 * d[i] - d[i + 1];
                coefficients[k + 3] = 2 * (y0 - y1) + d[i] + d[i + 1];
            }
        }
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
}
