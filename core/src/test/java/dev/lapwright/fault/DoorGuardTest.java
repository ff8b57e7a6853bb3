package dev.lapwright.fault;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Platform;
import dev.lapwright.aero.ResponseSurface;
import dev.lapwright.aero.RideHeightMap;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.Atmosphere;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.chassis.LateralTransfer;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.Fit;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.Drivetrain;
import dev.lapwright.lap.Handling;
import dev.lapwright.numerics.CubicTable;
import dev.lapwright.numerics.MonotoneCubic;
import dev.lapwright.powertrain.Differential;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.powertrain.OverrunDrag;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.PassSolver;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RandomRoad;
import dev.lapwright.ride.RoadClass;
import dev.lapwright.ride.RoadProfile;
import dev.lapwright.study.ride.DamperMap;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.tyre.GasLaw;
import dev.lapwright.tyre.TyreState;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** No constructor, factory or method that takes numbers lets one through that is none, and each says which it was. */
class DoorGuardTest {
    private static final Car CAR = PlainCar.ofMass(1000).car();
    private static final Track RUN = Track.open("run", 10, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(100, 0)));

    private static final QuarterCar WHEEL = new QuarterCar(300, 40, 1e5, 3e5, 0, Damper.linear(1), 1, 0);
    private static final RoadProfile KERB = new Kerb(Kerb.Shape.RAMP, 0.05, 1, 1).felt(0.1);
    private static final Car RIDING = PlainCar.ofMass(1000)
            .with(Quantity.UNSPRUNG_MASS_FRONT, 40)
            .with(Quantity.SLOW_BUMP_FRONT, 5000)
            .with(Quantity.SLOW_REBOUND_FRONT, 5000)
            .car();

    private record Door(String name, DoubleConsumer door) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static Platform platform(double frontHeight, double rearHeight, double frontRate, double rearRate) {
        ResponseSurface flat = ResponseSurface.FLAT;
        RideHeightMap map = new RideHeightMap(0, 0, flat, flat, flat);
        return new Platform(Areas.NONE, map, frontHeight, rearHeight, frontRate, rearRate);
    }

    private static Wing wing(double first, double last) {
        return new Wing("rear", List.of(new Wing.Setting(first, Areas.NONE), new Wing.Setting(last, Areas.NONE)));
    }

    private static Track circle() {
        Segment arc = Segment.arc(2 * Math.PI * 50, 50);
        return new SegmentPath(List.of(arc), true, 1).closedTrack("circle", 1e-6);
    }

    private static Adjustment choices(double choice) {
        Effect effect = new Effect.Relative("aero.cdAM2", 0.1);
        return new Adjustment(
                "ratio", "", Unit.NONE, new Adjustment.Range(0, 10, 1, 5, 0, List.of(0.0, choice)), List.of(effect));
    }

    private static List<Door> doors() {
        return List.of(
                new Door("front ride height", v -> platform(v, 50, 1e5, 1e5)),
                new Door("rear ride height", v -> platform(50, v, 1e5, 1e5)),
                new Door("front ride rate", v -> platform(50, 50, v, 1e5)),
                new Door("rear ride rate", v -> platform(50, 50, 1e5, v)),
                new Door("dynamic pressure", v -> platform(50, 50, 1e5, 1e5).at(v, null)),
                new Door("wing rear angleDeg", v -> wing(0, v)),
                new Door("wing rear angleDeg", v -> wing(0, 9).at(v)),
                new Door("altitudeM", Atmosphere::standard),
                new Door("altitudeM", StandardAtmosphere::temperature),
                new Door("altitudeM", StandardAtmosphere::pressure),
                new Door("wind heading", v -> Wind.fromCompass(3, v)),
                new Door("wind speed", v -> Wind.fromCompass(v, 3)),
                new Door("share of weight at the front", v -> LateralTransfer.of(v, 0.5, 0, 0, 1.5, 1.5, 0.5)),
                new Door("load transfer", v -> LateralTransfer.of(0.5, v, 0, 0, 1.5, 1.5, 0.5)),
                new Door("front track", v -> LateralTransfer.of(0.5, 0.5, 0, 0, v, 1.5, 0.5)),
                new Door("rear track", v -> LateralTransfer.of(0.5, 0.5, 0, 0, 1.5, v, 0.5)),
                new Door("roll stiffness", v -> LateralTransfer.of(0.5, 0.5, 0, 0, 1.5, 1.5, v)),
                new Door("pressure or temperature", v -> TyreState.gripFactor(v, 170, 1e-4)),
                new Door("ideal", v -> TyreState.gripFactor(170, v, 1e-4)),
                new Door("loss per square", v -> TyreState.gripFactor(170, 170, v)),
                new Door("gauge pressure", v -> GasLaw.pressure(v, 20, 80, 100)),
                new Door("gas temperature", v -> GasLaw.pressure(120, v, 80, 100)),
                new Door("gas temperature", v -> GasLaw.pressure(120, 20, v, 100)),
                new Door("air pressure", v -> GasLaw.pressure(120, 20, 80, v)),
                new Door("gauge pressure", v -> GasLaw.temperature(120, 20, v, 100)),
                new Door("gas temperature", v -> GasLaw.temperature(120, v, 160, 100)),
                new Door("consumption (g/kWh)", FuelConsumption::constant),
                new Door("consumption (g/kWh)", FuelConsumption::efficiency),
                new Door("engine speed", v -> FuelConsumption.constant(300).at(v)),
                new Door(
                        "consumption map rpm[1]",
                        v -> new FuelConsumption(new double[] {0, v}, new double[] {300, 300})),
                new Door(
                        "laps on the tyre",
                        v -> Compound.steady("soft", 1, 0.001).gripAfter(v)),
                new Door("locking value", Differential::torqueBias),
                new Door("greatest torque", v -> OverrunDrag.torque(v, 0.2, 1)),
                new Door("overrun drag", v -> OverrunDrag.torque(100, v, 1)),
                new Door("share of the rev limit", v -> OverrunDrag.torque(100, 0.2, v)),
                new Door("mass", v -> UndersteerGradient.of(v, 1, 1, 1, 1)),
                new Door("distance to the front axle", v -> UndersteerGradient.of(1, v, 1, 1, 1)),
                new Door("distance to the rear axle", v -> UndersteerGradient.of(1, 1, v, 1, 1)),
                new Door("front cornering stiffness", v -> UndersteerGradient.of(1, 1, 1, v, 1)),
                new Door("rear cornering stiffness", v -> UndersteerGradient.of(1, 1, 1, 1, v)),
                new Door("understeer gradient", v -> new UndersteerGradient(0, 2).plus(v)),
                new Door(
                        "air speed",
                        v -> Handling.of(PlainCar.ofMass(1000).vehicle()).at(v)),
                new Door(
                        "air speed",
                        v -> Handling.of(PlainCar.ofMass(1000).vehicle()).aero(v)),
                new Door("slow bump", Damper::linear),
                new Door("fast bump", v -> WHEEL.withFast(v, 1)),
                new Door("fast rebound", v -> WHEEL.withFast(1, v)),
                new Door("damper rate", WHEEL::bodyDampingRatio),
                new Door("damper rate", WHEEL::hopDampingRatio),
                new Door("contact length", v -> new Kerb(Kerb.Shape.RAMP, 0.05, 1, 1).felt(v)),
                new Door("contact length", v -> RandomRoad.of(RoadClass.A, 1, v)),
                new Door("wave number", RoadClass.A::density),
                new Door("speed", v -> PassSolver.over(KERB, v)),
                new Door("axle downforce", v -> AxleEnd.FRONT.of(RIDING, v)),
                new Door("speed", v -> Ride.of(RIDING, Conditions.STANDARD, v)),
                new Door(
                        "fast bump", v -> DamperMap.of(WHEEL, KERB, 10).over(new double[] {0, v}, new double[] {0, 1})),
                new Door("torque curve rpm[1]", v -> new TorqueCurve(new double[] {0, v}, new double[] {1, 1})),
                new Door("torque (Nm)", v -> new TorqueCurve(new double[] {0, 1}, new double[] {1, v})),
                new Door("table[1]", v -> new MonotoneCubic(new double[] {0, v}, new double[] {1, 1})),
                new Door("table value", v -> new MonotoneCubic(new double[] {0, 1}, new double[] {1, v})),
                new Door("first abscissa", v -> new CubicTable(v, 1, 4, x -> x)),
                new Door("last abscissa", v -> new CubicTable(0, v, 4, x -> x)),
                new Door("tabulated value", v -> new CubicTable(0, 1, 4, x -> v)),
                new Door(
                        "aero.cdAM2",
                        v -> new Effect.Tabulated("aero.cdAM2", new double[] {0, 1}, new double[] {0, v})),
                new Door("adjustment ratio choices[1]", DoorGuardTest::choices),
                new Door("ratio", v -> choices(8).checked(v)),
                new Door("rear-wing", v -> new Setup("s", Map.of("rear-wing", v))),
                new Door("rear-wing", v -> Setup.STANDARD.with("rear-wing", v)),
                new Door("chassis.massKg", v -> CAR.with(Quantity.MASS, v)),
                new Door("gearbox.ratios.1", v -> CAR.with("gearbox.ratios.1", v)),
                new Door("gearbox.ratios.1", DoorGuardTest::carOfRatio),
                new Door("airTempC", v -> Conditions.STANDARD.with("conditions.airTempC", v)),
                new Door("segment length", Segment::straight),
                new Door("slope", v -> Segment.straight(10).inclined(v, 0)),
                new Door("bank", v -> Segment.straight(10).inclined(0, v)),
                new Door("easeLengthM", v -> new SegmentPath(List.of(Segment.straight(10)), false, v)),
                new Door(
                        "closureToleranceM",
                        v -> new SegmentPath(List.of(Segment.straight(10)), true, 1).closedTrack("c", v)),
                new Door("closureToleranceM", v -> circle().requireClosed(v)),
                new Door("entry speed", v -> Track.open("run", v, RUN.points())),
                new Door("sectorEndsM[0]", RUN::withSectorEnds),
                new Door("start heading", v -> RUN.laidOut(v, 0)),
                new Door("start altitude", v -> RUN.laidOut(0, v)),
                new Door("start (m)", v -> circle().startingAt(v)),
                new Door("distance", RUN::pointAt),
                new Door("predicted change", Evidence.DEFAULT::predicting),
                new Door("difference", v -> LapsToSee.perSetup(v, 0.3)),
                new Door("scatter", v -> LapsToSee.perSetup(0.1, v)),
                new Door(
                        "confidence", v -> Fit.of(CAR, RUN, Conditions.STANDARD).confidence(v)),
                new Door("time (s) of sample 2", v -> DrivenLap.distanceFrom(new double[] {0, v}, new double[] {1, 1})),
                new Door(
                        "speed (m/s) of sample 2",
                        v -> DrivenLap.distanceFrom(new double[] {0, 1}, new double[] {1, v})),
                new Door("station spacing", StationSpacing.DEFAULT::scaled),
                new Door("speed", v -> CarFigures.of(PlainCar.ofMass(1000).vehicle(), v)),
                new Door(
                        "speed",
                        v -> Drivetrain.of(PlainCar.ofMass(1000).vehicle()).engineSpeed(1, v)),
                new Door(
                        "speed",
                        v -> Drivetrain.of(PlainCar.ofMass(1000).vehicle()).gearAt(v)),
                new Door(
                        "speed",
                        v -> Drivetrain.of(PlainCar.ofMass(1000).vehicle()).force(1, v)),
                new Door(
                        "speed",
                        v -> Drivetrain.of(PlainCar.ofMass(1000).vehicle()).resistance(v, 0, 0)),
                new Door(
                        "head wind",
                        v -> Drivetrain.of(PlainCar.ofMass(1000).vehicle()).resistance(20, v, 0)),
                new Door(
                        "slope",
                        v -> Drivetrain.of(PlainCar.ofMass(1000).vehicle()).resistance(20, 0, v)),
                new Door("rear-wing", v -> new SweepAxis("rear-wing", new double[] {1, v})),
                new Door("rear-wing first", v -> SweepAxis.stepped("rear-wing", v, 1, 1)),
                new Door("rear-wing last", v -> SweepAxis.stepped("rear-wing", 0, v, 1)),
                new Door("rear-wing step", v -> SweepAxis.stepped("rear-wing", 0, 1, v)));
    }

    private static void carOfRatio(double ratio) {
        Car.of(
                "c",
                "",
                CAR.quantities(),
                Map.of(),
                new double[] {ratio},
                CAR.torqueCurve(),
                PowerCorrection.NONE,
                List.of());
    }

    static Stream<Arguments> badNumbers() {
        return doors().stream()
                .flatMap(door -> DoubleStream.of(Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY)
                        .mapToObj(bad -> Arguments.of(door, bad)));
    }

    @ParameterizedTest(name = "{0} = {1}")
    @MethodSource("badNumbers")
    void aDoorRefusesWhatIsNoNumberAndNamesIt(Door door, double bad) {
        assertThatThrownBy(() -> door.door().accept(bad))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(door.name());
    }

    /** An infinite radius is a straight. */
    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, 0})
    void anArcNeedsARadius(double radius) {
        assertThatThrownBy(() -> Segment.arc(10, radius))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("radius");
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void everyQuantityOfACarRefusesWhatIsNoNumberAndWhatIsOutOfRange(Quantity quantity) {
        double beyond = quantity.max() + 1;
        double before = quantity.min() - 1;
        for (double bad :
                new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, beyond, before}) {
            assertThatThrownBy(() -> CAR.with(quantity, bad))
                    .isInstanceOf(InvalidValueException.class)
                    .hasMessageContaining(quantity.path());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "conditions.airTempC",
                "conditions.airPressureHpa",
                "conditions.humidityPercent",
                "conditions.windSpeedMps",
                "conditions.windFromDeg",
                "conditions.grip"
            })
    void everyConditionRefusesWhatIsNoNumber(String name) {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            assertThatThrownBy(() -> Conditions.STANDARD.with(name, bad))
                    .isInstanceOf(InvalidValueException.class)
                    .hasMessageContaining(name.substring("conditions.".length()));
        }
    }
}
