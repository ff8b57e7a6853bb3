package dev.lapwright.charts.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Conditions;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintResult;
import java.util.List;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class StintLapsTest {
    private static StintResult stint(Compound... compounds) {
        return Stint.of(Example.car(), Example.circuit(), Conditions.STANDARD, new RaceLength(10, 0, 1, 0.6, 1))
                .withConsumption(FuelConsumption.constant(300))
                .onCompounds(List.of(compounds))
                .run();
    }

    private static final StintResult TWO =
            stint(Compound.steady("soft", 1.01, 0.002), Compound.steady("hard", 1, 0.0005));

    @Test
    void eachCompoundHasItsLapTimes() {
        XYDataset data = StintLaps.of(TWO, ChartStyle.STANDARD).getXYPlot().getDataset(0);
        assertThat(data.getSeriesCount()).isEqualTo(2);
        for (int lap = 0; lap < 10; lap++) {
            assertThat(data.getYValue(1, lap))
                    .isEqualTo(TWO.runs().get(1).laps().get(lap).time());
        }
    }

    @Test
    void theLapFromWhichTheHarderOneIsFasterIsMarked() {
        int from = TWO.runs().get(0).fasterFrom(TWO.runs().get(1));
        XYDataset marks = StintLaps.of(TWO, ChartStyle.STANDARD).getXYPlot().getDataset(1);
        assertThat(marks.getItemCount(0)).isEqualTo(1);
        assertThat(marks.getXValue(0, 0)).isEqualTo(from);
        assertThat(Drawn.of(StintLaps.of(TWO, ChartStyle.STANDARD), StintLaps.SIZE)
                        .texts())
                .contains("Lap time over a stint: Harrow Fen", "Lap", "Lap time (min:s)", "soft", "hard")
                .contains("hard faster than soft from lap " + from);
    }

    @Test
    void oneCompoundCrossesNone() {
        XYDataset marks = StintLaps.of(stint(Compound.steady("tyre", 1, 0.001)), ChartStyle.STANDARD)
                .getXYPlot()
                .getDataset(1);
        assertThat(marks.getItemCount(0)).isZero();
    }
}
