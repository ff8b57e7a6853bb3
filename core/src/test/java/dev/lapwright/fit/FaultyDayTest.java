package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Conditions;
import java.util.List;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Intervals of 95 % hold the truth also where what the fit is told is wrong; {@link FaultTable} prints how often. */
class FaultyDayTest {
    /** What true intervals fall short of once in a thousand such tests. */
    private static int least(int days, double share) {
        return new BinomialDistribution(days, share).inverseCumulativeProbability(0.001);
    }

    private static void holds(FaultyDay.Fault fault, int days, double share) {
        FaultTable table = new FaultTable(fault).run(days);
        assertThat(table.failed()).as("searches that failed").isZero();
        for (FitParameter parameter : List.of(FitParameter.GRIP, FitParameter.DRAG_AREA, FitParameter.POWER)) {
            assertThat(table.told(parameter)).as("%s told", parameter).isEqualTo(days);
            assertThat(table.held(parameter))
                    .as("%s held the truth", parameter)
                    .isGreaterThanOrEqualTo(least(days, share));
        }
    }

    @Test
    @Tag("long")
    void intervalsHoldTheTruthWhereEverythingIsWrongAtOnce() {
        holds(FaultyDay.Fault.ALL, 6, 0.95);
    }

    @Test
    @Tag("heavy")
    void aSensorThatReadsAPercentOffIsFoundAndNotTakenForTheCar() {
        FitResult result = Fit.of(FaultyDay.given(), FaultyDay.track(), Conditions.STANDARD)
                .laps(FaultyDay.laps(FaultyDay.Fault.SPEED_SCALE, 1000))
                .run();
        FitResult.Nuisance scale = result.doubts().nuisances().stream()
                .filter(nuisance -> nuisance.nuisance() == FitNuisance.SPEED_SCALE)
                .findFirst()
                .orElseThrow();
        // The way's length is in doubt by 0.3 %: three of it.
        double truth = FaultyDay.of(FaultyDay.Fault.SPEED_SCALE, 1000).truth(FitNuisance.SPEED_SCALE);
        assertThat(Math.abs(scale.found() - truth)).isLessThan(0.9);
        assertThat(scale.told()).isTrue();
        assertThat(result.doubts().suspicions().get(0).cause()).isEqualTo(FitResult.Cause.SENSOR);
    }

    @Test
    @Tag("heavy")
    void aSensorThatComesLateIsFoundAndNotTakenForTheCar() {
        FitResult result = Fit.of(FaultyDay.given(), FaultyDay.track(), Conditions.STANDARD)
                .laps(FaultyDay.laps(FaultyDay.Fault.SENSOR_LAG, 1000))
                .run();
        FitResult.Nuisance lag = result.doubts().nuisances().stream()
                .filter(nuisance -> nuisance.nuisance() == FitNuisance.SENSOR_LAG)
                .findFirst()
                .orElseThrow();
        // It was simulated with 0.2 s; four standard errors are missed once in ten thousand times.
        assertThat(Math.abs(lag.found() - 0.2)).isLessThan(4 * lag.standardError());
        assertThat(lag.standardError()).isLessThan(0.05);
        assertThat(result.doubts().suspicions().get(0).cause()).isEqualTo(FitResult.Cause.SENSOR);
    }

    /** A line differs from corner to corner, of which a lap holds twelve: there nine in ten is what is claimed. */
    @ParameterizedTest
    @EnumSource(FaultyDay.Fault.class)
    @Tag("long")
    void intervalsHoldTheTruthOnTwoHundredDaysOfEachFault(FaultyDay.Fault fault) {
        holds(fault, 200, fault == FaultyDay.Fault.LINE || fault == FaultyDay.Fault.ALL ? 0.9 : 0.95);
    }
}
