package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EvidenceCommandTest {
    private static final String DEMO = "castelvane-wings.csv";

    @TempDir
    private Path folder;

    private static Run evidence(String... arguments) {
        return Run.of(Stream.concat(Stream.of("evidence"), Stream.of(arguments)).toArray(String[]::new));
    }

    private static Map<String, Object> json(String... arguments) {
        Run run = evidence(
                Stream.concat(Stream.of(arguments), Stream.of("--json")).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return JsonTree.object(run.out());
    }

    private static Map<String, Object> comparison(String... arguments) {
        return JsonTree.object(json(arguments), "comparison");
    }

    private static final String[] MODEL = {
        DEMO, "--change", "rear-wing=2:6", "--car", "gt-talvex", "--circuit", "castelvane"
    };

    @Test
    void theModelPredictsWhatTheLapModelSays() {
        Car car = Documents.car("gt-talvex");
        LapSolver solver = LapSolver.on(LineSearch.of(Documents.circuit("castelvane"), car, LineChoices.DEFAULT)
                .smoothest()
                .driven());
        double difference = solver.lapTime(Vehicle.of(car.with("rear-wing", 6), Conditions.STANDARD))
                - solver.lapTime(Vehicle.of(car.with("rear-wing", 2), Conditions.STANDARD));
        // Written in millionths of a second at the coarsest.
        Map<String, Object> seen = comparison(MODEL);
        assertThat(JsonTree.number(seen, "differencePredictedS")).isCloseTo(difference, within(1e-6));
        // Its doubt is what compare prints: 90 % of a normal distribution lie within 1.645 standard deviations (its
        // tables).
        Map<String, Object> compared = JsonTree.object(Run.of(
                        "compare",
                        "gt-talvex",
                        "castelvane",
                        "--set",
                        "rear-wing=2",
                        "--against",
                        "rear-wing=6",
                        "--json")
                .out());
        double half =
                0.5 * (JsonTree.number(compared, "differenceHighS") - JsonTree.number(compared, "differenceLowS"));
        assertThat(JsonTree.number(seen, "predictedDoubtS")).isCloseTo(half / 1.645, within(1e-6));
        assertThat(JsonTree.number(seen, "predictedOnDrawnCars")).isEqualTo(60);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--change rear-wing=2:6 | no car or no circuit",
                "--car gt-talvex | say nothing without a change",
                "--change rear-wing --car gt-talvex --circuit castelvane | it is no change",
                "--change rear-wing=2:99 --car gt-talvex --circuit castelvane | outside the range",
                "--change wing=2:9 --car gt-talvex --circuit castelvane | wing",
                "--predicted-s 1 --change rear-wing=2:6 --car gt-talvex --circuit castelvane | asked of the model too"
            })
    void aPredictionThatCannotBeMadeIsOneClearLine(String options, String told) {
        Run run = evidence((DEMO + " " + options).split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).contains(told);
    }

    private String log(String text) throws IOException {
        Path file = folder.resolve("laps.csv");
        Files.writeString(file, text.replace('/', '\n'));
        return file.toString();
    }

    /** Two setups, an out lap each, as many clean laps, and a gain, s. */
    private String test(int laps, double gain) throws IOException {
        double[] scatter = {0.11, -0.17, 0.05, 0.21, -0.12, 0.02, -0.08, 0.15, -0.2, 0.03};
        StringBuilder text = new StringBuilder("lap,time,setup,flag\n");
        int number = 0;
        for (String setup : List.of("old", "new")) {
            text.append(++number).append(",120,").append(setup).append(",out\n");
            for (int i = 0; i < laps; i++) {
                double time = 90 + scatter[(i + (setup.equals("new") ? 3 : 0)) % 10] - (setup.equals("new") ? gain : 0);
                text.append(++number)
                        .append(',')
                        .append(time)
                        .append(',')
                        .append(setup)
                        .append(",\n");
            }
        }
        return log(text.toString());
    }

    private static Map<String, Object> difference(String... arguments) {
        return JsonTree.objects(comparison(arguments), "differences").get(0);
    }

    @Test
    void theDemoHoldsTheGainThatWasPutIntoIt() {
        // tracks-demo/README.md: the flatter wing was made 0.3 s slower, apart from drift.
        Map<String, Object> difference = difference(DEMO);
        assertThat(difference).containsEntry("assumption", "day");
        assertThat(JsonTree.number(difference, "differenceLowS")).isLessThan(-0.3);
        assertThat(JsonTree.number(difference, "differenceHighS")).isGreaterThan(-0.3);
    }

    @Test
    void aGainFarBeyondWhatRunsDifferByIsCalledReal() throws IOException {
        assertThat(evidence(test(8, 4)).line("Real:")).contains("new is faster than old by");
    }

    @Test
    void oneRunOfEachAsksForMore() throws IOException {
        String out = evidence(test(8, 0.3)).out().replaceAll("\\s+", " ");
        assertThat(out)
                .contains(
                        "Not decided:", "leans on what is supposed", "only running old again can tell", "more runs of");
    }

    @Test
    void aPredictionMuchLargerThanAllThatRunsDifferByIsRuledOut() throws IOException {
        assertThat(evidence(test(10, 0), "--predicted-s", "-4").out().replaceAll("\\s+", " "))
                .contains("Smaller than looked for:", "one of 4.00 s is not there");
    }

    @Test
    void predictionAndLapsAreWeighedTogether() {
        Map<String, Object> seen = comparison(DEMO, "--predicted-s", "-0.28", "--predicted-doubt-s", "0.05");
        // Nearer to the prediction than to the laps, which are known less well.
        assertThat(JsonTree.number(seen, "differenceTogetherS")).isCloseTo(-0.28, within(0.03));
        assertThat(JsonTree.number(seen, "togetherDoubtS")).isLessThan(0.05);
    }

    @Test
    void ofAThreeLapLogTooFewLapsIsSaid() throws IOException {
        assertThat(evidence(log("lap,time,setup/1,90.1,A/2,90.2,A/3,90.0,B")).line("Too few laps to tell:"))
                .contains("1 clean with A and 0 with B");
    }

    @Test
    void oneSetupHasNothingToCompareWith() throws IOException {
        Run run = evidence(log("time/90.1/90.2/90.3/90.15"));
        assertThat(run.code()).isZero();
        assertThat(run.line("Nothing to compare:")).contains("one setup");
    }

    @Test
    void theSetupsCanBeTurnedRound() {
        double there = JsonTree.number(difference(DEMO), "differenceS");
        double back =
                JsonTree.number(difference(DEMO, "--before", "rear-wing=7", "--after", "rear-wing=2"), "differenceS");
        // The same parts, mirrored; rounding.
        assertThat(back).isCloseTo(-there, within(1e-9));
    }

    @Test
    void theRuleThatWasAskedForIsTheOneApplied() {
        Map<String, Object> counts = JsonTree.object(JsonTree.object(json(DEMO), "rule"), "counts");
        Map<String, Object> loose =
                JsonTree.object(JsonTree.object(json(DEMO, "--slow-limit", "100"), "rule"), "counts");
        assertThat(JsonTree.number(counts, "slow")).isEqualTo(1);
        assertThat(JsonTree.number(loose, "slow")).isZero();
    }

    @Test
    void theFolderHoldsResultLapsAndChart() throws IOException {
        Path out = folder.resolve("out");
        assertThat(evidence(DEMO, "--out", out.toString()).code()).isZero();
        assertThat(out.toFile().list()).containsExactlyInAnyOrder("evidence.json", "laps.csv", "laps.svg");
        assertThat(Files.readString(out.resolve("evidence.json")))
                .isEqualTo(evidence(DEMO, "--json").out());
        List<Map<String, String>> rows = CsvRows.of(Files.readString(out.resolve("laps.csv")));
        assertThat(rows).hasSize(33);
        assertThat(rows.get(0)).containsEntry("status", "out lap").containsEntry("setup", "rear-wing=2");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "nothing.csv | there is no such file",
                "castelvane-wings.csv --after nobody | no lap was driven with 'nobody'",
                "castelvane-wings.csv --run-to-run-s -1 | run-to-run deviation",
                "castelvane-wings.csv --drift-s-per-lap NaN | drift",
                "castelvane-wings.csv --predicted-doubt-s 0.1 | no prediction to doubt",
                "castelvane-wings.csv --slow-limit NaN | --slow-limit",
                "castelvane-wings.csv --predicted-s NaN | --predicted-s",
                "castelvane-wings.csv --worth-s 0 | change worth knowing",
                "castelvane-wings.csv --warm-up-laps 50 | none is clean",
                "castelvane-wings.csv --out laps.txt | the file's kind is not known",
                "castelvane-wings.csv --chart laps.txt | the file's kind is not known",
            })
    void aMistakeIsNamedInOneLine(String arguments, String said) {
        Run run = evidence(arguments.split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains(said);
    }
}
