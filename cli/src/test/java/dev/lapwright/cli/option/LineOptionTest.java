package dev.lapwright.cli.option;

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
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Laps and sweeps on a line. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LineOptionTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";

    private Path folder;

    private String fastest;

    @BeforeAll
    void find(@TempDir Path temporary) {
        folder = temporary;
        Path out = folder.resolve("line");
        Run run = Run.of("line", CAR, CIRCUIT, "--spacing-m", "4", "--out", out.toString());
        assertThat(run.code()).as(run.err()).isZero();
        fastest = out.resolve("fastest.json").toString();
    }

    private static Run run(String command, String... more) {
        Run run = Run.of(
                Stream.concat(Stream.of(command, CAR, CIRCUIT), Stream.of(more)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String command, String... more) {
        return JsonTree.object(
                run(command, Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new))
                        .out());
    }

    private static String error(String... arguments) {
        Run run = Run.of(arguments);
        assertThat(run.code()).as(run.out()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        return run.errorLines().get(0);
    }

    private static List<Object> corners(Map<String, Object> lap) {
        return JsonTree.objects(lap, "corners").stream()
                .<Object>map(corner -> corner.get("number") + " " + corner.get("name") + " " + corner.get("turn"))
                .toList();
    }

    @Test
    void withoutTheOptionTheSmoothestLineIsDriven() {
        assertThat(json("lap").get("lapTimeS"))
                .isEqualTo(json("lap", "--line", "smoothest").get("lapTimeS"));
        assertThat(JsonTree.object(json("lap"), "line").get("line")).isEqualTo("smoothest");
    }

    @Test
    void theReportSaysWhichLineWasDriven() {
        assertThat(run("lap", "--line", "smoothest").line("Line")).contains("the smoothest");
        assertThat(run("lap", "--line", "middle").line("Line")).contains("own path");
        assertThat(run("sweep", "--vary", "rear-wing=4,6", "--line", fastest).line("Line"))
                .contains("Harrowmere, fastest");
        assertThat(run("lap").line("Line")).contains("the smoothest");
    }

    @Test
    void cornersAreTheCircuitsOnEveryLine() {
        // The smoothest line runs straight through Sallow, which must not become another corner's number.
        assertThat(corners(json("lap", "--line", "smoothest"))).isEqualTo(corners(json("lap", "--line", "middle")));
        assertThat(corners(json("lap", "--line", fastest))).isEqualTo(corners(json("lap", "--line", "middle")));
    }

    @Test
    void theSlowestSpeedOfACornerIsNotAboveItsEntryOrExit() {
        for (Map<String, Object> corner : JsonTree.objects(json("lap", "--line", fastest), "corners")) {
            double least = JsonTree.number(corner, "minimumSpeedKmh");
            // The ends of a corner are stations of the lap, so that only rounding remains.
            assertThat(least).isLessThanOrEqualTo(JsonTree.number(corner, "entrySpeedKmh") + 1e-6);
            assertThat(least).isLessThanOrEqualTo(JsonTree.number(corner, "exitSpeedKmh") + 1e-6);
        }
    }

    @Test
    void sectorsEndWhereTheyEndOnTheRoad() throws IOException {
        Path trace = folder.resolve("sectors.csv");
        Map<String, Object> lap = json("lap", "--line", fastest, "--trace", trace.toString());
        List<Double> onLine = JsonTree.numbers(lap, "sectorEndsM");
        List<Double> onRoad = JsonTree.numbers(json("lap", "--line", "middle"), "sectorEndsM");
        List<Map<String, String>> rows = CsvRows.of(Files.readString(trace));
        for (int sector = 0; sector < onLine.size(); sector++) {
            double end = onLine.get(sector);
            Map<String, String> last = rows.stream()
                    .filter(row -> Double.parseDouble(row.get("distanceM")) <= end + 1e-6)
                    .reduce((a, b) -> b)
                    .orElseThrow();
            // The last station before lies within the greatest step between stations, some metres.
            assertThat(Double.parseDouble(last.get("roadDistanceM"))).isCloseTo(onRoad.get(sector), within(6.0));
        }
    }

    @Test
    void theTraceLiesOnTheLineInTheRoadsFrame() throws IOException {
        Path trace = folder.resolve("line.csv");
        run("lap", "--line", fastest, "--trace", trace.toString());
        List<Map<String, String>> nodes = CsvRows.of(Files.readString(folder.resolve("line/lines.csv")));
        for (Map<String, String> row : CsvRows.of(Files.readString(trace))) {
            double x = Double.parseDouble(row.get("eastM"));
            double y = Double.parseDouble(row.get("northM"));
            double nearest = nodes.stream()
                    .mapToDouble(node -> Math.hypot(
                            Double.parseDouble(node.get("fastestEastM")) - x,
                            Double.parseDouble(node.get("fastestNorthM")) - y))
                    .min()
                    .orElseThrow();
            // Nodes are at most 4 m apart on the road's path, which on the outside of its tightest bend (radius 17 m, 5
            // m
            // away) is 4 (22/17) m on the line; no point is farther from a node than half of that. 0.1 m for rounding.
            assertThat(nearest).isLessThan(2 * 22 / 17.0 + 0.1);
        }
    }

    @Test
    void setupsAreComparedOnOneLine() {
        Map<String, Object> lap = json("lap", "--line", fastest, "--against", "rear-wing=3");
        Map<String, Object> other = JsonTree.objects(lap, "against").get(0);
        Map<String, Object> alone = json("lap", "--line", fastest, "-s", "rear-wing=3");
        assertThat(other.get("lapTimeS")).isEqualTo(alone.get("lapTimeS"));
    }

    @Test
    void withRefreshASetupDrivesItsOwnLineAndIsNoSlowerForIt() {
        String[] held = {"--spacing-m", "4", "--against", "rear-wing=0", "--line", "fastest"};
        String[] anew = {"--spacing-m", "4", "--against", "rear-wing=0", "--line", "refresh"};
        Map<String, Object> one = json("lap", held);
        Map<String, Object> own = json("lap", anew);
        assertThat(own.get("lapTimeS")).isEqualTo(one.get("lapTimeS"));
        assertThat(JsonTree.number(JsonTree.objects(own, "against").get(0), "lapTimeS"))
                .isLessThan(JsonTree.number(JsonTree.objects(one, "against").get(0), "lapTimeS"));
    }

    @Test
    void lapsOfSeveralLengthsAreNotLaidOverEachOther() {
        assertThat(error("lap", CAR, CIRCUIT, "--line", "refresh", "--against", "rear-wing=0", "--chart", "x.svg"))
                .contains("--chart")
                .contains("take --line fastest for all");
    }

    @Test
    void aSweepHoldsTheLine() {
        Map<String, Object> sweep = json("sweep", "--vary", "rear-wing=3,6", "--line", fastest);
        for (Map<String, Object> point : JsonTree.objects(sweep, "points")) {
            String wing = "rear-wing=" + (JsonTree.number(point, "rear-wing"));
            assertThat(point.get("lapTimeS"))
                    .isEqualTo(json("lap", "--line", fastest, "-s", wing).get("lapTimeS"));
        }
    }

    @Test
    void aRefreshedSweepIsTheSameForAnyNumberOfThreads() {
        String[] one = {"--vary", "rear-wing=0,6", "--line", "refresh", "--spacing-m", "4", "--threads", "1"};
        String[] two = {"--vary", "rear-wing=0,6", "--line", "refresh", "--spacing-m", "4", "--threads", "2"};
        assertThat(run("sweep", one).out()).isEqualTo(run("sweep", two).out());
    }

    @Test
    void aRefreshedSweepIsNoSlowerThanAHeldOneAndKeepsItsBaseline() {
        Map<String, Object> held = json("sweep", "--vary", "rear-wing=0,6", "--line", "fastest", "--spacing-m", "4");
        Map<String, Object> anew = json("sweep", "--vary", "rear-wing=0,6", "--line", "refresh", "--spacing-m", "4");
        List<Map<String, Object>> slow = JsonTree.objects(held, "points");
        List<Map<String, Object>> quick = JsonTree.objects(anew, "points");
        assertThat(JsonTree.number(quick.get(0), "lapTimeS")).isLessThan(JsonTree.number(slow.get(0), "lapTimeS"));
        // The point with the baseline's own setting is looked for as the baseline is.
        assertThat(JsonTree.number(quick.get(1), "differenceS")).isZero();
        assertThat(anew.get("inputsSha256")).isNotEqualTo(held.get("inputsSha256"));
    }

    @Test
    void aMistypedLineIsRefusedWithTheNearestWord() {
        assertThat(error("lap", CAR, CIRCUIT, "--line", "fastets")).contains("perhaps you meant fastest");
    }

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThat(error("lap", CAR, CIRCUIT, "--line", "no/such.json"))
                .contains("no such file")
                .doesNotContain("demo lines");
    }

    @Test
    void aPathThatWasDrivenIsDrivenAsItIs() {
        String ring = Path.of("..", "docs", "examples", "ring-100.json").toString();
        Run run = Run.of("lap", CAR, ring);
        assertThat(run.line("Line")).contains("as it was driven");
    }

    @Test
    void aMarginThatLeavesNoRoomIsRefusedWhereItIsGiven() {
        assertThat(error("lap", CAR, CIRCUIT, "--margin-m", "6")).contains("the car with its margins");
    }

    @Test
    void roomForALineThatIsNotLookedForIsRefused() {
        assertThat(error("lap", CAR, CIRCUIT, "--line", "middle", "--margin-m", "1"))
                .contains("--margin-m");
        assertThat(error("sweep", CAR, CIRCUIT, "--vary", "rear-wing", "--line", "middle", "--spacing-m", "3"))
                .contains("--spacing-m");
    }

    @Test
    void aLapOnAnotherLineIsQuotedBeside() {
        Map<String, Object> lap = json("lap", "--beside", fastest, "--beside", "middle");
        List<Map<String, Object>> beside = JsonTree.objects(lap, "beside");
        double time = (double) lap.get("lapTimeS");
        for (int i = 0; i < 2; i++) {
            double other =
                    (double) json("lap", "--line", i == 0 ? fastest : "middle").get("lapTimeS");
            assertThat(beside.get(i)).containsEntry("lapTimeS", other).containsEntry("differenceS", other - time);
        }
        assertThat(run("lap", "--beside", "middle").out()).contains("slower, on the middle, the circuit's own path");
        assertThat(error("lap", CAR, CIRCUIT, "--beside", "refresh")).contains("take --beside fastest");
        assertThat(error("lap", CAR, CIRCUIT, "--beside", "none", "--beside", "middle"))
                .contains("leave one of both out");
    }

    /** Told last, as it is looked for when all the rest is said; the file of the result waits for it. */
    @Test
    void aLapOnTheSmoothestLineQuotesTheFastestUnlessToldOtherwise() {
        String[] lines = run("lap").out().split("\n");
        assertThat(lines[lines.length - 1])
                .startsWith("  Beside")
                .endsWith("on the fastest line for this car as set up");
        assertThat(JsonTree.objects(json("lap"), "beside"))
                .isEqualTo(JsonTree.objects(json("lap", "--beside", "fastest"), "beside"));
        assertThat(run("lap", "--beside", "none").out()).doesNotContain("Beside");
        assertThat(run("lap", "--line", "middle").out()).doesNotContain("Beside");
    }

    /** The same command prints the same, whether its line was found before or not. */
    @Test
    void whatIsPrintedDoesNotDependOnWhatWasKept() throws IOException {
        Path kept = folder.resolve("kept");
        String anew = keeping(kept, "--spacing-m", "6");
        assertThat(kept.resolve("lines")).isDirectoryContaining("glob:**.line");
        assertThat(keeping(kept, "--spacing-m", "6")).isEqualTo(anew);
        Run smoothest = Run.keeping(kept, "lap", CAR, CIRCUIT, "--spacing-m", "6");
        assertThat(smoothest).isEqualTo(run("lap", "--spacing-m", "6", "--no-cache"));
        Path unused = folder.resolve("unused");
        assertThat(keeping(unused, "--spacing-m", "6", "--no-cache")).isEqualTo(anew);
        assertThat(unused).doesNotExist();
    }

    private static String keeping(Path cache, String... more) {
        Run run = Run.keeping(
                cache,
                Stream.concat(Stream.of("lap", CAR, CIRCUIT, "--line", "fastest"), Stream.of(more))
                        .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run.out();
    }
}
