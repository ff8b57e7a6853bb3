package dev.lapwright.chassis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

class AxleSpringTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile("springs.csv")
    void aSpringGivesTheRatesOfTheWorkedExample(CheckRow row) {
        AxleSpring spring =
                new AxleSpring(row.number("spring_npm"), row.number("motion_ratio"), 0, row.number("tyre_npm"), 1.5);
        row.verify(
                switch (row.quantity()) {
                    case "wheel rate" -> spring.wheelRate();
                    case "ride rate" -> spring.rideRate();
                    case "ride frequency" -> Math.sqrt(spring.rideRate() / row.number("mass_kg")) / (2 * Math.PI);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /**
     * Derived by hand. Springs of 20 kN/m at a motion ratio of 0.8 are 12.8 kN/m at the wheels and, 0.75 m from the middle each,
     * 14.4 kNm/rad; with a bar of 5.6 they are 20. Tyres of 160 kN/m are 180 kNm/rad below them: 20 · 180 / 200 = 18.
     */
    @Test
    void springsAndBarRollInSeriesWithTheTyres() {
        AxleSpring spring = new AxleSpring(20_000, 0.8, 5_600, 160_000, 1.5);
        // Rounding of doubles.
        assertThat(spring.rollStiffness()).isCloseTo(18_000, within(1e-8));
    }
}
