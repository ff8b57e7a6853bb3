package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.CarForm;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CarFormTest {
    private static final Car GT = Documents.car("gt-talvex");

    private static Car filled(String... pathsAndTexts) {
        return CarForm.of(GT).filled(texts(pathsAndTexts));
    }

    private static Map<String, String> texts(String... pathsAndTexts) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (int i = 0; i < pathsAndTexts.length; i += 2) {
            texts.put(pathsAndTexts[i], pathsAndTexts[i + 1]);
        }
        return texts;
    }

    private static List<DocumentFault> faults(String... pathsAndTexts) {
        try {
            filled(pathsAndTexts);
        } catch (DocumentException wrong) {
            return wrong.faults();
        }
        throw new AssertionError("nothing was wrong");
    }

    private static String adjustment(String name, String field) {
        List<String> names = GT.adjustments().stream().map(one -> one.name()).toList();
        return "adjustments[" + names.indexOf(name) + "]." + field;
    }

    /** Every quantity has its field, with the range that the model itself has; filled in as it stands the form changes nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"gt-talvex", "touring-merrow", "student-pipit"})
    void aFormHoldsTheWholeDocument(String demo) {
        Car car = Documents.car(demo);
        CarForm form = CarForm.of(car);
        for (Quantity quantity : Quantity.values()) {
            CarForm.Field field = form.fields().stream()
                    .filter(one -> one.quantity().equals(quantity.path()))
                    .findFirst()
                    .orElseThrow();
            assertThat(field.min()).isEqualTo(quantity.min());
            assertThat(field.max()).isEqualTo(quantity.max());
            assertThat(field.meaning()).isEqualTo(quantity.meaning());
            assertThat(field.absent().isEmpty()).isEqualTo(quantity.isRequired());
        }
        Map<String, String> all = new LinkedHashMap<>();
        form.fields().forEach(field -> all.put(field.path(), field.text()));
        assertThat(DocumentWriter.text(form.filled(all))).isEqualTo(DocumentWriter.text(car));
    }

    @Test
    void numbersListsAndWordsAreFilledIn() {
        Car car = filled(
                "name",
                "Another",
                "chassis.massKg",
                "1300",
                "gearbox.ratios",
                "3, 2.2, 1.8, 1.5, 1.3, 1.04",
                "engine.torqueCurve",
                "2000 300; 5000: 500; 8000 450",
                "engine.powerCorrection",
                "none",
                "aero.wings[0].table",
                "0 0.05 -0.02 0.2, 20 0.1 -0.05 0.6",
                "tyres.rollingResistance",
                "0.02");
        assertThat(car.name()).isEqualTo("Another");
        assertThat(car.value(Quantity.MASS)).isEqualTo(1300);
        assertThat(car.gearRatios()).containsExactly(3, 2.2, 1.8, 1.5, 1.3, 1.04);
        assertThat(car.torqueCurve().torqueNm()).containsExactly(300, 500, 450);
        assertThat(car.wings().get(0).settings()).hasSize(2);
        assertThat(car.value(Quantity.ROLLING_RESISTANCE)).isEqualTo(0.02);
        // What is emptied takes its usual value.
        assertThat(filled("tyres.temperatureC", "").value(Quantity.TYRE_TEMPERATURE))
                .isEqualTo(Quantity.TYRE_TEMPERATURE.standard());
    }

    /** International pound, inch, and pound-force per inch: NIST SP 811 (2008), appendix B.8. Nine digits are kept. */
    @Test
    void numbersMayHaveAnotherUnit() {
        Car car = filled(
                "chassis.massKg", "2866 lb",
                "chassis.wheelbaseM", "106.3 in",
                "suspension.front.springNPerMm", "1142 lbf/in");
        assertThat(car.value(Quantity.MASS)).isCloseTo(2866 * 0.45359237, within(1e-5));
        assertThat(car.value(Quantity.WHEELBASE)).isCloseTo(106.3 * 0.0254, within(1e-8));
        assertThat(car.value(Quantity.SPRING_FRONT)).isCloseTo(1142 * 0.1751268, within(1e-4));
    }

    /** A quantity that an adjustment sets and its standard setting are one number, whichever is filled in. */
    @Test
    void anAdjustmentGoesAlong() {
        Car softer = filled("suspension.front.springNPerMm", "180");
        assertThat(softer.adjustment("front-spring").standard()).isEqualTo(180);
        Car turned = filled(adjustment("front-spring", "standard"), "220");
        assertThat(turned.value(Quantity.SPRING_FRONT)).isEqualTo(220);
        Car gear = filled("gearbox.ratios", "3.182, 2.235, 1.765, 1.444, 1.222, 1.04");
        assertThat(gear.adjustment("first-gear").standard()).isEqualTo(3.182);
        Car box = filled(adjustment("first-gear", "standard"), "2.833");
        assertThat(box.gearRatios()[0]).isEqualTo(2.833);
    }

    @Test
    void anAdjustmentComesAndGoes() {
        int next = GT.adjustments().size();
        String path = "adjustments[" + next + "].";
        Car more = filled(
                path + "name", "efficiency-guess",
                path + "moves[0].quantity", "gearbox.efficiency",
                path + "min", "0.85",
                path + "max", "0.99",
                path + "step", "0.01",
                path + "standard", Double.toString(GT.value(Quantity.EFFICIENCY)));
        assertThat(more.with(new Setup("", Map.of("efficiency-guess", 0.9))).value(Quantity.EFFICIENCY))
                .isEqualTo(0.9);
        Car less = filled(adjustment("front-bar", "standard"), "", adjustment("rear-bar", "standard"), "");
        assertThat(less.adjustments()).hasSize(next - 2);
    }

    @Test
    void doubtsAreStated() {
        Car car = filled(
                "doubt.chassis.massKg", "0.3 % weighed",
                "doubt.chassis.cgHeightM", "at most 0.01",
                "doubt.aero.cdAM2", "0.02 measured");
        assertThat(car.doubt().quantities())
                .containsEntry("chassis.massKg", new CarDoubt.Size(0.3, true, false, CarDoubt.Source.WEIGHED))
                .containsEntry("chassis.cgHeightM", new CarDoubt.Size(0.01, false, true, CarDoubt.Source.ESTIMATED))
                .containsEntry("aero.cdAM2", new CarDoubt.Size(0.02, false, false, CarDoubt.Source.MEASURED));
        assertThat(CarForm.of(car).fields().stream()
                        .filter(field -> field.path().equals("doubt.chassis.massKg"))
                        .map(CarForm.Field::text))
                .containsExactly("0.3 % weighed");
        assertThat(CarForm.of(car)
                        .filled(texts("doubt.chassis.massKg", ""))
                        .doubt()
                        .quantities())
                .doesNotContainKey("chassis.massKg")
                .containsKey("aero.cdAM2");
    }

    /** What hangs together with others and is then known by itself leaves them; the others stay together. */
    @Test
    void aDoubtThatIsStatedAnewHangsOnNothing() {
        Car drafted = GT.doubting(new CarDoubt(
                Map.of(
                        "chassis.massKg", new CarDoubt.Size(1, true, false, CarDoubt.Source.ESTIMATED),
                        "aero.cdAM2", new CarDoubt.Size(5, true, false, CarDoubt.Source.ESTIMATED),
                        "engine.powerScale", new CarDoubt.Size(4, true, false, CarDoubt.Source.ESTIMATED)),
                List.of("chassis.massKg", "aero.cdAM2", "engine.powerScale"),
                new double[][] {{1, 0.2, 0.1}, {0.2, 1, 0.9}, {0.1, 0.9, 1}}));
        CarDoubt left = CarForm.of(drafted)
                .filled(texts("doubt.chassis.massKg", "3 weighed"))
                .doubt();
        assertThat(left.correlated()).containsExactly("aero.cdAM2", "engine.powerScale");
        assertThat(left.correlation("aero.cdAM2", "engine.powerScale")).isEqualTo(0.9);
        CarDoubt middle =
                CarForm.of(drafted).filled(texts("doubt.aero.cdAM2", "")).doubt();
        assertThat(middle.correlation("chassis.massKg", "engine.powerScale")).isEqualTo(0.1);
    }

    @Test
    void whatIsWrongIsSaidAtItsField() {
        List<DocumentFault> all = faults(
                "chassis.massKg", "heavy",
                "chassis.wheelbaseM", "",
                "tyres.front.frictionY", "40",
                "gearbox.ratios", "3, 4",
                "engine.torqueCurve", "2000 300, 1000 200",
                "aero.wings[0].angleDeg", "77",
                "doubt.chassis.massKg", "some");
        assertThat(all.stream().map(DocumentFault::path))
                .contains(
                        "chassis.massKg",
                        "chassis.wheelbaseM",
                        "tyres.front.frictionY",
                        "gearbox.ratios",
                        "engine.torqueCurve",
                        "aero.wings[0].angleDeg",
                        "doubt.chassis.massKg");
        assertThat(all.stream()
                        .filter(fault -> fault.path().equals("tyres.front.frictionY"))
                        .map(DocumentFault::problem))
                .allMatch(problem -> problem.contains("40"));
        // A spring that is not among those of its adjustment: where it was filled in.
        assertThat(faults("suspension.front.springNPerMm", "999"))
                .extracting(DocumentFault::path)
                .containsExactly("suspension.front.springNPerMm");
        assertThat(faults(adjustment("front-bar", "min"), "9"))
                .allMatch(fault -> fault.path().startsWith("adjustments["));
        assertThatThrownBy(() -> filled("chassis.colour", "red"))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("no such field");
    }
}
