package dev.lapwright.car;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Factors of NIST SP 811 (2008), appendix B.8, worked out by hand to four digits; the inch of mercury is the conventional one. */
class UnitGuessTest {
    @ParameterizedTest
    @CsvSource({
        "2833, KILOGRAM, 150, 2500, 2833 lb are 1285 kg",
        "2700, METRE, 0.5, 8, 2700 mm are 2.7 m",
        "5.5, METRE, 0.4, 3, 5.5 ft are 1.676 m",
        "26, KILOPASCAL, 60, 400, 26 psi are 179.3 kPa",
        "1.8, KILOPASCAL, 20, 1000, 1.8 bar are 180 kPa",
        "1142, NEWTON_PER_MM, 4, 800, 1142 lbf/in are 200 N/mm",
        "0.475, PERCENT, 10, 90, 0.475 as a share is 47.5 %",
        "59, CELSIUS, -20, 48, 59 degF are 15 degC",
        "288, CELSIUS, -40, 60, 288 K are 14.85 degC",
        "29.92, HECTOPASCAL, 400, 1100, 29.92 inHg are 1013 hPa",
        "8.2, RPM, 500, 60000, 8.2 thousand rpm are 8200 rpm",
        "3, DEGREE, 30, 300, 3 rad are 171.9 deg",
        "50, SECOND, 0, 2, 50 ms are 0.05 s",
        "120, METRE_PER_SECOND, 0, 40, 120 km/h are 33.33 m/s"
    })
    void theUnitIsTheOneInWhichTheValueLiesWithinItsBounds(
            double value, Unit unit, double least, double most, String told) {
        assertThat(UnitGuess.of(value, unit, least, most))
                .hasValueSatisfying(guess -> assertThat(guess).endsWith("meant: " + told));
    }

    @Test
    void nothingIsGuessedOfWhatIsUsualOrFitsNoUnitOrTooMany() {
        assertThat(UnitGuess.of(1285, Unit.KILOGRAM, 150, 2500)).isEmpty();
        assertThat(UnitGuess.of(1e9, Unit.KILOGRAM, 150, 2500)).isEmpty();
        assertThat(UnitGuess.of(Double.NaN, Unit.KILOGRAM, 150, 2500)).isEmpty();
        assertThat(UnitGuess.of(10, Unit.METRE, 1e-9, 9.99)).isEmpty();
        assertThat(UnitGuess.remedy("look", 1, Unit.KILOGRAM, 0, 2)).isEqualTo("look");
    }
}
