package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.report.Report;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.ride.RideResult;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class RideReportTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final RideResult RIDE = Ride.of(CAR, Conditions.STANDARD, 25).run();

    private static Report report() {
        Subject subject = new Subject(CAR, Setup.STANDARD, CAR, null, Conditions.STANDARD);
        return new RideReport(subject, RIDE, RideMeasure.LOAD, "").report();
    }

    private static List<CSVRecord> rows(String file) throws IOException {
        StringBuilder csv = new StringBuilder();
        report().csv(file, csv);
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        return format.parse(new StringReader(csv.toString())).getRecords();
    }

    @Test
    void theDocumentHoldsBothAxlesUnrounded() throws IOException {
        JsonNode tree = new ObjectMapper().readTree(report().json());
        assertThat(tree.get("lapwright").asText()).isEqualTo("ride/1");
        for (int i = 0; i < 2; i++) {
            RideResult.Axle axle = RIDE.axles().get(i);
            JsonNode node = tree.get("axles").get(i);
            assertThat(node.get("axle").asText()).isEqualTo(axle.end().label());
            assertThat(node.get("rideFrequencyHz").asDouble())
                    .isEqualTo(axle.wheel().rideFrequency());
            assertThat(node.get("overKerb").get("loadVariationPercent").asDouble())
                    .isEqualTo(100 * axle.kerb().contact().loadVariation());
        }
    }

    @Test
    void theMapHasARowForEachPairOfBothAxles() throws IOException {
        List<CSVRecord> rows = rows(RideReport.MAP);
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
        assertThat(rows(RideReport.TRACE)).hasSize(moments);
    }

    @Test
    void anotherDamperHasAnotherHash() {
        Car stiffer = CAR.with(Quantity.FAST_BUMP_FRONT, 1 + CAR.value(Quantity.FAST_BUMP_FRONT));
        RideResult other = Ride.of(stiffer, Conditions.STANDARD, 25).run();
        assertThat(RideReport.hash(other)).isNotEqualTo(RideReport.hash(RIDE));
    }

    @Test
    void anotherSpeedHasAnotherHash() {
        RideResult other = Ride.of(CAR, Conditions.STANDARD, 26).run();
        assertThat(RideReport.hash(other)).isNotEqualTo(RideReport.hash(RIDE));
    }
}
