package dev.lapwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.numerics.MonotoneCubic;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** What is handed in is copied, what is handed out is a copy: nobody can change a thing from outside. */
class ArrayCopyTest {
    private static final Car CAR = PlainCar.ofMass(1000).car();
    private static final Track RUN = Track.open("run", 10, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(100, 0)))
            .withSectorEnds(40, 100);

    static Stream<Arguments> handedOut() {
        Stations stations = RUN.stations(StationSpacing.DEFAULT);
        Lap lap = LapSolver.on(RUN).solve(PlainCar.ofMass(1000).vehicle());
        MonotoneCubic cubic = new MonotoneCubic(new double[] {0, 1}, new double[] {2, 3});
        Effect.Tabulated effect = new Effect.Tabulated("aero.cdAM2", new double[] {0, 1}, new double[] {2, 3});
        SweepAxis axis = new SweepAxis("x", new double[] {1, 2});
        TorqueCurve torque = new TorqueCurve(new double[] {0, 1000}, new double[] {2, 3});
        GearingResult gearing = Gearing.of(CAR, RUN, Conditions.STANDARD).run();
        Comparison comparison = Comparison.of(lap, lap);
        return Stream.of(
                out("GearingLap.timeInGear", gearing.asGiven().baseline()::timeInGear),
                out("GearingTraction.speeds", gearing.traction()::speeds),
                out("GearingTraction.forces", () -> gearing.traction().forces().get(0)),
                out("GearingTraction.resistance", gearing.traction()::resistance),
                out("Comparison.behind", comparison::behind),
                out("Comparison.bySector", comparison::bySector),
                out("SweepAxis.values", axis::values),
                out("TorqueCurve.rpm", torque::rpm),
                out("TorqueCurve.torqueNm", torque::torqueNm),
                out("MonotoneCubic.abscissas", cubic::abscissas),
                out("MonotoneCubic.ordinates", cubic::ordinates),
                out("Effect.Tabulated.settings", effect::settings),
                out("Effect.Tabulated.values", effect::values),
                out("Car.gearRatios", CAR::gearRatios),
                out("Track.sectorEnds", RUN::sectorEnds),
                out("Stations.s", stations::s),
                out("Stations.curvature", stations::curvature),
                out("Stations.slope", stations::slope),
                out("Stations.bank", stations::bank),
                out("Stations.verticalCurvature", stations::verticalCurvature),
                out("Stations.grip", stations::grip),
                out("Stations.widthLeft", stations::widthLeft),
                out("Stations.widthRight", stations::widthRight),
                out("Stations.speedLimit", stations::speedLimit),
                out("Stations.heading", stations::heading),
                out("Stations.x", stations::x),
                out("Stations.y", stations::y),
                out("Stations.z", stations::z),
                out("Lap.column", () -> lap.column(Channel.SPEED)));
    }

    private static Arguments out(String name, Supplier<double[]> accessor) {
        return Arguments.of(name, accessor);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("handedOut")
    void anArrayHandedOutIsACopy(String name, Supplier<double[]> accessor) {
        double[] before = accessor.get();
        Arrays.fill(accessor.get(), -77);
        assertThat(accessor.get()).as(name).isEqualTo(before);
    }

    @Test
    void arraysHandedInAreCopied() {
        double[] x = {0, 1000};
        double[] y = {2, 3};
        TorqueCurve torque = new TorqueCurve(x, y);
        MonotoneCubic cubic = new MonotoneCubic(x, y);
        SweepAxis axis = new SweepAxis("x", y);
        double[] ratios = {3, 2};
        Car car =
                Car.of("c", "", CAR.quantities(), Map.of(), ratios, CAR.torqueCurve(), PowerCorrection.NONE, List.of());
        double[] ends = {40, 100};
        Track track = RUN.withSectorEnds(ends);
        for (double[] array : new double[][] {x, y, ratios, ends}) {
            Arrays.fill(array, -77);
        }
        assertThat(torque.rpm()).containsExactly(0, 1000);
        assertThat(torque.torqueNm()).containsExactly(2, 3);
        assertThat(cubic.abscissas()).containsExactly(0, 1000);
        assertThat(cubic.value(1000)).isEqualTo(3);
        assertThat(axis.values()).containsExactly(2, 3);
        assertThat(car.gearRatios()).containsExactly(3, 2);
        assertThat(track.sectorEnds()).containsExactly(40, 100);
    }

    @Test
    void listsAndMapsHandedInAreCopied() {
        List<TrackPoint> points = new ArrayList<>(RUN.points());
        Track track = Track.open("run", 10, points);
        List<Segment> segments = new ArrayList<>(List.of(Segment.straight(50)));
        SegmentPath path = new SegmentPath(segments, false, 1);
        List<Wing.Setting> settings = new ArrayList<>(List.of(new Wing.Setting(1, Areas.NONE)));
        Wing wing = new Wing("rear", settings);
        Map<String, Double> turned = new HashMap<>(Map.of("wing", 1.0));
        Setup setup = new Setup("s", turned);
        List<Effect> effects = new ArrayList<>(List.of(new Effect.Relative("aero.cdAM2", 1)));
        List<Double> choices = new ArrayList<>(List.of(1.0, 2.0));
        Adjustment adjustment =
                new Adjustment("a", "", Unit.NONE, new Adjustment.Range(1, 2, 1, 1, 0, choices), effects);
        Stream.of(points, segments, settings, effects, choices).forEach(List::clear);
        turned.clear();
        assertThat(track.points()).hasSize(2);
        assertThat(path.openTrack("p", 1).length()).isEqualTo(50);
        assertThat(wing.settings()).hasSize(1);
        assertThat(setup.settings()).containsEntry("wing", 1.0);
        assertThat(adjustment.effects()).hasSize(1);
        assertThat(adjustment.choices()).containsExactly(1.0, 2.0);
    }

    @Test
    void listsAndMapsHandedOutCannotBeChanged() {
        assertThatThrownBy(() -> RUN.points().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> CAR.wings().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> CAR.adjustments().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> CAR.settings().clear()).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> Setup.STANDARD.settings().put("x", 1.0))
                .isInstanceOf(UnsupportedOperationException.class);
    }

    /** A changed car or day is a new one. */
    @Test
    void changingAThingLeavesTheOldOneAlone() {
        Car heavier = CAR.with("chassis.massKg", 1200);
        assertThat(heavier.value("chassis.massKg")).isEqualTo(1200);
        assertThat(CAR.value("chassis.massKg")).isEqualTo(1000);
        Conditions hot = Conditions.STANDARD.with("conditions.airTempC", 35);
        assertThat(hot.airTempC()).isEqualTo(35);
        assertThat(Conditions.STANDARD.airTempC()).isEqualTo(15);
    }
}
