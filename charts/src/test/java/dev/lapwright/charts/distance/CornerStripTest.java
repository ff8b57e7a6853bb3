package dev.lapwright.charts.distance;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.plot.UnitAxis;
import dev.lapwright.track.Corner;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class CornerStripTest {
    private static final double WIDTH = 1100;
    private static final Rectangle2D AREA = new Rectangle2D.Double(60, 80, WIDTH, 56);
    private static final double ROW = 15;
    private static final int ROWS = 2;

    private static List<CornerStrip.Placed> placed(List<Corner> corners, Graphics2D g2) {
        UnitAxis distance = new UnitAxis("Distance (m)", ChartStyle.STANDARD, 1);
        distance.setRange(0, WIDTH);
        return new CornerStrip(corners, List.of(), ChartStyle.STANDARD).place(g2, AREA, distance, ROWS, ROW);
    }

    private static Graphics2D graphics() {
        return new BufferedImage(10, 10, BufferedImage.TYPE_INT_RGB).createGraphics();
    }

    private static Corner corner(int number, String name, double apex) {
        return new Corner(number, name, apex - 5, apex, apex + 5, true, 50);
    }

    /** A label's letters: its box less the room above and below them. */
    private static Rectangle2D letters(CornerStrip.Placed placed, Graphics2D g2) {
        Rectangle2D box = placed.note().box(g2);
        return new Rectangle2D.Double(box.getX(), box.getY() + 4, box.getWidth(), box.getHeight() - 8);
    }

    @Property(tries = 100)
    void labelsNeverLieUponEachOther(
            @ForAll @Size(min = 1, max = 40) List<@IntRange(min = 0, max = 1100) Integer> apexes) {
        List<Integer> sorted = apexes.stream().sorted().toList();
        List<Corner> corners = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            corners.add(corner(i + 1, i % 3 == 0 ? "Long Barrow" : "", sorted.get(i)));
        }
        Graphics2D g2 = graphics();
        List<CornerStrip.Placed> placed = placed(corners, g2);
        assertThat(placed).isNotEmpty();
        for (int i = 0; i < placed.size(); i++) {
            Rectangle2D box = letters(placed.get(i), g2);
            assertThat(box.getMinX()).isGreaterThanOrEqualTo(AREA.getMinX() - 1e-6);
            assertThat(box.getMaxX()).isLessThanOrEqualTo(AREA.getMaxX() + 1e-6);
            for (int j = 0; j < i; j++) {
                assertThat(box.intersects(letters(placed.get(j), g2))).isFalse();
            }
        }
    }

    @Test
    void namesAreWrittenWhereThereIsRoom() {
        Graphics2D g2 = graphics();
        List<String> texts = placed(List.of(corner(1, "Mill", 200), corner(2, "Weir", 600)), g2).stream()
                .map(p -> p.note().text())
                .toList();
        assertThat(texts).containsExactlyInAnyOrder("T1 Mill", "T2 Weir");
    }

    @Test
    void crowdedCornersKeepTheirNumbers() {
        Graphics2D g2 = graphics();
        List<Corner> corners = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            corners.add(corner(i + 1, "Very Long Name", 300 + 22 * i));
        }
        assertThat(placed(corners, g2)).hasSize(12);
    }
}
