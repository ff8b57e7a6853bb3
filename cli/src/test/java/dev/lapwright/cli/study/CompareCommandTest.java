package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
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

class CompareCommandTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";
    /** Sums of some tens of differences: rounding only. */
    private static final double EXACT = 1e-9;

    @TempDir
    private Path folder;

    /** Without drawn cars, which a test of doubt asks for. */
    private static Run compare(String... more) {
        Run run = Run.of(Stream.concat(Stream.of("compare", CAR, CIRCUIT, "--no-doubt"), Stream.of(more))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... more) {
        return JsonTree.object(
                compare(Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new))
                        .out());
    }

    private static double lapTime(String... more) {
        Run run = Run.of(Stream.concat(Stream.of("lap", CAR, CIRCUIT, "--json"), Stream.of(more))
                .toArray(String[]::new));
        return JsonTree.number(JsonTree.object(run.out()), "lapTimeS");
    }

    @Test
    void theTwoLapsAreThoseOfTheLapCommand() {
        Map<String, Object> result = json("-s", "rear-bar=2", "--against", "rear-wing=3");
        assertThat(JsonTree.number(result, "lapTimeS")).isEqualTo(lapTime("-s", "rear-bar=2"));
        assertThat(JsonTree.number(result, "otherLapTimeS"))
                .isEqualTo(lapTime("-s", "rear-bar=2", "-s", "rear-wing=3"));
    }

    @Test
    void differencesAddUpInEveryCut() {
        Map<String, Object> result = json("--against", "rear-wing=0");
        double whole = JsonTree.number(result, "differenceS");
        double parts = JsonTree.objects(result, "parts").stream()
                .mapToDouble(part -> JsonTree.number(part, "differenceS"))
                .sum();
        double sectors = JsonTree.numbers(result, "differenceBySectorS").stream()
                .mapToDouble(seconds -> seconds)
                .sum();
        double causes = JsonTree.object(result, "differenceByCauseS").values().stream()
                .mapToDouble(seconds -> (Double) seconds)
                .sum();
        assertThat(parts).isCloseTo(whole, within(EXACT));
        assertThat(sectors).isCloseTo(whole, within(EXACT));
        assertThat(causes).isCloseTo(whole, within(EXACT));
    }

    @Test
    void aFlatterWingGainsMoreOnStraightsThanInCorners() {
        // What a wing is for: common practice, no source.
        Map<String, Object> result = json("--against", "rear-wing=0");
        assertThat(JsonTree.number(result, "differenceOnStraightsS"))
                .isLessThan(JsonTree.number(result, "differenceInCornersS"));
    }

    @Test
    void anotherCarIsComparedInItsOwnSetup() {
        Map<String, Object> result =
                json("--against-car", "touring-merrow", "--against", "rear-wing=4", "--line", "middle");
        Run alone = Run.of("lap", "touring-merrow", CIRCUIT, "-s", "rear-wing=4", "--line", "middle", "--json");
        assertThat(JsonTree.number(result, "otherLapTimeS"))
                .isEqualTo(JsonTree.number(JsonTree.object(alone.out()), "lapTimeS"));
        assertThat(result.get("other")).isEqualTo("Merrow TC with rear-wing=4");
    }

    @Test
    void twoDaysCanBeCompared() {
        Map<String, Object> result = json("--against", "conditions.grip=0.8");
        assertThat(JsonTree.number(JsonTree.object(result, "otherConditions"), "grip"))
                .isEqualTo(0.8);
        assertThat(JsonTree.number(result, "differenceS")).isPositive();
        assertThat(compare("--against", "conditions.grip=0.8").out()).contains("on another day");
    }

    @Test
    void theFolderHoldsResultTraceAndChart() throws IOException {
        compare(
                "--against",
                "gt-talvex-low-drag",
                "--out",
                folder.resolve("out").toString());
        assertThat(folder.resolve("out").toFile().list())
                .containsExactlyInAnyOrder("comparison.json", "trace.csv", "comparison.svg");
        List<Map<String, String>> rows = CsvRows.of(Files.readString(folder.resolve("out/trace.csv")));
        Map<String, Object> result = JsonTree.object(Files.readString(folder.resolve("out/comparison.json")));
        assertThat(rows.get(0).get("differenceS")).isEqualTo("0");
        // Nine digits are written.
        assertThat(Double.parseDouble(rows.get(rows.size() - 1).get("differenceS")))
                .isCloseTo(JsonTree.number(result, "differenceS"), within(1e-9));
    }

    @Test
    void theTraceIsTheSameInJson() throws IOException {
        Path csv = folder.resolve("trace.csv");
        Path json = folder.resolve("trace.json");
        compare("--against", "rear-wing=3", "--trace", csv.toString());
        compare("--against", "rear-wing=3", "--trace", json.toString());
        List<Double> differences = JsonTree.numbers(JsonTree.object(Files.readString(json)), "differenceS");
        List<Map<String, String>> rows = CsvRows.of(Files.readString(csv));
        assertThat(rows.stream().map(row -> Double.parseDouble(row.get("differenceS"))))
                .containsExactlyElementsOf(differences);
    }

    @Test
    void aSetupComparedWithItselfIsSaidToBeTheSame() {
        assertThat(compare("--against", "rear-wing=6").out()).contains("rear-wing=6 drives the same lap.");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "| there is nothing to compare with",
                "--against rear-wing=99 | outside the range",
                "--against nothing-of-that-name | neither a file nor a demo setup",
                "--against rear-wing= | it has no value",
                "--against rear-wing=3 --against rear-wing=4 | give it once",
                "--against-car nothing | nothing",
                "--against-car touring-merrow --against dive-planes=3 | dive-planes",
                "--against rear-wing=3 --out result.txt | the file's kind is not known",
                "--against rear-wing=3 --draws 3 | give 20 to 100000",
                "--against rear-wing=3 --draws 20 --no-doubt | keep one of them",
                "--against rear-wing=3 --seed 2 --no-doubt | keep one of them",
                "--against-car touring-merrow --draws 20 | two cars have errors of their own",
            })
    void aMistakeIsNamedInOneLine(String arguments, String said) {
        Stream<String> more = arguments == null ? Stream.of() : Stream.of(arguments.split(" "));
        Run run = Run.of(Stream.concat(Stream.of("compare", CAR, CIRCUIT), more).toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains(said);
    }

    /** Cars are drawn if nothing is said: the interval stands in the report, with no more digits than it leaves. */
    @Test
    void howSureADifferenceIsIsSaidUnasked() {
        String[] asked = {"compare", CAR, CIRCUIT, "--line", "middle", "--against", "rear-wing=2", "--json"};
        Map<String, Object> result = JsonTree.object(Run.of(asked).out());
        double low = JsonTree.number(result, "differenceLowS");
        double high = JsonTree.number(result, "differenceHighS");
        assertThat(low).isLessThan(high);
        assertThat(JsonTree.number(result, "differenceS")).isBetween(low, high);
        assertThat(JsonTree.number(result, "chanceOfGain")).isBetween(0.0, 1.0);
        assertThat(JsonTree.number(JsonTree.object(result, "doubt"), "draws")).isEqualTo(60);
        assertThat(json("--line", "middle", "--against", "rear-wing=2")).doesNotContainKey("doubt");
        Run run = Run.of("compare", CAR, CIRCUIT, "--line", "middle", "--against", "rear-wing=2");
        assertThat(String.join(" ", run.lines())).contains("in nine of ten of 60 cars that this one may be");
    }

    /** Each car has errors of its own: of two nothing is drawn. */
    @Test
    void ofTwoCarsNoDoubtIsTold() {
        Run run = Run.of("compare", CAR, CIRCUIT, "--line", "middle", "--against-car", "touring-merrow", "--json");
        assertThat(JsonTree.object(run.out())).doesNotContainKey("doubt");
    }

    /** Front downforce taken away and a stiff front: at a steady corner the front gives up first, and the drive against drag turns the car in. */
    @Test
    void whereLessDragIsSlowerTheAnswerSaysByWhatLimitsTheCar() {
        Run run = Run.of(
                "compare",
                "gt-talvex",
                "../docs/examples/ring-100.json",
                "--line",
                "middle",
                "--no-doubt",
                "-s",
                "front-bar=5",
                "-s",
                "rear-bar=1",
                "-s",
                "aero.clAFrontM2=0.3",
                "-s",
                "aero.cdAM2=1.5",
                "--against",
                "aero.cdAM2=0.6");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(String.join(" ", run.out().split("\\s+")))
                .containsPattern("Less drag is slower here by what limits the car, \\+0\\.[0-9]+ s at its front grip")
                .contains("locking differential");
        // The other way round nothing is odd.
        Run more = Run.of(
                "compare", "gt-talvex", "harrowmere", "--line", "middle", "--no-doubt", "--against", "aero.cdAM2=0.7");
        assertThat(more.out()).doesNotContain("slower here by what limits");
    }
}
