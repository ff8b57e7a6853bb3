package dev.lapwright.fit;

import org.apache.commons.math3.linear.RealMatrix;

/**
 * Standard errors from scores summed over clusters that are independent of each other, whatever goes on within them (a sandwich
 * clustered; Liang and Zeger, 1986; Cameron and Miller, 2015).
 *
 * @param errors one for each parameter; not copied
 * @param freedom degrees of freedom of their t: one less than the clusters
 */
record ClusteredErrors(double[] errors, double freedom) {
    /** From the sum of scores of each cluster. */
    static ClusteredErrors of(RealMatrix bread, double[][] scores) {
        double[] squares = new double[bread.getRowDimension()];
        for (double[] score : scores) {
            double[] moved = bread.operate(score);
            for (int j = 0; j < squares.length; j++) {
                squares[j] += moved[j] * moved[j];
            }
        }
        double clusters = scores.length;
        for (int j = 0; j < squares.length; j++) {
            squares[j] = Math.sqrt(squares[j] * clusters / (clusters - 1));
        }
        return new ClusteredErrors(squares, clusters - 1);
    }
}
