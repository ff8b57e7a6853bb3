package dev.lapwright.numerics;

/**
 * L D Lᵀ factorisation of a symmetric positive definite pentadiagonal matrix, cyclic or not, in O(n). Indices wrap round
 * modulo the order n; the last two rows are kept as a dense border, so that nothing fills in.
 *
 * <p>The entries of its inverse within the bands follow from the factors alone: K. Takahashi, J. Fagan and M.-S. Chin,
 * "Formation of a sparse bus impedance matrix", 1973; for smoothing splines M. F. Hutchinson and F. R. de Hoog, Numerische
 * Mathematik 47, 1985 (cited from memory).
 */
public final class CyclicPentadiagonal {
    /** With fewer rows the bands would meet themselves round the corners. */
    public static final int LEAST_ORDER = 5;

    private final int n;
    private final int body;
    private final double[] pivot;
    private final double[] next;
    private final double[] second;
    private final double[] borderP;
    private final double[] borderQ;
    private final double pivotP;
    private final double pivotQ;
    private final double cornerQp;

    /**
     * @param diagonal entries (i, i), n of them
     * @param first entries (i, i + 1), indices modulo n
     * @param second entries (i, i + 2), indices modulo n
     */
    public CyclicPentadiagonal(double[] diagonal, double[] first, double[] second) {
        n = diagonal.length;
        if (n < LEAST_ORDER) {
            throw new IllegalArgumentException("order " + n + " is below " + LEAST_ORDER);
        }
        body = n - 2;
        // Two more places than the body has, which stay zero, spare all questions about its end.
        pivot = new double[n];
        next = new double[n];
        this.second = new double[n];
        borderP = new double[n];
        borderQ = new double[n];
        System.arraycopy(diagonal, 0, pivot, 0, body);
        System.arraycopy(first, 0, next, 0, body - 1);
        System.arraycopy(second, 0, this.second, 0, body - 2);
        borderP[body - 1] += first[body - 1];
        borderP[body - 2] += second[body - 2];
        borderP[0] += second[n - 2];
        borderQ[body - 1] += second[body - 1];
        borderQ[0] += first[n - 1];
        borderQ[1] += second[n - 1];
        double pp = diagonal[n - 2];
        double qq = diagonal[n - 1];
        double qp = first[n - 2];
        for (int j = 0; j < body; j++) {
            double e = next[j];
            double f = this.second[j];
            double p = borderP[j];
            double q = borderQ[j];
            double le = e / pivot[j];
            double lf = f / pivot[j];
            double lp = p / pivot[j];
            double lq = q / pivot[j];
            pivot[j + 1] -= le * e;
            next[j + 1] -= lf * e;
            pivot[j + 2] -= lf * f;
            borderP[j + 1] -= le * p;
            borderQ[j + 1] -= le * q;
            borderP[j + 2] -= lf * p;
            borderQ[j + 2] -= lf * q;
            pp -= lp * p;
            qp -= lq * p;
            qq -= lq * q;
            next[j] = le;
            this.second[j] = lf;
            borderP[j] = lp;
            borderQ[j] = lq;
        }
        pivotP = pp;
        cornerQp = qp / pp;
        pivotQ = qq - cornerQp * qp;
    }

    /** The solution for a right-hand side, which is left as it is. */
    public double[] solve(double[] right) {
        double[] x = right.clone();
        double p = x[n - 2];
        double q = x[n - 1];
        for (int j = 0; j < body; j++) {
            x[j + 1] -= next[j] * x[j];
            x[j + 2] -= second[j] * x[j];
            p -= borderP[j] * x[j];
            q -= borderQ[j] * x[j];
        }
        q -= cornerQp * p;
        q /= pivotQ;
        p = p / pivotP - cornerQp * q;
        x[n - 2] = p;
        x[n - 1] = q;
        for (int j = body - 1; j >= 0; j--) {
            x[j] = x[j] / pivot[j] - borderP[j] * p - borderQ[j] * q - next[j] * x[j + 1] - second[j] * x[j + 2];
        }
        return x;
    }

    /** The trace of this matrix's inverse times another matrix of the same form. */
    public double traceOfInverseTimes(double[] diagonal, double[] first, double[] second) {
        double qq = 1 / pivotQ;
        double qp = -cornerQp * qq;
        double pp = 1 / pivotP - cornerQp * qp;
        // Entries (j, j), (j+1, j), (j+2, j), (p, j), (q, j) of the inverse, from the last body row up.
        double[] z = new double[n];
        double[] z1 = new double[n];
        double[] z2 = new double[n];
        double[] zp = new double[n];
        double[] zq = new double[n];
        for (int j = body - 1; j >= 0; j--) {
            double l1 = next[j];
            double l2 = this.second[j];
            double lp = borderP[j];
            double lq = borderQ[j];
            z1[j] = -(l1 * z[j + 1] + l2 * z1[j + 1] + lp * zp[j + 1] + lq * zq[j + 1]);
            z2[j] = -(l1 * z1[j + 1] + l2 * z[j + 2] + lp * zp[j + 2] + lq * zq[j + 2]);
            zp[j] = -(l1 * zp[j + 1] + l2 * zp[j + 2] + lp * pp + lq * qp);
            zq[j] = -(l1 * zq[j + 1] + l2 * zq[j + 2] + lp * qp + lq * qq);
            z[j] = 1 / pivot[j] - (l1 * z1[j] + l2 * z2[j] + lp * zp[j] + lq * zq[j]);
        }
        double trace = diagonal[n - 2] * pp + diagonal[n - 1] * qq;
        double off = first[n - 2] * qp;
        for (int j = 0; j < body; j++) {
            trace += diagonal[j] * z[j];
            off += first[j] * (j + 1 < body ? z1[j] : zp[j]);
            off += second[j] * (j + 2 < body ? z2[j] : j == body - 2 ? zp[j] : zq[j]);
        }
        off += first[n - 1] * zq[0] + second[n - 2] * zp[0] + second[n - 1] * zq[1];
        return trace + 2 * off;
    }
}
