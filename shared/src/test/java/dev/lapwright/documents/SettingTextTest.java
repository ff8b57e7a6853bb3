package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Factors: NIST SP 811 (2008), appendix B.8: psi 6.894 757 kPa, inch 25.4 mm exactly, pound 0.453 592 37 kg exactly.
 */
class SettingTextTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));

    @ParameterizedTest
    @CsvSource({
        "rear-wing, 7, 7, 0",
        "rear-wing, ' 7.5 deg', 7.5, 0",
        "rear-wing, 3 clicks, 1.5, 0", // half a degree for each click above the least setting, 0
        "rear-wing, 1 click, 0.5, 0",
        "rear-wing, 0.1rad, 5.729578, 5e-7", // a radian is 57.295 779 5 degrees
        "front-pressure, 165kPa, 23.93123, 5e-6", // 165 / 6.894 757
        "front-pressure, 1.7 BAR, 24.65642, 5e-6", // 170 / 6.894 757
        "rake, 1 in, 25.4, 1e-12",
        "suspension.front.springNPerMm, 300 lb/in, 52.53804, 1.5e-5", // lbf/in is 175.1268 N/m, seven digits
        "suspension.front.springNPerMm, 300 lbf/in, 52.53804, 1.5e-5",
        "final-drive, 3.9, 3.9, 0",
        "brake-bias, 12 clicks, 12, 0",
        "chassis.massKg, 2500 lb, 1133.980925, 1e-9",
        "chassis.frontWeightPercent, 51 %, 51, 0",
        "aero.wings.rear.angleDeg, 1e1, 10, 0",
        "gearbox.ratios.2, 2.05, 2.05, 0",
    })
    void isReadInAnyUnitThatFits(String name, String text, double expected, double tolerance) {
        assertThat(SettingText.value(CAR, name, text)).isCloseTo(expected, within(tolerance));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    rear-wing     | high      | rear-wing: 'high' is not a number; write a number, if you like with a unit, as in 6 deg
                    rear-wing     | NaN       | rear-wing: 'NaN' is not a number; write a number, if you like with a unit, as in 6 deg
                    rear-wing     | 6,5       | rear-wing: it is not measured in ',5'; give a number in deg or rad
                    rear-wing     | 3 mm      | rear-wing: it is not measured in 'mm'; give a number in deg or rad
                    rear-wing     | 13        | rear-wing: 13 deg is outside the range of this adjustment; allowed: 0 deg to 12 deg
                    rear-wing     | 3.5 clicks | rear-wing: 3.5 clicks lie between two clicks; give whole clicks; a setting in its own unit may lie between
                    front-pressure | 250 kPa  | front-pressure: '250 kPa': 36.25943 psi is outside the range of this adjustment; allowed: 22 psi to 30 psi (151.6847 to 206.8427 kPa)
                    brake-bias    | 2.5       | brake-bias: 2.5 clicks lie between two clicks; give whole clicks
                    rear-wing     | 60 clicks | rear-wing: '60 clicks': 30 deg is outside the range of this adjustment; allowed: 0 deg to 12 deg
                    rake          | 2 clicks  | rake: it has no clicks; give a number in mm, m or in
                    final-drive   | 3.9 mm    | final-drive: it is not measured in 'mm'; give a number alone
                    brake-bias    | 3 mm      | brake-bias: it is not measured in 'mm'; give a number in clicks
                    rear-wnig     | 3         | rear-wnig: this car has no adjustment or quantity of that name; perhaps you meant rear-wing
                    """)
    void isRefusedInTheseWords(String name, String text, String words) {
        assertThatThrownBy(() -> SettingText.value(CAR, name, text)).hasMessage(words);
    }

    @ParameterizedTest
    @CsvSource({
        "conditions.airTempC, 68 degF, 20, 1e-12", // (68 - 32) / 1.8
        "conditions.airPressureHpa, 101.3 kPa, 1013, 1e-9",
        "conditions.windSpeedMps, 36 km/h, 10, 1e-12",
        "conditions.grip, 0.9, 0.9, 0",
    })
    void worksForConditionsToo(String name, String text, double expected, double tolerance) {
        assertThat(SettingText.value(Conditions.STANDARD, name, text)).isCloseTo(expected, within(tolerance));
    }

    @Test
    void refusesConditionsOutOfRange() {
        assertThatThrownBy(() -> SettingText.value(Conditions.STANDARD, "conditions.humidityPercent", "120"))
                .hasMessage("humidityPercent: 120 is outside its range; allowed: 0 to 100");
    }
}
