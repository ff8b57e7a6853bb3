package dev.lapwright.charts.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.Example;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AxisTextTest {
    private static final SweepResult SWEEP = Example.sweep(new SweepAxis("rear-wing", new double[] {6}));

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rear-wing|Rear wing (deg)",
                "chassis.massKg|Mass with driver (kg)",
                "aero.wings.rear.angleDeg|Angle of wing rear (deg)",
                "gearbox.finalDrive|Ratio of the final drive",
                "conditions.airTempC|Air temperature (degC)",
                "conditions.grip|Grip of the surface"
            })
    void labelNamesTheThingAndItsUnit(String name, String label) {
        assertThat(AxisText.of(SWEEP, new SweepAxis(name, new double[] {1})).label())
                .isEqualTo(label);
    }

    @Test
    void everythingThatCanBeSweptHasALabel() {
        for (String name : SWEEP.car().settableNames()) {
            AxisText text = AxisText.of(SWEEP, new SweepAxis(name, new double[] {1}));
            assertThat(text.label()).isNotBlank();
            assertThat(text.unit()).isEqualTo(SWEEP.car().unitOf(name).symbol());
        }
    }

    @Test
    void settingsAreWrittenWithoutNoiseOfRounding() {
        assertThat(new AxisText("Final drive", "").value(3 * 0.1)).isEqualTo("0.3");
        assertThat(new AxisText("Air temperature", "degC").value(-5)).isEqualTo("\u22125 degC");
    }

    @Test
    void abbreviationKeepsItsCapitals() {
        assertThat(AxisText.inSentence("Rear wing")).isEqualTo("rear wing");
        assertThat(AxisText.inSentence("ABS level")).isEqualTo("ABS level");
    }
}
