package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.Corner;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures of a lap by hand: what a mean speed and a highest are, and evenly accelerated motion (any textbook of mechanics). */
class LapFiguresTest {
    /** Some ten operations on doubles. */
    private static final double ROUNDING = 1e-12;

    /** Stations 10 m apart, of a lap of 50 m. */
    private static final double[] S = {0, 10, 20, 30, 40, 50};

    private static final double[] V = {20, 12, 8, 14, 22, 25};
    /** Of cells, s; not those of these speeds, so that nobody works them out anew. */
    private static final double[] CELLS = {0.7, 1.1, 0.9, 0.6, 0.4};

    private static LapFigures figures(Corner... corners) {
        return LapFigures.of(List.of(corners), S, V, CELLS, 3.7, 26);
    }

    private static Corner corner(double entry, double exit) {
        return new Corner(1, "", entry, entry, exit, true, 20);
    }

    @Test
    void theWholeLapHasItsMeanItsHighestAndItsLowest() {
        LapFigures figures = figures();
        assertThat(figures.lapTime()).isEqualTo(3.7);
        assertThat(figures.meanSpeed()).isCloseTo(50 / 3.7, within(ROUNDING * 14));
        assertThat(figures.minimumSpeed()).isEqualTo(8);
        assertThat(figures.topSpeed()).as("between stations").isEqualTo(26);
        assertThat(LapFigures.of(List.of(), S, V, CELLS, 3.7, 0).topSpeed()).isEqualTo(25);
        assertThat(figures.minimumCornerSpeed()).isNaN();
        assertThat(figures.meanCornerSpeed()).isNaN();
    }

    /** From 20 to 40 m in 0.9 and 0.6 s. */
    @Test
    void aCornerCountsTheCellsThatLieInIt() {
        LapFigures figures = figures(corner(20, 40));
        assertThat(figures.meanCornerSpeed()).isCloseTo(20 / 1.5, within(ROUNDING * 14));
        assertThat(figures.minimumCornerSpeed()).isEqualTo(8);
        assertThat(figures(corner(25, 50)).minimumCornerSpeed())
                .as("from 30 m on")
                .isEqualTo(14);
    }

    /** From 40 m over the start to 10 m: 0.4 and 0.7 s. */
    @Test
    void aCornerMaySpanTheStart() {
        LapFigures figures = figures(corner(40, 10));
        assertThat(figures.meanCornerSpeed()).isCloseTo(20 / 1.1, within(ROUNDING * 19));
        assertThat(figures.minimumCornerSpeed()).isEqualTo(12);
    }

    /** Two corners: 10 m in 1.1 s and 10 m in 0.4 s. */
    @Test
    void cornersAreTakenTogether() {
        LapFigures figures = figures(corner(10, 20), corner(40, 50));
        assertThat(figures.meanCornerSpeed()).isCloseTo(20 / 1.5, within(ROUNDING * 14));
        assertThat(figures.minimumCornerSpeed()).isEqualTo(8);
    }

    /** Under an even force v² = v₀² + 2 a s and t = (v - v₀)/a; between stations as well. */
    @ParameterizedTest
    @ValueSource(doubles = {0, 3.3, 50, 77.7, 123.4, 200})
    void betweenStationsASpeedIsThatOfEvenAcceleration(double distance) {
        double a = 4000.0 / 1000;
        Lap lap = LapSolver.on(StudyCars.straight(200))
                .solve(PlainCar.ofMass(1000).force(4000).topSpeed(90).vehicle());
        double start = lap.column(Channel.SPEED)[0];
        double speed = Math.sqrt(start * start + 2 * a * distance);
        // Wheels and engine of the plain car turn without inertia; the solver's steps are exact where the force is
        // even.
        assertThat(lap.speedAt(distance)).isCloseTo(speed, within(1e-9 * speed));
        assertThat(lap.timeAt(distance)).isCloseTo((speed - start) / a, within(1e-9));
    }
}
