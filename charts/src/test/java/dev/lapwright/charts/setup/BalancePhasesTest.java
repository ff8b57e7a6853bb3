package dev.lapwright.charts.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class BalancePhasesTest {
    /** Standard gravity, exact: 3rd General Conference on Weights and Measures, 1901. */
    private static final double G = 9.80665;

    private static final BalancePhases.BalanceBars MILL =
            new BalancePhases.BalanceBars("T1 Mill", 0.1 * G, -0.2 * G, 0.05 * G, -0.01 * G);
    private static final BalancePhases.BalanceBars WEIR = new BalancePhases.BalanceBars("T2 Weir", 0, 0, 0, Double.NaN);

    private static JFreeChart chart(BalancePhases.BalanceBars... corners) {
        return BalancePhases.of("Vesper at Fen", List.of(corners), ChartStyle.STANDARD);
    }

    private static List<XYPlot> panels(JFreeChart chart) {
        return ((CombinedRangeXYPlot) chart.getPlot()).getSubplots();
    }

    private static RowBars.Bar bar(JFreeChart chart, int phase, int corner) {
        return ((RowBars) panels(chart).get(phase).getAnnotations().get(0))
                .bars()
                .get(corner);
    }

    private static List<String> texts(BalancePhases.BalanceBars... corners) {
        return Drawn.of(chart(corners), BalancePhases.size(corners.length)).texts();
    }

    @Test
    void phasesStandInTheOrderTheyAreDriven() {
        assertThat(texts(MILL)).containsSubsequence("Entry", "Lift-off", "Middle", "Exit");
    }

    @Test
    void reservesAreInG() {
        assertThat(bar(chart(MILL), 0, 0).value()).isCloseTo(0.1, within(1e-12));
        assertThat(bar(chart(MILL), 1, 0).value()).isCloseTo(-0.2, within(1e-12));
        assertThat(texts(MILL)).contains("+0.10", "\u22120.20", "+0.05", "\u22120.01", "Reserve (g)");
    }

    @Test
    void oversteerAndUndersteerDifferNotByColourAlone() {
        assertThat(bar(chart(MILL), 0, 0).filled()).isTrue();
        assertThat(bar(chart(MILL), 1, 0).filled()).isFalse();
        assertThat(texts(MILL)).contains("oversteer", "understeer");
    }

    @Test
    void allPhasesHaveOneScaleAboutZero() {
        for (XYPlot panel : panels(chart(MILL, WEIR))) {
            assertThat(panel.getDomainAxis().getRange())
                    .isEqualTo(panels(chart(MILL, WEIR)).get(0).getDomainAxis().getRange());
            assertThat(panel.getDomainAxis().getUpperBound())
                    .isEqualTo(-panel.getDomainAxis().getLowerBound())
                    .isGreaterThan(0.2);
        }
    }

    @Test
    void aPhaseThatDoesNotAriseIsADash() {
        assertThat(texts(WEIR)).contains("\u2013").noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void everyCornerIsNamed() {
        assertThat(texts(MILL, WEIR)).containsSubsequence("T1 Mill", "T2 Weir");
    }

    @Test
    void aCircuitWithoutCornersIsRefused() {
        assertThatThrownBy(() -> chart())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("corners");
    }

    @Test
    void anEndlessReserveIsRefused() {
        assertThatThrownBy(() -> new BalancePhases.BalanceBars("T1", Double.POSITIVE_INFINITY, 0, 0, 0))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("T1 entry");
    }
}
