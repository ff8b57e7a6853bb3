package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.draft.CarAnswers;
import dev.lapwright.draft.CarDraft;
import dev.lapwright.draft.DownforceClass;
import dev.lapwright.draft.DrivenWheels;
import dev.lapwright.draft.EngineKind;
import dev.lapwright.draft.TyreKind;
import dev.lapwright.draft.TyreSize;
import dev.lapwright.files.DocumentSource;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The document of a drafted car is one, by the shipped schema and by the reader, and holds the whole draft. */
class DraftedCarDocumentTest {
    @ParameterizedTest
    @EnumSource(DownforceClass.class)
    void ofEveryClass(DownforceClass downforce) {
        boolean rear = downforce.ordinal() % 2 == 0;
        CarAnswers answers = new CarAnswers(
                "Drafted",
                900,
                rear ? DrivenWheels.REAR : DrivenWheels.ALL,
                new CarAnswers.Power(180e3, 7000, EngineKind.values()[downforce.ordinal() % 2]),
                new CarAnswers.Tyres(
                        TyreSize.of("205/50R15"),
                        TyreSize.ofWidth(225),
                        TyreKind.values()[downforce.ordinal() % TyreKind.values().length]),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                downforce,
                CarAnswers.Gears.counted(6),
                // 60 m/s takes 180 kW at 0.4 to 1.2 m² and more: at the limiter all classes get there.
                new CarAnswers.TopSpeed(58, true),
                OptionalDouble.empty());
        Car car = CarDraft.of(answers).car();
        String text = DocumentWriter.text(car);
        assertThat(new SchemaVerdict(DocumentKind.CAR, text).bySchema()).isEmpty();
        Car read = Documents.car(new DocumentSource("drafted.json", text));
        assertThat(DocumentWriter.text(read)).isEqualTo(text);
        assertThat(read.doubt().quantities().keySet())
                .isEqualTo(car.doubt().quantities().keySet());
        assertThat(read.doubt().correlated()).isEqualTo(car.doubt().correlated());
    }
}
