package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.ImageSize;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class HeadingTest {
    @Test
    void aNumberAndTheNameOfAFileStayWhole() {
        List<String> texts = Drawn.of(
                        ChartLayout.chart(
                                "Every lap: castelvane-wings.csv",
                                "rear-wing=3 against rear-wing=7: −0.337 s (−0.872 to +0.209), open",
                                new XYPlot(),
                                ChartStyle.STANDARD),
                        new ImageSize(360, 300))
                .texts();
        assertThat(texts).anyMatch(text -> text.contains("castelvane-wings.csv"));
        assertThat(texts).anyMatch(text -> text.contains("(−0.872 to"));
    }

    @Test
    void itsTextIsTheOneGivenWhateverItsLines() {
        Heading heading = new Heading("one two", ChartStyle.STANDARD.title());
        assertThat(heading.getText()).isEqualTo("one two");
    }
}
