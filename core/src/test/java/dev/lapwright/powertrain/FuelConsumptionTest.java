package dev.lapwright.powertrain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FuelConsumptionTest {
    private static final double JOULE_PER_KWH = 3.6e6;

    /**
     * Published: 116 090 Btu per US gallon (U.S. Department of Energy, Alternative Fuels Data Center, after GREET); 2819 g per
     * gallon from memory. Tolerance: half of our last digit.
     */
    @Test
    void theHeatingValueIsThatOfTheDepartmentOfEnergy() {
        assertThat(FuelConsumption.HEATING_VALUE).isCloseTo(116_090 * 1055.056 / 2.819, within(5e3));
    }

    /** EN 228:2012: petrol has 720 to 775 kg/m³ at 15 degC. */
    @Test
    void theDensityIsWithinTheStandardForPetrol() {
        assertThat(FuelConsumption.DENSITY).isBetween(0.720, 0.775);
    }

    /** 0.5 lb/hp h by the definitions of pound and horsepower (NIST SP 811); half of the last digit. */
    @Test
    void theDefaultIsHalfAPoundForEachHorsepowerHour() {
        double joulePerHorsepowerHour = 745.69987 * 3600;
        double gramPerKwh = 0.5 * 453.59237 / (joulePerHorsepowerHour / JOULE_PER_KWH);
        assertThat(FuelConsumption.RACING_ENGINE).isCloseTo(gramPerKwh, within(0.5));
    }

    /** Closed form 3600/(efficiency x 43.4 MJ/kg), rounded in its last digit; our heating value is 0.12 % above 43.4. */
    @ParameterizedTest
    @CsvSource({"332, 0.25", "276.5, 0.30", "237, 0.35", "207, 0.40"})
    void consumptionIsTheInverseOfEfficiency(double gramPerKwh, double efficiency) {
        assertThat(FuelConsumption.efficiency(gramPerKwh)).isCloseTo(efficiency, within(0.004 * efficiency));
    }

    /** Closed form: 2.0 kWh at 275 g/kWh and 745 kg/m³ are 0.73826 l; half of the last digit. */
    @Test
    void twoKilowattHoursTakeThreeQuartersOfALitre() {
        double litres = 2 * JOULE_PER_KWH * FuelConsumption.constant(275).kgPerJoule(6000) / FuelConsumption.DENSITY;
        assertThat(litres).isCloseTo(0.73826, within(5e-6));
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
