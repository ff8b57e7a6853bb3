package dev.lapwright.charts;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.lap.Lap;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jfree.chart.JFreeChart;
import org.junit.jupiter.api.Test;

class InlineImageTest {
    private static final Lap LAP = Example.lap();
    private static final ImageSize SIZE = new ImageSize(860, 440);

    private static JFreeChart chart() {
        return SpeedTrace.of(LAP, ChartStyle.STANDARD);
    }

    private static String svg(JFreeChart chart, String name) {
        return InlineImage.svg(chart, SIZE, ChartStyle.STANDARD, name, "A & B");
    }

    @Test
    void itTakesTheWidthOfItsPlaceAndHasATitleForThoseWhoCannotSeeIt() {
        assertThat(svg(chart(), "speed"))
                .startsWith("<svg class=\"chart\" role=\"img\" aria-labelledby=\"speed-title\" viewBox=\"0 0 860 440\"")
                .contains("<title id=\"speed-title\">A &amp; B</title>")
                .endsWith("</svg>");
        assertThat(svg(chart(), "speed").substring(0, 200))
                .doesNotContain(" width=")
                .doesNotContain(" height=");
    }

    @Test
    void theHeadingIsLeftToThePageAndComesBackAfterwards() {
        JFreeChart chart = chart();
        String heading = chart.getTitle().getText();
        assertThat(svg(chart, "a")).doesNotContain(heading).contains("Speed (km/h)");
        assertThat(Drawn.of(chart, SpeedTrace.SIZE).texts()).contains(heading);
    }

    @Test
    void everyColourIsAVariableOfThePage() {
        for (JFreeChart chart : List.of(chart(), CircuitMap.plan(LAP.stations(), ChartStyle.STANDARD))) {
            assertThat(svg(chart, "a")).doesNotContain("rgb(").contains("var(--chart-ink)");
        }
    }

    @Test
    void twoDrawingsShareNoIdentifier() {
        List<String> ids = Stream.of(svg(chart(), "a"), svg(chart(), "b"))
                .flatMap(svg ->
                        Pattern.compile("\\bid=['\"]([^'\"]+)").matcher(svg).results())
                .map(match -> match.group(1))
                .toList();
        assertThat(ids).isNotEmpty().doesNotHaveDuplicates();
    }

    @Test
    void itIsSmallerThanTheFile() {
        // By a quarter at least, or it would not be worth the trouble: our choice.
        assertThat(svg(chart(), "a").length()).isLessThan(ChartImage.svg(chart(), SIZE).length * 3 / 4);
    }

    @Test
    void theSameChartGivesTheSameText() {
        assertThat(svg(chart(), "a")).isEqualTo(svg(SpeedTrace.of(Example.lap(), ChartStyle.STANDARD), "a"));
    }

    @Test
    void thePlanAloneNamesCornersAndHasNoPanels() {
        String plan = svg(CircuitMap.plan(LAP.stations(), ChartStyle.STANDARD), "plan");
        assertThat(plan).contains("Start and finish").contains("Mill").doesNotContain("Curvature");
    }
}
