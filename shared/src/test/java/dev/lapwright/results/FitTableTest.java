package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
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
import dev.lapwright.report.JsonLayout;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.Test;

class FitTableTest {
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

    private static JsonNode tree() throws IOException {
        return new ObjectMapper().readTree(JsonLayout.text(FitTable.tree(RESULT)));
    }

    @Test
    void everyEstimateHasARowUnderItsNameWithUnit() {
        List<String> lines = FitTable.csv(RESULT).lines().toList();
        assertThat(lines.get(0)).isEqualTo("parameter,before,fitted,standardError,lower,upper,standing,atBound");
        assertThat(lines).hasSize(2);
        assertThat(lines.get(1)).startsWith("gripFactor,1,");
        assertThat(FitTable.field(FitParameter.DRAG_AREA)).isEqualTo("dragAreaM2");
        assertThat(FitTable.word(FitParameter.DRAG_AREA)).isEqualTo("drag-area");
    }

    @Test
    void partsAndTraceHaveARowForEachOfTheirs() {
        assertThat(FitTable.partsCsv(RESULT).lines()).hasSize(RESULT.parts().size() + 1);
        assertThat(FitTable.traceCsv(RESULT).lines()).hasSize(RESULT.trace().count() + 1);
    }

    @Test
    void theDocumentHoldsEstimatesAndSpeedsInKilometresPerHour() throws IOException {
        JsonNode tree = tree();
        assertThat(tree.get("lapwright").asText()).isEqualTo("fit/1");
        assertThat(tree.get("estimates").get(0).get("fitted").asDouble())
                .isEqualTo(RESULT.estimate(FitParameter.GRIP).value());
        // By definition 1 m/s is 3.6 km/h; nine digits are written.
        assertThat(tree.get("trace").get("loggedKmh").get(3).asDouble())
                .isCloseTo(3.6 * RESULT.trace().logged()[3], within(1e-6));
        assertThat(tree.get("laps").get(0).get("name").asText()).isEqualTo("lap 1 of monday.csv");
    }

    @Test
    void theHashTellsOneLogFromAnother() {
        assertThat(InputHash.of(result(1))).isEqualTo(InputHash.of(RESULT));
        assertThat(InputHash.of(result(0.999))).isNotEqualTo(InputHash.of(RESULT));
    }
}
