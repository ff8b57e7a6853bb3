package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.assertj.core.api.AbstractThrowableAssert;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Laps that cannot be fitted are turned away with what they look like. */
class LapValidatorTest {
    private static final Track TRACK = FitScene.shortCircuit();
    private static final Car CAR = FitScene.car();
    private static final Lap LAP = LapSolver.lap(CAR, TRACK, Conditions.STANDARD);
    private static final DrivenLap SOUND = Recorder.at(20).of("lap 3", LAP);

    private static FitResult fit(DrivenLap lap) {
        return Fit.of(CAR, TRACK, Conditions.STANDARD)
                .laps(List.of(lap))
                .fitting(EnumSet.of(FitParameter.GRIP))
                .run();
    }

    private static AbstractThrowableAssert<?, ? extends Throwable> refused(DrivenLap lap) {
        return assertThatThrownBy(() -> fit(lap)).isInstanceOf(InvalidValueException.class);
    }

    private static double[] times(double[] values, double factor) {
        return Arrays.stream(values).map(v -> factor * v).toArray();
    }

    private static double[] twice(double[] values, double later) {
        double[] both = Arrays.copyOf(values, 2 * values.length);
        for (int i = 0; i < values.length; i++) {
            both[values.length + i] = values[i] + later;
        }
        return both;
    }

    @Test
    void twoLapsGluedTogetherAreNamedSo() {
        DrivenLap two = DrivenLap.of("lap 3", twice(SOUND.distance(), TRACK.length()), twice(SOUND.speed(), 0));
        refused(two).hasMessageContaining("lap 3").hasMessageContaining("2 laps glued together");
    }

    @Test
    void twoLapsWhoseDistanceBeginsAgainAreNamedSo() {
        assertThatThrownBy(() -> DrivenLap.of("lap 3", twice(SOUND.distance(), 0), twice(SOUND.speed(), 0)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("distance falls")
                .hasMessageContaining("two laps are glued together");
    }

    @ParameterizedTest
    @CsvSource({"3.6, km/h taken as m/s", "2.236936, mph taken as m/s", "0.277778, m/s taken as km/h"})
    void aSpeedInOtherUnitsIsNamed(double factor, String words) {
        // With no clock to hold it against, the model's own speed is the yardstick.
        DrivenLap other = DrivenLap.of("lap 3", SOUND.distance(), times(SOUND.speed(), factor));
        refused(other).hasMessageContaining(words).hasMessageContaining("its mean speed is");
    }

    @ParameterizedTest
    @CsvSource({"3.6, km/h taken as m/s", "1.609, km/h taken as mph"})
    void aClockTellsTheUnitOfSpeedByItself(double factor, String words) {
        double[] none = {};
        DrivenLap other = new DrivenLap(
                "lap 3", SOUND.distance(), times(SOUND.speed(), factor), SOUND.time(), none, none, none, none, none);
        refused(other).hasMessageContaining(words).hasMessageContaining("by its clock");
    }

    @Test
    void distanceSummedFromSpeedInKmhIsAnErrorOfUnitsNotOfLength() {
        double[] speed = times(SOUND.speed(), 3.6);
        double[] none = {};
        DrivenLap other = new DrivenLap(
                "lap 3",
                DrivenLap.distanceFrom(SOUND.time(), speed),
                speed,
                SOUND.time(),
                none,
                none,
                none,
                none,
                none);
        refused(other).hasMessageContaining("km/h taken as m/s");
    }

    @Test
    void anotherCircuitOfAnotherLengthIsTurnedAway() {
        Lap elsewhere = LapSolver.lap(CAR, FitScene.longCircuit(), Conditions.STANDARD);
        refused(Recorder.at(20).of("lap 3", elsewhere))
                .hasMessageContaining("5185 m long")
                .hasMessageContaining("choose the circuit that was driven");
    }

    @Test
    void anotherCircuitOfTheSameLengthIsToldByItsShape() {
        // Three slow places where this circuit has four corners elsewhere.
        double[] distance = SOUND.distance();
        double[] speed = new double[distance.length];
        for (int i = 0; i < speed.length; i++) {
            speed[i] = 38 + 14 * Math.cos(6 * Math.PI * distance[i] / TRACK.length());
        }
        refused(DrivenLap.of("lap 3", distance, speed)).hasMessageContaining("looks like another circuit");
    }

    @Test
    void aLapFromAnotherStartLineIsToldByHowMuch() {
        // The circuit's halves are alike: 150 m on is also 150 m and a half lap on.
        Lap moved = LapSolver.lap(CAR, TRACK.startingAt(150), Conditions.STANDARD);
        refused(Recorder.at(20).of("lap 3", moved)).hasMessageMatching(".*begun (1[45]\\d|72\\d) m on.*");
    }

    @Test
    void halfALapIsTurnedAway() {
        int half = SOUND.count() / 2;
        DrivenLap part =
                DrivenLap.of("lap 3", Arrays.copyOf(SOUND.distance(), half), Arrays.copyOf(SOUND.speed(), half));
        refused(part).hasMessageContaining("whole lap from line to line");
    }

    @Test
    void aLapSlowerThanWalkingIsTurnedAway() {
        refused(DrivenLap.of("lap 3", SOUND.distance(), times(SOUND.speed(), 0.02)))
                .hasMessageContaining("slower than walking");
    }

    @Test
    void fewSamplesAreTurnedAway() {
        assertThatThrownBy(() -> Recorder.at(1).of("lap 3", LAP))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("samples")
                .hasMessageContaining("at least");
    }

    @Test
    void samplesTooFarApartAreTurnedAway() {
        double[] distance = new double[60];
        double[] speed = new double[60];
        Track track = FitScene.longCircuit();
        Lap lap = LapSolver.lap(CAR, track, Conditions.STANDARD);
        for (int i = 0; i < 60; i++) {
            distance[i] = track.length() * i / 59;
            speed[i] = lap.speedAt(Math.min(distance[i], track.length()));
        }
        assertThatThrownBy(() -> Fit.of(CAR, track, Conditions.STANDARD)
                        .laps(List.of(DrivenLap.of("lap 3", distance, speed)))
                        .run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("samples lie 88 m apart");
    }

    @Test
    void aCarWithoutALapIsTurnedAway() {
        Car weak = FitScene.car(Map.of(Quantity.POWER_SCALE, 0.25, Quantity.ROLLING_RESISTANCE, 0.2));
        Track climb = steep();
        assertThatThrownBy(() -> Fit.of(weak, climb, Conditions.STANDARD)
                        .laps(List.of(SOUND))
                        .run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("car plover")
                .hasMessageContaining("has no lap of");
    }

    /** A wall of a hill on a loop: more than this car can climb. */
    private static Track steep() {
        List<TrackPoint> points = List.of(point(0, 0.55), point(500, 0.55), point(1000, -0.55));
        return Track.open("wall", 5, points);
    }

    private static TrackPoint point(double s, double slope) {
        return new TrackPoint(s, 0, slope, 0, 0, 1, 5, 5, Double.POSITIVE_INFINITY);
    }

    @Test
    void noLapsAtAllAreTurnedAway() {
        assertThatThrownBy(() -> Fit.of(CAR, TRACK, Conditions.STANDARD).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("laps: there is none");
    }

    @Test
    void nothingToFitIsTurnedAway() {
        Fit fit = Fit.of(CAR, TRACK, Conditions.STANDARD);
        assertThatThrownBy(() -> fit.fitting(EnumSet.noneOf(FitParameter.class)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("parameters");
    }

    @Test
    void aGapInTheLogIsBridgedAndCountsForNothing() {
        double[] distance = SOUND.distance();
        int[] kept = IntStream.range(0, distance.length)
                .filter(i -> distance[i] < 200 || distance[i] > 280)
                .toArray();
        DrivenLap gap = DrivenLap.of(
                "gap",
                Arrays.stream(kept).mapToDouble(i -> distance[i]).toArray(),
                Arrays.stream(kept).mapToDouble(i -> SOUND.speed()[i]).toArray());
        FitResult result = fit(gap);
        double[] weight = result.agreement().trace().weight();
        assertThat(weight[(int) (240 / result.agreement().residuals().cell())]).isZero();
        assertThat(result.agreement()
                        .trace()
                        .logged()[(int) (240 / result.agreement().residuals().cell())])
                .isNaN();
        assertThat(weight[(int) (150 / result.agreement().residuals().cell())]).isPositive();
    }
}
