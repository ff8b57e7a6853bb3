package dev.lapwright.cli.study;

import static org.assertj.core.api.Assertions.assertThat;

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
import org.junit.jupiter.params.provider.ValueSource;

class PressuresCommandTest {
    @TempDir
    private Path folder;

    private static Run run(String... more) {
        return Run.of(Stream.concat(Stream.of("pressures", "gt-talvex", "harrowmere"), Stream.of(more))
                .toArray(String[]::new));
    }

    private static Run done(String... more) {
        Run run = run(more);
        assertThat(run.code()).as(run.err()).isZero();
        return run;
    }

    /** Without draws, which most that is asked here does not hang on. */
    private static Run plain(String... more) {
        return done(Stream.concat(Stream.of("--no-doubt"), Stream.of(more)).toArray(String[]::new));
    }

    @Test
    void whatPressuresCostHasItsInterval() {
        Run run = done("--pair", "all:17:24", "--draws", "40");
        assertThat(run.line("In doubt")).contains("in nine of ten of 40 cars");
        assertThat(run.out()).contains("pressures logged last cost hangs").contains("40 cars were drawn");
        Map<String, Object> json = JsonTree.object(
                done("--pair", "all:17:24", "--draws", "40", "--json").out());
        Map<String, Object> logged = JsonTree.object(json, "logged");
        assertThat(JsonTree.number(logged, "differenceLowS")).isLessThan(JsonTree.number(json, "differenceMeasuredS"));
        assertThat(JsonTree.number(logged, "differenceHighS"))
                .isGreaterThan(JsonTree.number(json, "differenceMeasuredS"));
        assertThat(JsonTree.objects(json, "costs"))
                .allSatisfy(cost -> assertThat(cost)
                        .containsKeys(
                                "differenceBothS", "differenceLowS", "differenceHighS", "chanceOfGain", "standing"));
        assertThat(plain("--pair", "all:17:24").out())
                .doesNotContain("In doubt")
                .doesNotContain("drawn");
    }

    private static Map<String, Object> firstTyre(String... more) {
        return JsonTree.objects(JsonTree.object(plain(more).out()), "tyres").get(0);
    }

    @Test
    void linesStayWithinAHundredColumns() {
        assertThat(done("--pair", "all:17:24", "--tread", "all:90/86/80").lines())
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void everyTyreHasARowAndTheMakersLimitsRule() {
        Run run = plain("--pair", "all:17:24");
        for (String tyre : List.of("FL", "FR", "RL", "RR")) {
            assertThat(run.line(tyre)).contains("17.0").contains("24.0");
        }
        assertThat(run.out()).contains("gauge").contains("maker");
    }

    @ParameterizedTest
    @ValueSource(strings = {"FL:117.211kPa:165.474kPa", "FL:1.17211bar:1.65474bar"})
    void unitsOfOnePressureGiveOneSetting(String pair) {
        double psi = JsonTree.number(firstTyre("--json", "--pair", "FL:17psi:24psi"), "nextColdKpaGauge");
        double other = JsonTree.number(firstTyre("--json", "--pair", pair), "nextColdKpaGauge");
        // The pairs agree to 5e-4 kPa.
        assertThat(other).isCloseTo(psi, org.assertj.core.api.Assertions.within(2e-3));
    }

    @Test
    void aWarmerTrackAsksForLessCold() {
        double now = JsonTree.number(firstTyre("--json", "--pair", "FL:17:24"), "nextColdKpaGauge");
        double warm = JsonTree.number(
                firstTyre("--json", "--pair", "FL:17:24", "--next-track-temp-c", "45"), "nextColdKpaGauge");
        assertThat(warm).isLessThan(now);
    }

    @Test
    void aLogIsReadAndSaidWhatItWasTakenFor() throws IOException {
        Path log = Files.writeString(
                folder.resolve("log.csv"), "tyre,cold (kPa),hot (kPa),air\nFL,117,160,18\nFL,120,166,20\n");
        Run run = plain("--log", log.toString());
        assertThat(run.line("Log")).contains("cold (kPa) in kPa gauge");
        assertThat(run.line("FL:")).contains("mean of 2 runs");
    }

    @Test
    void everyFileIsWritten() {
        Path out = folder.resolve("out");
        plain("--pair", "all:17:24", "--out", out.toString());
        assertThat(out.resolve("pressures.json")).exists();
        assertThat(out.resolve("pressures.csv")).exists();
        assertThat(out.resolve("cost.svg")).exists();
    }

    @Test
    void treadAndGaugeThatDisagreeAreTold() {
        assertThat(plain("--pair", "all:17:24", "--tread", "FL:88/92/80").out().replaceAll("\\s+", " "))
                .contains("less pressure, but the gauge was");
    }

    @ParameterizedTest
    @CsvSource({
        "--pair, all:25:17, not above the cold one",
        "--pair, all:17kPa:24kPa, looks like psi",
        "--pair, all:218kPa:281kPa, absolute",
        "--pair, all:1.2:1.7, looks like bar",
        "--pair, XX:17:24, no wheel",
        "--pair, all:17, parts",
        "--pair, all:17:NaN, not a pressure",
        "--pair, all:17:60, absolute",
        "--log, none.csv, no such file",
        "--air-temp-c, 20, no pair"
    })
    void badInputIsOneClearLine(String option, String value, String told) {
        Run run = run(option, value);
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.errorLines()).hasSize(1);
        assertThat(run.errorLines().get(0)).contains(told).matches("lapwright: .+; .+");
    }
}
