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
import dev.lapwright.fit.DrivenLap;
import dev.lapwright.fit.Fit;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.report.Report;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;

class FitReportTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
    private static final FitResult RESULT = result(1);

    /** The model's own lap, times so much, to which the car's grip is fitted. */
    private static FitResult result(double faster) {
        Lap lap = LapSolver.on(TRACK).solve(Vehicle.of(CAR, Conditions.STANDARD));
        double[] speed = lap.column(Channel.SPEED);
        for (int i = 0; i < speed.length; i++) {
            speed[i] *= faster;
        }
        return Fit.of(CAR, TRACK, Conditions.STANDARD)
                .laps(List.of(DrivenLap.of("lap 1 of monday.csv", lap.column(Channel.DISTANCE), speed)))
                .fitting(EnumSet.of(FitParameter.GRIP))
                .run();
    }

    private static Report report() {
        Subject subject = new Subject(CAR, Setup.STANDARD, CAR, TRACK, Conditions.STANDARD);
        DrivenLapSelection pick = new DrivenLapSelection(
                RESULT.laps().stream().map(FitResult.LapFit::lap).toList(), List.of());
        return new FitReport(List.of(new FitReport.Run(subject, List.of(), pick)), RESULT, CAR.name()).report();
    }

    private static String csv(String file) throws IOException {
        StringBuilder csv = new StringBuilder();
        report().csv(file, csv);
        return csv.toString();
    }

    private static JsonNode tree() throws IOException {
        return new ObjectMapper().readTree(report().json());
    }

    @Test
    void everyEstimateHasARowUnderItsNameWithUnit() throws IOException {
        List<String> lines = csv(FitReport.ESTIMATES).lines().toList();
        assertThat(lines.get(0)).isEqualTo("parameter,before,fitted,standardError,lower,upper,standing,atBound");
        assertThat(lines).hasSize(2);
        assertThat(lines.get(1)).startsWith("gripFactor,1,");
        assertThat(FitReport.field(FitParameter.DRAG_AREA)).isEqualTo("dragAreaM2");
        assertThat(FitReport.word(FitParameter.DRAG_AREA)).isEqualTo("drag-area");
    }

    @Test
    void partsAndTraceHaveARowForEachOfTheirs() throws IOException {
        assertThat(csv(FitReport.PARTS).lines())
                .hasSize(RESULT.agreement().parts().size() + 1);
        assertThat(csv(FitReport.TRACE).lines())
                .hasSize(RESULT.agreement().trace().count() + 1);
    }

    @Test
    void theDocumentHoldsEstimatesAndSpeedsInKilometresPerHour() throws IOException {
        JsonNode tree = tree();
        assertThat(tree.get("lapwright").asText()).isEqualTo("fit/2");
        assertThat(tree.get("estimates").get(0).get("fitted").asDouble())
                .isEqualTo(RESULT.estimate(FitParameter.GRIP).value());
        // By definition 1 m/s is 3.6 km/h; nine digits are written.
        assertThat(tree.get("trace").get("loggedKmh").get(3).asDouble())
                .isCloseTo(3.6 * RESULT.agreement().trace().logged()[3], within(1e-6));
        assertThat(tree.get("laps").get(0).get("name").asText()).isEqualTo("lap 1 of monday.csv");
    }

    @Test
    void theHashTellsOneLogFromAnother() {
        assertThat(FitReport.hash(result(1))).isEqualTo(FitReport.hash(RESULT));
        assertThat(FitReport.hash(result(0.999))).isNotEqualTo(FitReport.hash(RESULT));
    }
}
