package dev.lapwright.aero;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The platform against the closed form of a map that is linear in ride height. */
class PlatformTest {
    /** Newton's method stops at 1e-10 mm. */
    private static final double SETTLED_MM = 1e-9;

    /**
     * One axle: 2 k (h0 - h) = q (c0 + c1 (h - href)), so h = (2 k h0 - q (c0 - c1 href)) / (2 k + q c1); k in N/mm here.
     * Derived; no source needed.
     */
    @ParameterizedTest
    @CsvSource({"0, 0.01", "1500, 0.01", "4000, -0.004", "6000, 0"})
    void anAxleSettlesAtTheClosedForm(double dynamicPressure, double perMm) {
        double rate = 80;
        double rest = 60;
        double reference = 55;
        double area = 1.2;
        RideHeightMap map = new RideHeightMap(
                reference, 0, ResponseSurface.FLAT, new ResponseSurface(perMm, 0, 0, 0, 0), ResponseSurface.FLAT);
        Platform platform = new Platform(new Areas(0.9, area, 0), map, rest, 70, 1000 * rate, 1000 * rate);
        Platform.State state = platform.at(dynamicPressure, null);
        double expected =
                (2 * rate * rest - dynamicPressure * (area - perMm * reference)) / (2 * rate + dynamicPressure * perMm);
        assertThat(state.frontMm()).isCloseTo(expected, within(SETTLED_MM));
        assertThat(state.rearMm()).isCloseTo(70, within(SETTLED_MM));
        // An area per mm of the settled height's error.
        assertThat(state.areas().liftFront()).isCloseTo(area + perMm * (expected - reference), within(1e-11));
    }

    /** Two axles whose areas answer to both heights: a linear system of two equations, solved by Cramer's rule. */
    @Test
    void bothAxlesSettleTogether() {
        double q = 3000;
        double kf = 90;
        double kr = 110;
        double ff = -0.006;
        double fr = 0.004;
        double rf = -0.002;
        double rr = 0.003;
        RideHeightMap map = new RideHeightMap(
                60,
                80,
                new ResponseSurface(0, 0.001, 0, 0, 0),
                new ResponseSurface(ff, fr, 0, 0, 0),
                new ResponseSurface(rf, rr, 0, 0, 0));
        Platform platform = new Platform(new Areas(1, 1.1, 0.8), map, 60, 80, 1000 * kf, 1000 * kr);
        Platform.State state = platform.at(q, null);
        // Changes f and r of height from 60 and 80 mm: (2 kf + q ff) f + q fr r = -q 1.1; q rf f + (2 kr + q rr) r = -q
        // 0.8.
        double a = 2 * kf + q * ff;
        double b = q * fr;
        double c = q * rf;
        double d = 2 * kr + q * rr;
        double determinant = a * d - b * c;
        double front = (-q * 1.1 * d + q * 0.8 * b) / determinant;
        double rear = (-q * 0.8 * a + q * 1.1 * c) / determinant;
        assertThat(state.frontMm()).isCloseTo(60 + front, within(SETTLED_MM));
        assertThat(state.rearMm()).isCloseTo(80 + rear, within(SETTLED_MM));
        assertThat(state.areas().drag()).isCloseTo(1 + 0.001 * rear, within(1e-11));
    }

    /** Downforce that grows by more per mm than the springs: 2 k + q c1 below zero. */
    @Test
    void aPlatformThatItsSpringsCannotHoldIsRefused() {
        RideHeightMap map = new RideHeightMap(
                60, 80, ResponseSurface.FLAT, new ResponseSurface(-0.05, 0, 0, 0, 0), ResponseSurface.FLAT);
        Platform platform = new Platform(new Areas(1, 1, 1), map, 60, 80, 50_000, 50_000);
        assertThat(platform.at(1000, null).frontMm()).isLessThan(60);
        assertThatThrownBy(() -> platform.at(2500, null))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("aero platform")
                .hasMessageContaining("2500 Pa")
                .hasMessageContaining("stiffer springs");
    }
}
