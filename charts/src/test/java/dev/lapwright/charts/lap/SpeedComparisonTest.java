package dev.lapwright.charts.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.fault.InvalidValueException;
import java.awt.Paint;
import java.awt.Stroke;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class SpeedComparisonTest {
    private static final List<SpeedComparison.NamedLap> LAPS =
            List.of(Example.withWing(6), Example.withWing(0), Example.withWing(12));
    private static final JFreeChart CHART = SpeedComparison.of(LAPS, ChartStyle.STANDARD);

    private static XYPlot panel(int index) {
        return ((CombinedDomainXYPlot) CHART.getPlot()).getSubplots().get(index);
    }

    @Test
    void everyLapHasASpeedAndEveryLaterLapADifference() {
        assertThat(panel(1).getDataset().getSeriesCount()).isEqualTo(3);
        assertThat(panel(2).getDataset().getSeriesCount()).isEqualTo(2);
    }

    @Test
    void axesNameTheirUnits() {
        assertThat(panel(1).getRangeAxis().getLabel()).isEqualTo("Speed (km/h)");
        assertThat(panel(2).getRangeAxis().getLabel()).isEqualTo("Difference (s)");
    }

    @Test
    void picturesSayWhichSideIsBehind() {
        assertThat(Drawn.of(CHART, SpeedComparison.SIZE).texts())
                .contains("+ behind rear wing 6 deg", "\u2212 ahead of rear wing 6 deg");
    }

    @Test
    void differenceStartsAtZeroAndEndsAtTheDifferenceOfLapTimes() {
        var data = panel(2).getDataset();
        for (int series = 0; series < 2; series++) {
            int last = data.getItemCount(series) - 1;
            double expected =
                    LAPS.get(series + 1).lap().time() - LAPS.get(0).lap().time();
            assertThat(data.getYValue(series, 0)).isZero();
            // Rounding of sums of about a thousand cells of a tenth of a second.
            assertThat(data.getYValue(series, last)).isCloseTo(expected, within(1e-9));
        }
    }

    @Test
    void lapComparedWithItselfIsNeverBehind() {
        double[][] behind =
                SpeedComparison.behind(LAPS.get(0).lap(), LAPS.get(0).lap());
        for (double each : behind[1]) {
            // Rounding: both times are the same column.
            assertThat(each).isCloseTo(0, within(1e-12));
        }
    }

    @Test
    void axisOfDifferencesHoldsZeroAndAllData() {
        var data = panel(2).getDataset();
        assertThat(panel(2).getRangeAxis().getRange().contains(0)).isTrue();
        for (int series = 0; series < 2; series++) {
            for (int i = 0; i < data.getItemCount(series); i++) {
                assertThat(panel(2).getRangeAxis().getRange().contains(data.getYValue(series, i)))
                        .isTrue();
            }
        }
    }

    @Test
    void linesDifferInColourAndInDashes() {
        Set<Paint> colours = new HashSet<>();
        Set<Stroke> strokes = new HashSet<>();
        for (int i = 0; i < 3; i++) {
            colours.add(panel(1).getRenderer().getSeriesPaint(i));
            strokes.add(panel(1).getRenderer().getSeriesStroke(i));
        }
        assertThat(colours).hasSize(3);
        assertThat(strokes).hasSize(3);
    }

    @Test
    void lapHasTheSameColourInBothPanels() {
        assertThat(panel(2).getRenderer().getSeriesPaint(0))
                .isEqualTo(panel(1).getRenderer().getSeriesPaint(1));
        assertThat(panel(2).getRenderer().getSeriesStroke(1))
                .isEqualTo(panel(1).getRenderer().getSeriesStroke(2));
    }

    @Test
    void legendNamesEveryLapWithItsTime() {
        List<String> texts = Drawn.of(CHART, SpeedComparison.SIZE).texts();
        for (SpeedComparison.NamedLap named : LAPS) {
            assertThat(texts)
                    .contains(
                            named.name() + ": " + NumberText.lapTime(named.lap().time()));
        }
    }

    @Test
    void differencesAreWrittenAtTheEndsOfTheirLines() {
        EndLabelAxis ends = (EndLabelAxis) panel(2).getRangeAxis(1);
        double zero = LAPS.get(1).lap().time() - LAPS.get(0).lap().time();
        assertThat(ends.labels()).hasSize(2);
        assertThat(ends.getRange()).isEqualTo(panel(2).getRangeAxis().getRange());
        assertThat(Drawn.of(CHART, SpeedComparison.SIZE).texts()).contains(NumberText.difference(zero));
    }

    @Test
    void oneLapIsNoComparison() {
        assertThatThrownBy(() -> SpeedComparison.of(LAPS.subList(0, 1), ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("give 2 to 6");
    }

    @Test
    void moreLapsThanCanBeToldApartAreRefused() {
        List<SpeedComparison.NamedLap> many = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            many.add(new SpeedComparison.NamedLap("lap " + i, LAPS.get(0).lap()));
        }
        assertThatThrownBy(() -> SpeedComparison.of(many, ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("7 laps");
    }

    @Test
    void twoLapsOfOneNameAreRefused() {
        assertThatThrownBy(() -> SpeedComparison.of(List.of(LAPS.get(0), LAPS.get(0)), ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("rear wing 6 deg");
    }

    @Test
    void lapsOfTwoTracksAreRefused() {
        SpeedComparison.NamedLap hill =
                new SpeedComparison.NamedLap("hill", Example.lap(Example.car(), Example.hill()));
        assertThatThrownBy(() -> SpeedComparison.of(List.of(LAPS.get(0), hill), ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("Kestrel Hill")
                .hasMessageContaining(Example.CIRCUIT);
    }

    @Test
    void lapWithoutANameIsRefused() {
        assertThatThrownBy(() -> new SpeedComparison.NamedLap(" ", LAPS.get(0).lap()))
                .isInstanceOf(InvalidValueException.class);
    }
}
