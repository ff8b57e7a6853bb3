package dev.lapwright.charts.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Conditions;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class TradeOffTest {
    private static final SweepResult WING = Example.wingSweep();
    private static final JFreeChart CHART = TradeOff.of(WING, ChartStyle.STANDARD);
    private static final XYPlot PLOT = CHART.getXYPlot();

    @Test
    void pointsAreMeanCornerSpeedAndTopSpeedInOrder() {
        assertThat(PLOT.getDataset().getItemCount(0)).isEqualTo(WING.points().size());
        for (int i = 0; i < WING.points().size(); i++) {
            LapFigures figures = WING.points().get(i).figures().orElseThrow();
            assertThat(PLOT.getDataset().getXValue(0, i)).isEqualTo(3.6 * figures.meanCornerSpeed());
            assertThat(PLOT.getDataset().getYValue(0, i)).isEqualTo(3.6 * figures.topSpeed());
        }
    }

    @Test
    void axesNameTheirUnitsAndHoldAllPoints() {
        assertThat(PLOT.getDomainAxis().getLabel()).isEqualTo("Mean corner speed (km/h)");
        assertThat(PLOT.getRangeAxis().getLabel()).isEqualTo("Top speed (km/h)");
        for (int i = 0; i < WING.points().size(); i++) {
            assertThat(PLOT.getDomainAxis()
                            .getRange()
                            .contains(PLOT.getDataset().getXValue(0, i)))
                    .isTrue();
            assertThat(PLOT.getRangeAxis().getRange().contains(PLOT.getDataset().getYValue(0, i)))
                    .isTrue();
        }
    }

    @Test
    void shorterLapTimeIsALargerPoint() {
        TradeOff.SizedPoints points = (TradeOff.SizedPoints) PLOT.getRenderer(0);
        for (int i = 1; i < WING.points().size(); i++) {
            double faster = WING.points().get(i - 1).figures().orElseThrow().lapTime()
                    - WING.points().get(i).figures().orElseThrow().lapTime();
            double larger = points.getItemShape(0, i).getBounds2D().getWidth()
                    - points.getItemShape(0, i - 1).getBounds2D().getWidth();
            assertThat(Math.signum(larger)).isEqualTo(Math.signum(faster));
        }
    }

    @Test
    void fastestAndBaselineAreMarked() {
        assertThat(PLOT.getDataset(1).getXValue(0, 0))
                .isEqualTo(3.6 * WING.baseline().meanCornerSpeed());
        LapFigures best = WING.fastest().orElseThrow().figures().orElseThrow();
        assertThat(PLOT.getDataset(2).getYValue(0, 0)).isEqualTo(3.6 * best.topSpeed());
        assertThat(Drawn.of(CHART, TradeOff.SIZE).texts())
                .contains("baseline, " + NumberText.lapTime(WING.baseline().lapTime()))
                .anyMatch(text -> text.startsWith("fastest: ") && text.contains(NumberText.lapTime(best.lapTime())));
    }

    @Test
    void settingsAreWrittenBesideTheirPoints() {
        double best = WING.fastest().orElseThrow().settings().get(0);
        List<String> texts = Drawn.of(CHART, TradeOff.SIZE).texts();
        for (int wing = 0; wing <= 12; wing += 2) {
            if (wing != best) {
                assertThat(texts).contains(wing + " deg");
            }
        }
    }

    @Test
    void secondAxisMakesALineForEachValueNamedInTheLegend() {
        SweepResult two = Example.sweep(
                SweepAxis.stepped("rear-wing", 0, 12, 4), new SweepAxis("gearbox.finalDrive", new double[] {3.6, 4.2}));
        JFreeChart chart = TradeOff.of(two, ChartStyle.STANDARD);
        assertThat(chart.getXYPlot().getDataset().getSeriesCount()).isEqualTo(2);
        assertThat(Drawn.of(chart, TradeOff.SIZE).texts())
                .contains("ratio of the final drive 3.6", "ratio of the final drive 4.2");
    }

    @Test
    void manyValuesOnBothAxesAreACloudThatHoldsEveryPoint() {
        SweepResult two = Example.sweep(
                SweepAxis.stepped("rear-wing", 0, 12, 1.5), SweepAxis.stepped("chassis.fuelKg", 0, 90, 10));
        XYPlot plot = TradeOff.of(two, ChartStyle.STANDARD).getXYPlot();
        int points = 0;
        for (int series = 0; series < plot.getDataset().getSeriesCount(); series++) {
            points += plot.getDataset().getItemCount(series);
        }
        assertThat(points).isEqualTo(two.points().size());
    }

    @Test
    void trackWithoutCornersIsRefused() {
        Track strip = Track.open("Strip", 0, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(1000, 0)));
        SweepResult straight = Sweep.of(Example.car(), strip, Conditions.STANDARD)
                .over(SweepAxis.stepped("rear-wing", 0, 12, 6))
                .run();
        assertThatThrownBy(() -> TradeOff.of(straight, ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("Strip")
                .hasMessageContaining("no corners");
    }
}
