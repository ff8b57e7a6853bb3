package dev.lapwright.powertrain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FuelConsumptionTest {
    private static final double JOULE_PER_KWH = 3.6e6;

    @ParameterizedTest(name = "{0}")
    @CheckFile("fuel.csv")
    void fuelIsThatOfTheStandards(CheckRow row) {
        row.verify(
                switch (row.quantity()) {
                    case "heating value" -> FuelConsumption.HEATING_VALUE / 1e6;
                    case "density" -> FuelConsumption.DENSITY;
                    case "consumption of a racing engine" -> FuelConsumption.RACING_ENGINE;
                    case "efficiency" -> FuelConsumption.efficiency(row.number("input"));
                    case "litres for 2 kWh" ->
                        2
                                * JOULE_PER_KWH
                                * FuelConsumption.constant(row.number("input")).kgPerJoule(6000)
                                / FuelConsumption.DENSITY;
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @ParameterizedTest
    @CsvSource({"1000, 320", "3000, 320", "4500, 300", "6000, 280", "9000, 280"})
    void aMapIsLinearBetweenItsPointsAndLevelBeyond(double rpm, double expected) {
        FuelConsumption map = new FuelConsumption(new double[] {3000, 6000}, new double[] {320, 280});
        assertThat(map.at(rpm)).isCloseTo(expected, within(1e-9));
    }

    @Test
    void aMapNeedsOneValueForEachSpeed() {
        assertThatThrownBy(() -> new FuelConsumption(new double[] {3000, 6000}, new double[] {300}))
                .isInstanceOf(InvalidValueException.class);
    }
}
