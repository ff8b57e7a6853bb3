package dev.lapwright.charts.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import java.util.Optional;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class LapTimeFrontTest {
    private static final LapTimeFront.SetupPoint FAST = new LapTimeFront.SetupPoint("wing 9", 90, 70);
    private static final LapTimeFront.SetupPoint SLIPPERY = new LapTimeFront.SetupPoint("wing 3", 91, 75);
    /** Slower than {@code FAST} and no faster on the straight. */
    private static final LapTimeFront.SetupPoint BEATEN = new LapTimeFront.SetupPoint("wing 12", 90.5, 70);

    private static final LapTimeFront.SetupPoint BETWEEN = new LapTimeFront.SetupPoint("wing 6", 90.04, 72);
    private static final LapTimeFront.SetupPoint BEFORE = new LapTimeFront.SetupPoint("standard", 91.5, 69);
    private static final List<LapTimeFront.SetupPoint> ALL = List.of(SLIPPERY, BEATEN, FAST, BETWEEN);

    private static JFreeChart chart(
            List<LapTimeFront.SetupPoint> setups, Optional<LapTimeFront.SetupPoint> before, double flat) {
        return LapTimeFront.of("Vesper at Fen", setups, before, flat, ChartStyle.STANDARD);
    }

    private static List<String> texts(
            List<LapTimeFront.SetupPoint> setups, Optional<LapTimeFront.SetupPoint> before, double flat) {
        return Drawn.of(chart(setups, before, flat), LapTimeFront.SIZE).texts();
    }

    @Test
    void onlySetupsThatNoOtherBeatsAreOnTheFront() {
        assertThat(LapTimeFront.front(ALL)).containsExactly(FAST, BETWEEN, SLIPPERY);
    }

    @Test
    void ofSetupsThatAreAlikeOneIsOnTheFront() {
        assertThat(LapTimeFront.front(List.of(FAST, new LapTimeFront.SetupPoint("again", 90, 70))))
                .containsExactly(FAST);
    }

    @Test
    void ofEqualLapTimesTheHigherTopSpeedIsOnTheFront() {
        LapTimeFront.SetupPoint better = new LapTimeFront.SetupPoint("better", 90, 71);
        assertThat(LapTimeFront.front(List.of(FAST, better))).containsExactly(better);
    }

    @Test
    void frontAndOthersAreDrawnApart() {
        XYPlot plot = chart(ALL, Optional.empty(), Double.NaN).getXYPlot();
        assertThat(plot.getDataset(0).getItemCount(0)).isEqualTo(3);
        assertThat(plot.getDataset(0).getItemCount(1)).isEqualTo(1);
        // 70 m/s; rounding of one product.
        assertThat(plot.getDataset(0).getXValue(0, 0)).isCloseTo(252, within(1e-9));
        assertThat(plot.getDataset(0).getYValue(0, 0)).isEqualTo(90);
    }

    @Test
    void fastestAndTheSetupBeforeAreLabelled() {
        assertThat(texts(ALL, Optional.of(BEFORE), 0.05))
                .contains("fastest: wing 9, 1:30.000", "before: standard, 1:31.500", "wing 3")
                .contains("Top speed (km/h)", "Lap time (min:s)");
    }

    @Test
    void setupsAsGoodAsTheFastestAreCounted() {
        assertThat(texts(ALL, Optional.empty(), 0.05))
                .anyMatch(text -> text.contains("within 0.050 s of it, 2 of 4 setups"));
    }

    @Test
    void axesHoldTheSetupBefore() {
        XYPlot plot = chart(ALL, Optional.of(BEFORE), Double.NaN).getXYPlot();
        assertThat(plot.getRangeAxis().getRange().contains(91.5)).isTrue();
        assertThat(plot.getDomainAxis().getRange().contains(3.6 * 69)).isTrue();
    }

    @Test
    void oneSetupCanBeDrawn() {
        assertThat(texts(List.of(FAST), Optional.empty(), Double.NaN)).noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void noSetupIsRefused() {
        assertThatThrownBy(() -> chart(List.of(), Optional.empty(), 0.05)).isInstanceOf(InvalidValueException.class);
    }

    @Test
    void aSetupWithoutALapTimeIsRefused() {
        assertThatThrownBy(() -> new LapTimeFront.SetupPoint("x", Double.NaN, 70))
                .isInstanceOf(InvalidValueException.class);
    }
}
