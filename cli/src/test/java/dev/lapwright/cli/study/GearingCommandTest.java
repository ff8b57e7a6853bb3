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
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GearingCommandTest {
    @TempDir
    private Path folder;

    private static Run gearing(String... arguments) {
        Run run =
                Run.of(Stream.concat(Stream.of("gearing"), Stream.of(arguments)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... arguments) {
        return JsonTree.object(
                gearing(Stream.concat(Stream.of(arguments), Stream.of("--json")).toArray(String[]::new))
                        .out());
    }

    private static Map<String, Object> asGiven(Map<String, Object> result) {
        return JsonTree.objects(result, "scenarios").get(0);
    }

    private static List<Map<String, Object>> choices(Map<String, Object> result, String axis) {
        return JsonTree.objects(asGiven(result), "choices").stream()
                .filter(choice -> choice.get("axis").equals(axis))
                .toList();
    }

    /** The printed text without its line breaks. */
    private static String text(Run run) {
        return String.join(" ", run.lines());
    }

    @Test
    void allThatCanBeFittedIsTried() {
        Map<String, Object> car =
                JsonTree.object(Run.of("show", "gt-talvex", "--json").out());
        Map<String, Object> result = json("gt-talvex", "harrowmere");
        assertThat(JsonTree.objects(result, "axes").stream().map(axis -> axis.get("name")))
                .containsExactly("final-drive", "first-gear", "sixth-gear");
        Object legal = JsonTree.objects(car, "adjustments").stream()
                .filter(adjustment -> adjustment.get("name").equals("final-drive"))
                .findFirst()
                .orElseThrow()
                .get("choices");
        assertThat(JsonTree.objects(result, "axes").get(0).get("values")).isEqualTo(legal);
    }

    @Test
    void aGearingsLapIsThatOfTheLapCommand() {
        Map<String, Object> choice =
                choices(json("gt-talvex", "castelvane"), "final-drive").get(0);
        Run lap = Run.of("lap", "gt-talvex", "castelvane", "-s", "final-drive=3.231", "--json");
        assertThat(JsonTree.number(choice, "lapTimeS"))
                .isEqualTo(JsonTree.number(JsonTree.object(lap.out()), "lapTimeS"));
    }

    @ParameterizedTest
    @CsvSource({"gt-talvex,castelvane", "touring-merrow,harrowmere", "student-pipit,skarnfell"})
    void timesInGearsAddUpToTheLapTime(String car, String circuit) {
        Map<String, Object> baseline = JsonTree.object(asGiven(json(car, circuit)), "baseline");
        double sum = JsonTree.numbers(baseline, "timeInGearS").stream()
                .mapToDouble(seconds -> seconds)
                .sum();
        // A sum of some thousand numbers.
        assertThat(sum).isCloseTo(JsonTree.number(baseline, "lapTimeS"), within(1e-9));
    }

    @Test
    void onATwistyRunAShorterFinalDriveHelpsWhileTheLimiterIsNotReached() {
        // Common practice, no source.
        List<Map<String, Object>> choices = choices(json("touring-merrow", "skarnfell"), "final-drive");
        Map<String, Object> fitted = choices.stream()
                .filter(choice -> JsonTree.number(choice, "differenceS") == 0)
                .findFirst()
                .orElseThrow();
        List<Map<String, Object>> shorter = choices.stream()
                .filter(choice -> JsonTree.number(choice, "finalDrive") > JsonTree.number(fitted, "finalDrive"))
                .toList();
        assertThat(shorter).isNotEmpty().allSatisfy(choice -> {
            assertThat(JsonTree.number(choice, "timeOnLimiterS")).isZero();
            assertThat(JsonTree.number(choice, "differenceS")).isNegative();
        });
    }

    @Test
    void aTopGearThatIsNeverUsedIsSaidToBe() {
        Run run = gearing("gt-talvex", "skarnfell", "--line", "middle");
        assertThat(text(run)).contains("Top gear is never used here: top speed is reached in gear 4.");
    }

    @Test
    @Tag("heavy")
    void aLimiterThatCostsTimeIsSaidToWithTheNextLongerDrive() {
        Run run = gearing("gt-talvex", "castelvane", "-s", "final-drive=4.222");
        assertThat(text(run))
                .contains("The limiter costs time: the car is on it for")
                .contains("the most that it costs")
                .contains("The next longer, final-drive 4, is");
    }

    @Test
    void aTowAsksForNoShorterDriveThanNone() {
        // Common practice, no source: less drag, more speed, a longer drive or the same.
        Map<String, Object> result = json("touring-merrow", "castelvane", "--tow-percent", "30");
        assertThat(fastest(result, 1)).isLessThanOrEqualTo(fastest(result, 0));
    }

    private static double fastest(Map<String, Object> result, int scenario) {
        return JsonTree.objects(JsonTree.objects(result, "scenarios").get(scenario), "choices").stream()
                .filter(choice -> choice.get("axis").equals("final-drive"))
                .min((a, b) -> Double.compare(JsonTree.number(a, "lapTimeS"), JsonTree.number(b, "lapTimeS")))
                .map(choice -> JsonTree.number(choice, "finalDrive"))
                .orElseThrow();
    }

    @Test
    void finalDrivesAreTakenAsGiven() {
        Map<String, Object> result = json("gt-talvex", "harrowmere", "--final-drives", "3.4,3.7");
        assertThat(choices(result, "gearbox.finalDrive").stream().map(choice -> choice.get("finalDrive")))
                .containsExactly(3.4, 3.7);
        assertThat(JsonTree.objects(result, "axes")).hasSize(1);
    }

    @Test
    void aRangeWithoutAStepTakesTheAdjustmentsOwn() {
        Map<String, Object> result = json("student-pipit", "harrowmere", "--final-drives", "30:33");
        assertThat(choices(result, "rear-sprocket").stream().map(choice -> choice.get("value")))
                .containsExactly(30.0, 31.0, 32.0, 33.0);
    }

    @Test
    void aSprocketIsSaidWithItsRatio() {
        assertThat(text(gearing("student-pipit", "harrowmere"))).containsPattern("rear-sprocket [0-9]+ \\(final drive");
    }

    @Test
    void aCarWithOneGearShiftsNeverAndLeavesNoGearUnused() throws IOException {
        Path file = folder.resolve("gt-talvex.json");
        Run copied = Run.of("demo", "gt-talvex", "--to", folder.toString());
        assertThat(copied.code()).as(copied.err()).isZero();
        Map<String, Object> car = JsonTree.object(Files.readString(file));
        JsonTree.object(car, "gearbox").put("ratios", List.of(1.45));
        car.put("adjustments", List.of());
        Files.writeString(file, JsonLayout.text(car));
        Run run = gearing(file.toString(), "castelvane");
        assertThat(run.lines())
                .contains("  Gears used    1", "  Upshifts      0: 0 in corners, 0 within 1 s of braking");
        assertThat(run.out()).doesNotContain("never used").contains("The limiter costs time");
    }

    @Test
    void theFolderHoldsResultAndTables() throws IOException {
        gearing("gt-talvex", "harrowmere", "--out", folder.resolve("out").toString());
        assertThat(folder.resolve("out").toFile().list())
                .containsExactlyInAnyOrder(
                        "gearing.json", "gearing.csv", "shifts.csv", "traction.csv", "gears.svg", "traction.svg");
        Map<String, Object> result = JsonTree.object(Files.readString(folder.resolve("out/gearing.json")));
        List<Map<String, String>> rows = CsvRows.of(Files.readString(folder.resolve("out/gearing.csv")));
        assertThat(rows).hasSameSizeAs(JsonTree.objects(asGiven(result), "choices"));
        // Nine digits are written: half of the last is 5e-7 s of a lap of more than a minute.
        assertThat(Double.parseDouble(rows.get(0).get("lapTimeS")))
                .isCloseTo(
                        JsonTree.number(
                                JsonTree.objects(asGiven(result), "choices").get(0), "lapTimeS"),
                        within(5e-7));
        List<Map<String, String>> shifts = CsvRows.of(Files.readString(folder.resolve("out/shifts.csv")));
        assertThat(shifts).hasSameSizeAs(JsonTree.objects(JsonTree.object(asGiven(result), "baseline"), "shifts"));
        assertThat(CsvRows.of(Files.readString(folder.resolve("out/traction.csv")))
                        .get(0))
                .containsKeys("speedKmh", "resistanceN", "engineSpeedGear6Rpm", "forceGear6N");
    }

    @Test
    void theSawIsDrawnWithTheTopSpeedThatIsPrinted() throws IOException {
        Path chart = folder.resolve("gears.svg");
        Run run = gearing("gt-talvex", "skarnfell", "--chart", chart.toString());
        String top = run.line("Top speed").replaceAll(".*?([0-9]+)\\.[0-9] km/h.* at ([0-9]+) rpm of.*", "$2 rpm");
        assertThat(Files.readString(chart)).contains("Gears: Talvex GT at Skarnfell", top, "gear 6 is never used");
    }

    @Test
    void forceIsDrawnAgainstTheResistanceOfEachSituation() throws IOException {
        Path chart = folder.resolve("force.svg");
        gearing(
                "student-pipit",
                "harrowmere",
                "--tow-percent",
                "25",
                "--head-wind-kmh",
                "-36",
                "--traction-chart",
                chart.toString());
        assertThat(Files.readString(chart))
                .contains("resistance in still air", "in a tow of 25 %", "with 36 km/h from behind");
    }

    @Test
    @Tag("heavy")
    void aCarWithOneGearHasItsCharts() throws IOException {
        Path file = folder.resolve("one.json");
        Map<String, Object> car = JsonTree.object(
                Run.of("demo", "gt-talvex", "--to", folder.toString()).code() == 0
                        ? Files.readString(folder.resolve("gt-talvex.json"))
                        : "");
        JsonTree.object(car, "gearbox").put("ratios", List.of(1.45));
        car.put("adjustments", List.of());
        Files.writeString(file, JsonLayout.text(car));
        Path out = folder.resolve("charts");
        gearing(file.toString(), "castelvane", "--out", out.toString());
        assertThat(out.resolve("gears.svg")).isNotEmptyFile();
        assertThat(out.resolve("traction.svg")).isNotEmptyFile();
    }

    @Test
    void upshiftsShortlyBeforeBrakingDependOnTheTimeAsked() {
        assertThat(text(gearing("gt-talvex", "harrowmere", "--before-braking-s", "0.01")))
                .doesNotContain("hardly worth making");
        assertThat(text(gearing("gt-talvex", "harrowmere", "--before-braking-s", "3")))
                .contains("Upshifts within 3 s of braking, hardly worth making: ");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--final-drives 3:2:1 | never leads from 3 to 2",
                "--final-drives tall | 'tall' is not a number",
                "--final-drives 0.1 | gearbox.finalDrive",
                "--ratio 9=1 | gear 9: the car has no such gear",
                "--ratio 6 | it does not begin with a gear",
                "--ratio sixth=1 | it does not begin with a gear",
                "--ratio 6=2 | gearbox.ratios.6",
                "--ratio 6=1 --ratio 6=0.9 | it is varied twice",
                "--tow-percent 90 | --tow-percent",
                "--tow-percent NaN | --tow-percent",
                "--head-wind-kmh 400 | --head-wind-kmh",
                "--before-braking-s -1 | --before-braking-s",
                "--out result.txt | the file's kind is not known",
            })
    void aMistakeIsNamedInOneLine(String arguments, String said) {
        Run run = Run.of(Stream.concat(Stream.of("gearing", "gt-talvex", "harrowmere"), Stream.of(arguments.split(" ")))
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.err().lines()).hasSize(1);
        assertThat(run.err()).contains(said);
    }

    @Test
    void howSureAFinalDriveIsIsSaidIfAsked() {
        String asked = "gt-talvex harrowmere --final-drives 3.417,3.615,3.818 --line middle --draws 20";
        Map<String, Object> result = json(asked.split(" "));
        Map<String, Object> doubts = JsonTree.object(result, "doubts");
        assertThat(doubts).hasSize(1);
        assertThat(result.get("doubtReading").toString()).contains("Of 20 cars that this one may be");
    }

    @Test
    void theRatiosInTheBoxAreTriedTogetherOnSeveralCircuits() {
        Run run = Run.of(
                "gearing",
                "touring-merrow",
                "castelvane",
                "--line",
                "middle",
                "--final-drives",
                "3.5,3.692",
                "--ratio",
                "6=0.9,0.93",
                "--together",
                "--change-minutes",
                "30:90",
                "--also-at",
                "harrowmere=0.5");
        assertThat(run.code()).as(run.err()).isZero();
        // One other drive, one other sixth gear, and both: with none changed four.
        assertThat(run.out())
                .contains("All together: the best of 4 combinations")
                .contains("Castelvane")
                .contains("Harrowmere");
        Run alone = Run.of("gearing", "touring-merrow", "castelvane", "--also-at", "harrowmere");
        assertThat(alone.code()).isEqualTo(2);
        assertThat(alone.err()).contains("add --together").hasLineCount(1);
        Run minutes = Run.of(
                "gearing",
                "touring-merrow",
                "castelvane",
                "--line",
                "middle",
                "--final-drives",
                "3.5,3.692",
                "--together",
                "--change-minutes",
                "30");
        assertThat(minutes.err()).contains("'30' is not two numbers").hasLineCount(1);
    }
}
