package dev.lapwright.tyre;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Unit;
import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GasLawTest {
    private static final double STANDARD_AIR_KPA = 101.325;

    private static double kpa(double psi) {
        return Unit.PSI.convert(psi, Unit.KILOPASCAL);
    }

    private static double psi(double kpa) {
        return Unit.KILOPASCAL.convert(kpa, Unit.PSI);
    }

    private static double celsius(double fahrenheit) {
        return Unit.FAHRENHEIT.convert(fahrenheit, Unit.CELSIUS);
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("gas-law.csv")
    void pressureFollowsThePublishedExamples(CheckRow row) {
        double gauge = row.number("gauge");
        double from = row.number("from");
        double to = row.number("to");
        double air = row.number("air");
        row.verify(
                switch (row.quantity()) {
                    case "pressure, psi and degF" ->
                        psi(GasLaw.pressure(kpa(gauge), celsius(from), celsius(to), kpa(air)));
                    case "gain, psi and degF" ->
                        psi(GasLaw.pressure(kpa(gauge), celsius(from), celsius(to), kpa(air))) - gauge;
                    case "pressure, kPa and degC" -> GasLaw.pressure(gauge, from, to, air);
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    /** Common practice, no source: a GT tyre set near 117 kPa (17 psi) runs at 159 to 172 kPa hot, its gas at 75 to 90 degC. */
    @ParameterizedTest
    @CsvSource({"80", "85", "88"})
    void aTyreOfAGtCarSetToSeventeenPsiRunsInTheTradesRange(double hotTempC) {
        assertThat(GasLaw.pressure(kpa(17), 20, hotTempC, STANDARD_AIR_KPA)).isBetween(159.0, 172.0);
    }

    /** Common practice, no source; a little more is up to a third here, T2/T1 for 20 to 100 degC being 1.27. */
    @Test
    void onePsiMoreColdIsALittleMoreThanOneHot() {
        double more =
                GasLaw.pressure(kpa(18), 20, 85, STANDARD_AIR_KPA) - GasLaw.pressure(kpa(17), 20, 85, STANDARD_AIR_KPA);
        assertThat(psi(more)).isBetween(1.0, 1.33);
    }

    /** Derived by hand: 160 kPa absolute at 293.15 K become 176 kPa at 1.1 · 293.15 K = 322.465 K. */
    @Test
    void aTyreThatHoldsATenthMoreIsATenthWarmer() {
        // Rounding of doubles.
        assertThat(GasLaw.temperature(60, 20, 76, 100)).isCloseTo(49.315, within(1e-10));
    }

    @Test
    void theTemperatureOfAPairGivesThePairBack() {
        double temperature = GasLaw.temperature(120, 18, 168, 95);
        // Rounding of doubles.
        assertThat(GasLaw.pressure(120, 18, temperature, 95)).isCloseTo(168, within(1e-10));
    }

    @Test
    void thinnerAirRaisesTheGaugeByWhatItLacks() {
        // Same gas, same temperature: only the pressure that the gauge reads against differs. Rounding of doubles.
        assertThat(GasLaw.pressure(120, 20, 100, 20, 90)).isCloseTo(130, within(1e-10));
    }

    @Test
    void aTyreWithoutGasHasNoTemperature() {
        assertThatThrownBy(() -> GasLaw.temperature(-100, 20, 50, 100))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("no gas");
    }
}
