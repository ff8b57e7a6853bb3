package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.aero.Platform;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ride heights that follow acceleration, load and the static height: closed forms of a map that is linear in the height of one axle, and
 * of plain statics. Derived; no source needed.
 */
class PlatformInLapTest {
    private static final double G = 9.80665;
    private static final double PER_MM = -0.008;

    /** Front downforce answers to front height alone, evenly. */
    private static Map<Quantity, Double> linear() {
        Map<Quantity, Double> q = new HashMap<>();
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT, 0.0);
        q.put(Quantity.LIFT_REAR_PER_FRONT_HEIGHT, 0.0);
        q.put(Quantity.DRAG_PER_REAR_HEIGHT, 0.0);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT, PER_MM);
        q.put(Quantity.PITCH_FRONT, 70.0);
        q.put(Quantity.PITCH_REAR, 80.0);
        q.put(Quantity.HEAVE, 100.0);
        return q;
    }

    private static double rideRate(Car car, boolean front) {
        double wheel = 1000 * car.value(front ? Quantity.SPRING_FRONT : Quantity.SPRING_REAR);
        double tyre = 1000 * car.value(front ? Quantity.VERTICAL_RATE_FRONT : Quantity.VERTICAL_RATE_REAR);
        return wheel * tyre / (wheel + tyre);
    }

    @ParameterizedTest
    @CsvSource({"30, 0, 0", "60, -18, 0", "60, 6, 0", "60, -12, 5", "45, 3, -4", "75, -15, -3"})
    void downforceFollowsTheClosedFormOfALinearMap(double speed, double along, double heaved) {
        Car car = TestCars.winged(linear());
        Vehicle vehicle = Vehicle.of(car, Conditions.STANDARD);
        double m = vehicle.mass();
        double q = 0.5 * vehicle.airDensity() * speed * speed;
        double base = car.value(Quantity.LIFT_AREA_FRONT) - 0.10; // the wing's share at 6 degrees
        double twiceRate = 2 * rideRate(car, true) / 1000;
        double load =
                -0.7 * m * along * car.value(Quantity.CG_HEIGHT) / car.value(Quantity.WHEELBASE) + 0.46 * m * heaved;
        double rest = 60 - load / twiceRate;
        // h = rest - q (c0 + c1 (h - h0)) / 2k, with h0 = 60 mm.
        double height = (rest - q * (base - PER_MM * 60) / twiceRate) / (1 + q * PER_MM / twiceRate);
        double expected = q * (base + PER_MM * (height - 60));
        WheelForces wheels = new WheelForces(vehicle);
        wheels.at(speed, 0, 0, G + heaved, 0, 0, 1, 0);
        wheels.utilisation(along, 1);
        // The table's cubics over dynamic pressure: a fourth-order error on 24 steps.
        assertThat(wheels.liftFront).isCloseTo(expected, within(2e-5 * expected));
        assertThat(vehicle.platformAt(speed, along, G + heaved).frontMm()).isCloseTo(height, within(1e-8));
    }

    /** Terms of third order are left out of the responses: at 18 m/s² some thousandths of the downforce. */
    @ParameterizedTest
    @CsvSource({"40, -10, 0", "60, -18, 0", "60, 5, 2", "70, -15, -3", "70, 2, 4"})
    void aCurvedMapIsFollowedToSecondOrder(double speed, double along, double heaved) {
        Map<Quantity, Double> q = linear();
        q.put(Quantity.LIFT_FRONT_PER_REAR_HEIGHT, 0.004);
        q.put(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT_SQUARED, -0.0002);
        q.put(Quantity.LIFT_REAR_PER_REAR_HEIGHT_SQUARED, -0.0001);
        q.put(Quantity.LIFT_FRONT_PER_BOTH_HEIGHTS, 0.00005);
        Vehicle vehicle = Vehicle.of(TestCars.winged(q), Conditions.STANDARD);
        Platform.State exact = vehicle.platformAt(speed, along, G + heaved);
        WheelForces wheels = new WheelForces(vehicle);
        wheels.at(speed, 0, 0, G + heaved, 0, 0, 1, 0);
        wheels.utilisation(along, 1);
        double pressure = 0.5 * vehicle.airDensity() * speed * speed;
        double front = pressure * exact.areas().liftFront();
        double rear = pressure * exact.areas().liftRear();
        assertThat(wheels.liftFront).isCloseTo(front, within(0.004 * front));
        assertThat(wheels.liftRear).isCloseTo(rear, within(0.004 * rear));
        assertThat(wheels.drag).isCloseTo(pressure * exact.areas().drag(), within(0.004 * wheels.drag));
    }

    @Test
    void withoutTheFieldsHeightsAnswerToDownforceAlone() {
        Vehicle vehicle = Vehicle.of(TestCars.winged(), Conditions.STANDARD);
        WheelForces wheels = new WheelForces(vehicle);
        wheels.at(60, 0, 0, G, 0, 0, 1, 0);
        wheels.utilisation(0, 1);
        double level = wheels.liftFront;
        wheels.at(60, 0, 0, G + 3, 0, 0, 1, 0);
        wheels.utilisation(-15, 1);
        assertThat(wheels.liftFront).isEqualTo(level);
    }

    @Test
    void fuelSinksTheCarOntoItsSprings() {
        Map<Quantity, Double> q = new HashMap<>();
        q.put(Quantity.HEIGHT_LOAD_FRONT, 0.46 * 1340);
        q.put(Quantity.HEIGHT_LOAD_REAR, 0.54 * 1340);
        Car car = TestCars.winged(q);
        Platform.State measured = Vehicle.of(car, Conditions.STANDARD).platformAt(0);
        assertThat(measured.frontMm()).isCloseTo(60, within(1e-9));
        Platform.State full = Vehicle.of(car.with(Quantity.FUEL_MASS, 100), Conditions.STANDARD)
                .platformAt(0);
        // 60 kg more: its share on each axle over twice the ride rate, in mm.
        assertThat(full.frontMm()).isCloseTo(60 - 1000 * 0.46 * 60 * G / (2 * rideRate(car, true)), within(1e-9));
        assertThat(full.rearMm()).isCloseTo(80 - 1000 * 0.54 * 60 * G / (2 * rideRate(car, false)), within(1e-9));
    }

    @Test
    void theCentreOfGravityRisesWithTheCar() {
        Map<Quantity, Double> q = Map.of(Quantity.CG_AT_FRONT_HEIGHT, 60.0, Quantity.CG_AT_REAR_HEIGHT, 80.0);
        Car car = TestCars.winged(q);
        assertThat(Vehicle.of(car, Conditions.STANDARD).cgHeight).isCloseTo(0.45, within(1e-12));
        Car raised = car.with(Quantity.RIDE_HEIGHT_FRONT, 70).with(Quantity.RIDE_HEIGHT_REAR, 84);
        // A stiff body on two heights: 46 % of the weight in front is 46 % of the front's rise.
        assertThat(Vehicle.of(raised, Conditions.STANDARD).cgHeight)
                .isCloseTo(0.45 + 0.46 * 0.010 + 0.54 * 0.004, within(1e-12));
        assertThat(Vehicle.of(TestCars.winged().with(Quantity.RIDE_HEIGHT_FRONT, 70), Conditions.STANDARD).cgHeight)
                .isEqualTo(0.45);
    }

    @Test
    void aCentreOfGravityBelowTheRoadIsRefused() {
        Car car = TestCars.winged(
                Map.of(Quantity.CG_HEIGHT, 0.1, Quantity.CG_AT_FRONT_HEIGHT, 400.0, Quantity.CG_AT_REAR_HEIGHT, 400.0));
        assertThatThrownBy(() -> Vehicle.of(car, Conditions.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("below the road")
                .hasMessageContaining("chassis.cgFrontRideHeightMm");
    }
}
