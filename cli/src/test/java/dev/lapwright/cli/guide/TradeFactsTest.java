package dev.lapwright.cli.guide;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What everybody in the paddock knows, asked of the demo cars and circuits. All of it common practice, no source. */
class TradeFactsTest {
    /** Of a driver's laps on one setup, s. */
    private static final double SCATTER = 0.3;

    private static SweepResult wing(String car, String circuit) {
        return Sweep.of(Documents.car(car), Documents.circuit(circuit), Conditions.STANDARD)
                .over(new SweepAxis(
                        "rear-wing",
                        Documents.car(car).adjustment("rear-wing").legalSettings().stream()
                                .mapToDouble(s -> s)
                                .toArray()))
                .run();
    }

    private static double best(String car, String circuit) {
        SweepResult.Point fastest = wing(car, circuit).fastest().orElseThrow();
        return fastest.settings().get(0);
    }

    /** What the whole wing costs over the best one, s. */
    private static double tooMuch(String car, String circuit) {
        SweepResult sweep = wing(car, circuit);
        SweepResult.Point whole = sweep.points().get(sweep.points().size() - 1);
        return whole.figures().orElseThrow().lapTime()
                - sweep.fastest().orElseThrow().figures().orElseThrow().lapTime();
    }

    @Test
    void atAShortTwistyCircuitTheWholeWingOfATouringCarIsLostInADriversScatter() {
        SweepResult sweep = wing("touring-merrow", "harrowmere");
        double range = sweep.points().stream()
                        .mapToDouble(p -> p.figures().orElseThrow().lapTime())
                        .max()
                        .orElseThrow()
                - sweep.fastest().orElseThrow().figures().orElseThrow().lapTime();
        assertThat(range).isLessThan(SCATTER);
    }

    @Test
    void noAfternoonShowsThatWing() {
        SensitivityResult.Worth wing = Sensitivity.of(
                        Documents.car("touring-merrow"), Documents.circuit("harrowmere"), Conditions.STANDARD)
                .withScatter(SCATTER)
                .run()
                .worths()
                .stream()
                .filter(worth -> worth.adjustment().name().equals("rear-wing"))
                .findFirst()
                .orElseThrow();
        // More than a hundred laps of each setup are more than any afternoon has.
        assertThat(wing.lapsToSee()).isGreaterThan(100);
    }

    /** The touring car's small wing is best at its least everywhere. */
    @ParameterizedTest
    @CsvSource({"skarnfell", "harrowmere"})
    void atAFastCircuitTheBestWingIsLower(String slowCircuit) {
        assertThat(best("gt-talvex", "castelvane")).isLessThan(best("gt-talvex", slowCircuit));
    }

    @ParameterizedTest
    @CsvSource({
        "gt-talvex, skarnfell",
        "gt-talvex, harrowmere",
        "touring-merrow, harrowmere",
        "touring-merrow, skarnfell"
    })
    void atAFastCircuitTooMuchWingCostsMore(String car, String slowCircuit) {
        assertThat(tooMuch(car, "castelvane")).isGreaterThan(tooMuch(car, slowCircuit));
    }
}
