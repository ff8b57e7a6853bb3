package dev.lapwright.charts.gearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawn;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.junit.jupiter.api.Test;

class TractionTest {
    private static final Traction.ForceCurve FIRST = curve("1", new double[] {5, 40}, new double[] {8000, 6000});
    private static final Traction.ForceCurve SECOND = curve("2", new double[] {10, 80}, new double[] {4000, 4000});
    /** Meets the second gear at 60 m/s: 1000 N and 50 N for each m/s. */
    private static final Traction.ForceCurve STILL =
            curve("still air", new double[] {0, 100}, new double[] {1000, 6000});
    /** Stays below. */
    private static final Traction.ForceCurve TOW = curve("tow", new double[] {0, 100}, new double[] {1000, 3000});

    private static Traction.ForceCurve curve(String name, double[] speeds, double[] forces) {
        return new Traction.ForceCurve(name, speeds, forces);
    }

    private static List<String> texts(Traction.ForceCurve... resistances) {
        return Drawn.of(
                        Traction.of("Vesper", List.of(FIRST, SECOND), List.of(resistances), ChartStyle.STANDARD),
                        Traction.SIZE)
                .texts();
    }

    @Test
    void axesNameTheirUnits() {
        assertThat(texts(STILL)).contains("Road speed (km/h)", "Force (kN)", "1", "2");
    }

    @Test
    void theCarGetsNoFasterWhereForceMeetsResistance() {
        // Linear curves: 1000 + 50 v = 4000.
        assertThat(Traction.balance(List.of(FIRST, SECOND), STILL)).isCloseTo(60, within(1e-9));
    }

    @Test
    void theBalanceIsMarkedInKilometresPerHourAndKilonewtons() {
        XYPlot plot = Traction.of("Vesper", List.of(FIRST, SECOND), List.of(STILL, TOW), ChartStyle.STANDARD)
                .getXYPlot();
        assertThat(plot.getDataset(2).getSeriesCount()).isEqualTo(1);
        assertThat(plot.getDataset(2).getXValue(0, 0)).isCloseTo(216, within(1e-9));
        assertThat(plot.getDataset(2).getYValue(0, 0)).isCloseTo(4, within(1e-9));
        assertThat(texts(STILL)).contains("216 km/h", "still air: 216 km/h");
    }

    @Test
    void aGearTooLongForTheCarIsNoGain() {
        // At the end of the first gear, 40 m/s, the resistance is 5000 N: less than its 6000 N, more than the second's
        // 4000 N.
        Traction.ForceCurve steep = curve("hill", new double[] {0, 100}, new double[] {4800, 5300});
        assertThat(Traction.balance(List.of(FIRST, SECOND), steep)).isEqualTo(40);
    }

    @Test
    void aForceThatStaysAboveEndsWithTheGears() {
        assertThat(Traction.balance(List.of(FIRST, SECOND), TOW)).isNaN();
        assertThat(texts(TOW)).contains("tow: the gears end at 288 km/h");
    }

    @Test
    void aResistanceThatIsNeverOvercomeHasNoBalance() {
        Traction.ForceCurve wall = curve("wall", new double[] {0, 100}, new double[] {9000, 9000});
        assertThat(texts(wall)).contains("wall: no balance");
    }

    @Test
    void outsideItsSpeedsACurveHasNoForce() {
        assertThat(FIRST.at(4.9)).isNaN();
        assertThat(FIRST.at(5)).isEqualTo(8000);
        assertThat(FIRST.at(22.5)).isEqualTo(7000);
        assertThat(FIRST.at(Double.NaN)).isNaN();
    }

    @Test
    void axesHoldEveryGear() {
        XYPlot plot = Traction.of("Vesper", List.of(FIRST, SECOND), List.of(STILL), ChartStyle.STANDARD)
                .getXYPlot();
        assertThat(plot.getRangeAxis().getUpperBound()).isGreaterThan(8);
        assertThat(plot.getDomainAxis().getUpperBound()).isGreaterThan(3.6 * 80);
    }

    @Test
    void noGearsOrNoResistanceAreRefused() {
        assertThatThrownBy(() -> Traction.of("x", List.of(), List.of(STILL), ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> Traction.of("x", List.of(FIRST), List.of(), ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class);
    }

    @Test
    void twoCurvesOfOneNameAreRefused() {
        assertThatThrownBy(() -> Traction.of("x", List.of(FIRST), List.of(TOW, TOW), ChartStyle.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("tow");
    }

    @Test
    void forceThatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> curve("odd", new double[] {0, 1}, new double[] {1, Double.NaN}))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("odd");
    }

    @Test
    void curveOfUnequalColumnsIsRefused() {
        assertThatThrownBy(() -> curve("odd", new double[] {0, 1}, new double[] {1}))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("2 speeds and 1 forces");
    }
}
