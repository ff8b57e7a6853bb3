package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.report.JsonLayout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SensitivityCommandTest {
    private static final String CAR = "touring-merrow";
    private static final String CIRCUIT = "harrowmere";

    @TempDir
    private Path folder;

    private static Run sensitivity(String car, String circuit, String... more) {
        Run run = Run.of(Stream.concat(Stream.of("sensitivity", car, circuit), Stream.of(more))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String car, String circuit, String... more) {
        return JsonTree.object(sensitivity(
                        car,
                        circuit,
                        Stream.concat(Stream.of(more), Stream.of("--json")).toArray(String[]::new))
                .out());
    }

    private static Map<String, Object> adjustment(Map<String, Object> result, String name) {
        return JsonTree.objects(result, "adjustments").stream()
                .filter(one -> one.get("name").equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double lapTime(String... arguments) {
        Run run = Run.of(Stream.concat(Stream.of("lap", CAR, CIRCUIT, "--json"), Stream.of(arguments))
                .toArray(String[]::new));
        return JsonTree.number(JsonTree.object(run.out()), "lapTimeS");
    }

    private static String text(Run run) {
        return String.join(" ", run.lines());
    }

    /** A demo car with other adjustments, as a file. */
    private String carWith(List<Map<String, Object>> adjustments) throws IOException {
        assertThat(Run.of("demo", CAR, "--to", folder.toString()).code()).isZero();
        Map<String, Object> car = JsonTree.object(Files.readString(folder.resolve(CAR + ".json")));
        car.put("adjustments", adjustments);
        Path file = folder.resolve("car.json");
        Files.writeString(file, JsonLayout.text(car));
        return file.toString();
    }

    private static Map<String, Object> brakes(double max) {
        return Map.of(
                "name",
                "brakes",
                "unit",
                "%",
                "min",
                86,
                "max",
                max,
                "step",
                1,
                "standard",
                86,
                "moves",
                List.of(Map.of("quantity", "brakes.frontSharePercent")));
    }

    @Test
    void aStepIsWorthTheDifferenceOfTwoLaps() {
        Map<String, Object> wing = adjustment(json(CAR, CIRCUIT), "rear-wing");
        double up = JsonTree.number(wing, "stepUpTo");
        // The two commands drive the same laps: what is left is the solver's own rounding.
        assertThat(JsonTree.number(wing, "differenceStepUpS"))
                .isCloseTo(lapTime("-s", "rear-wing=" + up) - lapTime(), within(1e-9));
    }

    @Test
    void sectorsAddUpToTheDifference() {
        for (Map<String, Object> one : JsonTree.objects(json(CAR, CIRCUIT), "adjustments")) {
            double shown = one.get("sectorsAt").equals(one.get("best"))
                    ? JsonTree.number(one, "differenceBestS")
                    : JsonTree.number(one, "differenceWorstS");
            double sum = JsonTree.numbers(one, "differenceBySectorS").stream()
                    .mapToDouble(difference -> difference)
                    .sum();
            // A sum of some thousand numbers.
            assertThat(sum).isCloseTo(shown, within(1e-9));
        }
    }

    @Test
    void allLapsAreDrivenOnTheLineAskedFor() {
        Map<String, Object> result = json(CAR, CIRCUIT, "--line", "smoothest");
        assertThat(JsonTree.number(result, "lapTimeS")).isEqualTo(lapTime("--line", "smoothest"));
        assertThat(JsonTree.object(result, "line").get("line")).isEqualTo("smoothest");
    }

    @Test
    void theOneWorthMostStandsFirst() {
        List<Double> ranges = JsonTree.objects(json(CAR, CIRCUIT), "adjustments").stream()
                .map(one -> JsonTree.number(one, "differenceRangeS"))
                .toList();
        List<Double> sorted = new ArrayList<>(ranges);
        sorted.sort((a, b) -> Double.compare(b, a));
        assertThat(ranges).hasSizeGreaterThan(10).isEqualTo(sorted);
    }

    @Test
    void atAShortTwistyRunTheWingsWholeRangeIsWorthLessThanADriversScatter() {
        // Common practice, no source.
        Map<String, Object> wing = adjustment(json(CAR, "skarnfell"), "rear-wing");
        assertThat(JsonTree.number(wing, "differenceRangeS")).isLessThan(0.3);
        assertThat(wing.get("canBeSeen")).isEqualTo(false);
    }

    @Test
    void whatCannotBeSeenIsSaidToBeSo() {
        assertThat(text(sensitivity(CAR, CIRCUIT, "--laps", "4", "--scatter-s", "5")))
                .contains("In 4 laps nothing faster is so by enough to show on the timing screen")
                .contains("choose it by the model or leave it alone: ");
    }

    @Test
    void moreLapsShowMore() {
        assertThat(seen(json(CAR, CIRCUIT, "--laps", "2000"))).isGreaterThan(seen(json(CAR, CIRCUIT, "--laps", "4")));
    }

    private static long seen(Map<String, Object> result) {
        return JsonTree.objects(result, "adjustments").stream()
                .filter(one -> one.get("canBeSeen").equals(true))
                .count();
    }

    @Test
    @Tag("heavy")
    void linesStayWithinAHundredColumns() {
        for (String car : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
            assertThat(sensitivity(car, CIRCUIT).lines())
                    .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        }
    }

    @Test
    void whatCanHurtCarriesACaution() {
        assertThat(text(sensitivity(CAR, CIRCUIT))).contains("Caution: A tyre below its maker's least pressure");
    }

    @Test
    void theFolderHoldsResultTableAndChart() throws IOException {
        Path out = folder.resolve("out");
        sensitivity(CAR, CIRCUIT, "--out", out.toString());
        assertThat(out.toFile().list())
                .containsExactlyInAnyOrder("sensitivity.json", "sensitivity.csv", "sensitivity.svg");
        Map<String, Object> result = JsonTree.object(Files.readString(out.resolve("sensitivity.json")));
        List<Map<String, String>> rows = CsvRows.of(Files.readString(out.resolve("sensitivity.csv")));
        assertThat(rows).hasSameSizeAs(JsonTree.objects(result, "adjustments"));
        assertThat(Files.readString(out.resolve("sensitivity.svg")))
                .contains("What each adjustment is worth: Merrow TC at Harrowmere", "Rear wing", "Ballast");
    }

    @Test
    void aStraightRunWithNoCornerIsStudiedToo() throws IOException {
        Path straight = folder.resolve("straight.json");
        Files.writeString(straight, """
                {"lapwright": "circuit/1", "name": "Straight", "closed": false,
                 "entrySpeedKmh": 40, "segments": [{"type": "straight", "lengthM": 1000}]}
                """);
        String out = text(sensitivity(CAR, straight.toString()));
        assertThat(out).contains("Merrow TC at Straight").contains("Run time");
    }

    @Test
    void anAdjustmentWithOneStepIsStudied() throws IOException {
        Map<String, Object> result = json(carWith(List.of(brakes(87))), CIRCUIT);
        Map<String, Object> only = adjustment(result, "brakes");
        assertThat(only.get("stepDownTo")).isNull();
        assertThat(JsonTree.number(only, "stepUpTo")).isEqualTo(87);
        assertThat(only.get("curvatureS")).isNull();
    }

    @Test
    void anAdjustmentWithOneSettingIsNamedAndLeftOut() throws IOException {
        Map<String, Object> wide = new HashMap<>(brakes(90));
        wide.put("name", "more-brakes");
        assertThat(text(sensitivity(carWith(List.of(brakes(86), wide)), CIRCUIT)))
                .contains("With one setting only, and so left out: brakes.");
    }

    @Test
    void aCarWithoutAdjustmentsIsRefused() throws IOException {
        Run run = Run.of("sensitivity", carWith(List.of()), CIRCUIT);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains("no adjustment that can be turned").contains("sweep a quantity");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--scatter-s 0 | --scatter-s",
                "--scatter-s NaN | --scatter-s",
                "--laps 3 | --laps",
                "--laps many | --laps",
                "--threads 0 | threads",
                "--line refresh | driven on one line",
                "--out result.txt | the file's kind is not known",
                "--chart worth.gif | the file's kind is not known",
            })
    void aMistakeIsNamedInOneLine(String arguments, String said) {
        Run run = Run.of(Stream.concat(Stream.of("sensitivity", CAR, CIRCUIT), Stream.of(arguments.split(" ")))
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains(said);
    }

    /** Every adjustment that moves the lap stands on one list, by one rule. */
    @Test
    @Tag("heavy")
    void onDrawnCarsEachAdjustmentStandsSomewhere() {
        String[] drawn = {"--line", "middle", "--draws", "20"};
        Map<String, Object> result = json("student-pipit", CIRCUIT, drawn);
        List<Map<String, Object>> standings = JsonTree.objects(result, "standings");
        assertThat(standings).hasSameSizeAs(JsonTree.objects(result, "adjustments"));
        String said = text(sensitivity("student-pipit", CIRCUIT, drawn));
        assertThat(said).contains("On 20 cars that this one may be");
        for (Map<String, Object> one : standings) {
            double low = JsonTree.number(one, "differenceLowS");
            double high = JsonTree.number(one, "differenceHighS");
            assertThat(low).isLessThanOrEqualTo(high);
            // The rule of docs/doubt.md, for intervals that are clear of its ends.
            if (high < -0.06) {
                assertThat(one.get("standing")).isEqualTo("faster");
            } else if (low > 0.06) {
                assertThat(one.get("standing")).isEqualTo("slower");
            } else if (low < -0.06 && high > 0.06) {
                assertThat(one.get("standing")).isEqualTo("cannot be told");
            }
        }
    }

    /** Where the air lifts a car and holds it back, it grips by its weight alone: the same law as in compare and weight. */
    @Test
    void whereLessMassIsSlowerTheAnswerSaysByWhatLimitsTheCar() {
        String[] lifted = {
            "--line",
            "middle",
            "--no-second-opinion",
            "-s",
            "aero.clAFrontM2=-1",
            "-s",
            "aero.clARearM2=-1.9",
            "-s",
            "aero.cdAM2=1.8",
            "-s",
            "chassis.massKg=900",
            "-s",
            "rear-wing=0",
            "-s",
            "ballast=30"
        };
        String said = text(sensitivity("gt-talvex", "../docs/examples/ring-100.json", lifted));
        assertThat(said)
                .containsPattern(
                        "ballast 0 kg beside ballast [36]0 kg: Less mass is slower here by what limits the car, "
                                + "\\+0\\.[0-9]+ s at its (rear|front) grip");
        assertThat(text(sensitivity("gt-talvex", CIRCUIT, "--line", "middle", "--no-second-opinion")))
                .doesNotContain("slower here by what limits");
    }
}
