package dev.lapwright.charts.lap;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.distance.CornerStrip;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.jfree.chart.annotations.XYAnnotation;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.junit.jupiter.api.Test;

class SpeedTraceTest {
    private static final Lap LAP = Example.lap();
    private static final CombinedDomainXYPlot PLOT =
            (CombinedDomainXYPlot) SpeedTrace.of(LAP, ChartStyle.STANDARD).getPlot();

    private static XYPlot panel(int index) {
        return PLOT.getSubplots().get(index);
    }

    private static <T> T annotation(XYPlot plot, Class<T> kind) {
        for (Object each : plot.getAnnotations()) {
            if (kind.isInstance((XYAnnotation) each)) {
                return kind.cast(each);
            }
        }
        throw new AssertionError("no " + kind);
    }

    @Test
    void panelsAreStripSpeedAndGear() {
        assertThat(PLOT.getSubplots()).hasSize(3);
        assertThat(panel(1).getRangeAxis().getLabel()).isEqualTo("Speed (km/h)");
        assertThat(panel(2).getRangeAxis().getLabel()).isEqualTo("Gear");
        assertThat(PLOT.getDomainAxis().getLabel()).isEqualTo("Distance (m)");
    }

    @Test
    void speedIsDrawnInKilometresPerHourAtEveryStation() {
        assertThat(panel(1).getDataset().getSeriesCount()).isEqualTo(1);
        assertThat(panel(1).getDataset().getItemCount(0)).isEqualTo(LAP.count());
        int station = LAP.count() / 3;
        assertThat(panel(1).getDataset().getYValue(0, station)).isEqualTo(3.6 * LAP.value(Channel.SPEED, station));
        assertThat(panel(1).getDataset().getXValue(0, station)).isEqualTo(LAP.value(Channel.DISTANCE, station));
    }

    @Test
    void axesHoldAllOfTheData() {
        assertThat(panel(1).getRangeAxis().getLowerBound())
                .isLessThan(3.6 * LAP.figures().minimumSpeed());
        assertThat(panel(1).getRangeAxis().getUpperBound())
                .isGreaterThan(3.6 * LAP.figures().topSpeed());
        assertThat(PLOT.getDomainAxis().getLowerBound()).isZero();
        assertThat(PLOT.getDomainAxis().getUpperBound()).isEqualTo(LAP.track().length());
        for (double gear : LAP.column(Channel.GEAR)) {
            assertThat(panel(2).getRangeAxis().getRange().contains(gear)).isTrue();
        }
    }

    @Test
    void gearStepsHoldTheGearOfEveryStation() {
        var data = panel(2).getDataset();
        int step = 0;
        for (int i = 0; i < LAP.count(); i++) {
            while (step + 1 < data.getItemCount(0) && data.getXValue(0, step + 1) <= LAP.value(Channel.DISTANCE, i)) {
                step++;
            }
            assertThat(data.getYValue(0, step)).isEqualTo(LAP.value(Channel.GEAR, i));
        }
    }

    @Test
    void everyCornerIsShadedAndNamedInTheStrip() {
        List<Corner> corners = LAP.stations().corners();
        assertThat(annotation(panel(0), CornerStrip.class).corners()).isEqualTo(corners);
        Collection<?> markers = panel(1).getDomainMarkers(Layer.BACKGROUND);
        for (Corner corner : corners) {
            assertThat(markers)
                    .anySatisfy(marker -> assertThat(marker).isInstanceOfSatisfying(IntervalMarker.class, band -> {
                        assertThat(band.getStartValue()).isEqualTo(corner.entry());
                        assertThat(band.getEndValue()).isEqualTo(corner.exit());
                    }));
        }
    }

    @Test
    void cornerAcrossTheStartLineIsShadedAtBothEnds() {
        double inCorner = LAP.stations().corners().get(0).apex();
        Lap moved = Example.lap(Example.car(), Example.circuit().startingAt(inCorner));
        Corner across = moved.stations().corners().stream()
                .filter(c -> c.entry() > c.exit())
                .findFirst()
                .orElseThrow();
        XYPlot speed = ((CombinedDomainXYPlot)
                        SpeedTrace.of(moved, ChartStyle.STANDARD).getPlot())
                .getSubplots()
                .get(1);
        Collection<?> markers = speed.getDomainMarkers(Layer.BACKGROUND);
        assertThat(markers)
                .anySatisfy(m -> assertThat(m).isInstanceOfSatisfying(IntervalMarker.class, b -> {
                    assertThat(b.getStartValue()).isZero();
                    assertThat(b.getEndValue()).isEqualTo(across.exit());
                }))
                .anySatisfy(m -> assertThat(m).isInstanceOfSatisfying(IntervalMarker.class, b -> {
                    assertThat(b.getStartValue()).isEqualTo(across.entry());
                    assertThat(b.getEndValue()).isEqualTo(moved.track().length());
                }));
    }

    @Test
    void sectorsCarryTheirTimes() {
        List<String> texts = Drawn.of(SpeedTrace.of(LAP, ChartStyle.STANDARD), SpeedTrace.SIZE)
                .texts();
        double[] times = LAP.sectorTimes();
        for (int i = 0; i < times.length; i++) {
            assertThat(texts).contains("Sector " + (i + 1) + ": " + NumberText.lapTime(times[i]));
        }
    }

    @Test
    void lowestSpeedOfEveryCornerIsKept() {
        assertThat(annotation(panel(1), SpeedTrace.ApexSpeeds.class).slowestFirst())
                .hasSameSizeAs(LAP.corners())
                .isSortedAccordingTo(Comparator.comparingDouble(SpeedTrace.ApexSpeeds.Lowest::speed));
    }

    @Test
    void everythingThatMattersIsWrittenAsText() {
        List<String> texts = Drawn.of(SpeedTrace.of(LAP, ChartStyle.STANDARD), SpeedTrace.SIZE)
                .texts();
        assertThat(texts)
                .contains("Speed trace: " + Example.CIRCUIT, "Speed (km/h)", "Distance (m)", "Gear", "T1 Mill")
                .anyMatch(text -> text.contains(Example.CAR) && text.contains(NumberText.lapTime(LAP.time())));
    }

    @Test
    void numberOfEveryCornerIsWritten() {
        List<String> texts = Drawn.of(SpeedTrace.of(LAP, ChartStyle.STANDARD), SpeedTrace.SIZE)
                .texts();
        for (Corner corner : LAP.stations().corners()) {
            assertThat(texts).anyMatch(text -> text.matches("T?" + corner.number() + "( .*)?"));
        }
    }

    @Test
    void decimalsAreWrittenWithAPointInAnyLanguage() {
        List<String> texts = Drawn.of(SpeedTrace.of(LAP, ChartStyle.STANDARD), SpeedTrace.SIZE)
                .texts();
        assertThat(texts).noneMatch(text -> text.matches(".*[0-9],[0-9].*"));
    }

    @Test
    void standingStartIsNotTakenForTheSlowestCorner() {
        Lap run = Example.lap(Example.car(), Example.hill());
        String slowest = NumberText.wholeKmh(run.figures().minimumCornerSpeed());
        assertThat(Drawn.of(SpeedTrace.of(run, ChartStyle.STANDARD), SpeedTrace.SIZE)
                        .texts())
                .anyMatch(text -> text.endsWith("standing start \u00b7 slowest corner " + slowest + " km/h"));
    }
}
