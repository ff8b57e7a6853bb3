package dev.lapwright.charts.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.charts.Example;
import dev.lapwright.charts.plot.NumberText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.Arrays;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class LineMapTest {
    private static final Stations ROAD = Example.circuit().stations(StationSpacing.DEFAULT);
    private static final DrivenLine MIDDLE = aside("middle", 92.5, 0);
    private static final DrivenLine INSIDE = bulging("inside", 91.25);

    /** A line always as far to the left. */
    private static DrivenLine aside(String name, double lapTime, double left) {
        double[] offset = new double[ROAD.count()];
        Arrays.fill(offset, left);
        return line(ROAD, name, lapTime, offset);
    }

    /** A line that leaves the centre line in each corner, by 0.3 m times its number, towards its inside. */
    private static DrivenLine bulging(String name, double lapTime) {
        double[] s = ROAD.s();
        double[] offset = new double[s.length];
        for (Corner corner : ROAD.corners()) {
            for (int i = 0; i < s.length; i++) {
                if (s[i] >= corner.entry() && s[i] <= corner.exit()) {
                    double part = (s[i] - corner.entry()) / (corner.exit() - corner.entry());
                    offset[i] = (corner.left() ? 0.3 : -0.3) * corner.number() * Math.sin(Math.PI * part);
                }
            }
        }
        return line(ROAD, name, lapTime, offset);
    }

    private static DrivenLine line(Stations road, String name, double lapTime, double[] offset) {
        double[] x = road.x();
        double[] y = road.y();
        for (int i = 0; i < x.length; i++) {
            x[i] -= offset[i] * Math.sin(road.heading()[i]);
            y[i] += offset[i] * Math.cos(road.heading()[i]);
        }
        return new DrivenLine(name, lapTime, x, y, road.s(), offset);
    }

    private static JFreeChart chart(DrivenLine... lines) {
        return LineMap.of(ROAD, List.of(lines), ChartStyle.STANDARD);
    }

    private static LineMapPlot plot(DrivenLine... lines) {
        return (LineMapPlot) chart(lines).getPlot();
    }

    private static XYPlot panel(DrivenLine... lines) {
        return ((CombinedDomainXYPlot) plot(lines).panels()).getSubplots().get(1);
    }

    @Test
    void legendNamesEachLineWithItsTimeAndTheRoad() {
        assertThat(Drawn.of(chart(MIDDLE, INSIDE), LineMap.SIZE).texts())
                .contains("middle: 1:32.500", "inside: 1:31.250", "centre line", "edges of the road")
                .contains("Offset (m)", "Distance (m)", "+ left of the centre line", "Driven lines: Harrow Fen")
                .anyMatch(text -> text.contains("inside \u22121.250 s against middle"));
    }

    @Test
    void lineOfUnknownTimeIsNamedAlone() {
        assertThat(Drawn.of(chart(aside("sketch", Double.NaN, 1)), LineMap.SIZE).texts())
                .contains("sketch")
                .noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void panelHoldsTheOffsetOfEveryPoint() {
        XYPlot panel = panel(MIDDLE, INSIDE);
        assertThat(panel.getDataset(0).getSeriesCount()).isEqualTo(2);
        for (int i = 0; i < ROAD.count(); i++) {
            assertThat(panel.getDataset(0).getYValue(1, i)).isEqualTo(INSIDE.offset()[i]);
            assertThat(panel.getDataset(0).getXValue(1, i)).isEqualTo(ROAD.s()[i]);
        }
    }

    @Test
    void panelShowsBothEdgesOfTheRoad() {
        XYPlot panel = panel(MIDDLE);
        // Segments without a width are 5 m wide either side.
        assertThat(panel.getDataset(1).getYValue(1, 0)).isEqualTo(ROAD.widthLeft()[0]);
        assertThat(panel.getDataset(1).getYValue(2, 0)).isEqualTo(-ROAD.widthRight()[0]);
        assertThat(panel.getRangeAxis().getRange().contains(ROAD.widthLeft()[0]))
                .isTrue();
        assertThat(panel.getRangeAxis().getRange().contains(-ROAD.widthRight()[0]))
                .isTrue();
    }

    @Test
    void lineBesideTheRoadIsStillInThePanel() {
        assertThat(panel(aside("astray", Double.NaN, 20)).getRangeAxis().getUpperBound())
                .isGreaterThan(20);
    }

    @Test
    void theFourCornersWhereLinesAreFarthestApartAreEnlarged() {
        CornerCloseUps views = plot(MIDDLE, INSIDE).views();
        assertThat(views.all()).hasSize(4);
        // The corner of the highest number has the greatest offset: 0.3 m for each number.
        int last = ROAD.corners().size();
        CornerCloseUps.View widest = views.all().get(3);
        assertThat(widest.corner().number()).isEqualTo(last);
        // Stations stand some metres apart: a little of the crest of a sine over the corner may be missed.
        assertThat(widest.spread()).isCloseTo(0.3 * last, within(0.05 * 0.3 * last));
    }

    @Test
    void enlargedCornersComeInDrivingOrderAndAreNamed() {
        List<CornerCloseUps.View> views = plot(MIDDLE, INSIDE).views().all();
        List<String> texts = Drawn.of(chart(MIDDLE, INSIDE), LineMap.SIZE).texts();
        int before = 0;
        for (CornerCloseUps.View view : views) {
            assertThat(view.corner().number()).isGreaterThan(before);
            assertThat(texts)
                    .contains(view.corner().label(), NumberText.fixed(1).format(view.spread()) + " m apart");
            before = view.corner().number();
        }
    }

    @Test
    void noTwoSquaresShowTheSamePlace() {
        List<CornerCloseUps.View> views = plot(MIDDLE, INSIDE).views().all();
        for (CornerCloseUps.View one : views) {
            for (CornerCloseUps.View other : views) {
                // Half of the smallest square, 110 m.
                assertThat(one.equals(other) || Math.hypot(one.x() - other.x(), one.y() - other.y()) > 55)
                        .isTrue();
            }
        }
    }

    @Test
    void linesThatAreTheSameNeedNoEnlargement() {
        assertThat(plot(MIDDLE, aside("again", Double.NaN, 0.1)).views().all()).isEmpty();
    }

    @Test
    void squaresAreLargeEnoughForACornerAndSmallEnoughForALine() {
        assertThat(plot(MIDDLE, INSIDE).views().side()).isBetween(110.0, 160.0);
    }

    @Test
    void singleLineIsComparedWithTheCentreLine() {
        assertThat(Drawn.of(chart(INSIDE), LineMap.SIZE).texts())
                .anyMatch(text -> text.endsWith("m off the centre line"));
    }

    @Test
    void straightRunCanBeDrawn() {
        Track strip = Track.open("Strip", 0, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(1000, 0)));
        Stations road = strip.stations(StationSpacing.DEFAULT);
        DrivenLine line = line(road, "only", 20, new double[road.count()]);
        assertThat(Drawn.of(LineMap.of(road, List.of(line), ChartStyle.STANDARD), LineMap.SIZE)
                        .texts())
                .contains("Start", "Finish")
                .noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void sameMapGivesTheSameBytes() {
        assertThat(ChartImage.svg(chart(MIDDLE, INSIDE), LineMap.SIZE))
                .isEqualTo(ChartImage.svg(chart(MIDDLE, INSIDE), LineMap.SIZE));
    }

    @Test
    void offsetIsLinearBetweenPointsAndLevelBeyond() {
        DrivenLine line = new DrivenLine(
                "two", Double.NaN, new double[] {0, 1}, new double[2], new double[] {10, 20}, new double[] {1, 3});
        assertThat(line.offsetAt(15)).isEqualTo(2);
        assertThat(line.offsetAt(5)).isEqualTo(1);
        assertThat(line.offsetAt(25)).isEqualTo(3);
    }

    @Test
    void lineThatHasBeenFoundIsDrawnWithoutMoreAdo() {
        Line smoothest = LineSearch.of(Example.circuit(), Example.car(), LineChoices.DEFAULT)
                .smoothest();
        DrivenLine drawn = DrivenLine.of("smoothest", 92, smoothest);
        assertThat(drawn.offset()).isEqualTo(smoothest.offsets());
        assertThat(drawn.distanceAlongRoad()).isEqualTo(smoothest.distances());
        assertThat(Drawn.of(chart(drawn), LineMap.SIZE).texts()).contains("smoothest: 1:32.000");
    }

    @Test
    void arraysAreCopied() {
        double[] offset = {1, 2};
        DrivenLine line = new DrivenLine("two", Double.NaN, new double[2], new double[2], new double[] {0, 1}, offset);
        offset[0] = 9;
        line.offset()[1] = 9;
        assertThat(line.offset()).containsExactly(1, 2);
    }

    @Test
    void columnsOfUnequalLengthAreRefused() {
        assertThatThrownBy(() ->
                        new DrivenLine("short", 90, new double[2], new double[2], new double[] {0, 1}, new double[1]))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("short")
                .hasMessageContaining("offset");
    }

    @Test
    void lineThatRunsBackwardsIsRefused() {
        assertThatThrownBy(() ->
                        new DrivenLine("back", 90, new double[2], new double[2], new double[] {1, 0}, new double[2]))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("driving order");
    }

    @Test
    void lineWithNotANumberIsRefused() {
        assertThatThrownBy(() -> new DrivenLine(
                        "odd", 90, new double[] {0, Double.NaN}, new double[2], new double[] {0, 1}, new double[2]))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("x of line odd");
    }

    @Test
    void lineOfAnotherRoadIsRefused() {
        DrivenLine longer =
                new DrivenLine("longer", 90, new double[2], new double[2], new double[] {0, 99_000}, new double[2]);
        assertThatThrownBy(() -> chart(longer))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("99000 m");
    }

    @Test
    void noLineAndFourLinesAreRefused() {
        assertThatThrownBy(LineMapTest::chart)
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("0 lines");
        assertThatThrownBy(() -> chart(aside("a", 90, 0), aside("b", 90, 1), aside("c", 90, 2), aside("d", 90, 3)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("4 lines");
    }

    @Test
    void twoLinesOfOneNameAreRefused() {
        assertThatThrownBy(() -> chart(MIDDLE, MIDDLE))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("middle");
    }
}
