package dev.lapwright.checks;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Lap;
import dev.lapwright.powertrain.TorqueCurve;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/** A quarter mile: the ideal of constant power, and a car with gears, drag and finite grip. */
class QuarterMileTest {
    private static final double QUARTER_MILE = 402.336;
    private static final double POUND = 0.45359237;
    private static final double HORSEPOWER = 550 * 0.3048 * POUND * PlainCar.GRAVITY;
    private static final double MILE_PER_HOUR = 0.44704;
    private static final double POUNDS_PER_HORSEPOWER = 10;
    /** Speed from which the power acts, m/s; what lies before is added in closed form. */
    private static final double START = 8;

    @ParameterizedTest(name = "{0}")
    @CheckFile(
            value = "quarter-mile.csv",
            quantities = {"ideal time", "ideal speed"})
    void constantPowerGivesTheIdealRun(CheckRow row) {
        double mass = 1000;
        double power = mass / POUND / row.number("pounds_per_horsepower") * HORSEPOWER;
        double before = mass * START * START * START / (3 * power);
        double beforeTime = mass * START * START / (2 * power);
        PlainCar car = PlainCar.ofMass(mass).friction(4).power(power, 4, 110);
        Lap lap = Runs.drive(car, Roads.straight(START, QUARTER_MILE - before, 0));
        row.verify(row.quantity().equals("ideal time") ? beforeTime + lap.time() : Runs.endSpeed(lap) / MILE_PER_HOUR);
    }

    /** Gears, shifts, drag, finite grip and turning parts can only cost time. */
    @Test
    void noCarOfThatPowerBeatsTheIdeal() {
        Lap lap = preparedRun();
        assertThat(lap.time()).isGreaterThan(4.803 * Math.cbrt(POUNDS_PER_HORSEPOWER));
        assertThat(Runs.endSpeed(lap) / MILE_PER_HOUR).isLessThan(281.1 / Math.cbrt(POUNDS_PER_HORSEPOWER));
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile(
            value = "quarter-mile.csv",
            quantities = {"time of a car prepared for the strip", "speed of a car prepared for the strip"})
    void aCarPreparedForTheStripComesNearTheRuleOfMeasuredOnes(CheckRow row) {
        Lap lap = preparedRun();
        row.verify(row.quantity().startsWith("time") ? lap.time() : Runs.endSpeed(lap) / MILE_PER_HOUR);
    }

    /** 3000 lb and 300 hp at the peak; good tyres, quick shifts, and gears that hold the engine near its peak. */
    private static Lap preparedRun() {
        double peakRpm = 6000;
        double peakTorque = 3000 / POUNDS_PER_HORSEPOWER * HORSEPOWER / (peakRpm * Math.PI / 30);
        PlainCar prepared = PlainCar.ofMass(3000 * POUND)
                .axles(1.35, 1.25, 0.5)
                .friction(1.4)
                .frontDrive(0)
                .drag(0.4)
                .with(Quantity.ROLLING_RESISTANCE, 0.013)
                .with(Quantity.EFFICIENCY, 0.92)
                .with(Quantity.FINAL_DRIVE, 4.2)
                .with(Quantity.WHEEL_RADIUS, 0.32)
                .with(Quantity.WHEEL_INERTIA, 5)
                .with(Quantity.ENGINE_INERTIA, 0.15)
                .with(Quantity.SHIFT_TIME, 0.1)
                .with(Quantity.REV_LIMIT, 6500)
                .gears(2.5, 1.9, 1.5, 1.2, 1)
                .engine(new TorqueCurve(new double[] {2500, 3500, 4500, 6000, 6500}, new double[] {
                    1.05 * peakTorque, 1.12 * peakTorque, 1.15 * peakTorque, peakTorque, 0.9 * peakTorque
                }));
        return Runs.drive(prepared, Roads.straight(0, QUARTER_MILE, 0));
    }
}
