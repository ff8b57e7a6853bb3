package dev.lapwright.study.sensitivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class QuantityWorthsTest {
    private static final Track TRACK = StudyCars.circuit();

    private static QuantityWorths.Worth worth(Car car, Quantity quantity) {
        return QuantityWorths.of(car, TRACK, Conditions.STANDARD).run().worths().stream()
                .filter(one -> one.quantity().equals(quantity.path()))
                .findFirst()
                .orElseThrow();
    }

    /** Half of one percent to either side by laps of their own; what is left of such a difference is of third order. */
    @Test
    void aPercentIsWorthWhatLapsSay() {
        Car car = StudyCars.rearDriven().car();
        for (Quantity quantity : List.of(Quantity.MASS, Quantity.FRICTION_Y_REAR, Quantity.POWER_SCALE)) {
            double value = car.value(quantity);
            double byLaps = time(car.with(quantity, 1.005 * value)) - time(car.with(quantity, 0.995 * value));
            assertThat(worth(car, quantity).ofPercent())
                    .as(quantity.path())
                    .isCloseTo(byLaps, within(0.05 * Math.abs(byLaps) + 1e-4));
        }
    }

    private static double time(Car car) {
        return LapSolver.on(TRACK).lapTime(Vehicle.of(car, Conditions.STANDARD));
    }

    /** What a document states is the doubt; 200 stratified draws tell a deviation to 0.02 of itself, and a few times that at most. */
    @Test
    void whatIsStatedIsTheDoubt() {
        CarDoubt.Size five = new CarDoubt.Size(5, false, false, CarDoubt.Source.WEIGHED);
        // Even chance between limits a: a/√3 (JCGM 100:2008, 4.3.7).
        CarDoubt.Size three = new CarDoubt.Size(3, false, true, CarDoubt.Source.ESTIMATED);
        Car car = StudyCars.rearDriven()
                .car()
                .doubting(new CarDoubt(
                        Map.of(Quantity.MASS.path(), five, Quantity.BRAKE_FRONT_SHARE.path(), three),
                        List.of(),
                        new double[0][]));
        QuantityWorths.Worth mass = worth(car, Quantity.MASS);
        assertThat(mass.deviation()).isCloseTo(5, within(0.3));
        assertThat(mass.ofDeviation())
                .isCloseTo(mass.deviation() * mass.ofPercent() / (car.value(Quantity.MASS) / 100), within(1e-9));
        assertThat(worth(car, Quantity.BRAKE_FRONT_SHARE).deviation()).isCloseTo(3 / Math.sqrt(3), within(0.1));
        // The width of the car is in no doubt, and no lap on a given line hangs on it.
        QuantityWorths.Worth width = worth(car, Quantity.WIDTH);
        assertThat(width.deviation()).isZero();
        assertThat(width.ofDeviation()).isZero();
        assertThat(width.ofPercent()).isZero();
    }
}
