package dev.lapwright.charts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ThinnedPathTest {
    @Test
    void pointsOnAStraightLineAreLeftOut() {
        assertThat(ThinnedPath.of("M0,0L1,1L2,2L3,3L4,4")).isEqualTo("M0,0L4,4");
    }

    @Test
    void cornersStay() {
        assertThat(ThinnedPath.of("M0,0L5,0L10,0L10,5L10,10Z")).isEqualTo("M0,0L10,0L10,10Z");
    }

    /** The formula of a circle: no point of the thinned line may lie further from it than its tolerance and a chord's sag. */
    @Test
    void aCircleStaysRoundWithFarFewerPoints() {
        StringBuilder data = new StringBuilder("M100,0");
        for (int i = 1; i < 2000; i++) {
            double angle = 2 * Math.PI * i / 2000;
            data.append(String.format(Locale.ROOT, "L%.3f,%.3f", 100 * Math.cos(angle), 100 * Math.sin(angle)));
        }
        Matcher points = Pattern.compile("[ML]([^,]+),([^MLZ]+)").matcher(ThinnedPath.of(data.toString()));
        int count = 0;
        double x = 100;
        double y = 0;
        while (points.find()) {
            double nextX = Double.parseDouble(points.group(1));
            double nextY = Double.parseDouble(points.group(2));
            // The middle of a chord is what lies deepest inside the circle; a tenth is below a pixel's tolerance of
            // 0.15.
            assertThat(Math.hypot((x + nextX) / 2, (y + nextY) / 2)).isGreaterThan(100 - 0.16);
            x = nextX;
            y = nextY;
            count++;
        }
        assertThat(count).isBetween(20, 200);
    }

    @Test
    void everyPartOfAPathStartsAnew() {
        assertThat(ThinnedPath.of("M0,0L1,0L2,0L3,0M9,9L8,8")).isEqualTo("M0,0L3,0M9,9L8,8");
    }

    @ParameterizedTest
    @ValueSource(strings = {"M0,0C1,1,2,2,3,3L4,4L5,5L6,6", "M0,0Q1,1,2,2", ""})
    void curvesAreLeftAlone(String data) {
        assertThat(ThinnedPath.of(data)).isEqualTo(data);
    }
}
