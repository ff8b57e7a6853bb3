package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

class SetupPaceTest {
    private static EvidenceResult.SetupPace pace(Trend.Kind trend, double... times) {
        CleanLaps laps = CleanLaps.of(Logs.of("A", times), new CleanLaps.Rule(0, 100));
        return EvidenceResult.SetupPace.of(laps, Trend.of(laps, trend), "A");
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile(
            value = "lap-spread.csv",
            quantities = {"mean of the flow rates", "upper control limit"})
    void scatterFromLapToLapIsThatOfTheControlChartOfTheHandbook(CheckRow row) {
        EvidenceResult.SetupPace pace =
                pace(Trend.Kind.NONE, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);
        boolean mean = row.quantity().equals("mean of the flow rates");
        row.verify(mean ? pace.mean() : pace.mean() + 3 * pace.lapToLap());
    }

    @Test
    void aSteadyTrendIsNoSpread() {
        // Five laps on a line; rounding.
        assertThat(pace(Trend.Kind.RUN, 90, 89.9, 89.8, 89.7, 89.6).spread()).isCloseTo(0, within(1e-6));
    }

    @Test
    void spreadWithoutATrendIsTheStandardDeviation() {
        // Squares 0.04, 0, 0.04 over 2; rounding.
        EvidenceResult.SetupPace pace = pace(Trend.Kind.NONE, 89.8, 90, 90.2);
        assertThat(pace.spread()).isCloseTo(0.2, within(1e-9));
        assertThat(pace.consistency()).isCloseTo(0.2 / 90, within(1e-9));
        assertThat(List.of(pace.best(), pace.median())).containsExactly(89.8, 90.0);
    }

    @Test
    void oneLapHasNoSpread() {
        assertThat(pace(Trend.Kind.RUN, 90).spread()).isNaN();
        assertThat(pace(Trend.Kind.RUN, 90).lapToLap()).isNaN();
    }
}
