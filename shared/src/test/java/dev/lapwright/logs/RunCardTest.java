package dev.lapwright.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentSource;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Runs of a card for logs that do not say what was set. */
class RunCardTest {
    /** Two tests to drive and one for which there were no laps. */
    private static final String BRIEF = """
            {"lapwright": "brief/2", "tests": {"runs": [
              {"fate": "drive", "changes": [{"name": "wing", "to": 5.0}]},
              {"fate": "drive", "changes": [{"name": "bar", "to": 2.5}, {"name": "rake", "to": -1}]},
              {"fate": "laps used up", "changes": [{"name": "height", "to": 60}]}]}}
            """;

    private static RunCard card(String text) {
        return RunCard.read(new DocumentSource("brief.json", text));
    }

    private static LapLogFile log(String text) {
        return LapLogs.read(new DocumentSource("laps.csv", text));
    }

    /** As the card is printed: each test on top of those before it, and what was there before it back afterwards. */
    @Test
    void theRunsAreThoseOfTheCardInItsOrder() {
        assertThat(card(BRIEF).setups()).containsExactly("base", "wing=5", "base", "wing=5,bar=2.5,rake=-1", "wing=5");
    }

    @Test
    void aLogWithoutSetupsTakesThemRunByRun() {
        RunCard card = new RunCard("brief.json", List.of("base", "wing=5", "base"));
        LapLogFile named =
                card.naming(log("time,flag\n1:40,out\n1:30.1,\n1:41,out\n1:29.9,\n1:29.8,in\n1:39,out\n1:30.2,\n"));
        assertThat(named.log().laps().stream().map(lap -> lap.setup()))
                .containsExactly("base", "base", "wing=5", "wing=5", "wing=5", "base", "base");
        assertThat(named.log().runs()).isEqualTo(3);
    }

    @Test
    void anotherNumberOfRunsIsRefusedWithBothNumbersAndTheCard() {
        RunCard card = new RunCard("brief.json", List.of("base", "wing=5", "base"));
        assertThatThrownBy(() -> card.naming(log("time,flag\n1:40,out\n1:30.1,\n1:41,out\n1:29.9,\n")))
                .isInstanceOf(LapwrightException.class)
                .hasMessageContaining("2 runs")
                .hasMessageContaining("3: base; wing=5; base");
    }

    @Test
    void aLogThatNamesItsSetupsNeedsNoCard() {
        RunCard card = new RunCard("brief.json", List.of("base", "wing=5", "base"));
        assertThatThrownBy(() -> card.naming(log("time,setup\n1:30.1,old\n1:29.9,new\n1:30.0,old\n")))
                .isInstanceOf(LapwrightException.class)
                .hasMessageContaining("leave --card out");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "~~|empty",
                "[1]|no brief",
                "{\"lapwright\": \"lap/1\"}|no brief",
                "{\"lapwright\": \"brief/2\", \"tests\": {\"missing\": \"no change\"}}|no run",
                "{\"lapwright\": \"brief/2\"|brief.json"
            })
    void whatIsNoCardIsRefused(String text, String told) {
        assertThatThrownBy(() -> card(text))
                .isInstanceOf(LapwrightException.class)
                .hasMessageContaining(told);
    }
}
