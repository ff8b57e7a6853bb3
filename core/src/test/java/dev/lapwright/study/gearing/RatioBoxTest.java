package dev.lapwright.study.gearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class RatioBoxTest {
    private static final Track OVAL = StudyCars.oval(400, 50);
    private static final Track SMALL = StudyCars.oval(150, 25);
    private static final Car CAR = StudyCars.rearDriven().car();
    private static final String DRIVE = GearingAxes.FINAL_DRIVE;
    private static final double FITTED = CAR.value(Quantity.FINAL_DRIVE);
    private static final List<SweepAxis> DRIVES = List.of(
            new SweepAxis(DRIVE, new double[] {0.8 * FITTED, 0.9 * FITTED, FITTED, 1.1 * FITTED, 1.25 * FITTED}));

    private static double lap(Track track, double drive) {
        return LapSolver.lap(CAR.with(DRIVE, drive), track, Conditions.STANDARD).time();
    }

    @Test
    void eachChoiceIsTheFastestOfItsNumberOfChanges() {
        RatioBoxResult found = RatioBox.of(CAR, OVAL, Conditions.STANDARD, DRIVES)
                .withMinutes(Map.of(DRIVE, 40.0))
                .run(StudyRun.onThreads(1));
        assertThat(found.choices().get(0).changed()).isEmpty();
        assertThat(found.choices().get(0).mean()).isZero();
        double best = Double.POSITIVE_INFINITY;
        for (double factor : new double[] {0.8, 0.9, 1.1, 1.25}) {
            best = Math.min(best, lap(OVAL, factor * FITTED) - lap(OVAL, FITTED));
        }
        assertThat(found.choices().get(1).mean()).isCloseTo(best, Offset.offset(1e-9));
        assertThat(found.choices().get(1).minutes()).isEqualTo(40);
        assertThat(found.driven()).as("what is fitted is no change").isEqualTo(5);
    }

    @Test
    void severalCircuitsCountByTheirWeights() {
        RatioBoxResult found = RatioBox.of(CAR, OVAL, Conditions.STANDARD, DRIVES)
                .alsoAt(SMALL, 3)
                .run(StudyRun.onThreads(2));
        RatioBoxResult.Choice choice = found.choices().get(1);
        double drive = choice.changed().get(DRIVE);
        double large = lap(OVAL, drive) - lap(OVAL, FITTED);
        double small = lap(SMALL, drive) - lap(SMALL, FITTED);
        assertThat(choice.lapTimes().get(0)).isCloseTo(large, Offset.offset(1e-9));
        assertThat(choice.lapTimes().get(1)).isCloseTo(small, Offset.offset(1e-9));
        assertThat(choice.mean()).isCloseTo((large + 3 * small) / 4, Offset.offset(1e-9));
    }

    @Test
    void whatIsNoGearIsRefused() {
        List<SweepAxis> wrong = List.of(new SweepAxis("chassis.massKg", new double[] {1000, 1100}));
        assertThatThrownBy(() -> RatioBox.of(CAR, OVAL, Conditions.STANDARD, wrong))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("it moves no gear");
        assertThatThrownBy(() ->
                        RatioBox.of(CAR, OVAL, Conditions.STANDARD, DRIVES).alsoAt(SMALL, 0))
                .hasMessageContaining("weight of");
        assertThatThrownBy(() ->
                        RatioBox.of(CAR, OVAL, Conditions.STANDARD, DRIVES).withMinutes(Map.of(DRIVE, -1.0)))
                .hasMessageContaining("minutes");
    }
}
