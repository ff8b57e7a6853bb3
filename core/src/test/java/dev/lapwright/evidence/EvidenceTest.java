package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;

class EvidenceTest {
    private static EvidenceResult.Comparison compare(TimingLog log, Evidence how) {
        return how.run(log).comparison().orElseThrow();
    }

    private static EvidenceResult.Comparison compare(TimingLog log) {
        return compare(log, Evidence.DEFAULT);
    }

    @Test
    void aLargeGainIsReal() {
        EvidenceResult.Comparison comparison = compare(
                new Logs(1).run("A", 10, 90, 0, 0.1).run("B", 10, 89.5, 0, 0.1).log());
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.REAL);
        assertThat(comparison.tests().orElseThrow().welch().high()).isNegative();
    }

    @Test
    void aTrendWithinRunsIsNotTakenForAGain() {
        // Both alike, but the second run stopped earlier in the burning of its fuel, 0.1 s a lap.
        TimingLog log = new Logs(2)
                .run("A", 16, 90, -0.1, 0.02)
                .run("B", 6, 90, -0.1, 0.02)
                .log();
        EvidenceResult.Tests tests = compare(log).tests().orElseThrow();
        // Standard error of about 0.02 / sqrt(6), four of them.
        assertThat(tests.welch().difference()).isCloseTo(0, within(0.04));
        assertThat(tests.byTrend().get(Trend.Kind.NONE).difference()).isGreaterThan(0.4);
    }

    @Test
    void aTrendThroughTheSessionCanBeTakenOutInstead() {
        // Driver and road gain 0.02 s a lap on, setups are alike, and the runs follow each other as A, B, A.
        TimingLog log = new Logs(5)
                .run("A", 8, 90, -0.02, 0.02)
                .run("B", 8, 90 - 0.18, -0.02, 0.02)
                .run("A", 8, 90 - 0.36, -0.02, 0.02)
                .run("B", 8, 90 - 0.54, -0.02, 0.02)
                .log();
        MeanDifference welch = compare(log, Evidence.DEFAULT.trend(Trend.Kind.SESSION))
                .tests()
                .orElseThrow()
                .welch();
        // Four standard errors of 0.02 * sqrt(2 / 16).
        assertThat(welch.difference()).isCloseTo(0, within(0.03));
    }

    @Test
    void oneRunOfEachWithASessionTrendIsFarLessSure() {
        // The slope must be carried from one run to the other: the interval says so.
        TimingLog log =
                new Logs(4).run("A", 8, 90, 0, 0.1).run("B", 8, 90, 0, 0.1).log();
        EvidenceResult.Tests tests = compare(log).tests().orElseThrow();
        assertThat(tests.byTrend().get(Trend.Kind.SESSION).error())
                .isGreaterThan(1.5 * tests.byTrend().get(Trend.Kind.RUN).error());
    }

    @Test
    void setupsThatAreAlikeAreCalledDifferentAsOftenAsSaid() {
        // By definition 5 % of logs; of 2000 that number has a standard deviation of 0.5 %, four of them. Welch's test
        // is
        // close to its level at these sizes (Welch 1947), the trend's own uncertainty is in the interval, and the few
        // slow laps
        // of a normal distribution that the clean rule drops add less than one percent.
        int[] called = new int[Trend.Kind.values().length];
        for (int k = 0; k < 2000; k++) {
            TimingLog log = new Logs(1000 + k)
                    .run("A", 10, 90, 0, 0.2)
                    .run("B", 10, 90, 0, 0.2)
                    .log();
            Comparer.differences(log, "A", "B")
                    .forEach((kind, difference) -> called[kind.ordinal()] += difference.isSignificant() ? 1 : 0);
        }
        for (Trend.Kind kind : Trend.Kind.values()) {
            assertThat(called[kind.ordinal()] / 2000.0).as(kind.label()).isCloseTo(0.05, within(0.02));
        }
    }

    @Test
    void lapsToRunAreThoseOfThePowerAnalysis() {
        // LapsToSee is held to R's power.t.test by its own test.
        EvidenceResult.Comparison comparison = compare(
                new Logs(6).run("A", 5, 90, 0, 0.3).run("B", 4, 90, 0, 0.3).log(), Evidence.DEFAULT.predicting(-0.2));
        EvidenceResult.Verdict verdict = comparison.verdict();
        assertThat(verdict.finding()).isEqualTo(EvidenceResult.Finding.TOO_FEW);
        assertThat(verdict.target()).isEqualTo(0.2);
        assertThat(verdict.needed()).isEqualTo(LapsToSee.perSetup(0.2, comparison.scatter()));
        assertThat(verdict.moreBefore()).isEqualTo(verdict.needed() - 5);
        assertThat(verdict.moreAfter()).isEqualTo(verdict.needed() - 4);
    }

    @Test
    void lapsThatWouldHaveShownThePredictionAndDoNotSaySo() {
        EvidenceResult.Comparison comparison = compare(
                new Logs(27).run("A", 20, 90, 0, 0.1).run("B", 20, 90, 0, 0.1).log(),
                Evidence.DEFAULT.predicting(-0.4));
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.NOT_SHOWN);
        assertThat(comparison.verdict().moreAfter()).isZero();
    }

    @Test
    void anOldSetupThatDoesNotComeBackTakesTheGainAway() {
        // Evenly faster from run to run: the new setup lies between its neighbours.
        EvidenceResult.Comparison comparison = compare(new Logs(8)
                .run("A", 8, 90, 0, 0.1)
                .run("B", 8, 89.5, 0, 0.1)
                .run("A", 8, 89, 0, 0.1)
                .log());
        assertThat(comparison.returned().orElseThrow().drifted()).isTrue();
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.DRIFTED);
        // The middle of the old runs; four standard errors of 0.1 * sqrt(1.5 / 8).
        assertThat(comparison.returned().orElseThrow().bracketed().difference()).isCloseTo(0, within(0.18));
    }

    @Test
    void anOldSetupThatComesBackConfirmsTheGain() {
        EvidenceResult.Comparison comparison = compare(new Logs(9)
                .run("A", 8, 90, 0, 0.1)
                .run("B", 8, 89.5, 0, 0.1)
                .run("A", 8, 90, 0, 0.1)
                .log());
        assertThat(comparison.returned().orElseThrow().cameBack()).isTrue();
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.REAL);
    }

    @Test
    void aReturnTooVagueToTellIsNotCalledOne() {
        // Two laps each with as much scatter as gain: an interval of many times that.
        EvidenceResult.ReturnCheck check = compare(new Logs(9)
                        .run("A", 2, 90, 0, 0.5)
                        .run("B", 4, 89.5, 0, 0.5)
                        .run("A", 2, 90, 0, 0.5)
                        .log())
                .returned()
                .orElseThrow();
        assertThat(check.drifted()).isFalse();
        assertThat(check.cameBack()).isFalse();
    }

    @Test
    void aGainBeyondBothRunsOfADriftingOldSetupIsReal() {
        EvidenceResult.Comparison comparison = compare(new Logs(10)
                .run("A", 8, 90, 0, 0.05)
                .run("B", 8, 89, 0, 0.05)
                .run("A", 8, 89.7, 0, 0.05)
                .log());
        assertThat(comparison.returned().orElseThrow().drifted()).isTrue();
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.REAL);
    }

    @Test
    void withoutAReturnThereIsNoCheckOfIt() {
        assertThat(compare(new Logs(1)
                                .run("A", 8, 90, 0, 0.1)
                                .run("B", 8, 89, 0, 0.1)
                                .log())
                        .returned())
                .isEmpty();
    }

    @Test
    void twoLapsOfEachAreTooFewToTest() {
        EvidenceResult.Comparison comparison = compare(
                new Logs(1).run("A", 2, 90, 0, 0.1).run("B", 2, 80, 0, 0.1).log());
        assertThat(comparison.tests()).isEmpty();
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.TOO_FEW);
    }

    @Test
    void oneSetupAloneHasItsPaceAndNoComparison() {
        EvidenceResult result =
                Evidence.DEFAULT.run(new Logs(1).run("A", 6, 90, 0, 0.1).log());
        assertThat(result.paces()).hasSize(1);
        assertThat(result.comparison()).isEmpty();
    }

    @Test
    void lapsThatAreAllEqualAreRefused() {
        assertThatThrownBy(() -> compare(
                        new Logs(1).run("A", 6, 90, 0, 0).run("B", 6, 89, 0, 0).log()))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("do not scatter");
    }

    @Test
    void twoSetupsThatDoNotScatterAreRefusedThoughAThirdDoes() {
        TimingLog log = new Logs(1)
                .run("A", 6, 90, 0, 0)
                .run("B", 6, 89, 0, 0)
                .run("C", 6, 89, 0, 0.2)
                .log();
        assertThatThrownBy(() -> compare(log, Evidence.DEFAULT.between("A", "B").trend(Trend.Kind.NONE)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("do not scatter");
    }

    @Test
    void ofThreeSetupsTwoMustBeNamed() {
        TimingLog log = new Logs(1)
                .run("A", 6, 90, 0, 0.1)
                .run("B", 6, 89, 0, 0.1)
                .run("C", 6, 88, 0, 0.1)
                .log();
        assertThatThrownBy(() -> compare(log))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("the log holds 3: A, B, C");
        EvidenceResult.Comparison named = compare(log, Evidence.DEFAULT.between("C", "B"));
        assertThat(named.before().setup()).isEqualTo("C");
        assertThat(named.after().setup()).isEqualTo("B");
    }

    @Test
    void aSetupThatNobodyDroveIsRefused() {
        TimingLog log =
                new Logs(1).run("A", 6, 90, 0, 0.1).run("B", 6, 89, 0, 0.1).log();
        assertThatThrownBy(() -> compare(log, Evidence.DEFAULT.between("A", "D")))
                .hasMessageContaining("no lap was driven with 'D'");
        assertThatThrownBy(() -> compare(log, Evidence.DEFAULT.between("B", "B")))
                .hasMessageContaining("both are B");
    }

    @Test
    void theOneNotNamedIsTheOther() {
        TimingLog log =
                new Logs(1).run("A", 6, 90, 0, 0.1).run("B", 6, 89, 0, 0.1).log();
        assertThat(compare(log, Evidence.DEFAULT.between("B", "")).after().setup())
                .isEqualTo("A");
        assertThat(compare(log, Evidence.DEFAULT.between("", "A")).before().setup())
                .isEqualTo("B");
    }

    @Test
    void aLogWithNoCleanLapIsRefused() {
        assertThatThrownBy(() -> Evidence.DEFAULT.run(Logs.of("A", 90)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("none is clean");
    }
}
