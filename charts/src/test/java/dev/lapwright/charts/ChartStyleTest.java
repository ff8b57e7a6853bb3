package dev.lapwright.charts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.InvalidValueException;
import java.awt.BasicStroke;
import java.awt.Font;
import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ChartStyleTest {
    @Test
    void noTextIsSmallerThanElevenPixels() {
        ChartStyle style = ChartStyle.STANDARD;
        for (Font font : new Font[] {
            style.title(), style.subtitle(), style.axisLabel(), style.text(), style.strong(), style.small()
        }) {
            assertThat(font.getSize()).isGreaterThanOrEqualTo(11);
        }
    }

    @Test
    void everyLineHasItsOwnDashes() {
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < ChartStyle.distinctLines(); i++) {
            BasicStroke stroke = (BasicStroke) ChartStyle.line(i);
            assertThat(seen.add(Arrays.toString(stroke.getDashArray()))).isTrue();
        }
    }

    @Test
    void thereAreAsManyColoursAsDashes() {
        assertThat(Palette.STANDARD.series()).hasSize(ChartStyle.distinctLines());
    }

    @Test
    void fontIsOneThatEveryJavaKnows() {
        assertThat(ChartStyle.STANDARD.fontFamily()).isEqualTo(Font.SANS_SERIF);
    }

    @Test
    void textTooSmallToReadIsRefused() {
        assertThatThrownBy(() -> ChartStyle.STANDARD.withTextSize(9))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("9 px")
                .hasMessageContaining("12 to 48");
    }
}
