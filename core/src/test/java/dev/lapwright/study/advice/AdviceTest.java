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
import dev.lapwright.study.advice.AdviceResult.PracticeMove.View;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.Remedies;
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
                DriverWords.read(List.of(said), balance.lap().stations().corners());
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
    void aKerbAloneIsAnsweredByPractice() {
        AdviceResult advice = advice("will not take the kerb");
        assertThat(advice.against()).isEmpty();
        assertThat(advice.choices()).isEmpty();
        assertThat(view(advice, "softer front anti-roll bar")).isEqualTo(View.UNSEEN);
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
                List.of("loose in fast corners"), balance.lap().stations().corners());
        assertThatThrownBy(() -> Advice.on(words, balance).run())
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("none of fast corners");
    }

    /** What lifts both ends by as much leaves the rake as it is. */
    @Test
    void rakeIsTurnedByWhatLeavesTheFrontWhereItIs() {
        assertThat(Practice.against(new BalanceComplaint(false, BalancePhase.LIFT_OFF, 0)).stream()
                        .filter(move -> move.words().equals("less rake"))
                        .map(move -> List.of(
                                move.isMadeBy(List.of("suspension.rear.rideHeightMm")),
                                move.isMadeBy(
                                        List.of("suspension.front.rideHeightMm", "suspension.rear.rideHeightMm")))))
                .containsExactly(List.of(true, false));
    }
}
