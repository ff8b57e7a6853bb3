package dev.lapwright.charts.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.map.MapLabels;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.map.MapScaleBar;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.charts.plot.PlacedText;
import dev.lapwright.lap.Lap;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.awt.Graphics2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.title.PaintScaleLegend;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrackMapTest {
    private static final Lap LAP = Example.lap();
    private static final JFreeChart CHART = TrackMap.of(LAP, ChartStyle.STANDARD);

    private static PaintScaleLegend legend(JFreeChart chart) {
        return (PaintScaleLegend) chart.getSubtitles().stream()
                .filter(PaintScaleLegend.class::isInstance)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void legendNamesTheUnitAndHoldsEverySpeed() {
        PaintScaleLegend legend = legend(CHART);
        assertThat(legend.getAxis().getLabel()).isEqualTo("Speed (km/h)");
        assertThat(legend.getScale().getLowerBound())
                .isLessThanOrEqualTo(3.6 * LAP.figures().minimumSpeed());
        assertThat(legend.getScale().getUpperBound())
                .isGreaterThanOrEqualTo(3.6 * LAP.figures().topSpeed());
    }

    @Test
    void standingStartDoesNotSpendTheColours() {
        Lap run = Example.lap(Example.car(), Example.hill());
        JFreeChart chart = TrackMap.of(run, ChartStyle.STANDARD);
        double low = legend(chart).getScale().getLowerBound();
        assertThat(run.figures().minimumSpeed()).isZero();
        assertThat(low).isGreaterThan(0).isLessThanOrEqualTo(3.6 * run.figures().minimumCornerSpeed());
        assertThat(Drawn.of(chart, TrackMap.SIZE).texts())
                .anyMatch(text ->
                        text.contains("one colour below " + NumberText.fixed(0).format(low)));
    }

    @Test
    void mapSaysStartNorthAndScale() {
        assertThat(Drawn.of(CHART, TrackMap.SIZE).texts())
                .contains("N", "Start and finish", "Speed (km/h)")
                .anyMatch(text -> text.matches("[0-9]+ m"));
    }

    @Test
    void openRunHasStartAndFinish() {
        Lap run = Example.lap(Example.car(), Example.hill());
        assertThat(Drawn.of(TrackMap.of(run, ChartStyle.STANDARD), TrackMap.SIZE)
                        .texts())
                .contains("Start", "Finish");
    }

    @Test
    void everyCornerIsLabelled() {
        List<String> texts = Drawn.of(CHART, TrackMap.SIZE).texts();
        for (Corner corner : LAP.stations().corners()) {
            assertThat(texts).anyMatch(text -> text.equals(corner.label()) || text.equals("T" + corner.number()));
        }
    }

    @Test
    void nameWithAMarkupCharacterIsWrittenAsItIs() {
        assertThat(Drawn.of(CHART, TrackMap.SIZE).texts()).contains("T2 Weir & Lock");
    }

    @Test
    void labelsLieNeitherOnTheRoadNorOnEachOther() {
        Stations stations = LAP.stations();
        Rectangle2D area = new Rectangle2D.Double(0, 0, 1000, 800);
        Graphics2D g2 = new BufferedImage(1000, 800, BufferedImage.TYPE_INT_RGB).createGraphics();
        MapScale scale = new MapScale(stations.x(), stations.y(), new Rectangle2D.Double(60, 60, 880, 680));
        MapLabels labels = new MapLabels(g2, ChartStyle.STANDARD, scale, stations, area, 5);
        labels.drawStart(true);
        labels.drawCorners();
        List<PlacedText> placed = labels.placed();
        assertThat(placed).hasSize(1 + stations.corners().size());
        for (int i = 0; i < placed.size(); i++) {
            Rectangle2D box = placed.get(i).box(g2);
            assertThat(area.contains(box)).isTrue();
            for (int j = 0; j < i; j++) {
                assertThat(box.intersects(placed.get(j).box(g2))).isFalse();
            }
            for (int k = 0; k < stations.count(); k++) {
                assertThat(box.contains(new Point2D.Double(scale.px(stations.x()[k]), scale.py(stations.y()[k]))))
                        .isFalse();
            }
        }
    }

    /** So small that some labels find no place beside the road. */
    @ParameterizedTest
    @CsvSource({"330, 150", "260, 130", "420, 110"})
    void noLeaderRunsThroughAName(int width, int height) {
        Stations stations = LAP.stations();
        Rectangle2D area = new Rectangle2D.Double(0, 0, width, height);
        Graphics2D g2 = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB).createGraphics();
        MapScale scale =
                new MapScale(stations.x(), stations.y(), new Rectangle2D.Double(90, 35, width - 180, height - 70));
        MapLabels labels = new MapLabels(g2, ChartStyle.STANDARD, scale, stations, area, 2);
        labels.drawStart(true);
        labels.drawCorners();
        assertThat(labels.leaders()).isNotEmpty().allSatisfy(leader -> {
            for (PlacedText note : labels.placed()) {
                Rectangle2D box = note.box(g2);
                // A leader ends at the edge of its own name.
                Rectangle2D within =
                        new Rectangle2D.Double(box.getX() + 1, box.getY() + 1, box.getWidth() - 2, box.getHeight() - 2);
                assertThat(leader.intersects(within)).isFalse();
            }
        });
    }

    @Test
    void scaleIsTheSameBothWaysAndNorthIsUp() {
        double[] x = {-100, 300, 50};
        double[] y = {20, 900, 400};
        MapScale scale = new MapScale(x, y, new Rectangle2D.Double(10, 10, 500, 300));
        // Rounding of products of hundreds.
        assertThat(scale.px(101) - scale.px(1)).isCloseTo(100 * scale.pixelsPerMetre(), within(1e-9));
        assertThat(scale.py(1) - scale.py(101)).isCloseTo(100 * scale.pixelsPerMetre(), within(1e-9));
        for (int i = 0; i < x.length; i++) {
            assertThat(scale.px(x[i])).isBetween(10.0 - 1e-9, 510.0 + 1e-9);
            assertThat(scale.py(y[i])).isBetween(10.0 - 1e-9, 310.0 + 1e-9);
        }
    }

    @Test
    void scaleBarIsARoundLengthThatFits() {
        assertThat(MapScaleBar.barLength(0.4)).isEqualTo(200);
        assertThat(MapScaleBar.barLength(1.7)).isEqualTo(100);
        assertThat(MapScaleBar.barLength(0.05)).isEqualTo(2000);
    }

    @Test
    void straightRunCanBeDrawn() {
        Lap strip = Example.lap(
                Example.car(), Track.open("Strip", 0, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(1000, 0))));
        assertThat(Drawn.of(TrackMap.of(strip, ChartStyle.STANDARD), TrackMap.SIZE)
                        .texts())
                .contains("Start", "Finish");
    }
}
