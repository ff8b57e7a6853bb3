package dev.lapwright.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every difference of lap time stands in results under a name that begins with "difference". A name in seconds that does not
 * must be listed here, as something else than a difference of lap times.
 */
@Tag("heavy")
class DifferenceKeysTest {
    private static final Pattern IN_SECONDS = Pattern.compile("[a-z][A-Za-z0-9]*(?<!Per)S(Per[A-Z][A-Za-z0-9]*|)");
    private static final Pattern DIFFERENCE = Pattern.compile("difference([A-Z][A-Za-z0-9]*)?S(Per[A-Z][A-Za-z0-9]*|)");

    /** Times of laps and of parts of them. */
    private static final Set<String> TIMES = Set.of(
            "timeS",
            "lapTimeS",
            "otherLapTimeS",
            "lapTimeBeforeS",
            "lapTimeAfterS",
            "sectorTimesS",
            "sectorsBeforeS",
            "sectorsAfterS",
            "lapTimeByCircuitS",
            "lapTimeAtIdealS",
            "bestLapS",
            "modelLapS",
            "bestS",
            "meanS",
            "medianS",
            "slowLimitS",
            "timeWithoutCourseS",
            "clockTimeS",
            "speedTimeS",
            "loggedTimeS",
            "givenTimeS",
            "fittedTimeS",
            "timeInGearS",
            "timeOnLimiterS",
            "timeToBrakingS",
            "beforeBrakingS",
            "shiftTimeS");

    /** How laps, runs and estimates scatter, which has no sign; how a day goes; how a curve bends. */
    private static final Set<String> OTHERS = Set.of(
            "scatterS",
            "modelChoicesDeviationS",
            "spreadS",
            "lapToLapS",
            "lapS",
            "runS",
            "runAloneS",
            "runToRunS",
            "halfWidthS",
            "predictedDoubtS",
            "togetherDoubtS",
            "lapSlopeSPerLap",
            "driftSPerLap",
            "bendSPerLap2",
            "curvatureS");

    /** Maps whose keys are names of adjustments and setups, no names of ours. */
    private static final Set<String> NAMED = Set.of("settings", "otherSettings", "baselineSettings");

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lap gt-talvex harrowmere --against rear-wing=3",
                "compare gt-talvex harrowmere --against rear-wing=3",
                "sweep gt-talvex harrowmere --vary rear-wing=2:10:4 --draws 20",
                "sensitivity student-pipit harrowmere",
                "optimise gt-talvex harrowmere --over rear-wing,front-bar",
                "gearing gt-talvex harrowmere --tow-percent 20",
                "balance gt-talvex harrowmere --complaint understeer:entry",
                "line gt-talvex harrowmere",
                "stint gt-talvex harrowmere --laps 3 --compound soft:1.01:0.2 --compound hard:1:0.05",
                "pressures gt-talvex harrowmere --pair all:17psi:24psi",
                "evidence castelvane-wings.csv --predicted-s -0.28",
                "fit gt-talvex castelvane castelvane-laps.csv",
                "weight gt-talvex harrowmere",
                "ride gt-talvex harrowmere --corner T3"
            })
    void aDifferenceOfLapTimeIsNamedSoInEveryFile(String command) throws IOException {
        written(command);
        check(namesIn(folder));
    }

    @Test
    void aDifferenceOfLapTimeIsNamedSoInABrief() throws IOException {
        aDifferenceOfLapTimeIsNamedSoInEveryFile("brief student-pipit harrowmere --line middle --draws 20");
    }

    private static void check(Set<String> names) {
        List<String> inSeconds = names.stream()
                .filter(name -> IN_SECONDS.matcher(name).matches())
                .toList();
        assertThat(inSeconds).isNotEmpty();
        assertThat(inSeconds)
                .filteredOn(name -> !DIFFERENCE.matcher(name).matches())
                .filteredOn(name -> !TIMES.contains(name) && !OTHERS.contains(name))
                .filteredOn(name -> !name.matches("timeInGear[0-9]+S"))
                .isEmpty();
    }

    private static Set<String> namesIn(Path folder) throws IOException {
        Set<String> names = new TreeSet<>();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.toList()) {
                if (file.toString().endsWith(".json")) {
                    gather(JsonTree.object(Files.readString(file)), names);
                } else if (file.toString().endsWith(".csv")) {
                    names.addAll(List.of(Files.readString(file)
                            .lines()
                            .findFirst()
                            .orElseThrow()
                            .split(",")));
                }
            }
        }
        return names;
    }

    private static void gather(Object tree, Set<String> names) {
        if (tree instanceof Map<?, ?> map) {
            map.forEach((name, value) -> {
                names.add((String) name);
                if (!NAMED.contains(name)) {
                    gather(value, names);
                }
            });
        } else if (tree instanceof List<?> list) {
            list.forEach(one -> gather(one, names));
        }
    }

    /** The sign, in all results that hold both lap times: the lap's own less that which it is held against. */
    @Test
    void aDifferenceIsMinusWhereTheLapIsFaster() throws IOException {
        Map<String, Object> lap = tree("lap gt-talvex harrowmere --against rear-wing=3", "lap");
        Map<String, Object> sweep = tree("sweep gt-talvex harrowmere --vary rear-wing=2:10:4 --draws 20", "sweep");
        Map<String, Object> optimised =
                tree("optimise gt-talvex harrowmere --over rear-wing,front-bar", "optimisation");
        Map<String, Object> geared = JsonTree.objects(
                        tree("gearing gt-talvex harrowmere --tow-percent 20", "gearing"), "scenarios")
                .get(0);
        List<Map<String, Object>> lines = JsonTree.objects(tree("line gt-talvex harrowmere", "lines"), "lines");
        List<Double> seen = new ArrayList<>();
        seen.addAll(against(JsonTree.number(lap, "lapTimeS"), JsonTree.objects(lap, "against")));
        seen.addAll(against(baseline(sweep, "baseline"), JsonTree.objects(sweep, "points")));
        seen.addAll(against(baseline(optimised, "before"), List.of(JsonTree.object(optimised, "best"))));
        seen.addAll(against(baseline(geared, "baseline"), JsonTree.objects(geared, "choices")));
        seen.addAll(against(JsonTree.number(lines.get(0), "lapTimeS"), lines));
        assertThat(seen).anyMatch(difference -> difference < 0).anyMatch(difference -> difference > 0);
    }

    /** What a run writes that the names are looked through of as well: it runs once for both. */
    private Map<String, Object> tree(String command, String file) throws IOException {
        Path out = written(command);
        Map<String, Object> tree = JsonTree.object(Files.readString(out.resolve(file + ".json")));
        try (Stream<Path> files = Files.walk(out)) {
            for (Path one : files.sorted((a, b) -> b.compareTo(a)).toList()) {
                Files.delete(one);
            }
        }
        return tree;
    }

    private Path written(String command) {
        Path out = folder.resolve("out");
        Run run = Run.of(Stream.concat(Arrays.stream(command.split(" ")), Stream.of("--out", out.toString()))
                .toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return out;
    }

    private static double baseline(Map<String, Object> tree, String name) {
        return JsonTree.number(JsonTree.object(tree, name), "lapTimeS");
    }

    private static List<Double> against(double baseline, List<Map<String, Object>> laps) {
        return laps.stream()
                .map(lap -> {
                    double difference = JsonTree.number(lap, "differenceS");
                    assertThat(difference).isEqualTo(JsonTree.number(lap, "lapTimeS") - baseline);
                    return difference;
                })
                .toList();
    }
}
