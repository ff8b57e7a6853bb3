package dev.lapwright.draft;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A whole car drafted from the answers to ten questions. What is not answered is guessed by classes of tyres, bodies and engines, and stands
 * with a doubt; what follows from the answers is reckoned, so that they agree: the gears reach the top speed, power and drag meet there, the
 * brakes stop it as said, the bars balance it.
 *
 * <p>Leaves out what nobody could guess: what ride heights do to downforce, dampers, toe, what the left has that the right has not.
 */
public final class CarDraft {
    /** How well an answered top speed is known, relative: wind, slope and a tow make more. Common practice, no source. */
    public static final double TOP_SPEED_DEVIATION = 0.015;

    private static final double FUEL_LITRES_PER_TONNE = 25;
    private static final double LITRE_KG = 0.745;
    private static final double ROLLING_PER_SPEED = 5e-5;
    private static final double LOAD_SENSITIVITY = 0.1;
    private static final double LOAD_SENSITIVITY_ALONG = 0.08;
    private static final double POWER_DEVIATION = 0.04;
    /** Deviation of friction along over across in a kind of tyre, and of a hardest stop that is told, relative. */
    private static final double ALONG_DEVIATION = 0.04;

    private static final double STOP_DEVIATION = 0.03;
    private static final int TRIES = 40;

    private final CarAnswers answers;
    private final Map<Quantity, Double> values = new EnumMap<>(Quantity.class);
    private final Map<Quantity, String> from = new LinkedHashMap<>();
    private final DraftGearing gearing;
    private final DraftDrag drag;
    private final Car car;
    private final DraftDoubt doubt;
    private final double[] ratesPerBar = new double[2];

    /**
     * Number of the draft.
     *
     * @param quantity of the car
     * @param value in its unit
     * @param deviation one standard deviation in its unit, 0 where its class says it or nothing does
     * @param from where it is from, in a few words
     */
    public record Guess(Quantity quantity, double value, double deviation, String from) {
        public Guess {
            Check.finite("value", value);
            Check.inRange("deviation", deviation, 0, Double.MAX_VALUE);
        }
    }

    private CarDraft(CarAnswers answers) {
        this.answers = answers;
        gearing = new DraftGearing(answers);
        chassis();
        tyres();
        powertrain();
        drag = new DraftDrag(
                answers,
                gearing,
                values.get(Quantity.MASS) + values.get(Quantity.FUEL_MASS),
                answers.downforce().liftArea().middle(),
                values.get(Quantity.ROLLING_RESISTANCE),
                values.get(Quantity.ROLLING_RESISTANCE_PER_SPEED));
        aero();
        springs();
        brakes();
        Car balanced = DraftBalance.withBars(made(List.of()), barStiffness());
        guess(Quantity.BAR_FRONT, balanced.value(Quantity.BAR_FRONT), "what balances the car in a medium corner");
        guess(Quantity.BAR_REAR, balanced.value(Quantity.BAR_REAR), "what balances the car in a medium corner");
        stop(balanced);
        doubt = doubts();
        Car plain = made(List.of());
        car = made(DraftAdjustments.of(plain, answers, ratesPerBar)).doubting(doubt.stated());
    }

    /**
     * The draft.
     *
     * @throws InvalidValueException if two answers contradict each other: it says which, and what would mend it
     */
    public static CarDraft of(CarAnswers answers) {
        return new CarDraft(answers);
    }

    /** The answers. */
    public CarAnswers answers() {
        return answers;
    }

    /** The car, with what can usually be turned on such a car, and a doubt on every guess. */
    public Car car() {
        return car;
    }

    /** All numbers that were not answered, in the order of a document; unmodifiable. */
    public List<Guess> guesses() {
        List<Guess> guesses = new ArrayList<>();
        for (Quantity quantity : Quantity.values()) {
            if (from.containsKey(quantity)) {
                guesses.add(new Guess(quantity, values.get(quantity), doubt.deviation(quantity), from.get(quantity)));
            }
        }
        return List.copyOf(guesses);
    }

    /** Drag area of the whole car, wings as they stand, m². */
    public double dragArea() {
        return drag.area;
    }

    /** What its rear axle has left in a medium corner when the front one gives up, of the limit; negative where the rear gives up first. */
    public double understeer() {
        return DraftBalance.understeer(car);
    }

    private void answered(Quantity quantity, double value) {
        values.put(quantity, value);
    }

    private void guess(Quantity quantity, double value, String why) {
        values.put(quantity, value);
        from.put(quantity, why);
    }

    private double value(Quantity quantity) {
        return values.get(quantity);
    }

    private void chassis() {
        answered(Quantity.MASS, answers.massKg());
        boolean burns = answers.power().kind() != EngineKind.ELECTRIC;
        double litres = burns ? Math.max(2, Math.rint(FUEL_LITRES_PER_TONNE * answers.massKg() / 1000)) : 0;
        guess(Quantity.FUEL_MASS, LITRE_KG * litres, burns ? "25 l for each tonne, 0.745 kg/l" : "none");
        boolean light = answers.massKg() < 450;
        if (answers.wheelbaseM().isPresent()) {
            answered(Quantity.WHEELBASE, answers.wheelbaseM().getAsDouble());
        } else {
            guess(Quantity.WHEELBASE, light ? 1.65 : 2.6, light ? "usual below 450 kg" : "usual");
        }
        if (answers.frontWeightPercent().isPresent()) {
            answered(Quantity.FRONT_WEIGHT, answers.frontWeightPercent().getAsDouble());
        } else {
            guess(
                    Quantity.FRONT_WEIGHT,
                    answers.driven().usualFrontWeightPercent(),
                    "usual with " + answers.driven().word() + "-wheel drive");
        }
        DownforceClass body = answers.downforce();
        guess(
                Quantity.CG_HEIGHT,
                Digits.rounded(body.cgHeight().middle(), 3) - (body == DownforceClass.NONE && isRacing() ? 0.03 : 0),
                "bodies of downforce '" + body.word() + "'");
        double wheelbase = value(Quantity.WHEELBASE);
        double track = body.isClosed()
                ? Math.min(1.7, Math.max(1.2, 0.61 * wheelbase))
                : Math.min(1.6, 0.45 + 0.5 * wheelbase);
        guess(Quantity.TRACK_FRONT, Digits.rounded(track, 3), "by the wheelbase");
        guess(Quantity.TRACK_REAR, Digits.rounded(0.99 * track, 3), "by the wheelbase");
        double tyre = Math.max(
                        answers.tyres().front().widthMm(),
                        answers.tyres().rear().widthMm())
                / 1000;
        guess(Quantity.WIDTH, Digits.rounded(track + tyre + 0.03, 3), "track and a tyre");
        guess(Quantity.ROLL_CENTRE_FRONT, 0.04, "usual");
        guess(Quantity.ROLL_CENTRE_REAR, 0.07, "usual: the rear a little higher");
        double front =
                body == DownforceClass.WINGS ? 0.04 : body == DownforceClass.LARGE ? 0.065 : isRacing() ? 0.085 : 0.12;
        guess(Quantity.RIDE_HEIGHT_FRONT, 1000 * front, "usual; it moves no downforce here");
        guess(Quantity.RIDE_HEIGHT_REAR, Math.rint(1000 * front * 1.15), "usual; it moves no downforce here");
    }

    private boolean isRacing() {
        return answers.tyres().kind() != TyreKind.ROAD;
    }

    private void tyres() {
        TyreKind kind = answers.tyres().kind();
        String usual = "tyres of kind '" + kind.word() + "'";
        double load = answers.massKg() / 1000;
        // Light cars run low pressures on the same rubber.
        double pressure = Digits.toStep(kind.pressureKpa() * Math.min(1, Math.max(0.45, load)), 5);
        double front = value(Quantity.FRONT_WEIGHT) / 100;
        double weight = (answers.massKg() + value(Quantity.FUEL_MASS)) * StandardAtmosphere.GRAVITY;
        friction(kind, answers.tyres().front(), 0.5 * weight * front, true, usual);
        friction(kind, answers.tyres().rear(), 0.5 * weight * (1 - front), false, usual);
        for (boolean isFront : new boolean[] {true, false}) {
            TyreSize size = isFront ? answers.tyres().front() : answers.tyres().rear();
            double usualDiameter = 2000 * gearing.radius / 0.97;
            double rate = size.verticalRate(pressure, usualDiameter);
            ratesPerBar[isFront ? 0 : 1] = (size.verticalRate(pressure + 10, usualDiameter) - rate) * 10;
            guess(
                    isFront ? Quantity.VERTICAL_RATE_FRONT : Quantity.VERTICAL_RATE_REAR,
                    Digits.rounded(rate, 3),
                    "Rhyne's formula for its size at that pressure");
            guess(isFront ? Quantity.HOT_PRESSURE_FRONT : Quantity.HOT_PRESSURE_REAR, pressure, usual + ", by mass");
            guess(
                    isFront ? Quantity.IDEAL_PRESSURE_FRONT : Quantity.IDEAL_PRESSURE_REAR,
                    pressure,
                    usual + ", by mass");
        }
        guess(
                Quantity.PRESSURE_LOSS,
                Digits.rounded(3e-5 * Math.pow(185 / pressure, 2), 2),
                "flat near the best: 0.3 % at 10 kPa of 185 kPa");
        guess(Quantity.ROLLING_RESISTANCE, kind.rolling(), usual);
        guess(Quantity.ROLLING_RESISTANCE_PER_SPEED, ROLLING_PER_SPEED, "usual");
    }

    /** Friction at the load at rest: a tyre half as wide is used as much by half the load. */
    private void friction(TyreKind kind, TyreSize size, double load, boolean isFront, String usual) {
        double atWidth = TyreKind.LOAD_AT_WIDTH * size.widthMm() / TyreKind.WIDTH_MM;
        double reference = Digits.toStep(load, load > 1000 ? 50 : 10);
        double across = kind.friction().middle() * (1 - LOAD_SENSITIVITY * (reference / atWidth - 1));
        double along = kind.frictionAlong().middle() * (1 - LOAD_SENSITIVITY_ALONG * (reference / atWidth - 1));
        String why = usual + ", by load and width";
        guess(isFront ? Quantity.FRICTION_Y_FRONT : Quantity.FRICTION_Y_REAR, Digits.rounded(across, 4), why);
        guess(isFront ? Quantity.FRICTION_X_FRONT : Quantity.FRICTION_X_REAR, Digits.rounded(along, 4), why);
        guess(
                isFront ? Quantity.SENSITIVITY_Y_FRONT : Quantity.SENSITIVITY_Y_REAR,
                LOAD_SENSITIVITY,
                "usual: 0.08 to 0.15");
        guess(
                isFront ? Quantity.SENSITIVITY_X_FRONT : Quantity.SENSITIVITY_X_REAR,
                LOAD_SENSITIVITY_ALONG,
                "usual: a little less than across");
        guess(
                isFront ? Quantity.REFERENCE_LOAD_FRONT : Quantity.REFERENCE_LOAD_REAR,
                reference,
                "about the load of a wheel at rest");
        guess(
                isFront ? Quantity.CORNERING_STIFFNESS_FRONT : Quantity.CORNERING_STIFFNESS_REAR,
                kind.stiffnessPerRad(),
                usual);
        guess(isFront ? Quantity.STIFFNESS_SENSITIVITY_FRONT : Quantity.STIFFNESS_SENSITIVITY_REAR, 0.12, "usual");
        guess(isFront ? Quantity.BEST_INCLINATION_FRONT : Quantity.BEST_INCLINATION_REAR, 1.5, "usual");
        guess(isFront ? Quantity.INCLINATION_LOSS_Y_FRONT : Quantity.INCLINATION_LOSS_Y_REAR, 0.002, "usual");
        guess(isFront ? Quantity.INCLINATION_LOSS_X_FRONT : Quantity.INCLINATION_LOSS_X_REAR, 0.001, "usual");
        guess(
                isFront ? Quantity.CAMBER_FRONT : Quantity.CAMBER_REAR,
                isFront ? kind.camberFront() : kind.camberRear(),
                usual);
        guess(isFront ? Quantity.CAMBER_GAIN_FRONT : Quantity.CAMBER_GAIN_REAR, 0.5, "usual");
    }

    private void powertrain() {
        TyreKind kind = answers.tyres().kind();
        String usual = "cars on tyres of kind '" + kind.word() + "'";
        guess(
                Quantity.REV_LIMIT,
                gearing.revLimit,
                answers.topSpeed().atLimiter() ? "top speed in top gear" : "a little above the speed of peak power");
        guess(Quantity.POWER_SCALE, 1, "power as answered");
        double torque = answers.power().watts() / (answers.power().rpm() * Math.PI / 30);
        guess(Quantity.ENGINE_INERTIA, Digits.rounded(2.8e-4 * torque, 2), "by torque");
        if (answers.gears().finalDrive().isPresent()) {
            answered(Quantity.FINAL_DRIVE, gearing.finalDrive);
        } else {
            guess(Quantity.FINAL_DRIVE, gearing.finalDrive, "such that top gear does the top speed");
        }
        guess(Quantity.EFFICIENCY, gearing.efficiency, "usual; its doubt is in that of power");
        boolean shifts = answers.gears().count() > 1;
        guess(
                Quantity.SHIFT_TIME,
                shifts ? Digits.rounded(kind.shiftTime().middle(), 2) : 0,
                shifts ? usual : "nothing to shift");
        guess(
                Quantity.WHEEL_RADIUS,
                gearing.radius,
                gearing.sizeKnown
                        ? "97 % of the size's own"
                        : answers.gears().finalDrive().isPresent()
                                        && !answers.gears().ratios().isEmpty()
                                ? "such that top gear does the top speed"
                                : "usual");
        guess(Quantity.WHEEL_INERTIA, Digits.rounded(135 * Math.pow(gearing.radius, 3), 2), "by radius");
        if (answers.driven() == DrivenWheels.ALL) {
            guess(Quantity.FRONT_DRIVE_SHARE, answers.driven().frontSharePercent(), "usual");
            guess(Quantity.CENTRE_LOCK, 30, "usual");
        } else {
            answered(Quantity.FRONT_DRIVE_SHARE, answers.driven().frontSharePercent());
        }
        double lock = kind.lock().middle();
        if (answers.driven() != DrivenWheels.REAR) {
            guess(Quantity.POWER_LOCK_FRONT, answers.driven() == DrivenWheels.ALL ? 0.5 * lock : lock, usual);
            guess(Quantity.COAST_LOCK_FRONT, 0.5 * value(Quantity.POWER_LOCK_FRONT), "half of that under drive");
        }
        if (answers.driven() != DrivenWheels.FRONT) {
            guess(Quantity.POWER_LOCK_REAR, lock, usual);
            guess(Quantity.COAST_LOCK_REAR, 0.5 * lock, "half of that under drive");
        }
    }

    private void aero() {
        DownforceClass body = answers.downforce();
        double dragLeft = drag.area;
        double lift = body.liftArea().middle();
        // Just behind the weight, so that the car is stable when fast; a wing at one end alone presses there.
        double frontShare = body == DownforceClass.SMALL
                ? 0.35
                : body.pressesDown() ? value(Quantity.FRONT_WEIGHT) / 100 - 0.035 : 0.5;
        double front = lift * frontShare;
        double rear = lift - front;
        for (Wing wing : body.wings()) {
            Areas areas = wing.at(body.standsDeg(wing.name()).orElseThrow());
            dragLeft -= areas.drag();
            front -= areas.liftFront();
            rear -= areas.liftRear();
        }
        guess(
                Quantity.DRAG_AREA,
                Digits.rounded(dragLeft, 4),
                answers.topSpeed().atLimiter()
                        ? "bodies of downforce '" + body.word() + "', less the wings"
                        : "what power and top speed leave, less the wings");
        guess(
                Quantity.LIFT_AREA_FRONT,
                Digits.rounded(front, 3),
                "bodies of downforce '" + body.word() + "', less the wings");
        guess(
                Quantity.LIFT_AREA_REAR,
                Digits.rounded(rear, 3),
                "bodies of downforce '" + body.word() + "', less the wings");
    }

    private void springs() {
        double frequency = Math.max(
                answers.tyres().kind().frequencyHz(), answers.downforce().frequencyHz());
        double mass = answers.massKg() + value(Quantity.FUEL_MASS);
        double front = value(Quantity.FRONT_WEIGHT) / 100;
        String why = Check.text(frequency) + " Hz with the tyre; rate at the wheel";
        guess(Quantity.SPRING_FRONT, spring(frequency, 0.5 * mass * front, value(Quantity.VERTICAL_RATE_FRONT)), why);
        guess(
                Quantity.SPRING_REAR,
                spring(frequency, 0.5 * mass * (1 - front), value(Quantity.VERTICAL_RATE_REAR)),
                why);
        guess(Quantity.BAR_FRONT, 0, "");
        guess(Quantity.BAR_REAR, 0, "");
    }

    /** Rate at the wheel, N/mm, that with the tyre's gives a frequency f on a mass m: 1/k = 1/(m (2π f)²) − 1/k_tyre. */
    private static double spring(double frequency, double mass, double tyreRate) {
        double together = mass * Math.pow(2 * Math.PI * frequency, 2) / 1000;
        double softest = Math.min(together, 0.8 * tyreRate);
        double rate = 1 / (1 / softest - 1 / tyreRate);
        return Digits.toStep(rate, rate > 100 ? 10 : rate > 25 ? 5 : 1);
    }

    /** Stiffness of both bars that holds the body's roll to what is usual, Nm/deg. */
    private double barStiffness() {
        double weight = (answers.massKg() + value(Quantity.FUEL_MASS)) * StandardAtmosphere.GRAVITY;
        double front = value(Quantity.FRONT_WEIGHT) / 100;
        double arm = value(Quantity.CG_HEIGHT)
                - front * value(Quantity.ROLL_CENTRE_FRONT)
                - (1 - front) * value(Quantity.ROLL_CENTRE_REAR);
        double roll = Math.min(
                answers.tyres().kind().rollDegPerG(), answers.downforce().rollDegPerG());
        double wanted = weight * arm / roll;
        double springs = springRoll(Quantity.SPRING_FRONT, Quantity.TRACK_FRONT)
                + springRoll(Quantity.SPRING_REAR, Quantity.TRACK_REAR);
        // A car whose springs hold it up has bars all the same, to balance it by.
        return Math.max(wanted - springs, 0.4 * springs);
    }

    /** Roll stiffness of the springs of an axle on rigid tyres, Nm/deg. */
    private double springRoll(Quantity spring, Quantity track) {
        return Math.toRadians(0.5 * 1000 * value(spring) * value(track) * value(track));
    }

    private void brakes() {
        double grip = Math.min(value(Quantity.FRICTION_X_FRONT), value(Quantity.FRICTION_X_REAR));
        guess(
                Quantity.BRAKE_FRONT_SHARE,
                DraftBalance.brakeShare(
                        value(Quantity.FRONT_WEIGHT), value(Quantity.CG_HEIGHT), value(Quantity.WHEELBASE), grip),
                "by load in a hard stop, 2 points to the front of it");
    }

    /** Friction along, or the greatest force of the brakes, with which the car stops as answered. */
    private void stop(Car balanced) {
        if (answers.brakingG().isEmpty()) {
            return;
        }
        double wanted = answers.brakingG().getAsDouble();
        Range along = answers.tyres().kind().frictionAlong();
        double least = along.low() / along.middle();
        double most = along.high() / along.middle();
        double hardest = DraftBalance.hardestStop(withAlong(balanced, most), CarAnswers.STOP_FROM);
        double softest = DraftBalance.hardestStop(withAlong(balanced, least), CarAnswers.STOP_FROM);
        if (wanted > hardest) {
            throw new InvalidValueException(
                    "tyres and brakes",
                    "on tyres of kind '" + answers.tyres().kind().word() + "' such a car stops from 100 km/h with "
                            + text(softest) + " to " + text(hardest) + " g, and not with " + text(wanted) + " g",
                    "say at most " + text(Math.floor(100 * hardest) / 100) + " g, grippier tyres, or more downforce");
        }
        if (wanted < softest) {
            double speed = CarAnswers.STOP_FROM;
            double q = 0.5 * Conditions.STANDARD.air().density() * speed * speed;
            double mass = answers.massKg() + value(Quantity.FUEL_MASS);
            double load = mass * StandardAtmosphere.GRAVITY
                    + q * answers.downforce().liftArea().middle();
            double rolling = value(Quantity.ROLLING_RESISTANCE) + value(Quantity.ROLLING_RESISTANCE_PER_SPEED) * speed;
            // Brakes stop what turns as well.
            double turning =
                    gearing.massFactor(speed, mass, value(Quantity.WHEEL_INERTIA), value(Quantity.ENGINE_INERTIA));
            double force = mass * turning * wanted * StandardAtmosphere.GRAVITY - q * drag.area - rolling * load;
            guess(
                    Quantity.BRAKE_MAX_FORCE,
                    Digits.rounded(force, 4),
                    "such that it stops as answered: less than its tyres could");
            return;
        }
        double low = least;
        double high = most;
        for (int i = 0; i < TRIES; i++) {
            double middle = 0.5 * (low + high);
            if (DraftBalance.hardestStop(withAlong(balanced, middle), CarAnswers.STOP_FROM) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double factor = 0.5 * (low + high);
        Car stopping = withAlong(balanced, factor);
        String why = "such that it stops as answered";
        guess(Quantity.FRICTION_X_FRONT, stopping.value(Quantity.FRICTION_X_FRONT), why);
        guess(Quantity.FRICTION_X_REAR, stopping.value(Quantity.FRICTION_X_REAR), why);
        double across = 1 + learntOfGrip() * (factor - 1);
        why = "tyres of kind '" + answers.tyres().kind().word() + "', by load, width and the hardest stop";
        guess(Quantity.FRICTION_Y_FRONT, Digits.rounded(across * value(Quantity.FRICTION_Y_FRONT), 4), why);
        guess(Quantity.FRICTION_Y_REAR, Digits.rounded(across * value(Quantity.FRICTION_Y_REAR), 4), why);
    }

    /**
     * Share of what a stop tells of friction along that grip as a whole takes over: its variance over the sum of those of grip, along over
     * across, and the stop itself (regression of normal errors).
     */
    private double learntOfGrip() {
        double grip = gripDeviation() * gripDeviation();
        return grip / (grip + ALONG_DEVIATION * ALONG_DEVIATION + STOP_DEVIATION * STOP_DEVIATION);
    }

    /** Deviation of the friction of tyres of this kind, relative. */
    private double gripDeviation() {
        Range friction = answers.tyres().kind().friction();
        return friction.deviation() / friction.middle();
    }

    private static String text(double value) {
        return Check.text(Digits.rounded(value, 3));
    }

    private static Car withAlong(Car balanced, double factor) {
        return balanced.with(
                        Quantity.FRICTION_X_FRONT,
                        Digits.rounded(factor * balanced.document().value(Quantity.FRICTION_X_FRONT), 4))
                .with(
                        Quantity.FRICTION_X_REAR,
                        Digits.rounded(factor * balanced.document().value(Quantity.FRICTION_X_REAR), 4));
    }

    private Car made(List<Adjustment> adjustments) {
        Map<Wing, Double> wings = new LinkedHashMap<>();
        for (Wing wing : answers.downforce().wings()) {
            wings.put(wing, answers.downforce().standsDeg(wing.name()).orElseThrow());
        }
        return Car.of(
                answers.name(),
                "Drafted from ten answers; every number that was guessed has a doubt.",
                values,
                wings,
                gearing.ratios,
                gearing.curve,
                answers.power().kind().correction(),
                adjustments);
    }

    private DraftDoubt doubts() {
        DraftDoubt made = new DraftDoubt(values);
        chassisDoubts(made);
        tyreDoubts(made);
        aeroDoubts(made);
        made.share(0.2, Quantity.SPRING_FRONT, Quantity.SPRING_REAR)
                .shareEach(0.08, Quantity.SPRING_FRONT, Quantity.SPRING_REAR)
                .share(0.25, Quantity.BAR_FRONT, Quantity.BAR_REAR)
                .shareEach(0.12, Quantity.BAR_FRONT, Quantity.BAR_REAR);
        double byShift = answers.tyres().kind().shiftTime().deviation()
                / answers.tyres().kind().shiftTime().middle();
        if (value(Quantity.SHIFT_TIME) > 0) {
            made.share(byShift, Quantity.SHIFT_TIME);
        }
        if (!answers.topSpeed().atLimiter()) {
            made.share(0.015, Quantity.REV_LIMIT);
        } else {
            made.share(TOP_SPEED_DEVIATION / 2, Quantity.REV_LIMIT);
        }
        made.share(0.3, Quantity.ENGINE_INERTIA).share(0.2, Quantity.WHEEL_INERTIA);
        made.share(gearing.sizeKnown ? 0.01 : 0.015, Quantity.WHEEL_RADIUS);
        double lock = answers.tyres().kind().lock().deviation();
        for (Quantity quantity : List.of(Quantity.POWER_LOCK_FRONT, Quantity.POWER_LOCK_REAR)) {
            if (values.containsKey(quantity)) {
                made.amount(lock, quantity);
            }
        }
        for (Quantity quantity : List.of(Quantity.COAST_LOCK_FRONT, Quantity.COAST_LOCK_REAR)) {
            if (values.containsKey(quantity)) {
                made.amount(0.5 * lock, quantity);
            }
        }
        if (answers.driven() == DrivenWheels.ALL) {
            made.amount(5, Quantity.FRONT_DRIVE_SHARE).amount(15, Quantity.CENTRE_LOCK);
        }
        made.amount(2, Quantity.BRAKE_FRONT_SHARE);
        if (values.containsKey(Quantity.BRAKE_MAX_FORCE)) {
            made.share(0.05, Quantity.BRAKE_MAX_FORCE);
        }
        return made;
    }

    private void chassisDoubts(DraftDoubt made) {
        if (answers.wheelbaseM().isEmpty()) {
            made.share(0.04, Quantity.WHEELBASE);
        }
        if (answers.frontWeightPercent().isEmpty()) {
            made.amount(2.5, Quantity.FRONT_WEIGHT);
        }
        made.amount(answers.downforce().cgHeight().deviation(), Quantity.CG_HEIGHT)
                .share(0.03, Quantity.TRACK_FRONT, Quantity.TRACK_REAR)
                .shareEach(0.01, Quantity.TRACK_FRONT, Quantity.TRACK_REAR)
                .share(0.02, Quantity.WIDTH)
                .amount(0.02, Quantity.ROLL_CENTRE_FRONT)
                .amount(0.03, Quantity.ROLL_CENTRE_REAR);
    }

    private void tyreDoubts(DraftDoubt made) {
        double grip = gripDeviation();
        boolean stopKnown = answers.brakingG().isPresent() && !values.containsKey(Quantity.BRAKE_MAX_FORCE);
        if (stopKnown) {
            made.share(grip * Math.sqrt(1 - learntOfGrip()), Quantity.FRICTION_Y_FRONT, Quantity.FRICTION_Y_REAR)
                    .share(STOP_DEVIATION, Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR);
        } else {
            made.share(
                            grip,
                            Quantity.FRICTION_Y_FRONT,
                            Quantity.FRICTION_Y_REAR,
                            Quantity.FRICTION_X_FRONT,
                            Quantity.FRICTION_X_REAR)
                    .share(ALONG_DEVIATION, Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR);
        }
        // Front over rear: the bars are set to balance what there is, so that little is left.
        Map<Quantity, Double> balance = new LinkedHashMap<>();
        for (Quantity quantity : List.of(Quantity.FRICTION_Y_FRONT, Quantity.FRICTION_X_FRONT)) {
            balance.put(quantity, 0.01 * value(quantity));
        }
        for (Quantity quantity : List.of(Quantity.FRICTION_Y_REAR, Quantity.FRICTION_X_REAR)) {
            balance.put(quantity, -0.01 * value(quantity));
        }
        made.cause(balance)
                .share(
                        0.25,
                        Quantity.SENSITIVITY_X_FRONT,
                        Quantity.SENSITIVITY_Y_FRONT,
                        Quantity.SENSITIVITY_X_REAR,
                        Quantity.SENSITIVITY_Y_REAR)
                .share(0.15, Quantity.CORNERING_STIFFNESS_FRONT, Quantity.CORNERING_STIFFNESS_REAR)
                .shareEach(0.08, Quantity.CORNERING_STIFFNESS_FRONT, Quantity.CORNERING_STIFFNESS_REAR)
                .share(0.3, Quantity.STIFFNESS_SENSITIVITY_FRONT, Quantity.STIFFNESS_SENSITIVITY_REAR)
                .amount(0.5, Quantity.CAMBER_FRONT)
                .amount(0.5, Quantity.CAMBER_REAR)
                .share(0.3, Quantity.CAMBER_GAIN_FRONT, Quantity.CAMBER_GAIN_REAR)
                .share(0.12, Quantity.VERTICAL_RATE_FRONT, Quantity.VERTICAL_RATE_REAR)
                .share(0.08, Quantity.IDEAL_PRESSURE_FRONT, Quantity.IDEAL_PRESSURE_REAR)
                .shareEach(0.04, Quantity.IDEAL_PRESSURE_FRONT, Quantity.IDEAL_PRESSURE_REAR)
                .share(0.5, Quantity.PRESSURE_LOSS)
                .share(0.2, Quantity.ROLLING_RESISTANCE, Quantity.ROLLING_RESISTANCE_PER_SPEED);
    }

    /** Power and drag are known together: their quotient is the top speed's. */
    private void aeroDoubts(DraftDoubt made) {
        Range lift = answers.downforce().liftArea();
        double sum = lift.middle();
        double front = sum == 0 ? 0.5 : totalFront() / sum;
        made.cause(Map.of(
                Quantity.LIFT_AREA_FRONT, lift.deviation() * front,
                Quantity.LIFT_AREA_REAR, lift.deviation() * (1 - front)));
        double balance = 0.04 * Math.max(Math.abs(sum), 0.1);
        made.cause(Map.of(Quantity.LIFT_AREA_FRONT, balance, Quantity.LIFT_AREA_REAR, -balance));
        if (answers.topSpeed().atLimiter()) {
            made.amount(drag.classDeviation, Quantity.DRAG_AREA).share(POWER_DEVIATION, Quantity.POWER_SCALE);
            return;
        }
        double[] slopes = drag.slopes();
        made.cause(Map.of(
                        Quantity.POWER_SCALE,
                        POWER_DEVIATION,
                        Quantity.DRAG_AREA,
                        POWER_DEVIATION * slopes[0] * drag.area))
                .amount(TOP_SPEED_DEVIATION * Math.abs(slopes[1]) * drag.area, Quantity.DRAG_AREA);
    }

    private double totalFront() {
        double front = value(Quantity.LIFT_AREA_FRONT);
        for (Wing wing : answers.downforce().wings()) {
            front += wing.at(answers.downforce().standsDeg(wing.name()).orElseThrow())
                    .liftFront();
        }
        return front;
    }
}
