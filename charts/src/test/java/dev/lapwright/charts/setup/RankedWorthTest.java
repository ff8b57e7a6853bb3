package dev.lapwright.charts.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.InlineImage;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedRangeXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import org.junit.jupiter.api.Test;

class RankedWorthTest {
    private static final RankedWorth.WorthBars BAR =
            new RankedWorth.WorthBars("Rear bar", "1 click", -0.011, 0.012, -0.05, "1", 0.03, "5");
    private static final RankedWorth.WorthBars WING =
            new RankedWorth.WorthBars("Rear wing", "1 deg", 0.042, -0.031, -0.25, "9 deg", 0.4, "0 deg");
    private static final RankedWorth.WorthBars FINAL =
            new RankedWorth.WorthBars("Final drive", "0.1", Double.NaN, 0.2, 0, "3.9", 0.2, "4.0");

    private static JFreeChart chart(double visible, RankedWorth.WorthBars... worths) {
        return RankedWorth.of("Vesper at Fen", List.of(worths), visible, ChartStyle.STANDARD);
    }

    private static List<String> texts(double visible, RankedWorth.WorthBars... worths) {
        return Drawn.of(chart(visible, worths), RankedWorth.size(worths.length)).texts();
    }

    private static RowBars bars(JFreeChart chart, int panel) {
        return (RowBars) panel(chart, panel).getAnnotations().get(0);
    }

    private static XYPlot panel(JFreeChart chart, int panel) {
        return ((CombinedRangeXYPlot) chart.getPlot()).getSubplots().get(panel);
    }

    @Test
    void theWidestRangeComesFirst() {
        List<String> texts = texts(0.1, BAR, WING, FINAL);
        assertThat(texts).containsSubsequence("Rear wing, 1 deg", "Final drive, 0.1", "Rear bar, 1 click");
        // 0.25 + 0.4 s.
        assertThat(bars(chart(0.1, BAR, WING, FINAL), 1).bars().get(0).value()).isEqualTo(-0.25);
    }

    @Test
    void everyBarCarriesItsValue() {
        assertThat(texts(0.1, BAR, WING))
                .contains("+0.042", "\u22120.031", "\u22120.250 at 9 deg", "+0.400 at 0 deg")
                .contains("Change of lap time (s)", "One step", "Over the range", "faster", "slower");
    }

    @Test
    void aStepBeyondTheRangeIsSaidToBe() {
        assertThat(texts(0.1, FINAL)).contains("end of the range").noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void aSettingThatIsTheFastestAlreadyHasNothingFaster() {
        assertThat(texts(0.1, FINAL)).contains("+0.200 at 4.0").noneMatch(text -> text.contains("at 3.9"));
    }

    @Test
    void theBandReachesAsFarAsTheTimingScreenCannotSee() {
        JFreeChart chart = chart(0.1, BAR, WING);
        assertThat(bars(chart, 0).band()).isEqualTo(0.1);
        assertThat(texts(0.1, BAR, WING)).anyMatch(text -> text.contains("less than 0.100 s"));
    }

    @Test
    void stepsThatCannotBeSeenAreSaidSo() {
        assertThat(texts(0.5, BAR)).contains("One step: not to be seen for any");
        assertThat(texts(0.005, BAR)).contains("One step");
    }

    @Test
    void withoutAScreenThereIsNoBand() {
        assertThat(bars(chart(Double.NaN, BAR), 0).band()).isNaN();
        assertThat(texts(Double.NaN, BAR)).noneMatch(text -> text.contains("shaded"));
    }

    @Test
    void axesHoldEveryBar() {
        for (int panel = 0; panel < 2; panel++) {
            JFreeChart chart = chart(0.1, BAR, WING, FINAL);
            for (RowBars.Bar bar : bars(chart, panel).bars()) {
                assertThat(Double.isNaN(bar.value())
                                || panel(chart, panel)
                                        .getDomainAxis()
                                        .getRange()
                                        .contains(bar.value()))
                        .isTrue();
            }
        }
    }

    @Test
    void anAxisGoesNoFurtherToEitherSideThanBarsAndLabelsNeed() {
        // Nothing is faster here: what is left of zero is for labels, less than half of what the bars take.
        Range range = panel(chart(Double.NaN, FINAL), 1).getDomainAxis().getRange();
        assertThat(-range.getLowerBound()).isLessThan(range.getUpperBound() / 2);
    }

    @Test
    void moreAdjustmentsTakeAHigherPicture() {
        assertThat(RankedWorth.size(30).height())
                .isGreaterThan(RankedWorth.size(10).height());
    }

    @Test
    void noAdjustmentAtAllIsSaid() {
        assertThat(Drawn.of(chart(0.1), RankedWorth.size(0)).texts()).anyMatch(text -> text.contains("no adjustments"));
    }

    @Test
    void aBestThatIsSlowerIsRefused() {
        assertThatThrownBy(() -> new RankedWorth.WorthBars("Wing", "1", 0, 0, 0.1, "", 0.2, ""))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("Wing best");
    }

    @Test
    void aVisibleDifferenceOfNothingIsRefused() {
        assertThatThrownBy(() -> chart(0, BAR))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("visible");
    }

    private static RankedWorth.WorthBars range(String name, double best, double worst) {
        return new RankedWorth.WorthBars(name, "", Double.NaN, Double.NaN, best, "9 deg", worst, "0 deg");
    }

    @Test
    void barsOverTheRangeAreNamedAndKeepTheirOrder() {
        List<RankedWorth.WorthBars> worths =
                List.of(range("Small", -0.01, 0.02), range("Large", -0.4, 0.3), range("Nothing", 0, 0));
        JFreeChart chart = RankedWorth.overTheRange("Talvex GT at Castelvane", worths, 0.3, ChartStyle.STANDARD);
        RankedWorth.NamedRows rows = (RankedWorth.NamedRows)
                ((XYPlot) chart.getPlot()).getAnnotations().get(0);
        assertThat(rows.worths()).containsExactlyElementsOf(worths);
        String svg = InlineImage.svg(
                chart,
                RankedWorth.sizeOverTheRange(600, worths.size(), ChartStyle.STANDARD),
                ChartStyle.STANDARD,
                "g",
                "worths");
        assertThat(svg)
                .contains(">Large<")
                .contains("\u22120.400 at 9 deg")
                .contains("+0.300 at 0 deg")
                .contains(">no difference<");
    }

    @Test
    void noBarsAtAllAreSaid() {
        JFreeChart none = RankedWorth.overTheRange("Talvex GT at Castelvane", List.of(), 0.3, ChartStyle.STANDARD);
        assertThat(Drawn.of(none, RankedWorth.sizeOverTheRange(600, 0, ChartStyle.STANDARD))
                        .texts())
                .anyMatch(text -> text.contains("no adjustments"));
    }
}
