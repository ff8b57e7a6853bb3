package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.air.StandardAtmosphere;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Gravity and bend of a path, split into the directions of a road that leans: plane geometry. */
class PlaceTest {
    private static final double G = StandardAtmosphere.GRAVITY;
    /** Some ten operations on doubles. */
    private static final double ROUNDING = 1e-12;

    /** sin 30° = 1/2, cos 30° = √3/2. */
    @Test
    void aSlopeAndABankOfThirtyDegreesEachTakeHalfOfGravity() {
        double angle = Math.PI / 6;
        Place uphill = Place.on(0, angle, 0, 0, 1);
        assertThat(uphill.climb()).isCloseTo(G / 2, within(ROUNDING * G));
        assertThat(uphill.normalGravity()).isCloseTo(G * Math.sqrt(3) / 2, within(ROUNDING * G));
        assertThat(uphill.lateralGravity()).isZero();
        Place banked = Place.on(0.01, 0, angle, 0.002, 0.9);
        assertThat(banked.lateralGravity()).isCloseTo(G / 2, within(ROUNDING * G));
        assertThat(banked.normalGravity()).isCloseTo(G * Math.sqrt(3) / 2, within(ROUNDING * G));
        assertThat(banked.climb()).isZero();
        assertThat(banked.lateralCurvature()).isCloseTo(0.01 * Math.sqrt(3) / 2, within(ROUNDING));
        assertThat(banked.normalCurvature()).isCloseTo(0.005 + 0.002, within(ROUNDING));
        assertThat(banked.grip()).isEqualTo(0.9);
        assertThat(banked.headWind()).isZero();
    }

    /** However a road leans, the three parts of gravity are gravity (Pythagoras), and both parts of a bend the bend. */
    @ParameterizedTest
    @CsvSource({"0.01, 0.1, 0.2", "-0.03, -0.2, 0.5", "0.002, 0.05, -0.3"})
    void thePartsMakeTheWhole(double curvature, double slope, double bank) {
        Place place = Place.on(curvature, slope, bank, 0, 1);
        double gravity =
                Math.sqrt(square(place.lateralGravity()) + square(place.normalGravity()) + square(place.climb()));
        assertThat(gravity).isCloseTo(G, within(ROUNDING * G));
        assertThat(Math.hypot(place.lateralCurvature(), place.normalCurvature()))
                .isCloseTo(Math.abs(curvature), within(ROUNDING));
    }

    /** In a mirror left is right: what points to a side turns about, all else stays. */
    @Test
    void aMirrorTurnsWhatPointsToASide() {
        Place place = new Place(0.01, 0.5, 9.7, 0.002, 0.3, 0.95, 4);
        assertThat(place.mirrored()).isEqualTo(new Place(-0.01, -0.5, 9.7, 0.002, 0.3, 0.95, 4));
        assertThat(place.mirrored().mirrored()).isEqualTo(place);
    }

    private static double square(double value) {
        return value * value;
    }
}
