package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.fault.InvalidValueException;
import org.junit.jupiter.api.Test;

class CarWriterTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));

    @Test
    void aCarSetUpIsNoCarDocument() {
        assertThatThrownBy(() -> DocumentWriter.text(CAR.with("rear-wing", 8)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessage("car Test coupé: its adjustment rear-wing is not at its standard setting:"
                        + " aero.wings.rear.angleDeg is 8 instead of 6; write the car as it was read, and its settings as"
                        + " a setup");
    }

    @Test
    void defaultsAreLeftOut() {
        Car least = Documents.car(TestDocuments.source("valid/car/least.json"));
        assertThat(DocumentWriter.text(least)).doesNotContain("rideHeightMap").doesNotContain("frictionExponent");
    }

    @Test
    void aDirectMoveStaysDirectThoughItConverts() {
        // Set in psi, moves a pressure in kPa.
        assertThat(DocumentWriter.text(CAR)).contains("{ \"quantity\": \"tyres.front.hotPressureKpa\" }");
    }
}
