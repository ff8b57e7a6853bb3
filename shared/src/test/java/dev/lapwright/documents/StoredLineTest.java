package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.track.Track;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A line that has been written is the same line when it is read, on its own road and on no other. */
class StoredLineTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Track OVAL = oval("Oval", 400);
    private static final LineChoices CHOICES = LineChoices.DEFAULT;

    /** Two straights and two half circles of 60 m. */
    private static Track oval(String name, int straight) {
        String stretch = "{ \"type\": \"straight\", \"lengthM\": " + straight + ", \"widthM\": 12 },"
                + " { \"type\": \"arc\", \"radiusM\": 60, \"turn\": \"left\", \"angleDeg\": 180 }";
        String text = "{ \"lapwright\": \"circuit/1\", \"name\": \"" + name + "\", \"closed\": true,"
                + " \"closureToleranceM\": 10, \"segments\": [" + stretch + ", " + stretch + "] }";
        return Documents.circuit(new DocumentSource("oval", text));
    }

    private static Line smoothest() {
        return LineSearch.of(OVAL, CAR, CHOICES).smoothest();
    }

    private static StoredLine stored() {
        return StoredLine.of(smoothest(), LineKind.SMOOTHEST, CAR, "standard", 40.125, CHOICES);
    }

    private static StoredLine read(String text) {
        return Documents.line(new DocumentSource("line.json", text));
    }

    private static String byHand(String distances, String offsets) {
        return "{ \"lapwright\": \"line/1\", \"name\": \"By hand\", \"road\": \"Oval\", \"roadLengthM\": "
                + OVAL.length() + ", \"distancesM\": [" + distances + "], \"offsetsM\": [" + offsets + "] }";
    }

    @Test
    void whatItWasFoundForIsReadAsItWasWritten() {
        StoredLine read = read(DocumentWriter.text(stored()));
        assertThat(read.search().kind()).contains(LineKind.SMOOTHEST);
        assertThat(read.search().car()).isEqualTo(CAR.name());
        assertThat(read.search().setup()).isEqualTo("standard");
        assertThat(read.search().lapTime()).hasValue(40.125);
        assertThat(read.search().margin()).hasValue(CHOICES.marginLeft());
    }

    @Test
    void theSameLineGivesTheSameText() {
        assertThat(DocumentWriter.text(stored())).isEqualTo(DocumentWriter.text(stored()));
    }

    @Test
    void anOffsetIsKeptToATenthOfAMicrometre() {
        Line back = read(DocumentWriter.text(stored())).on(OVAL, CAR, CHOICES);
        // Half of the last digit written.
        assertThat(back.offsets()).containsExactly(smoothest().offsets(), within(0.5e-7 + 1e-12));
    }

    @Test
    void aLapOnALineReadTakesTheTimeOfTheLineWritten() {
        Vehicle vehicle = Vehicle.of(CAR, Conditions.STANDARD);
        double written = LapSolver.on(smoothest().driven()).lapTime(vehicle);
        Line back = read(DocumentWriter.text(stored())).on(OVAL, CAR, CHOICES);
        // A millisecond is the least that a report shows.
        assertThat(LapSolver.on(back.driven()).lapTime(vehicle)).isCloseTo(written, within(0.5e-3));
    }

    @Test
    void nodesOfAnotherSpacingAreKept() {
        LineChoices coarse = new LineChoices(0.25, 5);
        Line line = LineSearch.of(OVAL, CAR, coarse).smoothest();
        StoredLine stored = StoredLine.of(line, LineKind.SMOOTHEST, CAR, "", 1, coarse);
        assertThat(read(DocumentWriter.text(stored)).on(OVAL, CAR, CHOICES).distances())
                .hasSameSizeAs(line.distances());
    }

    @Test
    void aLineByHandBendsSmoothlyBetweenItsPoints() {
        // Points 100 m apart: were they joined by straight lines, offsets would bend at the points and nowhere else. On
        // a
        // spline (natural or periodic) second differences of the offsets vary linearly between its knots.
        StringBuilder distances = new StringBuilder("0");
        StringBuilder offsets = new StringBuilder("0");
        int parts = 12;
        for (int i = 1; i <= parts; i++) {
            distances.append(", ").append(OVAL.length() * i / parts);
            offsets.append(i % 2 == 0 ? ", 0" : ", 3");
        }
        double[] offset = read(byHand(distances.toString(), offsets.toString()))
                .on(OVAL, CAR, CHOICES)
                .offsets();
        int perPart = (offset.length - 1) / parts;
        int middle = perPart / 2;
        double bend = offset[middle - 1] - 2 * offset[middle] + offset[middle + 1];
        double quarter = offset[middle / 2 - 1] - 2 * offset[middle / 2] + offset[middle / 2 + 1];
        // By symmetry the spline's bend is opposite at neighbouring knots, so zero half way and not at a quarter.
        assertThat(Math.abs(quarter)).isGreaterThan(10 * Math.abs(bend)).isGreaterThan(1e-4);
    }

    @Test
    void aLineTooNearTheEdgeIsMovedIntoTheRoad() {
        String text = byHand("0, 200, 400, 600, 800, " + OVAL.length(), "9, 9, 9, 9, 9, 9");
        // A road of 12 m leaves to each side 6 m less half the car and the margin.
        double most = 6 - CAR.value(Quantity.WIDTH) / 2 - CHOICES.marginLeft();
        for (double offset : read(text).on(OVAL, CAR, CHOICES).offsets()) {
            assertThat(offset).isCloseTo(most, within(1e-9));
        }
    }

    @Test
    void aRoadOfAnotherNameIsRefused() {
        assertThatThrownBy(() -> stored().on(oval("Other", 400), CAR, CHOICES))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("this line is for the road 'Oval', but it is used on 'Other'")
                .hasMessageContaining("lapwright line");
    }

    @Test
    void aRoadOfAnotherLengthIsRefused() {
        assertThatThrownBy(() -> read(DocumentWriter.text(stored())).on(oval("Oval", 401), CAR, CHOICES))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining("but Oval is 1178.991 m long")
                .hasMessageStartingWith("line.json");
    }

    @Test
    void tooFewPointsByHandAreRefused() {
        StoredLine few = read(byHand("0, 300, 400, " + OVAL.length(), "0, 1, 1, 0"));
        assertThatThrownBy(() -> few.on(OVAL, CAR, CHOICES)).hasMessageContaining("give at least 6");
    }

    @Test
    void aLineThatDoesNotCloseIsRefusedOnACircuit() {
        StoredLine open = read(byHand("0, 200, 400, " + OVAL.length(), "0, 1, 1, 2"));
        assertThatThrownBy(() -> open.on(OVAL, CAR, CHOICES)).hasMessageContaining("let the last offset be the first");
    }

    @Test
    void arraysAreCopied() {
        StoredLine line = stored();
        line.offsets()[0] = 99;
        line.distances()[0] = 99;
        assertThat(List.of(line.offsets()[0], line.distances()[0])).doesNotContain(99.0);
    }
}
