package dev.lapwright.study.weight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** What a kilogram is worth, against mechanics by hand; expected values are derived, none is measured on the model. */
class WeightTest {
    private static final double MASS = 1000;
    private static final double LENGTH = 400;
    private static final double STEP = 10;
    private static final double G = PlainCar.GRAVITY;

    private static WeightResult run(PlainCar car, Track track) {
        return Weight.of(car.car(), track, Conditions.STANDARD).run();
    }

    private static Track circle(double radius) {
        return new SegmentPath(List.of(Segment.arc(2 * Math.PI * radius, radius)), true, 1).closedTrack("circle", 1e-6);
    }

    /** Central difference of a function of mass, about {@link #MASS}. */
    private static double slope(DoubleUnaryOperator time) {
        return (time.applyAsDouble(MASS + STEP) - time.applyAsDouble(MASS - STEP)) / (2 * STEP);
    }

    /** Even acceleration F/m from rest: t = √(2 m L/F), so dt/dm = t/(2 m), wherever in the car the kilogram is. */
    @Test
    void fromRestWithAnEvenForceAKilogramCostsHalfTheTimeOverTheMass() {
        double force = 4000;
        double time = Math.sqrt(2 * MASS * LENGTH / force);
        WeightResult result = run(PlainCar.ofMass(MASS).force(force), StudyCars.straight(LENGTH));
        assertThat(result.lap().time()).isCloseTo(time, within(1e-3));
        // The central difference over a hundredth of the mass is off by δ²/(8 m²) of the slope, 1.25e-5; the solver
        // starts
        // from a speed just above rest.
        double expected = time / (2 * MASS);
        assertThat(result.atCentre().perKg()).isCloseTo(expected, within(1e-4 * expected));
        assertThat(result.overFront().perKg()).isCloseTo(expected, within(1e-4 * expected));
        assertThat(result.overRear().perKg()).isCloseTo(expected, within(1e-4 * expected));
        assertThat(result.onStraights()).isCloseTo(expected, within(1e-4 * expected));
        assertThat(result.inCorners()).isZero();
    }

    /**
     * Driven wheels at their limit, centre of gravity in the road: a = μ g r with r the share of the weight on them, so t goes
     * as 1/√r. At the centre of gravity a kilogram costs nothing; over the other axle it takes dr/dm = -r/m, over the driven
     * one it adds (1 - r)/m.
     */
    @Test
    void atTheLimitOfTheDrivenWheelsOnlyTheirShareOfTheWeightMatters() {
        double friction = 0.8;
        double rear = 0.6;
        double time = Math.sqrt(2 * LENGTH / (friction * G * rear));
        PlainCar car = PlainCar.ofMass(MASS)
                .friction(friction)
                .axles(2.5 * rear, 2.5 * (1 - rear), 0)
                .frontDrive(0);
        WeightResult result = run(car, StudyCars.straight(LENGTH));
        assertThat(result.lap().time()).isCloseTo(time, within(1e-3));
        double front = time / (2 * MASS);
        double behind = -time * (1 - rear) / (2 * rear * MASS);
        // As above; at the centre of gravity rounding of the lap time over two steps of mass is left.
        assertThat(result.atCentre().perKg()).isCloseTo(0, within(1e-9));
        assertThat(result.overFront().perKg()).isCloseTo(front, within(2e-4 * front));
        assertThat(result.overRear().perKg()).isCloseTo(behind, within(2e-4 * front));
        assertThat(result.toTheRear()).isCloseTo(behind - front, within(4e-4 * front));
    }

    /** v² = μ g R whatever the mass. */
    @Test
    void roundACircleWithoutDownforceAKilogramCostsNothing() {
        WeightResult result = run(PlainCar.ofMass(MASS).friction(1.2), circle(50));
        assertThat(result.atCentre().perKg()).isCloseTo(0, within(1e-9));
    }

    /**
     * Downforce k v² on tyres without load sensitivity: m v²/R = μ (m g + k v²), so v² = μ g m R/(m - μ k R). Downforce is
     * shared by more mass as the car grows heavier.
     */
    @Test
    void roundACircleWithDownforceAKilogramCostsWhatTheFormulaSays() {
        double friction = 1.2;
        double factor = 2;
        double radius = 60;
        DoubleUnaryOperator time = mass ->
                2 * Math.PI * radius / Math.sqrt(friction * G * mass * radius / (mass - friction * factor * radius));
        PlainCar car = PlainCar.ofMass(MASS).friction(friction).downforce(factor);
        WeightResult result = run(car, circle(radius));
        // Drag from cornering takes (1.2/200)²/2 of the grip, 1.8e-5, a little more or less of it with the mass.
        assertThat(result.lap().time()).isCloseTo(time.applyAsDouble(MASS), within(5e-5 * time.applyAsDouble(MASS)));
        assertThat(result.atCentre().perKg()).isCloseTo(slope(time), within(1e-3 * slope(time)));
    }

    @Test
    void cornersAndStraightsAddUpToTheLap() {
        WeightResult result = run(
                PlainCar.ofMass(MASS).friction(1.2).force(5000).downforce(1.5).topSpeed(80), StudyCars.circuit());
        assertThat(result.places()).hasSize(8);
        assertThat(result.inCorners() + result.onStraights())
                .isCloseTo(result.atCentre().perKg(), within(1e-12));
        assertThat(result.places().stream()
                        .mapToDouble(WeightResult.Place::time)
                        .sum())
                .isCloseTo(result.lap().time(), within(1e-9));
        assertThat(result.atCentre().perKg()).isPositive();
    }

    @Test
    void differencesAreThoseOfLapsSolvedAnew() {
        PlainCar car = PlainCar.ofMass(MASS).force(5000).drag(0.5).topSpeed(80);
        WeightResult result = Weight.of(car.car(), StudyCars.oval(300, 40), Conditions.STANDARD)
                .withStep(25)
                .run(StudyRun.onThreads(1));
        Car heavier = car.car().with(Quantity.MASS, MASS + 25);
        double time = LapSolver.lap(heavier, StudyCars.oval(300, 40), Conditions.STANDARD)
                .time();
        assertThat(result.atCentre().heavier()).isEqualTo(time - result.lap().time());
    }

    @Test
    void fuelOnBoardCountsAsMass() {
        PlainCar car = PlainCar.ofMass(MASS).with(Quantity.FUEL_MASS, 50).force(4000);
        assertThat(run(car, StudyCars.straight(LENGTH)).mass()).isEqualTo(MASS + 50);
    }

    @Test
    void theSameOnAnyNumberOfThreads() {
        Weight study = Weight.of(
                PlainCar.ofMass(MASS).force(5000).topSpeed(80).car(), StudyCars.circuit(), Conditions.STANDARD);
        assertThat(study.run(StudyRun.onThreads(3)).places())
                .isEqualTo(study.run(StudyRun.onThreads(1)).places());
    }

    @Test
    void aStepThatIsNoneIsRefused() {
        Weight study = Weight.of(PlainCar.ofMass(MASS).car(), StudyCars.oval(300, 40), Conditions.STANDARD);
        assertThatThrownBy(() -> study.withStep(0)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> study.withStep(101)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> study.withStep(Double.NaN)).isInstanceOf(InvalidValueException.class);
    }

    /** A mass set by itself and then moved by an adjustment cannot be changed by a step. */
    @Test
    void aMassThatTheSetupMovesIsRefused() {
        Car car = StudyCars.with(
                        PlainCar.ofMass(MASS),
                        StudyCars.adjustment("ballast", 0, 50, 10, 0, new Effect.Relative(Quantity.MASS.path(), 1)))
                .with(Quantity.MASS, MASS)
                .with("ballast", 20);
        Weight study = Weight.of(car, StudyCars.oval(300, 40), Conditions.STANDARD);
        assertThatThrownBy(study::run)
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(Quantity.MASS.path());
    }
}
