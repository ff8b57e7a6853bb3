package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class EndLabelAxisTest {
    private static final double GAP = 15;
    private static final double HEIGHT = 400;
    /** Rounding of sums of pixels. */
    private static final double ROUNDING = 1e-6;

    @Property
    void labelsNeverOverlapNorLeaveThePicture(
            @ForAll @Size(min = 1, max = 12) double @DoubleRange(min = 0, max = HEIGHT) [] wanted) {
        Arrays.sort(wanted);
        double[] placed = EndLabelAxis.spread(wanted, GAP, 0, HEIGHT);
        for (int i = 0; i < placed.length; i++) {
            assertThat(placed[i]).isBetween(-ROUNDING, HEIGHT + ROUNDING);
            if (i > 0) {
                assertThat(placed[i] - placed[i - 1]).isGreaterThanOrEqualTo(GAP - ROUNDING);
            }
        }
    }

    @Test
    void labelsWithRoomStayWhereTheyWantToBe() {
        assertThat(EndLabelAxis.spread(new double[] {50, 100, 300}, GAP, 0, HEIGHT))
                .containsExactly(50, 100, 300);
    }

    @Test
    void equalWishesAreSpreadEvenly() {
        assertThat(EndLabelAxis.spread(new double[] {100, 100}, GAP, 0, HEIGHT)).containsExactly(92.5, 107.5);
    }
}
