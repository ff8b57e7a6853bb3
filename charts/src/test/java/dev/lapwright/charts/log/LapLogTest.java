package dev.lapwright.charts.log;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.TimingLog;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class LapLogTest {
    private static final double[] SOFT = {121, 90.3, 90.1, 90.4, 90.2, 93, 60};
    private static final double[] STIFF = {122, 89.9, 89.6, 89.8, 89.7};

    private static EvidenceResult result() {
        List<TimingLog.Lap> laps = new ArrayList<>();
        add(laps, "soft", SOFT);
        add(laps, "stiff", STIFF);
        return Evidence.DEFAULT.run(TimingLog.of(laps));
    }

    private static void add(List<TimingLog.Lap> laps, String setup, double... times) {
        for (int i = 0; i < times.length; i++) {
            TimingLog.Flag flag = i == 0 ? TimingLog.Flag.OUT : times[i] < 80 ? TimingLog.Flag.IN : TimingLog.Flag.NONE;
            laps.add(new TimingLog.Lap(laps.size() + 1, times[i], setup, "", flag));
        }
    }

    private static JFreeChart chart() {
        return LapLog.of("Fen test", result(), ChartStyle.STANDARD);
    }

    private static int points(XYDataset data) {
        int points = 0;
        for (int series = 0; series < data.getSeriesCount(); series++) {
            points += data.getItemCount(series);
        }
        return points;
    }

    @Test
    void everyLapIsDrawn() {
        XYPlot plot = chart().getXYPlot();
        assertThat(points(plot.getDataset(0)) + points(plot.getDataset(1)) + points(plot.getDataset(2)))
                .isEqualTo(SOFT.length + STIFF.length);
    }

    @Test
    void lapsThatCountAreApartFromThoseThatDoNot() {
        XYPlot plot = chart().getXYPlot();
        assertThat(plot.getDataset(0).getItemCount(0)).isEqualTo(4);
        assertThat(plot.getDataset(0).getItemCount(1)).isEqualTo(4);
    }

    @Test
    void lapsFarOffStandAtTheEdgeAndDoNotFlattenTheRest() {
        XYPlot plot = chart().getXYPlot();
        assertThat(plot.getRangeAxis().getRange().getLength()).isLessThan(3);
        // With each setup an out lap above; with the first a slow lap, too, and an in lap timed at the pits below.
        assertThat(plot.getDataset(2).getItemCount(0)).isEqualTo(2);
        assertThat(plot.getDataset(2).getItemCount(1)).isEqualTo(1);
        assertThat(plot.getDataset(2).getItemCount(2)).isEqualTo(1);
    }

    @Test
    void eachRunHasItsLine() {
        XYDataset lines = chart().getXYPlot().getDataset(3);
        assertThat(lines.getSeriesCount()).isEqualTo(2);
        assertThat(lines.getXValue(0, 0)).isEqualTo(2);
    }

    @Test
    void setupsAreToldApartWithoutColour() {
        assertThat(LapLog.mark(0)).isNotEqualTo(LapLog.mark(1));
        assertThat(ChartStyle.line(0)).isNotEqualTo(ChartStyle.line(1));
    }

    @Test
    void theAnswerAndTheMeansAreWritten() {
        List<String> texts = Drawn.of(chart(), LapLog.SIZE).texts();
        assertThat(texts).contains("Every lap: Fen test", "Lap", "Lap time (min:s)", "slower than shown");
        assertThat(texts).anyMatch(text -> text.startsWith("stiff against soft: \u22120."));
        assertThat(texts).anyMatch(text -> text.startsWith("stiff: 1:29."));
    }

    @Test
    void oneSetupAloneCanBeDrawn() {
        List<TimingLog.Lap> laps = new ArrayList<>();
        add(laps, "soft", 121, 90.3, 90.1);
        EvidenceResult alone = Evidence.DEFAULT.run(TimingLog.of(laps));
        assertThat(Drawn.of(LapLog.of("x", alone, ChartStyle.STANDARD), LapLog.SIZE)
                        .texts())
                .noneMatch(text -> text.contains("NaN"));
    }
}
