package dev.lapwright.study.sensitivity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Sensitivities of cars whose lap times are known in closed form, and against central differences on fine stations. */
class SensitivityTest {
    private static final double RADIUS = 60;

    private static Track circle() {
        double length = 2 * Math.PI * RADIUS;
        return Track.closed("circle", List.of(TrackPoint.flat(0, 1 / RADIUS), TrackPoint.flat(length, 1 / RADIUS)));
    }

    private static Adjustment adjustment(
            String name, double min, double max, double step, double standard, String moves) {
        return new Adjustment(
                name,
                name,
                Unit.NONE,
                Adjustment.Range.stepped(min, max, step, standard),
                List.of(new Effect.Absolute(moves, 0, 1)));
    }

    private static Car car(List<Adjustment> adjustments) {
        Car plain = PlainCar.ofMass(1000).car();
        return Car.of(
                "test",
                "",
                plain.quantities(),
                Map.of(),
                plain.gearRatios(),
                plain.torqueCurve(),
                plain.powerCorrection(),
                adjustments);
    }

    /** Grip of all four tyres, lateral, as one thing to turn; and a mass, which round a circle does not matter. */
    private static Car circleCar() {
        Adjustment grip = new Adjustment(
                "grip",
                "Grip",
                Unit.NONE,
                Adjustment.Range.stepped(0.8, 1.2, 0.1, 1),
                List.of(
                        new Effect.Absolute(Quantity.FRICTION_Y_FRONT.path(), 0, 1),
                        new Effect.Absolute(Quantity.FRICTION_Y_REAR.path(), 0, 1)));
        return car(List.of(adjustment("mass", 900, 1100, 100, 1000, Quantity.MASS.path()), grip));
    }

    /** t = 2π √(r/(μ g)): textbook mechanics. */
    private static double time(double friction) {
        return 2 * Math.PI * Math.sqrt(RADIUS / (friction * PlainCar.GRAVITY));
    }

    private static SensitivityResult run(Car car, Track track) {
        return Sensitivity.of(car, track, Conditions.STANDARD).run(StudyRun.onThreads(2));
    }

    @Test
    void gripRoundACircleIsWorthWhatMechanicsSays() {
        SensitivityResult.Worth grip = run(circleCar(), circle()).worths().get(0);
        assertThat(grip.adjustment().name()).isEqualTo("grip");
        // Drag of cornering, at a slip angle of 1/0.55 times 1.2/200, takes up to the half of its square of the grip,
        // 6e-5, and half of
        // that of the time.
        double tolerance = 3e-5 * time(0.8);
        assertThat(grip.higher().difference()).isCloseTo(time(1.1) - time(1), within(tolerance));
        assertThat(grip.lower().difference()).isCloseTo(time(0.9) - time(1), within(tolerance));
        assertThat(grip.best().difference()).isCloseTo(time(1.2) - time(1), within(tolerance));
        assertThat(grip.worst().difference()).isCloseTo(time(0.8) - time(1), within(tolerance));
        assertThat(grip.curvature()).isCloseTo(time(0.9) - 2 * time(1) + time(1.1), within(2 * tolerance));
        assertThat(grip.bySector()).hasSize(3);
        for (double difference : grip.bySector()) {
            assertThat(difference).isCloseTo(grip.best().difference() / 3, within(tolerance));
        }
    }

    /** v²/r = μ g: mass cancels. */
    @Test
    void massRoundACircleIsWorthNothing() {
        SensitivityResult.Worth mass = run(circleCar(), circle()).worths().get(1);
        assertThat(mass.adjustment().name()).isEqualTo("mass");
        // The solver's own tolerance, far below what it promises.
        assertThat(mass.range()).isLessThan(1e-6);
    }

    /** Two things that act on the same √: t(μ, g) has a mixed difference that mechanics gives. */
    @Test
    void twoGripsActTogetherAsMechanicsSays() {
        Car car = car(List.of(
                new Adjustment(
                        "tyres",
                        "Tyres",
                        Unit.NONE,
                        Adjustment.Range.stepped(0.9, 1.1, 0.1, 1),
                        List.of(
                                new Effect.Absolute(Quantity.FRICTION_Y_FRONT.path(), 0, 1),
                                new Effect.Absolute(Quantity.FRICTION_Y_REAR.path(), 0, 1))),
                adjustment("compound", 0.9, 1.1, 0.1, 1, Quantity.COMPOUND_GRIP.path())));
        SensitivityResult.Interaction pair = run(car, circle()).interactions().get(0);
        double beyond = (time(1.21) - time(1)) - 2 * (time(1.1) - time(1));
        assertThat(pair.beyond()).isCloseTo(beyond, within(1e-5 * time(1)));
    }

    @Test
    void aStepIsWorthWhatCentralDifferencesOnFineStationsSay() {
        Car car = car(List.of(adjustment("drag", 0, 2, 0.01, 1, Quantity.DRAG_AREA.path())));
        Track track = Track.closed(
                "triangle",
                List.of(
                        TrackPoint.flat(0, 0),
                        TrackPoint.flat(400, 0),
                        TrackPoint.flat(430, 1 / 40.0),
                        TrackPoint.flat(520, 1 / 40.0),
                        TrackPoint.flat(550, 0),
                        TrackPoint.flat(900, 0)));
        SensitivityResult.Worth drag = run(car, track).worths().get(0);
        LapSolver fine = new LapSolver(track.stations(StationSpacing.DEFAULT.scaled(0.1)));
        double slope = (fine.lapTime(Vehicle.of(car.with("drag", 1.001), Conditions.STANDARD))
                        - fine.lapTime(Vehicle.of(car.with("drag", 0.999), Conditions.STANDARD)))
                / 0.002;
        // A step each way, 0.02 in all, taken as a straight line: what bends is cancelled but for third differences.
        assertThat((drag.higher().difference() - drag.lower().difference()) / 0.02)
                .isCloseTo(slope, within(0.02 * slope));
    }

    @Test
    void curvatureOfUnevenStepsIsThatOfADividedDifference() {
        Adjustment grip = new Adjustment(
                "grip",
                "Grip",
                Unit.NONE,
                new Adjustment.Range(0.7, 1.3, 0, 1, 0, List.of(0.9, 1.0, 1.3)),
                List.of(
                        new Effect.Absolute(Quantity.FRICTION_Y_FRONT.path(), 0, 1),
                        new Effect.Absolute(Quantity.FRICTION_Y_REAR.path(), 0, 1)));
        // Newton's divided difference of the closed form, times 2 h h' of the two steps.
        double divided = ((time(1.3) - time(1)) / 0.3 - (time(1) - time(0.9)) / 0.1) / 0.4;
        SensitivityResult.Worth uneven =
                run(car(List.of(grip)), circle()).worths().get(0);
        // The weights of the two differences are up to 1.5; each is good to 1e-5 of the lap, as above.
        assertThat(uneven.curvature()).isCloseTo(2 * 0.1 * 0.3 * divided, within(3e-5 * time(1)));
    }

    @Test
    void resultsAreTheSameOnAnyNumberOfThreads() {
        Sensitivity study = Sensitivity.of(circleCar(), circle(), Conditions.STANDARD);
        assertThat(study.run(StudyRun.onThreads(1)).worths())
                .isEqualTo(study.run(StudyRun.onThreads(3)).worths());
    }

    @Test
    void anAdjustmentWithOneSettingIsNamedAndLeftAlone() {
        Car car = car(List.of(
                adjustment("mass", 900, 1100, 100, 1000, Quantity.MASS.path()),
                adjustment("ratio", 1, 1, 0.1, 1, Quantity.COMPOUND_GRIP.path())));
        SensitivityResult result = run(car, circle());
        assertThat(result.fixed()).extracting(Adjustment::name).containsExactly("ratio");
        assertThat(result.worths()).hasSize(1);
    }

    @Test
    void aCarWithNothingToTurnIsRefused() {
        assertThatThrownBy(() -> run(car(List.of()), circle()))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("no adjustment that can be turned");
    }

    @Test
    void whatNoAfternoonShowsIsToldApart() {
        SensitivityResult result = Sensitivity.of(circleCar(), circle(), Conditions.STANDARD)
                .withScatter(0.3)
                .withLaps(20)
                .run();
        assertThat(result.canBeSeen(result.worths().get(0))).isTrue();
        assertThat(result.canBeSeen(result.worths().get(1))).isFalse();
        assertThat(result.worths().get(0).best().difference()).isLessThan(-result.visible());
        assertThat(result.worths().get(1).range()).isLessThan(result.visible());
    }
}
