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

/** The command and its report; what a kilogram is worth is held to mechanics by hand in core. */
class WeightCommandTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";
    private static final double KG = 5;

    @TempDir
    private Path folder;

    private static Run done(String command, String car, String circuit, String... more) {
        Run run = Run.of(
                Stream.concat(Stream.of(command, car, circuit), Stream.of(more)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... more) {
        return JsonTree.object(done(
                        "weight",
                        CAR,
                        CIRCUIT,
                        Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new))
                .out());
    }

    private static double lapTime(double mass, double frontPercent, String... more) {
        String[] settings = {
            "--json", "-s", "chassis.massKg=" + mass, "-s", "chassis.frontWeightPercent=" + frontPercent
        };
        Run run = done(
                "lap",
                CAR,
                CIRCUIT,
                Stream.concat(Stream.of(settings), Stream.of(more)).toArray(String[]::new));
        return JsonTree.number(JsonTree.object(run.out()), "lapTimeS");
    }

    private static Map<String, Object> place(Map<String, Object> result, String name) {
        return JsonTree.objects(result, "inTheCar").stream()
                .filter(place -> place.get("place").equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static String text(Run run) {
        return String.join(" ", run.lines()).replaceAll("\\s+", " ");
    }

    /** The demo car's document: 1285 kg without fuel, 47.5 % on the front axle. Minus is faster. */
    @Test
    void differencesAreThoseOfTwoLaps() {
        Map<String, Object> result = json();
        double now = JsonTree.number(result, "lapTimeS");
        Map<String, Object> centre = place(result, "at the centre of gravity");
        // The same laps are driven: what is left is the solver's own rounding.
        assertThat(JsonTree.number(centre, "differenceSLighter"))
                .isNegative()
                .isCloseTo(lapTime(1285 - KG, 47.5) - now, within(1e-9));
        assertThat(JsonTree.number(centre, "differenceSHeavier"))
                .isPositive()
                .isCloseTo(lapTime(1285 + KG, 47.5) - now, within(1e-9));
    }

    /** Moments about the rear axle, fuel at the centre of gravity: s' = (m s + d)/(m + d). */
    @Test
    void aKilogramOverTheFrontAxleIsAllOnTheFrontAxle() {
        Map<String, Object> result = json();
        double mass = JsonTree.number(result, "massKg");
        double share = (mass * 0.475 + KG) / (mass + KG);
        // A share worked out in another order of sums: some last digits of it.
        assertThat(JsonTree.number(place(result, "over the front axle"), "differenceSHeavier"))
                .isCloseTo(lapTime(1285 + KG, 100 * share) - JsonTree.number(result, "lapTimeS"), within(1e-7));
    }

    @Test
    void partsAddUpToTheLap() {
        Map<String, Object> result = json();
        List<Map<String, Object>> parts = JsonTree.objects(result, "parts");
        double sum = parts.stream()
                .mapToDouble(part -> JsonTree.number(part, "differenceSPerKg"))
                .sum();
        // A sum of some thousand numbers over ten kilograms.
        assertThat(sum).isCloseTo(JsonTree.number(result, "differenceSPerKg"), within(1e-10));
        Map<String, Object> first = parts.get(0);
        assertThat(JsonTree.number(first, "percentTimePerPercentMass"))
                .isCloseTo(
                        JsonTree.number(first, "differenceSPerKg")
                                * JsonTree.number(result, "massKg")
                                / JsonTree.number(first, "timeS"),
                        within(1e-12));
    }

    @Test
    void allLapsAreDrivenOnTheLineAskedFor() {
        Map<String, Object> result = json("--line", "smoothest");
        assertThat(JsonTree.number(result, "lapTimeS")).isEqualTo(lapTime(1285, 47.5, "--line", "smoothest"));
        assertThat(JsonTree.object(result, "line").get("line")).isEqualTo("smoothest");
    }

    @Test
    void aSetupWithBallastIsStudiedToo() {
        double without = JsonTree.number(json(), "massKg");
        assertThat(JsonTree.number(json("-s", "ballast=20"), "massKg")).isEqualTo(without + 20);
    }

    @Test
    void itIsSaidWhetherItIsWorthItWhereItCostsMostAndOverWhichAxle() {
        Run run = done("weight", CAR, CIRCUIT);
        assertThat(text(run))
                .contains("Taking 5 kg out makes the lap", "trust the scales for it, not the watch")
                // The longest straight.
                .contains("It costs most from T11 to T1")
                .contains("5 kg moved from the front axle to the rear make the lap")
                .contains("Caution: Keep to the least weight of your class", "Never take out what protects people");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void whatTheWatchShowsIsSaidAsSuch() {
        assertThat(text(done("weight", CAR, CIRCUIT, "--kg", "50", "--scatter-s", "0.1")))
                .contains("The timing screen shows that in");
    }

    /** v² = μ g R whatever the mass: no wings, and tyres that do not mind their load. */
    @Test
    void whereMassIsWorthNothingThatIsSaid() throws IOException {
        Path ring = folder.resolve("ring.json");
        Files.writeString(ring, """
                {"lapwright": "circuit/1", "name": "Ring", "closed": true,
                 "segments": [{"type": "arc", "radiusM": 50, "turn": "left", "angleDeg": 360}]}
                """);
        String car = Path.of("..", "docs", "examples", "lesson-car.json").toString();
        Map<String, Object> result =
                JsonTree.object(done("weight", car, ring.toString(), "--json").out());
        // Less than half a thousandth for the five: the drag of cornering takes a little less of a heavier car's grip.
        assertThat(JsonTree.number(result, "differenceSPerKg")).isCloseTo(0, within(1e-4));
        assertThat(text(done("weight", car, ring.toString()))).contains("no reason to take anything out here");
    }

    @Test
    void theFolderHoldsResultTableAndChart() throws IOException {
        Path out = folder.resolve("out");
        done("weight", CAR, CIRCUIT, "--out", out.toString());
        assertThat(out.toFile().list()).containsExactlyInAnyOrder("weight.json", "weight.csv", "weight.svg");
        Map<String, Object> result = JsonTree.object(Files.readString(out.resolve("weight.json")));
        List<Map<String, String>> rows = CsvRows.of(Files.readString(out.resolve("weight.csv")));
        assertThat(rows).hasSameSizeAs(JsonTree.objects(result, "parts"));
        assertThat(rows.get(0)).containsKeys("name", "kind", "fromM", "toM", "timeS", "differenceSPerKg");
        assertThat(Files.readString(out.resolve("weight.svg")))
                .contains(
                        "What a kilogram costs: Talvex GT at Harrowmere",
                        "T1 Tannery",
                        "(ms/kg)",
                        "over the rear axle");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--kg 0 | --kg",
                "--kg 200 | step of mass (kg)",
                "--kg NaN | --kg",
                "--kg heavy | --kg",
                "--scatter-s 0 | --scatter-s",
                "--line refresh | driven on one line",
                "--out result.txt | the file's kind is not known",
                "--chart weight.gif | the file's kind is not known",
            })
    void aMistakeIsNamedInOneLine(String arguments, String said) {
        Run run = Run.of(Stream.concat(Stream.of("weight", CAR, CIRCUIT), Stream.of(arguments.split(" ")))
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains(said);
    }

    /** Where the air lifts a car it grips by its weight alone. */
    @Test
    void whereLessMassIsSlowerTheAnswerSaysByWhatLimitsTheCar() {
        Run run = done(
                "weight",
                CAR,
                "../docs/examples/ring-100.json",
                "--line",
                "middle",
                "-s",
                "aero.clAFrontM2=-1",
                "-s",
                "aero.clARearM2=-1");
        assertThat(text(run))
                .contains("weight helps here", "by what limits the car, a kilogram", "ms at its front grip");
    }
}
