package dev.lapwright.lap;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Derivatives of the lap time: closed forms, and differences of laps solved anew. */
class LapDerivativesTest {
    private static final double G = 9.80665;
    private static final String GRIP = "tyres.compoundGrip";
    /** The quantity's step is 1e-5 of it, and the derivative changes by about that much over it. */
    private static final double STEP = 1e-4;

    private static LapDerivatives derivatives(Vehicle car, Track track, String... names) {
        return LapSolver.on(track).derivatives(car, List.of(names));
    }

    /** T = 2π √(R/(µ g)) round a circle: half a percent for each percent of grip, nothing for mass. Any mechanics text. */
    @Test
    void aCircleIsDrivenByGrip() {
        double radius = 60;
        Track circle = new SegmentPath(List.of(Segment.arc(2 * Math.PI * radius, radius)), true, 1)
                .closedTrack("circle", 1e-6);
        LapDerivatives slopes =
                derivatives(PlainCar.ofMass(1000).friction(1.2).vehicle(), circle, GRIP, "chassis.massKg");
        double time = 2 * Math.PI * Math.sqrt(radius / (1.2 * G));
        // The circle closes over a metre of ease.
        assertThat(slopes.time()).isCloseTo(time, within(STEP * time));
        assertThat(slopes.of(GRIP).above()).isCloseTo(-time / 2, within(STEP * time));
        assertThat(slopes.of(GRIP).below()).isCloseTo(-time / 2, within(STEP * time));
        assertThat(slopes.of(GRIP).isKink(0.01)).as("even on both sides").isFalse();
        assertThat(new LapDerivatives.Sides(-1, -2).isKink(0.4)).isTrue();
        assertThat(1000 * slopes.of("chassis.massKg").mean()).isCloseTo(0, within(STEP * time));
    }

    /** T = (√(v₀² + 2 a L) - v₀)/a from a rolling start with all wheels at their limit, a = µ g. Any mechanics text. */
    @Test
    void aRollingStartIsDrivenByGrip() {
        double length = 300;
        double entry = 20;
        double a = 1.1 * G;
        Track road = Track.open("straight", entry, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(length, 0)));
        double end = Math.sqrt(entry * entry + 2 * a * length);
        double perAcceleration = length / (a * end) - (end - entry) / (a * a);
        LapDerivatives slopes = derivatives(PlainCar.ofMass(1000).friction(1.1).vehicle(), road, GRIP);
        // Time is taken over cells of a few metres: its error is far less than this.
        assertThat(slopes.of(GRIP).mean()).isCloseTo(perAcceleration * a, within(1e-3));
    }

    /**
     * Against central differences of laps solved anew, for a change of one percent: a step of 1e-4, over which the lap time bends by less
     * than its kinks. One percent and 0.2 ms for what integrals over cells leave, and for what the laps' own smoothness leaves of the difference.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "chassis.massKg",
                "chassis.cgHeightM",
                "chassis.frontWeightPercent",
                "tyres.front.frictionX",
                "tyres.front.frictionY",
                "tyres.rear.frictionX",
                "tyres.rear.frictionY",
                "tyres.rear.corneringStiffnessPerRad",
                "suspension.front.antiRollBarNmPerDeg",
                "aero.cdAM2",
                "aero.clARearM2",
                "engine.powerScale",
                "gearbox.finalDrive",
                "gearbox.ratios.3",
                "gearbox.shiftTimeS",
                "drive.rear.powerLockPercent",
                "brakes.frontSharePercent",
                "conditions.grip",
                "conditions.airTempC",
                "conditions.windSpeedMps"
            })
    void differencesOfLapsAgree(String name) {
        Car car = TestCars.winged();
        Conditions day = Conditions.STANDARD.with("conditions.windSpeedMps", 3);
        LapSolver solver = LapSolver.on(TestTracks.circuit());
        LapDerivatives.Sides slope =
                solver.derivatives(Vehicle.of(car, day), List.of(name)).of(name);
        double value = Conditions.isMeantBy(name) ? day.value(name) : car.value(name);
        double step = 1e-4 * value;
        double difference = (solver.lapTime(changed(car, day, name, value + step))
                        - solver.lapTime(changed(car, day, name, value - step)))
                / (2 * step);
        double perPercent = 0.01 * value;
        double allowed = 0.01 * Math.abs(difference * perPercent) + 2e-4;
        assertThat(slope.above() * perPercent).isCloseTo(difference * perPercent, within(allowed));
        assertThat(slope.below() * perPercent).isCloseTo(difference * perPercent, within(allowed));
    }

    private static Vehicle changed(Car car, Conditions day, String name, double value) {
        return Conditions.isMeantBy(name)
                ? Vehicle.of(car, day.with(name, value))
                : Vehicle.of(car.with(name, value), day);
    }

    /** From rest in the first gear as on a lap. */
    @Test
    void aStandingStartHasDerivatives() {
        Car car = TestCars.winged();
        LapSolver solver = LapSolver.on(TestTracks.opening(0));
        double slope = solver.derivatives(Vehicle.of(car, Conditions.STANDARD), List.of(GRIP))
                .of(GRIP)
                .mean();
        double step = 1e-4;
        double difference = (solver.lapTime(Vehicle.of(car.with(GRIP, 1 + step), Conditions.STANDARD))
                        - solver.lapTime(Vehicle.of(car.with(GRIP, 1 - step), Conditions.STANDARD)))
                / (2 * step);
        // The first metres are few cells, and speed grows from nothing.
        assertThat(slope).isCloseTo(difference, within(0.03 * Math.abs(difference)));
    }

    @Test
    void theEndOfARangeHasOneSide() {
        LapDerivatives slopes = derivatives(
                Vehicle.of(TestCars.winged(), Conditions.STANDARD), TestTracks.circuit(), "conditions.humidityPercent");
        LapDerivatives.Sides side = slopes.of("conditions.humidityPercent");
        assertThat(side.below()).isNaN();
        // Damp air is thinner and holds less oxygen: some way or other it is worth less than a second for each percent.
        assertThat(Math.abs(side.above())).isLessThan(1).isGreaterThan(0);
        assertThat(side.mean()).isEqualTo(side.above());
    }

    @Test
    void whatIsUnknownIsRefused() {
        Vehicle car = Vehicle.of(TestCars.winged(), Conditions.STANDARD);
        LapSolver solver = LapSolver.on(TestTracks.circuit());
        assertThatThrownBy(() -> solver.derivatives(car, List.of("chassis.colour")))
                .isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> solver.derivatives(car, List.of()).of("chassis.massKg"))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** A car that shares tables with one that it differs from in one quantity laps as one made by itself, and as that one where nothing is said to differ. */
    @Test
    void sharedTablesChangeNothing() {
        Car car = TestCars.winged();
        Conditions day = Conditions.STANDARD;
        Vehicle base = Vehicle.of(car, day);
        LapSolver solver = LapSolver.on(TestTracks.circuit());
        double asItIs = solver.lapTime(base);
        for (String name : car.quantityNames()) {
            double value = car.value(name);
            Car other;
            try {
                other = car.with(name, value + 1e-3 * Math.max(Math.abs(value), 0.05));
            } catch (InvalidValueException endOfRange) {
                continue;
            }
            Vehicle beside = base.beside(other, day);
            double time = solver.lapTime(Vehicle.of(other, day));
            assertThat(solver.lapTime(beside)).as(name).isEqualTo(time);
            if (base.drivesAs(beside)) {
                assertThat(time).as(name).isEqualTo(asItIs);
            }
        }
        assertThat(base.drivesAs(base.beside(car, day.with("conditions.windSpeedMps", 1))))
                .isFalse();
        assertThat(base.drivesAs(Vehicle.of(car, day))).as("tables of its own").isFalse();
    }

    /** v² = µ g R round a circle: half a percent of speed for each of grip; and from both sides of the step as from one. */
    @Test
    void speedsRoundACircleGrowWithGrip() {
        double radius = 60;
        Track circle = new SegmentPath(List.of(Segment.arc(2 * Math.PI * radius, radius)), true, 1)
                .closedTrack("circle", 1e-6);
        Vehicle car = PlainCar.ofMass(1000).friction(1.2).vehicle();
        Vehicle more = Vehicle.of(car.car().with(GRIP, 1 + STEP), car.conditions());
        Vehicle less = Vehicle.of(car.car().with(GRIP, 1 - STEP), car.conditions());
        LapTangents tangents = LapSolver.on(circle)
                .tangents(car, List.of(LapTangents.Step.towards(more), new LapTangents.Step(less, more)));
        double speed = Math.sqrt(1.2 * G * radius);
        int middle = tangents.speeds().length / 2;
        assertThat(tangents.speeds()[middle]).isCloseTo(speed, within(STEP * speed));
        // Over a step of 1e-4 the root bends by a quarter of its square.
        assertThat(tangents.speedChange(0)[middle] / STEP).isCloseTo(speed / 2, within(1e-3 * speed));
        assertThat(tangents.speedChange(1)[middle] / STEP).isCloseTo(speed / 2, within(1e-3 * speed));
        assertThatThrownBy(() -> new LapTangents.Step(null, null)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Speeds against those of laps solved anew: within two percent of what changes, root mean square; kinks at places where brakes are met leave that. */
    @ParameterizedTest
    @ValueSource(strings = {GRIP, "chassis.massKg", "aero.cdAM2", "engine.powerScale", "gearbox.finalDrive"})
    void speedsOfLapsAgree(String name) {
        Car car = TestCars.winged();
        LapSolver solver = LapSolver.on(TestTracks.circuit());
        double step = STEP * car.value(name);
        Vehicle less = changed(car, Conditions.STANDARD, name, car.value(name) - step);
        Vehicle more = changed(car, Conditions.STANDARD, name, car.value(name) + step);
        double[] change = solver.tangents(
                        Vehicle.of(car, Conditions.STANDARD), List.of(new LapTangents.Step(less, more)))
                .speedChange(0);
        double[] below = solver.speeds(less);
        double[] above = solver.speeds(more);
        double miss = 0;
        double all = 0;
        for (int i = 0; i < change.length; i++) {
            double difference = 0.5 * (above[i] - below[i]);
            miss += (change[i] - difference) * (change[i] - difference);
            all += difference * difference;
        }
        assertThat(Math.sqrt(miss / all)).isLessThan(0.02);
    }
}
