package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.pressures.Pressures;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.track.Track;
import dev.lapwright.tyre.Wheel;
import java.io.IOException;
import java.util.List;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;

/** Tables of stints and of pressures hold what the studies found. */
class StintReportTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
    private static final StintResult STINT = Stint.of(CAR, TRACK, Conditions.STANDARD, new RaceLength(3, 0, 1, 0.6, 1))
            .withConsumption(FuelConsumption.constant(300))
            .onCompounds(List.of(Compound.steady("soft", 1.01, 0.002), Compound.steady("hard", 1, 0.001)))
            .run();

    private static final Subject SUBJECT = new Subject(CAR, Setup.STANDARD, CAR, TRACK, Conditions.STANDARD);

    private static PressureResult pressures() {
        double ideal = CAR.value("tyres.front.idealPressureKpa");
        PressureDay day = new PressureDay(20, 30, 1000);
        PressurePair pair = new PressurePair(Wheel.FRONT_LEFT, 0.75 * ideal, ideal, 20, day);
        return Pressures.of(CAR, TRACK, Conditions.STANDARD, List.of(pair)).run();
    }

    @Test
    void everyLapOnEveryCompoundHasARow() throws IOException {
        // One line of names, three laps on each of two compounds.
        StringBuilder csv = new StringBuilder();
        new StintReport(SUBJECT, STINT, 0.75).report().csv("stint.csv", csv);
        assertThat(csv.toString().lines()).hasSize(7);
    }

    @Test
    void theStintsDocumentHoldsFuelInBothUnits() throws IOException {
        JsonNode tree = new ObjectMapper()
                .readTree(new StintReport(SUBJECT, STINT, 0.75).report().json());
        assertThat(tree.get("lapwright").asText()).isEqualTo("stint/2");
        assertThat(tree.get("startFuelKg").asDouble()).isEqualTo(STINT.startFuel());
        assertThat(tree.get("startFuelL").asDouble()).isEqualTo(STINT.startFuel() / 0.75);
        assertThat(tree.get("runs").get(1).get("laps")).hasSize(3);
    }

    @Test
    void everyTyreWithAPairHasARow() {
        assertThat(PressuresReport.fields(pressures()).get("tyres"))
                .asInstanceOf(InstanceOfAssertFactories.ITERABLE)
                .hasSize(1);
    }

    @Test
    void thePressuresDocumentHoldsTheNextSetting() throws IOException {
        PressureResult result = pressures();
        JsonNode tree = new ObjectMapper().readTree(JsonLayout.text(PressuresReport.fields(result)));
        JsonNode tyre = tree.get("tyres").get(0);
        assertThat(tree.get("lapwright").asText()).isEqualTo("pressures/2");
        assertThat(tyre.get("tyre").asText()).isEqualTo("FL");
        assertThat(tyre.get("nextColdKpaGauge").asDouble())
                .isEqualTo(result.nextCold(result.tyres().get(0)));
    }
}
