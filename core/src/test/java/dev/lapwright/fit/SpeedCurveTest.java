package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

class SpeedCurveTest {
    @Test
    void theMeanOverEvenAccelerationIsThatOfTheFormula() {
        // v² = 20² + 2·2·s: the mean over s is (v1³ − v0³)/(3 a ds).
        Track run = Track.open("run", 20, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(300, 0)));
        Lap lap = LapSolver.lap(PlainCar.ofMass(1000).force(2000).car(), run, Conditions.STANDARD);
        SpeedCurve curve = new SpeedCurve(lap);
        double from = 33;
        double to = 211;
        double v0 = Math.sqrt(400 + 4 * from);
        double v1 = Math.sqrt(400 + 4 * to);
        double mean = (Math.pow(v1, 3) - Math.pow(v0, 3)) / (3 * 2 * (to - from));
        // The solver is exact where the acceleration is even, to its own 1e-9; PlainCar's table of torque to 1e-6.
        assertThat(curve.mean(from, to)).isCloseTo(mean, within(1e-4));
        assertThat(curve.at(to)).isCloseTo(v1, within(1e-4));
    }

    @Test
    void aCircuitsLapRepeats() {
        Lap lap = LapSolver.lap(FitScene.car(), FitScene.shortCircuit(), Conditions.STANDARD);
        SpeedCurve curve = new SpeedCurve(lap);
        double length = lap.track().length();
        // Rounding of integrals of some 4e4.
        assertThat(curve.mean(-20, -10)).isCloseTo(curve.mean(length - 20, length - 10), within(1e-9));
        double over = 0.4 * curve.mean(length - 4, length) + 0.6 * curve.mean(0, 6);
        assertThat(curve.mean(length - 4, length + 6)).isCloseTo(over, within(1e-9));
        assertThat(curve.mean(0, length)).isCloseTo(curve.mean(17, 17 + length), within(1e-9));
    }

    @Test
    void aLogsMeanIsThatOfItsPolygon() {
        LapCells.LoggedChannel curve = new LapCells.LoggedChannel(new double[] {10, 20, 40}, new double[] {5, 15, 15});
        // From 15 to 30: half a trapezium from 10 to 15 over 5 m, then 15 over 10 m.
        assertThat(curve.mean(15, 30)).isCloseTo((12.5 * 5 + 15 * 10) / 15, within(1e-12));
        assertThat(curve.mean(0, 10)).isCloseTo(5, within(1e-12));
    }
}
