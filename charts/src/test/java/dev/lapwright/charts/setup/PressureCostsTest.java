package dev.lapwright.charts.setup;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.tyre.Wheel;
import java.util.List;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class PressureCostsTest {
    private static final PressureResult RESULT = Pressures.of(
                    Example.car().with(Quantity.PRESSURE_LOSS, 3e-5),
                    Example.circuit(),
                    Conditions.STANDARD,
                    List.of(new PressurePair(Wheel.FRONT_LEFT, 120, 165, 20, new PressureDay(20, 30, 1013.25))))
            .run();

    private static XYDataset data(double kpaPerUnit) {
        return PressureCosts.of(RESULT, kpaPerUnit, "kPa", ChartStyle.STANDARD)
                .getXYPlot()
                .getDataset();
    }

    @Test
    void theLinesBeginAtTheIdealWhereNothingIsLost() {
        for (int line = 0; line < 3; line++) {
            assertThat(data(1).getXValue(line, 0)).isZero();
            assertThat(data(1).getYValue(line, 0)).isZero();
        }
    }

    @Test
    void theLinesAreTheCostsOfAllRearAndFront() {
        int last = RESULT.costs().size();
        assertThat(data(1).getYValue(0, last))
                .isEqualTo(RESULT.costs().get(last - 1).both());
        assertThat(data(1).getYValue(1, last))
                .isEqualTo(RESULT.costs().get(last - 1).rear());
        assertThat(data(1).getYValue(2, last))
                .isEqualTo(RESULT.costs().get(last - 1).front());
    }

    @Test
    void pressuresAreDrawnInTheUnitAskedFor() {
        // 100 kPa are a bar.
        assertThat(data(100).getXValue(0, 1)).isEqualTo(RESULT.costs().get(0).awayKpa() / 100);
    }

    @Test
    void everythingIsSaidWithItsUnit() {
        assertThat(Drawn.of(PressureCosts.of(RESULT, 100, "bar", ChartStyle.STANDARD), PressureCosts.SIZE)
                        .texts())
                .contains(
                        "What tyre pressures cost: Harrow Fen",
                        "Hot pressure off the ideal, too high or too low (bar)",
                        "Cost on a lap (s)",
                        "all four",
                        "front",
                        "rear");
    }
}
