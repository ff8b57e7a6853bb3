package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;

class DayPlanTest {
    private static final DayPlan PLAN = DayPlan.fresh(0.3, 0.2, Evidence.DEFAULT);

    private static DayPlan.Option option(int runs, int laps) {
        return PLAN.options().stream()
                .filter(option -> option.runs() == runs && option.lapsPerRun() == laps)
                .findFirst()
                .orElseThrow();
    }

    private static String orderOfFour(double drift, double bend) {
        Evidence how = Evidence.DEFAULT.prior(Evidence.Prior.DEFAULT.drift(drift, bend));
        return DayPlan.fresh(0.3, 0.2, how).options().stream()
                .filter(option -> option.runs() == 4)
                .findFirst()
                .orElseThrow()
                .order();
    }

    @Test
    void ofFourRunsThatOrderIsTakenInWhichTheDriftFallsOut() {
        // Closed form: an even drift falls out of A-B-B-A at no cost; a bend as well only of A-B-A-B, by -1, 3, -3, 1.
        assertThat(orderOfFour(1, 0)).isEqualTo("ABBA");
        assertThat(orderOfFour(1, 1)).isEqualTo("ABAB");
    }

    @Test
    void moreRunsBuyMoreThanLongerOnes() {
        // 8 runs of 5 laps and 4 of 12 are 56 laps each, all told: runs differ, and only runs average that out.
        assertThat(option(8, 5).laps()).isEqualTo(option(4, 12).laps());
        assertThat(option(8, 5).half()).isLessThan(option(4, 12).half());
    }

    @Test
    void theChancePromisedIsThatOfDaysSimulated() {
        DayPlan plan = DayPlan.fresh(0.5, SimulatedDays.World.LAP, Evidence.DEFAULT);
        DayPlan.Option option = plan.options().stream()
                .filter(o -> o.runs() == 8 && o.lapsPerRun() == 8)
                .findFirst()
                .orElseThrow();
        int seen = 0;
        int days = 60;
        for (int d = 0; d < days; d++) {
            // Runs differ by the prior's median.
            SimulatedDays.World world = new SimulatedDays.World("", 0.15, 0.4, 0, 0, 0);
            TimingLog log = SimulatedDays.day(world, option.order(), 9, -0.5, d);
            seen += SimulatedDays.isAlarm(log) ? 1 : 0;
        }
        // 60 days: a deviation of at most 6.5 %, three of them, and one spread of runs for all that may be.
        assertThat((double) seen / days).isCloseTo(option.chance(), within(0.25));
    }

    @Test
    void theOptionRecommendedShowsTheChangeAndNoShorterOneDoes() {
        DayPlan plan = DayPlan.fresh(1, 0.2, Evidence.DEFAULT);
        DayPlan.Option best = plan.recommended().orElseThrow();
        assertThat(best.chance()).isGreaterThanOrEqualTo(DayPlan.CHANCE);
        assertThat(plan.options().stream().filter(option -> option.laps() < best.laps()))
                .allMatch(option -> option.chance() < DayPlan.CHANCE);
    }

    @Test
    void whatCannotBeShownIsNotPromised() {
        assertThat(DayPlan.fresh(0.01, 0.3, Evidence.DEFAULT).recommended()).isEmpty();
    }

    @Test
    void aTargetOrScatterThatIsNoneIsRefused() {
        assertThatThrownBy(() -> DayPlan.fresh(0, 0.2, Evidence.DEFAULT)).isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> DayPlan.fresh(0.2, Double.NaN, Evidence.DEFAULT))
                .isInstanceOf(InvalidValueException.class);
    }
}
