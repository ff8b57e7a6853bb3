package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TimingLogTest {
    private static TimingLog.Lap lap(int number, String setup, String run, TimingLog.Flag flag) {
        return new TimingLog.Lap(number, 90, setup, run, flag);
    }

    private static List<Integer> runs(TimingLog.Lap... laps) {
        TimingLog log = TimingLog.of(List.of(laps));
        return IntStream.range(0, laps.length).mapToObj(log::run).toList();
    }

    @Test
    void aNewRunBeginsWithAnotherSetup() {
        assertThat(runs(
                        lap(1, "A", "", TimingLog.Flag.NONE),
                        lap(2, "A", "", TimingLog.Flag.NONE),
                        lap(3, "B", "", TimingLog.Flag.NONE)))
                .containsExactly(0, 0, 1);
    }

    @Test
    void aNewRunBeginsWithAnOutLapAndAfterAnInLap() {
        assertThat(runs(
                        lap(1, "A", "", TimingLog.Flag.OUT),
                        lap(2, "A", "", TimingLog.Flag.IN),
                        lap(3, "A", "", TimingLog.Flag.NONE),
                        lap(4, "A", "", TimingLog.Flag.OUT)))
                .containsExactly(0, 0, 1, 2);
    }

    @Test
    void aGapInTheNumbersIsNoNewRunButCountsAsLaps() {
        TimingLog log =
                TimingLog.of(List.of(lap(3, "A", "", TimingLog.Flag.NONE), lap(6, "A", "", TimingLog.Flag.NONE)));
        assertThat(log.runs()).isEqualTo(1);
        assertThat(log.runLap(1)).isEqualTo(4);
        assertThat(log.sessionLap(1)).isEqualTo(6);
    }

    @Test
    void numbersThatStartAnewInANamedRunAreCountedOn() {
        TimingLog log = TimingLog.of(List.of(
                lap(1, "A", "1", TimingLog.Flag.NONE),
                lap(2, "A", "1", TimingLog.Flag.NONE),
                lap(1, "A", "2", TimingLog.Flag.NONE)));
        assertThat(log.sessionLap(2)).isEqualTo(3);
        assertThat(log.runLap(2)).isEqualTo(1);
    }

    @Test
    void twoLogsInOneAreRefused() {
        assertThatThrownBy(() -> runs(lap(9, "A", "", TimingLog.Flag.NONE), lap(1, "B", "", TimingLog.Flag.NONE)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("lap 1")
                .hasMessageContaining("two logs in one");
    }

    @Test
    void aLapThatStandsTwiceIsRefused() {
        assertThatThrownBy(() -> runs(lap(9, "A", "", TimingLog.Flag.NONE), lap(9, "A", "", TimingLog.Flag.NONE)))
                .hasMessageContaining("lap 9")
                .hasMessageContaining("twice");
    }

    @Test
    void aLogWithoutLapsIsRefused() {
        assertThatThrownBy(() -> TimingLog.of(List.of())).isInstanceOf(InvalidValueException.class);
    }
}
