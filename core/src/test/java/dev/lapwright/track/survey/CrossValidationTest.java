package dev.lapwright.track.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.numerics.CubicSpline;
import dev.lapwright.numerics.SplineKnots;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CrossValidationTest {
    private static final int COUNT = 500;
    private static final double STEP = 2;
    private static final double NOISE = 0.3;

    private final double[] truth = new double[COUNT];
    private final double[] measured = new double[COUNT];

    private SplineKnots wave(long seed) {
        Random random = new Random(seed);
        double[] t = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            t[i] = i * STEP;
            double phase = 2 * Math.PI * i / COUNT;
            truth[i] = 20 * Math.sin(3 * phase) + 5 * Math.cos(7 * phase);
            measured[i] = truth[i] + NOISE * random.nextGaussian();
        }
        return new SplineKnots(t, COUNT * STEP);
    }

    private double error(CubicSpline spline) {
        double sum = 0;
        for (int i = 0; i < COUNT; i++) {
            sum += Math.pow(spline.valueAtKnot(i) - truth[i], 2);
        }
        return Math.sqrt(sum / COUNT);
    }

    /** Craven and Wahba 1979 prove that the ratio tends to 1; at 500 points they print values up to about 1.4 (from memory). */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void chosenStrengthIsNearlyTheBestThatTheTruthWouldChoose(long seed) {
        SplineKnots knots = wave(seed);
        double best = Double.POSITIVE_INFINITY;
        for (double wave = 4; wave < 500; wave *= 1.05) {
            best = Math.min(
                    best,
                    error(CrossValidation.byHand(knots, wave, measured)
                            .splines()
                            .get(0)));
        }
        assertThat(error(CrossValidation.best(knots, measured).splines().get(0)))
                .isLessThan(1.4 * best);
    }

    /** The standard error of a deviation from 500 numbers is 1/sqrt(1000) = 3.2 %; four of them. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void noiseIsFoundFromTheDataAlone(long seed) {
        SplineKnots knots = wave(seed);
        assertThat(CrossValidation.best(knots, measured).noise()).isCloseTo(NOISE, within(0.13 * NOISE));
    }

    /** Definition of the named wavelength; what the discrete step changes is of the order (h/wave)² = 4e-4. */
    @Test
    void aWaveOfTheNamedLengthLosesHalfItsHeight() {
        double[] t = new double[COUNT];
        double[] wave = new double[COUNT];
        for (int i = 0; i < COUNT; i++) {
            t[i] = i * STEP;
            wave[i] = Math.sin(2 * Math.PI * 10 * i / COUNT);
        }
        CubicSpline spline = CrossValidation.byHand(new SplineKnots(t, COUNT * STEP), COUNT * STEP / 10, wave)
                .splines()
                .get(0);
        int crest = COUNT / 40;
        assertThat(spline.valueAtKnot(crest) / wave[crest]).isCloseTo(0.5, within(1e-3));
    }

    /** With no smoothing there are as many free numbers as points; with very much only the mean is left. */
    @Test
    void freedomFallsFromAllPointsToTheMean() {
        SplineKnots knots = wave(1);
        assertThat(knots.fit(0).freedom()).isCloseTo(COUNT, within(1e-9));
        // Each pair of waves k keeps 2/(1 + (wave k/span)⁴); at 5000 m on 1000 m the first two keep 2/(1 + 625) in all.
        assertThat(knots.fit(knots.strengthOf(5000)).freedom()).isCloseTo(1 + 2.0 / 626, within(1e-3));
    }

    /** A natural smoothing spline leaves a straight line alone however strong it is (Green and Silverman, chapter 2). */
    @Test
    void openRunsKeepAStraightLine() {
        double[] t = {0, 1, 3, 4, 7, 9, 12, 13, 17, 20};
        double[] line = new double[t.length];
        for (int i = 0; i < t.length; i++) {
            line[i] = 3 - 0.25 * t[i];
        }
        SplineKnots knots = new SplineKnots(t, Double.NaN);
        CubicSpline spline = CrossValidation.byHand(knots, 100, line).splines().get(0);
        for (int i = 0; i < t.length; i++) {
            // Rounding, magnified by a condition number of about 1e5.
            assertThat(spline.valueAtKnot(i)).isCloseTo(line[i], within(1e-9));
        }
    }
}
