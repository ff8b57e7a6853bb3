package dev.lapwright.charts.gearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XYDataset;
import org.junit.jupiter.api.Test;

class GearSawtoothTest {
    private static final double NEVER = Double.NaN;
    /** 200, 150, 100 and 80 rpm for each m/s; shifts at 40 and 50 m/s; the fourth gear is not used. */
    private static final GearCurves GEARS = gears(new double[] {40, 50, NEVER}, 70, 3);

    private static GearCurves gears(double[] shifts, double topSpeed, int topGear) {
        return new GearCurves(new double[] {200, 150, 100, 80}, shifts, 8000, 7200, 10, topSpeed, topGear);
    }

    private static XYPlot plot(GearCurves gears) {
        return GearSawtooth.of("Vesper at Fen", gears, ChartStyle.STANDARD).getXYPlot();
    }

    private static List<String> texts(GearCurves gears) {
        return Drawn.of(GearSawtooth.of("Vesper at Fen", gears, ChartStyle.STANDARD), GearSawtooth.SIZE)
                .texts();
    }

    @Test
    void axesNameTheirUnits() {
        assertThat(texts(GEARS)).contains("Road speed (km/h)", "Engine speed (rpm)", "Gears: Vesper at Fen");
    }

    @Test
    void aShiftDropsToTheNextGearAtTheSameRoadSpeed() {
        XYDataset used = plot(GEARS).getDataset(0);
        // Second point: out of the first gear at 40 m/s, 144 km/h; third: into the second, 150 rpm for each m/s.
        assertThat(used.getXValue(0, 1)).isCloseTo(144, within(1e-9));
        assertThat(used.getYValue(0, 1)).isEqualTo(8000);
        assertThat(used.getXValue(0, 2)).isCloseTo(144, within(1e-9));
        assertThat(used.getYValue(0, 2)).isEqualTo(6000);
    }

    @Test
    void theLineBeginsAtTheLowestSpeedAndEndsAtTheTopSpeed() {
        XYDataset used = plot(GEARS).getDataset(0);
        int last = used.getItemCount(0) - 1;
        assertThat(used.getXValue(0, 0)).isCloseTo(36, within(1e-9));
        assertThat(used.getXValue(0, last)).isCloseTo(252, within(1e-9));
        assertThat(used.getYValue(0, last)).isEqualTo(7000);
    }

    @Test
    void everyGearHasALineNoFartherThanTheRevLimit() {
        XYDataset lines = plot(GEARS).getDataset(1);
        assertThat(lines.getSeriesCount()).isEqualTo(4);
        for (int gear = 0; gear < 4; gear++) {
            // One rounding of a quotient times its divisor.
            assertThat(lines.getYValue(gear, 1)).isLessThanOrEqualTo(8000 + 1e-6);
        }
    }

    @Test
    void shiftsRevLimitAndTopSpeedAreLabelled() {
        assertThat(texts(GEARS))
                .contains("144 km/h", "180 km/h", "top 252 km/h, 7000 rpm", "rev limit 8000 rpm")
                .contains("most power at 7200 rpm", "1", "2", "3", "4");
    }

    @Test
    void aGearThatIsNeverUsedIsSaidToBe() {
        assertThat(texts(GEARS))
                .anyMatch(
                        text -> text.contains("1000 rpm below the rev limit") && text.endsWith("gear 4 is never used"));
    }

    @Test
    void aTopSpeedAtTheLimiterIsSaidToBe() {
        assertThat(texts(gears(new double[] {40, 50, NEVER}, 80, 3)))
                .anyMatch(text -> text.contains("at the rev limit"));
    }

    @Test
    void aLapThatStaysOutOfTheFirstGearBeginsInTheSecond() {
        GearCurves gears = gears(new double[] {NEVER, 50, NEVER}, 70, 3);
        XYDataset used = plot(gears).getDataset(0);
        // 10 m/s in the second gear.
        assertThat(used.getYValue(0, 0)).isEqualTo(1500);
        assertThat(gears.isUsed(1)).isFalse();
        assertThat(gears.isUsed(2)).isTrue();
    }

    @Test
    void oneGearCanBeDrawn() {
        GearCurves one = new GearCurves(new double[] {300}, new double[0], 12_000, Double.NaN, 0, 36, 1);
        assertThat(texts(one)).contains("top 130 km/h, 10800 rpm").noneMatch(text -> text.contains("NaN"));
    }

    @Test
    void sameGearsGiveTheSameBytes() {
        assertThat(ChartImage.svg(GearSawtooth.of("x", GEARS, ChartStyle.STANDARD), GearSawtooth.SIZE))
                .isEqualTo(ChartImage.svg(GearSawtooth.of("x", GEARS, ChartStyle.STANDARD), GearSawtooth.SIZE));
    }

    @Test
    void shiftsThatDoNotFitTheGearsAreRefused() {
        assertThatThrownBy(() -> gears(new double[] {40}, 70, 3))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("4 gears and 1 shifts");
    }

    @Test
    void gearsInTheWrongOrderAreRefused() {
        assertThatThrownBy(() -> new GearCurves(new double[] {100, 200}, new double[] {40}, 8000, Double.NaN, 0, 50, 1))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("gear 2");
    }

    @Test
    void topSpeedInNoGearIsRefused() {
        assertThatThrownBy(() -> gears(new double[] {40, 50, NEVER}, 70, 5))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("1 to 4");
    }

    @Test
    void topSpeedThatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> gears(new double[] {40, 50, NEVER}, Double.NaN, 3))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("top speed");
    }
}
