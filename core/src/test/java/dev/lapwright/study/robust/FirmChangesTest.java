package dev.lapwright.study.robust;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Which changes of a best setup are left out, and in which order, on intervals by hand. */
class FirmChangesTest {
    private static final Car CAR = StudyCars.winged(
            PlainCar.ofMass(1050).force(4000).topSpeed(55).drag(0.4),
            0.2,
            0.15,
            StudyCars.adjustment(
                    "final-drive", 4, 7, 0.25, StudyCars.RATIO, new Effect.Absolute("gearbox.finalDrive", 0, 1)),
            StudyCars.adjustment("ballast", 1000, 1100, 50, 1050, new Effect.Absolute("chassis.massKg", 0, 1)));

    private static final OptimisationResult BEST = Optimisation.of(CAR, StudyCars.oval(500, 60), Conditions.STANDARD)
            .over(List.of("wing", "final-drive", "ballast"))
            .run();

    /** Standings of 30 drawn cars: of the whole, then of the changes, a median and the number that gain. */
    private static RobustnessResult drawn(double[]... middlesAndGains) {
        List<RobustnessResult.Standing> standings = new ArrayList<>();
        standings.add(standing(-1, 30));
        for (double[] one : middlesAndGains) {
            standings.add(standing(one[0], (int) one[1]));
        }
        return new RobustnessResult(30, 30, 1, List.of(), standings, standing(0, 0), 0, List.of(), 1, Optional.empty());
    }

    private static RobustnessResult.Standing standing(double middle, int gains) {
        return new RobustnessResult.Standing(30, middle - 0.1, middle, middle + 0.1, gains, 0, 0);
    }

    private static List<String> names(List<OptimisationResult.Range> ranges) {
        return ranges.stream().map(OptimisationResult.Range::name).toList();
    }

    @Test
    void oneIsLeftOutAtATimeAndThatIsTheWeakest() {
        FirmChanges all = FirmChanges.all(BEST);
        // All three are worth turning on this oval: SuggestionTest shows it of wing and final drive, less mass is
        // always faster.
        assertThat(names(all.kept())).containsExactly("wing", "final-drive", "ballast");
        double[] weak = {-0.04, 29};
        double[] weaker = {-0.02, 16};
        double[] firm = {-0.2, 28};
        FirmChanges two = all.without(drawn(weak, weaker, firm)).orElseThrow();
        assertThat(names(two.kept())).containsExactly("wing", "ballast");
        assertThat(two.leftOut().get(0).range().name()).isEqualTo("final-drive");
        assertThat(two.leftOut().get(0).standing().gains()).isEqualTo(16);
        // In its place the other weak one is worth something, and stands.
        assertThat(two.without(drawn(firm, firm))).isEmpty();
        assertThat(two.car().setting("final-drive")).isEqualTo(StudyCars.RATIO);
        assertThat(two.car().setting("wing")).isNotEqualTo(CAR.setting("wing"));
    }

    @Test
    void aGainOnTooFewCarsOrTooSmallInTheMiddleIsNone() {
        double[] firm = {-0.2, 28};
        FirmChanges all = FirmChanges.all(BEST);
        assertThat(all.without(drawn(firm, firm, firm))).isEmpty();
        // Two in three of 30 are 20.
        assertThat(all.without(drawn(firm, new double[] {-0.2, 19}, firm))).isPresent();
        assertThat(all.without(drawn(firm, new double[] {-0.2, 20}, firm))).isEmpty();
        assertThat(all.without(drawn(firm, new double[] {-0.049, 30}, firm))).isPresent();
    }

    @Test
    void eachIsHeldAgainstWhatIsKeptWithoutIt() {
        FirmChanges two = FirmChanges.all(BEST)
                .without(drawn(new double[] {-0.2, 30}, new double[] {0, 0}, new double[] {-0.2, 30}))
                .orElseThrow();
        RobustnessResult result = two.asked(Robustness.of(CAR, StudyCars.oval(500, 60), Conditions.STANDARD))
                .withDraws(20)
                .run();
        // The whole, then without each of the two.
        assertThat(result.standings()).hasSize(3);
        assertThat(result.asked()).isZero();
        // Less mass is faster on every car.
        assertThat(result.standings().get(2).gains()).isEqualTo(20);
    }
}
