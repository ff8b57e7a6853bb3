package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.charts.PagedPlot;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.charts.track.CircuitProfile;
import dev.lapwright.lap.Lap;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.Range;
import org.junit.jupiter.api.Test;

class PagedPanelsTest {
    private static final ImageSize PHONE = new ImageSize(360, 504);
    private static final Lap MANY = Example.lap(Example.car(), Example.circuit(220));

    /** 8 px for a corner of the 280 px beside the axes: 35 corners a page, and 220 of them on seven. */
    @Test
    void manyCornersStandOnSeveralPagesOfANarrowPicture() {
        JFreeChart chart = SpeedTrace.of(MANY, ChartStyle.STANDARD);
        assertThat(PagedPlot.pages(chart, PHONE.width())).isEqualTo(7);
        String svg = new String(ChartImage.svg(chart, PHONE), StandardCharsets.UTF_8);
        assertThat(svg).contains("viewBox=\"0 0 360 3528\"");
        assertThat(Drawn.of(chart, PHONE).texts())
                .anyMatch(text -> text.endsWith("1 of 7"))
                .anyMatch(text -> text.endsWith("7 of 7"));
    }

    /** Each page names corners of its own stretch and no others; no name stands on two. */
    @Test
    void eachCornerIsNamedOnItsPage() {
        List<String> speeds = Drawn.of(CircuitProfile.of(MANY.stations(), ChartStyle.STANDARD), PHONE)
                .texts();
        List<String> numbers = speeds.stream()
                .filter(text -> text.matches("T?[0-9]+") && !text.equals("0"))
                .toList();
        assertThat(numbers.stream().filter(text -> text.startsWith("T"))).doesNotHaveDuplicates();
        assertThat(numbers).hasSizeGreaterThan(70);
    }

    @Test
    void fewCornersOrAWidePictureNeedOnePage() {
        Lap few = Example.lap(Example.car(), Example.circuit(12));
        assertThat(PagedPlot.pages(SpeedTrace.of(few, ChartStyle.STANDARD), 360))
                .isEqualTo(1);
        assertThat(PagedPlot.pages(SpeedTrace.of(MANY, ChartStyle.STANDARD), 1840))
                .isEqualTo(1);
    }

    @Test
    void beneathAMapTheyAreLeftOutWithANoteWhereTheyWouldBeIllegible() {
        JFreeChart map = CircuitMap.of(MANY.stations(), ChartStyle.STANDARD);
        assertThat(Drawn.of(map, new ImageSize(360, 720)).texts())
                .contains("220 corners: altitude and bends left out at this width")
                .doesNotContain("Distance (m)");
        assertThat(Drawn.of(map, CircuitMap.SIZE).texts()).contains("Distance (m)");
    }

    @Test
    void drawingLeavesTheChartAsItWas() {
        JFreeChart chart = SpeedTrace.of(MANY, ChartStyle.STANDARD);
        Range range = ((XYPlot) chart.getPlot()).getDomainAxis().getRange();
        byte[] first = ChartImage.svg(chart, PHONE);
        assertThat(((XYPlot) chart.getPlot()).getDomainAxis().getRange()).isEqualTo(range);
        assertThat(ChartImage.svg(chart, PHONE)).isEqualTo(first);
    }
}
