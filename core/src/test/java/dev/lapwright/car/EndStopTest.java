package dev.lapwright.car;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.study.StudyCars;
import java.util.List;
import org.junit.jupiter.api.Test;

class EndStopTest {
    @Test
    void anEndOfARangeHasItsReasonOnTheCar() {
        Adjustment gears = StudyCars.finalDrive(3, 4, 0.1);
        assertThat(EndStop.at(gears, 4))
                .hasValueSatisfying(stop -> assertThat(stop).contains("wheelspin"));
        assertThat(EndStop.at(gears, 3))
                .hasValueSatisfying(stop -> assertThat(stop).contains("pull"));
        assertThat(EndStop.isEnd(gears, 3)).isTrue();
        assertThat(EndStop.isEnd(gears, 4)).isTrue();
        assertThat(EndStop.isEnd(gears, 3.5)).isFalse();
    }

    /** What counts is the quantity, not which way the number on the car goes: a car raised to its most touches no floor. */
    @Test
    void whatStopsItGoesByWhatItMoves() {
        String floor = "floor touches";
        for (double perStep : new double[] {5, -5}) {
            Adjustment height = new Adjustment(
                    "height",
                    "",
                    Unit.NONE,
                    Adjustment.Range.stepped(0, 4, 1, 2),
                    List.of(new Effect.Relative(Quantity.RIDE_HEIGHT_FRONT.path(), perStep)));
            double low = perStep > 0 ? 0 : 4;
            assertThat(EndStop.at(height, low))
                    .hasValueSatisfying(stop -> assertThat(stop).contains(floor));
            assertThat(EndStop.at(height, 4 - low))
                    .hasValueSatisfying(stop -> assertThat(stop).doesNotContain(floor));
        }
    }
}
