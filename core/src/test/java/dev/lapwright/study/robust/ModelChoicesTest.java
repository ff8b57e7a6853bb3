package dev.lapwright.study.robust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ModelChoicesTest {
    /** Two choices of two even ways, 0.1 and 0.2 s apart: deviations 0.05 and 0.1, together their root of squares. */
    @Test
    void choicesAddUpAsIndependentOnes() {
        ModelChoices choices = new ModelChoices(List.of(
                new ModelChoices.Alternative("one", "a", 0.5, 0.3),
                new ModelChoices.Alternative("one", "b", 0.5, 0.4),
                new ModelChoices.Alternative("other", "a", 0.5, -0.1),
                new ModelChoices.Alternative("other", "b", 0.5, 0.1),
                new ModelChoices.Alternative("third", "a", 0.5, Double.NaN),
                new ModelChoices.Alternative("third", "b", 0.5, 7)));
        assertThat(choices.deviation()).isEqualTo(Math.hypot(0.05, 0.1), within(1e-12));
        assertThat(choices.byChoice()).containsOnlyKeys("one", "other", "third");
    }

    /** On a straight no brakes are used, no bend is driven and the line is the road: mass costs the same however the model chooses. */
    @Test
    void onAStraightNothingHangsOnThem() {
        Car car = StudyCars.with(PlainCar.ofMass(1000).stiffness(100).force(4000));
        ModelChoices choices = ModelChoices.between(
                car,
                Conditions.STANDARD,
                car.with(Quantity.MASS, 1100),
                Conditions.STANDARD,
                StudyCars.straight(400),
                Optional.of(StudyCars.straight(400)));
        assertThat(choices.alternatives()).hasSize(8);
        // Rounding of the solver's sums.
        assertThat(choices.deviation()).isEqualTo(0, within(1e-9));
        // t = √(2 m L/F): from √200 s to √220 s.
        assertThat(choices.alternatives().get(0).difference()).isEqualTo(Math.sqrt(220) - Math.sqrt(200), within(2e-3));
    }
}
