package dev.lapwright.study.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.advice.AdviceResult.PracticeMove.View;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.ride.RideResult;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is advised helps in the model, and is held against common practice. */
class AdviceTest {
    private static Adjustment adjustment(String name, double standard, Quantity quantity, double perStep) {
        return new Adjustment(
                name,
                "",
                Unit.NONE,
                Adjustment.Range.stepped(0, 4, 1, standard),
                List.of(new Effect.Absolute(quantity.path(), 0, perStep)));
    }

    private static final Adjustment FRONT_BAR = adjustment("front-bar", 2, Quantity.BAR_FRONT, 300);
    private static final Adjustment REAR_BAR = adjustment("rear-bar", 0, Quantity.BAR_REAR, 300);
    private static final Adjustment COAST = adjustment("diff-coast", 1, Quantity.COAST_LOCK_REAR, 15);
    private static final Adjustment FUEL = adjustment("fuel", 2, Quantity.FUEL_MASS, 10);

    private static Car car(Adjustment... adjustments) {
        Map<Quantity, Double> q = new EnumMap<>(StudyCars.rearDriven()
                .with(Quantity.COAST_LOCK_REAR, 15)
                .with(Quantity.BAR_FRONT, 600)
                .car()
                .quantities());
        TorqueCurve torque = new TorqueCurve(new double[] {0, 60_000}, new double[] {300, 300});
        return Car.of("c", "", q, Map.of(), new double[] {1}, torque, PowerCorrection.NONE, List.of(adjustments));
    }

    private static AdviceResult advice(int draws, String said, Adjustment... adjustments) {
        BalanceResult balance = Balance.of(LapSolver.lap(car(adjustments), StudyCars.circuit(), Conditions.STANDARD))
                .run();
        DriverWords words =
                DriverWords.read(List.of(said), balance.lap().stations().corners(), false);
        return Advice.on(words, balance).withDraws(draws).run();
    }

    private static AdviceResult advice(String said) {
        return advice(0, said, FRONT_BAR, REAR_BAR, COAST, FUEL);
    }

    private static View view(AdviceResult advice, String move) {
        return advice.practice().stream()
                .filter(one -> one.move().equals(move))
                .findFirst()
                .orElseThrow()
                .view();
    }

    @Test
    void whatIsTurnedFirstHelpsAndCostsWhatItsLapCosts() {
        AdviceResult.Choice first = advice("loose in the middle").choices().get(0);
        assertThat(first.gains().get(0)).isGreaterThanOrEqualTo(Remedies.NOTHING);
        Car car = car(FRONT_BAR, REAR_BAR, COAST, FUEL);
        double before =
                LapSolver.lap(car, StudyCars.circuit(), Conditions.STANDARD).time();
        double after = LapSolver.lap(car.with(first.adjustment(), first.to()), StudyCars.circuit(), Conditions.STANDARD)
                .time();
        // Double precision.
        assertThat(first.difference()).isCloseTo(after - before, within(1e-9));
    }

    private static final Adjustment FRONT_SPRING = new Adjustment(
            "front-spring",
            "",
            Unit.NONE,
            Adjustment.Range.stepped(0, 4, 1, 2),
            List.of(new Effect.Relative(Quantity.SPRING_FRONT.path(), 20)));

    /** Common practice, no source: a bar is turned in a minute, springs take a corner-weight session. */
    @Test
    void aBarThatHelpsIsTurnedBeforeASpringThatHelpsMore() {
        AdviceResult advice = advice(0, "loose in the middle", FRONT_SPRING, FRONT_BAR);
        assertThat(advice.choices().stream().map(AdviceResult.Choice::adjustment))
                .containsExactly("front-bar", "front-spring");
        List<Double> gains =
                advice.choices().stream().map(choice -> choice.gains().get(0)).toList();
        assertThat(gains.get(1)).isGreaterThan(gains.get(0));
        assertThat(gains.get(0)).isGreaterThanOrEqualTo(Remedies.DISTURBING);
    }

    /** What nobody feels is no idea to try after another. */
    @Test
    void stepsThatAreHardlyFeltAreTriedOnlyWhereNoneIsFelt() {
        Adjustment weak = new Adjustment(
                "weak-bar",
                "",
                Unit.NONE,
                Adjustment.Range.stepped(0, 4, 1, 2),
                List.of(new Effect.Relative(Quantity.BAR_FRONT.path(), 100)));
        AdviceResult alone = advice(0, "loose in the middle", weak);
        assertThat(alone.choices()).hasSize(1);
        assertThat(alone.choices().get(0).gains().get(0)).isBetween(Remedies.NOTHING, Remedies.DISTURBING);
        AdviceResult among = advice(0, "loose in the middle", weak, FRONT_SPRING);
        assertThat(among.choices().stream().map(AdviceResult.Choice::adjustment))
                .containsExactly("front-spring");
    }

    /** Downforce goes with the square of speed; front wheels that are driven pull the nose in (common practice, no source). */
    @Test
    void practiceKnowsSpeedAndWhichAxleIsDriven() {
        BalanceComplaint push = new BalanceComplaint(true, BalancePhase.EXIT, 0);
        assertThat(words(Practice.against(push, false, false))).contains("less lock under drive");
        assertThat(words(Practice.against(push, false, true)))
                .contains("more lock under drive")
                .doesNotContain("less lock under drive");
        BalanceComplaint loose = new BalanceComplaint(false, BalancePhase.MIDDLE, 0);
        assertThat(words(Practice.against(loose, false, false))).contains("more rear wing", "less rake");
        assertThat(words(Practice.against(loose, true, false)))
                .contains("softer rear anti-roll bar")
                .doesNotContain("more rear wing", "less rake");
    }

    private static List<String> words(List<Practice> moves) {
        return moves.stream().map(Practice::words).toList();
    }

    @Test
    void noTwoIdeasTurnTheSameAndNoneTheFuel() {
        List<String> names = advice("loose in the middle, snaps when I lift").choices().stream()
                .map(AdviceResult.Choice::adjustment)
                .toList();
        assertThat(names).doesNotHaveDuplicates().doesNotContain("fuel").isNotEmpty();
    }

    /** Gillespie, Fundamentals of Vehicle Dynamics (1992), section 6.4: load transfer costs an axle grip; so do practice and model. */
    @Test
    void practiceAndModelAgreeOnAStifferFrontBarAgainstOversteer() {
        assertThat(view(advice("loose in the middle"), "stiffer front anti-roll bar"))
                .isEqualTo(View.AGREES);
    }

    @Test
    void whatStandsAtItsEndOrIsNotThereIsSaid() {
        AdviceResult advice = advice("loose in the middle");
        assertThat(view(advice, "softer rear anti-roll bar")).isEqualTo(View.NOT_THERE);
        assertThat(view(advice, "more rear wing")).isEqualTo(View.NOT_THERE);
    }

    @Test
    void whatHelpsAgainstAllComplaintsComesBeforeWhatHelpsAgainstOne() {
        AdviceResult advice = advice("loose in the middle, loose on entry");
        AdviceResult.Choice first = advice.choices().get(0);
        assertThat(first.gains())
                .hasSize(2)
                .allSatisfy(gain -> assertThat(gain).isGreaterThanOrEqualTo(Remedies.NOTHING));
    }

    @Test
    void aCarWithoutWhatWouldHelpHasNoChoiceButThePracticeIsSaid() {
        AdviceResult advice = advice(0, "loose in the middle", FUEL);
        assertThat(advice.choices()).isEmpty();
        assertThat(advice.practice())
                .isNotEmpty()
                .allSatisfy(move -> assertThat(move.view()).isEqualTo(View.NOT_THERE));
    }

    @Test
    void aCarWhoseWheelsAreNotKnownHasPracticeAloneAgainstAKerbAndThatIsSaid() {
        AdviceResult advice = advice("will not take the kerb");
        assertThat(advice.against()).isEmpty();
        assertThat(advice.choices()).isEmpty();
        assertThat(advice.overKerb().orElseThrow().now()).isEmpty();
        assertThat(advice.overKerb().orElseThrow().problem()).isNotBlank();
        assertThat(view(advice, "softer front anti-roll bar")).isEqualTo(View.UNSEEN);
    }

    private static final Map<Quantity, Double> WHEELS = Map.of(
            Quantity.UNSPRUNG_MASS_FRONT, 40.0,
            Quantity.SLOW_BUMP_FRONT, 5000.0,
            Quantity.FAST_BUMP_FRONT, 4000.0,
            Quantity.SLOW_REBOUND_FRONT, 7000.0,
            Quantity.UNSPRUNG_MASS_REAR, 45.0,
            Quantity.SLOW_BUMP_REAR, 5000.0,
            Quantity.SLOW_REBOUND_REAR, 7000.0);

    private static final Adjustment FAST_BUMP = new Adjustment(
            "fast-bump",
            "",
            Unit.NONE,
            Adjustment.Range.stepped(0, 4, 1, 2),
            List.of(new Effect.Relative(Quantity.FAST_BUMP_FRONT.path(), 400)));

    private static AdviceResult overKerb(Adjustment... adjustments) {
        return overKerb("will not take the kerb", adjustments);
    }

    private static AdviceResult overKerb(String said, Adjustment... adjustments) {
        Car bare = car();
        Map<Quantity, Double> quantities = new EnumMap<>(bare.quantities());
        quantities.putAll(WHEELS);
        Car car = Car.of(
                "c",
                "",
                quantities,
                Map.of(),
                bare.gearRatios(),
                bare.torqueCurve(),
                PowerCorrection.NONE,
                List.of(adjustments));
        BalanceResult balance = Balance.of(LapSolver.lap(car, StudyCars.circuit(), Conditions.STANDARD))
                .run();
        DriverWords words =
                DriverWords.read(List.of(said), balance.lap().stations().corners(), false);
        return Advice.on(words, balance).withDraws(0).run();
    }

    /** One law: the passes are those of the study of ride at the speed of the slowest corner. */
    @Test
    void aKerbIsDrivenOverAsTheStudyOfRideDoes() {
        AdviceResult advice = overKerb(FAST_BUMP, FRONT_BAR, FUEL);
        OverKerb over = advice.overKerb().orElseThrow();
        assertThat(over.problem()).isEmpty();
        double slowest = advice.balance().lap().corners().stream()
                .mapToDouble(corner -> corner.minimumSpeed())
                .min()
                .orElseThrow();
        assertThat(over.speed()).isEqualTo(slowest);
        RideResult ride = Ride.of(advice.car(), Conditions.STANDARD, slowest).run(StudyRun.onThreads(1));
        assertThat(over.now())
                .isEqualTo(ride.axles().stream().map(RideResult.Axle::kerb).toList());
        OverKerb.Step step = over.steps().get(0);
        RideResult with = Ride.of(advice.car().with(step.adjustment(), step.to()), Conditions.STANDARD, slowest)
                .run(StudyRun.onThreads(1));
        assertThat(step.passes())
                .isEqualTo(with.axles().stream().map(RideResult.Axle::kerb).toList());
        assertThat(OverKerb.variation(step.passes())).isLessThan(OverKerb.variation(over.now()));
    }

    /** That nothing strikes the kerb, for which a car is raised, the ride does not know: it says nothing of heights. */
    @Test
    void noCarIsLoweredForAKerb() {
        Adjustment height = new Adjustment(
                "height",
                "",
                Unit.NONE,
                Adjustment.Range.stepped(0, 4, 1, 2),
                List.of(new Effect.Relative(Quantity.RIDE_HEIGHT_FRONT.path(), 5)));
        AdviceResult advice = overKerb(height, FAST_BUMP);
        assertThat(advice.overKerb().orElseThrow().steps().stream().map(OverKerb.Step::adjustment))
                .doesNotContain("height");
        assertThat(view(advice, "more ride height")).isEqualTo(View.UNSEEN);
    }

    /** Load transfer costs an axle grip (Gillespie 1992, 6.4), and a stiff spring throws a wheel off a kerb: no front spring does both. */
    @Test
    void oneSpringAskedBothWaysIsSaidSo() {
        AdviceResult advice = overKerb("loose in the middle, will not take the kerb", FRONT_SPRING);
        AdviceResult.Choice choice = advice.choices().get(0);
        OverKerb.Step step = advice.overKerb().orElseThrow().steps().get(0);
        assertThat(choice.to()).isGreaterThan(choice.from());
        assertThat(step.to()).isLessThan(step.from());
        assertThat(choice.harsherOverKerb()).isPositive();
        assertThat(step.gains().get(0)).isNegative();
        assertThat(advice.bothWays())
                .containsExactly(new AdviceResult.BothWays("front-spring", choice.to(), step.to()));
    }

    @Test
    void whatDoesNotSpoilTheOtherComplaintComesFirst() {
        AdviceResult advice = overKerb("loose in the middle, will not take the kerb", FRONT_SPRING, COAST, FAST_BUMP);
        assertThat(advice.overKerb().orElseThrow().steps().stream().map(OverKerb.Step::adjustment))
                .containsExactly("fast-bump", "front-spring");
        // A bar that helps less than the spring does not touch the kerb.
        AdviceResult bar = overKerb("loose in the middle, will not take the kerb", FRONT_SPRING, FRONT_BAR);
        assertThat(bar.choices().get(0).adjustment()).isEqualTo("front-bar");
        assertThat(bar.choices().get(0).harsherOverKerb()).isZero();
    }

    /** No lap time moves with a damper, and a bar does not touch one wheel; fuel is not there for it. */
    @Test
    void aDamperEasesAKerbAtNoCostAndABarIsNotSeen() {
        AdviceResult advice = overKerb(FUEL, FRONT_BAR, FAST_BUMP);
        List<OverKerb.Step> steps = advice.overKerb().orElseThrow().steps();
        assertThat(steps.stream().map(OverKerb.Step::adjustment)).containsExactly("fast-bump");
        assertThat(steps.get(0).difference()).isZero();
        assertThat(view(advice, "softer front anti-roll bar")).isEqualTo(View.UNSEEN);
        View practice = view(advice, "softer front fast bump");
        assertThat(practice).isEqualTo(steps.get(0).to() < 2 ? View.AGREES : View.DISAGREES);
    }

    @Test
    void drawnCarsTellWhatItCosts() {
        AdviceResult.Choice first =
                advice(20, "loose in the middle", FRONT_BAR).choices().get(0);
        assertThat(first.doubt().map(one -> one.laps())).isEqualTo(Optional.of(20));
        assertThat(first.doubt().orElseThrow().low())
                .isLessThanOrEqualTo(first.doubt().orElseThrow().high());
    }

    @Test
    void tooFewDrawsAreRefused() {
        assertThatThrownBy(() -> advice(7, "loose in the middle", FRONT_BAR)).isInstanceOf(InvalidValueException.class);
    }

    /** The oval's corners have a radius of 60 m: at 160 km/h they would ask for 3.4 g of tyres that hold 1.4. */
    @Test
    void aKindOfCornerThatIsNotThereIsRefused() {
        BalanceResult balance = Balance.of(LapSolver.lap(car(FRONT_BAR), StudyCars.oval(500, 60), Conditions.STANDARD))
                .run();
        DriverWords words = DriverWords.read(
                List.of("loose in fast corners"), balance.lap().stations().corners(), false);
        assertThatThrownBy(() -> Advice.on(words, balance).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("none of fast corners");
    }

    /** One corner under two names. */
    @Test
    void aContradictionUnderTwoNamesIsRefusedWithTheCorner() {
        assertThatThrownBy(() -> advice("pushes in all corners, loose in T1"))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("in T1 contradict each other");
    }

    /** What lifts both ends by as much leaves the rake as it is. */
    @Test
    void rakeIsTurnedByWhatLeavesTheFrontWhereItIs() {
        assertThat(Practice.against(new BalanceComplaint(false, BalancePhase.LIFT_OFF, 0), false, false).stream()
                        .filter(move -> move.words().equals("less rake"))
                        .map(move -> List.of(
                                move.isMadeBy(List.of("suspension.rear.rideHeightMm")),
                                move.isMadeBy(
                                        List.of("suspension.front.rideHeightMm", "suspension.rear.rideHeightMm")))))
                .containsExactly(List.of(true, false));
    }
}
