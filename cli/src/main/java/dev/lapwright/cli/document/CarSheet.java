package dev.lapwright.cli.document;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.cli.output.TextTable;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.InputHash;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A car: its key figures and its adjustments. */
public final class CarSheet implements Sheet {
    /** Where drag and downforce are told: the higher speed for cars that reach it. */
    private static final double HIGH_SPEED_KMH = 200;

    private static final double LOW_SPEED_KMH = 100;

    private static final double WATT_PER_KILOWATT = 1000;

    private final Car car;
    private final Vehicle vehicle;
    private final CarFigures figures;
    private final double airSpeedKmh;

    public CarSheet(Car car) {
        this.car = car;
        vehicle = Vehicle.of(car, Conditions.STANDARD);
        double fastest = Unit.METRE_PER_SECOND.convert(vehicle.geared(), Unit.KILOMETRE_PER_HOUR);
        airSpeedKmh = fastest < HIGH_SPEED_KMH ? LOW_SPEED_KMH : HIGH_SPEED_KMH;
        figures = CarFigures.of(vehicle, Unit.KILOMETRE_PER_HOUR.convert(airSpeedKmh, Unit.METRE_PER_SECOND));
    }

    @Override
    public void print(Console console) {
        console.line(console.bold(car.name()));
        if (!car.description().isEmpty()) {
            Lines.print(console, "  ", 2, car.description());
        }
        console.line();
        figures(console);
        console.line();
        if (car.adjustments().isEmpty()) {
            console.line("The car has no adjustments; its quantities can be set: see --quantities.");
            return;
        }
        adjustments(console);
        console.line();
        Lines.paragraph(
                console,
                "Set one with -s, as in -s " + example() + ", or sweep it with --vary. --quantities lists all else"
                        + " that can be set. Keep to the maker's limits and the rules of the event.");
    }

    private String example() {
        Adjustment first = car.adjustments().get(0);
        return first.name() + "=" + Numbers.plain(first.max());
    }

    private void figures(Console console) {
        Lines.item(
                console,
                "Mass",
                said(Quantity.MASS) + " and " + said(Quantity.FUEL_MASS) + " of fuel, " + said(Quantity.FRONT_WEIGHT)
                        + " on the front axle, centre of gravity at " + said(Quantity.CG_HEIGHT));
        Lines.item(
                console,
                "Size",
                "wheelbase " + said(Quantity.WHEELBASE) + ", track " + Numbers.plain(car.value(Quantity.TRACK_FRONT))
                        + " m front, " + Numbers.plain(car.value(Quantity.TRACK_REAR)) + " m rear, width "
                        + said(Quantity.WIDTH));
        Lines.item(
                console,
                "Engine",
                Numbers.fixed(figures.peakPower() / WATT_PER_KILOWATT, 0) + " kW at "
                        + Numbers.fixed(figures.peakPowerRpm(), 0) + " rpm, " + Numbers.fixed(figures.peakTorque(), 0)
                        + " Nm at " + Numbers.fixed(figures.peakTorqueRpm(), 0) + " rpm, rev limit "
                        + said(Quantity.REV_LIMIT));
        Lines.item(
                console,
                "Drive",
                layout() + ", " + car.gearRatios().length + " gears, final drive "
                        + Numbers.plain(car.value(Quantity.FINAL_DRIVE)) + ", at the rev limit " + gearSpeeds()
                        + " km/h");
        Lines.item(
                console,
                "Air",
                "at " + Numbers.plain(airSpeedKmh) + " km/h: drag " + Numbers.fixed(figures.drag(), 0)
                        + " N, downforce " + Numbers.fixed(figures.downforceFront(), 0) + " N front, "
                        + Numbers.fixed(figures.downforceRear(), 0) + " N rear");
        Lines.item(
                console,
                "Ride height",
                "at rest " + heights(car.value(Quantity.RIDE_HEIGHT_FRONT), car.value(Quantity.RIDE_HEIGHT_REAR))
                        + ", at " + Numbers.plain(airSpeedKmh) + " km/h "
                        + heights(figures.rideHeightFront(), figures.rideHeightRear()));
        Lines.item(
                console, "Roll", Numbers.percent(figures.frontRollShare()) + " % of the roll stiffness at the front");
        Lines.item(
                console,
                "Tyres",
                "friction along " + friction(Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR) + ", across "
                        + friction(Quantity.FRICTION_Y_FRONT, Quantity.FRICTION_Y_REAR));
        Lines.item(console, "Brakes", said(Quantity.BRAKE_FRONT_SHARE) + " at the front axle");
    }

    private static String heights(double front, double rear) {
        return Numbers.fixed(front, 1) + " mm front, " + Numbers.fixed(rear, 1) + " mm rear";
    }

    private String gearSpeeds() {
        List<String> speeds = new ArrayList<>();
        for (double speed : CarFigures.gearSpeeds(vehicle)) {
            speeds.add(Numbers.fixed(Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR), 0));
        }
        return String.join(", ", speeds);
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

    private void adjustments(Console console) {
        TextTable table = new TextTable()
                .words("adjustment")
                .words("unit")
                .numbers("from", "")
                .numbers("to", "")
                .numbers("step", "")
                .numbers("standard", "")
                .words("moves");
        for (Adjustment adjustment : car.adjustments()) {
            List<String> moves = Moves.of(adjustment, car);
            boolean choice = !adjustment.choices().isEmpty();
            table.row(
                    adjustment.name(),
                    adjustment.unit().symbol(),
                    Numbers.plain(adjustment.min()),
                    Numbers.plain(adjustment.max()),
                    choice ? "choice" : Numbers.plain(adjustment.step()),
                    Numbers.plain(adjustment.standard()),
                    moves.get(0));
            for (String more : moves.subList(1, moves.size())) {
                table.row("", "", "", "", "", "", more);
            }
        }
        table.printTo(console);
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "car");
        tree.put("name", car.name());
        tree.put("description", car.description());
        tree.put("figures", figuresTree());
        List<Object> adjustments = new ArrayList<>();
        for (Adjustment adjustment : car.adjustments()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", adjustment.name());
            one.put("label", adjustment.label());
            one.put("unit", adjustment.unit().symbol());
            one.put("min", adjustment.min());
            one.put("max", adjustment.max());
            if (adjustment.choices().isEmpty()) {
                one.put("step", adjustment.step());
            } else {
                one.put("choices", adjustment.choices());
            }
            if (adjustment.clickSize() > 0) {
                one.put("clickSize", adjustment.clickSize());
            }
            one.put("standard", adjustment.standard());
            List<Object> moves = new ArrayList<>();
            adjustment.effects().forEach(effect -> moves.add(effect.quantity()));
            one.put("moves", moves);
            adjustments.add(one);
        }
        tree.put("adjustments", adjustments);
        return tree;
    }

    private Map<String, Object> figuresTree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("massWithFuelKg", figures.mass());
        tree.put("peakPowerW", figures.peakPower());
        tree.put("peakPowerRpm", figures.peakPowerRpm());
        tree.put("peakTorqueNm", figures.peakTorque());
        tree.put("peakTorqueRpm", figures.peakTorqueRpm());
        tree.put("drive", layout());
        tree.put("gearRatios", InputHash.list(car.gearRatios()));
        List<Object> speeds = new ArrayList<>();
        for (double speed : CarFigures.gearSpeeds(vehicle)) {
            speeds.add(Unit.METRE_PER_SECOND.convert(speed, Unit.KILOMETRE_PER_HOUR));
        }
        tree.put("gearSpeedsAtRevLimitKmh", speeds);
        tree.put("frontRollSharePercent", Unit.NONE.convert(figures.frontRollShare(), Unit.PERCENT));
        tree.put("airSpeedKmh", airSpeedKmh);
        tree.put("dragN", figures.drag());
        tree.put("frontDownforceN", figures.downforceFront());
        tree.put("rearDownforceN", figures.downforceRear());
        tree.put("frontRideHeightMm", figures.rideHeightFront());
        tree.put("rearRideHeightMm", figures.rideHeightRear());
        return tree;
    }
}
