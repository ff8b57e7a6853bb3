package dev.lapwright.ride;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.complex.Complex;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Passes over a rough surface against the response of a linear car wave by wave. */
class RoughRoadTest {
    private static final QuarterCar CAR = new QuarterCar(280, 42, 110e3, 320e3, 250, Damper.linear(4000), 1, 0);

    /** Dynamic tyre force over road height, N/m, from the equations of motion in complex form. */
    private static double loadOverRoad(double w) {
        Complex suspension = new Complex(CAR.wheelRate(), w * 4000);
        Complex tyre = new Complex(CAR.tyreRate(), w * CAR.tyreDamping());
        Complex body = suspension.subtract(CAR.sprungMass() * w * w);
        Complex wheel = suspension.add(tyre).subtract(CAR.unsprungMass() * w * w);
        Complex determinant = body.multiply(wheel).subtract(suspension.multiply(suspension));
        Complex wheelOverRoad = tyre.multiply(body).divide(determinant);
        return tyre.multiply(Complex.ONE.subtract(wheelOverRoad)).abs();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void contactLoadVariesAsTheFrequencyResponseSays(long seed) {
        double speed = 12;
        RandomRoad road = RandomRoad.of(RoadClass.A, seed, 0);
        RidePass pass = PassSolver.over(road, speed).drive(CAR);
        double variance = 0;
        double line = 1 / road.length();
        for (double n = 5 * line; n <= 2.83; n += line) {
            variance += RoadClass.A.density(n) * line * Math.pow(loadOverRoad(2 * Math.PI * n * speed), 2);
        }
        assertThat(pass.contact().timeOffGround()).as("linear throughout").isZero();
        // 97 % of a period of the road is counted: what is missing is a sample of 1 s of 34 s, a few percent of
        // scatter.
        assertThat(pass.contact().loadVariation())
                .isCloseTo(Math.sqrt(variance) / CAR.staticLoad(), Percentage.withPercentage(3));
    }

    @Test
    void twoClassesUpTheRoadIsFourTimesAsHigh() {
        // Density 16-fold, height and every linear answer 4-fold (ISO 8608). Equal up to the integrator's tolerance.
        RidePass smooth = PassSolver.over(RandomRoad.of(RoadClass.A, 1, 0.1), 5).drive(CAR);
        RidePass rough = PassSolver.over(RandomRoad.of(RoadClass.C, 1, 0.1), 5).drive(CAR);
        assertThat(rough.contact().timeOffGround()).isZero();
        assertThat(rough.contact().loadVariation() / smooth.contact().loadVariation())
                .isCloseTo(4, Percentage.withPercentage(0.1));
    }
}
