package dev.lapwright.charts.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class CircuitProfileTest {
    private static final Stations CIRCUIT = Example.circuit().stations(StationSpacing.DEFAULT);
    private static final JFreeChart CHART = CircuitProfile.of(CIRCUIT, ChartStyle.STANDARD);

    private static XYPlot panel(JFreeChart chart, int index) {
        return ((CombinedDomainXYPlot) chart.getPlot()).getSubplots().get(index);
    }

    /** A hill that climbs at one angle, rad. */
    private static JFreeChart ramp(double slope) {
        List<TrackPoint> points = List.of(point(0, slope), point(500, slope));
        return CircuitProfile.of(Track.open("Ramp", 10, points).stations(StationSpacing.DEFAULT), ChartStyle.STANDARD);
    }

    private static TrackPoint point(double s, double slope) {
        return new TrackPoint(s, 0, slope, 0, 0, 1, 5, 5, Double.POSITIVE_INFINITY);
    }

    @Test
    void panelsAreCurvatureAltitudeAndSlopeWithTheirUnits() {
        assertThat(panel(CHART, 1).getRangeAxis().getLabel()).isEqualTo("Curvature (1/km)");
        assertThat(panel(CHART, 2).getRangeAxis().getLabel()).isEqualTo("Altitude (m)");
        assertThat(panel(CHART, 3).getRangeAxis().getLabel()).isEqualTo("Slope (deg)");
    }

    @Test
    void slopeIsInDegreesUphillPositive() {
        XYPlot slope = panel(ramp(0.1), 3);
        // 180/π degrees to the radian; rounding of one product.
        assertThat(slope.getDataset().getYValue(0, 0)).isCloseTo(0.1 * 180 / Math.PI, within(1e-12));
        assertThat(slope.getRangeAxis().getUpperBound()).isGreaterThan(0.1 * 180 / Math.PI);
    }

    @Test
    void levelRoadKeepsADegreeOfSlopeEitherSide() {
        assertThat(panel(ramp(0), 3).getRangeAxis().getRange().contains(1)).isTrue();
        assertThat(panel(ramp(0), 3).getRangeAxis().getRange().contains(-1)).isTrue();
    }

    @Test
    void everyCornerIsNamedAndHasItsRadius() {
        List<String> texts = Drawn.of(CHART, CircuitProfile.SIZE).texts();
        assertThat(texts).contains("Profile: " + Example.CIRCUIT, "left turns", "+ uphill", "Distance (m)");
        for (Corner corner : CIRCUIT.corners()) {
            assertThat(texts)
                    .anyMatch(text -> text.equals(corner.label()) || text.matches("T?" + corner.number()))
                    .contains(NumberText.fixed(0).format(corner.minimumRadius()) + " m");
        }
    }

    @Test
    void sameProfileGivesTheSameBytes() {
        JFreeChart again = CircuitProfile.of(CIRCUIT, ChartStyle.STANDARD);
        assertThat(ChartImage.svg(again, CircuitProfile.SIZE)).isEqualTo(ChartImage.svg(CHART, CircuitProfile.SIZE));
    }
}
