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
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LapCommandTest {
    private static final String CAR = "gt-talvex";
    private static final String CIRCUIT = "harrowmere";
    /** Numbers in CSV have nine digits. */
    private static final double NINE_DIGITS = 1e-8;

    @TempDir
    private Path folder;

    private static Map<String, Object> json(String... more) {
        String[] arguments = Stream.concat(
                        Stream.of("lap", CAR, CIRCUIT, "--json", "--beside", "none"), Stream.of(more))
                .toArray(String[]::new);
        Run run = Run.of(arguments);
        assertThat(run.code()).as(run.err()).isZero();
        return JsonTree.object(run.out());
    }

    private static double lapTime(String... more) {
        return JsonTree.number(json(more), "lapTimeS");
    }

    @Test
    void aLapNamesCarCircuitTimeSectorsSpeedsGearsAndLimits() {
        Run run = Run.of("lap", CAR, CIRCUIT);
        assertThat(run.code()).isZero();
        assertThat(run.err()).isEmpty();
        assertThat(run.lines().get(0)).contains("Talvex GT at Harrowmere");
        for (String item : List.of(
                "Setup",
                "Conditions",
                "Lap time",
                "Sectors",
                "Top speed",
                "Lowest speed",
                "Gears used",
                "Limited by")) {
            run.line(item);
        }
    }

    @Test
    void theLapTimeInMinutesAndInSecondsIsTheSame() {
        Matcher time = Pattern.compile("(\\d+):(\\d\\d\\.\\d{3}) \\((\\d+\\.\\d{3}) s\\)")
                .matcher(Run.of("lap", CAR, CIRCUIT).line("Lap time"));
        assertThat(time.find()).isTrue();
        double seconds = 60 * Integer.parseInt(time.group(1)) + Double.parseDouble(time.group(2));
        // Both are rounded to the millisecond; the sum adds an error of the last bit.
        assertThat(seconds).isEqualTo(Double.parseDouble(time.group(3)), within(1e-9));
    }

    @Test
    void textAndJsonTellTheSameLapTime() {
        String line = Run.of("lap", CAR, CIRCUIT).line("Lap time");
        assertThat(line).contains(Numbers.lapTime(lapTime()));
    }

    @Test
    void sectorsAddUpToTheLap() {
        Map<String, Object> lap = json();
        double sum = JsonTree.numbers(lap, "sectorTimesS").stream()
                .mapToDouble(t -> t)
                .sum();
        // Sums of a hundred seconds in double precision.
        assertThat(sum).isEqualTo(JsonTree.number(lap, "lapTimeS"), within(1e-9));
    }

    @Test
    void sharesOfTheLimitsAddUpToAHundredPercent() {
        double sum = JsonTree.object(json(), "limitedByPercentOfTime").values().stream()
                .mapToDouble(share -> (Double) share)
                .sum();
        assertThat(sum).isEqualTo(100, within(1e-6));
    }

    @Test
    void everyCornerHasARowWithItsSpeeds() {
        Run run = Run.of("lap", CAR, CIRCUIT);
        List<Map<String, Object>> corners = JsonTree.objects(json(), "corners");
        assertThat(corners).isNotEmpty();
        for (Map<String, Object> corner : corners) {
            String row = run.line("T" + Math.round(JsonTree.number(corner, "number")) + " ");
            for (String speed : List.of("entrySpeedKmh", "minimumSpeedKmh", "exitSpeedKmh")) {
                assertThat(row).contains(Numbers.fixed(JsonTree.number(corner, speed), 1));
            }
            assertThat(JsonTree.number(corner, "minimumSpeedKmh"))
                    .isLessThanOrEqualTo(JsonTree.number(corner, "entrySpeedKmh"))
                    .isLessThanOrEqualTo(JsonTree.number(corner, "exitSpeedKmh"));
        }
    }

    @Test
    void theTraceEndsAtTheLapTimeAndPeaksAtTheTopSpeed() throws IOException {
        Path trace = folder.resolve("trace.csv");
        Map<String, Object> lap = json("--trace", trace.toString());
        List<Map<String, String>> rows = CsvRows.of(Files.readString(trace));
        double time = JsonTree.number(lap, "lapTimeS");
        assertThat(Double.parseDouble(rows.get(rows.size() - 1).get("timeS")))
                .isEqualTo(time, within(time * NINE_DIGITS));
        double top = rows.stream()
                .mapToDouble(row -> Double.parseDouble(row.get("speedKmh")))
                .max()
                .orElseThrow();
        double told = JsonTree.number(lap, "topSpeedKmh");
        assertThat(top).isEqualTo(told, within(told * NINE_DIGITS));
    }

    @Test
    void theTraceIsTheSameInJson() throws IOException {
        Path csv = folder.resolve("trace.csv");
        Path json = folder.resolve("trace.json");
        assertThat(Run.of("lap", CAR, CIRCUIT, "--trace", csv.toString()).code())
                .isZero();
        assertThat(Run.of("lap", CAR, CIRCUIT, "--out", json.toString()).out()).contains("Wrote");
        assertThat(Run.of("lap", CAR, CIRCUIT, "--trace", json.toString(), "--force")
                        .code())
                .isZero();
        List<Map<String, String>> rows = CsvRows.of(Files.readString(csv));
        Map<String, Object> tree = JsonTree.object(Files.readString(json));
        List<Double> speeds = JsonTree.numbers(tree, "speedKmh");
        assertThat(speeds).hasSameSizeAs(rows);
        for (int i = 0; i < rows.size(); i++) {
            assertThat(speeds.get(i)).isEqualTo(Double.parseDouble(rows.get(i).get("speedKmh")));
        }
    }

    @Test
    void aFolderGetsResultTraceAndAllCharts() {
        Path out = folder.resolve("new").resolve("lap");
        Run run = Run.of("lap", CAR, CIRCUIT, "--against", "rear-wing=2", "--out", out.toString());
        assertThat(run.code()).isZero();
        for (String name : List.of("lap.json", "trace.csv", "speed.svg", "map.svg", "gg.svg", "comparison.svg")) {
            assertThat(out.resolve(name)).isNotEmptyFile();
            assertThat(run.out()).contains("Wrote " + out.resolve(name));
        }
    }

    @Test
    void theFileInTheFolderIsWhatJsonPrints() throws IOException {
        Path out = folder.resolve("lap");
        Run run = Run.of("lap", CAR, CIRCUIT, "--json", "--out", out.toString());
        assertThat(Files.readString(out.resolve("lap.json"))).isEqualTo(run.out());
        assertThat(run.err()).contains("Wrote");
    }

    @Test
    void aChartIsWrittenAsItsNameEnds() throws IOException {
        Path svg = folder.resolve("lap.svg");
        Path png = folder.resolve("lap.PNG");
        assertThat(Run.of("lap", CAR, CIRCUIT, "--chart", svg.toString(), "--out", png.toString())
                        .code())
                .isZero();
        assertThat(Files.readString(svg)).contains("<svg");
        // The signature of the Portable Network Graphics specification (W3C), section 5.2.
        assertThat(Files.readAllBytes(png)).startsWith(0x89, 'P', 'N', 'G');
    }

    @Test
    void lessGripIsSlower() {
        assertThat(lapTime("--grip", "0.8")).isGreaterThan(lapTime());
    }

    @Test
    void moreMassIsSlower() {
        assertThat(lapTime("-s", "chassis.fuelKg=80")).isGreaterThan(lapTime("-s", "chassis.fuelKg=10"));
    }

    @Test
    void gripAsAnOptionAndAsASettingIsTheSame() {
        assertThat(lapTime("--grip", "0.9")).isEqualTo(lapTime("-s", "conditions.grip=0.9"));
    }

    @Test
    void theLastOfTwoSettingsOfOneThingHolds() {
        assertThat(lapTime("-s", "rear-wing=1", "-s", "rear-wing=9")).isEqualTo(lapTime("-s", "rear-wing=9"));
    }

    @Test
    void aSettingInAnotherUnitIsConverted() {
        // 1 bar is 100 kPa by definition.
        assertThat(lapTime("-s", "tyres.front.hotPressureKpa=1.8 bar"))
                .isEqualTo(lapTime("-s", "tyres.front.hotPressureKpa=180"));
    }

    @Test
    void altitudeThinsTheAir() {
        Map<String, Object> high = JsonTree.object(json("--altitude-m", "1000"), "conditions");
        // ISO 2533:1975, standard atmosphere at 1000 m: 898.76 hPa, 281.651 K (values from memory). Geopotential and
        // geometric altitude differ by 0.16 m here, which is 0.02 hPa and 0.001 K.
        assertThat(JsonTree.number(high, "airPressureHpa")).isEqualTo(898.76, within(0.05));
        assertThat(JsonTree.number(high, "airTempC")).isEqualTo(281.651 - 273.15, within(0.002));
    }

    @Test
    void aTemperatureGivenWithAnAltitudeHolds() {
        Map<String, Object> day = JsonTree.object(json("--altitude-m", "1000", "--air-temp-c", "31"), "conditions");
        assertThat(JsonTree.number(day, "airTempC")).isEqualTo(31);
    }

    @Test
    void windIsReadInKilometresPerHour() {
        Map<String, Object> day = JsonTree.object(json("--wind-kmh", "36", "--wind-from-deg", "90"), "conditions");
        assertThat(JsonTree.number(day, "windSpeedMps")).isEqualTo(10, within(1e-12));
    }

    @Test
    void differencesBySectorAddUpToTheDifferenceOfTheLaps() {
        Map<String, Object> lap = json("--against", "rear-wing=1", "--against", "rear-wing=11,front-bar=2");
        List<Map<String, Object>> others = JsonTree.objects(lap, "against");
        assertThat(others).hasSize(2);
        for (Map<String, Object> other : others) {
            double sum = JsonTree.numbers(other, "differenceBySectorS").stream()
                    .mapToDouble(t -> t)
                    .sum();
            double slower = JsonTree.number(other, "lapTimeS") - JsonTree.number(lap, "lapTimeS");
            assertThat(sum).isEqualTo(slower, within(1e-9));
            assertThat(JsonTree.number(other, "differenceS")).isEqualTo(slower);
        }
    }

    @Test
    void aSetupComparedWithItselfMakesNoDifference() {
        Map<String, Object> lap = json("-s", "rear-wing=4", "--against", "rear-wing=4");
        assertThat(JsonTree.numbers(JsonTree.objects(lap, "against").get(0), "differenceBySectorS"))
                .containsOnly(0.0);
    }

    @Test
    void theComparisonIsPrintedWithASign() {
        Run run = Run.of("lap", CAR, CIRCUIT, "-s", "conditions.grip=1", "--against", "chassis.fuelKg=80");
        assertThat(run.line("chassis.fuelKg=80")).contains("+");
    }

    @Test
    void aSetupFileIsApplied() throws IOException {
        Path setup = folder.resolve("mine.json");
        Files.writeString(setup, """
                {"lapwright": "setup/1", "name": "mine", "settings": {"rear-wing": 3}}
                """);
        assertThat(lapTime("--setup", setup.toString())).isEqualTo(lapTime("-s", "rear-wing=3"));
    }

    @Test
    void aSettingOverridesTheSetup() throws IOException {
        Path setup = folder.resolve("mine.json");
        Files.writeString(setup, """
                {"lapwright": "setup/1", "name": "mine", "settings": {"rear-wing": 3}}
                """);
        assertThat(lapTime("--setup", setup.toString(), "-s", "rear-wing=7")).isEqualTo(lapTime("-s", "rear-wing=7"));
    }

    @Test
    void anOpenRunIsCalledARun() {
        Run run = Run.of("lap", CAR, "skarnfell");
        assertThat(run.code()).isZero();
        assertThat(run.lines().get(0)).contains("open run");
        run.line("Run time");
    }

    @Test
    void aFloorNearTheRoadBringsACaution() {
        Run low = Run.of("lap", CAR, CIRCUIT, "-s", "suspension.front.rideHeightMm=20");
        assertThat(low.code()).isZero();
        assertThat(low.out())
                .contains("Caution: The front ride height falls to")
                .contains("maker's limits");
        assertThat(Run.of("lap", CAR, CIRCUIT, "-s", "suspension.front.rideHeightMm=200")
                        .out())
                .doesNotContain("The front ride height");
    }

    @Test
    void theSameCommandPrintsTheSameTwice() {
        assertThat(Run.wide(80, "lap", CAR, CIRCUIT, "--json").out())
                .isEqualTo(Run.wide(80, "lap", CAR, CIRCUIT, "--json").out());
    }

    @Test
    void noLineIsWiderThanAHundredColumns() {
        Run run = Run.of("lap", CAR, CIRCUIT, "--against", "rear-wing=1", "-s", "suspension.front.rideHeightMm=20");
        assertThat(run.lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void aCarThatWouldRollOverBeforeItSlidesIsDrivenWithACaution() {
        Run run = Run.of("lap", CAR, CIRCUIT, "-s", "chassis.cgHeightM=1.2");
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(String.join(" ", run.lines()))
                .contains("both inner wheels all but lift")
                .contains("T1 Tannery")
                .contains("chassis.cgHeightM");
        assertThat(Run.of("lap", CAR, CIRCUIT).out()).doesNotContain("inner wheels");
    }

    @Test
    void theTopSpeedOfALapIsThatOfASweep() {
        String lap = Run.of("lap", CAR, CIRCUIT).line("Top speed");
        Run sweep = Run.of("sweep", CAR, CIRCUIT, "--vary", "rear-wing=6", "--json");
        double kmh = JsonTree.number(JsonTree.object(JsonTree.object(sweep.out()), "baseline"), "topSpeedKmh");
        assertThat(lap).contains(Numbers.fixed(kmh, 1) + " km/h");
    }
}
