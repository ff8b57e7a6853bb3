package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the names of setups in a log say was set. */
class SetupNameTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "wing=7,final-drive=4.5",
                "wing=7 final-drive=4.50",
                " wing=7; final-drive=4.5 ",
                "wing=+7,final-drive=4.5"
            })
    void severalSettingsStandSideBySide(String name) {
        Car car = SetupName.set(BriefCars.CAR, name);
        assertThat(car.setting("wing")).isEqualTo(7);
        assertThat(car.setting("final-drive")).isEqualTo(4.5);
    }

    @Test
    void aQuantityOfTheCarMayBeNamedToo() {
        assertThat(SetupName.set(BriefCars.CAR, "chassis.fuelKg=20").value("chassis.fuelKg"))
                .isEqualTo(20);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"wing 7", "wing", "wing=", "wing=seven", "wing=NaN", "wing=7d", "flap=3", "wing=7,new", "A", ","
            })
    void aNameThatSaysNothingOfTheKindIsNoGuess(String name) {
        assertThatThrownBy(() -> SetupName.set(BriefCars.CAR, name))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("does not say what was set");
    }
}
