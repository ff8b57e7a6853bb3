package dev.lapwright.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Unit;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.tyre.Wheel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PressureLogTest {
    private static final PressureDay DAY = new PressureDay(15, 25, 1000);

    private static PressureLog read(String text) {
        return PressureLog.read(new DocumentSource("log.csv", text), DAY, Double.NaN, Unit.PSI);
    }

    @Test
    void eachRowIsAPairInKilopascal() {
        PressurePair pair =
                read("tyre,cold (psi),hot (bar)\nFL,17,1.7\n").pairs().get(0);
        assertThat(pair.wheel()).isEqualTo(Wheel.FRONT_LEFT);
        // One psi is 6894.757 Pa (NIST SP 811), so 17 psi are 117.2109 kPa: the last digit.
        assertThat(pair.coldKpa()).isCloseTo(117.2109, within(1e-4));
        assertThat(pair.hotKpa()).isCloseTo(170, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "tyre,coldKpa,hotKpa",
                "Tyre;Cold [kPa];Hot [kPa]",
                "wheel,cold_kpa,hot_kpa",
                "hot pressure (kPa),cold pressure (kPa),tire"
            })
    void headingsAreTakenInAnyFormAndOrder(String header) {
        boolean hotFirst = header.startsWith("hot");
        char comma = header.contains(";") ? ';' : ',';
        String row = hotFirst ? "165,120,RL" : "RL,120,165";
        PressurePair pair =
                read(header + "\n" + row.replace(',', comma) + "\n").pairs().get(0);
        assertThat(pair.coldKpa()).isEqualTo(120);
        assertThat(pair.hotKpa()).isEqualTo(165);
    }

    @Test
    void whatARowLeavesOutIsThatOfTheDay() {
        assertThat(read("tyre,cold,hot\nall,17,24\n").pairs()).hasSize(4).allSatisfy(pair -> {
            assertThat(pair.day()).isEqualTo(DAY);
            assertThat(pair.coldTempC()).isEqualTo(15);
        });
    }

    @Test
    void temperaturesInFahrenheitAreConverted() {
        PressurePair pair = read("tyre,cold,hot,air (degF),track (degF)\nFR,17,24,68,86\n")
                .pairs()
                .get(0);
        // By definition 68 degF is 20 degC and 86 degF is 30 degC; rounding of doubles.
        assertThat(pair.day().airTempC()).isCloseTo(20, within(1e-9));
        assertThat(pair.day().trackTempC()).isCloseTo(30, within(1e-9));
        assertThat(pair.coldTempC()).isCloseTo(20, within(1e-9));
    }

    @Test
    void treadTemperaturesAreRead() {
        assertThat(read("tyre,cold,hot,inner,middle,outer\nFL,17,24,92,86,80\n")
                        .tread()
                        .get(Wheel.FRONT_LEFT)
                        .camberSpread())
                .isEqualTo(12);
    }

    @Test
    void aMissingColumnIsNamedWithTheHeadingsThereAre() {
        assertThatThrownBy(() -> read("tyre,cold,warm\nFL,17,24\n"))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("hot (psi)")
                .hasMessageContaining("tyre, cold, warm");
    }

    @ParameterizedTest
    @CsvSource({
        "'FL,24,17', not above the cold one",
        "'FL,1.2,1.7', looks like bar",
        "'FL,117,165', looks like kPa",
        "'XL,17,24', no wheel has that name",
        "'FL,17,', there is no value",
        "'FL,17,hot', is not a pressure"
    })
    void aBadRowIsToldWithItsLine(String row, String told) {
        assertThatThrownBy(() -> read("tyre,cold,hot\nall,17,24\n" + row + "\n"))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("line 3")
                .hasMessageContaining(told);
    }

    @Test
    void allFaultsAreToldAtOnce() {
        assertThatThrownBy(() -> read("tyre,cold,hot\nFL,24,17\nFR,24,17\n"))
                .isInstanceOfSatisfying(
                        DocumentException.class, e -> assertThat(e.faults()).hasSize(2));
    }

    @Test
    void onlyUnitsOfTyreGaugesAreKnown() {
        assertThatThrownBy(() -> GaugeText.kpa("cold", "17 degC", Unit.PSI)).isInstanceOf(InvalidValueException.class);
    }
}
