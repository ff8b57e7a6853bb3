package dev.lapwright.sense;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;

/**
 * Oddities of a car: forces that cannot be, quantities that do not go together, values that look like another unit. What is
 * usual is common practice, no source, unless a formula is named; cars outside it exist, and are told of all the same.
 */
public final class CarOddities {
    /** Speeds at which air is looked at, m/s. */
    private static final double[] SPEEDS = {15, 30, 45, 60, 75};

    /** Lift over drag of the best racing cars, more or less. */
    private static final double MOST_LIFT_OVER_DRAG = 6;

    private static final double LEAST_FRICTION = 0.7;
    private static final double MOST_FRICTION = 2.5;
    /** Load at which friction is given, over that of one wheel at rest. */
    private static final double LEAST_LOAD_SHARE = 0.4;

    private static final double MOST_LOAD_SHARE = 3.5;
    private static final double LEAST_POWER = 25;
    private static final double MOST_POWER = 1300;
    private static final double WIDEST_STEP = 1.9;
    private static final double NARROWEST_STEP = 1.04;
    /** Speed at the rev limit in top gear over the speed that power and drag allow. */
    private static final double SHORTEST_TOP = 0.75;

    private static final double LONGEST_TOP = 1.4;
    private static final double SOFTEST = 0.9;
    private static final double STIFFEST = 9;
    private static final double SMALLEST_WHEEL = 0.18;
    private static final double LARGEST_WHEEL = 0.42;
    /** Factors on the final drive with which a car is tried for its top speed. */
    private static final double[] FINAL_DRIVES = {0.35, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 1.2, 1.5, 2};

    private static final Track STRAIGHT =
            Track.open("straight", 20, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(30_000, 0)));

    private final Car car;
    private final Vehicle vehicle;
    private final List<Oddity> found = new ArrayList<>();

    private CarOddities(Car car, Conditions conditions) {
        this.car = car;
        vehicle = Vehicle.of(car, conditions);
    }

    /**
     * All that is odd about a car as set up.
     *
     * @throws LapwrightException if it cannot be put together at all
     */
    public static List<Oddity> of(Car car, Conditions conditions) {
        CarOddities oddities = new CarOddities(car, conditions);
        oddities.found.addAll(UsualValues.of(car));
        oddities.air(conditions);
        oddities.upright();
        oddities.tyres();
        oddities.springs();
        oddities.drive();
        oddities.brakes();
        return List.copyOf(oddities.found);
    }

    private void add(Quantity quantity, String problem, String remedy) {
        found.add(new Oddity(quantity.path(), problem, remedy));
    }

    private double value(Quantity quantity) {
        return car.value(quantity);
    }

    /** Drag and downforce at the car's own setting and at both ends of each adjustment, the others as they are. */
    private void air(Conditions conditions) {
        String worst = air(vehicle, "");
        for (Adjustment adjustment : car.adjustments()) {
            for (double setting : new double[] {adjustment.min(), adjustment.max()}) {
                if (worst == null) {
                    try {
                        worst = air(
                                Vehicle.of(car.with(adjustment.name(), setting), conditions),
                                " at " + adjustment.name() + " " + adjustment.withUnit(setting));
                    } catch (LapwrightException fault) {
                        // A setting that no car can have is found where it is driven.
                    }
                }
            }
        }
        CarFigures.Aero aero = CarFigures.of(vehicle, SPEEDS[SPEEDS.length - 1]).aero();
        double lift = aero.downforceFront() + aero.downforceRear();
        if (worst == null && lift > MOST_LIFT_OVER_DRAG * aero.drag()) {
            add(
                    Quantity.DRAG_AREA,
                    "downforce is " + Oddity.text(lift / aero.drag()) + " times the drag; hardly any car has more than "
                            + Oddity.text(MOST_LIFT_OVER_DRAG),
                    "check that areas of downforce are those of the whole car in m², and that drag counts the wings");
        }
    }

    /** What cannot be about a car's air, null if nothing. */
    private String air(Vehicle vehicle, String where) {
        for (double speed : SPEEDS) {
            double drag = vehicle.platformAt(speed).areas().drag();
            if (!(drag > 0)) {
                String problem = "the total drag area is " + Oddity.text(drag) + " m² at " + Oddity.text(3.6 * speed)
                        + " km/h" + where + ": the air would push the car";
                add(
                        Quantity.DRAG_AREA,
                        problem,
                        "check the drag of the wings, and the slopes of a map over ride heights, which may be used far from where they hold");
                return problem;
            }
        }
        return null;
    }

    /** Half the track over the height of the centre of gravity: the acceleration across, in g, at which a rigid car tips over. */
    private void upright() {
        double track = Math.min(value(Quantity.TRACK_FRONT), value(Quantity.TRACK_REAR));
        double height = value(Quantity.CG_HEIGHT);
        double friction = Math.max(value(Quantity.FRICTION_Y_FRONT), value(Quantity.FRICTION_Y_REAR));
        if (height > 0 && 0.5 * track / height < friction) {
            add(
                    Quantity.CG_HEIGHT,
                    "half the track over this height is " + Oddity.text(0.5 * track / height)
                            + ", less than the tyres' friction of " + Oddity.text(friction)
                            + ": the car would tip over before it slides",
                    "check height and tracks; they are in metres");
        }
        double longest = 1.3 * value(Quantity.WHEELBASE);
        if (track > longest || track < 0.3 * value(Quantity.WHEELBASE)) {
            add(
                    Quantity.WHEELBASE,
                    "the track is " + Oddity.text(track / value(Quantity.WHEELBASE))
                            + " of the wheelbase; usual are 0.5 to 0.8",
                    "check both; they are in metres");
        }
    }

    private void tyres() {
        double weight = vehicle.mass() * StandardAtmosphere.GRAVITY;
        double front = 0.01 * value(Quantity.FRONT_WEIGHT);
        tyre(Quantity.FRICTION_Y_FRONT, Quantity.REFERENCE_LOAD_FRONT, 0.5 * weight * front);
        tyre(Quantity.FRICTION_Y_REAR, Quantity.REFERENCE_LOAD_REAR, 0.5 * weight * (1 - front));
        for (Quantity friction : List.of(Quantity.FRICTION_X_FRONT, Quantity.FRICTION_X_REAR)) {
            friction(friction);
        }
    }

    private void tyre(Quantity friction, Quantity reference, double onWheel) {
        if (!car.hasOwnTyres()) {
            friction(friction);
            double share = value(reference) / onWheel;
            if (share > MOST_LOAD_SHARE || share < LEAST_LOAD_SHARE) {
                add(
                        reference,
                        "friction is given at " + Oddity.text(value(reference))
                                + " N, but a wheel of this axle carries " + Oddity.text(onWheel) + " N at rest",
                        "give the load of one wheel, in newtons, at which the friction was measured");
            }
        }
    }

    private void friction(Quantity quantity) {
        double friction = value(quantity);
        if (!car.hasOwnTyres() && (friction < LEAST_FRICTION || friction > MOST_FRICTION)) {
            add(
                    quantity,
                    "a peak friction of " + Oddity.text(friction) + "; rubber on a dry road has " + LEAST_FRICTION
                            + " to " + MOST_FRICTION,
                    "check it; a wet road belongs to the day's grip");
        }
    }

    /** Natural frequency in heave of each end's mass on its springs and tyres: f = √(k/m) / 2π. */
    private void springs() {
        double front = 0.01 * value(Quantity.FRONT_WEIGHT);
        spring(Quantity.SPRING_FRONT, Quantity.MOTION_RATIO_FRONT, Quantity.VERTICAL_RATE_FRONT, front);
        spring(Quantity.SPRING_REAR, Quantity.MOTION_RATIO_REAR, Quantity.VERTICAL_RATE_REAR, 1 - front);
    }

    private void spring(Quantity spring, Quantity ratio, Quantity tyre, double share) {
        double wheel = 1000 * value(spring) * value(ratio) * value(ratio);
        double road = 1000 * value(tyre);
        double rate = wheel * road / (wheel + road);
        double frequency = Math.sqrt(rate / (0.5 * vehicle.mass() * share)) / (2 * Math.PI);
        if (frequency < SOFTEST || frequency > STIFFEST) {
            add(
                    spring,
                    "that end of the car would bounce at " + Oddity.text(frequency)
                            + " Hz; usual are 1 Hz on the road to 8 Hz with much downforce",
                    "check the spring, which is in N/mm, and the motion ratio, which is spring travel over wheel travel");
        }
    }

    private void drive() {
        CarFigures.Engine engine = CarFigures.of(vehicle, SPEEDS[0]).engine();
        double perTonne = engine.peakPower() / vehicle.mass();
        if (perTonne < LEAST_POWER || perTonne > MOST_POWER) {
            found.add(new Oddity(
                    "engine",
                    "peak power is " + Oddity.text(engine.peakPower() / 1000) + " kW, " + Oddity.text(perTonne)
                            + " W for each kg; usual are 50 to 1200",
                    "check the torque, which is in Nm at the crankshaft, and the mass, which is in kg"));
        }
        if (value(Quantity.WHEEL_RADIUS) < SMALLEST_WHEEL || value(Quantity.WHEEL_RADIUS) > LARGEST_WHEEL) {
            add(
                    Quantity.WHEEL_RADIUS,
                    "a radius of " + Oddity.text(value(Quantity.WHEEL_RADIUS)) + " m; usual are 0.2 to 0.4",
                    "check that it is no diameter, and in metres");
        }
        double[] ratios = car.gearRatios();
        for (int g = 1; g < ratios.length; g++) {
            double step = ratios[g - 1] / ratios[g];
            if (step > WIDEST_STEP || step < NARROWEST_STEP) {
                found.add(new Oddity(
                        "gearbox.ratios[" + g + "]",
                        "gear " + g + " turns the engine " + Oddity.text(step) + " times as fast as gear " + (g + 1)
                                + "; usual are 1.1 to 1.8",
                        "check the ratios, the shortest gear first"));
            }
        }
        double[] speeds = CarFigures.gearSpeeds(vehicle);
        double geared = speeds[speeds.length - 1];
        double byDrag = speedOnAStraight();
        if (geared < SHORTEST_TOP * byDrag || geared > LONGEST_TOP * byDrag) {
            boolean isShort = geared < byDrag;
            add(
                    Quantity.FINAL_DRIVE,
                    "top gear ends at " + Oddity.text(3.6 * geared) + " km/h, while power and drag allow "
                            + Oddity.text(3.6 * byDrag) + " km/h",
                    isShort
                            ? "if the circuit has long straights, check final drive, ratios, wheel radius and drag"
                            : "check final drive, ratios, wheel radius and drag: top gear would never be of use");
        }
    }

    /** Top speed on a long straight with whatever final drive gives the most, m/s: what power and drag allow. */
    private double speedOnAStraight() {
        LapSolver solver = LapSolver.on(STRAIGHT);
        double most = 0;
        for (double factor : FINAL_DRIVES) {
            try {
                Car geared = car.with(Quantity.FINAL_DRIVE, factor * value(Quantity.FINAL_DRIVE));
                most = Math.max(
                        most,
                        solver.figures(Vehicle.of(geared, vehicle.conditions())).topSpeed());
            } catch (LapwrightException fault) {
                // A final drive that there is not, or with which the car does not get going.
            }
        }
        return most;
    }

    /** Brakes that give the front less than its weight lock the rear wheels first however lightly they are used. */
    private void brakes() {
        if (value(Quantity.BRAKE_FRONT_SHARE) < value(Quantity.FRONT_WEIGHT)) {
            add(
                    Quantity.BRAKE_FRONT_SHARE,
                    "the front brakes do " + Oddity.text(value(Quantity.BRAKE_FRONT_SHARE))
                            + " % of the work and carry " + Oddity.text(value(Quantity.FRONT_WEIGHT))
                            + " % of the weight at rest: the rear wheels would lock first at any braking",
                    "check the share; never drive with less than the maker allows");
        }
    }
}
