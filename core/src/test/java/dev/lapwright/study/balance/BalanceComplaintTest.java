package dev.lapwright.study.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Corner;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BalanceComplaintTest {
    private static final List<Corner> CORNERS =
            List.of(new Corner(1, "", 0, 10, 20, true, 50), new Corner(2, "Far Bend", 100, 110, 120, false, 50));

    private static BalanceComplaint parse(String text) {
        return BalanceComplaint.parse(text, CORNERS);
    }

    @ParameterizedTest
    @CsvSource({
        "understeer:entry, true, ENTRY, 0",
        "oversteer exit, false, EXIT, 0",
        "push:mid, true, MIDDLE, 0",
        "Loose:Lift-Off:all, false, LIFT_OFF, 0",
        "oversteer:exit:T2, false, EXIT, 2",
        "oversteer:exit:1, false, EXIT, 1",
        "understeer middle far bend, true, MIDDLE, 2"
    })
    void itReadsTendencyPhaseAndCorner(String text, boolean understeer, BalancePhase phase, int corner) {
        assertThat(parse(text)).isEqualTo(new BalanceComplaint(understeer, phase, corner));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "slow:exit", "oversteer", "oversteer:", "oversteer:straight", "oversteer:exit:T3"})
    void whatIsNotKnownIsRefusedWithAnExampleOrTheCorners(String text) {
        assertThatThrownBy(() -> parse(text))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("complaint '" + text + "'")
                .hasMessageContaining("T");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "understeer:entry,oversteer:exit",
                "understeer:entry and exit",
                "understeer entry, exit",
                "push:mid; loose:exit"
            })
    void severalAtOnceAreRefusedWithTheReason(String text) {
        assertThatThrownBy(() -> parse(text))
                .isInstanceOf(InvalidValueException.class)
                .hasMessage("complaint '" + text + "': it holds more than one complaint; ask for one at a time: what"
                        + " helps against one may make another worse");
    }

    @Test
    void itIsSaidAsPeopleSayIt() {
        assertThat(parse("oversteer:exit").label()).isEqualTo("oversteer on exit");
        assertThat(parse("push:mid").label()).isEqualTo("understeer in the middle");
        assertThat(parse("loose:lift-off").label()).isEqualTo("oversteer at lift-off");
    }
}
