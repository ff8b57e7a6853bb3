package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Fits to laps whose speeds follow from a formula: circles at the limit, straights at terminal speed. */
class FitClosedFormTest {
    private static final double RADIUS = 50;
    private static final double LENGTH = 2 * Math.PI * RADIUS;
    private static final double RHO = Conditions.STANDARD.air().density();

    /** A lap at one speed, one sample a metre. */
    private static DrivenLap steady(double length, double speed) {
        int n = (int) length + 1;
        double[] distance = new double[n];
        double[] speeds = new double[n];
        for (int i = 0; i < n; i++) {
            distance[i] = length * i / (n - 1);
        }
        Arrays.fill(speeds, speed);
        return DrivenLap.of("steady lap", distance, speeds);
    }

    private static FitResult fit(Car car, Track track, DrivenLap lap, FitParameter... parameters) {
        return fit(FitDoubts.none(), car, track, lap, parameters);
    }

    private static FitResult fit(FitDoubts doubts, Car car, Track track, DrivenLap lap, FitParameter... parameters) {
        return Fit.of(car, track, Conditions.STANDARD)
                .laps(List.of(lap))
                .doubting(doubts)
                .fitting(EnumSet.copyOf(List.of(parameters)))
                .run();
    }

    @Test
    void aCircleAtItsLimitGivesGripAsSpeedSquaredOverRadiusAndGravity() {
        double speed = 21;
        FitResult result =
                fit(PlainCar.ofMass(1000).car(), FitScene.circle(RADIUS), steady(LENGTH, speed), FitParameter.GRIP);
        double grip = speed * speed / (RADIUS * PlainCar.GRAVITY);
        // Cornering drag takes (mu/200)²/2, some 1e-5 of the grip (see PlainCar); the search stops within 2e-4 of it.
        assertThat(result.estimate(FitParameter.GRIP).value()).isCloseTo(grip, within(3e-4));
    }

    @Test
    void aFitTellsOfItsLapsAndCanBeStopped() {
        Fit fit = Fit.of(PlainCar.ofMass(1000).car(), FitScene.circle(RADIUS), Conditions.STANDARD)
                .laps(List.of(steady(LENGTH, 21)))
                .doubting(FitDoubts.none())
                .fitting(EnumSet.of(FitParameter.GRIP));
        List<Integer> done = new ArrayList<>();
        List<Integer> totals = new ArrayList<>();
        FitResult told = fit.run(StudyRun.onThreads(1).reporting((laps, total) -> {
            done.add(laps);
            totals.add(total);
        }));
        assertThat(told.estimates()).isEqualTo(fit.run().estimates());
        assertThat(done).startsWith(1, 2, 3).isSorted();
        assertThat(totals.get(0)).isGreaterThan(done.get(0));
        // At the end all laps are driven, and not before.
        assertThat(totals.get(totals.size() - 1)).isEqualTo(done.get(done.size() - 1));
        StudyRun stopped = StudyRun.onThreads(1).stoppedWhen(() -> true);
        assertThatThrownBy(() -> fit.run(stopped)).isInstanceOf(StudyStoppedException.class);
    }

    @Test
    void onACircleGripAndDownforceCannotBeToldApartAndTheTieIsTheOneOfTheFormula() {
        Car car = PlainCar.ofMass(1000).downforce(2).car();
        // mu (m g + L) = m v²/R with L = 2 v² and mu = 1.
        double speed = Math.sqrt(1000 * PlainCar.GRAVITY / (1000 / RADIUS - 2));
        DrivenLap lap = steady(LENGTH, speed);
        FitResult result = fit(car, FitScene.circle(RADIUS), lap, FitParameter.GRIP, FitParameter.DOWNFORCE_AREA);
        assertThat(result.doubts().collinearities()).hasSize(1);
        FitResult.Collinearity tie = result.doubts().collinearities().get(0);
        assertThat(tie.parameters()).containsExactly(FitParameter.GRIP, FitParameter.DOWNFORCE_AREA);
        assertThat(tie.held()).containsExactly(FitParameter.DOWNFORCE_AREA);
        // d(mu)/mu = − ½ rho v² d(ClA) / (m g + L) leaves the speed as it is.
        double load = 1000 * PlainCar.GRAVITY + 2 * speed * speed;
        double formula = -0.5 * RHO * speed * speed / load;
        Map<FitParameter, Double> together = tie.together();
        double found = together.get(FitParameter.GRIP) / together.get(FitParameter.DOWNFORCE_AREA);
        // Differences over 0.2 % of grip and 0.4 % of downforce: their curvature is of that order.
        assertThat(found).isCloseTo(formula, within(0.01 * Math.abs(formula)));
    }

    @Test
    void whatIsHeldKeepsTheCarsOwnValueAndTheOtherIsConditional() {
        Car car = PlainCar.ofMass(1000).downforce(2).car();
        double speed = 24;
        FitResult result = fit(
                car, FitScene.circle(RADIUS), steady(LENGTH, speed), FitParameter.GRIP, FitParameter.DOWNFORCE_AREA);
        FitResult.Estimate downforce = result.estimate(FitParameter.DOWNFORCE_AREA);
        assertThat(downforce.identifiability()).isEqualTo(FitResult.Identifiability.HELD);
        assertThat(downforce.determined()).isFalse();
        assertThat(downforce.value()).isEqualTo(downforce.before());
        assertThat(downforce.lower()).isNaN();
        FitResult.Estimate grip = result.estimate(FitParameter.GRIP);
        assertThat(grip.identifiability()).isEqualTo(FitResult.Identifiability.CONDITIONAL);
        // mu (m g + 2 v²) = m v²/R.
        double exact = 1000 * speed * speed / RADIUS / (1000 * PlainCar.GRAVITY + 2 * speed * speed);
        // As above: the search's own tolerance.
        assertThat(grip.value()).isCloseTo(exact, within(3e-4));
    }

    @Test
    void aCircleTellsNothingOfPower() {
        FitResult result = fit(
                PlainCar.ofMass(1000).car(),
                FitScene.circle(RADIUS),
                steady(LENGTH, 22),
                FitParameter.GRIP,
                FitParameter.POWER);
        assertThat(result.estimate(FitParameter.POWER).identifiability()).isEqualTo(FitResult.Identifiability.HELD);
        assertThat(result.estimate(FitParameter.GRIP).identifiability())
                .isEqualTo(FitResult.Identifiability.DETERMINED);
        assertThat(result.doubts().collinearities())
                .singleElement()
                .satisfies(tie -> assertThat(tie.parameters()).containsExactly(FitParameter.POWER));
    }

    private static Track straight(double entry, double length) {
        return Track.open("straight", entry, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(length, 0)));
    }

    private static PlainCar ofPower(double watts) {
        return PlainCar.ofMass(1000).power(watts, 20, 100);
    }

    @Test
    void terminalSpeedGivesDragAsPowerOverSpeedCubed() {
        double watts = 200e3;
        double speed = 65;
        // P = ½ rho CdA v³ holds the speed on a level road without rolling resistance.
        double exact = 2 * watts / (RHO * speed * speed * speed);
        Car car = ofPower(watts).drag(0.5 * RHO * 1.3 * exact).car();
        FitResult result = fit(car, straight(speed, 2000), steady(2000, speed), FitParameter.DRAG_AREA);
        // The torque curve's own table is good to 1e-5 (PlainCar); the search stops within 4e-4 of the drag.
        assertThat(result.estimate(FitParameter.DRAG_AREA).value()).isCloseTo(exact, within(1e-3 * exact));
    }

    @Test
    void terminalSpeedGivesRollingResistanceAsTheForceLeftOver() {
        double watts = 150e3;
        double speed = 60;
        double dragArea = 0.9;
        // P/v = ½ rho CdA v² + f m g.
        double exact = (watts / speed - 0.5 * RHO * dragArea * speed * speed) / (1000 * PlainCar.GRAVITY);
        Car car = ofPower(watts).drag(0.5 * RHO * dragArea).car();
        FitResult result = fit(car, straight(speed, 2000), steady(2000, speed), FitParameter.ROLLING_RESISTANCE);
        // The search stops within 2e-3 of 0.005.
        assertThat(result.estimate(FitParameter.ROLLING_RESISTANCE).value()).isCloseTo(exact, within(2e-5));
    }

    @Test
    void atTerminalSpeedPowerAndDragAreTiedShareForShare() {
        double watts = 200e3;
        double speed = 65;
        double dragArea = 2 * watts / (RHO * speed * speed * speed);
        Car car = ofPower(watts).drag(0.5 * RHO * dragArea).car();
        FitResult result =
                fit(car, straight(speed, 2000), steady(2000, speed), FitParameter.DRAG_AREA, FitParameter.POWER);
        assertThat(result.doubts().collinearities()).hasSize(1);
        Map<FitParameter, Double> together =
                result.doubts().collinearities().get(0).together();
        // P ∝ CdA at one speed: shares of both move alike.
        double drag = together.get(FitParameter.DRAG_AREA) / dragArea;
        double power = together.get(FitParameter.POWER);
        // Differences over steps of 0.4 %, and their curvature.
        assertThat(power / drag).isCloseTo(1, within(0.02));
    }

    @Test
    void aMeanOverALongWayTellsGripAsWellAsTheNoiseAllows() {
        // White noise of 0.3 m/s on n independent samples: grip = v²/(g R) has the standard error 2 grip sigma / (v
        // sqrt n).
        double sigma = 0.3;
        double speed = 22;
        Random random = new Random(5);
        DrivenLap exact = steady(LENGTH, speed);
        double[] noisy = exact.speed();
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] += sigma * random.nextGaussian();
        }
        DrivenLap lap = DrivenLap.of("noisy", exact.distance(), noisy);
        FitResult.Estimate grip = fit(PlainCar.ofMass(1000).car(), FitScene.circle(RADIUS), lap, FitParameter.GRIP)
                .estimate(FitParameter.GRIP);
        double expected = 2 * grip.value() * sigma / (speed * Math.sqrt(noisy.length));
        // 63 cells: a deviation estimated from them scatters by 1/sqrt(2·63) = 9 %, by correlations allowed for some
        // more.
        assertThat(grip.standardError()).isCloseTo(expected, within(0.35 * expected));
    }

    @Test
    void whatIsInDoubtOfLineAndSensorIsInDoubtOfGrip() {
        FitDoubts doubts = FitDoubts.none().with(FitNuisance.LINE, 3).with(FitNuisance.SPEED_SCALE, 2);
        FitResult.Estimate grip = fit(
                        doubts,
                        PlainCar.ofMass(1000).car(),
                        FitScene.circle(RADIUS),
                        steady(LENGTH, 22),
                        FitParameter.GRIP)
                .estimate(FitParameter.GRIP);
        // grip = v²/(g R): 3 % of R are 3 % of grip, 2 % of v are 4 %, and independent doubts add by squares, to 5 %.
        // Differences over a quarter of a doubt and the curvature of 1/R: (3 %)² and (4 %)², 0.2 % of grip.
        assertThat(grip.standardError()).isCloseTo(0.05 * grip.value(), within(0.002 * grip.value()));
        assertThat(grip.identifiability()).isEqualTo(FitResult.Identifiability.LEANING);
        assertThat(grip.leans()).containsExactly(FitNuisance.SPEED_SCALE, FitNuisance.LINE);
    }

    @Test
    void theClockTellsTheScaleOfTheSpeedAndNotTheCar() {
        // v²/(g R) at 22 m/s; the sensor reads 2 % high, twice the doubt, and the lap takes 2 pi R / 22.
        double speed = 22;
        DrivenLap exact = steady(LENGTH, speed);
        double[] time = exact.distance();
        double[] high = exact.speed();
        for (int i = 0; i < time.length; i++) {
            time[i] /= speed;
            high[i] *= 1.02;
        }
        double[] none = {};
        DrivenLap lap = new DrivenLap("reads high", exact.distance(), high, time, none, none, none, none, none);
        FitResult result = fit(
                FitDoubts.none().with(FitNuisance.SPEED_SCALE, 1),
                PlainCar.ofMass(1000).car(),
                FitScene.circle(RADIUS),
                lap,
                FitParameter.GRIP);
        // Of a length that is known exactly the prior takes back a millionth; a search's tolerance of 2e-4 of grip.
        assertThat(result.doubts().nuisances().get(0).found()).isCloseTo(2, within(0.01));
        assertThat(result.estimate(FitParameter.GRIP).value())
                .isCloseTo(speed * speed / (RADIUS * PlainCar.GRAVITY), within(4e-4));
        assertThat(result.doubts().suspicions()).isNotEmpty();
        assertThat(result.doubts().suspicions().get(0).cause()).isEqualTo(FitResult.Cause.SENSOR);
    }

    @Test
    void aWrongMassIsAsMuchWrongPower() {
        // Along a straight from a standstill without drag the speed tells power over mass alone.
        Car car = ofPower(150e3).car();
        Track run = straight(20, 1000);
        FitDoubts doubts = FitDoubts.none().with(FitNuisance.MASS, 2);
        FitResult result = Fit.of(car, run, Conditions.STANDARD)
                .laps(List.of(Recorder.at(20).of("lap", LapSolver.lap(car, run, Conditions.STANDARD))))
                .fitting(EnumSet.of(FitParameter.POWER))
                .doubting(doubts)
                .run();
        // 2 % of mass; noise is 0, and differences over half a percent of mass are good to its square.
        FitResult.Estimate power = result.estimate(FitParameter.POWER);
        assertThat(power.standardError()).isCloseTo(0.02, within(5e-4));
        assertThat(power.leans()).containsExactly(FitNuisance.MASS);
    }
}
