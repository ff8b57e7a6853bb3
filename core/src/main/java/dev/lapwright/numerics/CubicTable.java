package dev.lapwright.numerics;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.function.DoubleUnaryOperator;

/**
 * Lookup table of a function at even steps, interpolated by cubic Hermite pieces with Catmull-Rom slopes (one-sided at the
 * ends; third-order accurate); constant beyond the ends. Evaluating allocates nothing.
 */
public final class CubicTable {
    private final double first;
    private final double inverseStep;
    private final int cells;
    private final double[] coefficients;

    /**
     * @param first first abscissa
     * @param last last abscissa
     * @param cells number of steps, at least 2
     */
    public CubicTable(double first, double last, int cells, DoubleUnaryOperator function) {
        Check.finite("first abscissa", first);
        if (!(Check.finite("last abscissa", last) > first) || cells < 2) {
            throw new InvalidValueException(
                    "table", "it has no extent", "give a last above the first and 2 or more cells");
        }
        this.first = first;
        this.cells = cells;
        double step = (last - first) / cells;
        inverseStep = 1 / step;
        double[] y = new double[cells + 1];
        for (int i = 0; i <= cells; i++) {
            y[i] = Check.finite("tabulated value", function.applyAsDouble(first + i * step));
        }
        double[] d = new double[cells + 1];
        for (int i = 1; i < cells; i++) {
            d[i] = 0.5 * (y[i + 1] - y[i - 1]);
        }
        d[0] = -1.5 * y[0] + 2 * y[1] - 0.5 * y[2];
        d[cells] = 1.5 * y[cells] - 2 * y[cells - 1] + 0.5 * y[cells - 2];
        coefficients = new double[4 * cells];
        for (int i = 0; i < cells; i++) {
            coefficients[4 * i] = y[i];
            coefficients[4 * i + 1] = d[i];
            coefficients[4 * i + 2] = 3 * (y[i + 1] - y[i]) - 2 * d[i] - d[i + 1];
            coefficients[4 * i + 3] = 2 * (y[i] - y[i + 1]) + d[i] + d[i + 1];
        }
    }

    /** Value at {@code at}. */
    public double value(double at) {
        double t = (at - first) * inverseStep;
        int i = (int) t;
        if (!(t > 0)) {
            i = 0;
            t = 0;
        } else if (i >= cells) {
            i = cells - 1;
            t = cells;
        }
        t -= i;
        int k = 4 * i;
        return coefficients[k] + t * (coefficients[k + 1] + t * (coefficients[k + 2] + t * coefficients[k + 3]));
    }
}
