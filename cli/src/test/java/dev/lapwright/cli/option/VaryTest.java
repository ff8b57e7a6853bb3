package dev.lapwright.cli.option;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.results.Subject;
import dev.lapwright.results.Vary;
import org.junit.jupiter.api.Test;

class VaryTest {
    private static final Car CAR = Documents.car("gt-talvex");
    private static final Subject CHOICE =
            new Subject(CAR, Setup.STANDARD, CAR, Documents.circuit("harrowmere"), Conditions.STANDARD);

    private static double[] values(String text) {
        return Vary.parse(text, CHOICE).axis().values();
    }

    @Test
    void aRangeIncludesBothEnds() {
        assertThat(values("rear-wing=0:1:0.1")).hasSize(11).startsWith(0).endsWith(1);
    }

    @Test
    void aRangeMayStepDown() {
        assertThat(values("rear-wing=4:2:-1")).containsExactly(4, 3, 2);
    }

    @Test
    void negativeValuesAreRead() {
        assertThat(values("front-toe=-0.2:0:0.1")).hasSize(3).startsWith(-0.2);
        assertThat(values("front-toe=-0.2,0.1")).containsExactly(-0.2, 0.1);
    }

    @Test
    void oneUnitServesAllValues() {
        // 1 bar is 100 kPa by definition.
        double[] values = values("tyres.front.hotPressureKpa=1.6:2:0.2bar");
        assertThat(values).containsExactly(new double[] {160, 180, 200}, within(1e-9));
        assertThat(values("tyres.front.hotPressureKpa=1.6bar:2bar:0.2bar")).isEqualTo(values);
    }

    @Test
    void clicksCountFromTheLeastSetting() {
        double click = CAR.adjustment("rear-wing").clickSize();
        double least = CAR.adjustment("rear-wing").min();
        assertThat(values("rear-wing=2,3clicks"))
                .containsExactly(new double[] {least + 2 * click, least + 3 * click}, within(1e-12));
    }

    @Test
    void temperaturesInFahrenheitKeepTheirOffset() {
        // 32 degF is 0 degC, 212 degF is 100 degC, by definition.
        assertThat(values("tyres.temperatureC=32,212degF")).containsExactly(new double[] {0, 100}, within(1e-9));
    }

    @Test
    void whatWasTypedIsKeptForTheTable() {
        Vary vary = Vary.parse("tyres.front.hotPressureKpa=1.6,2bar", CHOICE);
        assertThat(vary.typedUnit()).isEqualTo("bar");
        assertThat(vary.typedFor(vary.axis().value(1))).isEqualTo(2);
    }

    @Test
    void theUsualUnitIsNotShownTwice() {
        assertThat(Vary.parse("rear-wing=1,2deg", CHOICE).typed()).isEmpty();
    }
}
