package dev.lapwright.numerics;

/**
 * Knots of a cubic smoothing spline, with its matrices Q and R: P. J. Green and B. W. Silverman, <i>Nonparametric
 * Regression and Generalized Linear Models</i>, 1994, chapter 2 (cited from memory), for open runs with natural ends, and the
 * same with indices that wrap round for closed ones.
 *
 * <p>The fitted values g minimise Σ(yᵢ − gᵢ)² + α∫g″², that is (R + α QᵀQ) γ = Qᵀy and g = y − α Q γ, where γ are the second
 * derivatives at the knots.
 */
public final class SplineKnots {
    private final double[] t;
    private final double[] step;
    private final boolean closed;
    private final int unknowns;
    private final double[] r0;
    private final double[] r1;
    private final double[] s0;
    private final double[] s1;
    private final double[] s2;

    /**
     * @param t places in strictly rising order from 0, m
     * @param period place at which the first knot comes round again, m; NaN for an open run
     */
    public SplineKnots(double[] t, double period) {
        this.t = t.clone();
        closed = !Double.isNaN(period);
        int n = t.length;
        step = new double[closed ? n : n - 1];
        for (int i = 0; i < step.length; i++) {
            step[i] = (i + 1 < n ? t[i + 1] : period) - t[i];
            if (!(step[i] > 0)) {
                throw new IllegalArgumentException("knot " + (i + 1) + " does not lie behind the one before it");
            }
        }
        unknowns = closed ? n : n - 2;
        r0 = new double[unknowns];
        r1 = new double[unknowns];
        s0 = new double[unknowns];
        s1 = new double[unknowns];
        s2 = new double[unknowns];
        for (int j = 0; j < unknowns; j++) {
            double a = before(j);
            double b = after(j);
            double c = b;
            r0[j] = (a + b) / 3;
            s0[j] = 1 / (a * a) + (1 / a + 1 / b) * (1 / a + 1 / b) + 1 / (b * b);
            if (closed || j + 1 < unknowns) {
                double d = after((j + 1) % unknowns);
                r1[j] = b / 6;
                s1[j] = -(1 / a + 1 / b) / b - (1 / c + 1 / d) / b;
            }
            if (closed || j + 2 < unknowns) {
                s2[j] = 1 / (b * after((j + 1) % unknowns));
            }
        }
    }

    /** The step before the knot of an unknown. */
    private double before(int unknown) {
        return closed ? step[(unknown + step.length - 1) % step.length] : step[unknown];
    }

    /** The step behind the knot of an unknown. */
    private double after(int unknown) {
        return closed ? step[unknown] : step[unknown + 1];
    }

    /** Number of knots. */
    public int count() {
        return t.length;
    }

    /** Whether the first knot follows the last. */
    public boolean isClosed() {
        return closed;
    }

    /** Place of a knot, m. */
    public double place(int knot) {
        return t[knot];
    }

    /** Length of an interval, m. */
    public double step(int interval) {
        return step[interval];
    }

    /** Number of intervals: as many as knots on a closed curve, one fewer on an open one. */
    public int intervals() {
        return step.length;
    }

    /** Distance from the first knot to the last, or once round, m. */
    public double span() {
        return t[t.length - 1] + (closed ? step[step.length - 1] : 0);
    }

    /** Mean length of an interval, m. */
    public double meanStep() {
        return span() / step.length;
    }

    /**
     * Strength α (m³) at which waves of this length (m) lose half their height where knots are evenly spaced: there the
     * spline passes waves of angular frequency ω by 1 / (1 + α h ω⁴), h being the step (B. W. Silverman, Annals of
     * Statistics 12, 1984; cited from memory).
     */
    public double strengthOf(double wavelength) {
        double omega = 2 * Math.PI / wavelength;
        return wavelength == 0 ? 0 : 1 / (meanStep() * omega * omega * omega * omega);
    }

    /** Smoother of one strength α (m³), its equations factored. */
    public Fit fit(double strength) {
        return new Fit(strength);
    }

    /** Linear smoother with one strength. */
    public final class Fit {
        private final double strength;
        private final CyclicPentadiagonal matrix;

        private Fit(double strength) {
            this.strength = strength;
            double[] d = new double[unknowns];
            double[] e = new double[unknowns];
            double[] f = new double[unknowns];
            for (int j = 0; j < unknowns; j++) {
                d[j] = r0[j] + strength * s0[j];
                e[j] = r1[j] + strength * s1[j];
                f[j] = strength * s2[j];
            }
            matrix = new CyclicPentadiagonal(d, e, f);
        }

        /** Smoothing spline of these values, one for each knot. */
        public CubicSpline spline(double[] values) {
            int n = t.length;
            double[] right = new double[unknowns];
            for (int j = 0; j < unknowns; j++) {
                int at = closed ? j : j + 1;
                double forward = (values[(at + 1) % n] - values[at]) / after(j);
                double backward = (values[at] - values[(at + n - 1) % n]) / before(j);
                right[j] = forward - backward;
            }
            double[] solved = matrix.solve(right);
            double[] gamma = new double[n];
            System.arraycopy(solved, 0, gamma, closed ? 0 : 1, unknowns);
            double[] smooth = values.clone();
            for (int i = 0; i < step.length; i++) {
                // Each row of Q takes the differences of γ on either side.
                double flow = strength * (gamma[(i + 1) % n] - gamma[i]) / step[i];
                smooth[i] -= flow;
                smooth[(i + 1) % n] += flow;
            }
            return new CubicSpline(SplineKnots.this, smooth, gamma);
        }

        /** Effective degrees of freedom: the trace of the matrix that turns values into smoothed ones. */
        public double freedom() {
            return t.length - strength * matrix.traceOfInverseTimes(s0, s1, s2);
        }
    }
}
