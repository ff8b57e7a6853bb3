package dev.lapwright.charts.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.plot.EndLabelAxis;
import dev.lapwright.charts.plot.HeatMap;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.title.PaintScaleLegend;
import org.junit.jupiter.api.Test;

class SweepTimeTest {
    private static final SweepResult WING = Example.wingSweep();
    private static final JFreeChart CHART = SweepTime.of(WING, ChartStyle.STANDARD);
    private static final XYPlot PLOT = CHART.getXYPlot();

    private static LapFigures fastest(SweepResult sweep) {
        return sweep.fastest().orElseThrow().figures().orElseThrow();
    }

    @Test
    void oneAxisIsOneLineWithEverySetting() {
        assertThat(PLOT.getDataset().getSeriesCount()).isEqualTo(1);
        assertThat(PLOT.getDataset().getItemCount(0)).isEqualTo(WING.points().size());
        for (int i = 0; i < WING.points().size(); i++) {
            SweepResult.Point point = WING.points().get(i);
            assertThat(PLOT.getDataset().getXValue(0, i))
                    .isEqualTo(point.settings().get(0));
            assertThat(PLOT.getDataset().getYValue(0, i))
                    .isEqualTo(point.figures().orElseThrow().lapTime());
        }
    }

    @Test
    void axesNameTheirUnits() {
        assertThat(PLOT.getDomainAxis().getLabel()).isEqualTo("Rear wing (deg)");
        assertThat(PLOT.getRangeAxis().getLabel()).isEqualTo("Lap time (min:s)");
    }

    @Test
    void axesHoldEveryLapTimeAndTheBaseline() {
        assertThat(PLOT.getRangeAxis().getRange().contains(WING.baseline().lapTime()))
                .isTrue();
        for (SweepResult.Point point : WING.points()) {
            assertThat(PLOT.getRangeAxis()
                            .getRange()
                            .contains(point.figures().orElseThrow().lapTime()))
                    .isTrue();
            assertThat(PLOT.getDomainAxis().getRange().contains(point.settings().get(0)))
                    .isTrue();
        }
    }

    @Test
    void baselineAndFastestAreWritten() {
        double best = fastest(WING).lapTime();
        String setting = NumberText.fixed(0)
                        .format(WING.fastest().orElseThrow().settings().get(0)) + " deg";
        assertThat(Drawn.of(CHART, SweepTime.SIZE).texts())
                .contains("baseline " + NumberText.lapTime(WING.baseline().lapTime()))
                .contains("fastest: " + setting + ", " + NumberText.lapTime(best) + " ("
                        + NumberText.difference(best - WING.baseline().lapTime()) + ")");
    }

    @Test
    void ringStandsAtTheFastest() {
        assertThat(PLOT.getDataset(1).getXValue(0, 0))
                .isEqualTo(WING.fastest().orElseThrow().settings().get(0));
        assertThat(PLOT.getDataset(1).getYValue(0, 0)).isEqualTo(fastest(WING).lapTime());
    }

    @Test
    void fewValuesOfASecondAxisAreLinesWithLabels() {
        SweepResult two = Example.sweep(
                SweepAxis.stepped("rear-wing", 0, 12, 4), SweepAxis.stepped("gearbox.finalDrive", 3.5, 4.5, 0.5));
        XYPlot plot = SweepTime.of(two, ChartStyle.STANDARD).getXYPlot();
        assertThat(plot.getDataset().getSeriesCount()).isEqualTo(3);
        assertThat(plot.getDomainAxis().getLabel()).isEqualTo("Rear wing (deg)");
        assertThat(((EndLabelAxis) plot.getRangeAxis(1)).labels())
                .extracting(EndLabelAxis.EndLabel::text)
                .containsExactlyInAnyOrder("3.5", "4", "4.5");
        assertThat(plot.getRangeAxis(1).getRange())
                .isEqualTo(plot.getRangeAxis().getRange());
    }

    @Test
    void linesBelongToTheAxisWithFewValuesWhicheverComesFirst() {
        SweepResult two = Example.sweep(
                new SweepAxis("gearbox.finalDrive", new double[] {3.5, 4.5}), SweepAxis.stepped("rear-wing", 0, 12, 1));
        XYPlot plot = SweepTime.of(two, ChartStyle.STANDARD).getXYPlot();
        assertThat(plot.getDataset().getSeriesCount()).isEqualTo(2);
        assertThat(plot.getDomainAxis().getLabel()).isEqualTo("Rear wing (deg)");
        // Final drive 4.5 with the wing at 3: the points' order is that of the sweep.
        assertThat(plot.getDataset().getYValue(1, 3))
                .isEqualTo(two.points().get(13 + 3).figures().orElseThrow().lapTime());
    }

    @Test
    void manyValuesOnBothAxesAreAMapWithLinesOfEqualTime() {
        SweepResult two = Example.sweep(
                SweepAxis.stepped("rear-wing", 0, 12, 1.5), SweepAxis.stepped("chassis.fuelKg", 0, 90, 10));
        JFreeChart chart = SweepTime.of(two, ChartStyle.STANDARD);
        XYPlot plot = chart.getXYPlot();
        assertThat(plot.getDomainAxis().getLabel()).isEqualTo("Rear wing (deg)");
        assertThat(plot.getRangeAxis().getLabel()).isEqualTo("Fuel on board (kg)");
        PaintScaleLegend legend = (PaintScaleLegend) chart.getSubtitles().stream()
                .filter(PaintScaleLegend.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertThat(legend.getAxis().getLabel()).isEqualTo("Lap time (min:s)");
        assertThat(legend.getScale().getLowerBound()).isEqualTo(fastest(two).lapTime());
        HeatMap map = (HeatMap) ((AbstractXYItemRenderer) plot.getRenderer())
                .getAnnotations()
                .iterator()
                .next();
        assertThat(map.levels()).hasSizeBetween(3, 10);
        List<String> texts = Drawn.of(chart, SweepTime.SIZE).texts();
        assertThat(texts).contains("baseline").anyMatch(text -> text.startsWith(Example.CAR + " \u00b7 fastest: "));
    }

    @Test
    void settingsWithoutALapAreLeftOutAndCounted() {
        List<SweepResult.Point> points = new ArrayList<>(WING.points());
        points.set(2, new SweepResult.Point(points.get(2).settings(), Optional.empty(), "too little drive"));
        SweepResult gap =
                new SweepResult(WING.car(), WING.track(), WING.conditions(), WING.axes(), WING.baseline(), points);
        JFreeChart chart = SweepTime.of(gap, ChartStyle.STANDARD);
        assertThat(chart.getXYPlot().getDataset().getItemCount(0)).isEqualTo(points.size() - 1);
        assertThat(Drawn.of(chart, SweepTime.SIZE).texts())
                .contains(Example.CAR + " \u00b7 1 of 7 settings give no lap");
    }

    @Test
    void sweepWithoutAnyLapIsRefusedSayingWhy() {
        List<SweepResult.Point> none = WING.points().stream()
                .map(p -> new SweepResult.Point(p.settings(), Optional.empty(), "too little drive"))
                .toList();
        SweepResult empty =
                new SweepResult(WING.car(), WING.track(), WING.conditions(), WING.axes(), WING.baseline(), none);
        assertThatThrownBy(() -> SweepTime.of(empty, ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("too little drive");
    }

    @Test
    void threeAxesAreRefused() {
        SweepResult three = Example.sweep(
                new SweepAxis("rear-wing", new double[] {6}),
                new SweepAxis("chassis.fuelKg", new double[] {10}),
                new SweepAxis("gearbox.finalDrive", new double[] {4}));
        assertThatThrownBy(() -> SweepTime.of(three, ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("3 axes");
    }

    @Test
    void singleSettingCanBeDrawn() {
        SweepResult one = Example.sweep(new SweepAxis("rear-wing", new double[] {4}));
        assertThat(Drawn.of(SweepTime.of(one, ChartStyle.STANDARD), SweepTime.SIZE)
                        .texts())
                .contains("Rear wing (deg)");
    }

    @Test
    void settingsSweptDownwardsAreDrawnUpwards() {
        SweepResult down = Example.sweep(SweepAxis.stepped("rear-wing", 12, 0, -4));
        var data = SweepTime.of(down, ChartStyle.STANDARD).getXYPlot().getDataset();
        assertThat(data.getXValue(0, 0)).isZero();
        assertThat(data.getYValue(0, 0))
                .isEqualTo(down.points().get(3).figures().orElseThrow().lapTime());
    }

    @Test
    void effectOfNothingIsNotBlownUp() {
        SweepResult flat = Example.sweep(SweepAxis.stepped("chassis.widthM", 1.8, 2.2, 0.2));
        XYPlot plot = SweepTime.of(flat, ChartStyle.STANDARD).getXYPlot();
        assertThat(plot.getRangeAxis().getRange().getLength()).isGreaterThan(0.05);
    }

    @Test
    void aLapAsFastAsTheBaselineHasNoDifference() {
        SweepResult one = Example.sweep(new SweepAxis("rear-wing", new double[] {6}));
        assertThat(Drawn.of(SweepTime.of(one, ChartStyle.STANDARD), SweepTime.SIZE)
                        .texts())
                .anyMatch(text -> text.startsWith("6 deg, ") && text.endsWith("(as the baseline)"));
    }

    @Test
    void oneLapAloneIsNotCalledTheFastest() {
        SweepResult one = Example.sweep(new SweepAxis("rear-wing", new double[] {4}));
        assertThat(Drawn.of(SweepTime.of(one, ChartStyle.STANDARD), SweepTime.SIZE)
                        .texts())
                .noneMatch(text -> text.contains("fastest"));
    }
}
