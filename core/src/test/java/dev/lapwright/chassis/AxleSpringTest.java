package dev.lapwright.chassis;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
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
}
