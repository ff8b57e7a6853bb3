package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumSet;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Intervals of 95 % hold the truth in about 95 of 100 fits; {@link CoverageTable} counts many more. */
@Tag("long")
class CoverageTest {
    private static final int TRIALS = 60;

    /** White noise, and noise that keeps 1/e of itself over 30 m: a first-order autoregression along distance. */
    @ParameterizedTest(name = "noise over {0} m")
    @ValueSource(doubles = {0, 30})
    void intervalsHoldTheTruthAsOftenAsTheySay(double length) {
        EnumSet<FitParameter> both = EnumSet.of(FitParameter.GRIP, FitParameter.POWER);
        CoverageTable table = new CoverageTable(FitScene.car(), FitScene.shortCircuit(), 1, both);
        table.run(TRIALS, 0.3, length, 11);
        // What true 95 % intervals fall short of once in a thousand such tests.
        int least = new BinomialDistribution(TRIALS, 0.95).inverseCumulativeProbability(0.001);
        for (FitParameter parameter : both) {
            assertThat(table.trials(parameter)).as("%s told", parameter).isEqualTo(TRIALS);
            assertThat(table.held(parameter)).as("%s held the truth", parameter).isGreaterThanOrEqualTo(least);
            // Nor are they wide beyond reason: half as much again as the scatter would hold the truth always.
            assertThat(table.claimedOverScatter(parameter)).isLessThan(1.5);
        }
    }
}
