package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Car;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import org.junit.jupiter.api.Test;

/** Adjustments that had another name when a setup was written. */
class FormerNameTest {
    private static final Car CAR = Documents.car(new DocumentSource(
            "car.json",
            TestDocuments.source("valid/car/complete.json")
                    .text()
                    .replaceFirst("\"name\": \"front-pressure\"", "$0, \"formerName\": \"fl-psi\"")));

    private static Setup setup(String settings) {
        return Documents.setup(
                new DocumentSource(
                        "setup.json",
                        "{\"lapwright\": \"setup/1\", \"name\": \"Old\", \"settings\": {" + settings + "}}"),
                CAR);
    }

    @Test
    void anOldSetupIsReadWithANote() {
        Setup old = setup("\"fl-psi\": \"24 psi\", \"rear-wing\": 7");
        assertThat(old.settings()).containsEntry("front-pressure", 24.0).containsEntry("rear-wing", 7.0);
        assertThat(old.notes()).containsExactly("The setup says fl-psi for what is called front-pressure now.");
        assertThat(setup("\"front-pressure\": 24").notes()).isEmpty();
    }

    @Test
    void bothNamesAtOnceAreRefused() {
        assertThatThrownBy(() -> setup("\"fl-psi\": 24, \"front-pressure\": 25"))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("fl-psi: the same is already given as front-pressure; keep one of the two");
    }

    @Test
    void whereOnlyTheNameOfTodayWillDoItIsTold() {
        assertThatThrownBy(() -> CAR.with("fl-psi", 24))
                .isInstanceOf(InvalidValueException.class)
                .hasMessage("fl-psi: this car has no adjustment of that name any more; it is front-pressure now");
    }

    @Test
    void itIsWrittenWithTheCar() {
        Car again = Documents.car(new DocumentSource("again.json", DocumentWriter.text(CAR)));
        assertThat(again.adjustment("front-pressure").formerNames()).containsExactly("fl-psi");
    }
}
