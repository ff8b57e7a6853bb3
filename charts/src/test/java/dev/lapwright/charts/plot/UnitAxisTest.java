package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.jfree.chart.ui.RectangleEdge;
import org.junit.jupiter.api.Test;

class UnitAxisTest {
    /** One part in a billion: the steps are products of decimal powers. */
    private static final double ROUNDING = 1e-9;

    @Property
    void stepsAreOneTwoOrFiveTimesAPowerOfTen(@ForAll @DoubleRange(min = -6, max = 6) double exponent) {
        double atLeast = Math.pow(10, exponent);
        double step = UnitAxis.step(atLeast);
        assertThat(step)
                .isGreaterThanOrEqualTo(atLeast * (1 - 2 * ROUNDING))
                .isLessThanOrEqualTo(2.5 * atLeast * (1 + ROUNDING));
        double lead = step / Math.pow(10, Math.floor(Math.log10(step) + ROUNDING));
        assertThat(List.of(1.0, 2.0, 5.0))
                .anySatisfy(allowed -> assertThat(lead).isCloseTo(allowed, within(ROUNDING * 10)));
    }

    /** 100 px have room for two numbers of two digits, 0 and 20 at the least; 75 px for each left only 0. */
    @Test
    void aNarrowAxisHasMoreThanOneNumber() {
        UnitAxis axis = new UnitAxis("Lap", ChartStyle.STANDARD, 1);
        axis.setRange(0, 34);
        Graphics2D g2 = new BufferedImage(100, 100, BufferedImage.TYPE_INT_RGB).createGraphics();
        axis.selectAutoTickUnit(g2, new Rectangle2D.Double(0, 0, 100, 100), RectangleEdge.BOTTOM);
        assertThat(axis.getTickUnit().getSize()).isLessThanOrEqualTo(20);
    }

    @Test
    void decimalsSufficeForTheStep() {
        assertThat(UnitAxis.decimals(0.05)).isEqualTo(2);
        assertThat(UnitAxis.decimals(0.1)).isEqualTo(1);
        assertThat(UnitAxis.decimals(1)).isZero();
        assertThat(UnitAxis.decimals(200)).isZero();
    }
}
