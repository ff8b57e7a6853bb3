package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SetupPaceTest {
    private static SetupPace pace(TrendKind trend, double... times) {
        CleanLaps laps = CleanLaps.of(Logs.of("A", times), new CleanRule(0, 100));
        return SetupPace.of(laps, Trend.of(laps, trend), "A");
    }

    @Test
    void scatterFromLapToLapIsThatOfTheControlChartOfTheHandbook() {
        // NIST/SEMATECH e-Handbook 6.3.2.2, flow rates: mean 50.81, upper control limit 55.8041 = mean + 3 sigma; half
        // a unit
        // of its last digit.
        SetupPace pace = pace(TrendKind.NONE, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);
        assertThat(pace.mean()).isCloseTo(50.81, within(1e-9));
        assertThat(pace.mean() + 3 * pace.lapToLap()).isCloseTo(55.8041, within(5e-5));
    }

    @Test
    void aSteadyTrendIsNoSpread() {
        // Five laps on a line; rounding.
        assertThat(pace(TrendKind.RUN, 90, 89.9, 89.8, 89.7, 89.6).spread()).isCloseTo(0, within(1e-6));
    }

    @Test
    void spreadWithoutATrendIsTheStandardDeviation() {
        // Squares 0.04, 0, 0.04 over 2; rounding.
        SetupPace pace = pace(TrendKind.NONE, 89.8, 90, 90.2);
        assertThat(pace.spread()).isCloseTo(0.2, within(1e-9));
        assertThat(pace.consistency()).isCloseTo(0.2 / 90, within(1e-9));
        assertThat(List.of(pace.best(), pace.median())).containsExactly(89.8, 90.0);
    }

    @Test
    void oneLapHasNoSpread() {
        assertThat(pace(TrendKind.RUN, 90).spread()).isNaN();
        assertThat(pace(TrendKind.RUN, 90).lapToLap()).isNaN();
    }
}
