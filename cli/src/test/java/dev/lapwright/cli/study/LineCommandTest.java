package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Quantity;
import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** What the command finds, prints and writes. Nodes every 4 m: half as long to wait as with the usual ones. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LineCommandTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";
    /** Numbers in CSV have nine digits, of some thousand metres. */
    private static final double MICROMETRES = 1e-5;

    private Path folder;

    private Path out;
    private Run found;
    private Map<String, Object> json;

    @BeforeAll
    void find(@TempDir Path temporary) throws IOException {
        folder = temporary;
        out = folder.resolve("line");
        found = Run.of("line", CAR, CIRCUIT, "--spacing-m", "4", "--out", out.toString());
        assertThat(found.code()).as(found.err()).isZero();
        json = JsonTree.object(Files.readString(out.resolve("lines.json")));
    }

    private Map<String, Object> line(String word) {
        return JsonTree.objects(json, "lines").stream()
                .filter(line -> line.get("line").equals(word))
                .findFirst()
                .orElseThrow();
    }

    private List<Map<String, String>> table() throws IOException {
        return CsvRows.of(Files.readString(out.resolve("lines.csv")));
    }

    private static double number(Map<String, String> row, String column) {
        return Double.parseDouble(row.get(column));
    }

    private static String error(String... arguments) {
        Run run = Run.of(arguments);
        assertThat(run.code()).as(run.out()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        return run.errorLines().get(0);
    }

    @Test
    void eachLineHasARow() {
        assertThat(found.line("middle")).contains(" 0.000 ");
        assertThat(found.line("smoothest")).contains("+");
        assertThat(found.line("fastest")).contains("+");
    }

    @Test
    void differencesAreTheTimeOfTheLineLessThatOfTheMiddle() {
        double middle = JsonTree.number(line("middle"), "lapTimeS");
        for (Map<String, Object> line : JsonTree.objects(json, "lines")) {
            assertThat(JsonTree.number(line, "differenceS")).isEqualTo(JsonTree.number(line, "lapTimeS") - middle);
        }
    }

    @Test
    void theFastestIsFasterThanTheSmoothestAndThatThanTheMiddle() {
        assertThat(JsonTree.number(line("fastest"), "lapTimeS"))
                .isLessThan(JsonTree.number(line("smoothest"), "lapTimeS"));
        assertThat(JsonTree.number(line("smoothest"), "lapTimeS"))
                .isLessThan(JsonTree.number(line("middle"), "lapTimeS"));
    }

    @Test
    void theSmoothestIsWhatALapWithoutALineDrives() {
        Map<String, Object> lap = JsonTree.object(
                Run.of("lap", CAR, CIRCUIT, "--spacing-m", "4", "--json").out());
        assertThat(JsonTree.number(lap, "lapTimeS")).isEqualTo(JsonTree.number(line("smoothest"), "lapTimeS"));
    }

    @Test
    void theCarStaysWithinTheRoadByItsMargin() throws IOException {
        Track road = Documents.circuit(CIRCUIT);
        double half = Documents.car(CAR).value(Quantity.WIDTH) / 2 + 0.25;
        for (Map<String, String> row : table()) {
            TrackPoint place = road.pointAt(Math.min(number(row, "distanceM"), road.length()));
            for (String word : List.of("smoothest", "fastest")) {
                double offset = number(row, word + "OffsetM");
                assertThat(offset).isLessThan(place.widthLeft() - half + MICROMETRES);
                assertThat(offset).isGreaterThan(half - place.widthRight() - MICROMETRES);
            }
        }
    }

    @Test
    void aLineLiesAsFarFromTheMiddleAsItsOffsetSays() throws IOException {
        for (Map<String, String> row : table()) {
            double away = Math.hypot(
                    number(row, "fastestEastM") - number(row, "middleEastM"),
                    number(row, "fastestNorthM") - number(row, "middleNorthM"));
            // The road's own path misses its start by its closing gap, which is spread along lines found.
            assertThat(away).isCloseTo(Math.abs(number(row, "fastestOffsetM")), within(0.02));
        }
    }

    @Test
    void everyLineTurnsOnceRound() throws IOException {
        // A simple closed curve turns by 2π (Hopf's Umlaufsatz, 1935; from memory): the curvature's sum over the
        // length, by
        // the trapezium rule on chords. Over 4 m chords a hairpin of 20 m takes 1 - (4/20)²/24 of its arc: two parts in
        // a
        // thousand of half a turn there, and less elsewhere.
        List<Map<String, String>> rows = table();
        for (String word : List.of("middle", "smoothest", "fastest")) {
            double turning = 0;
            for (int i = 1; i < rows.size(); i++) {
                Map<String, String> a = rows.get(i - 1);
                Map<String, String> b = rows.get(i);
                double chord = Math.hypot(
                        number(b, word + "EastM") - number(a, word + "EastM"),
                        number(b, word + "NorthM") - number(a, word + "NorthM"));
                turning += chord * (number(a, word + "CurvaturePerM") + number(b, word + "CurvaturePerM")) / 2;
            }
            assertThat(Math.abs(turning)).isCloseTo(2 * Math.PI, within(0.02 * 2 * Math.PI));
        }
    }

    @Test
    void aStoredLineGivesTheLapTimeItWasFoundWith() {
        for (String word : List.of("smoothest", "fastest")) {
            Run run = Run.of(
                    "lap",
                    CAR,
                    CIRCUIT,
                    "--json",
                    "--line",
                    out.resolve(word + ".json").toString());
            assertThat(run.code()).as(run.err()).isZero();
            // Offsets are written to 0.1 µm, which moves the lap time by less than it is printed with.
            assertThat(JsonTree.number(JsonTree.object(run.out()), "lapTimeS"))
                    .isCloseTo(JsonTree.number(line(word), "lapTimeS"), within(0.5e-3));
        }
    }

    @Test
    void anotherSetupOnAStoredLineIsALapOfItsOwn() {
        String stored = out.resolve("fastest.json").toString();
        Run run = Run.of("lap", CAR, CIRCUIT, "--line", stored, "-s", "rear-wing=0");
        assertThat(run.line("Line")).contains("Harrowmere, fastest");
        assertThat(run.code()).isZero();
    }

    @Test
    void aLineDocumentIsShown() {
        Run run = Run.of("show", out.resolve("fastest.json").toString());
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.lines().get(0)).contains("a line along Harrowmere");
        assertThat(run.line("Looked for")).contains("fastest");
        assertThat(run.line("Margin")).contains("0.25 m");
    }

    @Test
    void theFolderHoldsDocumentsTableResultAndCharts() throws IOException {
        try (var files = Files.list(out)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .contains(
                            "fastest.json", "lines.csv", "lines.json", "lines.svg", "smoothest.json", "speed-map.svg");
        }
    }

    @Test
    void existingFilesAreNotOverwritten() {
        assertThat(error("line", CAR, CIRCUIT, "--out", out.toString())).contains("exists already");
    }

    @Test
    void aLineOfAnotherRoadIsRefused() {
        assertThat(error(
                        "lap",
                        CAR,
                        "castelvane",
                        "--line",
                        out.resolve("fastest.json").toString()))
                .contains("this line is for the road 'Harrowmere'");
    }

    @Test
    void aMarginThatLeavesNoRoomIsRefused() {
        assertThat(error("line", CAR, CIRCUIT, "--margin-m", "6"))
                .contains("the car with its margins")
                .contains("give a smaller margin");
    }

    @Test
    void aRoadNarrowerThanTheCarIsRefused() throws IOException {
        Path lane = folder.resolve("lane.json");
        Files.writeString(lane, """
                { "lapwright": "circuit/1", "name": "Lane", "closed": false, "segments": [
                  { "type": "straight", "lengthM": 300, "widthM": 1.9 } ] }""");
        assertThat(error("line", CAR, lane.toString())).contains("the road is 1.9 m wide there");
    }

    @Test
    void aNonsenseMarginIsRefused() {
        assertThat(error("line", CAR, CIRCUIT, "--margin-m", "-1")).contains("margin");
        assertThat(error("line", CAR, CIRCUIT, "--margin-m", "NaN")).contains("margin");
        assertThat(error("line", CAR, CIRCUIT, "--spacing-m", "0")).contains("spacing");
    }

    @Test
    void anOpenRunHasItsLinesToo() {
        Run run = Run.of("line", "student-pipit", "skarnfell", "--spacing-m", "4");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.out()).contains("open run");
        assertThat(run.line("fastest")).contains("\u2212");
    }

    @Test
    void itWarnsOfTheEdgesOfTheRoad() {
        assertThat(found.out()).contains("Caution:").contains("licensed");
        assertThat(json.get("caution").toString()).contains("Kerbs");
    }
}
