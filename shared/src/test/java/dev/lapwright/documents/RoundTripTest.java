package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is written reads back as what it was. */
class RoundTripTest {
    @Property(tries = 200)
    void aCarComesBackEqualInEverything(@ForAll long seed) {
        Car car = randomCar(new Random(seed));
        String text = DocumentWriter.text(car);
        Car back = Documents.car(new DocumentSource("car", text));
        assertThat(back.name()).isEqualTo(car.name());
        assertThat(back.description()).isEqualTo(car.description());
        assertThat(back.quantities()).isEqualTo(car.quantities());
        assertThat(back.gearRatios()).isEqualTo(car.gearRatios());
        assertThat(back.torqueCurve().rpm()).isEqualTo(car.torqueCurve().rpm());
        assertThat(back.torqueCurve().torqueNm()).isEqualTo(car.torqueCurve().torqueNm());
        assertThat(back.powerCorrection()).isEqualTo(car.powerCorrection());
        assertThat(back.wings()).hasSameSizeAs(car.wings());
        for (int i = 0; i < car.wings().size(); i++) {
            assertThat(back.wings().get(i).settings())
                    .isEqualTo(car.wings().get(i).settings());
            String angle = "aero.wings." + car.wings().get(i).name() + ".angleDeg";
            assertThat(back.value(angle)).isEqualTo(car.value(angle));
        }
        assertThat(described(back)).isEqualTo(described(car));
        assertThat(DocumentWriter.text(back)).isEqualTo(text);
    }

    @Property(tries = 100)
    void aWrittenCarFitsTheSchema(@ForAll long seed) {
        assertThat(new SchemaVerdict(DocumentKind.CAR, DocumentWriter.text(randomCar(new Random(seed)))).bySchema())
                .isEmpty();
    }

    /** Adjustments in a form that compares by content; a tabulated effect is a class without equals. */
    private static List<String> described(Car car) {
        List<String> all = new ArrayList<>();
        for (Adjustment a : car.adjustments()) {
            StringBuilder text = new StringBuilder()
                    .append(List.of(a.name(), a.label(), a.unit(), a.min(), a.max(), a.standard(), a.clickSize()))
                    .append(a.choices())
                    .append(a.choices().isEmpty() ? a.step() : "");
            for (Effect effect : a.effects()) {
                text.append(
                        effect instanceof Effect.Tabulated t
                                ? List.of(t.quantity(), list(t.settings()), list(t.values()))
                                : effect);
            }
            all.add(text.toString());
        }
        return all;
    }

    private static List<Double> list(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    private static Car randomCar(Random random) {
        Map<Quantity, Double> values = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            if (quantity.isRequired() || random.nextBoolean()) {
                double share = random.nextDouble();
                values.put(quantity, quantity.min() * (1 - share) + quantity.max() * share);
            }
        }
        Map<Wing, Double> wings = new LinkedHashMap<>();
        for (int i = 0; i < random.nextInt(3); i++) {
            List<Wing.Setting> table = new ArrayList<>();
            double angle = -10 * random.nextDouble();
            for (int k = 0; k <= random.nextInt(4); k++) {
                Areas areas = new Areas(random.nextDouble(), random.nextGaussian() / 5, random.nextGaussian() / 5);
                table.add(new Wing.Setting(angle, areas));
                angle += 0.1 + 5 * random.nextDouble();
            }
            Wing wing = new Wing("wing-" + i, table);
            wings.put(wing, wing.minAngleDeg() + random.nextDouble() * (wing.maxAngleDeg() - wing.minAngleDeg()));
        }
        double[] ratios = new double[1 + random.nextInt(8)];
        double ratio = 0.5;
        for (int i = ratios.length - 1; i >= 0; i--) {
            ratio *= 1.05 + 0.4 * random.nextDouble();
            ratios[i] = ratio;
        }
        values.computeIfPresent(Quantity.LOWEST_GEAR, (gear, any) -> 1.0 + random.nextInt(ratios.length));
        TorqueCurve curve = new TorqueCurve(
                new double[] {1000 * random.nextDouble(), 3000 + 1000 * random.nextDouble(), 9000},
                new double[] {500 * random.nextDouble(), 500 * random.nextDouble(), 0});
        PowerCorrection correction = PowerCorrection.values()[random.nextInt(PowerCorrection.values().length)];
        String text = "Wägen \"" + Long.toString(random.nextLong(), 36) + "\" \\ ß";
        Car bare = Car.of(text, text, values, wings, ratios, curve, correction, List.of());
        return Car.of(text, text, values, wings, ratios, curve, correction, adjustments(bare, random));
    }

    /** Adjustments of every form about where the car stands. */
    private static List<Adjustment> adjustments(Car car, Random random) {
        List<Adjustment> list = new ArrayList<>();
        double mass = car.value(Quantity.MASS);
        double min = Math.max(50, mass * 0.9);
        double max = Math.min(40_000, mass * 1.1);
        list.add(new Adjustment(
                "ballast",
                "Ballast",
                Unit.KILOGRAM,
                new Adjustment.Range(min, max, 1, mass, 0.5, List.of()),
                direct("chassis.massKg")));
        double psi = Unit.KILOPASCAL.convert(car.value(Quantity.HOT_PRESSURE_FRONT), Unit.PSI);
        Effect.Absolute inPsi = EffectReader.directly("tyres.front.hotPressureKpa", Unit.PSI, Unit.KILOPASCAL);
        list.add(new Adjustment(
                "pressure", "Druck", Unit.PSI, Adjustment.Range.stepped(psi, psi, 0.5, psi), List.of(inPsi)));
        double drive = car.value(Quantity.FINAL_DRIVE);
        list.add(new Adjustment(
                "final-drive",
                "Final drive",
                Unit.NONE,
                new Adjustment.Range(drive, drive + 1e-9, 1, drive, 0, List.of(drive, drive + 1e-9)),
                direct("gearbox.finalDrive")));
        double bar = car.value(Quantity.BAR_FRONT);
        list.add(new Adjustment(
                "bar",
                "Bar",
                Unit.CLICK,
                Adjustment.Range.stepped(0, 4, 1, 2),
                List.of(
                        new Effect.Tabulated(
                                "suspension.front.antiRollBarNmPerDeg",
                                new double[] {0, 2, 4},
                                new double[] {bar * 0.5, bar, bar}),
                        new Effect.Relative("suspension.rear.toeDeg", 0))));
        double share = car.value(Quantity.BRAKE_FRONT_SHARE);
        double slope = -0.01 * random.nextDouble();
        list.add(new Adjustment(
                "bias",
                "Bias",
                Unit.CLICK,
                Adjustment.Range.stepped(0, Math.min(10, share), 1, 0),
                List.of(new Effect.Absolute("brakes.frontSharePercent", share, slope))));
        return list;
    }

    private static List<Effect> direct(String quantity) {
        return List.of(new Effect.Absolute(quantity, 0, 1));
    }

    @Test
    void theCompleteCarComesBackEqual() {
        Car car = Documents.car(TestDocuments.source("valid/car/complete.json"));
        Car back = Documents.car(new DocumentSource("again", DocumentWriter.text(car)));
        assertThat(back.quantities()).isEqualTo(car.quantities());
        assertThat(described(back)).isEqualTo(described(car));
    }

    @Property(tries = 100)
    void conditionsComeBackEqual(@ForAll long seed) {
        Random random = new Random(seed);
        Conditions conditions = new Conditions(
                "Day " + seed,
                -40 + 100 * random.nextDouble(),
                400 + 700 * random.nextDouble(),
                100 * random.nextDouble(),
                40 * random.nextDouble(),
                -360 + 720 * random.nextDouble(),
                0.05 + 1.95 * random.nextDouble());
        assertThat(Documents.conditions(new DocumentSource("day", DocumentWriter.text(conditions))))
                .isEqualTo(conditions);
    }

    @Test
    void aSetupComesBackEqualInItsOrder() {
        Car car = Documents.car(TestDocuments.source("valid/car/complete.json"));
        Setup setup = Documents.setup(TestDocuments.source("valid/setup/complete.json"), car);
        Setup back = Documents.setup(new DocumentSource("setup", DocumentWriter.text(setup, car)), car);
        assertThat(back).isEqualTo(setup);
        assertThat(List.copyOf(back.settings().keySet()))
                .isEqualTo(List.copyOf(setup.settings().keySet()));
    }

    static List<String> circuits() {
        return List.of("segments", "stations", "clothoids");
    }

    @ParameterizedTest
    @MethodSource("circuits")
    void aCircuitComesBackWithEveryPoint(String name) {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/" + name + ".json"));
        Track back = Documents.circuit(new DocumentSource("again", DocumentWriter.text(track)));
        assertThat(back.name()).isEqualTo(track.name());
        assertThat(back.isClosed()).isEqualTo(track.isClosed());
        assertThat(back.sectorEnds()).isEqualTo(track.sectorEnds());
        assertThat(back.cornerNames()).isEqualTo(track.cornerNames());
        assertThat(back.startAltitude()).isEqualTo(track.startAltitude());
        // Angles and speeds pass through degrees, percent and km/h: a few units in the last place.
        assertThat(back.startHeading()).isCloseTo(track.startHeading(), within(1e-14));
        assertThat(back.entrySpeed()).isCloseTo(track.entrySpeed(), within(1e-13));
        assertThat(back.points()).hasSameSizeAs(track.points());
        for (int i = 0; i < track.points().size(); i++) {
            TrackPoint a = track.points().get(i);
            TrackPoint b = back.points().get(i);
            assertThat(b.s()).isEqualTo(a.s());
            assertThat(b.curvature()).isEqualTo(a.curvature());
            assertThat(b.verticalCurvature()).isEqualTo(a.verticalCurvature());
            assertThat(b.slope()).isCloseTo(a.slope(), within(1e-15));
            assertThat(b.bank()).isCloseTo(a.bank(), within(1e-15));
            assertThat(b.grip()).isEqualTo(a.grip());
            assertThat(b.widthLeft()).isEqualTo(a.widthLeft());
            assertThat(b.widthRight()).isEqualTo(a.widthRight());
            if (Double.isFinite(a.speedLimit())) {
                assertThat(b.speedLimit()).isCloseTo(a.speedLimit(), within(1e-13));
            } else {
                assertThat(b.speedLimit()).isInfinite();
            }
        }
    }

    @Test
    void trackLimitsComeBackAsTheyWere() {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/limits.json"));
        assertThat(track.limits()).hasSize(2);
        assertThat(track.limits().get(0).beyondLeft()).isEmpty();
        Track back = Documents.circuit(new DocumentSource("circuit", DocumentWriter.text(track)));
        assertThat(back.limits()).isEqualTo(track.limits());
    }

    /** The ring has straights of 300 m and half circles of 60 m radius; the second limit runs over the start line. Rounding alone. */
    @Test
    void aTrackLimitAtACornerHoldsFromItsEntryToItsExit() {
        Track track = Documents.circuit(TestDocuments.source("valid/circuit/limits-at-corners.json"));
        double half = Math.PI * 60;
        assertThat(track.limits().get(0).from()).isCloseTo(300, within(1e-9));
        assertThat(track.limits().get(0).to()).isCloseTo(300 + half + 40, within(1e-9));
        assertThat(track.limits().get(0).beyondLeft()).isEmpty();
        assertThat(track.limits().get(1).from()).isCloseTo(600 + half - 20, within(1e-9));
        assertThat(track.limits().get(1).to()).isCloseTo(60, within(1e-9));
    }
}
