package dev.lapwright.study.gearing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A car of 1000 kg without drag, whose engine gives the same torque at all speeds: with a final drive of x its force is
 * 400 x newtons, its speed at the rev limit 300/x m/s. Entered at 20 m/s on a straight of 800 m everything is plain
 * mechanics.
 */
class GearingTest {
    private static final double MASS = 1000;
    private static final double ENTRY = 20;
    private static final double LENGTH = 800;
    private static final double FORCE_PER_RATIO = 400;
    private static final double LIMIT_TIMES_RATIO = 300;
    /** Half the millisecond promised of a whole lap; the car's acceleration is even, so it is far better. */
    private static final double TIME = 5e-4;

    private static final double[] DRIVES = {4, 4.5, 5, 5.5, 6, 6.5, 7, 8};

    private static Car car() {
        return PlainCar.ofMass(MASS)
                .force(5 * FORCE_PER_RATIO)
                .topSpeed(LIMIT_TIMES_RATIO / 5)
                .car();
    }

    private static Track straight(double length) {
        return Track.open("straight", ENTRY, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(length, 0)));
    }

    private static GearingResult.Scenario drives(double length) {
        return Gearing.of(car(), straight(length), Conditions.STANDARD)
                .over(new SweepAxis("gearbox.finalDrive", DRIVES))
                .run()
                .asGiven();
    }

    /** Speed up evenly to the limit if it comes before the end, then on at the limit. */
    private static double closedForm(double finalDrive, double length, double limitFactor) {
        double a = FORCE_PER_RATIO * finalDrive / MASS;
        double limit = limitFactor * LIMIT_TIMES_RATIO / finalDrive;
        double toLimit = (limit * limit - ENTRY * ENTRY) / (2 * a);
        if (toLimit >= length) {
            return (Math.sqrt(ENTRY * ENTRY + 2 * a * length) - ENTRY) / a;
        }
        return (limit - ENTRY) / a + (length - toLimit) / limit;
    }

    @Test
    void lapTimesOfAllFinalDrivesAreThoseOfPlainMechanics() {
        for (GearingResult.Candidate choice : drives(LENGTH).choices()) {
            assertThat(choice.lap().orElseThrow().lapTime())
                    .as("final drive %s", choice.value())
                    .isCloseTo(closedForm(choice.value(), LENGTH, 1), within(TIME));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {200, 800, 2000})
    void theFastestFinalDriveIsThatOfPlainMechanics(double length) {
        double best = DoubleStream.of(DRIVES)
                .boxed()
                .min(Comparator.comparingDouble(drive -> closedForm(drive, length, 1)))
                .orElseThrow();
        assertThat(drives(length).fastest("gearbox.finalDrive").orElseThrow().value())
                .isEqualTo(best);
    }

    @Test
    void withoutTheLimiterAShorterFinalDriveIsAlwaysFaster() {
        // Below the limiter the force goes with the final drive, so its time falls; 200 m end before any limiter.
        List<GearingResult.GearedLap> laps = drives(150).choices().stream()
                .map(choice -> choice.lap().orElseThrow())
                .toList();
        assertThat(laps).allSatisfy(lap -> assertThat(lap.limiter().time()).isZero());
        assertThat(laps.stream().map(GearingResult.GearedLap::lapTime)).isSortedAccordingTo(Comparator.reverseOrder());
    }

    @Test
    void theTimeOnTheLimiterIsThatOfTheRoadLeft() {
        for (GearingResult.Candidate choice : drives(LENGTH).choices()) {
            double limit = LIMIT_TIMES_RATIO / choice.value();
            double a = FORCE_PER_RATIO * choice.value() / MASS;
            double left = LENGTH - (limit * limit - ENTRY * ENTRY) / (2 * a);
            // The limit is reached inside a cell between two stations: half of it is open to doubt.
            assertThat(choice.lap().orElseThrow().limiter().time())
                    .as("final drive %s", choice.value())
                    .isCloseTo(Math.max(0, left / limit), within(0.5 * longestCell() / limit));
        }
    }

    private static double longestCell() {
        double[] s = straight(LENGTH).stations(StationSpacing.DEFAULT).s();
        double longest = 0;
        for (int i = 1; i < s.length; i++) {
            longest = Math.max(longest, s[i] - s[i - 1]);
        }
        return longest;
    }

    @Test
    void withoutTheLimiterTheLapIsThatOfOneThatIsNeverHeld() {
        for (GearingResult.Candidate choice : drives(LENGTH).choices()) {
            double difference = closedForm(choice.value(), LENGTH, Double.POSITIVE_INFINITY)
                    - closedForm(choice.value(), LENGTH, 1);
            assertThat(choice.lap().orElseThrow().limiter().without()).isCloseTo(difference, within(2 * TIME));
        }
    }

    @Test
    void topSpeedAndHeadroomAreThoseOfPlainMechanics() {
        GearingResult.GearedLap lap = drives(LENGTH).choices().get(0).lap().orElseThrow();
        double speed = Math.sqrt(ENTRY * ENTRY + 2 * FORCE_PER_RATIO * 4 / MASS * LENGTH);
        // The car's acceleration is even: rounding, and 0.3 rpm of it.
        assertThat(lap.top().speed()).isCloseTo(speed, within(1e-3));
        assertThat(lap.top().at()).isEqualTo(LENGTH);
        assertThat(lap.top().nextCorner()).isEmpty();
        // Rolling without slip: speed · 4 / 0.3 m in turns a minute.
        double rpm = speed * 4 / 0.3 * 30 / Math.PI;
        assertThat(lap.top().engineSpeed()).isCloseTo(rpm, within(0.3));
        assertThat(lap.headroom()).isCloseTo(60 * 5 / 0.3 * 30 / Math.PI - rpm, within(0.3));
    }

    @Test
    void aCarWithOneGearHasNoShiftsAndNoGearUnused() {
        GearingResult.GearedLap lap = drives(LENGTH).baseline();
        assertThat(lap.shifts()).isEmpty();
        assertThat(lap.gearsUnused()).isEmpty();
        assertThat(lap.topGearUnused()).isFalse();
        assertThat(lap.timeInGear()).hasSize(1);
        assertThat(lap.timeInGear()[0]).isCloseTo(lap.lapTime(), within(1e-9));
    }

    @Test
    void aTowTakesItsShareOfTheDrag() {
        // Drag 0.5 v² against 2000 N: the car is slower than without drag, and 30 % less drag is 30 % less area.
        Car dragging = PlainCar.ofMass(MASS).force(2000).topSpeed(60).drag(0.5).car();
        GearingResult result = Gearing.of(dragging, straight(LENGTH), Conditions.STANDARD)
                .withTow(0.3)
                .run();
        GearingResult.Scenario tow = result.scenarios().get(1);
        assertThat(tow.kind()).isEqualTo(GearingResult.Scenario.Kind.TOW);
        // Arithmetic on one number.
        assertThat(tow.car().value(Quantity.DRAG_AREA))
                .isCloseTo(0.7 * dragging.value(Quantity.DRAG_AREA), within(1e-9));
        assertThat(tow.baseline().lapTime())
                .isLessThan(result.asGiven().baseline().lapTime());
    }

    @Test
    void aHeadWindMeetsTheCarWhereItIsFastest() {
        // The straight leads east, so a wind against it comes from 90 degrees, one from behind from 270.
        Car dragging = PlainCar.ofMass(MASS).force(2000).topSpeed(60).drag(0.5).car();
        Gearing study = Gearing.of(dragging, straight(LENGTH), Conditions.STANDARD);
        GearingResult.Scenario against = study.withHeadWind(5).run().scenarios().get(1);
        assertThat(against.conditions().windFromDeg()).isCloseTo(90, within(1e-9));
        GearingResult.Scenario behind = study.withHeadWind(-5).run().scenarios().get(1);
        assertThat((behind.conditions().windFromDeg() + 360) % 360).isCloseTo(270, within(1e-9));
        assertThat(against.baseline().top().speed())
                .isLessThan(behind.baseline().top().speed());
    }

    @Test
    void aHeadWindAsksForAShorterFinalDriveThanATow() {
        // With more drag the car reaches a lower speed, and the shorter drive pulls harder there: common practice, no
        // source. On a long straight the best drive of many is no longer in the tow, no shorter against the wind.
        Car dragging = PlainCar.ofMass(MASS).force(2000).topSpeed(60).drag(0.5).car();
        GearingResult result = Gearing.of(dragging, straight(3000), Conditions.STANDARD)
                .over(SweepAxis.stepped("gearbox.finalDrive", 3, 8, 0.1))
                .withTow(0.4)
                .withHeadWind(10)
                .run();
        double tow = result.scenarios()
                .get(1)
                .fastest("gearbox.finalDrive")
                .orElseThrow()
                .value();
        double wind = result.scenarios()
                .get(2)
                .fastest("gearbox.finalDrive")
                .orElseThrow()
                .value();
        assertThat(wind).isGreaterThan(tow);
    }

    @Test
    void aCarWithoutAnAdjustmentIsTriedAboutItsOwnFinalDrive() {
        GearingResult result =
                Gearing.of(car(), straight(LENGTH), Conditions.STANDARD).run();
        SweepAxis axis = result.axes().get(0);
        assertThat(result.axes()).hasSize(1);
        assertThat(axis.name()).isEqualTo("gearbox.finalDrive");
        assertThat(axis.values()).contains(5).isSorted();
    }

    @Test
    void whatMovesNoGearIsRefused() {
        Gearing study = Gearing.of(car(), straight(LENGTH), Conditions.STANDARD);
        SweepAxis mass = new SweepAxis("chassis.massKg", new double[] {900});
        assertThatThrownBy(() -> study.over(mass))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("chassis.massKg");
    }

    @Test
    void ratiosThatDoNotFallAreRefusedBeforeAnyLap() {
        Car twoGears = PlainCar.ofMass(MASS).gears(2, 1).car();
        Gearing study = Gearing.of(twoGears, straight(LENGTH), Conditions.STANDARD)
                .over(new SweepAxis("gearbox.ratios.2", new double[] {2.5}));
        assertThatThrownBy(study::run).isInstanceOf(InvalidValueException.class).hasMessageContaining("gearbox.ratios");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.1, 0.9})
    void aTowThatIsNoShareIsRefused(double share) {
        Gearing study = Gearing.of(car(), straight(LENGTH), Conditions.STANDARD);
        assertThatThrownBy(() -> study.withTow(share))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("tow");
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.NEGATIVE_INFINITY, 50})
    void aHeadWindBeyondAllReasonIsRefused(double speed) {
        Gearing study = Gearing.of(car(), straight(LENGTH), Conditions.STANDARD);
        assertThatThrownBy(() -> study.withHeadWind(speed))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("head wind");
    }

    @Test
    void tractionFallsToNothingBeyondEachGearsLimit() {
        Car car = PlainCar.ofMass(MASS)
                .force(2000)
                .topSpeed(30)
                .gears(1, 0.5)
                .drag(0.5)
                .car();
        GearingResult.Traction traction =
                Gearing.of(car, straight(LENGTH), Conditions.STANDARD).run().traction();
        double[] speeds = traction.speeds();
        for (int i = 0; i < speeds.length; i++) {
            if (speeds[i] > 30.001) {
                assertThat(traction.forces().get(0)[i]).isNaN();
            } else {
                // By construction 2000 N; rounding only.
                assertThat(traction.forces().get(0)[i]).isCloseTo(2000, within(1e-6));
            }
            // Half the ratio, half the force; drag alone stands against it: the aero table is exact for an even area.
            assertThat(traction.forces().get(1)[i]).isCloseTo(1000, within(1e-6));
            assertThat(traction.resistance()[i]).isCloseTo(0.5 * speeds[i] * speeds[i], within(1e-6));
        }
    }

    @Test
    void theGearsOfTheSawJoinAtTheirShiftSpeeds() {
        Car car = PlainCar.ofMass(MASS)
                .force(2000)
                .topSpeed(30)
                .gears(1, 0.7, 0.5)
                .car();
        List<GearingResult.Gear> gears =
                Gearing.of(car, straight(LENGTH), Conditions.STANDARD).run().gears();
        assertThat(gears).hasSize(3);
        assertThat(gears.get(0).fromSpeed()).isZero();
        for (int i = 0; i + 1 < gears.size(); i++) {
            assertThat(gears.get(i).toSpeed()).isEqualTo(gears.get(i + 1).fromSpeed());
        }
        // 30 m/s in gear 1, so 60 in a gear of half its ratio, by construction.
        assertThat(gears.get(2).limitSpeed()).isCloseTo(60, within(1e-9));
        assertThat(gears.get(2).toSpeed()).isCloseTo(60, within(1e-9));
        assertThat(gears.get(2).overallRatio()).isEqualTo(2.5);
    }

    /** 1000 N in first gear up to 30 m/s, half of it in second up to 60 m/s: 1 and 0.5 m/s². */
    private static Car twoGears() {
        return PlainCar.ofMass(MASS)
                .friction(4)
                .brakes(9.80665 * MASS)
                .force(1000)
                .topSpeed(30)
                .gears(1, 0.5)
                .car();
    }

    private static GearingResult.GearedLap baseline(Car car, Track track) {
        return Gearing.of(car, track, Conditions.STANDARD).run().asGiven().baseline();
    }

    @Test
    void aShiftIsWhereAndWhenPlainMechanicsHasIt() {
        GearingResult.GearedLap lap = baseline(twoGears(), straight(LENGTH));
        assertThat(lap.shifts()).hasSize(1);
        GearingResult.Shift shift = lap.shifts().get(0);
        // From 20 to 30 m/s at 1 m/s²: 250 m, 10 s. Even acceleration, v² even over distance: half a millisecond.
        assertThat(shift.at()).isCloseTo(250, within(30 * TIME));
        assertThat(shift.time()).isCloseTo(10, within(TIME));
        assertThat(lap.timeInGear()[0]).isCloseTo(10, within(TIME));
        assertThat(shift.engineSpeedBefore()).isCloseTo(lap.limiter().revLimit(), within(1e-6));
        assertThat(shift.engineSpeedAfter()).isCloseTo(lap.limiter().revLimit() / 2, within(1e-6));
        assertThat(shift.timeToBraking()).isInfinite();
        assertThat(shift.brakingWithin(1e9)).isFalse();
    }

    @Test
    void theTimeFromAnUpshiftToBrakingIsThatOfPlainMechanics() {
        // At 400 m no more than 20 m/s are allowed; brakes of the car's own weight slow it at g and by nothing else.
        double end = 400;
        TrackPoint slow = new TrackPoint(end, 0, 0, 0, 0, 1, 5, 5, 20);
        TrackPoint last = new TrackPoint(end + 10, 0, 0, 0, 0, 1, 5, 5, 20);
        Track track =
                Track.open("to a limit", ENTRY, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(end, 0), slow, last));
        double g = PlainCar.GRAVITY;
        // v² = 900 + (s - 250) meets v² = 400 + 2 g (400 - s).
        double at = (400 + 2 * g * end - 900 + 250) / (1 + 2 * g);
        double speed = Math.sqrt(900 + at - 250);
        GearingResult.Shift shift = baseline(twoGears(), track).upshifts().get(0);
        // Braking begins inside a cell and is seen at its end.
        assertThat(shift.timeToBraking()).isCloseTo((speed - 30) / 0.5, within(longestCell() / 20));
        assertThat(shift.brakingWithin(shift.timeToBraking() + 1e-9)).isTrue();
        assertThat(shift.brakingWithin(shift.timeToBraking() - 1e-9)).isFalse();
    }

    @Test
    void anUpshiftInACornerIsSaidToBeInIt() {
        // A bend of 200 m radius from 100 to 500 m; at 30 m/s it asks for less than half a g of the four there are.
        Track track = new SegmentPath(
                        List.of(Segment.straight(100), Segment.arc(400, 200), Segment.straight(100)), false, 1)
                .openTrack("bend", ENTRY);
        GearingResult.GearedLap lap = baseline(twoGears(), track);
        assertThat(lap.upshiftsInCorners()).hasSize(1);
        assertThat(lap.upshiftsInCorners().get(0).corner().orElseThrow().number())
                .isEqualTo(1);
    }

    @Test
    void aTopGearThatIsNeverReachedIsUnused() {
        // Third gear is taken at 60 m/s, which 800 m do not give at 1 and 0.5 m/s².
        Car car = PlainCar.ofMass(MASS)
                .force(1000)
                .topSpeed(30)
                .gears(1, 0.5, 0.4)
                .car();
        GearingResult.GearedLap lap = baseline(car, straight(LENGTH));
        assertThat(lap.topGearUnused()).isTrue();
        assertThat(lap.gearsUsed()).containsExactly(1, 2);
        assertThat(lap.gearsUnused()).containsExactly(3);
        assertThat(lap.timeInGear()[2]).isZero();
    }

    @Test
    void timesInGearsAddUpToTheLapTimeRoundACircuit() {
        Segment bend = Segment.arc(Math.PI * 40, 40);
        Segment straight = Segment.straight(500);
        Track circuit = new SegmentPath(List.of(straight, bend, straight, bend), true, 1).closedTrack("oval", 1e-6);
        Car car = PlainCar.ofMass(MASS)
                .force(6000)
                .topSpeed(25)
                .gears(1, 0.7, 0.5, 0.4)
                .car();
        GearingResult.GearedLap lap =
                Gearing.of(car, circuit, Conditions.STANDARD).run().asGiven().baseline();
        // A sum of some hundred numbers.
        assertThat(DoubleStream.of(lap.timeInGear()).sum()).isCloseTo(lap.lapTime(), within(1e-9));
        // Two straights alike: the same shifts on both, as many down as up on a closed lap.
        assertThat(lap.shifts()).isNotEmpty();
        assertThat(lap.upshifts()).hasSize(lap.shifts().size() / 2);
        assertThat(lap.upshifts().size() % 2).isZero();
        assertThat(lap.upshifts()).allSatisfy(shift -> {
            assertThat(shift.corner()).isEmpty();
            assertThat(shift.timeToBraking()).isFinite().isPositive();
            assertThat(shift.engineSpeedAfter()).isLessThan(shift.engineSpeedBefore());
        });
    }
}
