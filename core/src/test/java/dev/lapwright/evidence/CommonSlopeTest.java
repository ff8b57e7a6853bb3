package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.stat.regression.OLSMultipleLinearRegression;
import org.junit.jupiter.api.Test;

/** One slope for several groups against a general regression with a column for each group. */
class CommonSlopeTest {
    private static final int[] GROUP = {0, 0, 0, 0, 1, 1, 1, 2, 2, 2};
    private static final double[] X = {1, 2, 3, 5, 2, 3, 4, 1, 2, 6};
    private static final double[] Y = {0.3, 0.1, 0.25, -0.1, -0.4, -0.2, -0.55, 0.9, 1.0, 0.7};
    /** Rounding of some tens of products. */
    private static final double EXACT = 1e-12;

    private static CommonSlope fit() {
        CommonSlope fit = new CommonSlope(3);
        for (int i = 0; i < X.length; i++) {
            fit.add(GROUP[i], X[i], Y[i]);
        }
        return fit;
    }

    private static OLSMultipleLinearRegression regression() {
        double[][] columns = new double[X.length][4];
        for (int i = 0; i < X.length; i++) {
            columns[i][GROUP[i]] = 1;
            columns[i][3] = X[i];
        }
        OLSMultipleLinearRegression regression = new OLSMultipleLinearRegression();
        regression.setNoIntercept(true);
        regression.newSampleData(Y, columns);
        return regression;
    }

    @Test
    void theSlopeIsThatOfTheGeneralRegression() {
        assertThat(fit().slope()).isCloseTo(regression().estimateRegressionParameters()[3], within(EXACT));
    }

    @Test
    void soIsItsStandardError() {
        CommonSlope fit = fit();
        double error = Math.sqrt(fit.residual() / (X.length - 4) / fit.spreadOfX());
        assertThat(error).isCloseTo(regression().estimateRegressionParametersStandardErrors()[3], within(EXACT));
    }

    @Test
    void withoutLapsApartThereIsNoSlope() {
        CommonSlope fit = new CommonSlope(2);
        fit.add(0, 0.1, 5);
        fit.add(0, 0.1, 6);
        fit.add(1, 0.7, 9);
        assertThat(fit.hasSlope()).isFalse();
        assertThat(fit.slope()).isZero();
    }
}
