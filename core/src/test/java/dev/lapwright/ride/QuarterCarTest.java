package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.fault.InvalidValueException;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frequencies and damping ratios against textbooks. */
class QuarterCarTest {
    /** The car of Barton and Fieldhouse, Automotive Chassis Engineering (2018), page 209. */
    private static final QuarterCar BOOK = new QuarterCar(317.5, 45.4, 22e3, 192e3, 0, Damper.linear(1000), 1, 0);

    @Test
    void theModesAreThoseOfBartonAndFieldhouse() {
        RideModes modes = BOOK.modes();
        // Page 209: 7.87 and 68.73 rad/s, shape 0.104. The book rounds within its working (exact: 7.8786, 68.7086), so
        // 0.1 %,
        // and half a unit of the last digit of the shape, whose exact value is 0.10418.
        assertThat(2 * Math.PI * modes.bodyFrequency()).isCloseTo(7.87, Percentage.withPercentage(0.12));
        assertThat(2 * Math.PI * modes.wheelFrequency()).isCloseTo(68.73, Percentage.withPercentage(0.1));
        assertThat(modes.bodyShape()).isCloseTo(0.104, within(5e-4));
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
        RideModes modes = BOOK.modes();
        // Any two modes: ms a b + mu c d = 0 (any text on vibration), up to rounding of numbers near 300.
        assertThat(317.5 * modes.wheelShape() + 45.4 * modes.bodyShape()).isCloseTo(0, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
        // spring N/m, motion ratio, tyre N/m, mass kg; wheel rate, ride rate N/m, frequency Hz
        "140101, 0.7334, 318030, 312, 75357, 60922, 2.22",
        "210152, 0.6822, 318030, 294, 97804, 74801, 2.54"
    })
    void springMakesFrequency(
            double spring, double ratio, double tyre, double mass, double wheel, double ride, double hertz) {
        // A worked chain for a racing saloon, posted by an engineer on a forum of the trade (Eng-Tips, 5 May 2013).
        // Motion
        // ratios have four digits: 0.02 % in a rate; the frequency is printed to 0.01 Hz.
        AxleSpring axle = new AxleSpring(spring, ratio, 0, tyre, 1.5);
        QuarterCar car = new QuarterCar(mass, 1, axle.wheelRate(), axle.tyreRate(), 0, Damper.linear(1000), ratio, 0);
        assertThat(axle.wheelRate()).isCloseTo(wheel, Percentage.withPercentage(0.02));
        assertThat(car.rideRate()).isCloseTo(ride, Percentage.withPercentage(0.02));
        assertThat(car.rideFrequency()).isCloseTo(hertz, within(0.005));
    }

    @Test
    void oneHertzIsAQuarterMetreOfStaticDeflection() {
        // g/(2π f)²: 248.4 mm at 1 Hz (any text on vibration; to the digits printed).
        double rate = 300 * 9.80665 / 0.2484;
        QuarterCar car = new QuarterCar(300, 30, 2 * rate, 2 * rate, 0, Damper.linear(0), 1, 0);
        assertThat(car.rideFrequency()).isCloseTo(1, within(2e-4));
    }

    @Test
    void criticalDampingHasARatioOfOne() {
        // c = 2 √(k m) by definition; a motion ratio of one half asks four times as much of the damper.
        QuarterCar car = new QuarterCar(400, 40, 40e3, 200e3, 0, Damper.linear(1), 0.5, 0);
        assertThat(car.bodyDampingRatio(4 * 2 * Math.sqrt(40e3 * 400))).isCloseTo(1, within(1e-12));
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
