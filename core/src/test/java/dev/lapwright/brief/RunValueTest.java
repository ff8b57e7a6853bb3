package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.evidence.LapsToSee;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;

/** What a run is worth per lap. */
class RunValueTest {
    private static final double SCATTER = 0.3;
    private static final RunValue VALUE = new RunValue(SCATTER, 40);

    @Test
    void aGainThatIsKnownIsItselfOverTheLapsOfBothSetups() {
        int each = LapsToSee.perSetup(-0.4, SCATTER);
        // Double precision.
        assertThat(VALUE.perLap(-0.4, 0)).isCloseTo(0.4 / (2 * each), within(1e-12));
        assertThat(VALUE.perLap(0.4, 0)).isZero();
    }

    /** Played out: a difference drawn, laps drawn, Bayes' rule for two normal distributions, kept where the mean then is below nought. */
    @Test
    void itIsTheMeanGainOfWhoeverDrivesAndThenDecides() {
        double mean = 0.05;
        double deviation = 0.2;
        // More laps than there are would be needed: half of those there are with each.
        double error = SCATTER * Math.sqrt(2.0 / 20);
        RandomGenerator random = new Well19937c(3);
        int games = 200_000;
        double gain = 0;
        for (int i = 0; i < games; i++) {
            double truth = mean + deviation * random.nextGaussian();
            double seen = truth + error * random.nextGaussian();
            double weight = deviation * deviation / (deviation * deviation + error * error);
            gain += mean + weight * (seen - mean) < 0 ? -truth : 0;
        }
        // A standard deviation of 0.2 s over the root of the games: four of them.
        assertThat(VALUE.perLap(mean, deviation) * 40).isCloseTo(gain / games, within(4 * 0.2 / Math.sqrt(games)));
    }

    @Test
    void ofTwoGainsAsLikelyTheLargerIsWorthMore() {
        assertThat(VALUE.perLap(-0.3, 0.1)).isGreaterThan(VALUE.perLap(-0.2, 0.1));
    }

    /** Whoever may put it back loses nothing by doubt, and may win. */
    @Test
    void doubtMakesARunWorthMoreNeverLess() {
        assertThat(VALUE.perLap(-0.1, 0.3)).isGreaterThan(VALUE.perLap(-0.1, 0));
        assertThat(VALUE.perLap(0.1, 0.3)).isPositive();
    }
}
