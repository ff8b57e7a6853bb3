package dev.lapwright.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.evidence.TimingLog;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LapLogsTest {
    private static LapLogFile read(String text) {
        return LapLogs.read(new DocumentSource("laps.csv", text));
    }

    private static List<TimingLog.Lap> laps(String text) {
        return read(text).log().laps();
    }

    private static void refuses(String text, String... said) {
        assertThatThrownBy(() -> read(text.replace('/', '\n')))
                .isInstanceOf(DocumentException.class)
                .satisfies(e -> assertThat(e.getMessage()).contains(said));
    }

    /** Numbers apart by spaces, semicolons, or commas with a space; decimals after a point or a comma. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "1:36.2 1:35.9 96.4",
                "1:36.2; 1:35.9;1:36.4",
                "1:36,2, 1:35,9, 1:36,4",
                " 1:36.2\n1:35.90 1:36.4 "
            })
    void lapTimesMayBeTyped(String typed) {
        assertThat(LapLogs.read(LapLogs.typed(typed).orElseThrow()).log().laps().stream()
                        .map(TimingLog.Lap::time))
                .containsExactly(96.2, 95.9, 96.4);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "laps.csv", "1:36.2 laps", "castelvane-wings.csv", "1:36.2,1:35.9.2", "-1:36.2"})
    void whatIsNoListOfTimesIsTheNameOfALog(String name) {
        assertThat(LapLogs.typed(name)).isEmpty();
    }

    /** A minute has 60 seconds, a second 1000 milliseconds. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "lap,time,setup\n7,1:44.851,soft\n",
                "Setup;Lap Time;Lap No\nsoft;1:44,851;7\n",
                "Setup\tLaptime (s)\t#\nsoft\t104.851\t7\n",
                "lap;time;setup\n7;104,851;soft\n",
                "lap_number,time_ms,configuration\n7,104851,soft\n",
                "lap,time (min),setup\n7,1.7475166666666667,soft\n",
                "lap,lapTime,setup\n7,1'44\"851,soft\n",
                "lap,time,setup\n7,1.44.851,soft\n",
                "lap,time,setup\n7,0:01:44.851,soft\n",
                "lap,time (m:ss.fff),setup\n7.0,1:44.851,soft\n",
                "lap,time,setup\n7,\"1:44,851\",soft\n",
                "Runde;Rundenzeit;Setup\n7;1:44,851;soft\n",
                "Event,test day\nDriver,somebody\n\nlap,time,setup\n7,1:44.851,soft\n",
                "speed,lap,time,setup,note\n3,7,1:44.851,soft,windy\n",
            })
    void aLapIsTheSameHoweverItIsWritten(String text) {
        TimingLog.Lap lap = laps(text).get(0);
        assertThat(lap.number()).isEqualTo(7);
        // Rounding of one product.
        assertThat(lap.time()).isCloseTo(104.851, within(1e-9));
        assertThat(lap.setup()).isEqualTo("soft");
    }

    @ParameterizedTest
    @CsvSource({
        "out, OUT",
        "Out-lap, OUT",
        "IN, IN",
        "pit, IN",
        "yellow, SPOILT",
        "x, SPOILT",
        "ok, NONE",
        "'', NONE",
        "-, NONE"
    })
    void flagsAreUnderstoodByTheirWords(String word, TimingLog.Flag flag) {
        assertThat(laps("lap,time,flag\n1,90.1," + word + "\n").get(0).flag()).isEqualTo(flag);
    }

    @Test
    void whatWasTakenForWhatIsSaid() {
        assertThat(read("No;t;Config\n1;90,1;soft\n2;90,2;\n").columns())
                .isEqualTo(
                        "lap from 'No'; time from 't' in s (assumed); setup from 'Config', an empty cell like the one"
                                + " above");
    }

    @Test
    void whatIsMissingAndDoneWithoutIsSaid() {
        LapLogFile file = read("time\n1:30.1\n1:30.2\n");
        assertThat(file.columns())
                .isEqualTo(
                        "lap numbers counted, for there is no such column; time from 'time' in min:s; no column for the"
                                + " setup: all laps are taken for one");
        assertThat(file.log().laps().get(1).number()).isEqualTo(2);
        assertThat(file.log().setups()).hasSize(1);
    }

    @Test
    void anEmptySetupIsTheOneAbove() {
        assertThat(laps("lap,time,setup\n1,90.1,A\n2,90.2,\n3,90.3,B\n4,90.1,\n"))
                .extracting(TimingLog.Lap::setup)
                .containsExactly("A", "A", "B", "B");
    }

    @Test
    void numbersMayStartAnewInAnotherRun() {
        assertThat(read("lap,time,run\n1,90.1,1\n2,90.2,1\n1,90.3,2\n").log().runs())
                .isEqualTo(2);
    }

    @Test
    void badInputIsToldWithLineAndRemedy() {
        refuses("", "it is empty", "lap,time,setup,flag");
        refuses("lap,time,setup", "headings and no laps");
        refuses("lap,setup/1,A", "line 1", "no heading is known for the lap times", "lap, setup");
        refuses("lap,time/1,1:9x.1", "line 2, time", "'1:9x.1' is no lap time", "write it like");
        refuses("lap,time/1,1:75.2", "'1:75.2' is no lap time");
        refuses("lap,time/1,", "line 2, time", "there is no lap time");
        refuses("lap,time/1,-90", "'-90' is no lap time");
        refuses("lap,time/one,90.1", "line 2, lap", "'one' is no number of a lap");
        refuses("lap,time,setup/1,90.1,", "line 2, setup", "the first lap names none");
        refuses("lap,time,flag/1,90.1,lovely", "line 2, flag", "'lovely' is not known");
        refuses("lap,time (h)/1,90.1", "'h' is no unit of a lap time");
        refuses("lap,time,laptime/1,90.1,90.1", "'time' and 'laptime' both look like it");
    }

    @Test
    void timesInOtherUnitsSayWhatTheyLookLike() {
        refuses("lap,time/1,104851/2,104900", "about 104900 s, which looks like milliseconds", "time (ms)");
        refuses("lap,time/1,1.74/2,1.75", "looks like minutes", "time (min)");
        refuses("lap,time/1,104/2,208/3,313/4,417", "looks like a clock that runs on");
    }

    @Test
    void decimalCommasBetweenCommasAreTold() {
        refuses("lap,time,setup/1,104,851,A", "line 2", "decimal commas between commas", "semicolons");
    }

    @Test
    void twoLogsInOneFileAreTold() {
        refuses("lap,time/8,90.1/9,90.2/1,90.3", "line 4", "lap 1 follows lap 9", "two logs in one file");
        refuses("lap,time/8,90.1/8,90.2", "line 3", "lap 8 follows lap 8", "take one of them out");
    }

    @Test
    void aBadLapIsToldByItsRow() {
        refuses("setup,time/a,92.1/a,92.3/a,999999999/b,92.0", "line 4, time: 1000000000 s is no lap time");
        refuses("setup,time/a,92.1/a,1e308/b,92.0", "line 3, time: '1e308' is no lap time");
        refuses("setup,time/a,92.1/b\u202Ec,92.3/b,92.0", "line 3, setup: character 2 is U+202E");
    }
}
