package dev.lapwright.charts;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.lap.GgDiagram;
import dev.lapwright.charts.lap.SpeedComparison;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.charts.lap.TrackMap;
import dev.lapwright.charts.track.CircuitMap;
import dev.lapwright.charts.track.CircuitProfile;
import dev.lapwright.lap.Lap;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jfree.chart.JFreeChart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Element;

/** Charts of circuits with no, one or very many corners, on large and small pictures: every text is whole and by itself. */
class LegibilityTest {
    /** Texts that share less than this of the smaller box do not disturb each other: ascenders are rarely that high. */
    private static final double SHARED = 0.12;

    private static Map<String, Drawing> charts(Lap lap, ChartStyle style) {
        Map<String, Drawing> charts = new LinkedHashMap<>();
        charts.put("speed", new Drawing(SpeedTrace.of(lap, style), SpeedTrace.SIZE));
        charts.put("map", new Drawing(TrackMap.of(lap, style), TrackMap.SIZE));
        charts.put("gg", new Drawing(GgDiagram.of(lap, style), GgDiagram.SIZE));
        charts.put("circuit", new Drawing(CircuitMap.of(lap.stations(), style), CircuitMap.SIZE));
        charts.put("profile", new Drawing(CircuitProfile.of(lap.stations(), style), CircuitProfile.SIZE));
        charts.put(
                "comparison",
                new Drawing(
                        SpeedComparison.of(
                                List.of(
                                        new SpeedComparison.NamedLap("as it is", lap),
                                        new SpeedComparison.NamedLap("the same", lap)),
                                style),
                        SpeedComparison.SIZE));
        return charts;
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 12, 64, 220})
    void everyTextIsWholeAndByItself(int corners) {
        Lap lap = Example.lap(Example.car(), Example.circuit(corners));
        charts(lap, ChartStyle.STANDARD).forEach((name, drawing) -> check(name, drawing.chart(), drawing.size()));
    }

    @Test
    void smallPicturesAreLegibleToo() {
        Lap lap = Example.lap();
        charts(lap, ChartStyle.STANDARD)
                .forEach((name, drawing) -> check(
                        name,
                        drawing.chart(),
                        new ImageSize(
                                Math.max(700, drawing.size().width() / 2),
                                Math.max(500, drawing.size().height() / 2))));
    }

    /** On a page 360 px wide. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 12, 64, 220})
    void everyTextIsWholeOnAPhone(int corners) {
        Lap lap = Example.lap(Example.car(), Example.circuit(corners));
        charts(lap, ChartStyle.STANDARD).forEach((name, drawing) -> {
            Drawing narrow = name.equals("circuit")
                    ? drawing.withNarrowHeight(CircuitMap.NARROW_HEIGHT, CircuitMap.NARROW_BELOW)
                            .forWidth(360)
                    : drawing.forWidth(360);
            assertThat(narrow.size().width()).isEqualTo(360);
            check(name, narrow.chart(), narrow.size());
        });
    }

    @Test
    void aPictureKeepsItsShapeOnAWidePageAndStandsUprightOnANarrowOne() {
        Drawing drawing = new Drawing(SpeedTrace.of(Example.lap(), ChartStyle.STANDARD), new ImageSize(1200, 700));
        assertThat(drawing.forWidth(2400).size()).isEqualTo(new ImageSize(2400, 1400));
        assertThat(drawing.forWidth(360).size()).isEqualTo(new ImageSize(360, 504));
        assertThat(drawing.withNarrowHeight(900, 700).forWidth(360).size()).isEqualTo(new ImageSize(360, 900));
        assertThat(drawing.withNarrowHeight(900, 700).forWidth(700).size()).isEqualTo(new ImageSize(700, 700));
    }

    private static void check(String name, JFreeChart chart, ImageSize size) {
        Drawn drawn = Drawn.of(chart, size);
        List<Element> texts = drawn.elements("text");
        List<Rectangle2D> boxes = new ArrayList<>();
        List<String> said = new ArrayList<>();
        for (Element text : texts) {
            if (!text.hasAttribute("x")) {
                continue;
            }
            Rectangle2D box = box(text);
            assertThat(box.getX()).as(name + ": " + text.getTextContent()).isGreaterThan(-1);
            assertThat(box.getMaxX()).as(name + ": " + text.getTextContent()).isLessThan(size.width() + 1);
            for (int i = 0; i < boxes.size(); i++) {
                Rectangle2D both = box.createIntersection(boxes.get(i));
                double shared = both.isEmpty() ? 0 : both.getWidth() * both.getHeight();
                double smaller = Math.min(area(box), area(boxes.get(i)));
                assertThat(shared / smaller)
                        .as("%s: '%s' upon '%s'", name, text.getTextContent(), said.get(i))
                        .isLessThan(SHARED);
            }
            boxes.add(box);
            said.add(text.getTextContent());
        }
        assertThat(boxes).isNotEmpty();
    }

    private static double area(Rectangle2D box) {
        return box.getWidth() * box.getHeight();
    }

    /** The place that the letters take, from the baseline up to the height of capitals. */
    private static Rectangle2D box(Element text) {
        int size = Integer.parseInt(text.getAttribute("font-size"));
        int weight = text.getAttribute("font-weight").equals("bold") ? Font.BOLD : Font.PLAIN;
        FontMetrics metrics = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB)
                .createGraphics()
                .getFontMetrics(new Font(Font.SANS_SERIF, weight, size));
        double x = Double.parseDouble(text.getAttribute("x"));
        double y = Double.parseDouble(text.getAttribute("y"));
        double height = 0.73 * size;
        return new Rectangle2D.Double(x, y - height, metrics.stringWidth(text.getTextContent()), height);
    }
}
