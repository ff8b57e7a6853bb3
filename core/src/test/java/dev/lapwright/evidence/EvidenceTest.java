package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class EvidenceTest {
    private static EvidenceResult.Comparison compare(TimingLog log, Evidence how) {
        return how.run(log).comparison().orElseThrow();
    }

    private static EvidenceResult.Comparison compare(TimingLog log) {
        return compare(log, Evidence.DEFAULT);
    }

    private static TimingLog byTurns(long seed, int pairs, int laps, double gain, double scatter) {
        Logs logs = new Logs(seed);
        for (int i = 0; i < pairs; i++) {
            logs.run("A", laps, 90, 0, scatter).run("B", laps, 90 + gain, 0, scatter);
        }
        return logs.log();
    }

    @Test
    void aLargeGainByTurnsIsReal() {
        EvidenceResult.Comparison comparison = compare(byTurns(1, 3, 8, -1.2, 0.1));
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.REAL);
        assertThat(comparison.difference().orElseThrow().once().holds(-1.2)).isTrue();
    }

    @Test
    void oneRunOfEachCannotTellASetupFromWhatElseChanged() {
        // 0.3 s is plain to see in the laps, and no more than runs differ by.
        EvidenceResult result = Evidence.DEFAULT.run(byTurns(2, 1, 12, -0.3, 0.05));
        assertThat(result.comparison().orElseThrow().verdict().finding()).isEqualTo(EvidenceResult.Finding.OPEN);
        assertThat(result.plan()).isPresent();
    }

    @Test
    void aFewRunsSayHowMuchTheAnswerLeansOnThePrior() {
        Map<EvidenceResult.Assumption, EvidenceResult.Difference> few =
                compare(byTurns(3, 1, 8, -0.3, 0.1)).differences();
        assertThat(few.get(EvidenceResult.Assumption.RUNS_TWICE).once().half())
                .isGreaterThan(1.3
                        * few.get(EvidenceResult.Assumption.RUNS_HALF).once().half());
        assertThat(compare(byTurns(3, 2, 8, -0.3, 0.1)).differences())
                .doesNotContainKey(EvidenceResult.Assumption.RUNS_TWICE);
    }

    @Test
    void aChangeWithinRunsIsNotTakenForAGain() {
        // Both alike, but B's runs stopped earlier in the burning of its fuel, 0.1 s a lap.
        TimingLog log = new Logs(2)
                .run("A", 16, 90, -0.1, 0.02)
                .run("B", 6, 90, -0.1, 0.02)
                .run("A", 16, 90, -0.1, 0.02)
                .run("B", 6, 90, -0.1, 0.02)
                .log();
        EvidenceResult result = Evidence.DEFAULT.run(log);
        // Of the same sign and size: a drift through the session may have taken a part of it, as wide as its interval.
        assertThat(result.course().lapSlope().low()).isLessThan(-0.1);
        assertThat(result.course().lapSlope().high()).isGreaterThan(-0.1);
        assertThat(result.comparison()
                        .orElseThrow()
                        .difference()
                        .orElseThrow()
                        .once()
                        .holds(0))
                .isTrue();
    }

    @Test
    void anEvenDriftIsNotTakenForAGain() {
        // 0.05 s a lap for 36 laps, nothing else: noise of 1 ms so that the drift alone could be seen.
        TimingLog log = new Logs(5)
                .run("A", 8, 90, 0.05, 0.001)
                .run("B", 8, 90.45, 0.05, 0.001)
                .run("A", 8, 90.9, 0.05, 0.001)
                .run("B", 8, 91.35, 0.05, 0.001)
                .log();
        EvidenceResult.Difference difference = compare(log).difference().orElseThrow();
        // Priors pull the drift in by a few hundredths of a second.
        assertThat(difference.mean()).isCloseTo(0, within(0.15));
        assertThat(difference.once().holds(0)).isTrue();
    }

    @Test
    void aDifferenceThatAnotherAssumptionDoesNotShareIsNotReal() {
        Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences =
                new EnumMap<>(EvidenceResult.Assumption.class);
        differences.put(EvidenceResult.Assumption.DAY, difference(-0.5, 0.1, 0.2));
        assertThat(Comparer.verdict(differences, 0.1).finding()).isEqualTo(EvidenceResult.Finding.REAL);
        differences.put(EvidenceResult.Assumption.NO_DRIFT, difference(-0.1, 0.2, 0.3));
        EvidenceResult.Verdict verdict = Comparer.verdict(differences, 0.1);
        assertThat(verdict.finding()).isEqualTo(EvidenceResult.Finding.OPEN);
        assertThat(verdict.dissent()).containsExactly(EvidenceResult.Assumption.NO_DRIFT);
    }

    @Test
    void aChangeAsLargeAsLookedForCanBeRuledOut() {
        Map<EvidenceResult.Assumption, EvidenceResult.Difference> differences =
                new EnumMap<>(EvidenceResult.Assumption.class);
        differences.put(EvidenceResult.Assumption.DAY, difference(-0.05, 0.1, 0.2));
        assertThat(Comparer.verdict(differences, 0.3).finding()).isEqualTo(EvidenceResult.Finding.SMALLER);
        assertThat(Comparer.verdict(differences, 0.2).finding()).isEqualTo(EvidenceResult.Finding.OPEN);
    }

    private static EvidenceResult.Difference difference(double mean, double once, double repeated) {
        return new EvidenceResult.Difference(
                mean,
                new NormalMixture.Interval(mean - once, mean + once),
                new NormalMixture.Interval(mean - repeated, mean + repeated),
                0.5);
    }

    @Test
    void oneLookIsStricterThanFiveInPercent() {
        // Sidak: five independent looks at 1.0206 % each make 5 %.
        assertThat(Evidence.DEFAULT.share()).isCloseTo(0.010206, within(1e-6));
        EvidenceResult.Difference difference =
                compare(byTurns(4, 2, 8, 0, 0.2)).difference().orElseThrow();
        assertThat(difference.repeated().half()).isGreaterThan(difference.once().half());
    }

    @Test
    void whatWasPredictedIsWeighedIn() {
        Evidence how = Evidence.DEFAULT.predicting(-0.3);
        EvidenceResult.Comparison comparison = compare(byTurns(6, 2, 8, -0.3, 0.2), how);
        assertThat(how.doubt()).isCloseTo(0.3 * Evidence.DOUBT, within(1e-12));
        assertThat(comparison.verdict().target()).isEqualTo(0.3);
        assertThat(comparison.together().orElseThrow().deviation()).isLessThan(how.doubt());
    }

    @Test
    void twoLapsOfEachAreTooFewToCompare() {
        EvidenceResult.Comparison comparison = compare(
                new Logs(1).run("A", 2, 90, 0, 0.1).run("B", 2, 80, 0, 0.1).log());
        assertThat(comparison.difference()).isEmpty();
        assertThat(comparison.verdict().finding()).isEqualTo(EvidenceResult.Finding.OPEN);
    }

    @Test
    void oneSetupAloneHasItsPaceAndNoComparison() {
        EvidenceResult result =
                Evidence.DEFAULT.run(new Logs(1).run("A", 6, 90, 0, 0.1).log());
        assertThat(result.paces()).hasSize(1);
        assertThat(result.comparison()).isEmpty();
        assertThat(result.plan()).isPresent();
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
        assertThatThrownBy(() -> compare(log, Evidence.DEFAULT.between("A", "B")))
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
