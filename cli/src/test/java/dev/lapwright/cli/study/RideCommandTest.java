package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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

class RideCommandTest {
    private static final String CAR = "gt-talvex";

    @TempDir
    private Path folder;

    private static Run ride(String... more) {
        Run run = Run.of(Stream.concat(Stream.of("ride", CAR), Stream.of(more)).toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    private static Map<String, Object> json(String... more) {
        return JsonTree.object(
                ride(Stream.concat(Stream.of(more), Stream.of("--json")).toArray(String[]::new))
                        .out());
    }

    private static Map<String, Object> front(Map<String, Object> tree) {
        return JsonTree.objects(tree, "axles").get(0);
    }

    @Test
    void linesStayWithinAHundredColumns() {
        assertThat(ride().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void theSpeedOfACornerIsThatOfTheLap() {
        Map<String, Object> lap =
                JsonTree.object(Run.of("lap", CAR, "harrowmere", "--json").out());
        double lowest = JsonTree.number(JsonTree.objects(lap, "corners").get(2), "minimumSpeedKmh");
        assertThat(JsonTree.number(json("harrowmere", "--corner", "T3"), "speedKmh"))
                .isCloseTo(lowest, within(1e-9 * lowest));
    }

    @Test
    void aCornerIsFoundByItsName() {
        assertThat(json("harrowmere", "--corner", "needle").get("speedFrom").toString())
                .startsWith("the lowest in T3 Needle");
    }

    @Test
    void aClickOfTheDamperMovesTheFastRate() {
        Map<String, Object> bump = JsonTree.object(front(json("-s", "front-fast-bump=8")), "fastBump");
        // Two clicks of 300 N s/m above 4200, as the car's document says.
        assertThat(JsonTree.number(bump, "rateNsPerM")).isEqualTo(4800);
    }

    @Test
    void dampersMoveNoLapTime() {
        double standard = JsonTree.number(
                JsonTree.object(Run.of("lap", CAR, "harrowmere", "--json").out()), "lapTimeS");
        double turned = JsonTree.number(
                JsonTree.object(Run.of("lap", CAR, "harrowmere", "-s", "front-fast-bump=0", "--json")
                        .out()),
                "lapTimeS");
        assertThat(turned).isEqualTo(standard);
    }

    @Test
    void aHigherKerbThrowsTheWheelLonger() {
        double low =
                JsonTree.number(JsonTree.object(front(json("--kerb-height-mm", "30")), "overKerb"), "timeOffGroundMs");
        double high =
                JsonTree.number(JsonTree.object(front(json("--kerb-height-mm", "60")), "overKerb"), "timeOffGroundMs");
        assertThat(high).isGreaterThan(low);
    }

    @Test
    void aWheelInTheAirIsCautionedAgainst() {
        assertThat(ride("--kerb-height-mm", "60").out()).contains("Caution: Off the ground (front");
    }

    @Test
    void aFlatKerbLeavesNothingToTurn() {
        assertThat(ride("--kerb-height-mm", "0").out()).contains("Front: no pair does better than the rates it has.");
    }

    @Test
    void aFolderHoldsResultTablesAndCharts() throws IOException {
        Path out = folder.resolve("ride");
        ride("--out", out.toString());
        try (Stream<Path> files = Files.list(out)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder(
                            "ride.json",
                            "map.csv",
                            "pass.csv",
                            "map-front.svg",
                            "map-rear.svg",
                            "pass-front.svg",
                            "pass-rear.svg");
        }
        List<String> map = Files.readAllLines(out.resolve("map.csv"));
        assertThat(map).hasSize(1 + 2 * 400);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "castelvane | add --corner",
                "--corner T3 | name a circuit behind the car",
                "castelvane --corner T3 --speed-kmh 90 | keep one of the two",
                "castelvane --corner T99 | take T1 to T12",
                "castelvane --corner T3 --at apex | take entry, slowest or exit",
                "--at exit | add --corner",
                "--kerb brick | take half-sine, ramp or sawtooth",
                "--kerb-height-mm NaN | is not a number",
                "--kerb-height-mm 900 | allowed: 0 to 500",
                "--kerb-length-m 0 | allowed: 0.01 to 100",
                "--kerb-teeth 0 | allowed: 1 to 200",
                "--contact-patch-mm 0 | allowed: 5 to 1000",
                "--road Z | take a letter, A to H",
                "--best-for lap | take load, off-ground or body",
                "--speed-kmh 1 | allowed: 5 to 500",
                "--speed-kmh 400 | drive slower",
                "-s suspension.rear.unsprungMassKg=0 | give the mass that moves with one rear wheel",
                "-s suspension.rear.unsprungMassKg=500 | give the mass that moves with one wheel",
                "-s suspension.front.slowBumpNsPerM=0 | as its maker or a dynamometer has them",
                "--chart map.txt | end the name in .svg or .png"
            })
    void whatCannotBeDrivenIsRefusedInOneLine(String arguments, String remedy) {
        Run run = Run.of(("ride " + CAR + " " + arguments).split(" "));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.out()).isEmpty();
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).startsWith("lapwright: ").contains(remedy);
    }
}
