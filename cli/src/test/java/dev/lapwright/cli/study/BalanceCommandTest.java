package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class BalanceCommandTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";

    @TempDir
    private Path folder;

    private static Run balance(String... more) {
        Run run = Run.of(Stream.concat(Stream.of("balance", CAR, CIRCUIT), Stream.of(more))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... more) {
        return JsonTree.object(
                balance(Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new))
                        .out());
    }

    private static double mean(Map<String, Object> tree, String phase) {
        return JsonTree.number(JsonTree.object(JsonTree.object(tree, "means"), phase), "rearLessFrontG");
    }

    private static String error(String... arguments) {
        Run run = Run.of(arguments);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).matches("lapwright: .+: .+; .+").doesNotContain("Exception");
        return run.errorLines().get(0);
    }

    @Test
    void everyCornerHasALineAndTheMeanOne() {
        Run run = balance();
        List<Map<String, Object>> corners = JsonTree.objects(json(), "corners");
        assertThat(corners).isNotEmpty();
        for (Map<String, Object> corner : corners) {
            String label = ("T" + (int) JsonTree.number(corner, "number") + " " + corner.get("name")).strip();
            assertThat(run.line(label)).containsPattern("(front|rear|even)");
        }
        assertThat(run.line("mean")).containsPattern("(front|rear|even)");
    }

    /** Both models' wheels carry weight and downforce, nothing else: Newton's first law for the direction in which nothing moves. */
    @Test
    void wheelsOfTheFreeBodyCarryTheCar() {
        Map<String, Object> body = JsonTree.object(json("--free-body", "t6"), "freeBody");
        Map<String, Object> terms = JsonTree.object(body, "terms");
        for (String model : List.of("Fast", "Fuller")) {
            double carried = 0;
            for (Map<String, Object> wheel : JsonTree.objects(body, "wheels")) {
                carried += JsonTree.number(wheel, "load" + model + "N");
            }
            // Mass and fuel of the demo car, and the road's slope and curve there, which take less than a percent.
            double weight = (1285 + 29.8) * 9.80665;
            double expected = weight
                    + JsonTree.number(terms, "frontDownforce" + model + "N")
                    + JsonTree.number(terms, "rearDownforce" + model + "N");
            assertThat(carried).isCloseTo(expected, within(0.01 * expected));
        }
    }

    @ParameterizedTest
    @CsvSource({"T33, '', no corner 'T33' here", "T3, --no-second-opinion, needs the fuller model"})
    void aFreeBodyThatCannotBeToldIsRefused(String corner, String more, String why) {
        List<String> arguments = new ArrayList<>(List.of("balance", CAR, CIRCUIT, "--free-body", corner));
        if (!more.isEmpty()) {
            arguments.add(more);
        }
        assertThat(error(arguments.toArray(String[]::new))).contains("--free-body", why);
    }

    @Test
    void linesStayWithinAHundredColumns() {
        assertThat(balance("--complaint", "oversteer:exit").lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
        assertThat(balance().lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void settingsMoveTheBalance() {
        // Load transfer costs an axle grip (Gillespie, section 6.4): a stiffer front bar is more understeer.
        assertThat(mean(json("-s", "front-bar=5"), "middle")).isGreaterThan(mean(json(), "middle"));
    }

    @Test
    void coastLockingMovesEntryAndLiftOffMost() {
        Map<String, Object> less = json("-s", "lock-on-overrun=1");
        Map<String, Object> more = json("-s", "lock-on-overrun=5");
        assertThat(mean(more, "lift-off")).isGreaterThan(mean(less, "lift-off"));
        assertThat(mean(more, "entry")).isGreaterThan(mean(less, "entry"));
        // Under drive the lock of the overrun does nothing; but the lap brakes with it, and comes to its phases at
        // other speeds.
        double entry = mean(more, "entry") - mean(less, "entry");
        assertThat(Math.abs(mean(more, "middle") - mean(less, "middle"))).isLessThan(0.1 * entry);
        assertThat(Math.abs(mean(more, "exit") - mean(less, "exit"))).isLessThan(0.1 * entry);
    }

    @Test
    void conditionsMoveTheLimits() {
        assertThat(balance("--grip", "0.8").out()).isNotEqualTo(balance().out());
    }

    @Test
    void aComplaintGetsRemediesWithTheirPrice() {
        Run run = balance("--complaint", "oversteer:lift-off");
        assertThat(run.line("lock-on-overrun 3 -> 4")).containsPattern("\\+0\\.\\d\\d\\d +0\\.000");
        assertThat(run.out()).contains("disturbs");
    }

    @Test
    void aComplaintInTheDriversWordsGetsOneChangeItsCostAndWhatPracticeWouldDo() {
        String out = String.join(
                " ",
                balance("--complaint", "loose on power out of T3", "--draws", "20")
                        .lines());
        assertThat(out)
                .contains("Against oversteer on exit, T3.")
                .contains("Turn first: ")
                .contains("nine of ten of 20 cars")
                .contains("It spoils")
                .contains("If that does not help, put it back and try ")
                .contains("Common practice (no source): ");
    }

    @Test
    void aComplaintOfOneCornerLooksThere() {
        Map<String, Object> complaint = JsonTree.objects(json("--complaint", "understeer:middle:T3"), "complaints")
                .get(0);
        Map<String, Object> corner = JsonTree.objects(json(), "corners").get(2);
        Map<String, Object> middle = JsonTree.objects(corner, "phases").get(2);
        assertThat(complaint.get("corner")).isEqualTo("T3");
        assertThat(complaint.get("rearLessFrontG")).isEqualTo(middle.get("rearLessFrontG"));
    }

    @ParameterizedTest
    @CsvSource({
        "understeer:entry, lock the rear wheels first",
        "oversteer:exit, maker's least ride",
        "oversteer:exit, never leave the maker's range"
    })
    void whatCanHurtCarriesACaution(String complaint, String words) {
        String out = String.join(" ", balance("--complaint", complaint).lines());
        assertThat(out).contains("Caution: ").contains(words);
    }

    @Test
    void aFolderTakesResultAndTables() throws IOException {
        Path out = folder.resolve("out");
        balance("--complaint", "oversteer:exit", "--out", out.toString());
        assertThat(out).isDirectoryContaining(file -> file.endsWith("balance.json"));
        assertThat(out).isDirectoryContaining(file -> file.endsWith("balance.svg"));
        List<Map<String, String>> phases = CsvRows.of(Files.readString(out.resolve("balance.csv")));
        List<Map<String, Object>> corners = JsonTree.objects(json(), "corners");
        int count = corners.stream()
                .mapToInt(corner -> JsonTree.objects(corner, "phases").size())
                .sum();
        assertThat(phases).hasSize(count);
        assertThat(phases.get(0)).containsEntry("corner", "1").containsKeys("frontLimitG", "rearLimitG");
        assertThat(CsvRows.of(Files.readString(out.resolve("remedies.csv")))).isNotEmpty();
    }

    @Test
    void theChartNamesEveryCorner() throws IOException {
        Path chart = folder.resolve("balance.svg");
        balance("--chart", chart.toString());
        String svg = Files.readString(chart);
        for (Map<String, Object> corner : JsonTree.objects(json(), "corners")) {
            assertThat(svg).contains("T" + (int) JsonTree.number(corner, "number") + " " + corner.get("name"));
        }
    }

    @Test
    void anExistingFileIsLeftAlone() throws IOException {
        Path file = Files.writeString(folder.resolve("balance.json"), "mine");
        assertThat(error("balance", CAR, CIRCUIT, "--out", file.toString())).contains("exists already");
        assertThat(file).hasContent("mine");
    }

    @ParameterizedTest
    @CsvSource({
        "slow:exit, does not say which end slides",
        "wobbly at exit, in these words: understeer",
        "oversteer:straight, 'straight' is not understood",
        "pushes on exit and loose on exit, contradict each other",
        "oversteer:exit:T99, has no corner 't99'"
    })
    void aComplaintThatIsNoneIsRefused(String complaint, String words) {
        assertThat(error("balance", CAR, CIRCUIT, "--complaint", complaint)).contains(words);
    }

    @Test
    void aTrackWithoutACornerIsRefused() throws IOException {
        Path strip = Files.writeString(
                folder.resolve("strip.json"),
                "{\"lapwright\": \"circuit/1\", \"name\": \"Strip\", \"closed\": false, \"segments\":"
                        + " [{\"type\": \"straight\", \"lengthM\": 400}]}");
        assertThat(error("balance", CAR, strip.toString())).contains("Strip: it has no corner");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "oversteer:lift-off"})
    void aCarWithOneGearHasABalance(String complaint) throws IOException {
        Path file = Files.writeString(
                folder.resolve("car.json"),
                Documents.demoText(DocumentKind.CAR, CAR)
                        .replaceFirst("\"ratios\": \\[[^]]*]", "\"ratios\": [1.2]")
                        .replaceFirst(
                                "(?s)\"adjustments\": \\[.*",
                                "\"adjustments\": [{\"name\": \"front-spring\", \"unit\": \"N/mm\", \"min\": 140,"
                                        + " \"max\": 280, \"step\": 20, \"standard\": 200, \"moves\":"
                                        + " [{\"quantity\": \"suspension.front.springNPerMm\"}]}]}"));
        Run run = complaint.isEmpty()
                ? Run.of("balance", file.toString(), CIRCUIT)
                : Run.of("balance", file.toString(), CIRCUIT, "--complaint", complaint);
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.line("mean")).containsPattern("(front|rear) 0\\.\\d\\d\\d +\\d+ ");
    }

    @Test
    void theSameQuestionHasTheSameAnswer() {
        assertThat(balance("--complaint", "oversteer:exit").out())
                .isEqualTo(balance("--complaint", "oversteer:exit").out());
    }
}
