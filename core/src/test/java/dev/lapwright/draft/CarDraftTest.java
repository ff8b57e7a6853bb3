package dev.lapwright.draft;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.doubt.DoubtClass;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.AxleLimits;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.TurnState;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A drafted car does what was answered, by closed forms and by its laps. */
class CarDraftTest {
    private static final double KMH = 1 / 3.6;
    private static final double GRAVITY = 9.80665;
    /** Density on a standard day, kg/m³ (ISO 2533). */
    private static final double STANDARD_DENSITY = 1.225;

    private static final OptionalDouble OPEN = OptionalDouble.empty();
    /** Long enough that what is left to the top speed is below a hundredth of a percent. */
    private static final Track STRAIGHT =
            new SegmentPath(List.of(Segment.straight(25_000)), false, 20).openTrack("straight", 30);

    private static CarAnswers answers(
            double massKg,
            DrivenWheels driven,
            CarAnswers.Power power,
            CarAnswers.Tyres tyres,
            DownforceClass downforce,
            CarAnswers.Gears gears,
            double topKmh,
            boolean atLimiter,
            OptionalDouble brakingG) {
        return new CarAnswers(
                "Drafted",
                massKg,
                driven,
                power,
                tyres,
                OPEN,
                OPEN,
                downforce,
                gears,
                new CarAnswers.TopSpeed(topKmh * KMH, atLimiter),
                brakingG);
    }

    private static CarAnswers.Tyres tyres(String size, TyreKind kind) {
        return new CarAnswers.Tyres(TyreSize.of(size), TyreSize.of(size), kind);
    }

    private static CarAnswers hatchback(double topKmh, boolean atLimiter, OptionalDouble brakingG) {
        return answers(
                1045,
                DrivenWheels.FRONT,
                new CarAnswers.Power(147e3, 7100, EngineKind.ASPIRATED),
                tyres("205/50R15", TyreKind.TRACK),
                DownforceClass.NONE,
                CarAnswers.Gears.of(List.of(3.15, 2.05, 1.48, 1.16, 0.96, 0.82), 4.06),
                topKmh,
                atLimiter,
                brakingG);
    }

    private static CarAnswers turboSaloon() {
        return answers(
                1300,
                DrivenWheels.ALL,
                new CarAnswers.Power(260e3, 6000, EngineKind.TURBO),
                tyres("245", TyreKind.SLICK),
                DownforceClass.SMALL,
                CarAnswers.Gears.counted(6),
                255,
                false,
                OPEN);
    }

    private static CarAnswers electricCar() {
        return answers(
                1500,
                DrivenWheels.REAR,
                new CarAnswers.Power(250e3, 5000, EngineKind.ELECTRIC),
                tyres("255/40R18", TyreKind.ROAD),
                DownforceClass.NONE,
                CarAnswers.Gears.counted(1),
                240,
                true,
                OPEN);
    }

    private static CarAnswers winged() {
        return answers(
                620,
                DrivenWheels.REAR,
                new CarAnswers.Power(190e3, 7500, EngineKind.ASPIRATED),
                tyres("250/575-13", TyreKind.SOFT_SLICK),
                DownforceClass.WINGS,
                CarAnswers.Gears.counted(6),
                232,
                false,
                OPEN);
    }

    static Stream<CarAnswers> several() {
        return Stream.of(
                hatchback(235, false, OPEN),
                hatchback(241, true, OptionalDouble.of(1)),
                turboSaloon(),
                electricCar(),
                winged());
    }

    @ParameterizedTest
    @MethodSource("several")
    void theLapModelDoesTheTopSpeedAnswered(CarAnswers answers) {
        double top = LapSolver.lap(CarDraft.of(answers).car(), STRAIGHT, Conditions.STANDARD)
                .figures()
                .topSpeed();
        // Drag areas and rev limits are written to four digits, and speed goes by the cube root of power over drag; the
        // rest is the
        // lap's table of torque in 400 cells.
        assertThat(top).isCloseTo(answers.topSpeed().metresPerSecond(), Percentage.withPercentage(0.2));
    }

    @Test
    void powerAtTheWheelsIsDragTimesSpeedAtTheTop() {
        CarAnswers answers = turboSaloon();
        Car car = CarDraft.of(answers).car();
        double v = answers.topSpeed().metresPerSecond();
        double drag = car.value(Quantity.DRAG_AREA);
        double lift = car.value(Quantity.LIFT_AREA_FRONT) + car.value(Quantity.LIFT_AREA_REAR);
        for (Wing wing : car.wings()) {
            double deg = car.value("aero.wings." + wing.name() + ".angleDeg");
            drag += wing.at(deg).drag();
            lift += wing.at(deg).liftFront() + wing.at(deg).liftRear();
        }
        double q = 0.5 * STANDARD_DENSITY * v * v;
        double weight = (car.value(Quantity.MASS) + car.value(Quantity.FUEL_MASS)) * GRAVITY;
        double rolling = car.value(Quantity.ROLLING_RESISTANCE) + v * car.value(Quantity.ROLLING_RESISTANCE_PER_SPEED);
        // Its gears are guessed such that the engine gives its whole power there; a turbocharged one whatever the air.
        double power = 260e3 * car.value(Quantity.EFFICIENCY);
        assertThat((q * drag + rolling * (weight + q * lift)) * v)
                .as("drag and rolling resistance times speed")
                .isCloseTo(power, Percentage.withPercentage(0.1));
    }

    @Test
    void theLimiterStandsWhereTheGearsDoTheTopSpeed() {
        Car car = CarDraft.of(hatchback(241, true, OPEN)).car();
        double rpm = 241 * KMH * 0.82 * 4.06 / car.value(Quantity.WHEEL_RADIUS) * 30 / Math.PI;
        // Written to five digits.
        assertThat(car.value(Quantity.REV_LIMIT)).isCloseTo(rpm, Percentage.withPercentage(0.01));
    }

    @ParameterizedTest
    @CsvSource({"1.05", "0.95", "0.6"})
    void theCarStopsAsAnswered(double g) {
        Track track = new SegmentPath(
                        List.of(
                                Segment.straight(400),
                                Segment.clothoid(20, Double.POSITIVE_INFINITY, 12),
                                Segment.arc(18, 12)),
                        false,
                        20)
                .openTrack("stop", 45);
        Lap lap = LapSolver.lap(
                CarDraft.of(hatchback(235, false, OptionalDouble.of(g))).car(), track, Conditions.STANDARD);
        double found = 0;
        double nearest = 2;
        for (int i = 0; i < lap.count(); i++) {
            double off = Math.abs(lap.value(Channel.SPEED, i) - 100 * KMH);
            if (lap.value(Channel.ACCELERATION, i) < -1 && off < nearest) {
                nearest = off;
                found = -lap.value(Channel.ACCELERATION, i) / GRAVITY;
            }
        }
        // The station next to 100 km/h may be 2 m/s away, and drag falls with speed by some 0.7 % of the stop a m/s;
        // engine drag on
        // the overrun shares the brakes out a little otherwise.
        assertThat(found).isCloseTo(g, Percentage.withPercentage(2));
    }

    @ParameterizedTest
    @MethodSource("several")
    void bothAxlesGiveUpTogetherWhereBarsReach(CarAnswers answers) {
        Car car = CarDraft.of(answers).car();
        AxleMargins margins = AxleLimits.of(Vehicle.of(car, Conditions.STANDARD))
                .in(TurnState.level(TurnState.Pedals.HOLDING, 30, 0, car.gearRatios().length));
        double understeer = margins.understeer() / margins.limit();
        double front = car.value(Quantity.BAR_FRONT);
        double frontShare = front / (front + car.value(Quantity.BAR_REAR));
        if (frontShare > 0.94) {
            // All the stiffness is at the front already, and the rear gives up first all the same: bars reach no
            // further.
            assertThat(understeer).isBetween(-0.1, 0.003);
        } else {
            // Bars are written to three digits, which move the balance by one or two thousandths.
            assertThat(understeer).isCloseTo(0, Offset.offset(0.003));
        }
    }

    @ParameterizedTest
    @EnumSource(EngineKind.class)
    void anEngineHasItsPowerWhereAnswered(EngineKind kind) {
        double limit = kind.usualRevLimit() * 6000;
        double most = 0;
        double at = 0;
        for (double rpm = 1000; rpm <= limit; rpm += 5) {
            double power = kind.curve(200e3, 6000, limit).torque(rpm * Math.PI / 30) * rpm * Math.PI / 30;
            if (power > most * (1 + 1e-9)) {
                most = power;
                at = rpm;
            }
        }
        // Between its points the curve is a cubic: a parabola of power is met to a few thousandths.
        assertThat(most).isCloseTo(200e3, Percentage.withPercentage(0.5));
        if (kind != EngineKind.ELECTRIC) {
            assertThat(at).isCloseTo(6000, Percentage.withPercentage(1.5));
        }
    }

    @ParameterizedTest
    @MethodSource("several")
    void everyGuessHasADoubt(CarAnswers answers) {
        CarDraft draft = CarDraft.of(answers);
        Set<Quantity> inClasses = EnumSet.noneOf(Quantity.class);
        Arrays.stream(DoubtClass.values()).forEach(kind -> inClasses.addAll(kind.quantities()));
        // What is chosen and not unknown: the load at which friction is given, fuel, a pressure as it is set. Losses
        // are in power's.
        Set<Quantity> chosen = EnumSet.of(
                Quantity.REFERENCE_LOAD_FRONT,
                Quantity.REFERENCE_LOAD_REAR,
                Quantity.FUEL_MASS,
                Quantity.HOT_PRESSURE_FRONT,
                Quantity.HOT_PRESSURE_REAR,
                Quantity.EFFICIENCY);
        // A final drive guessed such that top gear does the top speed is right in all that a lap feels, but for the
        // radius.
        chosen.add(Quantity.FINAL_DRIVE);
        List<Quantity> without = new ArrayList<>();
        for (CarDraft.Guess guess : draft.guesses()) {
            boolean stated = draft.car()
                    .doubt()
                    .quantities()
                    .containsKey(guess.quantity().path());
            assertThat(stated).as(guess.quantity().path()).isEqualTo(guess.deviation() > 0);
            if (!stated && !inClasses.contains(guess.quantity()) && !chosen.contains(guess.quantity())) {
                without.add(guess.quantity());
            }
        }
        assertThat(without).isEmpty();
    }

    @Test
    void carsDrawnDoTheTopSpeedAnswered() {
        CarAnswers answers = hatchback(235, false, OPEN);
        Car car = CarDraft.of(answers).car();
        assertThat(car.doubt().correlation(Quantity.POWER_SCALE.path(), Quantity.DRAG_AREA.path()))
                .as("power and drag are known together")
                .isGreaterThan(0.5);
        PlausibleCars cars = PlausibleCars.asStated(car, Conditions.STANDARD);
        final int n = 40;
        double[][] draws = cars.draws(n, 1);
        LapSolver solver = LapSolver.on(STRAIGHT);
        double sum = 0;
        double squares = 0;
        for (double[] draw : draws) {
            double top = solver.figures(Vehicle.of(cars.car(car, draw), Conditions.STANDARD))
                    .topSpeed();
            sum += top;
            squares += top * top;
        }
        double mean = sum / n;
        double deviation = Math.sqrt(squares / n - mean * mean) / mean;
        assertThat(mean).isCloseTo(235 * KMH, Percentage.withPercentage(1));
        // 1.5 % as stated, 0.5 % of rolling resistance and rev limits, and what 40 draws do not tell of a deviation (a
        // ninth). Drawn apart,
        // power (4 %) and drag (6 %) would make it 2.4 %.
        assertThat(deviation).isBetween(0.010, 0.020);
    }

    @Test
    void aStopTellsOfGripAcrossToo() {
        Car none = CarDraft.of(hatchback(235, false, OPEN)).car();
        Car told = CarDraft.of(hatchback(235, false, OptionalDouble.of(1.14))).car();
        assertThat(told.value(Quantity.FRICTION_Y_FRONT)).isGreaterThan(none.value(Quantity.FRICTION_Y_FRONT));
        assertThat(deviation(told)).isLessThan(deviation(none));
    }

    private static double deviation(Car car) {
        return car.doubt()
                .quantities()
                .get(Quantity.FRICTION_Y_FRONT.path())
                .standardDeviation(car.value(Quantity.FRICTION_Y_FRONT));
    }

    @Test
    void powerAndTopSpeedThatContradictAreRefusedWithWhatWouldMendIt() {
        assertThatThrownBy(() -> CarDraft.of(hatchback(160, false, OPEN)))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("power and top speed")
                .hasMessageContaining("with this power say")
                .hasMessageContaining("rev limiter");
        assertThatThrownBy(() -> CarDraft.of(hatchback(241, false, OPEN)).car().with("engine.powerScale", -1))
                .isInstanceOf(InvalidValueException.class);
        // Too fast for the air as well.
        CarAnswers fast = answers(
                1200,
                DrivenWheels.REAR,
                new CarAnswers.Power(60e3, 6000, EngineKind.ASPIRATED),
                tyres("205", TyreKind.ROAD),
                DownforceClass.NONE,
                CarAnswers.Gears.counted(5),
                260,
                false,
                OPEN);
        assertThatThrownBy(() -> CarDraft.of(fast)).hasMessageContaining("power and top speed");
    }

    @Test
    void whatTheRefusalSaysWouldMendItDoes() {
        String message = refusal(hatchback(160, false, OPEN));
        String[] speeds = message.split("say ", 2)[1].split(" km/h", 3);
        double low = Double.parseDouble(speeds[0]);
        double high = Double.parseDouble(speeds[1].replace(" to ", ""));
        // Whole km/h, and an engine that is a little off its peak at other speeds: a step inside the range told.
        assertThat(CarDraft.of(hatchback(low + 3, false, OPEN)).dragArea()).isPositive();
        assertThat(high).isGreaterThan(low);
    }

    private static String refusal(CarAnswers answers) {
        try {
            CarDraft.of(answers);
        } catch (InvalidValueException contradiction) {
            return contradiction.getMessage();
        }
        throw new AssertionError("it was not refused");
    }

    @Test
    void gearsThatDoNotReachTheTopSpeedAreRefused() {
        CarAnswers short5 = answers(
                1045,
                DrivenWheels.FRONT,
                new CarAnswers.Power(147e3, 7100, EngineKind.ASPIRATED),
                tyres("205/50R15", TyreKind.TRACK),
                DownforceClass.NONE,
                CarAnswers.Gears.of(List.of(3.15, 2.05, 1.48, 1.16), 4.06),
                235,
                false,
                OPEN);
        assertThatThrownBy(() -> CarDraft.of(short5))
                .hasMessageContaining("gears and top speed")
                .hasMessageContaining("it cannot turn so fast")
                .hasMessageContaining("a final drive of");
        CarAnswers noSize = answers(
                1045,
                DrivenWheels.FRONT,
                new CarAnswers.Power(147e3, 7100, EngineKind.ASPIRATED),
                tyres("205", TyreKind.TRACK),
                DownforceClass.NONE,
                CarAnswers.Gears.of(List.of(3.15, 2.05, 1.48), 7),
                235,
                false,
                OPEN);
        assertThatThrownBy(() -> CarDraft.of(noSize)).hasMessageContaining("roll on a radius");
    }

    @Test
    void aStopThatNoSuchTyresGiveIsRefused() {
        assertThatThrownBy(() -> CarDraft.of(hatchback(235, false, OptionalDouble.of(1.9))))
                .hasMessageContaining("tyres and brakes")
                .hasMessageContaining("say at most");
    }

    @ParameterizedTest
    @CsvSource({
        // ISO 4000-1: width, aspect, rim: 15 · 25.4 + 2 · 0.5 · 205.
        "205/50R15, 205, 586.0, 381.0",
        "205/50 ZR 15, 205, 586.0, 381.0",
        "300/680-18, 300, 680.0, 457.2",
        "20.0x7.5-13, 190.5, 508.0, 330.2"
    })
    void aSideWallIsRead(String text, double width, double diameter, double rim) {
        TyreSize size = TyreSize.of(text);
        assertThat(size.widthMm()).isCloseTo(width, Offset.offset(1e-9));
        assertThat(size.diameterMm().getAsDouble()).isCloseTo(diameter, Offset.offset(1e-9));
        assertThat(size.rimMm().getAsDouble()).isCloseTo(rim, Offset.offset(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"205/50", "round", "'205,50'", "9/50R15", "300/680-30"})
    void whatIsNoSideWallIsRefused(String text) {
        assertThatThrownBy(() -> TyreSize.of(text)).isInstanceOf(InvalidValueException.class);
    }
}
