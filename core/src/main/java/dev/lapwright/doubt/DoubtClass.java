package dev.lapwright.doubt;

import dev.lapwright.car.Quantity;
import dev.lapwright.fit.FitNuisance;
import java.util.List;
import java.util.Optional;

/**
 * Class of unknowns: how well such a number is known where a document does not say, and how to know it better. Sizes are one standard
 * deviation unless they are a limit. They are ours, by common practice, without a source; where a fit of logged laps begins with the
 * same doubt ({@link FitNuisance}), it is that one.
 */
public enum DoubtClass {
    /** Mass with driver. */
    MASS(
            "mass",
            Way.PERCENT,
            FitNuisance.MASS.usual(),
            "%",
            "weigh the car with driver and a known amount of fuel",
            Quantity.MASS),
    /** Share of the weight on the front axle. */
    FRONT_WEIGHT(
            "front weight",
            Way.SHIFT,
            FitNuisance.FRONT_WEIGHT.usual(),
            "points",
            "weigh it on four scales on level ground, driver aboard",
            Quantity.FRONT_WEIGHT),
    /** Height of the centre of gravity. */
    CG_HEIGHT(
            "height of the centre of gravity",
            Way.SHIFT,
            FitNuisance.CG_HEIGHT.usual() / 1000,
            "m",
            "weigh the front axle with the car level and with its rear axle raised, suspension locked",
            Quantity.CG_HEIGHT),
    /** Height of the front roll centre. */
    ROLL_CENTRE_FRONT(
            "front roll centre",
            Way.SHIFT,
            0.015,
            "m",
            "measure where the front suspension's joints lie",
            Quantity.ROLL_CENTRE_FRONT),
    /** Height of the rear roll centre. */
    ROLL_CENTRE_REAR(
            "rear roll centre",
            Way.SHIFT,
            0.015,
            "m",
            "measure where the rear suspension's joints lie",
            Quantity.ROLL_CENTRE_REAR),
    /** Friction of all tyres, as rubber and road have it that day. */
    GRIP(
            "grip of all tyres",
            Way.PERCENT,
            3,
            "%",
            "log laps and fit them",
            Quantity.FRICTION_X_FRONT,
            Quantity.FRICTION_Y_FRONT,
            Quantity.FRICTION_X_REAR,
            Quantity.FRICTION_Y_REAR),
    /** Friction of the front tyres over that of the rear tyres. */
    GRIP_BALANCE(
            "grip, front over rear",
            Way.OWN,
            FitNuisance.GRIP_BALANCE.usual(),
            "%",
            "log laps on two anti-roll bars, note which axle slides first, and fit them together",
            Quantity.FRICTION_X_FRONT,
            Quantity.FRICTION_Y_FRONT,
            Quantity.FRICTION_X_REAR,
            Quantity.FRICTION_Y_REAR),
    /** Friction along over friction across. */
    GRIP_ALONG(
            "grip, along over across",
            Way.PERCENT,
            3,
            "%",
            "log hard stops in a straight line beside steady corners",
            Quantity.FRICTION_X_FRONT,
            Quantity.FRICTION_X_REAR),
    /** Fall of friction with load. */
    LOAD_SENSITIVITY(
            "load sensitivity of the tyres",
            Way.PERCENT,
            FitNuisance.LOAD_SENSITIVITY.usual(),
            "%",
            "ask the tyre's maker, or drive laps on two anti-roll bars",
            Quantity.SENSITIVITY_X_FRONT,
            Quantity.SENSITIVITY_Y_FRONT,
            Quantity.SENSITIVITY_X_REAR,
            Quantity.SENSITIVITY_Y_REAR),
    /** Cornering stiffness of the front tyres. */
    STIFFNESS_FRONT(
            "cornering stiffness, front",
            Way.PERCENT,
            15,
            "%",
            "ask the tyre's maker, or log the steering over steady circles",
            Quantity.CORNERING_STIFFNESS_FRONT),
    /** Cornering stiffness of the rear tyres. */
    STIFFNESS_REAR(
            "cornering stiffness, rear",
            Way.PERCENT,
            15,
            "%",
            "ask the tyre's maker, or log steering and slip angle over steady circles",
            Quantity.CORNERING_STIFFNESS_REAR),
    /** Stiffness along the tyre, which differentials feel. */
    SLIP_STIFFNESS(
            "slip stiffness of the tyres", Way.PERCENT, 20, "%", "ask the tyre's maker", Quantity.SLIP_STIFFNESS),
    /** Friction lost away from the best lean. */
    CAMBER_LOSS(
            "what lean costs a tyre",
            Way.PERCENT,
            40,
            "%",
            "drive laps on two cambers, with temperatures across the tread",
            Quantity.INCLINATION_LOSS_X_FRONT,
            Quantity.INCLINATION_LOSS_Y_FRONT,
            Quantity.INCLINATION_LOSS_X_REAR,
            Quantity.INCLINATION_LOSS_Y_REAR),
    /** Lean at which a tyre is best. */
    BEST_INCLINATION(
            "best lean of a tyre",
            Way.SHIFT,
            0.7,
            "deg",
            "take temperatures across the tread, or ask the tyre's maker",
            Quantity.BEST_INCLINATION_FRONT,
            Quantity.BEST_INCLINATION_REAR),
    /** Pressure at which the front tyres are best. */
    IDEAL_PRESSURE_FRONT(
            "best pressure, front",
            Way.SHIFT,
            7,
            "kPa",
            "drive laps on two hot pressures within the maker's limits",
            Quantity.IDEAL_PRESSURE_FRONT),
    /** Pressure at which the rear tyres are best. */
    IDEAL_PRESSURE_REAR(
            "best pressure, rear",
            Way.SHIFT,
            7,
            "kPa",
            "drive laps on two hot pressures within the maker's limits",
            Quantity.IDEAL_PRESSURE_REAR),
    /** Friction lost away from the best pressure. */
    PRESSURE_LOSS(
            "what a wrong pressure costs",
            Way.PERCENT,
            50,
            "%",
            "drive laps on two hot pressures within the maker's limits",
            Quantity.PRESSURE_LOSS),
    /** Temperature of the carcass, front and rear alike. */
    TYRE_TEMPERATURE(
            "temperature of the tyres",
            Way.SHIFT,
            10,
            "K",
            "probe the carcass at once when the car has come in, or log it",
            Quantity.TYRE_TEMPERATURE),
    /** Temperature at which the tyres are best. */
    IDEAL_TEMPERATURE(
            "best temperature of the tyres",
            Way.SHIFT,
            8,
            "K",
            "ask the tyre's maker, or see at which temperatures the quickest laps come",
            Quantity.IDEAL_TEMPERATURE),
    /** Friction lost away from the best temperature. */
    TEMPERATURE_LOSS(
            "what a wrong temperature costs",
            Way.PERCENT,
            50,
            "%",
            "log laps as the tyres warm up",
            Quantity.TEMPERATURE_LOSS),
    /** Drag of the whole car, wings counted as they stand. */
    DRAG(
            "drag",
            Way.OWN,
            8,
            "%",
            "coast down on a level straight both ways, or log the top speed on a long one",
            Quantity.DRAG_AREA),
    /** Downforce of the whole car, wings counted as they stand. */
    DOWNFORCE(
            "downforce",
            Way.OWN,
            10,
            "%",
            "log damper travel at two steady speeds on a straight",
            Quantity.LIFT_AREA_FRONT,
            Quantity.LIFT_AREA_REAR),
    /** Share of the downforce on the front axle. */
    AERO_BALANCE(
            "aero balance",
            Way.OWN,
            FitNuisance.AERO_BALANCE.usual(),
            "points",
            "log front and rear damper travel at two steady speeds on a straight",
            Quantity.LIFT_AREA_FRONT,
            Quantity.LIFT_AREA_REAR),
    /** What a wing's angle does to drag, as it moves away from where it stands. */
    WING_DRAG(
            "what wing %s does to drag",
            Way.OWN,
            FitNuisance.SETUP_EFFECT.usual(),
            "%",
            "coast down on two of its settings, or log laps on both and fit them together"),
    /** What a wing's angle does to downforce, as it moves away from where it stands. */
    WING_DOWNFORCE(
            "what wing %s does to downforce",
            Way.OWN, FitNuisance.SETUP_EFFECT.usual(), "%", "log laps on two of its settings and fit them together"),
    /** What ride heights do to downforce at the front. */
    HEIGHTS_FRONT(
            "what ride heights do to front downforce",
            Way.PERCENT,
            30,
            "%",
            "log damper travel at steady speeds on two ride heights",
            Quantity.LIFT_FRONT_PER_FRONT_HEIGHT,
            Quantity.LIFT_FRONT_PER_REAR_HEIGHT,
            Quantity.LIFT_FRONT_PER_FRONT_HEIGHT_SQUARED,
            Quantity.LIFT_FRONT_PER_REAR_HEIGHT_SQUARED,
            Quantity.LIFT_FRONT_PER_BOTH_HEIGHTS),
    /** What ride heights do to downforce at the rear. */
    HEIGHTS_REAR(
            "what ride heights do to rear downforce",
            Way.PERCENT,
            30,
            "%",
            "log damper travel at steady speeds on two ride heights",
            Quantity.LIFT_REAR_PER_FRONT_HEIGHT,
            Quantity.LIFT_REAR_PER_REAR_HEIGHT,
            Quantity.LIFT_REAR_PER_FRONT_HEIGHT_SQUARED,
            Quantity.LIFT_REAR_PER_REAR_HEIGHT_SQUARED,
            Quantity.LIFT_REAR_PER_BOTH_HEIGHTS),
    /** What ride heights do to drag. */
    HEIGHTS_DRAG(
            "what ride heights do to drag",
            Way.PERCENT,
            30,
            "%",
            "coast down on two ride heights",
            Quantity.DRAG_PER_FRONT_HEIGHT,
            Quantity.DRAG_PER_REAR_HEIGHT,
            Quantity.DRAG_PER_FRONT_HEIGHT_SQUARED,
            Quantity.DRAG_PER_REAR_HEIGHT_SQUARED,
            Quantity.DRAG_PER_BOTH_HEIGHTS),
    /** Front ride height at rest. */
    HEIGHT_FRONT(
            "front ride height",
            Way.SHIFT,
            1.5,
            "mm",
            "measure it on a level floor with driver, fuel and hot pressures",
            Quantity.RIDE_HEIGHT_FRONT),
    /** Rear ride height at rest. */
    HEIGHT_REAR(
            "rear ride height",
            Way.SHIFT,
            1.5,
            "mm",
            "measure it on a level floor with driver, fuel and hot pressures",
            Quantity.RIDE_HEIGHT_REAR),
    /** Rate of the front springs, at the wheel. */
    SPRING_FRONT(
            "front springs at the wheel",
            Way.PERCENT,
            5,
            "%",
            "measure motion ratio and spring rate",
            Quantity.SPRING_FRONT),
    /** Rate of the rear springs, at the wheel. */
    SPRING_REAR(
            "rear springs at the wheel",
            Way.PERCENT,
            5,
            "%",
            "measure motion ratio and spring rate",
            Quantity.SPRING_REAR),
    /** Roll stiffness of the front bar. */
    BAR_FRONT(
            "front anti-roll bar",
            Way.PERCENT,
            FitNuisance.SETUP_EFFECT.usual(),
            "%",
            "load one front wheel by known weights in the garage, with the bar and without",
            Quantity.BAR_FRONT),
    /** Roll stiffness of the rear bar. */
    BAR_REAR(
            "rear anti-roll bar",
            Way.PERCENT,
            FitNuisance.SETUP_EFFECT.usual(),
            "%",
            "load one rear wheel by known weights in the garage, with the bar and without",
            Quantity.BAR_REAR),
    /** Vertical rate of the tyres. */
    TYRE_RATE(
            "vertical rate of the tyres",
            Way.PERCENT,
            10,
            "%",
            "measure how far a tyre sinks under known weights",
            Quantity.VERTICAL_RATE_FRONT,
            Quantity.VERTICAL_RATE_REAR),
    /** Power. */
    POWER("power", Way.PERCENT, 3, "%", "put it on a dynamometer, corrected for its air", Quantity.POWER_SCALE),
    /** Rolling resistance. */
    ROLLING(
            "rolling resistance",
            Way.PERCENT,
            20,
            "%",
            "coast down from low speed on a level road both ways",
            Quantity.ROLLING_RESISTANCE,
            Quantity.ROLLING_RESISTANCE_PER_SPEED),
    /** Drag of the engine off the throttle. */
    OVERRUN("engine drag off the throttle", Way.PERCENT, 30, "%", "log a roll-out in gear", Quantity.OVERRUN_DRAG),
    /** Time of an upshift. */
    SHIFT_TIME("time of a shift", Way.PERCENT, 25, "%", "log engine speed through shifts", Quantity.SHIFT_TIME),
    /** Inertia of what turns. */
    INERTIA(
            "inertia of engine and wheels",
            Way.PERCENT,
            20,
            "%",
            "swing a wheel on a known pendulum; ask the engine's maker",
            Quantity.ENGINE_INERTIA,
            Quantity.WHEEL_INERTIA),
    /** Rolling radius. */
    WHEEL_RADIUS(
            "rolling radius",
            Way.PERCENT,
            0.7,
            "%",
            "roll the car ten turns of a driven wheel and measure the way",
            Quantity.WHEEL_RADIUS),
    /** Locking of the differentials. */
    LOCKING(
            "locking of the differential",
            Way.PERCENT,
            20,
            "%",
            "ask its maker for the ramps' locking; turn one wheel by a torque wrench for the preload",
            Quantity.POWER_LOCK_FRONT,
            Quantity.POWER_LOCK_REAR,
            Quantity.COAST_LOCK_FRONT,
            Quantity.COAST_LOCK_REAR,
            Quantity.PRELOAD_FRONT,
            Quantity.PRELOAD_REAR),
    /** Share of the brake force at the front. */
    BRAKE_BALANCE(
            "brake balance",
            Way.SHIFT,
            FitNuisance.BRAKE_BALANCE.usual(),
            "points",
            "log both brake pressures, and take piston areas, radii and pads from their makers",
            Quantity.BRAKE_FRONT_SHARE),
    /** What the model does with an inner wheel that goes light under brakes: its own choice, anywhere between its two policies. */
    LIGHT_WHEEL(
            "brake force of a light inner wheel (the model's choice)",
            Way.LIMIT,
            50,
            "points",
            "log both front wheels' speeds under brakes into a bend",
            Quantity.LIGHT_WHEEL),
    /** Temperature of the air. */
    AIR_TEMPERATURE("air temperature", Way.OWN, 3, "K", "measure it in the shade before the run"),
    /** Pressure of the air. */
    AIR_PRESSURE("air pressure", Way.OWN, 3, "hPa", "read a barometer at the circuit, not reduced to the sea"),
    /** Wind from the north, and from the east. */
    WIND("wind from the %s", Way.OWN, 1, "m/s", "measure it at the circuit, at the height of the car"),
    /** Curvature of each corner, where the circuit has no band of it from an import. */
    CORNER(
            "curvature of %s",
            Way.OWN,
            3,
            "%",
            "import points of the road, or log laps there and pool them; measure the inner edge's radius"),
    /** Curvature that is driven in each corner, over that of the line computed. */
    DRIVEN_LINE(
            "line in %s",
            Way.OWN, 2, "%", "log speed and lateral acceleration there, and drive with the line that the log holds"),
    /** Width of the road that is used, on lines that were sought between its edges. */
    WIDTH(
            "width of the road that is used",
            Way.OWN,
            0.4,
            "m",
            "measure the road at two corners, and look at what is left beside the wheels there"),
    /** Fuel that the engine burns for its work, in a stint. */
    CONSUMPTION(
            "what the engine burns for its work",
            Way.OWN,
            6,
            "%",
            "weigh the fuel that is left after a run of known laps"),
    /** Grip of a compound, in a stint. */
    COMPOUND_GRIP("grip of %s", Way.OWN, 1, "%", "drive new tyres of each compound on one day, there and back"),
    /** Wear of a compound, in a stint. */
    WEAR("wear of %s", Way.OWN, 30, "%", "log the laps of a whole run on it, with little traffic"),
    /** Grip of the road at each corner, over that of the whole. */
    ROAD_GRIP(
            "grip of the road in %s",
            Way.OWN, 2, "%", "log laps and hold each corner's lateral acceleration against that of the others");

    /** How an unknown moves its quantities. */
    enum Way {
        /** All by one factor, lognormal. */
        PERCENT,
        /** All by one amount, normal. */
        SHIFT,
        /** All by one amount anywhere within limits alike. */
        LIMIT,
        /** By a law of its own. */
        OWN
    }

    private static final double PERCENT = 100;

    private final String title;
    final Way way;
    private final double size;
    private final String unit;
    private final String measure;
    private final List<Quantity> quantities;

    DoubtClass(String title, Way way, double size, String unit, String measure, Quantity... quantities) {
        this.title = title;
        this.way = way;
        this.size = size;
        this.unit = unit;
        this.measure = measure;
        this.quantities = List.of(quantities);
    }

    /** What is unknown, in a few words; {@code %s} stands for the name of a wing or compound, where the wind comes from, or a corner. */
    public String title() {
        return title;
    }

    /** One standard deviation, or a limit, in {@link #unit()}. */
    public double size() {
        return size;
    }

    /** Unit of the size; percent is of the value, a point one of percent. */
    public String unit() {
        return unit;
    }

    /** Whether the size is a limit, within which it is anywhere alike. */
    public boolean isLimit() {
        return way == Way.LIMIT;
    }

    /** How to know it better, in the garage or on track: common practice, no source. */
    public String measure() {
        return measure;
    }

    /** An unknown of this class, assumed, of something that has a name; empty for none. */
    public Unknown unknown(String of) {
        return new Unknown(title.replace("%s", of), size, unit, isLimit(), Optional.empty(), measure, "");
    }

    /** Factor of a lognormal number whose deviation is the size in percent, at so many deviations. */
    public double factor(double deviations) {
        double relative = size / PERCENT;
        return Math.exp(Math.sqrt(Math.log1p(relative * relative)) * deviations);
    }

    /** What it moves, of the car's quantities; empty for a wing, the day, the circuit or a stint. */
    public List<Quantity> quantities() {
        return quantities;
    }
}
