package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Steering as a two-wheel model turns it: the front wheels' angle is L κ plus the front slip angle less the rear one, each slip angle that
 * of the curve sin(1.5 atan(√3 ρ)) (the similarity method; Pacejka, Tire and Vehicle Dynamics, chapter 4, from memory) at the axle's use,
 * with its peak at seven degrees.
 */
class SteeringReadingTest {
    private static final Track TRACK = FitScene.longCircuit();
    private static final double PEAK = Math.toRadians(7);
    private static final double RATIO = 14;
    private static final double ZERO = 0.03;

    /** Slip angle over its peak at a use of the axle. */
    private static double slip(double use) {
        return Math.tan(Math.asin(Math.min(1, use)) / 1.5) / Math.sqrt(3);
    }

    /** The lap as logged, with a steering wheel that is off centre and a yaw sensor that is out of scale and off zero. */
    private static DrivenLap driven(Lap lap) {
        DrivenLap plain = Recorder.at(25).of("lap", lap);
        double[] distance = plain.distance();
        double[] angle = new double[distance.length];
        double[] yaw = new double[distance.length];
        double[] s = lap.column(Channel.DISTANCE);
        for (int i = 0; i < distance.length; i++) {
            int at = SpeedCurve.station(s, distance[i], true);
            double curvature = lap.track().pointAt(distance[i]).curvature();
            double front = slip(lap.value(Channel.LATERAL_UTILISATION_FRONT, at));
            double rear = slip(lap.value(Channel.LATERAL_UTILISATION_REAR, at));
            double way = Math.signum(curvature) * PEAK * (front - rear);
            angle[i] = ZERO + RATIO * (2.55 * curvature + way);
            yaw[i] = 0.01 + 1.04 * lap.speedAt(distance[i]) * curvature;
        }
        return plain.with(new DrivenLap.Steering(angle, yaw));
    }

    private static FitResult fit(Car given, DrivenLap lap) {
        return Fit.of(given, TRACK, Conditions.STANDARD).laps(List.of(lap)).run();
    }

    private static LimitWord.End told(Car car) {
        FitResult result = fit(car, driven(LapSolver.lap(car, TRACK, Conditions.STANDARD)));
        assertThat(result.doubts().words()).hasSize(1);
        assertThat(result.doubts().words().get(0).bySteering()).isTrue();
        return result.doubts().words().get(0).word().first();
    }

    @Test
    @Tag("heavy")
    void steerBeyondTheLinearTellsTheAxleThatGivesUpFirst() {
        Car front = FitScene.car(Map.of(Quantity.FRICTION_Y_FRONT, 1.3, Quantity.FRICTION_X_FRONT, 1.3));
        Car rear = FitScene.car(Map.of(Quantity.FRICTION_Y_FRONT, 1.8, Quantity.FRICTION_X_FRONT, 1.8));
        assertThat(told(front)).isEqualTo(LimitWord.End.FRONT);
        assertThat(told(rear)).isEqualTo(LimitWord.End.REAR);
    }

    /** The circuit with all bends tighter at their apexes by three percent and longer by as much. */
    private static Track tighter() {
        List<TrackPoint> points = TRACK.points().stream()
                .map(p -> new TrackPoint(
                        p.s(),
                        Math.abs(p.curvature()) > 0.004 ? 1.03 * p.curvature() : p.curvature(),
                        p.slope(),
                        p.bank(),
                        p.verticalCurvature(),
                        p.grip(),
                        p.widthLeft(),
                        p.widthRight(),
                        p.speedLimit()))
                .toList();
        return Track.closed(TRACK.name(), points);
    }

    @Test
    @Tag("long")
    void yawRateTellsTheRadiusDriven() {
        Car car = FitScene.car();
        DrivenLap lap = driven(LapSolver.lap(car, tighter(), Conditions.STANDARD));
        FitResult with = fit(car, lap);
        FitResult.Nuisance line = line(with);
        // Bends that the sensor's scale is told by are tighter as well, so that a part of the three percent goes there:
        // of
        // what is left, two standard errors.
        assertThat(line.standardError()).isLessThan(0.8);
        assertThat(line.found()).isLessThan(0);
        assertThat(line(fit(car, lap.with(DrivenLap.Steering.NONE))).standardError())
                .isGreaterThan(line.standardError());
    }

    private static FitResult.Nuisance line(FitResult result) {
        return result.doubts().nuisances().stream()
                .filter(nuisance -> nuisance.nuisance() == FitNuisance.LINE)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void onTheCircuitsOwnPathTheRadiusIsItsOwn() {
        Car car = FitScene.car();
        FitResult result = fit(car, driven(LapSolver.lap(car, TRACK, Conditions.STANDARD)));
        // Half a percent is what a yaw sensor is taken to be worth.
        assertThat(line(result).found()).isCloseTo(0, within(0.5));
    }

    @Test
    void aSensorThatStandsStillTellsNothing() {
        Car car = FitScene.car();
        DrivenLap plain = Recorder.at(25).of("lap", LapSolver.lap(car, TRACK, Conditions.STANDARD));
        double[] none = new double[plain.count()];
        FitResult result = fit(car, plain.with(new DrivenLap.Steering(none, none)));
        assertThat(result.doubts().words()).isEmpty();
    }
}
