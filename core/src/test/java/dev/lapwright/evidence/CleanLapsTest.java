package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.StatUtils;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

class CleanLapsTest {
    private static final CleanLaps.Rule NO_WARM_UP = new CleanLaps.Rule(0, 3.5);

    private static List<CleanLaps.Status> judged(TimingLog log, CleanLaps.Rule rule) {
        CleanLaps laps = CleanLaps.of(log, rule);
        return IntStream.range(0, log.laps().size()).mapToObj(laps::status).toList();
    }

    @Test
    void theFirstLapOfARunDoesNotCountThoughNobodyFlaggedIt() {
        assertThat(judged(Logs.of("A", 90, 90.1, 90.2), CleanLaps.Rule.DEFAULT))
                .containsExactly(CleanLaps.Status.WARM_UP, CleanLaps.Status.CLEAN, CleanLaps.Status.CLEAN);
    }

    @Test
    void anOutLapIsTheFirstOfItsRunAndNoSecondOneIsLost() {
        assertThat(judged(new Logs(1).run("A", 3, 90, 0, 0.01).log(), CleanLaps.Rule.DEFAULT))
                .containsExactly(
                        CleanLaps.Status.OUT, CleanLaps.Status.CLEAN, CleanLaps.Status.CLEAN, CleanLaps.Status.CLEAN);
    }

    /** Median 90.3, MAD 0.2 by counting: deviations 0.3 0.2 0.1 0 0.2 0.4 9.7. The least room, 0.5 % of 90.3, is smaller. */
    private static CleanLaps oneMuchSlower() {
        return CleanLaps.of(Logs.of("A", 90.0, 90.1, 90.2, 90.3, 90.5, 90.7, 100), NO_WARM_UP);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile(value = "lap-spread.csv", quantities = "slow limit")
    void theSlowLimitIsThatOfTheModifiedZScore(CheckRow row) {
        row.verify(oneMuchSlower().slowLimit("A"));
    }

    @Test
    void aLapBeyondTheSlowLimitIsNotClean() {
        assertThat(oneMuchSlower().status(5)).isEqualTo(CleanLaps.Status.CLEAN);
        assertThat(oneMuchSlower().status(6)).isEqualTo(CleanLaps.Status.SLOW);
    }

    /**
     * NIST/SEMATECH e-Handbook 1.3.5.17.1, Grubbs' test: masses from an analysis of uranium isotopes, of which Grubbs' test
     * finds 245.57 alone to be an outlier (G = 2.4687 over a critical 2.0317, from memory). Read as laps, s.
     */
    @Test
    void theRuleLeavesOutWhatGrubbsTestDoes() {
        double[] data = {199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57};
        // The last digit given, which may be cut off as well as rounded.
        assertThat((245.57 - StatUtils.mean(data)) / Math.sqrt(StatUtils.variance(data)))
                .isCloseTo(2.4687, within(1e-4));
        CleanLaps laps = CleanLaps.of(Logs.of("A", data), NO_WARM_UP);
        assertThat(laps.clean()).containsExactly(0, 1, 2, 3, 4, 5, 6);
    }

    @Test
    void lapsNearlyAlikeKeepSomeRoom() {
        // MAD 0: the limit is 0.5 % above the median, which 90.4 does not reach.
        CleanLaps laps = CleanLaps.of(Logs.of("A", 90, 90, 90, 90, 90.4), NO_WARM_UP);
        assertThat(laps.status(4)).isEqualTo(CleanLaps.Status.CLEAN);
        assertThat(laps.slowLimit("A")).isCloseTo(90.45, within(1e-9));
    }

    @Test
    void aLapThatIsOddlyFastCountsAndIsTold() {
        CleanLaps laps = CleanLaps.of(Logs.of("A", 90.0, 90.1, 90.2, 90.3, 85), NO_WARM_UP);
        assertThat(laps.status(4)).isEqualTo(CleanLaps.Status.CLEAN);
        assertThat(laps.oddlyFast()).containsExactly(4);
    }

    @Test
    void eachSetupIsJudgedByItself() {
        TimingLog log =
                new Logs(3).run("A", 6, 90, 0, 0.1).run("B", 6, 95, 0, 0.1).log();
        assertThat(CleanLaps.of(log, CleanLaps.Rule.DEFAULT).count(CleanLaps.Status.SLOW))
                .isZero();
    }

    @Test
    void aSetupWithFlaggedLapsOnlyHasNoLimit() {
        TimingLog log =
                new Logs(3).run("A", 6, 90, 0, 0.1).run("B", 0, 95, 0, 0.1).log();
        assertThat(CleanLaps.of(log, CleanLaps.Rule.DEFAULT).slowLimit("B")).isNaN();
    }
}
