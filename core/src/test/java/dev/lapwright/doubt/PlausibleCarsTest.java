package dev.lapwright.doubt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

class PlausibleCarsTest {
    private static final int DRAWS = 400;
    /** A Latin hypercube of 400 draws knows a mean to 0.001 and a deviation to 0.01 of itself; more by a few times. */
    private static final double OFF = 0.03;

    private static final Car CAR = StudyCars.winged(
            PlainCar.ofMass(1000).with(Quantity.LIFT_AREA_FRONT, 0.5).with(Quantity.LIFT_AREA_REAR, 0.7), 0.02, 0.05);

    private static CarDoubt.Size size(double amount, boolean percent, boolean limit) {
        return new CarDoubt.Size(amount, percent, limit, CarDoubt.Source.ESTIMATED);
    }

    private static Car doubting(Quantity quantity, CarDoubt.Size size) {
        return CAR.doubting(new CarDoubt(Map.of(quantity.path(), size), List.of(), new double[0][]));
    }

    private static double[] drawn(PlausibleCars cars, Car setUp, ToDoubleFunction<Car> figure) {
        return Arrays.stream(cars.draws(DRAWS, 1))
                .mapToDouble(draw -> figure.applyAsDouble(cars.car(setUp, draw)))
                .toArray();
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElseThrow();
    }

    private static double deviation(double[] values) {
        double mean = mean(values);
        return Math.sqrt(
                mean(Arrays.stream(values).map(v -> (v - mean) * (v - mean)).toArray()));
    }

    private static double[] logarithms(double[] values) {
        return Arrays.stream(values).map(Math::log).toArray();
    }

    /** A lognormal number with relative deviation c has ln-variance ln(1 + c²) (any textbook); the value given is its median. */
    @Test
    void whatIsPositiveIsOffByALognormalFactor() {
        PlausibleCars cars =
                PlausibleCars.asStated(doubting(Quantity.MASS, size(200, false, false)), Conditions.STANDARD);
        double[] masses = logarithms(drawn(cars, CAR, car -> car.value(Quantity.MASS)));
        double sigma = Math.sqrt(Math.log(1 + 0.2 * 0.2));
        assertThat(mean(masses)).isEqualTo(Math.log(1000), within(OFF * sigma));
        assertThat(deviation(masses)).isEqualTo(sigma, within(OFF * sigma));
    }

    /** A rectangle of half width a: all within, deviation a/√3 (JCGM 100:2008, 4.3.7). */
    @Test
    void aLimitIsNeverPassedAndEvenWithin() {
        PlausibleCars cars = PlausibleCars.asStated(doubting(Quantity.MASS, size(3, true, true)), Conditions.STANDARD);
        double[] masses = drawn(cars, CAR, car -> car.value(Quantity.MASS));
        assertThat(Arrays.stream(masses)).allMatch(mass -> mass >= 970 && mass <= 1030);
        assertThat(deviation(masses)).isEqualTo(30 / Math.sqrt(3), within(OFF * 30));
    }

    @Test
    void whatMayBeNegativeIsOffByANormalAmount() {
        PlausibleCars cars =
                PlausibleCars.asStated(doubting(Quantity.LIFT_AREA_REAR, size(0.4, false, false)), Conditions.STANDARD);
        double[] areas = drawn(cars, CAR, car -> car.value(Quantity.LIFT_AREA_REAR));
        assertThat(mean(areas)).isEqualTo(0.7, within(OFF * 0.4));
        assertThat(deviation(areas)).isEqualTo(0.4, within(OFF * 0.4));
        assertThat(Arrays.stream(areas)).anyMatch(area -> area < 0);
    }

    @Test
    void errorsHangTogetherAsStated() {
        Map<String, CarDoubt.Size> sizes = new LinkedHashMap<>();
        sizes.put(Quantity.FRICTION_Y_FRONT.path(), size(2, true, false));
        sizes.put(Quantity.FRICTION_Y_REAR.path(), size(4, true, false));
        sizes.put(Quantity.FRICTION_X_FRONT.path(), size(2, true, false));
        double[][] correlation = {{1, 0.8, 1}, {0.8, 1, 0.8}, {1, 0.8, 1}};
        PlausibleCars cars = PlausibleCars.asStated(
                CAR.doubting(new CarDoubt(sizes, List.copyOf(sizes.keySet()), correlation)), Conditions.STANDARD);
        // The third goes wholly with the first: nothing of its own.
        assertThat(cars.unknowns()).hasSize(2);
        double[] front = logarithms(drawn(cars, CAR, car -> car.value(Quantity.FRICTION_Y_FRONT)));
        double[] rear = logarithms(drawn(cars, CAR, car -> car.value(Quantity.FRICTION_Y_REAR)));
        double[] along = logarithms(drawn(cars, CAR, car -> car.value(Quantity.FRICTION_X_FRONT)));
        double product = 0;
        for (int i = 0; i < DRAWS; i++) {
            product += (front[i] - mean(front)) * (rear[i] - mean(rear)) / DRAWS;
            assertThat(along[i] - mean(along)).isEqualTo(front[i] - mean(front), within(1e-9));
        }
        // A correlation ρ of n draws is known to (1 − ρ²)/√n, 0.018; three of them.
        assertThat(product / (deviation(front) * deviation(rear))).isEqualTo(0.8, within(0.054));
    }

    @Test
    void anErrorIsTheSameInAllSettings() {
        PlausibleCars cars = PlausibleCars.of(CAR, Conditions.STANDARD);
        double[] draw = cars.draws(20, 4)[7];
        Car light = cars.car(CAR.with(Quantity.MASS, 900), draw);
        Car heavy = cars.car(CAR.with(Quantity.MASS, 1200), draw);
        // Rounding.
        assertThat(light.value(Quantity.MASS) / 900).isEqualTo(heavy.value(Quantity.MASS) / 1200, within(1e-12));
        assertThat(cars.day(Conditions.STANDARD, draw)).isEqualTo(cars.day(Conditions.STANDARD, draw));
    }

    /** A factor on all drag at once, and one on what the angle changes, about the angle at which the car stands. */
    @Test
    void aWingsEffectTurnsAboutWhereItStands() {
        PlausibleCars cars = PlausibleCars.of(CAR, Conditions.STANDARD);
        int level = place(cars, "drag");
        int effect = place(cars, "what wing rear does to drag");
        double[] draw = new double[cars.unknowns().size()];
        draw[effect] = 2;
        assertThat(drag(cars.car(CAR, draw), 5)).isEqualTo(drag(CAR, 5), within(1e-12));
        double sigma = Math.sqrt(Math.log(1 + 0.15 * 0.15));
        double turned = Math.exp(2 * sigma) * (drag(CAR, 9) - drag(CAR, 5));
        // The table is a straight line, which a monotone cubic holds.
        assertThat(drag(cars.car(CAR, draw), 9) - drag(CAR, 5)).isEqualTo(turned, within(1e-12));
        draw[effect] = 0;
        draw[level] = 1;
        double factor = Math.exp(Math.sqrt(Math.log(1 + 0.08 * 0.08)));
        assertThat(drag(cars.car(CAR, draw), 9)).isEqualTo(factor * drag(CAR, 9), within(1e-12));
    }

    private static double drag(Car car, double angle) {
        Wing wing = car.wings().get(0);
        return wing.at(angle).drag() + car.value(Quantity.DRAG_AREA);
    }

    private static int place(PlausibleCars cars, String title) {
        return cars.unknowns().stream().map(Unknown::title).toList().indexOf(title);
    }

    /** Points of the front share of all downforce: base and wing, here 0.5 + 0.25 of 1.7. */
    @Test
    void theAeroBalanceMovesByPoints() {
        PlausibleCars cars = PlausibleCars.of(CAR, Conditions.STANDARD);
        double[] draw = new double[cars.unknowns().size()];
        draw[place(cars, "aero balance")] = 1;
        Car drawn = cars.car(CAR, draw);
        Areas wing = CAR.wings().get(0).at(5);
        double total = 0.5 + 0.7 + wing.liftFront() + wing.liftRear();
        assertThat(drawn.value(Quantity.LIFT_AREA_FRONT)).isEqualTo(0.5 + 0.02 * total, within(1e-12));
        assertThat(drawn.value(Quantity.LIFT_AREA_REAR)).isEqualTo(0.7 - 0.02 * total, within(1e-12));
    }

    @Test
    void whatTheDocumentStatesIsNotAssumed() {
        PlausibleCars cars = PlausibleCars.of(doubting(Quantity.MASS, size(1, false, false)), Conditions.STANDARD);
        assertThat(cars.unknowns().get(0).isAssumed()).isFalse();
        assertThat(cars.unknowns().get(0).measure()).contains("weigh");
        assertThat(cars.unknowns().stream().skip(1)).allMatch(Unknown::isAssumed);
        assertThat(place(cars, DoubtClass.MASS.title())).isNegative();
        assertThat(place(PlausibleCars.of(CAR, Conditions.STANDARD), DoubtClass.MASS.title()))
                .isNotNegative();
    }

    /** Of two components a wind of 1 m/s each: the mean square of its speed is 2, on a calm day. */
    @Test
    void aCalmDayMayHaveAWind() {
        PlausibleCars cars = PlausibleCars.of(CAR, Conditions.STANDARD);
        double[] squares = Arrays.stream(cars.draws(DRAWS, 1))
                .map(draw -> cars.day(Conditions.STANDARD, draw))
                .mapToDouble(day -> day.windSpeedMps() * day.windSpeedMps())
                .toArray();
        assertThat(mean(squares)).isEqualTo(2, within(2 * OFF));
    }

    @Test
    void whatIsDrawnStaysWithinWhatAQuantityMayBe() {
        Car sure = CAR.with(Quantity.POWER_LOCK_REAR, 99).with(Quantity.BRAKE_FRONT_SHARE, 99.5);
        PlausibleCars cars = PlausibleCars.of(sure, Conditions.STANDARD);
        double[] locks = drawn(cars, sure, car -> car.value(Quantity.POWER_LOCK_REAR));
        assertThat(Arrays.stream(locks)).allMatch(lock -> lock > 0 && lock <= 100);
        assertThat(locks).contains(100);
        assertThat(drawn(cars, sure, car -> car.value(Quantity.BRAKE_FRONT_SHARE)))
                .contains(100);
    }

    @Test
    void aDrawnCarIsNotSetUpAgain() {
        PlausibleCars cars = PlausibleCars.of(CAR, Conditions.STANDARD);
        Car drawn = cars.car(CAR, cars.draws(1, 1)[0]);
        assertThatThrownBy(() -> drawn.with("wing", 3)).isInstanceOf(IllegalStateException.class);
    }
}
