package dev.lapwright.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DrivenLapSelectionTest {
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));

    /** A lap at one speed, m/s, so many times the circuit's length. */
    private static DrivenLog.Lap lap(int number, double lengths, double speed) {
        double[] distance = new double[100];
        double[] speeds = new double[100];
        Arrays.fill(speeds, speed);
        for (int i = 0; i < distance.length; i++) {
            distance[i] = lengths * TRACK.length() * i / 99;
        }
        return new DrivenLog.Lap(
                number,
                DrivenLap.of("lap " + number + " of monday.csv", distance, speeds),
                lengths * TRACK.length() / speed);
    }

    private static DrivenLog log(DrivenLog.Lap... laps) {
        return new DrivenLog("monday.csv", List.of(laps), "", List.of());
    }

    private static DrivenLapSelection pick(DrivenLog log, Integer... numbers) {
        return DrivenLapSelection.of(List.of(log), TRACK, List.of(numbers));
    }

    private static List<String> names(DrivenLapSelection pick) {
        List<String> names = new ArrayList<>();
        pick.laps().forEach(lap -> names.add(lap.name()));
        return names;
    }

    @Test
    void outAndInLapsAreLeftOutAndSaid() {
        DrivenLapSelection pick =
                pick(log(lap(1, 0.8, 30), lap(2, 1.01, 50), lap(3, 1, 49), lap(4, 1, 40), lap(5, 1, 3)));
        assertThat(names(pick)).containsExactly("lap 2 of monday.csv", "lap 3 of monday.csv");
        assertThat(pick.leftOut()).hasSize(3);
        assertThat(pick.leftOut().get(0))
                .startsWith("Lap 1 of monday.csv: it is")
                .contains("an out lap, an in lap");
        assertThat(pick.leftOut().get(1)).contains("more than 107 % of the fastest");
        assertThat(pick.leftOut().get(2)).contains("falls to 11 km/h");
    }

    @Test
    void aLapThatIsNamedIsTakenThoughItIsSlow() {
        DrivenLapSelection pick = pick(log(lap(1, 1, 50), lap(2, 1, 40)), 2);
        assertThat(names(pick)).containsExactly("lap 2 of monday.csv");
        assertThat(pick.leftOut()).containsExactly("Not chosen: lap 1 of monday.csv.");
    }

    /** Ratios of units by definition: 1609.344 m to a mile, 0.3048 m to a foot. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2 | looks like two laps glued together",
                "3.02 | looks like 3 laps glued together",
                "0.001 | looks like km taken for m",
                "1000 | looks like m taken for km",
                "0.00062137 | looks like miles taken for m",
                "3.2808 | looks like feet taken for m",
                "3.6 | looks like speeds in km/h taken for m/s",
                "1.3 | another circuit, or a detour",
                "0.7 | an out lap, an in lap, or another circuit",
            })
    void aLapOfAnotherLengthIsToldByWhatItLooksLike(double lengths, String looks) {
        for (Integer[] numbers : new Integer[][] {{}, {1}}) {
            assertThatThrownBy(() -> pick(log(lap(1, lengths, 50)), numbers))
                    .isInstanceOf(InvalidValueException.class)
                    .hasMessageContaining("lap 1 of monday.csv")
                    .hasMessageContaining(looks);
        }
    }

    @Test
    void aNumberThatNoLogHasIsRefusedWithThoseThatThereAre() {
        assertThatThrownBy(() -> pick(log(lap(3, 1, 50), lap(4, 1, 50)), 7)).hasMessageContaining("there are: 3, 4");
    }
}
