package dev.lapwright.models;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.aero.AeroMap;
import dev.lapwright.aero.Areas;
import dev.lapwright.aero.ResponseSurface;
import dev.lapwright.aero.RideHeightMap;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.powertrain.Engine;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.tyre.TyreModel;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Two models at each seam keep its promises, models that break one are caught, and a car drives by the model that it is given. */
class ModelContractsTest {
    private static final double LIMIT = 850;
    private static final RideHeightMap QUADRATIC = new RideHeightMap(
            60,
            80,
            new ResponseSurface(-0.0005, 0.0015, 0, 0, 0),
            new ResponseSurface(-0.011, 0.005, -0.00022, -0.00008, 0),
            new ResponseSurface(-0.003, 0.004, 0, -0.00012, 0));

    private static Car car() {
        return PlainCar.ofMass(1000).car();
    }

    @Test
    void theEnginesOfTheTreeKeepTheirPromises() {
        ModelContracts.engine(
                new TorqueCurve(new double[] {1500, 4500, 7000, 8500}, new double[] {350, 470, 490, 420}), LIMIT);
        ModelContracts.engine(new ElectricMotor(300, 400), LIMIT);
    }

    @Test
    void theMapsOfTheTreeKeepTheirPromises() {
        ModelContracts.aeroMap(QUADRATIC);
        ModelContracts.aeroMap(new StallingFloor(0.8, 55, 18, 0.45));
    }

    @Test
    void theTyresOfTheTreeKeepTheirPromises() {
        ModelContracts.tyre(car().frontTyre(), 20_000);
        ModelContracts.tyre(new SaturatingTyre(1.5, 25, 0.9, 3000), 20_000);
    }

    @Test
    void aTyreThatBreaksAPromiseIsCaught() {
        for (DoubleUnaryOperator broken : List.<DoubleUnaryOperator>of(
                load -> 1 - load / 10_000,
                load -> load > 3000 ? 1.2 : 1.3,
                load -> load > 3000 && load < 3100 ? Double.NaN : 1.2,
                load -> 1.2 * 3000 / Math.max(load, 3000) - 1e-5 * load)) {
            assertThatThrownBy(() -> ModelContracts.tyre(along(broken), 20_000)).isInstanceOf(AssertionError.class);
        }
    }

    private static TyreModel along(DoubleUnaryOperator friction) {
        TyreModel other = new SaturatingTyre(1.5, 25, 0.9, 3000);
        return new Stranger(friction, other::frictionY, other::stiffness);
    }

    /** A tyre of which the kernel knows nothing but what it answers. */
    private record Stranger(DoubleUnaryOperator x, DoubleUnaryOperator y, DoubleUnaryOperator c) implements TyreModel {
        @Override
        public double frictionX(double load) {
            return x.applyAsDouble(load);
        }

        @Override
        public double frictionY(double load) {
            return y.applyAsDouble(load);
        }

        @Override
        public double stiffness(double load) {
            return c.applyAsDouble(load);
        }
    }

    /**
     * The document's own law handed over as if it were a stranger's, so that the kernel reads it from its table: the same lap. Tolerance: in
     * each of 800 steps cubics are exact for a line; only where the law meets its floor, at loads that no wheel here sees, they round.
     */
    @Test
    void theDocumentsTyreReadAsAModelGivesTheSameLap() {
        Car car = car();
        LapSolver solver = LapSolver.on(new SegmentPath(
                        List.of(
                                Segment.straight(300),
                                Segment.clothoid(40, 1e9, 50),
                                Segment.arc(80, 50),
                                Segment.clothoid(40, 50, 1e9),
                                Segment.straight(200)),
                        false,
                        60)
                .openTrack("a bend", 30));
        Car strange = car.with(stranger(car.frontTyre()), stranger(car.rearTyre()));
        assertThat(solver.lapTime(Vehicle.of(strange, Conditions.STANDARD)))
                .isCloseTo(solver.lapTime(Vehicle.of(car, Conditions.STANDARD)), within(1e-6));
    }

    private static TyreModel stranger(TyreModel tyre) {
        return new Stranger(tyre::frictionX, tyre::frictionY, tyre::stiffness);
    }

    @Test
    void aTyreWithoutGripIsRefused() {
        Car car = car().with(along(load -> 0), new SaturatingTyre(1.5, 25, 0.9, 3000));
        assertThatThrownBy(() -> Vehicle.of(car, Conditions.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("front tyre")
                .hasMessageContaining("friction along");
        assertThat(car.hasOwnTyres()).isTrue();
        assertThat(car.with(Quantity.MASS, 1000).hasOwnTyres()).isTrue();
    }

    @Test
    void aModelThatBreaksAPromiseIsCaught() {
        Engine holed = w -> w > 400 && w < 500 ? Double.NaN : 300;
        Engine stepped = w -> w < 400 ? 300 : 310;
        Engine dragging = w -> 300 - w;
        double[] asked = {0};
        Engine forgetful = w -> 300 + asked[0]++;
        AeroMap cliff = (f, r) -> new Areas(0, f < 30 ? 0 : 0.5, 0);
        AeroMap digging = (f, r) -> new Areas(0, 0.01 * f, 0);
        for (Engine broken : new Engine[] {holed, stepped, dragging, forgetful}) {
            assertThatThrownBy(() -> ModelContracts.engine(broken, LIMIT)).isInstanceOf(AssertionError.class);
        }
        for (AeroMap broken : new AeroMap[] {cliff, digging}) {
            assertThatThrownBy(() -> ModelContracts.aeroMap(broken)).isInstanceOf(AssertionError.class);
        }
    }

    /** Force at the wheels is power over speed above the base speed: torque · overall ratio · efficiency / radius, by hand. */
    @Test
    void aCarDrivesByTheEngineThatItIsGiven() {
        Car car = car().with(new ElectricMotor(400, 300));
        Drivetrain drivetrain = Drivetrain.of(Vehicle.of(car, Conditions.STANDARD));
        double overall = car.gearRatios()[0] * car.value(Quantity.FINAL_DRIVE);
        double radius = car.value(Quantity.WHEEL_RADIUS);
        double air = car.powerCorrection().powerFactor(Conditions.STANDARD.air());
        double speed = 450 / overall * radius;
        double power = 400 * 300 * air * car.value(Quantity.POWER_SCALE) * car.value(Quantity.EFFICIENCY);
        // Cubics over 400 steps of the rev limit.
        assertThat(drivetrain.force(1, speed)).isCloseTo(power / speed, within(1e-4 * power / speed));
    }

    @Test
    void aCarStandsOnTheMapThatItIsGiven() {
        StallingFloor floor = new StallingFloor(0.8, 90, 18, 0.45);
        Car plain = car();
        Car car = plain.with(floor);
        var without = Vehicle.of(plain, Conditions.STANDARD).platformAt(50);
        var with = Vehicle.of(car, Conditions.STANDARD).platformAt(50);
        Areas added = floor.at(with.frontMm(), with.rearMm());
        assertThat(with.areas().liftFront()).isCloseTo(without.areas().liftFront() + added.liftFront(), within(1e-12));
        assertThat(with.frontMm()).isLessThan(without.frontMm());
    }

    @Test
    void settingsKeepTheModels() {
        Engine motor = new ElectricMotor(400, 300);
        Car car = car().with(motor).with(Quantity.MASS, 1000);
        assertThat(car.engine()).isSameAs(motor);
        assertThat(car.document().engine()).isSameAs(motor);
        assertThat(car().hasOwnModels()).isFalse();
    }

    @Test
    void anEngineWithoutATorqueIsRefused() {
        Car car = car().with((Engine) w -> Double.NaN);
        assertThatThrownBy(() -> Vehicle.of(car, Conditions.STANDARD))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("engine")
                .hasMessageContaining("torque");
    }
}
