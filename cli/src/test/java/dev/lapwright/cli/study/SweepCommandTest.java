package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.report.Numbers;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepCommandTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";

    @TempDir
    private Path folder;

    private static Run sweep(String... more) {
        Run run = Run.of(
                Stream.concat(Stream.of("sweep", CAR, CIRCUIT), Stream.of(more)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... more) {
        return JsonTree.object(
                sweep(Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new))
                        .out());
    }

    /** Rows of the table: lines whose first word is a number. */
    private static List<String> rows(Run run) {
        return run.lines().stream()
                .filter(line -> line.matches("\\s+-?[0-9.]+\\s+.*"))
                .toList();
    }

    @Test
    void everyValueOfTheRangeHasARow() {
        List<String> rows = rows(sweep("--vary", "rear-wing=2:10:2"));
        assertThat(rows.stream().map(row -> row.strip().split("\\s+")[0])).containsExactly("2", "4", "6", "8", "10");
    }

    @Test
    void aListIsSweptInItsOrder() {
        List<String> rows = rows(sweep("--vary", "rear-wing=9, 3,6"));
        assertThat(rows.stream().map(row -> row.strip().split("\\s+")[0])).containsExactly("9", "3", "6");
    }

    @Test
    void anAdjustmentAloneIsSweptOverItsWholeRange() {
        Map<String, Object> car = JsonTree.object(Run.of("show", CAR, "--json").out());
        Map<String, Object> wing = JsonTree.objects(car, "adjustments").stream()
                .filter(adjustment -> adjustment.get("name").equals("rear-wing"))
                .findFirst()
                .orElseThrow();
        Map<String, Object> axis =
                JsonTree.objects(json("--vary", "rear-wing"), "axes").get(0);
        List<Double> values = JsonTree.numbers(axis, "values");
        assertThat(values.get(0)).isEqualTo(JsonTree.number(wing, "min"));
        assertThat(values.get(values.size() - 1)).isEqualTo(JsonTree.number(wing, "max"));
        assertThat(values.get(1) - values.get(0)).isEqualTo(JsonTree.number(wing, "step"));
    }

    @Test
    void aPartOfTheRangeTakesTheAdjustmentsOwnStep() {
        assertThat(rows(sweep("--vary", "rear-wing=3:6"))).hasSize(4);
    }

    @Test
    void aRangeMayFall() {
        Map<String, Object> axis =
                JsonTree.objects(json("--vary", "rear-wing=6:3"), "axes").get(0);
        assertThat(JsonTree.numbers(axis, "values")).containsExactly(6.0, 5.0, 4.0, 3.0);
    }

    @Test
    void choicesAreSweptOneByOne() {
        Map<String, Object> car = JsonTree.object(Run.of("show", CAR, "--json").out());
        Map<String, Object> drive = JsonTree.objects(car, "adjustments").stream()
                .filter(adjustment -> adjustment.containsKey("choices"))
                .findFirst()
                .orElseThrow();
        Map<String, Object> axis = JsonTree.objects(json("--vary", (String) drive.get("name")), "axes")
                .get(0);
        assertThat(axis.get("values")).isEqualTo(drive.get("choices"));
    }

    @Test
    void differencesAreTheLapLessTheBaseline() {
        Map<String, Object> sweep = json("--vary", "rear-wing=0:12:3");
        double baseline = JsonTree.number(JsonTree.object(sweep, "baseline"), "lapTimeS");
        for (Map<String, Object> point : JsonTree.objects(sweep, "points")) {
            assertThat(JsonTree.number(point, "differenceS")).isEqualTo(JsonTree.number(point, "lapTimeS") - baseline);
        }
    }

    @Test
    void theBaselineStandsInItsRowWithoutDifference() {
        Run run = sweep("-s", "rear-wing=4", "--vary", "rear-wing=2:6:1");
        String baseline = rows(run).stream()
                .filter(row -> row.contains("baseline"))
                .findFirst()
                .orElseThrow();
        assertThat(baseline.strip()).startsWith("4 ");
        assertThat(baseline).contains(" 0.000 ");
    }

    @Test
    void theFastestRowIsMarkedAndNamedInTheReading() {
        Run run = sweep("--vary", "rear-wing=0:12:2");
        List<String> rows = rows(run);
        String fastest = rows.stream()
                .min(Comparator.comparing(row -> row.strip().split("\\s+")[1]))
                .orElseThrow();
        assertThat(rows.stream().filter(row -> row.contains("fastest"))).containsExactly(fastest);
        String reading = String.join(" ", run.lines());
        assertThat(reading)
                .contains("The fastest is rear-wing " + fastest.strip().split("\\s+")[0] + " deg");
    }

    @Test
    void aBestAtTheEndOfAShortRangeIsCalledAtTheEnd() {
        // More mass is never faster with the same engine and tyres.
        String reading = (String) json("--vary", "chassis.fuelKg=10:40:10").get("reading");
        assertThat(reading).contains("chassis.fuelKg 10 kg").contains("at the lower end of the range");
    }

    @Test
    void aBestAtTheEndOfAnAdjustmentIsCalledItsLimit() {
        String reading = (String) json("--vary", "fuel-litres").get("reading");
        assertThat(reading).contains("at the lower end of what the adjustment allows");
    }

    @Test
    void whatChangesNothingIsSaidToChangeNothing() {
        // The width of the car is not in the forces.
        String reading = (String) json("--vary", "chassis.widthM=1.7,1.9").get("reading");
        assertThat(reading).contains("makes no difference");
    }

    @Test
    void conditionsCanBeSwept() {
        Map<String, Object> sweep = json("--vary", "conditions.grip=0.7,0.9,1.1");
        List<Map<String, Object>> points = JsonTree.objects(sweep, "points");
        assertThat(points.stream().map(p -> JsonTree.number(p, "lapTimeS")))
                .isSortedAccordingTo(Comparator.reverseOrder());
    }

    @Test
    void twoAxesGiveEveryCombinationTheLastVaryingFastest() {
        Map<String, Object> sweep = json("--vary", "rear-wing=2,8", "--vary", "front-bar=1,3,5");
        List<Map<String, Object>> points = JsonTree.objects(sweep, "points");
        assertThat(points.stream().map(p -> p.get("rear-wing"))).containsExactly(2.0, 2.0, 2.0, 8.0, 8.0, 8.0);
        assertThat(points.stream().map(p -> p.get("front-bar"))).containsExactly(1.0, 3.0, 5.0, 1.0, 3.0, 5.0);
    }

    @Test
    void aPointOfASweepIsTheLapOfThatSetup() {
        Map<String, Object> sweep = json("--vary", "rear-wing=2,8", "--vary", "rear-bar=2");
        double swept = JsonTree.number(JsonTree.objects(sweep, "points").get(1), "lapTimeS");
        Run lap = Run.of("lap", CAR, CIRCUIT, "-s", "rear-wing=8", "-s", "rear-bar=2", "--json");
        assertThat(swept).isEqualTo(JsonTree.number(JsonTree.object(lap.out()), "lapTimeS"));
    }

    @Test
    void aVariedAdjustmentReplacesItsSettingInTheBaseline() {
        double about3 = JsonTree.number(
                JsonTree.objects(json("-s", "ride-height=60", "--vary", "ride-height=70"), "points")
                        .get(0),
                "lapTimeS");
        double plain = JsonTree.number(
                JsonTree.objects(json("--vary", "ride-height=70"), "points").get(0), "lapTimeS");
        assertThat(about3).isEqualTo(plain);
    }

    @Test
    void valuesInAnotherUnitAreShownInBoth() {
        Run run = sweep("--vary", "tyres.front.hotPressureKpa=20:24:2psi");
        assertThat(rows(run).stream().map(row -> row.strip().split("\\s+")[0])).containsExactly("20", "22", "24");
        assertThat(run.out()).contains("psi").contains("kPa");
        // 1 psi is 6.894757 kPa (NIST SP 811, table B.8).
        assertThat(rows(run).get(0)).contains("137.8951");
    }

    @Test
    void theTableIsTheSameInCsvAndJson() throws IOException {
        Path csv = folder.resolve("sweep.csv");
        Map<String, Object> sweep = json("--vary", "rear-wing=0:12:4", "--vary", "rear-bar", "--out", csv.toString());
        List<Map<String, String>> rows = CsvRows.of(Files.readString(csv));
        List<Map<String, Object>> points = JsonTree.objects(sweep, "points");
        assertThat(rows).hasSameSizeAs(points);
        for (int i = 0; i < rows.size(); i++) {
            for (String name : List.of("lapTimeS", "topSpeedKmh", "minimumCornerSpeedKmh", "meanCornerSpeedKmh")) {
                assertThat(rows.get(i).get(name)).isEqualTo(Numbers.machine(JsonTree.number(points.get(i), name)));
            }
            assertThat(rows.get(i).get("rear-wing (deg)"))
                    .isEqualTo(Numbers.machine(JsonTree.number(points.get(i), "rear-wing")));
        }
    }

    @Test
    void aFolderGetsResultTableAndCharts() {
        Path out = folder.resolve("wing");
        Run run = sweep("--vary", "rear-wing=0:12:4", "--out", out.toString());
        for (String name : List.of("sweep.json", "sweep.csv", "lap-time.svg", "trade-off.svg")) {
            assertThat(out.resolve(name)).isNotEmptyFile();
            assertThat(run.out()).contains("Wrote " + out.resolve(name));
        }
    }

    @Test
    void chartsOfTwoAxesAreDrawn() {
        Path time = folder.resolve("time.svg");
        Path tradeOff = folder.resolve("trade.png");
        sweep(
                "--vary",
                "rear-wing=2,8",
                "--vary",
                "rear-bar=1,4",
                "--chart",
                time.toString(),
                "--trade-off",
                tradeOff.toString());
        assertThat(time).isNotEmptyFile();
        assertThat(tradeOff).isNotEmptyFile();
    }

    @Test
    void theNumberOfThreadsChangesNothing() {
        String one = sweep("--vary", "rear-wing", "--vary", "rear-bar", "--json", "--threads", "1")
                .out();
        String three = sweep("--vary", "rear-wing", "--vary", "rear-bar", "--json", "--threads", "3")
                .out();
        assertThat(three).isEqualTo(one);
    }

    @Test
    void aLongTableShowsTheFastestAndSaysWhereAllAre() {
        Path csv = folder.resolve("all.csv");
        Run run = sweep("--vary", "rear-wing=0:12:0.5", "--vary", "rear-bar=1:6:1", "--out", csv.toString());
        assertThat(rows(run)).hasSize(20);
        assertThat(rows(run).stream().map(row -> row.strip().split("\\s+")[2])).isSorted();
        assertThat(String.join(" ", run.lines())).contains("Of 150 laps").contains(csv.toString());
    }

    @Test
    void aLongTableWithoutAFileSaysHowToGetAll() {
        Run run = sweep("--vary", "rear-wing=0:12:0.5", "--vary", "rear-bar=1:6:1");
        assertThat(String.join(" ", run.lines())).contains("--out FILE.csv");
    }

    @Test
    void aSettingWithoutALapIsShownWithItsReason() {
        // A thousandth of the power does not climb.
        Run run = Run.of("sweep", CAR, "skarnfell", "--vary", "engine.powerScale=0.01,1");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(rows(run).get(0)).contains("no lap").contains(" - ");
        assertThat(run.out()).contains("No lap with engine.powerScale 0.01:");
    }

    @Test
    void noLineIsWiderThanAHundredColumns() {
        Run run = sweep(
                "--vary", "suspension.front.antiRollBarNmPerDeg=1000,2000", "--vary", "conditions.airTempC=50,70degF");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    private static final String[] DRAWN = {"--vary", "rear-wing=2,6,10", "--line", "middle", "--draws", "20"};

    @Test
    void drawnCarsGiveEachSettingItsIntervalAndChances() {
        Map<String, Object> result = json(DRAWN);
        double best = 0;
        for (Map<String, Object> point : JsonTree.objects(result, "points")) {
            double low = JsonTree.number(point, "differenceLowS");
            double high = JsonTree.number(point, "differenceHighS");
            if (JsonTree.number(point, "rear-wing") == 6) {
                // The baseline itself.
                assertThat(low).isZero();
                assertThat(high).isZero();
            } else {
                assertThat(low).isLessThan(high);
                assertThat(JsonTree.number(point, "differenceS")).isBetween(low, high);
            }
            best += JsonTree.number(point, "chanceOfBest");
        }
        // Shares of the same draws; rounding of their sum.
        assertThat(best).isEqualTo(1, within(1e-9));
        Map<String, Object> doubt = JsonTree.object(result, "doubt");
        assertThat(JsonTree.number(doubt, "draws")).isEqualTo(20);
        assertThat(JsonTree.objects(doubt, "unknowns"))
                .allSatisfy(unknown -> assertThat(unknown.get("source")).isEqualTo("assumed"));
    }

    @Test
    void whatIsSaidOfDrawnCarsIsWhatWasCounted() {
        Run run = sweep(DRAWN);
        String said = String.join(" ", run.lines());
        assertThat(said).contains("Of 20 cars that this one may be").contains("20 cars were drawn (seed 1)");
        assertThat(rows(run)).hasSize(3);
        assertThat(rows(run).get(0)).contains(" to ");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        // Nothing of the kind where no cars are drawn.
        assertThat(String.join(
                        " ",
                        sweep("--vary", "rear-wing=2,6,10", "--line", "middle").lines()))
                .doesNotContain("that this one may be");
    }

    @ParameterizedTest
    @CsvSource({
        "--draws 5, '5 are no number of cars to draw', give 20 to 100000",
        "--draws -1, -1, give 20 to 100000",
        "--seed 4, no cars are drawn, add --draws 200",
        "--as-stated, no cars are drawn, add --draws 200",
        "--gives-up front, no cars are drawn, add --draws 200",
        "--draws 20 --gives-up T6=left, it is no word of a driver, 'say T6=rear'",
        "--draws 20 --driver lap=1:xx, it is no word of a driver, say T6=rear",
        "--draws 20 --gives-up T99=rear, has no corner of that name, use one of",
        "--draws 20 --line refresh, all driven on one line, take --line fastest"
    })
    void drawsThatCannotBeAreRefused(String options, String what, String remedy) {
        Run run = Run.of(("sweep " + CAR + " " + CIRCUIT + " --vary rear-wing " + options).split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err().replaceAll("\\s+", " ")).contains(what).contains(remedy);
    }

    @Test
    void byWhatIsStatedAloneACarThatStatesNothingIsRefused() {
        Run run = Run.of(("sweep " + CAR + " " + CIRCUIT + " --vary rear-wing --draws 20 --as-stated").split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("states no doubt");
    }

    @Test
    void carsThatDoNotGoWithTheDriversWordDoNotCount() {
        String[] heard = {"--vary", "rear-wing=2,6,10", "--line", "middle", "--draws", "60", "--gives-up", "rear"};
        Map<String, Object> doubt = JsonTree.object(json(heard), "doubt");
        assertThat(JsonTree.number(doubt, "lapped")).isBetween(20.0, 59.0);
        assertThat(JsonTree.number(doubt, "lappedBeforeTheDriversWord")).isEqualTo(60);
        assertThat(String.join(" ", sweep(heard).lines())).contains("of 60 cars drawn, and only they count");
    }

    /** A sweep that was broken off inside a line, as by the power going, gives the very result of one that was not. */
    @Test
    void aSweepThatWasBrokenOffGoesOnWhereItWas() throws IOException {
        String[] asked = {"--vary", "rear-wing=0:12:2", "--line", "middle", "--json"};
        final String whole = sweep(asked).out();
        Path journal = folder.resolve("wing.journal");
        String[] resumed = Stream.concat(Stream.of(asked), Stream.of("--resume", journal.toString()))
                .toArray(String[]::new);
        assertThat(sweep(resumed).out()).isEqualTo(whole);
        List<String> lines = Files.readAllLines(journal);
        assertThat(lines).hasSize(1 + 7);
        // A number that no lap has, so that one sees which laps are recalled; then half a line.
        String first = lines.get(1);
        String changed = first.replaceFirst("^(laps [0-9]+) \\S+", "$1 0x1.0p5");
        Files.writeString(
                journal,
                String.join(
                        "\n", lines.get(0), changed, lines.get(2), lines.get(3).substring(0, 20)));
        String mended = sweep(resumed).out();
        assertThat(mended).containsPattern("\"lapTimeS\": 32(\\.0)?,").isNotEqualTo(whole);
        assertThat(Files.readAllLines(journal)).hasSize(1 + 7).contains(changed);
        Files.writeString(journal, String.join("\n", lines.get(0), lines.get(2)) + "\n");
        assertThat(sweep(resumed).out()).isEqualTo(whole);
    }

    @Test
    void aJournalOfAnotherSweepIsRefusedAndLeftAlone() throws IOException {
        Path journal = folder.resolve("wing.journal");
        sweep("--vary", "rear-wing=0,6", "--line", "middle", "--resume", journal.toString());
        String before = Files.readString(journal);
        Run other = Run.of(
                "sweep", CAR, CIRCUIT, "--vary", "rear-wing=0,8", "--line", "middle", "--resume", journal.toString());
        assertThat(other.code()).isEqualTo(2);
        assertThat(other.err()).contains("the journal of another study");
        assertThat(Files.readString(journal)).isEqualTo(before);
        Path text = folder.resolve("notes.txt");
        Files.writeString(text, "buy tyres\n");
        Run notes = Run.of("sweep", CAR, CIRCUIT, "--vary", "rear-wing=0,8", "--resume", text.toString());
        assertThat(notes.code()).isEqualTo(2);
        assertThat(notes.err()).contains("no journal of a study");
        assertThat(Files.readString(text)).isEqualTo("buy tyres\n");
        assertThat(Run.of("sweep", CAR, CIRCUIT, "--vary", "rear-wing=0,8", "--resume", folder.toString())
                        .code())
                .isEqualTo(2);
    }
}
