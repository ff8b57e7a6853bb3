package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StandingsTest {
    /** By the rounding of the Particle Data Group, worked by hand; below a second no coarser than hundredths. */
    @ParameterizedTest
    @CsvSource({
        "0.0012,3",
        "0.018,3",
        "0.0354,3",
        "0.0356,2",
        "0.076,2",
        "0.1,2",
        "0.18,2",
        "0.4,2",
        "1.2,1",
        "4,0",
        "0,3",
        "NaN,3"
    })
    void digitsFollowTheInterval(double halfWidth, int decimals) {
        assertThat(Standings.decimals(halfWidth)).isEqualTo(decimals);
    }
}
