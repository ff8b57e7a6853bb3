package dev.lapwright.results.car;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.InputHash;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Report of a car document: the car's key figures, and its adjustments with what they move. */
public final class CarReport {
    /** Where drag and downforce are told: the higher speed for cars that reach it. */
    private static final double HIGH_SPEED_KMH = 200;

    private static final double LOW_SPEED_KMH = 100;

    private static final double WATT_PER_KILOWATT = 1000;

    /** Relative difference below which two factors are the same: a car's document may give a dozen digits. */
    private static final double SAME = 1e-9;

    private static final Table<Adjustment> FOR_MACHINES = Table.<Adjustment>of("Adjustments")
            .value("name", Adjustment::name)
            .value("label", Adjustment::label)
            .value("unit", adjustment -> adjustment.unit().symbol())
            .value("min", Adjustment::min)
            .value("max", Adjustment::max)
            .value("step", adjustment -> isChoice(adjustment) ? null : adjustment.step())
            .value("choices", adjustment -> isChoice(adjustment) ? adjustment.choices() : null)
            .value("clickSize", adjustment -> adjustment.clickSize() > 0 ? adjustment.clickSize() : null)
            .value("standard", Adjustment::standard)
            .value(
                    "moves",
                    adjustment ->
                            adjustment.effects().stream().map(Effect::quantity).toList());

    /** A line of the table for people: an adjustment with the first thing it moves, or one more thing. */
    private record Line(Adjustment adjustment, boolean first, String moves) {
        String word(String text) {
            return first ? text : "";
        }

        String number(double value) {
            return first ? Numbers.plain(value) : "";
        }
    }

    private static final Table<Line> FOR_PEOPLE = Table.<Line>of("Adjustments")
            .words("", "adjustment", line -> line.word(line.adjustment.name()))
            .words("", "unit", line -> line.word(line.adjustment.unit().symbol()))
            .text("from", "", line -> line.number(line.adjustment.min()))
            .text("to", "", line -> line.number(line.adjustment.max()))
            .text(
                    "step",
                    "",
                    line -> isChoice(line.adjustment) ? line.word("choice") : line.number(line.adjustment.step()))
            .with(Table.Trait.LESSER)
            .text("standard", "", line -> line.number(line.adjustment.standard()))
            .words("", "moves", Line::moves);

    private final Car car;
    private final Vehicle vehicle;
    private final CarFigures figures;
    private final double airSpeedKmh;

    private CarReport(Car car) {
        this.car = car;
        vehicle = Vehicle.of(car, Conditions.STANDARD);
        double fastest = Unit.METRE_PER_SECOND.convert(vehicle.geared(), Unit.KILOMETRE_PER_HOUR);
        airSpeedKmh = fastest < HIGH_SPEED_KMH ? LOW_SPEED_KMH : HIGH_SPEED_KMH;
        figures = CarFigures.of(vehicle, Unit.KILOMETRE_PER_HOUR.convert(airSpeedKmh, Unit.METRE_PER_SECOND));
    }

    /** What is said of a car as its document has it, on a standard day, for people and machines. */
    public static Report of(Car car) {
        Report report = new Report();
        CarReport told = new CarReport(car);
        told.tell(report);
        return report.field("kind", "car")
                .field("name", car.name())
                .field("description", car.description())
                .field("figures", told.fields().fields())
                .field("adjustments", FOR_MACHINES, car.adjustments());
    }

    private void tell(Report report) {
        report.title(Report.verbatim(car.name()), "");
        if (!car.description().isEmpty()) {
            report.hanging("  ", Report.verbatim(car.description()));
        }
        report.gap();
        figures(report);
        report.gap();
        if (car.adjustments().isEmpty()) {
            report.line("The car has no adjustments; its quantities can be set: see --quantities.");
            return;
        }
        List<Line> lines = new ArrayList<>();
        for (Adjustment adjustment : car.adjustments()) {
            List<String> moves = moves(adjustment);
            for (int i = 0; i < moves.size(); i++) {
                lines.add(new Line(adjustment, i == 0, moves.get(i)));
            }
        }
        Adjustment first = car.adjustments().get(0);
        report.rows(FOR_PEOPLE, lines)
                .gap()
                .paragraph("Set one with -s, as in -s " + first.name() + "=" + Numbers.plain(first.max())
                        + ", or sweep it with --vary. --quantities lists all else that can be set. Keep to the"
                        + " maker's limits and the rules of the event.");
    }

    private void figures(Report report) {
        report.item(
                        "Mass",
                        said(Quantity.MASS) + " and " + said(Quantity.FUEL_MASS) + " of fuel, "
                                + said(Quantity.FRONT_WEIGHT) + " on the front axle, centre of gravity at "
                                + said(Quantity.CG_HEIGHT))
                .item(
                        "Size",
                        "wheelbase " + said(Quantity.WHEELBASE) + ", track "
                                + Numbers.plain(car.value(Quantity.TRACK_FRONT)) + " m front, "
                                + Numbers.plain(car.value(Quantity.TRACK_REAR)) + " m rear, width "
                                + said(Quantity.WIDTH))
                .item(
                        "Engine",
                        Numbers.fixed(figures.engine().peakPower() / WATT_PER_KILOWATT, 0) + " kW at "
                                + Numbers.fixed(figures.engine().peakPowerRpm(), 0) + " rpm, "
                                + Numbers.fixed(figures.engine().peakTorque(), 0) + " Nm at "
                                + Numbers.fixed(figures.engine().peakTorqueRpm(), 0) + " rpm, rev limit "
                                + said(Quantity.REV_LIMIT))
                .item(
                        "Drive",
                        layout() + ", " + car.gearRatios().length + " gears, final drive "
                                + Numbers.plain(car.value(Quantity.FINAL_DRIVE)) + ", at the rev limit "
                                + Arrays.stream(gearSpeedsKmh())
                                        .mapToObj(speed -> Numbers.fixed(speed, 0))
                                        .collect(Collectors.joining(", "))
                                + " km/h")
                .item(
                        "Air",
                        "at " + Numbers.plain(airSpeedKmh) + " km/h: drag "
                                + Numbers.fixed(figures.aero().drag(), 0)
                                + " N, downforce "
                                + Numbers.fixed(figures.aero().downforceFront(), 0) + " N front, "
                                + Numbers.fixed(figures.aero().downforceRear(), 0) + " N rear")
                .item(
                        "Ride height",
                        "at rest "
                                + heights(car.value(Quantity.RIDE_HEIGHT_FRONT), car.value(Quantity.RIDE_HEIGHT_REAR))
                                + ", at " + Numbers.plain(airSpeedKmh) + " km/h "
                                + heights(
                                        figures.aero().rideHeightFront(),
                                        figures.aero().rideHeightRear()))
                .item("Roll", Numbers.percent(figures.frontRollShare()) + " % of the roll stiffness at the front")
                .item(
                        "Tyres",
                        "friction along " + friction(Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR) + ", across "
                                + friction(Quantity.FRICTION_Y_FRONT, Quantity.FRICTION_Y_REAR))
                .item("Brakes", said(Quantity.BRAKE_FRONT_SHARE) + " at the front axle");
    }

    private Report fields() {
        return new Report()
                .field("massWithFuelKg", figures.mass())
                .field("peakPowerW", figures.engine().peakPower())
                .field("peakPowerRpm", figures.engine().peakPowerRpm())
                .field("peakTorqueNm", figures.engine().peakTorque())
                .field("peakTorqueRpm", figures.engine().peakTorqueRpm())
                .field("drive", layout())
                .field("gearRatios", InputHash.list(car.gearRatios()))
                .field("gearSpeedsAtRevLimitKmh", InputHash.list(gearSpeedsKmh()))
                .field("frontRollSharePercent", Unit.NONE.convert(figures.frontRollShare(), Unit.PERCENT))
                .field("airSpeedKmh", airSpeedKmh)
                .field("dragN", figures.aero().drag())
                .field("frontDownforceN", figures.aero().downforceFront())
                .field("rearDownforceN", figures.aero().downforceRear())
                .field("frontRideHeightMm", figures.aero().rideHeightFront())
                .field("rearRideHeightMm", figures.aero().rideHeightRear());
    }

    private static boolean isChoice(Adjustment adjustment) {
        return !adjustment.choices().isEmpty();
    }

    private static String heights(double front, double rear) {
        return Numbers.fixed(front, 1) + " mm front, " + Numbers.fixed(rear, 1) + " mm rear";
    }

    private double[] gearSpeedsKmh() {
        return Arrays.stream(CarFigures.gearSpeeds(vehicle))
                .map(speed -> Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR))
                .toArray();
    }

    private String friction(Quantity front, Quantity rear) {
        return Numbers.plain(car.value(front)) + " front, " + Numbers.plain(car.value(rear)) + " rear";
    }

    private String layout() {
        double front = car.value(Quantity.FRONT_DRIVE_SHARE);
        if (front == 0) {
            return "rear-wheel drive";
        }
        return front == 100 ? "front-wheel drive" : "all-wheel drive with " + Numbers.plain(front) + " % at the front";
    }

    private String said(Quantity quantity) {
        return Numbers.with(car.value(quantity), quantity.unit());
    }

    /** What an adjustment moves: a text for each quantity moved, and one for clicks and choices; at least one. */
    private List<String> moves(Adjustment adjustment) {
        List<String> moves = new ArrayList<>();
        for (Effect effect : adjustment.effects()) {
            moves.add(moves(effect, adjustment, car.unitOf(effect.quantity())));
        }
        if (isChoice(adjustment)) {
            moves.add("choices: "
                    + adjustment.choices().stream().map(Numbers::plain).collect(Collectors.joining(", ")));
        }
        if (adjustment.clickSize() > 0) {
            moves.add("1 click = " + Numbers.with(adjustment.clickSize(), adjustment.unit()));
        }
        return moves;
    }

    private static String moves(Effect effect, Adjustment adjustment, Unit unit) {
        String step = switch (adjustment.unit()) {
            case NONE -> "1";
            case CLICK -> "click";
            default -> adjustment.unit().symbol();
        };
        if (effect instanceof Effect.Relative relative) {
            return effect.quantity() + " by " + Numbers.signed(relative.perUnit()) + " per " + step;
        }
        if (effect instanceof Effect.Absolute absolute && isTheSettingItself(absolute, adjustment.unit(), unit)) {
            return effect.quantity();
        }
        double standard = adjustment.standard();
        double least = effect.apply(0, adjustment.min(), standard);
        double most = effect.apply(0, adjustment.max(), standard);
        return effect.quantity() + " " + Numbers.plain(least) + ".." + Numbers.plain(most);
    }

    /** Whether the quantity is what is set, perhaps in another unit. */
    private static boolean isTheSettingItself(Effect.Absolute effect, Unit from, Unit to) {
        return effect.offset() == 0
                && from.convertsTo(to)
                && Math.abs(effect.factor() - from.convert(1, to)) <= SAME * Math.abs(effect.factor());
    }
}
