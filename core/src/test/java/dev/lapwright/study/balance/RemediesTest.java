package dev.lapwright.study.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.study.StudyCars;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class RemediesTest {
    private static Adjustment adjustment(String name, double min, double max, double standard, Effect... effects) {
        return new Adjustment(name, "", Unit.NONE, Adjustment.Range.stepped(min, max, 1, standard), List.of(effects));
    }

    private static final List<Adjustment> ADJUSTMENTS = List.of(
            adjustment("front-bar", 0, 4, 2, new Effect.Absolute(Quantity.BAR_FRONT.path(), 0, 300)),
            adjustment("rear-bar", 0, 4, 0, new Effect.Absolute(Quantity.BAR_REAR.path(), 0, 300)),
            adjustment("brake-balance", 50, 70, 62, new Effect.Absolute(Quantity.BRAKE_FRONT_SHARE.path(), 0, 1)),
            adjustment("diff-coast", 0, 4, 1, new Effect.Absolute(Quantity.COAST_LOCK_REAR.path(), 0, 15)),
            adjustment("rear-toe", 0, 4, 1, new Effect.Absolute(Quantity.TOE_REAR.path(), 0, 0.05)),
            adjustment("shift-time", 0, 4, 1, new Effect.Absolute(Quantity.SHIFT_TIME.path(), 0, 0.02)));

    private static Car car(List<Adjustment> adjustments) {
        Map<Quantity, Double> q = new EnumMap<>(StudyCars.rearDriven()
                .with(Quantity.COAST_LOCK_REAR, 15)
                .with(Quantity.BAR_FRONT, 600)
                .with(Quantity.TOE_REAR, 0.05)
                .with(Quantity.SHIFT_TIME, 0.02)
                .car()
                .quantities());
        TorqueCurve torque = new TorqueCurve(new double[] {0, 60_000}, new double[] {300, 300});
        return Car.of("c", "", q, Map.of(), new double[] {1}, torque, PowerCorrection.NONE, adjustments);
    }

    private static RemedyResult against(String complaint, Car car) {
        BalanceResult balance = Balance.of(LapSolver.lap(car, StudyCars.circuit(), Conditions.STANDARD))
                .run();
        return Remedies.against(
                        DriverWords.read(
                                        List.of(complaint),
                                        balance.lap().stations().corners(),
                                        false)
                                .complaints()
                                .get(0),
                        balance)
                .run();
    }

    private static RemedyResult against(String complaint) {
        return against(complaint, car(ADJUSTMENTS));
    }

    private static Optional<RemedyResult.Remedy> of(RemedyResult result, String name) {
        return result.remedies().stream()
                .filter(remedy -> remedy.adjustment().equals(name))
                .findFirst();
    }

    @Test
    void aStifferFrontBarIsGoodAgainstOversteer() {
        // Gillespie, Fundamentals of Vehicle Dynamics (1992), section 6.4: load transfer costs an axle grip.
        RemedyResult.Remedy remedy =
                of(against("oversteer:middle"), "front-bar").orElseThrow();
        assertThat(remedy.to()).isEqualTo(3);
        assertThat(remedy.gain()).isPositive();
    }

    @Test
    void aSofterFrontBarIsGoodAgainstUndersteer() {
        RemedyResult.Remedy remedy =
                of(against("understeer:middle"), "front-bar").orElseThrow();
        assertThat(remedy.to()).isEqualTo(1);
        assertThat(remedy.shifts().get(BalancePhase.MIDDLE)).isNegative();
    }

    @Test
    void moreCoastLockingIsGoodAgainstLiftOffOversteer() {
        // Common practice, no source.
        assertThat(of(against("oversteer:lift-off"), "diff-coast").orElseThrow().to())
                .isEqualTo(2);
    }

    @Test
    void brakeBalanceForwardIsGoodAgainstOversteerInTheEntryAndCalledForCaution() {
        // Common practice, no source.
        RemedyResult.Remedy remedy =
                of(against("oversteer:entry"), "brake-balance").orElseThrow();
        assertThat(remedy.to()).isEqualTo(63);
        assertThat(remedy.cautions()).containsExactly(Caution.BRAKES);
    }

    @Test
    void anAdjustmentAtItsEndMovesOneWayOnly() {
        assertThat(of(against("oversteer:middle"), "rear-bar")).isEmpty();
        assertThat(of(against("understeer:middle"), "rear-bar").orElseThrow().to())
                .isEqualTo(1);
    }

    @Test
    void whatActsOnNothingThereIsNotNamed() {
        assertThat(of(against("oversteer:middle"), "shift-time")).isEmpty();
        assertThat(of(against("oversteer:exit"), "brake-balance")).isEmpty();
    }

    /** Front toe-out sharpens the turn-in and a final drive is chosen for speed: neither is advised against a balance. Common practice, no source. */
    @Test
    void neitherToeNorGearingIsARemedy() {
        for (String complaint : List.of("oversteer:middle", "oversteer:entry", "understeer:entry", "oversteer:exit")) {
            RemedyResult result = against(complaint);
            assertThat(result.belowTheLimit())
                    .extracting(RemedyResult.Remedy::adjustment)
                    .doesNotContain("front-toe", "rear-toe", "final-drive", "shift-time");
            assertThat(result.remedies())
                    .extracting(RemedyResult.Remedy::adjustment)
                    .doesNotContain("final-drive", "shift-time");
        }
    }

    @Test
    void stepsThatCostNoTimeComeFirstThenTheBestPerTenth() {
        List<RemedyResult.Remedy> remedies = against("oversteer:entry").remedies();
        assertThat(remedies).hasSizeGreaterThan(2);
        for (int i = 1; i < remedies.size(); i++) {
            RemedyResult.Remedy better = remedies.get(i - 1);
            RemedyResult.Remedy worse = remedies.get(i);
            if (better.isFree() == worse.isFree()) {
                assertThat(better.isFree() ? better.gain() : better.gainPerTenth())
                        .isGreaterThanOrEqualTo(worse.isFree() ? worse.gain() : worse.gainPerTenth());
            } else {
                assertThat(better.isFree()).isTrue();
            }
        }
    }

    @Test
    void theLapTimeIsThatOfTheChangedCarsOwnLap() {
        Car car = car(ADJUSTMENTS);
        RemedyResult.Remedy remedy =
                of(against("oversteer:middle", car), "front-bar").orElseThrow();
        LapSolver solver = LapSolver.on(StudyCars.circuit());
        double difference = solver.lapTime(Vehicle.of(car.with("front-bar", 3), Conditions.STANDARD))
                - solver.lapTime(Vehicle.of(car, Conditions.STANDARD));
        // The same solver on the same stations: rounding of a difference.
        assertThat(remedy.difference()).isCloseTo(difference, within(1e-12));
    }

    @Test
    void aTenthIsTheMeasureOfTheRank() {
        RemedyResult.Remedy remedy = new RemedyResult.Remedy("x", 0, 1, 0.3, 0.05, Map.of(), List.of(), 0, Set.of());
        // 0.3 m/s² for half a tenth are 0.6 for a tenth. Rounding of doubles.
        assertThat(remedy.gainPerTenth()).isCloseTo(0.6, within(1e-12));
    }

    @Test
    void aPhaseWhoseLimitsPartFurtherIsDisturbed() {
        RemedyResult result = against("oversteer:entry");
        BalanceResult balance = Balance.of(LapSolver.lap(car(ADJUSTMENTS), StudyCars.circuit(), Conditions.STANDARD))
                .run();
        RemedyResult.Remedy bar = of(result, "front-bar").orElseThrow();
        for (BalancePhase phase : BalancePhase.values()) {
            double was = balance.understeer(phase);
            double is = was + bar.shifts().get(phase);
            boolean parts = phase != BalancePhase.ENTRY && Math.abs(is) >= Math.abs(was) + 0.05;
            assertThat(bar.disturbed().contains(phase)).as(phase.label()).isEqualTo(parts);
        }
    }

    @Test
    void aComplaintThatTheModelDoesNotShareIsSaidToBeSo() {
        RemedyResult understeer = against("understeer:middle");
        RemedyResult oversteer = against("oversteer:middle");
        assertThat(understeer.isConfirmed()).isNotEqualTo(oversteer.isConfirmed());
        assertThat(understeer.understeer()).isEqualTo(oversteer.understeer());
    }

    @Test
    void anAdjustmentWhoseQuantityIsSetOnItsOwnIsLeftAlone() {
        RemedyResult result = against("oversteer:middle", car(ADJUSTMENTS).with(Quantity.BAR_FRONT, 700));
        assertThat(of(result, "front-bar")).isEmpty();
        assertThat(result.failures()).singleElement().asString().startsWith("front-bar:");
    }

    @Test
    void aCarWithNothingToTurnIsRefused() {
        assertThatThrownBy(() -> against("oversteer:middle", car(List.of())))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("nothing to adjust");
    }

    @Test
    void theSameQuestionHasTheSameAnswer() {
        assertThat(against("oversteer:exit")).isEqualTo(against("oversteer:exit"));
    }
}
