package dev.lapwright.study.optimise;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Optima of cars whose best setup is known beforehand. */
class OptimisationTest {
    private static final Conditions DAY = Conditions.STANDARD;

    /** 2500 N and 50 m/s at the rev limit with a final drive of 5. */
    private static final PlainCar SLOW = PlainCar.ofMass(1000).force(2500).topSpeed(50);

    private static final Track OVAL = StudyCars.oval(500, 60);

    private static PlainCar powerful() {
        return PlainCar.ofMass(1000).power(150_000, 10, 90).drag(0.4);
    }

    private static Car winged() {
        return StudyCars.winged(powerful(), 0.05, 0.15, StudyCars.finalDrive(4, 7, 0.25));
    }

    /**
     * Time over a straight from rest with one gear and a force that the rev limit ends: with acceleration k·i and greatest
     * speed c/i for a final drive i it is c/(2 k i²) + L i/c, from the motion at even acceleration and then at even speed.
     */
    private static double closedForm(double ratio, double length) {
        double k = 2500.0 / 1000 / StudyCars.RATIO;
        double c = 50 * StudyCars.RATIO;
        return c / (2 * k * ratio * ratio) + length * ratio / c;
    }

    private static double bestRatio(double first, double last, double step, double length) {
        return DoubleStream.iterate(first, ratio -> ratio <= last + 1e-9, ratio -> ratio + step)
                .boxed()
                .min((a, b) -> Double.compare(closedForm(a, length), closedForm(b, length)))
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"1000", "600", "2500", "300"})
    void theBestFinalDriveOfAStraightIsThatOfTheClosedForm(double length) {
        Car car = StudyCars.with(SLOW, StudyCars.finalDrive(2, 9, 0.25));
        OptimisationResult result =
                Optimisation.of(car, StudyCars.straight(length), DAY).run();
        double expected = bestRatio(2, 9, 0.25, length);
        assertThat(result.best().settings().get(0)).isCloseTo(expected, within(1e-9));
        // The step where the limiter is met is solved to third order: some 0.1 ms.
        assertThat(result.best().lapTime()).isCloseTo(closedForm(expected, length), within(2e-3));
    }

    @Test
    void betweenTheStepsTheBestFinalDriveIsTheCubeRootOfTheClosedForm() {
        // dt/di = 0 at i³ = c²/(k L): 62500 / (0.5 · 1000) = 125.
        Car car = StudyCars.with(SLOW, StudyCars.finalDrive(2, 9, 0.7));
        OptimisationResult result =
                Optimisation.of(car, StudyCars.straight(1000), DAY).run();
        // The time is flat there: 0.1 in the ratio is 1.2 ms, about the gain for which the search goes on.
        assertThat(result.search().between().settings().get(0)).isCloseTo(5, within(0.1));
    }

    @Test
    void severalCircuitsCountByTheirWeights() {
        // The weighted sum of two closed forms is the closed form of the weighted mean length. Both straights are long
        // enough to meet the limiter: at the best ratio that takes half the mean length.
        Car car = StudyCars.with(SLOW, StudyCars.finalDrive(2, 9, 0.25));
        List<Optimisation.Circuit> circuits = List.of(
                new Optimisation.Circuit(StudyCars.straight(700), 3),
                new Optimisation.Circuit(StudyCars.straight(1500), 1));
        OptimisationResult result = Optimisation.of(car, circuits, DAY).run();
        assertThat(result.best().settings().get(0)).isCloseTo(bestRatio(2, 9, 0.25, 900), within(1e-9));
        assertThat(result.sectors()).hasSize(2);
    }

    @Test
    void aWingThatIsOnlyDragIsBestAtItsLeast() {
        Car car = StudyCars.winged(powerful(), 0.05, 0);
        assertThat(Optimisation.of(car, OVAL, DAY).run().best().settings()).containsExactly(0.0);
    }

    @Test
    void aWingThatIsOnlyDownforceIsBestAtItsMost() {
        Car car = StudyCars.winged(powerful(), 0, 0.05);
        assertThat(Optimisation.of(car, OVAL, DAY).run().best().settings()).containsExactly(10.0);
    }

    @Test
    void noLegalSettingOfAnExhaustiveSweepIsFaster() {
        Car car = winged();
        SweepResult sweep = Sweep.of(car, OVAL, DAY)
                .over(SweepAxis.stepped("wing", 0, 10, 1))
                .over(SweepAxis.stepped("final-drive", 4, 7, 0.25))
                .run();
        double least = sweep.fastest().orElseThrow().figures().orElseThrow().lapTime();
        OptimisationResult result = Optimisation.of(car, OVAL, DAY).run();
        // A setting worth less than half a thousandth stays where it was.
        assertThat(result.best().lapTime()).isBetween(least, least + 0.0005);
    }

    @Test
    void theFlatPartHoldsEverySetupOfTheSweepWithinItsBand() {
        Car car = winged();
        OptimisationResult result = Optimisation.of(car, OVAL, DAY).run();
        double band = result.best().lapTime() + LapTimeDifference.COUNTS;
        long expected = Sweep.of(car, OVAL, DAY)
                .over(SweepAxis.stepped("wing", 0, 10, 1))
                .over(SweepAxis.stepped("final-drive", 4, 7, 0.25))
                .run()
                .points()
                .stream()
                .filter(point ->
                        point.figures().isPresent() && point.figures().get().lapTime() <= band)
                .count();
        assertThat(result.nearOptimal().complete()).isTrue();
        assertThat(result.nearOptimal().setups()).hasSize((int) expected);
    }

    @Test
    void noSetupDrivenBeatsAnyOfTheFrontInBoth() {
        OptimisationResult result = Optimisation.of(winged(), OVAL, DAY).run();
        assertThat(result.nearOptimal().front()).hasSizeGreaterThan(2);
        for (OptimisationResult.Candidate front : result.nearOptimal().front()) {
            assertThat(result.search().met())
                    .noneMatch(point -> point.lapTime() < front.lapTime() && point.topSpeed() > front.topSpeed());
        }
    }

    @Test
    void noSetupOfAnExhaustiveSweepIsFasterThanTheFrontAtItsTopSpeed() {
        List<SweepResult.Point> all = Sweep.of(winged(), OVAL, DAY)
                .over(SweepAxis.stepped("wing", 0, 10, 1))
                .over(SweepAxis.stepped("final-drive", 4, 7, 0.25))
                .run()
                .points();
        for (OptimisationResult.Candidate front :
                Optimisation.of(winged(), OVAL, DAY).run().nearOptimal().front()) {
            double least = all.stream()
                    .flatMap(point -> point.figures().stream())
                    .filter(figures -> figures.topSpeed() >= front.topSpeed() - 1e-9)
                    .mapToDouble(LapFigures::lapTime)
                    .min()
                    .orElseThrow();
            // A thousandth: what a lap time is given to.
            assertThat(front.lapTime()).isBetween(least - 1e-9, least + 0.001);
        }
    }

    @Test
    void theNumberOfThreadsChangesNothing() {
        Car car = winged();
        Optimisation study = Optimisation.of(car, OVAL, DAY).within(OptimisationLimits.NONE.withTopSpeedKmh(200));
        OptimisationResult one = study.run(StudyRun.onThreads(1));
        OptimisationResult three = study.run(StudyRun.onThreads(3));
        assertThat(three.best()).isEqualTo(one.best());
        assertThat(three.nearOptimal()).isEqualTo(one.nearOptimal());
        assertThat(three.nearOptimal().front()).isEqualTo(one.nearOptimal().front());
        assertThat(three.search().met()).isEqualTo(one.search().met());
        assertThat(three.search().driven()).isEqualTo(one.search().driven());
    }

    @Test
    void aLeastTopSpeedIsKept() {
        Car car = winged();
        OptimisationResult free = Optimisation.of(car, OVAL, DAY).run();
        double wanted = 3.6 * free.best().topSpeed() + 2;
        OptimisationResult result = Optimisation.of(car, OVAL, DAY)
                .within(OptimisationLimits.NONE.withTopSpeedKmh(wanted))
                .run();
        assertThat(result.isMet()).isTrue();
        assertThat(3.6 * result.best().topSpeed()).isGreaterThanOrEqualTo(wanted);
        assertThat(result.best().lapTime()).isGreaterThan(free.best().lapTime());
    }

    @Test
    void aLimitThatNobodyKeepsIsNamedWithWhatTheBestMissed() {
        Car car = StudyCars.with(SLOW, StudyCars.finalDrive(4, 9, 0.5));
        // The rev limit ends every run at 250/4 m/s, or 225 km/h, at most.
        OptimisationResult result = Optimisation.of(car, StudyCars.straight(9000), DAY)
                .within(OptimisationLimits.NONE.withTopSpeedKmh(240))
                .run();
        assertThat(result.isMet()).isFalse();
        assertThat(result.best().settings()).containsExactly(4.0);
        OptimisationResult.Miss miss = result.misses().get(0);
        assertThat(miss.limit()).isEqualTo(OptimisationResult.Miss.Limit.TOP_SPEED);
        // A hundredth of a km/h: the limiter is met exactly but for rounding.
        assertThat(miss.shortfall()).isCloseTo(15, within(0.01));
        assertThat(miss.isKeptAlone()).isFalse();
        assertThat(result.nearOptimal().setups()).isEmpty();
    }

    @Test
    void theLimitBalanceIsKeptWithinItsBand() {
        Adjustment front = StudyCars.adjustment(
                "front-grip", 0.8, 1.2, 0.05, 1, new Effect.Absolute("tyres.front.frictionY", 0, 1));
        Car car = StudyCars.with(PlainCar.ofMass(1000), front);
        OptimisationResult result = Optimisation.of(car, OVAL, DAY)
                .within(OptimisationLimits.NONE.withBalancePercent(8, 12))
                .run();
        // Equal loads on both axles: the rear has 1 - front / 1 in reserve, 10 % at 0.9 but 5 % and 15 % a step away.
        assertThat(result.best().settings().get(0)).isCloseTo(0.9, within(1e-9));
        assertThat(result.missesBefore())
                .extracting(OptimisationResult.Miss::limit)
                .containsExactly(OptimisationResult.Miss.Limit.BALANCE_LEAST);
    }

    @Test
    void aLeastRideHeightIsKept() {
        Adjustment height = StudyCars.adjustment(
                "height", 50, 100, 10, 50, new Effect.Absolute("suspension.front.rideHeightMm", 0, 1));
        // Without downforce the ride height at speed is that at rest.
        OptimisationResult result = Optimisation.of(StudyCars.with(SLOW, height), StudyCars.straight(500), DAY)
                .within(OptimisationLimits.NONE.withRideHeightMm(75))
                .run();
        assertThat(result.isMet()).isTrue();
        assertThat(result.best().settings().get(0)).isGreaterThanOrEqualTo(80);
        assertThat(result.best().limited().rideHeightMm())
                .isCloseTo(result.best().settings().get(0), within(1e-6));
    }

    @Test
    void theUpshiftIsMovedOutOfTheCorner() {
        Track run =
                new SegmentPath(List.of(Segment.arc(150, 400), Segment.straight(300)), false, 1).openTrack("run", 25);
        // With 5 the shift comes at 30 m/s, 69 m into the bend; with 4 at 37.5 m/s, after (1406 - 625) / 3.2 = 244 m.
        Adjustment drive =
                StudyCars.adjustment("final-drive", 4, 5, 1, 5, new Effect.Absolute("gearbox.finalDrive", 0, 1));
        Car car = StudyCars.with(PlainCar.ofMass(1000).topSpeed(60).force(1000).gears(2, 1), drive);
        OptimisationResult result = Optimisation.of(car, run, DAY)
                .within(OptimisationLimits.NONE.withoutUpshifts())
                .run();
        assertThat(result.before().limited().upshiftsInCorners()).isEqualTo(1);
        assertThat(result.best().settings()).containsExactly(4.0);
        assertThat(result.best().limited().upshiftsInCorners()).isZero();
    }

    @Test
    void anAdjustmentWithOneLegalSettingIsLeftAloneAndSaid() {
        Adjustment fixed = StudyCars.adjustment("mast", 3, 3, 1, 3, new Effect.Relative("aero.cdAM2", 0.1));
        Car car = StudyCars.with(SLOW, fixed, StudyCars.finalDrive(3, 6, 0.5));
        OptimisationResult result =
                Optimisation.of(car, StudyCars.straight(1000), DAY).run();
        assertThat(result.search().axes())
                .extracting(OptimisationResult.Axis::name)
                .containsExactly("final-drive");
        assertThat(result.search().leftAlone())
                .containsExactly(new OptimisationResult.LeftAlone("mast", "it has one legal setting"));
    }

    @Test
    void dampersAreLeftAlone() {
        Adjustment knob =
                StudyCars.adjustment("knob", 0, 4, 1, 0, new Effect.Relative("suspension.front.fastBumpNsPerM", 300));
        Car car = StudyCars.with(SLOW, knob, StudyCars.finalDrive(3, 6, 0.5));
        Optimisation study = Optimisation.of(car, StudyCars.straight(1000), DAY);
        assertThat(study.run().search().leftAlone())
                .extracting(OptimisationResult.LeftAlone::name)
                .containsExactly("knob");
    }

    @Test
    void massIsSearchedOnlyWhenItIsNamed() {
        Adjustment ballast = StudyCars.adjustment("ballast", 0, 100, 50, 50, new Effect.Relative("chassis.massKg", 1));
        Car car = StudyCars.with(SLOW, ballast, StudyCars.finalDrive(3, 6, 0.5));
        Optimisation study = Optimisation.of(car, StudyCars.straight(1000), DAY);
        assertThat(study.run().search().leftAlone())
                .extracting(OptimisationResult.LeftAlone::name)
                .containsExactly("ballast");
        // Less mass is always faster here: a = F/m.
        assertThat(study.over(List.of("ballast")).run().best().settings()).containsExactly(0.0);
    }

    @Test
    void whatTheModelDoesNotSeeStaysWhereItWas() {
        Adjustment unseen = StudyCars.adjustment(
                "overrun", 0, 50, 10, 30, new Effect.Absolute("drive.rear.coastLockPercent", 0, 1));
        Car car = StudyCars.with(SLOW, unseen, StudyCars.finalDrive(3, 6, 0.5));
        OptimisationResult result = Optimisation.of(car, StudyCars.straight(1000), DAY)
                .over(List.of("overrun", "final-drive"))
                .run();
        assertThat(result.best().settings().get(0)).isEqualTo(30);
        assertThat(result.nearOptimal().ranges().get(0).matters()).isFalse();
        assertThat(result.nearOptimal().ranges().get(1).matters()).isTrue();
    }

    @Test
    void forTheWorstDayTheLeastGainIsAsLargeAsInAnyLegalSetup() {
        Car car = winged();
        SweepAxis grip = new SweepAxis("conditions.grip", new double[] {0.6, 1.1});
        OptimisationResult worst = Optimisation.of(car, OVAL, DAY)
                .inConditions(grip)
                .forTheWorstDay()
                .run();
        double best = Double.NEGATIVE_INFINITY;
        SweepResult sweep = Sweep.of(car, OVAL, DAY)
                .over(SweepAxis.stepped("wing", 0, 10, 1))
                .over(SweepAxis.stepped("final-drive", 4, 7, 0.25))
                .over(grip)
                .run();
        double[] before = Sweep.of(car, OVAL, DAY).over(grip).run().points().stream()
                .mapToDouble(point -> point.figures().orElseThrow().lapTime())
                .toArray();
        for (int i = 0; i < sweep.points().size(); i += 2) {
            double slippery = sweep.points().get(i).figures().orElseThrow().lapTime();
            double grippy = sweep.points().get(i + 1).figures().orElseThrow().lapTime();
            best = Math.max(best, Math.min(before[0] - slippery, before[1] - grippy));
        }
        double mean = 0.5 * (before[0] + before[1]);
        // A setting worth less than half a thousandth stays where it was.
        assertThat(mean - worst.best().cost()).isBetween(best - 0.0005, best + 1e-9);
        assertThat(worst.task().days()).hasSize(2);
    }

    @Test
    void theDifferencesOfTheSectorsAddUpToThatOfTheLap() {
        OptimisationResult result = Optimisation.of(winged(), OVAL, DAY).run();
        double sum = result.sectors().get(0).differences().stream()
                .mapToDouble(d -> d)
                .sum();
        // The same laps, summed in another order.
        assertThat(sum).isCloseTo(result.difference(result.best()), within(1e-9));
        assertThat(sum).isNegative();
    }

    @Test
    void theSetupFoundGivesTheLapTimeFound() {
        OptimisationResult result = Optimisation.of(winged(), OVAL, DAY).run();
        Car set = winged().with(result.setup("best", result.best()));
        double time = LapSolver.lap(set, OVAL, DAY).time();
        // Bit for bit the same car.
        assertThat(time).isEqualTo(result.best().lapTime());
    }

    @Test
    void aLimitOnCornersIsRefusedWhereThereAreNone() {
        Optimisation study = Optimisation.of(
                        StudyCars.with(SLOW, StudyCars.finalDrive(3, 6, 0.5)), StudyCars.straight(1000), DAY)
                .within(OptimisationLimits.NONE.withBalancePercent(-1, 1));
        assertThatThrownBy(study::run).isInstanceOf(InvalidValueException.class).hasMessageContaining("no corners");
    }

    @Test
    void unknownAndRepeatedNamesAreRefused() {
        Optimisation study = Optimisation.of(winged(), OVAL, DAY);
        assertThatThrownBy(() -> study.over(List.of("wnig")).run()).hasMessageContaining("perhaps you meant wing");
        assertThatThrownBy(() -> study.over(List.of("wing", "wing")).run()).hasMessageContaining("twice");
    }

    @Test
    void aCarWithoutAdjustmentsIsRefused() {
        assertThatThrownBy(() -> Optimisation.of(SLOW.car(), OVAL, DAY).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("no adjustments");
    }
}
