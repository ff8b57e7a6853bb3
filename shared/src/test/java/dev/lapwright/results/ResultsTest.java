package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.report.Report;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class ResultsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
    private static final Conditions DAY = Documents.conditions(TestDocuments.source("valid/conditions/complete.json"));
    private static final Lap LAP = LapSolver.lap(CAR, TRACK, DAY);
    private static final SweepResult SWEEP = Sweep.of(CAR, TRACK, DAY)
            .over(new SweepAxis("rear-wing", new double[] {2, 6, 10}))
            .over(new SweepAxis("conditions.airTempC", new double[] {10, 28}))
            .run(StudyRun.onThreads(1));

    private static List<CSVRecord> rows(String csv) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(csv)).getRecords();
    }

    private static Report sweepReport(SweepResult sweep) {
        Subject subject = new Subject(CAR, Setup.STANDARD, CAR, sweep.track(), DAY);
        List<Vary> varied =
                sweep.axes().stream().map(axis -> new Vary(axis, "", List.of())).toList();
        return new SweepReport(subject, varied, sweep, Optional.empty()).report("");
    }

    private static Report lapReport() {
        Subject subject = new Subject(CAR, Setup.STANDARD, CAR, TRACK, DAY);
        return new LapReport(subject, LAP, List.of(), List.of()).report();
    }

    private static String csv(Report report, String file) throws IOException {
        StringBuilder csv = new StringBuilder();
        report.csv(file, csv);
        return csv.toString();
    }

    @Test
    void theTraceHasARowForEachStation() throws IOException {
        List<CSVRecord> rows = rows(csv(lapReport(), LapReport.TRACE));
        assertThat(rows).hasSize(LAP.count());
        CSVRecord row = rows.get(100);
        // Nine digits are written: half of the last is 5e-9 of the value.
        double speed = LAP.value(Channel.SPEED, 100) * 3.6;
        assertThat(Double.parseDouble(row.get("speedKmh"))).isCloseTo(speed, within(5e-9 * speed));
        assertThat(Double.parseDouble(row.get("distanceM"))).isCloseTo(LAP.value(Channel.DISTANCE, 100), within(1e-6));
        assertThat(row.get("limitedBy")).isEqualTo(LAP.limit(100).label());
    }

    @ParameterizedTest
    @EnumSource(Channel.class)
    void everyChannelIsAColumnNamedWithItsUnit(Channel channel) throws IOException {
        String name = LapTrace.name(channel);
        assertThat(LapTrace.columns(LAP)).containsKey(name);
        assertThat(name).matches("[a-z][A-Za-z0-9]*");
        assertThat(rows(csv(lapReport(), LapReport.TRACE)).get(0).isMapped(name))
                .isTrue();
    }

    @Test
    void columnNamesSayTheUnit() {
        assertThat(LapTrace.name(Channel.DISTANCE)).isEqualTo("distanceM");
        assertThat(LapTrace.name(Channel.SPEED)).isEqualTo("speedKmh");
        assertThat(LapTrace.name(Channel.LATERAL_ACCELERATION)).isEqualTo("lateralAccelerationG");
        // Standard gravity is 9.80665 m/s² by definition (BIPM, 3rd CGPM 1901).
        assertThat(LapTrace.g(9.80665)).isEqualTo(1);
        assertThat(LapTrace.name(Channel.GEAR)).isEqualTo("gear");
    }

    @Test
    void theTraceAsJsonHasTheSameColumns() throws IOException {
        JsonNode tree = MAPPER.readTree(LapTrace.report(LAP, Optional.empty()).json());
        assertThat(tree.get("lapwright").textValue()).isEqualTo("trace/2");
        LapTrace.columns(LAP)
                .keySet()
                .forEach(name -> assertThat(tree.get(name)).hasSize(LAP.count()));
        assertThat(tree.get("limitedBy")).hasSize(LAP.count());
    }

    @Test
    void theSummarySaysWhatItIsWhatMadeItAndFromWhat() throws IOException {
        JsonNode tree = MAPPER.readTree(lapReport().json());
        assertThat(tree.get("lapwright").textValue()).isEqualTo("lap/2");
        assertThat(tree.get("version").textValue()).isNotBlank();
        assertThat(tree.get("inputsSha256").textValue()).matches("[0-9a-f]{64}");
        assertThat(tree.get("car").textValue()).isEqualTo("Test coupé");
        assertThat(tree.get("circuit").textValue()).isEqualTo("Stadium with hills");
        assertThat(tree.get("conditions").get("airTempC").doubleValue()).isEqualTo(28);
    }

    @Test
    void theSummaryHoldsTheLapUnrounded() throws IOException {
        JsonNode tree = MAPPER.readTree(lapReport().json());
        assertThat(tree.get("lapTimeS").doubleValue()).isEqualTo(LAP.time());
        double sum = 0;
        for (JsonNode sector : tree.get("sectorTimesS")) {
            sum += sector.doubleValue();
        }
        // Sums of a few numbers of this size: rounding.
        assertThat(sum).isCloseTo(LAP.time(), within(1e-12 * LAP.time()));
        assertThat(tree.get("corners")).hasSize(2);
        double share = 0;
        for (JsonNode part : tree.get("limitedByPercentOfTime")) {
            share += part.doubleValue();
        }
        assertThat(share).isCloseTo(100, within(1e-9));
    }

    @Test
    void aSweepHasARowForEachLap() throws IOException {
        List<CSVRecord> rows = rows(csv(sweepReport(SWEEP), SweepReport.TABLE));
        assertThat(rows).hasSize(6);
        CSVRecord row = rows.get(5);
        assertThat(row.get("rear-wing (deg)")).isEqualTo("10");
        assertThat(row.get("conditions.airTempC")).isEqualTo("28");
        double lapTime = SWEEP.points().get(5).figures().orElseThrow().lapTime();
        assertThat(Double.parseDouble(row.get("lapTimeS"))).isCloseTo(lapTime, within(5e-9 * lapTime));
        assertThat(row.get("noLapBecause")).isEmpty();
    }

    @Test
    void aPointWithoutALapSaysWhyAndHasNoNumbers() throws IOException {
        Track steep = Documents.circuit(new DocumentSource("steep", """
                { "lapwright": "circuit/1", "name": "Steep", "closed": false, "segments": [
                  { "type": "straight", "lengthM": 400, "slopePercent": 40 } ] }
                """));
        SweepResult sweep = Sweep.of(CAR, steep, DAY)
                .over(new SweepAxis("engine.powerScale", new double[] {0.01, 1}))
                .run(StudyRun.onThreads(1));
        CSVRecord row = rows(csv(sweepReport(sweep), SweepReport.TABLE)).get(0);
        assertThat(row.get("lapTimeS")).isEmpty();
        assertThat(row.get("differenceS")).isEmpty();
        assertThat(row.get("noLapBecause")).isNotBlank();
        JsonNode points = MAPPER.readTree(sweepReport(sweep).json()).get("points");
        assertThat(points.get(0).has("lapTimeS")).isFalse();
        assertThat(points.get(0).get("noLapBecause").textValue()).isNotBlank();
        assertThat(points.get(1).get("lapTimeS").isNumber()).isTrue();
    }

    @Test
    void aSweepAsJsonHoldsEveryLapUnrounded() throws IOException {
        JsonNode tree = MAPPER.readTree(sweepReport(SWEEP).json());
        assertThat(tree.get("lapwright").textValue()).isEqualTo("sweep/2");
        assertThat(tree.get("axes").get(1).get("unit").textValue()).isEqualTo("degC");
        assertThat(tree.get("points")).hasSize(6);
        assertThat(tree.get("points").get(3).get("lapTimeS").doubleValue())
                .isEqualTo(SWEEP.points().get(3).figures().orElseThrow().lapTime());
        assertThat(tree.get("fastest").get("lapTimeS").doubleValue())
                .isEqualTo(SWEEP.fastest().orElseThrow().figures().orElseThrow().lapTime());
    }

    @Test
    void aHashIsSha256() {
        // FIPS 180-2, appendix B.1: the message "abc".
        assertThat(InputHash.sha256("abc"))
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void theHashIsTheSameForTheSameInputsHoweverTheyAreWritten() {
        Car rewritten = Documents.car(new DocumentSource("again", DocumentWriter.text(CAR)));
        assertThat(InputHash.of(LapSolver.lap(rewritten, TRACK, DAY))).isEqualTo(InputHash.of(LAP));
    }

    @Test
    void theHashChangesWithEveryInput() {
        assertThat(List.of(
                        InputHash.of(LAP),
                        InputHash.of(LapSolver.lap(CAR.with("rear-wing", 7), TRACK, DAY)),
                        InputHash.of(LapSolver.lap(CAR, TRACK, DAY.with("conditions.grip", 0.9))),
                        InputHash.of(LapSolver.lap(CAR, TRACK.mirrored(), DAY)),
                        (String) sweepReport(SWEEP).fields().get("inputsSha256")))
                .doesNotHaveDuplicates();
    }
}
