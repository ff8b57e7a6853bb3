package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class StintCommandTest {
    @TempDir
    private Path folder;

    private static Run run(String... more) {
        return Run.of(Stream.concat(Stream.of("stint", "gt-talvex", "harrowmere"), Stream.of(more))
                .toArray(String[]::new));
    }

    private static Run done(String... more) {
        Run run = run(more);
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... more) {
        return JsonTree.object(done(Stream.concat(Stream.of("--json", "--no-doubt"), Stream.of(more))
                        .toArray(String[]::new))
                .out());
    }

    @Test
    void fuelAndCompoundsHaveTheirIntervals() {
        String[] race = {"--laps", "8", "--compound", "soft:1.01:0.2", "--compound", "hard:1:0.05", "--draws", "30"};
        String told = done(race).out().replaceAll("\\s+", " ");
        assertThat(told)
                .contains("In nine of ten of 30 cars that this one may be it takes,")
                .contains("what is set lasts to the flag on 100 % of all")
                .contains("hard is then between")
                .contains("30 cars were drawn");
        Map<String, Object> doubt = JsonTree.object(
                JsonTree.object(
                        done(Stream.concat(Stream.of("--json"), Stream.of(race)).toArray(String[]::new))
                                .out()),
                "doubt");
        Map<String, Object> soft = JsonTree.objects(doubt, "runs").get(0);
        assertThat(JsonTree.number(soft, "fuelNeededLowKg")).isLessThan(JsonTree.number(soft, "fuelNeededHighKg"));
        assertThat(JsonTree.number(doubt, "lapped")).isEqualTo(30);
        assertThat(run("--laps", "2", "--gives-up", "rear").code()).isEqualTo(2);
    }

    /**
     * Common practice, no source: about 30 litres suit a 20-minute sprint of a GT car. About is a third here: all laps are at the limit of
     * the car, which takes more than most races do (docs/limits.md), and a reserve is among them.
     */
    @Test
    void aSprintOfTwentyMinutesTakesAboutThirtyLitres() {
        assertThat(JsonTree.number(json("--minutes", "20"), "startFuelL")).isBetween(20.0, 40.0);
    }

    /** Common practice, no source: a softer compound is worth some tenths on a lap of a minute; taken as 1 to 2 % of grip. */
    @ParameterizedTest
    @CsvSource({"1", "2"})
    void aSofterCompoundIsWorthSomeTenthsOnALapOfAMinute(double percent) {
        Map<String, Object> tree = json("--laps", "1");
        Map<String, Object> first =
                JsonTree.objects(JsonTree.objects(tree, "runs").get(0), "laps").get(0);
        double perMinute = 60 / JsonTree.number(first, "lapTimeS");
        double difference = percent * JsonTree.number(tree, "differenceSPerPercentGrip") * perMinute;
        assertThat(difference).isBetween(-0.9, -0.1);
    }

    @Test
    void theCrossoverIsTold() {
        Run run = done("--no-doubt", "--laps", "12", "--compound", "soft:1.01:0.2", "--compound", "hard:1:0.05");
        assertThat(run.out().replaceAll("\\s+", " ")).contains("hard is faster from lap 8 on");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void aLongRaceIsShownInPartAndWrittenInFull() throws IOException {
        Path csv = folder.resolve("stint.csv");
        Run run = done("--no-doubt", "--laps", "60", "--out", csv.toString());
        assertThat(run.out()).contains("One lap in 2").contains("laps in reserve 1");
        assertThat(run.line("60 ")).isNotBlank();
        assertThat(Files.readAllLines(csv)).hasSize(61);
    }

    @Test
    void theFolderHoldsResultTableAndChart() {
        Path out = folder.resolve("stint");
        done("--no-doubt", "--laps", "2", "--out", out.toString());
        assertThat(out).isDirectoryContaining("glob:**stint.json");
        assertThat(out).isDirectoryContaining("glob:**stint.csv");
        assertThat(out).isDirectoryContaining("glob:**laps.svg");
    }

    @Test
    void moreConsumptionIsMoreFuel() {
        double less = JsonTree.number(json("--laps", "2", "--consumption", "270"), "startFuelKg");
        double more = JsonTree.number(json("--laps", "2", "--consumption", "3000=330,8000=320"), "startFuelKg");
        assertThat(more).isGreaterThan(less);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--reserve-laps|1|length is not given",
                "--laps|0|outside its range",
                "--minutes|NaN|not a number",
                "--minutes|400|outside its range"
            })
    void aRaceWithoutAUsableLengthIsRefused(String option, String value, String told) {
        refused(told, option, value);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--consumption|3|outside its range",
                "--consumption|3000=a|not a number",
                "--consumption|6000=300,3000=300|rising order",
                "--compound|soft:1|no name with grip and wear",
                "--compound|soft:1:60|outside its range",
                "--density-kg-per-l|0|outside its range",
                "--minutes|5|both counted and timed"
            })
    void badInputIsOneClearLine(String option, String value, String told) {
        refused(told, "--laps", "5", option, value);
    }

    private static void refused(String told, String... arguments) {
        Run run = run(arguments);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).contains(told).matches("lapwright: .+; .+");
    }

    @Test
    @Tag("heavy")
    void stopsArePlannedAndWhatOneMayCostIsSaid() {
        String[] race = {"--laps", "12", "--line", "middle", "--compound", "soft:1.02:0.5", "--compound", "hard:1:0.1"};
        Run free = with(race, "--stop-loss-s", "0", "--most-stops", "1");
        assertThat(free.out()).contains("Plans of stops for tyres").contains("pays where it costs less than");
        Run dear = with(race, "--stop-loss-s", "60", "--most-stops", "1");
        assertThat(dear.out()).contains("Drive through on");
        Run slow = with(
                race,
                "--stop-loss-s",
                "60",
                "--most-stops",
                "1",
                "--neutralised",
                "5-7",
                "--neutral-pace-percent",
                "50");
        assertThat(slow.out())
                .contains("laps 5 to 7 are neutralised, at 50 % of the pace")
                .contains("a stop then costs 30 s");
    }

    private static Run with(String[] race, String... more) {
        return done(Stream.concat(Stream.of(race), Stream.of(more)).toArray(String[]::new));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--neutralised 3-5 | nothing is said of what a stop costs",
                "--stop-loss-s 20 --neutralised 5 | '5' is no stretch of laps",
                "--stop-loss-s 20 --neutralised 5-3 | is no stretch",
                "--stop-loss-s 20 --neutral-pace-percent 50 | nothing is said of which they are",
                "--stop-loss-s -3 | --stop-loss-s: -3 is outside its range",
                "--stop-loss-s 20 --most-stops 5 | --most-stops: 5 is outside its range"
            })
    void stopsThatCannotBeAreRefused(String words, String problem) {
        Run run = run(Stream.concat(Stream.of("--laps", "4", "--line", "middle"), Stream.of(words.split(" ")))
                .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains(problem).hasLineCount(1);
    }
}
