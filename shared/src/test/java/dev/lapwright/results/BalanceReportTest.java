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
import dev.lapwright.report.Report;
import dev.lapwright.study.advice.Advice;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.RemedyResult;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class BalanceReportTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
    private static final BalanceResult BALANCE =
            Balance.of(LapSolver.lap(CAR, TRACK, Conditions.STANDARD)).run();
    private static final AdviceResult ADVICE = Advice.on(
                    DriverWords.read(
                            List.of("pushes in the middle"),
                            BALANCE.lap().stations().corners(),
                            false),
                    BALANCE)
            .withDraws(20)
            .run();
    private static final RemedyResult REMEDIES = ADVICE.against().get(0);

    private static final Report REPORT = new BalanceReport(
                    new Subject(CAR, Setup.STANDARD, CAR, TRACK, Conditions.STANDARD), BALANCE, Optional.of(ADVICE))
            .report();

    private static List<CSVRecord> rows(String file) throws IOException {
        StringBuilder csv = new StringBuilder();
        REPORT.csv(file, csv);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(csv.toString())).getRecords();
    }

    @Test
    void everyPhaseOfEveryCornerHasARow() throws IOException {
        List<BalanceResult.PhaseBalance> phases = BALANCE.corners().stream()
                .flatMap(corner -> corner.phases().stream())
                .toList();
        List<CSVRecord> rows = rows("balance.csv");
        assertThat(rows).hasSameSizeAs(phases);
        for (int i = 0; i < rows.size(); i++) {
            double front = LapTrace.g(phases.get(i).margins().front());
            // Nine digits are written: half of the last is 5e-9 of the value.
            assertThat(Double.parseDouble(rows.get(i).get("frontLimitG"))).isCloseTo(front, within(5e-9 * front));
            assertThat(rows.get(i).get("phase")).isEqualTo(phases.get(i).phase().label());
        }
    }

    @Test
    void theDocumentHoldsTheMeansUnrounded() throws IOException {
        JsonNode tree = new ObjectMapper().readTree(REPORT.json());
        assertThat(tree.get("lapwright").asText()).isEqualTo("balance/2");
        assertThat(tree.get("means").get("middle").get("rearLessFrontG").asDouble())
                .isEqualTo(LapTrace.g(BALANCE.understeer(BalancePhase.MIDDLE)));
    }

    @Test
    void everyRemedyHasARow() throws IOException {
        int count = REMEDIES.remedies().size() + REMEDIES.belowTheLimit().size();
        assertThat(count).isPositive();
        assertThat(rows(RemedyReport.TABLE)).hasSize(count);
    }

    @Test
    void aRemedyInTheDocumentIsThatOfTheStudy() throws IOException {
        JsonNode tree =
                new ObjectMapper().readTree(REPORT.json()).get("complaints").get(0);
        JsonNode first = tree.get("remedies").get(0);
        assertThat(first.get("adjustment").asText())
                .isEqualTo(REMEDIES.remedies().get(0).adjustment());
        assertThat(first.get("gainG").asDouble())
                .isEqualTo(LapTrace.g(REMEDIES.remedies().get(0).gain()));
    }

    @Test
    void theAnswerSaysWhatToTurnWhatItCostsAndWhatPracticeWould() throws IOException {
        String said = String.join("\n", new AdviceReport(ADVICE).sentences());
        assertThat(said).contains("Common practice (no source):").contains("nine of ten of 20 cars");
        JsonNode advice = new ObjectMapper().readTree(REPORT.json()).get("advice");
        assertThat(advice.get("choices").get(0).get("differenceS").asDouble())
                .isEqualTo(ADVICE.choices().get(0).difference());
        assertThat(advice.get("practice")).hasSameSizeAs(ADVICE.practice());
    }
}
