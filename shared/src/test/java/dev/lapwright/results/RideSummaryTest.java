package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.ride.RideResult;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class RideSummaryTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final RideResult RIDE = Ride.of(CAR, Conditions.STANDARD, 25).run();

    private static List<CSVRecord> rows(String csv) throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(csv)).getRecords();
    }

    @Test
    void theDocumentHoldsBothAxlesUnrounded() throws IOException {
        JsonNode tree = new ObjectMapper().readTree(JsonLayout.text(RideSummary.tree(RIDE)));
        assertThat(tree.get("lapwright").asText()).isEqualTo("ride/1");
        for (int i = 0; i < 2; i++) {
            RideResult.Axle axle = RIDE.axles().get(i);
            JsonNode node = tree.get("axles").get(i);
            assertThat(node.get("axle").asText()).isEqualTo(axle.end().label());
            assertThat(node.get("rideFrequencyHz").asDouble())
                    .isEqualTo(axle.wheel().rideFrequency());
            assertThat(node.get("overKerb").get("loadVariationPercent").asDouble())
                    .isEqualTo(100 * axle.kerb().loadVariation());
        }
    }

    @Test
    void theMapHasARowForEachPairOfBothAxles() throws IOException {
        List<CSVRecord> rows = rows(RideSummary.mapCsv(RIDE));
        assertThat(rows).hasSize(800);
        // Rebound varies fastest: the 22nd row is the second bump rate with the second rebound rate.
        double expected = RIDE.axles().get(0).map().at(1, 1).peakBodyAcceleration();
        // Nine digits are written.
        assertThat(Double.parseDouble(rows.get(21).get("peakBodyAccelerationMps2")))
                .isCloseTo(expected, within(5e-9 * expected));
    }

    @Test
    void thePassHasARowForEachMoment() throws IOException {
        int moments = RIDE.axles().get(0).trace().time().length
                + RIDE.axles().get(1).trace().time().length;
        assertThat(rows(RideSummary.traceCsv(RIDE))).hasSize(moments);
    }

    @Test
    void anotherDamperHasAnotherHash() {
        Car stiffer = CAR.with(Quantity.FAST_BUMP_FRONT, 1 + CAR.value(Quantity.FAST_BUMP_FRONT));
        RideResult other = Ride.of(stiffer, Conditions.STANDARD, 25).run();
        assertThat(InputHash.of(other)).isNotEqualTo(InputHash.of(RIDE));
    }

    @Test
    void anotherSpeedHasAnotherHash() {
        RideResult other = Ride.of(CAR, Conditions.STANDARD, 26).run();
        assertThat(InputHash.of(other)).isNotEqualTo(InputHash.of(RIDE));
    }
}
