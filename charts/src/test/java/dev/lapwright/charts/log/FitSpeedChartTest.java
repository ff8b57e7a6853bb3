package dev.lapwright.charts.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.CarDoubt;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.FitResult;
import dev.lapwright.lap.Lap;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class FitSpeedChartTest {
    private static final double CELL = 10;
    private static final Lap GIVEN = Example.lap();
    private static final Lap FITTED = Example.lap(Example.car().with("tyres.compoundGrip", 0.95), Example.circuit());
    private static final JFreeChart CHART = FitSpeedChart.of(result(0.5), ChartStyle.STANDARD);

    /** Of a log that is 1 m/s faster than the fitted car throughout; cells from 500 m to 600 m weigh as much as given. */
    private static FitResult result(double weightThere) {
        int cells = (int) (GIVEN.track().length() / CELL);
        double[][] columns = new double[5][cells];
        for (int i = 0; i < cells; i++) {
            double s = (i + 0.5) * CELL;
            columns[0][i] = s;
            columns[1][i] = FITTED.speedAt(s) + 1;
            columns[2][i] = GIVEN.speedAt(s);
            columns[3][i] = FITTED.speedAt(s);
            columns[4][i] = s > 500 && s < 600 ? weightThere : 1;
        }
        DrivenLap lap = DrivenLap.of("lap 1 of monday.csv", columns[0], columns[1]);
        FitResult.LapFit entered = new FitResult.LapFit(
                lap, new FitResult.Alignment(1, 0), Double.NaN, 100, 1, 0, Double.NaN, Double.NaN, Double.NaN);
        return new FitResult(
                Example.car(),
                Example.car(),
                List.of(new FitResult.RunFit(Example.car(), GIVEN, FITTED, 100)),
                List.of(entered),
                List.of(),
                0.95,
                new FitResult.Doubts(
                        new double[0][0], List.of(), CarDoubt.NONE, List.of(), List.of(), List.of(), List.of()),
                new FitResult.Agreement(
                        new FitResult.Trace(columns[0], columns[1], columns[2], columns[3], columns[4]),
                        List.of(),
                        new FitResult.Residuals(5, 1, CELL, 0, 1, cells)),
                List.of());
    }

    private static XYPlot panel(JFreeChart chart, int index) {
        return ((CombinedDomainXYPlot) chart.getPlot()).getSubplots().get(index);
    }

    @Test
    void logAndBothCarsAreDrawnInKilometresPerHour() {
        XYDataset speeds = panel(CHART, 1).getDataset();
        assertThat(speeds.getSeriesCount()).isEqualTo(3);
        assertThat(panel(CHART, 1).getRangeAxis().getLabel()).isEqualTo("Speed (km/h)");
        // 1 m/s is 3.6 km/h; the two are read at the same place.
        assertThat(speeds.getYValue(0, 7)).isCloseTo(3.6 * (FITTED.speedAt(75) + 1), within(1e-9));
    }

    @Test
    void theStripBelowIsTheLogLessTheModel() {
        XYDataset differences = panel(CHART, 2).getDataset();
        assertThat(panel(CHART, 2).getRangeAxis().getLabel()).isEqualTo("Log less model (km/h)");
        assertThat(differences.getSeriesKey(1).toString()).isEqualTo("fitted car");
        for (int i = 0; i < differences.getItemCount(1); i++) {
            assertThat(differences.getYValue(1, i)).isCloseTo(3.6, within(1e-9));
            assertThat(panel(CHART, 2).getRangeAxis().getRange().contains(differences.getYValue(0, i)))
                    .isTrue();
        }
    }

    @Test
    void whatWasLeftOutIsMarkedAndSaid() {
        JFreeChart chart = FitSpeedChart.of(result(0.1), ChartStyle.STANDARD);
        XYDataset bars = panel(chart, 2).getDataset(1);
        for (int i = 0; i < bars.getItemCount(0); i++) {
            double middle = CELL * (i / 2 + 0.5);
            assertThat(Double.isFinite(bars.getYValue(0, i))).isEqualTo(middle > 500 && middle < 600);
        }
        assertThat(Drawn.of(chart, FitSpeedChart.SIZE).texts()).anyMatch(text -> text.contains("left out of the fit"));
    }

    @Test
    void nothingIsMarkedWhereAllCounts() {
        assertThat(panel(CHART, 2).getDatasetCount()).isEqualTo(1);
    }

    @Test
    void theFactsNameBothDifferences() {
        assertThat(Drawn.of(CHART, FitSpeedChart.SIZE).texts())
                .anyMatch(text -> text.contains("rms difference 18.0 km/h as given, 3.6 km/h fitted"));
    }
}
