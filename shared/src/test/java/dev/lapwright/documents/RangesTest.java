package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.TrackPoint;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The ranges of documents lie within what the model takes, and where it has the same range they are equal. */
class RangesTest {
    static Stream<Arguments> sweptConditions() {
        return Conditions.NAMES.stream()
                .map(name -> Arguments.of(name, ConditionsReader.field(name).orElseThrow()));
    }

    @ParameterizedTest
    @MethodSource("sweptConditions")
    void conditionsTakeTheLimitsAndNothingBeyond(String name, NumberField field) {
        UnitScale usual = field.usual();
        Conditions standard = Conditions.STANDARD;
        assertThat(standard.with(name, field.min(usual)).value(name)).isEqualTo(field.min(usual));
        assertThat(standard.with(name, field.max(usual)).value(name)).isEqualTo(field.max(usual));
        // A thousandth of a unit is beyond any rounding.
        assertThatThrownBy(() -> standard.with(name, field.min(usual) - 1e-3))
                .isInstanceOf(InvalidValueException.class);
        assertThatThrownBy(() -> standard.with(name, field.max(usual) + 1e-3))
                .isInstanceOf(InvalidValueException.class);
    }

    static Stream<Arguments> road() {
        return Stream.of(
                point(RoadFields.DISTANCE, v -> new TrackPoint(v, 0, 0, 0, 0, 1, 5, 5, 50)),
                point(RoadFields.CURVATURE, v -> new TrackPoint(0, v, 0, 0, 0, 1, 5, 5, 50)),
                point(RoadFields.SLOPE, v -> new TrackPoint(0, 0, v, 0, 0, 1, 5, 5, 50)),
                point(RoadFields.BANK, v -> new TrackPoint(0, 0, 0, v, 0, 1, 5, 5, 50)),
                point(RoadFields.VERTICAL_CURVATURE, v -> new TrackPoint(0, 0, 0, 0, v, 1, 5, 5, 50)),
                point(RoadFields.GRIP, v -> new TrackPoint(0, 0, 0, 0, 0, v, 5, 5, 50)),
                point(RoadFields.WIDTH_LEFT, v -> new TrackPoint(0, 0, 0, 0, 0, 1, v, 5, 50)),
                point(RoadFields.WIDTH_RIGHT, v -> new TrackPoint(0, 0, 0, 0, 0, 1, 5, v, 50)),
                point(RoadFields.WIDTH, v -> new TrackPoint(0, 0, 0, 0, 0, 1, v / 2, v / 2, 50)),
                point(RoadFields.SPEED_LIMIT, v -> new TrackPoint(0, 0, 0, 0, 0, 1, 5, 5, v)),
                point(RoadFields.RADIUS, v -> new TrackPoint(0, 1 / v, 0, 0, 0, 1, 5, 5, 50)));
    }

    private static Arguments point(NumberField field, DoubleFunction<TrackPoint> maker) {
        return Arguments.of(field.name(), field, maker);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("road")
    void aTrackTakesWhatADocumentMayHold(String name, NumberField field, DoubleFunction<TrackPoint> maker) {
        for (UnitScale scale : field.scales()) {
            assertThat(maker.apply(field.toModel(field.min(scale), scale))).isNotNull();
            assertThat(maker.apply(field.toModel(field.max(scale), scale))).isNotNull();
        }
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void aQuantityTakesItsLimitsInEveryUnit(Quantity quantity) {
        NumberField field = NumberField.of(quantity);
        for (UnitScale scale : field.scales()) {
            double least = field.toModel(field.min(scale), scale);
            double greatest = field.toModel(field.max(scale), scale);
            assertThat(quantity.checked(least)).isEqualTo(least);
            assertThat(quantity.checked(greatest)).isEqualTo(greatest);
        }
    }

    @ParameterizedTest
    @EnumSource(Quantity.class)
    void aQuantitysFieldIsTheLastPartOfItsPath(Quantity quantity) {
        assertThat(quantity.path()).endsWith("." + NumberField.of(quantity).name());
    }
}
