package dev.lapwright.charts.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jfree.chart.ChartRenderingInfo;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class GgDiagramTest {
    private static final Lap LAP = Example.lap();
    private static final JFreeChart CHART = GgDiagram.of(LAP, ChartStyle.STANDARD);
    private static final XYPlot PLOT = CHART.getXYPlot();

    @Test
    void everyStationIsAPointOfTheSeriesOfItsLimit() {
        Set<Limit> limits = EnumSet.noneOf(Limit.class);
        for (int i = 0; i < LAP.count(); i++) {
            limits.add(LAP.limit(i));
        }
        int points = 0;
        for (int series = 0; series < PLOT.getSeriesCount(); series++) {
            points += PLOT.getDataset().getItemCount(series);
        }
        assertThat(PLOT.getSeriesCount()).isEqualTo(limits.size());
        assertThat(points).isEqualTo(LAP.count());
    }

    /** One g is 9.80665 m/s²: 3rd General Conference on Weights and Measures (1901), BIPM. */
    @Test
    void accelerationsAreInStandardGravities() {
        double most = 0;
        for (double a : LAP.column(Channel.LATERAL_ACCELERATION)) {
            most = Math.max(most, a / 9.80665);
        }
        double drawn = 0;
        for (int series = 0; series < PLOT.getSeriesCount(); series++) {
            for (int i = 0; i < PLOT.getDataset().getItemCount(series); i++) {
                drawn = Math.max(drawn, PLOT.getDataset().getXValue(series, i));
            }
        }
        assertThat(drawn).isEqualTo(most);
    }

    @Test
    void axesNameUnitsAndSigns() {
        assertThat(PLOT.getDomainAxis().getLabel()).isEqualTo("Lateral acceleration (g), left turns positive");
        assertThat(PLOT.getRangeAxis().getLabel()).isEqualTo("Longitudinal acceleration (g), braking negative");
    }

    @Test
    void axesHoldAllPoints() {
        for (int series = 0; series < PLOT.getSeriesCount(); series++) {
            for (int i = 0; i < PLOT.getDataset().getItemCount(series); i++) {
                assertThat(PLOT.getDomainAxis()
                                .getRange()
                                .contains(PLOT.getDataset().getXValue(series, i)))
                        .isTrue();
                assertThat(PLOT.getRangeAxis()
                                .getRange()
                                .contains(PLOT.getDataset().getYValue(series, i)))
                        .isTrue();
            }
        }
    }

    @Test
    void scalesAreEqualInAPictureOfAnyShape() {
        for (int[] size : new int[][] {{900, 900}, {1200, 700}, {700, 1200}}) {
            ChartRenderingInfo info = new ChartRenderingInfo();
            BufferedImage image = new BufferedImage(size[0], size[1], BufferedImage.TYPE_INT_RGB);
            CHART.draw(image.createGraphics(), new Rectangle2D.Double(0, 0, size[0], size[1]), info);
            Rectangle2D data = info.getPlotInfo().getDataArea();
            double across = data.getWidth() / PLOT.getDomainAxis().getRange().getLength();
            double up = data.getHeight() / PLOT.getRangeAxis().getRange().getLength();
            // The library rounds the area to whole pixels: two of them in some hundreds.
            assertThat(up / across).isCloseTo(1, within(0.01));
        }
    }

    @Test
    void everyLimitHasAShapeOfItsOwn() {
        Set<String> marks = new HashSet<>();
        for (Limit limit : Limit.values()) {
            GgDiagram.LimitMark mark = GgDiagram.LimitMark.of(limit);
            StringBuilder outline = new StringBuilder().append(mark.filled());
            double[] c = new double[6];
            for (var path = mark.shape().getPathIterator(null); !path.isDone(); path.next()) {
                outline.append(path.currentSegment(c))
                        .append(Math.round(10 * c[0]))
                        .append(',')
                        .append(Math.round(10 * c[1]))
                        .append(' ');
            }
            marks.add(outline.toString());
        }
        assertThat(marks).hasSize(Limit.values().length);
    }

    @Test
    void legendGivesTheShareOfTheTime() {
        List<String> texts = Drawn.of(CHART, GgDiagram.SIZE).texts();
        LAP.limitShares()
                .forEach((limit, share) ->
                        assertThat(texts).contains(limit.label() + ": " + GgDiagram.percent(share) + " of the time"));
    }

    @Test
    void ringsAreLabelledInG() {
        assertThat(Drawn.of(CHART, GgDiagram.SIZE).texts()).contains("0.5 g", "1.0 g");
    }

    @Test
    void thousandPointsMakeASmallFile() {
        // One path for each series: a mark costs some 150 bytes, a mark of its own some 600.
        assertThat(ChartImage.svg(CHART, GgDiagram.SIZE).length).isLessThan(300 * LAP.count());
    }

    @Test
    void rareLimitIsNotSaidToBeNone() {
        assertThat(GgDiagram.percent(0.001)).isEqualTo("under 1%");
        assertThat(GgDiagram.percent(0.006)).isEqualTo("1%");
        assertThat(GgDiagram.percent(0.125)).isEqualTo("12%");
    }
}
