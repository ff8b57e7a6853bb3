package dev.lapwright.study.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.balance.BalanceComplaint.CornerKind;
import dev.lapwright.track.Corner;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What drivers say means what the trade means by it (common practice, no source). */
class DriverWordsTest {
    private static final List<Corner> CORNERS =
            List.of(new Corner(1, "", 0, 10, 20, true, 50), new Corner(2, "Far Bend", 100, 110, 120, false, 50));

    private static DriverWords read(String... texts) {
        return DriverWords.read(List.of(texts), CORNERS, false);
    }

    @ParameterizedTest
    @CsvSource({
        "understeer:entry, true, ENTRY, 0, ALL",
        "oversteer exit, false, EXIT, 0, ALL",
        "push:mid, true, MIDDLE, 0, ALL",
        "Loose:Lift-Off:all, false, LIFT_OFF, 0, ALL",
        "oversteer:exit:T2, false, EXIT, 2, ALL",
        "oversteer:exit:1, false, EXIT, 1, ALL",
        "understeer middle far bend, true, MIDDLE, 2, ALL",
        "loose on power out of T2, false, EXIT, 2, ALL",
        "out of T2 on power it is loose, false, EXIT, 2, ALL",
        "runs wide out of T2, true, EXIT, 2, ALL",
        "tail out of T2, false, EXIT, 2, ALL",
        "pushes into T2, true, ENTRY, 2, ALL",
        "snaps when I lift into T2, false, LIFT_OFF, 2, ALL",
        "It is loose on the throttle, false, EXIT, 0, ALL",
        "pushes in long corners, true, MIDDLE, 0, LONG",
        "The car pushes on entry in slow corners, true, ENTRY, 0, SLOW",
        "snaps when I lift, false, LIFT_OFF, 0, ALL",
        "won't turn in, true, MIDDLE, 0, ALL",
        "the rear steps out under braking at Far Bend, false, ENTRY, 2, ALL",
        "wheelspin, false, EXIT, 0, ALL",
        "no traction out of slow corners, false, EXIT, 0, SLOW",
        "rear locks under braking, false, ENTRY, 0, ALL",
        "no front grip in T1, true, MIDDLE, 1, ALL",
        "tail-happy on the brakes, false, ENTRY, 0, ALL",
        "snaps loose on exit, false, EXIT, 0, ALL",
        "tight at the apex of fast ones, true, MIDDLE, 0, FAST",
        "loose off the throttle, false, LIFT_OFF, 0, ALL"
    })
    void itReadsTendencyPhaseAndPlace(
            String text, boolean understeer, BalancePhase phase, int corner, CornerKind kind) {
        assertThat(read(text).complaints()).containsExactly(new BalanceComplaint(understeer, phase, corner, kind));
    }

    /** The wheels that are driven spin. */
    @Test
    void wheelspinIsOfTheDrivenAxle() {
        assertThat(DriverWords.read(List.of("wheelspin out of T2"), CORNERS, true)
                        .complaints())
                .containsExactly(new BalanceComplaint(true, BalancePhase.EXIT, 2));
        assertThat(DriverWords.read(List.of("spins out of T2"), CORNERS, true).complaints())
                .containsExactly(new BalanceComplaint(false, BalancePhase.EXIT, 2));
    }

    @Test
    void severalAtOnceAreRead() {
        List<BalanceComplaint> both = List.of(
                new BalanceComplaint(true, BalancePhase.ENTRY, 0), new BalanceComplaint(false, BalancePhase.EXIT, 2));
        assertThat(read("pushes on entry, loose on power out of T2").complaints())
                .isEqualTo(both);
        assertThat(read("pushes on entry and loose on power out of T2").complaints())
                .isEqualTo(both);
        assertThat(read("understeer:entry", "oversteer:exit:T2").complaints()).isEqualTo(both);
        assertThat(read("understeer entry and exit").complaints())
                .containsExactly(
                        new BalanceComplaint(true, BalancePhase.ENTRY, 0),
                        new BalanceComplaint(true, BalancePhase.EXIT, 0));
    }

    @Test
    void whatIsLeftOutIsTakenToBeMeantAndSaid() {
        assertThat(read("pushes").complaints()).containsExactly(new BalanceComplaint(true, BalancePhase.MIDDLE, 0));
        assertThat(read("pushes").assumed()).hasSize(1);
        assertThat(read("pushes on entry").assumed()).isEmpty();
    }

    @Test
    void aKerbIsNoMatterOfBalance() {
        DriverWords words = read("will not take the kerb at T2");
        assertThat(words.kerb()).isTrue();
        assertThat(words.complaints()).isEmpty();
        assertThat(read("won't take the kerbs, pushes on entry").complaints()).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|which end slides",
                "slow:exit|which end slides",
                "wobbly at exit|'wobbly' is not understood",
                "oversteer:straight|'straight' is not understood",
                "oversteer:exit:T3|no corner 't3'",
                "loose on power out of T99|take T1 to T2",
                "the kerb at Nowhere|'nowhere' is not understood"
            })
    void whatIsNotKnownIsRefusedWithWhatMayBeSaid(String text, String told) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("complaint '" + text + "'")
                .hasMessageContaining(told);
    }

    @ParameterizedTest
    @ValueSource(strings = {"pushes on entry, loose on entry", "push:exit:T1; loose:exit:T1"})
    void complaintsThatContradictEachOtherAreRefusedWithWhatTheyCouldMean(String text) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("contradict each other")
                .hasMessageContaining("say which comes first");
    }

    @Test
    void theOppositeElsewhereIsNoContradiction() {
        assertThat(read("pushes in T1, loose in T2").complaints()).hasSize(2);
        assertThat(read("pushes on entry, loose on exit").complaints()).hasSize(2);
    }

    @Test
    void itIsSaidAsPeopleSayIt() {
        assertThat(read("oversteer:exit").complaints().get(0).label()).isEqualTo("oversteer on exit");
        assertThat(read("push:mid").complaints().get(0).label()).isEqualTo("understeer in the middle");
        assertThat(read("loose:lift-off").complaints().get(0).label()).isEqualTo("oversteer at lift-off");
        assertThat(read("loose:exit:T2").complaints().get(0).where()).isEqualTo("T2");
    }
}
