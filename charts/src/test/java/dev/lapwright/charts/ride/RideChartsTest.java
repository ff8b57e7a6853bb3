package dev.lapwright.charts.ride;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.plot.HeatMap;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.PassSolver;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RoadProfile;
import dev.lapwright.study.ride.DamperMap;
import dev.lapwright.study.ride.DamperMapResult;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.AbstractXYItemRenderer;
import org.jfree.chart.title.PaintScaleLegend;
import org.jfree.chart.ui.Layer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The map of dampers and the pass over a kerb. */
class RideChartsTest {
    private static final QuarterCar WHEEL =
            new QuarterCar(270, 42, 150e3, 320e3, 250, new Damper(9000, 4000, 12000, 6000, 0.06, 0.06), 0.9, 0);
    private static final RoadProfile KERB = new Kerb(Kerb.Shape.HALF_SINE, 0.05, 1, 1).felt(0.1);
    private static final DamperMapResult MAP = DamperMap.of(WHEEL, KERB, 28)
            .over(new double[] {1000, 3000, 5000, 7000}, new double[] {2000, 4000, 6000, 8000, 10_000})
            .run();

    private static JFreeChart map() {
        return DamperMapChart.of("Vesper GT", MAP, RideMeasure.LOAD, ChartStyle.STANDARD);
    }

    private static JFreeChart pass() {
        PassSolver solver = PassSolver.over(KERB, 28);
        return KerbPassChart.of("Vesper GT", solver.trace(WHEEL), solver.drive(WHEEL), ChartStyle.STANDARD);
    }

    @Test
    void theMapNamesItsAxesAndItsScale() {
        XYPlot plot = map().getXYPlot();
        assertThat(plot.getDomainAxis().getLabel()).isEqualTo("Fast bump (N s/m at the damper)");
        assertThat(plot.getRangeAxis().getLabel()).isEqualTo("Fast rebound (N s/m at the damper)");
        PaintScaleLegend legend = (PaintScaleLegend) map().getSubtitles().stream()
                .filter(PaintScaleLegend.class::isInstance)
                .findFirst()
                .orElseThrow();
        assertThat(legend.getAxis().getLabel()).isEqualTo("Contact-load variation (%)");
    }

    /** A line without its name says nothing; of the labels of equal value some may go. */
    @ParameterizedTest
    @ValueSource(ints = {360, 800, 1200})
    void bothLinesHaveTheirNamesAtAnyWidth(int width) {
        assertThat(Drawn.of(map(), new ImageSize(width, width)).texts()).contains("rebound = bump", "rebound = 2 bump");
    }

    @Test
    void theRingStandsAtTheBestPairAndTheDiamondAtTheCarsOwn() {
        XYPlot plot = map().getXYPlot();
        DamperMapResult.Region best = MAP.best(RideMeasure.LOAD);
        assertThat(plot.getDataset(0).getXValue(0, 0)).isEqualTo(best.bump());
        assertThat(plot.getDataset(0).getYValue(0, 0)).isEqualTo(best.rebound());
        assertThat(plot.getDataset(1).getXValue(0, 0)).isEqualTo(4000);
        assertThat(plot.getDataset(1).getYValue(0, 0)).isEqualTo(6000);
    }

    @Test
    void theMapDrawsLinesOfEqualValueAndCommonPractice() {
        HeatMap cells = (HeatMap) ((AbstractXYItemRenderer) map().getXYPlot().getRenderer())
                .getAnnotations()
                .iterator()
                .next();
        assertThat(cells.levels()).hasSizeBetween(3, 10);
        List<String> texts = Drawn.of(map(), DamperMapChart.SIZE).texts();
        assertThat(texts)
                .contains("rebound = bump", "rebound = 2 bump", "Contact-load variation: Vesper GT")
                .anyMatch(text -> text.startsWith("as it is (diamond)"));
    }

    @Test
    void thePassHasHeightsTravelAndLoad() {
        CombinedDomainXYPlot panels = (CombinedDomainXYPlot) pass().getPlot();
        List<XYPlot> plots = panels.getSubplots();
        assertThat(plots)
                .extracting(plot -> plot.getRangeAxis().getLabel())
                .containsExactly("Height (mm)", "Travel (mm), + in bump", "Contact load (kN)");
        assertThat(panels.getDomainAxis().getLabel()).isEqualTo("Time (ms)");
        // The contact patch takes little off the top of a kerb ten times its length: 50 mm, in mm.
        double highest = 0;
        for (int i = 0; i < plots.get(0).getDataset().getItemCount(0); i++) {
            highest = Math.max(highest, plots.get(0).getDataset().getYValue(0, i));
        }
        assertThat(highest).isBetween(49.0, 50.0);
    }

    @Test
    void flightIsShadedInEveryPanel() {
        for (XYPlot plot : ((CombinedDomainXYPlot) pass().getPlot()).getSubplots()) {
            assertThat(plot.getDomainMarkers(Layer.BACKGROUND).isEmpty()).isFalse();
        }
    }

    @Test
    void thePassNamesItsLines() {
        assertThat(Drawn.of(pass(), KerbPassChart.SIZE).texts())
                .contains("kerb as the tyre feels it", "wheel", "body", "flat road");
    }
}
