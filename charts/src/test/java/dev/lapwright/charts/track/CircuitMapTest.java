package dev.lapwright.charts.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.map.MapLabels;
import dev.lapwright.charts.map.MapScale;
import dev.lapwright.charts.map.RoadOutline;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class CircuitMapTest {
    private static final double NO_LIMIT = Double.POSITIVE_INFINITY;
    private static final Stations CIRCUIT = stations(Example.circuit());
    private static final JFreeChart CHART = CircuitMap.of(CIRCUIT, ChartStyle.STANDARD);

    private static Stations stations(Track track) {
        return track.stations(StationSpacing.DEFAULT);
    }

    private static List<String> texts(Track track) {
        return Drawn.of(CircuitMap.of(stations(track), ChartStyle.STANDARD), CircuitMap.SIZE)
                .texts();
    }

    private static XYPlot panel(JFreeChart chart, int index) {
        Object panels = ((CircuitMap.CircuitPlot) chart.getPlot()).panels();
        return ((CombinedDomainXYPlot) panels).getSubplots().get(index);
    }

    /** A straight of 1000 m, half of its width on each side. */
    private static Track strip(double width) {
        return Track.open(
                "Strip",
                0,
                List.of(
                        new TrackPoint(0, 0, 0, 0, 0, 1, width / 2, width / 2, NO_LIMIT),
                        new TrackPoint(1000, 0, 0, 0, 0, 1, width / 2, width / 2, NO_LIMIT)));
    }

    @Test
    void axesNameTheirUnits() {
        assertThat(Drawn.of(CHART, CircuitMap.SIZE).texts())
                .contains("Distance (m)", "Altitude (m)", "Curvature (1/km)", "left turns", "right turns");
    }

    @Test
    void panelsHoldAltitudeAndCurvatureOfEveryStation() {
        XYDataset altitude = panel(CHART, 1).getDataset();
        XYDataset curvature = panel(CHART, 2).getDataset();
        assertThat(altitude.getItemCount(0)).isEqualTo(CIRCUIT.count());
        for (int i = 0; i < CIRCUIT.count(); i++) {
            assertThat(altitude.getYValue(0, i)).isEqualTo(CIRCUIT.z()[i]);
            // A thousand metres to the kilometre; rounding of one product.
            assertThat(curvature.getYValue(0, i)).isCloseTo(1000 * CIRCUIT.curvature()[i], within(1e-9));
        }
    }

    @Test
    void everyPanelContainsItsData() {
        for (int panel : new int[] {1, 2}) {
            XYPlot plot = panel(CHART, panel);
            XYDataset data = plot.getDataset();
            for (int i = 0; i < data.getItemCount(0); i++) {
                assertThat(plot.getRangeAxis().getRange().contains(data.getYValue(0, i)))
                        .isTrue();
            }
        }
    }

    @Test
    void everyCornerIsNamedOnTheMapAndHasItsRadius() {
        List<String> texts = Drawn.of(CHART, CircuitMap.SIZE).texts();
        for (Corner corner : CIRCUIT.corners()) {
            assertThat(texts)
                    .anyMatch(text -> text.equals(corner.label()) || text.equals("T" + corner.number()))
                    .contains(NumberText.fixed(0).format(corner.minimumRadius()) + " m");
        }
    }

    @Test
    void mapSaysStartNorthAndScale() {
        assertThat(Drawn.of(CHART, CircuitMap.SIZE).texts())
                .contains("N", "Start and finish", "corners dark, road to scale", "Circuit: " + Example.CIRCUIT)
                .anyMatch(text -> text.matches("[0-9]+ m"));
    }

    @Test
    void openRunHasStartAndFinish() {
        assertThat(texts(Example.hill())).contains("Start", "Finish", "Open run: Kestrel Hill");
    }

    @Test
    void straightRunHasNoCornersAndCanBeDrawn() {
        assertThat(texts(strip(10)))
                .contains("Start", "Finish")
                .anyMatch(text -> text.contains("no corners") && text.contains("no climb"))
                .noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void roadTooNarrowToSeeIsSaidToBeDrawnWider() {
        // 1000 m across some 1000 px: a metre is about a px.
        assertThat(texts(strip(10))).contains("road to scale");
        assertThat(texts(strip(1))).contains("road drawn wider than it is");
    }

    @Test
    void roadIsAsWideAsItIs() {
        Stations stations = stations(strip(20));
        BufferedImage image = new BufferedImage(1100, 400, BufferedImage.TYPE_INT_RGB);
        Graphics2D g2 = image.createGraphics();
        g2.setPaint(Color.WHITE);
        g2.fillRect(0, 0, 1100, 400);
        MapScale scale = new MapScale(stations.x(), stations.y(), new Rectangle2D.Double(50, 50, 1000, 300));
        new RoadOutline(stations, scale).draw(g2, ChartStyle.STANDARD);
        int dark = 0;
        int x = (int) scale.px(500 * Math.cos(stations.heading()[0]));
        for (int y = 0; y < 400; y++) {
            dark += image.getRGB(x, y) == Color.WHITE.getRGB() ? 0 : 1;
        }
        // One px to the metre: 20 px, and the half of an edge's line that lies outside on each side.
        assertThat(dark).isBetween(20, 22);
    }

    @Test
    void labelsKeepOffAWideRoad() {
        Rectangle2D area = new Rectangle2D.Double(0, 0, 1000, 800);
        Graphics2D g2 = new BufferedImage(1000, 800, BufferedImage.TYPE_INT_RGB).createGraphics();
        MapScale scale = new MapScale(CIRCUIT.x(), CIRCUIT.y(), new Rectangle2D.Double(60, 60, 880, 680));
        double halfRoad = 20;
        MapLabels labels = new MapLabels(g2, ChartStyle.STANDARD, scale, CIRCUIT, area, halfRoad);
        labels.drawStart(true);
        labels.drawCorners();
        assertThat(labels.placed()).isNotEmpty().allSatisfy(note -> {
            Rectangle2D box = note.box(g2);
            for (int k = 0; k < CIRCUIT.count(); k++) {
                double dx = Math.max(0, Math.abs(scale.px(CIRCUIT.x()[k]) - box.getCenterX()) - box.getWidth() / 2);
                double dy = Math.max(0, Math.abs(scale.py(CIRCUIT.y()[k]) - box.getCenterY()) - box.getHeight() / 2);
                assertThat(Math.hypot(dx, dy)).isGreaterThanOrEqualTo(halfRoad);
            }
        });
    }
}
