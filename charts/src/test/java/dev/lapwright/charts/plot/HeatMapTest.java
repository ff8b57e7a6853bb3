package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import org.junit.jupiter.api.Test;

class HeatMapTest {
    private static final double[] PLACES = {0, 1, 2, 3, 4};
    private static final Rectangle2D AREA = new Rectangle2D.Double(0, 0, 400, 400);

    private static UnitAxis axis() {
        UnitAxis axis = new UnitAxis("x", ChartStyle.STANDARD, 0);
        axis.setRange(0, 4);
        return axis;
    }

    /** Upright lines of equal value, their middles at half the height: there a line across is drawn over the map. */
    @Test
    void labelsKeepClearOfWhatIsDrawnOverTheMap() {
        double[][] values = new double[PLACES.length][];
        for (int j = 0; j < values.length; j++) {
            values[j] = PLACES.clone();
        }
        ColourScale ramp = new ColourScale(0, 4, ChartStyle.STANDARD.palette(), true);
        Graphics2D g2 = new BufferedImage(400, 400, BufferedImage.TYPE_INT_RGB).createGraphics();
        HeatMap map = new HeatMap(PLACES, PLACES, values, ramp, 1.5, "own", NumberText::fixed, ChartStyle.STANDARD);
        Line2D line = new Line2D.Double(0, 200, 400, 200);
        List<PlacedText> before = map.labels(g2, AREA, axis(), axis());
        assertThat(before).anyMatch(label -> line.intersects(label.box(g2)));
        List<PlacedText> after = map.clearOf(new double[][] {{0, 4}, {2, 2}}).labels(g2, AREA, axis(), axis());
        assertThat(after).hasSameSizeAs(before).noneMatch(label -> line.intersects(label.box(g2)));
    }
}
