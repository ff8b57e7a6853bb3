package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/** Studies of gearing and comparisons, written. */
class StudyResultsTest {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
    private static final Conditions DAY = Documents.conditions(TestDocuments.source("valid/conditions/complete.json"));
    private static final GearingResult GEARING = gearing(0.2);
    private static final SensitivityResult SENSITIVITY = sensitivity(24);
    private static final Comparison COMPARISON = comparison(CAR.with("rear-wing", 2));

    private static final Report GEARING_REPORT =
            new GearingReport(new Subject(CAR, Setup.STANDARD, CAR, TRACK, DAY), 1, GEARING).report();

    private static GearingResult gearing(double tow) {
        return Gearing.of(CAR, TRACK, DAY)
                .over(new SweepAxis("gearbox.finalDrive", new double[] {3.5, 4}))
                .withTow(tow)
                .run();
    }

    private static SensitivityResult sensitivity(int laps) {
        return sensitivity(CAR, laps);
    }

    private static SensitivityResult sensitivity(Car car, int laps) {
        return Sensitivity.of(car, TRACK, DAY).withScatter(0.2).withLaps(laps).run();
    }

    private static Comparison comparison(Car other) {
        LapSolver solver = LapSolver.on(TRACK);
        return Comparison.of(solver.solve(Vehicle.of(CAR, DAY)), solver.solve(Vehicle.of(other, DAY)));
    }

    private static List<CSVRecord> rows(String csv) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(csv)).getRecords();
    }

    private static JsonNode json(Map<String, Object> tree) throws IOException {
        return MAPPER.readTree(JsonLayout.text(tree));
    }

    @Test
    void aStudyOfGearingSaysWhatItIs() throws IOException {
        JsonNode tree = json(GearingReport.fields(GEARING));
        assertThat(tree.get("lapwright").textValue()).isEqualTo("gearing/2");
        assertThat(tree.get("scenarios")).hasSize(2);
        assertThat(tree.get("scenarios").get(0).get("name").textValue()).isEqualTo("as given");
        assertThat(tree.get("scenarios").get(1).get("name").textValue()).isEqualTo("tow");
        // Percent of a share: rounding.
        assertThat(tree.get("scenarios").get(1).get("dragTakenAwayPercent").doubleValue())
                .isCloseTo(20, within(1e-9));
    }

    @Test
    void aStudyOfGearingHoldsItsLapsUnrounded() throws IOException {
        JsonNode first = json(GearingReport.fields(GEARING))
                .get("scenarios")
                .get(0)
                .get("choices")
                .get(0);
        double time = GEARING.asGiven().choices().get(0).lap().orElseThrow().lapTime();
        assertThat(first.get("lapTimeS").doubleValue()).isEqualTo(time);
        assertThat(first.get("finalDrive").doubleValue()).isEqualTo(3.5);
    }

    @Test
    void theTableOfGearingsHasARowForEachLap() throws IOException {
        List<CSVRecord> rows = rows(csv(GEARING_REPORT, "gearing.csv"));
        assertThat(rows).hasSize(4);
        assertThat(rows.stream().map(row -> row.get("scenario"))).containsExactly("as given", "as given", "tow", "tow");
        assertThat(rows).allSatisfy(row -> assertThat(row.isConsistent()).isTrue());
    }

    @Test
    void theTableOfShiftsHasARowForEachShift() throws IOException {
        assertThat(rows(csv(GEARING_REPORT, "shifts.csv")))
                .hasSameSizeAs(GEARING.asGiven().baseline().shifts());
    }

    @Test
    void forceInAGearIsEmptyBeyondItsLimit() throws IOException {
        List<CSVRecord> rows = rows(csv(GEARING_REPORT, "traction.csv"));
        CSVRecord last = rows.get(rows.size() - 1);
        assertThat(last.get("forceGear1N")).isEmpty();
        assertThat(last.get("engineSpeedGear1Rpm")).isEmpty();
        int top = GEARING.gears().size();
        assertThat(last.get("forceGear" + top + "N")).isNotEmpty();
        // The last speed is that of the limit in top gear; nine digits are written.
        double limit = GEARING.asGiven().baseline().limiter().revLimit();
        assertThat(Double.parseDouble(last.get("engineSpeedGear" + top + "Rpm")))
                .isCloseTo(limit, within(1e-8 * limit));
    }

    @Test
    void theHashTellsOneStudyOfGearingFromAnother() {
        assertThat(GearingReport.fields(GEARING).get("inputsSha256"))
                .isEqualTo(GearingReport.fields(gearing(0.2)).get("inputsSha256"))
                .isNotEqualTo(GearingReport.fields(gearing(0.3)).get("inputsSha256"));
    }

    @Test
    void sensitivitiesSayWhatTheyAre() throws IOException {
        JsonNode tree = json(SensitivityReport.fields(SENSITIVITY));
        assertThat(tree.get("lapwright").textValue()).isEqualTo("sensitivity/2");
        assertThat(tree.get("lapTimeS").doubleValue())
                .isEqualTo(SENSITIVITY.baseline().lapTime());
        assertThat(tree.get("scatterS").doubleValue()).isEqualTo(0.2);
        assertThat(tree.get("laps").intValue()).isEqualTo(24);
        assertThat(tree.get("adjustments")).hasSameSizeAs(SENSITIVITY.worths());
        assertThat(tree.get("interactions")).hasSameSizeAs(SENSITIVITY.interactions());
        SensitivityResult.Worth first = SENSITIVITY.worths().get(0);
        JsonNode written = tree.get("adjustments").get(0);
        assertThat(written.get("name").textValue()).isEqualTo(first.adjustment().name());
        assertThat(written.get("differenceBestS").doubleValue())
                .isEqualTo(first.best().difference());
        assertThat(written.get("lapsToSeeWithEach").intValue()).isEqualTo(first.lapsToSee());
    }

    @Test
    void whatNoNumberOfLapsShowsHasNone() throws IOException {
        // Tyres that do not mind their pressure: its adjustment does nothing.
        SensitivityResult careless = sensitivity(CAR.with("tyres.pressureLossPerKpa2", 0), 24);
        SensitivityResult.Worth last = careless.worths().get(careless.worths().size() - 1);
        assertThat(last.isEverSeen()).isFalse();
        JsonNode written = json(SensitivityReport.fields(careless)).get("adjustments");
        assertThat(written.get(written.size() - 1).get("lapsToSeeWithEach").isNull())
                .isTrue();
        List<CSVRecord> rows = rows(csv(SensitivityReport.table(careless), careless.worths()));
        assertThat(rows.get(rows.size() - 1).get("lapsToSeeWithEach")).isEmpty();
    }

    @Test
    void theTableOfSensitivitiesHasARowForEachAdjustment() throws IOException {
        List<CSVRecord> rows = rows(csv(SensitivityReport.table(SENSITIVITY), SENSITIVITY.worths()));
        assertThat(rows.stream().map(row -> row.get("adjustment")))
                .containsExactlyElementsOf(SENSITIVITY.worths().stream()
                        .map(worth -> worth.adjustment().name())
                        .toList());
        assertThat(rows).allSatisfy(row -> assertThat(row.isConsistent()).isTrue());
        // Nine digits and no more than nine decimals are written.
        assertThat(Double.parseDouble(rows.get(0).get("differenceRangeS")))
                .isCloseTo(SENSITIVITY.worths().get(0).range(), within(1e-8));
    }

    @Test
    void theHashTellsOneStudyOfSensitivitiesFromAnother() {
        assertThat(SensitivityReport.fields(SENSITIVITY).get("inputsSha256"))
                .isEqualTo(SensitivityReport.fields(sensitivity(24)).get("inputsSha256"))
                .isNotEqualTo(SensitivityReport.fields(sensitivity(25)).get("inputsSha256"));
    }

    @Test
    void aComparisonSaysWhatItIsAndHoldsTheLapsUnrounded() throws IOException {
        JsonNode tree = MAPPER.readTree(report(COMPARISON).report().json());
        assertThat(tree.get("lapwright").textValue()).isEqualTo("comparison/1");
        assertThat(tree.get("differenceS").doubleValue()).isEqualTo(COMPARISON.difference());
        assertThat(tree.get("parts")).hasSameSizeAs(COMPARISON.parts());
        assertThat(tree.get("otherSettings").get("rear-wing").doubleValue()).isEqualTo(2);
    }

    @Test
    void theTraceOfAComparisonHasARowForEachStation() throws IOException {
        List<CSVRecord> rows = rows(trace(COMPARISON));
        assertThat(rows).hasSize(COMPARISON.first().count());
        // Nine digits and no more than nine decimals are written.
        assertThat(Double.parseDouble(rows.get(rows.size() - 1).get("differenceS")))
                .isCloseTo(COMPARISON.difference(), within(1e-9));
        JsonNode tree = MAPPER.readTree(report(COMPARISON).trace().json());
        assertThat(tree.get("differenceS")).hasSize(COMPARISON.first().count());
        assertThat(tree.get("otherLimitedBy")).hasSize(COMPARISON.first().count());
    }

    @Test
    void theHashTellsOneComparisonFromAnother() {
        assertThat(hash(COMPARISON))
                .isEqualTo(hash(comparison(CAR.with("rear-wing", 2))))
                .isNotEqualTo(hash(comparison(CAR.with("rear-wing", 3))));
    }

    private static ComparisonReport report(Comparison comparison) {
        Car second = comparison.second().vehicle().car();
        return new ComparisonReport(
                new Subject(CAR, Setup.STANDARD, CAR, TRACK, DAY),
                "another wing",
                new Subject(CAR, Setup.STANDARD, second, TRACK, DAY),
                comparison);
    }

    private static String trace(Comparison comparison) throws IOException {
        StringBuilder csv = new StringBuilder();
        report(comparison).report().csv(ComparisonReport.TRACE, csv);
        return csv.toString();
    }

    private static Object hash(Comparison comparison) {
        return report(comparison).report().fields().get("inputsSha256");
    }

    private static <R> String csv(Table<R> table, List<R> rows) {
        StringBuilder text = new StringBuilder();
        CsvText.write(table, rows, text);
        return text.toString();
    }

    private static String csv(Report report, String file) throws IOException {
        StringBuilder text = new StringBuilder();
        report.csv(file, text);
        return text.toString();
    }
}
