package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import dev.lapwright.fault.InvalidValueException;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/** Frequencies and damping ratios against textbooks. */
class QuarterCarTest {
    /** The car of Barton and Fieldhouse, Automotive Chassis Engineering (2018), page 209. */
    private static final QuarterCar BOOK = new QuarterCar(317.5, 45.4, 22e3, 192e3, 0, Damper.linear(1000), 1, 0);

    @ParameterizedTest(name = "{0}")
    @CheckFile("quarter-car.csv")
    void aQuarterCarIsThatOfTheTextbook(CheckRow row) {
        QuarterCar.Modes modes = BOOK.modes();
        row.verify(
                switch (row.quantity()) {
                    case "body mode" -> 2 * Math.PI * modes.bodyFrequency();
                    case "wheel mode" -> 2 * Math.PI * modes.wheelFrequency();
                    case "wheel over body in the body mode" -> modes.bodyShape();
                    case "ride frequency of 248.4 mm static deflection" -> {
                        double rate = 300 * 9.80665 / 0.2484;
                        yield new QuarterCar(300, 30, 2 * rate, 2 * rate, 0, Damper.linear(0), 1, 0).rideFrequency();
                    }
                    case "ratio of critical damping" -> {
                        // A motion ratio of one half asks four times as much of the damper.
                        QuarterCar car = new QuarterCar(400, 40, 40e3, 200e3, 0, Damper.linear(1), 0.5, 0);
                        yield car.bodyDampingRatio(4 * 2 * Math.sqrt(40e3 * 400));
                    }
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @Test
    void rideAndHopFrequencyLieCloseToTheModes() {
        // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5: the two approximations err by little where the
        // wheel is light and the tyre stiff. Within 0.2 % here by hand: 1.2549 for 1.2539 Hz, 10.927 for 10.935 Hz.
        assertThat(BOOK.rideFrequency()).isCloseTo(BOOK.modes().bodyFrequency(), Percentage.withPercentage(0.2));
        assertThat(BOOK.hopFrequency()).isCloseTo(BOOK.modes().wheelFrequency(), Percentage.withPercentage(0.2));
    }

    @Test
    void theModesSwingAtRightAnglesInMass() {
        QuarterCar.Modes modes = BOOK.modes();
        // Any two modes: ms a b + mu c d = 0 (any text on vibration), up to rounding of numbers near 300.
        assertThat(317.5 * modes.wheelShape() + 45.4 * modes.bodyShape()).isCloseTo(0, within(1e-9));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("springs.csv")
    void springMakesFrequency(CheckRow row) {
        double ratio = row.number("motion_ratio");
        AxleSpring axle = new AxleSpring(row.number("spring_npm"), ratio, 0, row.number("tyre_npm"), 1.5);
        QuarterCar car = new QuarterCar(
                row.number("mass_kg"), 1, axle.wheelRate(), axle.tyreRate(), 0, Damper.linear(1000), ratio, 0);
        row.verify(
                switch (row.quantity()) {
                    case "wheel rate" -> axle.wheelRate();
                    case "ride rate" -> car.rideRate();
                    case "ride frequency" -> car.rideFrequency();
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @Test
    void aDamperBendsAtItsKnees() {
        // 1000 to 0.1 m/s and 500 beyond: 100 + 50 N at 0.2 m/s; 2000 to 0.05 and 1500 beyond: 100 + 225 N at 0.2 m/s.
        Damper damper = new Damper(1000, 500, 2000, 1500, 0.1, 0.05);
        assertThat(damper.force(0.2)).isCloseTo(150, within(1e-12));
        assertThat(damper.force(-0.2)).isCloseTo(-325, within(1e-12));
    }

    @Test
    void liftThatCarriesTheWheelIsRefused() {
        assertThatThrownBy(() -> new QuarterCar(400, 40, 40e3, 200e3, 0, Damper.linear(1), 1, -5000))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("takes the wheel off the road");
    }
}
