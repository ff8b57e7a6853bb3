package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.cli.CsvRows;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.cli.tables.DrivenLapsDemo;
import dev.lapwright.documents.Documents;
import dev.lapwright.logs.LapLogs;
import dev.lapwright.report.Numbers;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FitCommandTest {
    private static final String DEMO = "castelvane-laps.csv";
    private static final String ON_HARD_BAR = "castelvane-laps-bar.csv";
    private static final int SPEED = 3;
    private static final int DISTANCE = 2;

    @TempDir
    private Path folder;

    private static Run fit(String log, String... more) {
        return Run.of(Stream.concat(Stream.of("fit", "gt-talvex", "castelvane", log), Stream.of(more))
                .toArray(String[]::new));
    }

    private static Run done(String log, String... more) {
        Run run = fit(log, more);
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String log, String... more) {
        return JsonTree.object(
                done(log, Stream.concat(Stream.of("--json"), Stream.of(more)).toArray(String[]::new))
                        .out());
    }

    private static Map<String, Object> estimate(Map<String, Object> tree, String parameter) {
        return JsonTree.objects(tree, "estimates").stream()
                .filter(estimate -> estimate.get("parameter").equals(parameter))
                .findFirst()
                .orElseThrow();
    }

    private static void tellsTheTruth(Map<String, Object> tree, String parameter, double truth) {
        Map<String, Object> estimate = estimate(tree, parameter);
        assertThat(estimate.get("standing")).as(parameter).isIn("determined", "leaning");
        assertThat(truth)
                .as(parameter)
                .isBetween(JsonTree.number(estimate, "lower"), JsonTree.number(estimate, "upper"));
    }

    /** The demo log with one of its columns written otherwise, under other headings. */
    private String log(UnaryOperator<String> headings, int column, UnaryOperator<String> cell) throws IOException {
        List<String> lines = LapLogs.demos().stream()
                .filter(d -> d.fileName().equals(DEMO))
                .findFirst()
                .orElseThrow()
                .text()
                .lines()
                .toList();
        String rows = lines.stream()
                .skip(1)
                .map(line -> {
                    String[] cells = line.split(",");
                    cells[column] = cell.apply(cells[column]);
                    return String.join(",", cells);
                })
                .collect(Collectors.joining("\n"));
        Path file = folder.resolve("monday.csv");
        Files.writeString(file, headings.apply(lines.get(0)) + "\n" + rows + "\n");
        return file.toString();
    }

    private static String times(String cell, double factor) {
        return Numbers.machine(Double.parseDouble(cell) * factor);
    }

    /** tracks-demo/README.md tells with which car the demo was made; intervals of 95 % are to hold it. */
    @Test
    void theDemoTellsTheCarThatItWasMadeWith() {
        Map<String, Object> tree = json(DEMO);
        tellsTheTruth(tree, "gripFactor", DrivenLapsDemo.GRIP);
        tellsTheTruth(tree, "powerFactor", DrivenLapsDemo.POWER);
        double before = JsonTree.number(estimate(tree, "dragAreaM2"), "before");
        tellsTheTruth(tree, "dragAreaM2", before + DrivenLapsDemo.MORE_DRAG_AREA);
        assertThat(JsonTree.number(tree, "rmsFittedKmh")).isLessThan(JsonTree.number(tree, "rmsGivenKmh"));
    }

    @Test
    void theDemoLogsAreThoseThatTheirToolPrints() {
        assertThat(demo(DEMO)).isEqualTo(DrivenLapsDemo.text());
        assertThat(demo(ON_HARD_BAR)).isEqualTo(DrivenLapsDemo.textOnHardBar());
    }

    private static String demo(String name) {
        return LapLogs.demos().stream()
                .filter(d -> d.fileName().equals(name))
                .findFirst()
                .orElseThrow()
                .text();
    }

    @Test
    void theInLapIsLeftOutAndSaid() {
        Run run = done(DEMO);
        assertThat(run.line("Left out")).contains("Lap 7");
        assertThat(run.out()).contains("Caution:").contains("in km/h");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void oneLapCanBeChosen() {
        Map<String, Object> tree = json(DEMO, "--lap", "5");
        assertThat(JsonTree.objects(tree, "laps")).hasSize(1);
        assertThat(JsonTree.objects(tree, "laps").get(0).get("name")).isEqualTo("lap 5 of " + DEMO);
    }

    @Test
    void onlyWhatIsNamedIsFitted() {
        Map<String, Object> tree = json(DEMO, "--lap", "5", "--fit", "grip,power");
        assertThat(JsonTree.objects(tree, "estimates"))
                .extracting(estimate -> estimate.get("parameter"))
                .containsExactly("gripFactor", "powerFactor");
    }

    @Test
    @Tag("long")
    void moreConfidenceIsAWiderInterval() {
        Map<String, Object> wide = estimate(json(DEMO, "--lap", "5", "--confidence-percent", "99"), "gripFactor");
        Map<String, Object> narrow = estimate(json(DEMO, "--lap", "5", "--confidence-percent", "80"), "gripFactor");
        assertThat(JsonTree.number(wide, "upper") - JsonTree.number(wide, "lower"))
                .isGreaterThan(JsonTree.number(narrow, "upper") - JsonTree.number(narrow, "lower"));
    }

    @Test
    void theFittedCarIsADocumentThatSaysWhereItsValuesComeFrom() {
        Path to = folder.resolve("fitted.json");
        Map<String, Object> tree = json(
                // What stands in for the line is no part of the document.
                DEMO, "--lap", "5", "--fit", "grip,power", "--doubt", "line=0", "--to", to.toString());
        Car car = Documents.car(to.toString());
        assertThat(car.name()).isEqualTo("Talvex GT");
        assertThat(car.description()).contains("Fitted to lap 5 of " + DEMO).contains("power 0.9");
        // Numbers are written so that they read back as the same double; the scale was 1 before.
        assertThat(car.value("engine.powerScale"))
                .isCloseTo(JsonTree.number(estimate(tree, "powerFactor"), "fitted"), within(1e-12));
        Map<String, Object> lap = JsonTree.object(
                Run.of("lap", to.toString(), "castelvane", "--json").out());
        assertThat(JsonTree.number(lap, "lapTimeS")).isCloseTo(JsonTree.number(tree, "fittedTimeS"), within(1e-9));
    }

    @Test
    void aFolderHoldsResultTablesChartAndCar() throws IOException {
        Path out = folder.resolve("fit");
        done(DEMO, "--lap", "5", "--fit", "grip", "--name", "Talvex GT, Monday", "--out", out.toString());
        try (Stream<Path> files = Files.list(out)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "fit.json", "estimates.csv", "parts.csv", "trace.csv", "fitted-car.json", "fit.svg");
        }
        assertThat(CsvRows.of(Files.readString(out.resolve("estimates.csv")))).hasSize(1);
        assertThat(CsvRows.of(Files.readString(out.resolve("parts.csv"))).get(0))
                .containsKey("loggedSlowestKmh");
        assertThat(CsvRows.of(Files.readString(out.resolve("trace.csv"))).get(0))
                .containsKey("fittedKmh");
        assertThat(Documents.car(out.resolve("fitted-car.json").toString()).name())
                .isEqualTo("Talvex GT, Monday");
    }

    @Test
    void aColumnUnderAStrangeHeadingCanBeNamed() throws IOException {
        String log = log(h -> h.replace("Speed (km/h)", "Pace"), SPEED, cell -> cell);
        Run refused = fit(log);
        assertThat(refused.code()).isEqualTo(2);
        assertThat(refused.err()).contains("no heading is known for speed").contains("Pace, Throttle (%)");
        assertThat(done(log, "--column", "speed=Pace:km/h", "--lap", "5", "--fit", "grip")
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("speed from 'Pace' in km/h");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                // As m/s, km/h are 3.6 times too fast (by definition): beyond any car, or than distance and time say.
                "Speed (km/h) | Speed | 3 | 1 | which looks like km/h or mph",
                "Speed (km/h) | Speed (km/h) | 3 | 0.277778 | speeds look like m/s taken for km/h",
                "Distance (m) | Distance (km) | 2 | 1 | looks like m taken for km",
                "Distance (m) | Distance | 2 | 0.001 | distances look like km taken for m",
                "Time (s) | Time | 1 | 1000 | looks like milliseconds",
                "Throttle (%) | Throttle | 4 | 40 | throttle goes up to",
            })
    void aColumnInAnotherUnitIsToldByWhatItLooksLike(
            String heading, String written, int column, double factor, String told) throws IOException {
        refused(told, log(h -> h.replace(heading, written), column, cell -> times(cell, factor)));
    }

    @Test
    void lapsGluedTogetherAreToldByTheirLength() throws IOException {
        // No lap numbers, and a distance that runs on: three laps and 900 m of 5.54 km each.
        double[] distance = {0, 0, 0};
        String log = log(h -> h.replace("Lap,", "Number of the day,"), DISTANCE, cell -> {
            double now = Double.parseDouble(cell);
            distance[1] += now < distance[0] ? distance[0] : 0;
            distance[0] = now;
            return Numbers.machine(distance[1] + now);
        });
        refused("another circuit, or a detour", log);
        String two = Files.readAllLines(Path.of(log)).stream()
                .filter(line -> line.matches("Number.*|[45],.*"))
                .collect(Collectors.joining("\n"));
        Path file = Files.writeString(folder.resolve("two.csv"), two + "\n");
        refused("looks like two laps glued together", file.toString());
    }

    @Test
    void aStatedDoubtIsTakenAndAKnownThingIsNotInDoubt() {
        Map<String, Object> tree =
                json(DEMO, "--lap", "5", "--fit", "power", "--doubt", "mass=3", "--doubt", "cg-height=0");
        List<Map<String, Object>> nuisances = JsonTree.objects(tree, "nuisances");
        assertThat(nuisances)
                .extracting(nuisance -> nuisance.get("doubtOf"))
                .contains("mass", "line", "speed-scale", "sensor-lag")
                .doesNotContain("cg-height");
        // Of the sizes of errors nothing is asked: fitting power alone leaves a misfit, of which a free mass takes a
        // part.
        Map<String, Object> power = estimate(tree, "powerFactor");
        assertThat(JsonTree.number(power, "standardError")).isPositive();
        assertThat(power.get("standing")).isEqualTo("leaning");
    }

    @Test
    void headingsThatAreNotUnderstoodAreListed() throws IOException {
        String log = log(h -> h.replace("Lat accel (g)", "Mood"), SPEED, cell -> cell);
        assertThat(done(log, "--lap", "5", "--fit", "grip").out().replaceAll("\\s+", " "))
                .contains("Headings not understood, their columns not used: 'Mood'.");
    }

    @Test
    void aSearchThatEndsFarOffSaysSo() throws IOException {
        // A fifth too fast and too slow by turns, as the clock agrees: no car has that, whatever is fitted.
        int[] row = {0};
        String log = log(h -> h, SPEED, cell -> times(cell, row[0]++ / 40 % 2 == 0 ? 1.2 : 0.8));
        refused("the search failed", log, "--lap", "5", "--fit", "grip");
    }

    @Test
    void anotherCircuitIsRefused() {
        Run run = Run.of("fit", "gt-talvex", "harrowmere", DEMO);
        assertThat(run.code()).isEqualTo(2);
        // The smoothest line of Castelvane is 5508 m long, of which ten samples a second at 250 km/h leave up to 7 m
        // unlogged.
        assertThat(run.err())
                .containsPattern("55(0[0-9]) m long and Harrowmere 2962 m")
                .doesNotContain("\tat ");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--fit|wings|nothing that can be fitted",
                "--doubt|mass|has no equals sign",
                "--doubt|wings=1|nothing that a fit takes with doubt",
                "--doubt|mass=heavy|is no number",
                "--doubt|mass=-1|outside its range",
                "--lap|9|there are: 4, 5, 6, 7",
                "--lap|7|an out lap, an in lap",
                "--confidence-percent|100|outside its range",
                "--confidence-percent|NaN|not a number",
                "--column|speed|names no column",
                "--column|speed=Pace|no column is headed 'Pace'",
                "--column|x=Speed (km/h)|it is not read here",
                "--name|' '|it is blank",
                "--to|car.txt|end the name in .json",
                "--line|refresh|driven on one line"
            })
    void badInputIsOneClearLine(String option, String value, String told) {
        refused(told, DEMO, option, value);
    }

    @Test
    void aLogOfLapTimesIsNoLogOfDrivenLaps() {
        refused("no heading is known for speed", "castelvane-wings.csv");
        refused("there is no such file", "nowhere.csv");
    }

    private static void refused(String told, String log, String... more) {
        Run run = fit(log, more);
        assertThat(run.code()).as(run.out()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).contains(told).matches("lapwright: .+; .+");
    }

    @Test
    @Tag("long")
    void lapsOnTwoBarsAreFittedTogether() {
        Map<String, Object> tree = json(DEMO, "--also", ON_HARD_BAR, "--with", "front-bar=6");
        assertThat(JsonTree.objects(tree, "runs")).hasSize(2);
        assertThat(JsonTree.objects(tree, "laps")).hasSize(6);
        tellsTheTruth(tree, "gripFactor", DrivenLapsDemo.GRIP);
        tellsTheTruth(tree, "powerFactor", DrivenLapsDemo.POWER);
        assertThat(JsonTree.objects(tree, "nuisances"))
                .anySatisfy(nuisance -> assertThat(nuisance).containsEntry("doubtOf", "run-grip"))
                .anySatisfy(nuisance -> assertThat(nuisance).containsEntry("doubtOf", "setup-effect"));
    }

    @Test
    void theSecondRunAndWhatWasSetOtherwiseAreSaid() {
        Run run = done(DEMO, "--also", ON_HARD_BAR, "--with", "front-bar=6");
        assertThat(run.line("Run 2")).contains("front-bar=6");
        assertThat(run.out().replaceAll("\\s+", " "))
                .contains("lap 13 of castelvane-laps-bar.csv")
                .contains("setup effect");
    }

    @Test
    void aSettingThatNoCarHasIsRefused() {
        Run run = Run.of("fit", "gt-talvex", "castelvane", DEMO, "--also", ON_HARD_BAR, "--with", "front-baar=6");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("front-baar").contains("front-bar");
    }

    @Test
    void whatWasSetWithoutARunIsRefused() {
        Run run = Run.of("fit", "gt-talvex", "castelvane", DEMO, "--with", "front-bar=6");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("--also");
    }

    @Test
    @Tag("long")
    void theRunThatWouldTellIsNamed() {
        Map<String, Object> tree = json(DEMO, "--next-run");
        List<Map<String, Object>> next = JsonTree.objects(tree, "nextRuns");
        assertThat(next).isNotEmpty().allSatisfy(run -> {
            assertThat((String) run.get("setup")).containsPattern("(wing|planes|bar|spring)=");
            assertThat(JsonTree.number(run, "gripBalanceStandardErrorPercent")).isPositive();
        });
        assertThat(JsonTree.objects(json(DEMO), "nextRuns")).isEmpty();
    }

    @Test
    void theFittedDocumentSaysHowWellItIsKnown() throws IOException {
        Path file = folder.resolve("fitted.json");
        Run.of("fit", "gt-talvex", "castelvane", DEMO, "--to", file.toString());
        CarDoubt doubt = Documents.car(file.toString()).doubt();
        assertThat(doubt.quantities()).containsKeys("tyres.front.frictionY", "chassis.massKg", "aero.cdAM2");
        assertThat(doubt.correlated()).hasSameElementsAs(doubt.quantities().keySet());
    }

    @Test
    @Tag("long")
    void whatTheDriverSaysGivesUpFirstMovesTheGripBalanceThatWay() {
        double before = gripBalance(json(DEMO));
        double front = gripBalance(json(DEMO, "--gives-up", "T6=front"));
        double rear = gripBalance(json(DEMO, "--gives-up", "T6=rear"));
        // Of less front grip the front gives up first.
        assertThat(front).isLessThan(before);
        assertThat(rear).isGreaterThan(before);
    }

    private static double gripBalance(Map<String, Object> tree) {
        return JsonTree.objects(tree, "nuisances").stream()
                .filter(nuisance -> nuisance.get("doubtOf").equals("grip-balance"))
                .mapToDouble(nuisance -> JsonTree.number(nuisance, "found"))
                .sum();
    }

    @ParameterizedTest
    @CsvSource({"T6=left, 'front, rear or both'", "T99=front, T6"})
    void wordsThatNobodyUnderstandsAreRefused(String word, String remedy) {
        Run run = fit(DEMO, "--gives-up", word);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(remedy);
    }
}
