package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.cli.JsonTree;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OptimiseCommandTest {
    private static final String[] SMALL = {"optimise", "touring-merrow", "harrowmere", "--over", "rear-wing,rear-bar"};
    private static final List<String> NAMES = List.of("rear-wing", "front-bar", "final-drive");

    private static final Map<String, SweepResult> LATTICES = new ConcurrentHashMap<>();

    @TempDir
    private Path folder;

    private static Run small(String... more) {
        return Run.of(Stream.concat(Stream.of(SMALL), Stream.of(more)).toArray(String[]::new));
    }

    private static String text(Run run) {
        assertThat(run.code()).as(run.err()).isZero();
        return String.join(" ", run.out().split("\\s+"));
    }

    /** Every legal setting of three adjustments of a demo car, driven: once for all seeds. */
    private static SweepResult all(Car car, Track track) {
        return LATTICES.computeIfAbsent(track.name(), name -> sweep(car, track));
    }

    private static SweepResult sweep(Car car, Track track) {
        Sweep sweep = Sweep.of(car, track, Conditions.STANDARD);
        for (String name : NAMES) {
            double[] settings = car.adjustment(name).legalSettings().stream()
                    .mapToDouble(setting -> setting)
                    .toArray();
            sweep = sweep.over(new SweepAxis(name, settings));
        }
        return sweep.run();
    }

    @ParameterizedTest
    @Tag("heavy")
    @CsvSource({"1, 0", "9, 0", "1, 279"})
    void noLegalSettingOfAnExhaustiveSweepIsFasterWithinTheLimits(long seed, double topSpeedKmh) {
        Car car = Documents.car("gt-talvex");
        Track track = Documents.circuit("harrowmere");
        track = topSpeedKmh > 0 ? Documents.circuit("castelvane") : track;
        double least = all(car, track).points().stream()
                .flatMap(point -> point.figures().stream())
                .filter(figures -> 3.6 * figures.topSpeed() >= topSpeedKmh)
                .mapToDouble(LapFigures::lapTime)
                .min()
                .orElseThrow();
        OptimisationLimits limits =
                topSpeedKmh > 0 ? OptimisationLimits.NONE.withTopSpeedKmh(topSpeedKmh) : OptimisationLimits.NONE;
        OptimisationResult result = Optimisation.of(car, track, Conditions.STANDARD)
                .over(NAMES)
                .within(limits)
                .withSeed(seed)
                .run();
        // A setting worth less than half a thousandth stays where it was.
        assertThat(result.best().lapTime()).isBetween(least, least + 0.0005);
    }

    @Test
    void theTableSaysWhatChangesAndWhatItIsWorth() {
        assertThat(text(small())).contains("Before 1:").contains("Best 1:").contains("Difference by sector:");
    }

    @Test
    @Tag("long")
    void theSameSeedGivesTheSameTextWhateverTheThreads() {
        assertThat(small("--seed", "3", "--threads", "1").out())
                .isEqualTo(small("--seed", "3", "--threads", "3").out());
    }

    @Test
    void whatWasNotNamedIsSaidToBeLeftAlone() {
        assertThat(text(small()))
                .contains("Left alone:")
                .contains("brake-balance")
                .contains("(not named)");
    }

    @Test
    void jsonHoldsTheSettingsAndTheReading() {
        Map<String, Object> tree = JsonTree.object(small("--json").out());
        assertThat(tree).containsKeys("lapwright", "best", "before", "front", "ranges", "reading", "cautions", "seed");
        Map<?, ?> best = (Map<?, ?>) tree.get("best");
        assertThat((Map<?, ?>) best.get("settings")).hasSize(2);
    }

    @Test
    void aFolderGetsResultTableChartAndASetupThatGivesTheLapTimeFound() throws IOException {
        Path out = folder.resolve("best");
        Run run = small("--out", out.toString());
        for (String name : List.of("optimisation.json", "setups.csv", "best-setup.json", "lap-time-top-speed.svg")) {
            assertThat(out.resolve(name)).isNotEmptyFile();
            assertThat(run.out()).contains("Wrote " + out.resolve(name));
        }
        Map<String, Object> tree = JsonTree.object(Files.readString(out.resolve("optimisation.json")));
        double found = ((Number) ((Map<?, ?>) tree.get("best")).get("lapTimeS")).doubleValue();
        Map<String, Object> lap = JsonTree.object(Run.of(
                        "lap",
                        "touring-merrow",
                        "harrowmere",
                        "--setup",
                        out.resolve("best-setup.json").toString(),
                        "--json")
                .out());
        // The same car and road; JSON gives numbers in full.
        assertThat(((Number) lap.get("lapTimeS")).doubleValue()).isCloseTo(found, within(1e-9));
    }

    @Test
    @Tag("heavy")
    void aSetupBetweenLegalStepsIsSaidToBeThere() {
        assertThat(text(small("-s", "rear-wing=2.5"))).contains("between legal steps: rear-wing");
        assertThat(text(small("-s", "rear-wing=2"))).doesNotContain("between legal steps: rear-wing");
    }

    @Test
    @Tag("long")
    void severalCircuitsAndDaysAreSaid() {
        String text = text(small("--circuit", "castelvane=0.5", "--range", "conditions.airTempC=5,35", "--worst"));
        assertThat(text)
                .contains("Castelvane with weight 0.5")
                .contains("Days 2: conditions.airTempC 5, 35; the day on which it makes the least faster counts")
                .contains("Difference by sector at Castelvane");
    }

    @Test
    void limitsThatNobodyKeepsAreNamedWithWhatWasMissed() {
        Run run = small("--min-top-speed-kmh", "330", "--min-ride-height-mm", "40");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err())
                .contains("top speed")
                .contains("for 330 km/h, off by")
                .contains("was the best found")
                .doesNotContain("ride height at");
    }

    @Test
    @Tag("long")
    void movedRideHeightsBrakesAndPressuresComeWithCautions() {
        String text = text(Run.of(
                "optimise",
                "gt-talvex",
                "harrowmere",
                "--over",
                "ride-height,brake-balance,front-pressure",
                "-s",
                "ride-height=76",
                "-s",
                "brake-balance=78",
                "-s",
                "front-pressure=30psi"));
        assertThat(text)
                .contains("ride-height moves ride heights")
                .contains("brake-balance moves brake balance")
                .contains("front-pressure moves tyre pressures")
                .contains("Keep to the maker's limits");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--over rear-wnig                    | perhaps you meant rear-wing",
                "--over rear-bar,rear-bar            | searched twice",
                "--balance-percent 3                 | write from:to",
                "--balance-percent 3:1               | swap them",
                "--balance-percent a:1               | write from:to",
                "--circuit castelvane=much           | its weight is not a number",
                "--circuit castelvane=0              | is not above zero",
                "--circuit castelvan=1               | castelvane",
                "--range airTempC=5,35               | not one of the conditions",
                "--range conditions.airTempC=5 --range conditions.airTempC=9 | given twice",
                "--worst                             | add --range",
                "--threads 0                         | give 1 or more",
                "--min-top-speed-kmh -3              | is outside its range",
                "--min-ride-height-mm NaN            | is not a number",
                "--out result.txt                    | end a file in",
            })
    void badInputIsOneLineThatSaysWhatToDo(String arguments, String said) {
        Run run = Run.of(
                Stream.concat(Stream.of("optimise", "touring-merrow", "harrowmere"), Stream.of(arguments.split(" ")))
                        .toArray(String[]::new));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.err()).contains(said).doesNotContain("Exception");
    }

    @Test
    void noLineIsWiderThanAHundredColumns() {
        assertThat(small().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    /** Neither car is slower on its own line than on one that was found for the other, or than on the smoothest. */
    @Test
    @Tag("heavy")
    void theBestIsCheckedWithTheLineFoundAnewForBoth() {
        Map<String, Object> result =
                JsonTree.object(small("--spacing-m", "5", "--json").out());
        Map<String, Object> own = JsonTree.object(result, "ownLines");
        double before = (double) own.get("lapTimeBeforeS");
        double after = (double) own.get("lapTimeAfterS");
        Map<String, Object> best = JsonTree.object(result, "best");
        assertThat(own.get("differenceOnOneLineS")).isEqualTo(best.get("differenceS"));
        assertThat((double) own.get("differenceS")).isEqualTo(after - before);
        assertThat(after).isLessThan((double) best.get("lapTimeS"));
        String fastest = "touring-merrow harrowmere --line fastest --spacing-m 5 --json";
        assertThat(before).isLessThanOrEqualTo((double)
                JsonTree.object(Run.of(("lap " + fastest).split(" ")).out()).get("lapTimeS"));
        assertThat(text(small("--spacing-m", "5"))).contains("Own lines before", "With the fastest line found anew");
    }

    @Test
    @Tag("heavy")
    void onTheMiddleNoLineIsLookedFor() {
        Run run = small("--line", "middle", "--json");
        assertThat(JsonTree.object(run.out()).get("ownLines")).isNull();
        assertThat(text(small("--line", "middle"))).doesNotContain("Own lines");
    }

    @Test
    void howSureTheBestSetupIsIsSaidIfAsked() {
        Run run = small("--line", "middle", "--draws", "20", "--json");
        assertThat(run.code()).as(run.err()).isZero();
        Map<String, Object> result = JsonTree.object(run.out());
        assertThat(JsonTree.number(result, "differenceLowS")).isLessThan(JsonTree.number(result, "differenceHighS"));
        assertThat(result).containsKeys("chanceOfGain", "standing", "doubt");
        // Of each change of the best setup it is said whether it may be recommended.
        Map<String, Object> recommended = JsonTree.object(result, "recommended");
        long moved = ((List<?>) result.get("ranges"))
                .stream()
                        .map(one -> (Map<?, ?>) one)
                        .filter(one -> !one.get("best").equals(one.get("before")))
                        .count();
        assertThat(moved)
                .isPositive()
                .isEqualTo(
                        JsonTree.object(recommended, "changes").size() + ((List<?>) recommended.get("leftOut")).size());
    }

    @Test
    void carsAreDrawnForOneCircuitOnOneDay() {
        Run run = small("--draws", "20", "--circuit", "skarnfell=1");
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("one circuit on one day");
    }
}
