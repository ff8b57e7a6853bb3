package dev.lapwright.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Few days of each world, seeds fixed; {@link SimulatedDays} as a program draws thousands (docs/evidence.md). */
@Tag("heavy")
class CoverageTest {
    @Test
    void intervalsHoldTheTruthInEveryWorld() {
        double sum = 0;
        for (SimulatedDays.World world : SimulatedDays.WORLDS) {
            double once = SimulatedDays.coverage(world, 40, "ABAB", 8).once();
            // 95 % is meant; of 40 days a share of 93 % has a deviation of 4 %: three of them.
            assertThat(once).as(world.name()).isGreaterThanOrEqualTo(0.81);
            sum += once;
        }
        // Of 440 days 93 % has a deviation of 1.2 %; many worlds are kinder than the prior.
        assertThat(sum / SimulatedDays.WORLDS.size()).isGreaterThanOrEqualTo(0.93);
    }

    @Test
    void lookingAgainAfterMoreLapsDoesNotFindWhatIsNotThere() {
        for (SimulatedDays.World world : SimulatedDays.WORLDS) {
            // At most 5 % of 20 days: with 5 % more than four alarms are rarer than one in three hundred.
            assertThat(SimulatedDays.alarms(world, 20, "ABABBABA", 8))
                    .as(world.name())
                    .isLessThanOrEqualTo(0.2);
        }
    }
}
