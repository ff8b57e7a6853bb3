package dev.lapwright.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/** The air against its standards. */
class AirStandardsTest {
    private static final double ZERO_CELSIUS = 273.15;

    @ParameterizedTest(name = "{0}")
    @CheckFile("standard-atmosphere.csv")
    void theAtmosphereIsTheStandardOne(CheckRow row) {
        Atmosphere air = Atmosphere.standard(row.number("altitude_m"));
        row.verify(
                switch (row.quantity()) {
                    case "temperature" -> air.temperature();
                    case "density" -> air.density();
                    case "pressure" ->
                        air.pressure()
                                / switch (row.text("unit")) {
                                    case "bar" -> 1e5;
                                    case "hPa" -> 100;
                                    default -> 1;
                                };
                    default -> throw new IllegalArgumentException(row.quantity());
                });
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("moist-air.csv")
    void moistAirHasTheDensityOfTheMetrologists(CheckRow row) {
        Atmosphere air = new Atmosphere(
                ZERO_CELSIUS + row.number("temperature_c"), row.number("pressure_pa"), row.number("humidity"));
        row.verify(air.density());
    }

    @ParameterizedTest(name = "{0}")
    @CheckFile("power-correction.csv")
    void anEngineIsCorrectedAsItsStandardHasIt(CheckRow row) {
        Atmosphere dry =
                new Atmosphere(ZERO_CELSIUS + row.number("temperature_c"), 100 * row.number("pressure_hpa"), 0);
        row.verify(1 / PowerCorrection.valueOf(row.quantity()).powerFactor(dry));
    }

    /** Water vapour (18 g/mol) replaces air (29 g/mol) at the same pressure. */
    @Test
    void humidAirIsLighterThanDry() {
        assertThat(new Atmosphere(303, 1e5, 0.9).density()).isLessThan(new Atmosphere(303, 1e5, 0.1).density());
    }

    /** The dry part alone burns fuel; DIN 70020 goes by the whole pressure. */
    @Test
    void humidityTakesPowerWhereTheStandardGoesByDryPressure() {
        Atmosphere dry = new Atmosphere(303, 1e5, 0);
        Atmosphere humid = new Atmosphere(303, 1e5, 0.8);
        assertThat(PowerCorrection.SAE_J1349.powerFactor(humid)).isLessThan(PowerCorrection.SAE_J1349.powerFactor(dry));
        assertThat(PowerCorrection.ISO_1585.powerFactor(humid)).isLessThan(PowerCorrection.ISO_1585.powerFactor(dry));
        assertThat(PowerCorrection.DIN_70020.powerFactor(humid)).isEqualTo(PowerCorrection.DIN_70020.powerFactor(dry));
        assertThat(PowerCorrection.NONE.powerFactor(humid)).isEqualTo(1);
    }

    /** A weather report's north wind (0°) meets a car that drives north (heading 90° from east, counter-clockwise). */
    @Test
    void aWindFromAheadIsAHeadWind() {
        Wind north = Wind.fromCompass(7, 0);
        double rounding = 1e-12;
        assertThat(north.headWind(Math.PI / 2)).isCloseTo(7, within(rounding));
        assertThat(north.headWind(-Math.PI / 2)).isCloseTo(-7, within(rounding));
        assertThat(north.headWind(0)).isCloseTo(0, within(rounding));
    }
}
