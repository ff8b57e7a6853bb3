package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.numerics.CubicTable;
import dev.lapwright.powertrain.Differential;
import dev.lapwright.tyre.LoadSensitiveTyre;
import dev.lapwright.tyre.LoadSensitivity;
import dev.lapwright.tyre.TyreModel;
import dev.lapwright.tyre.TyreState;
import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;

/**
 * Tyre law and constants of one axle, as the kernel reads them: friction and cornering stiffness of one wheel over its load.
 * Friction holds compound, pressure, temperature and the day's grip; the surface's grip factor is left to the caller.
 */
final class AxleData {
    /** Load up to which a tyre model is tabulated, in weights of the car, and steps to it. */
    private static final double MOST_LOAD = 4;

    private static final int TYRE_CELLS = 800;

    final double track;
    /** Load transfer per newton of lateral force at the centre of gravity. */
    final double transfer;
    /** Peak friction along and across, and cornering stiffness in 1/rad, of a wheel over its load. */
    private final OverLoad alongTyre;

    private final OverLoad acrossTyre;
    private final OverLoad stiffTyre;
    final double toe;
    /** Whether lean or pressures give each wheel a grip of its own, whatever load it carries. */
    final boolean sided;
    /** Lean of each wheel towards the car's middle at rest, degrees. */
    final double leftLean;

    final double rightLean;
    /** Lean that a newton across the car takes off both wheels, seen from inside the bend, degrees/N. */
    final double leanPerSide;

    final double bestInclination;
    final double lossY;
    final double lossX;
    /** Grip of each wheel by its own pressure over that of the axle's. */
    final double leftGrip;

    final double rightGrip;
    /** Share of the heavier wheel's grip that the axle may always brake with, 0 to 1. */
    final double lightWheel;

    final Differential differential;
    /** Stiffness along the tyre over that across it. */
    final double slipStiffness;
    /** How much of the fall of slip stiffness counts, 0 to 1. */
    final double slipStiffnessFall;

    /**
     * @param axle whose quantities of the car are read
     * @param weight of the car, N
     * @param dayGrip grip of the day, 1 is the reference
     * @param transfer load transfer of the axle, see {@link #transfer}
     * @param sprungRoll roll of the body on the axle's springs per newton across the car, rad/N
     * @param tyreRoll roll of the axle on its tyres per newton across the car, rad/N
     */
    AxleData(Car car, Axle axle, double weight, double dayGrip, double transfer, double sprungRoll, double tyreRoll) {
        boolean atFront = axle == Axle.FRONT;
        track = car.value(atFront ? Quantity.TRACK_FRONT : Quantity.TRACK_REAR);
        this.transfer = transfer;
        double pressure = car.value(atFront ? Quantity.HOT_PRESSURE_FRONT : Quantity.HOT_PRESSURE_REAR);
        double ideal = car.value(atFront ? Quantity.IDEAL_PRESSURE_FRONT : Quantity.IDEAL_PRESSURE_REAR);
        double loss = car.value(Quantity.PRESSURE_LOSS);
        double split = 0.5 * car.value(atFront ? Quantity.PRESSURE_SPLIT_FRONT : Quantity.PRESSURE_SPLIT_REAR);
        double pressed = TyreState.gripFactor(pressure, ideal, loss);
        leftGrip = split == 0 ? 1 : TyreState.gripFactor(pressure + split, ideal, loss) / pressed;
        rightGrip = split == 0 ? 1 : TyreState.gripFactor(pressure - split, ideal, loss) / pressed;
        double grip = dayGrip
                * car.value(Quantity.COMPOUND_GRIP)
                * pressed
                * TyreState.gripFactor(
                        car.value(Quantity.TYRE_TEMPERATURE),
                        car.value(Quantity.IDEAL_TEMPERATURE),
                        car.value(Quantity.TEMPERATURE_LOSS));
        TyreModel tyre = atFront ? car.frontTyre() : car.rearTyre();
        if (tyre instanceof LoadSensitiveTyre plain) {
            alongTyre = OverLoad.of(plain.along(), grip);
            acrossTyre = OverLoad.of(plain.across(), grip);
            stiffTyre = OverLoad.of(plain.cornering(), 1);
        } else {
            String name = (atFront ? "front" : "rear") + " tyre";
            double most = MOST_LOAD * weight;
            alongTyre = OverLoad.read(load -> grip * tyre.frictionX(load), name + ", friction along", most);
            acrossTyre = OverLoad.read(load -> grip * tyre.frictionY(load), name + ", friction across", most);
            stiffTyre = OverLoad.read(tyre::stiffness, name + ", cornering stiffness", most);
        }
        toe = Math.toRadians(car.value(atFront ? Quantity.TOE_FRONT : Quantity.TOE_REAR));
        double camber = car.value(atFront ? Quantity.CAMBER_FRONT : Quantity.CAMBER_REAR);
        double apart = 0.5 * car.value(atFront ? Quantity.CAMBER_SPLIT_FRONT : Quantity.CAMBER_SPLIT_REAR);
        leftLean = -camber - apart;
        rightLean = -camber + apart;
        double gain = car.value(atFront ? Quantity.CAMBER_GAIN_FRONT : Quantity.CAMBER_GAIN_REAR);
        leanPerSide = Math.toDegrees(sprungRoll * (1 - gain) + tyreRoll);
        bestInclination = car.value(atFront ? Quantity.BEST_INCLINATION_FRONT : Quantity.BEST_INCLINATION_REAR);
        lossY = car.value(atFront ? Quantity.INCLINATION_LOSS_Y_FRONT : Quantity.INCLINATION_LOSS_Y_REAR);
        lossX = car.value(atFront ? Quantity.INCLINATION_LOSS_X_FRONT : Quantity.INCLINATION_LOSS_X_REAR);
        sided = lossY > 0 || lossX > 0 || split != 0;
        slipStiffness = car.value(Quantity.SLIP_STIFFNESS) / 100;
        slipStiffnessFall = car.value(Quantity.SLIP_STIFFNESS_FALL) / 100;
        lightWheel = car.value(Quantity.LIGHT_WHEEL) / 100;
        if (car.value(Quantity.FRONT_DRIVE_SHARE) == (atFront ? 0 : 100)) {
            // No half shafts: what a document says of locks there holds nothing together.
            differential = new Differential(0, 0, 0);
            return;
        }
        differential = new Differential(
                car.value(atFront ? Quantity.POWER_LOCK_FRONT : Quantity.POWER_LOCK_REAR) / 100,
                car.value(atFront ? Quantity.COAST_LOCK_FRONT : Quantity.COAST_LOCK_REAR) / 100,
                // The wrench turns one wheel against the other, so each of the two feels the torque that it reads.
                2
                        * car.value(atFront ? Quantity.PRELOAD_FRONT : Quantity.PRELOAD_REAR)
                        / car.value(Quantity.WHEEL_RADIUS));
    }

    /** Whether nothing differs; false too where tyre models of one's own cannot be compared. */
    boolean gripsAs(AxleData other) {
        return alongTyre.is(other.alongTyre)
                && acrossTyre.is(other.acrossTyre)
                && stiffTyre.is(other.stiffTyre)
                && differential.equals(other.differential)
                && Arrays.equals(numbers(), other.numbers());
    }

    private double[] numbers() {
        return new double[] {
            track,
            transfer,
            toe,
            leftLean,
            rightLean,
            leanPerSide,
            bestInclination,
            lossY,
            lossX,
            leftGrip,
            rightGrip,
            lightWheel,
            slipStiffness,
            slipStiffnessFall
        };
    }

    /** Peak friction across a wheel at a load (N), on a surface of grip 1. */
    double frictionY(double load) {
        return acrossTyre.at(load);
    }

    /** Peak friction along a wheel at a load (N), on a surface of grip 1. */
    double frictionX(double load) {
        return alongTyre.at(load);
    }

    /** Cornering stiffness of a wheel over its load, 1/rad, at a load in N. */
    double stiffnessPerLoad(double load) {
        return stiffTyre.at(load);
    }

    /** What the force across per slip angle of a wheel gains per load, 1/rad, at a load in N. */
    double stiffnessGrowth(double load) {
        double step = 1e-3 * load;
        double above = load + step;
        double below = load - step;
        return (stiffnessPerLoad(above) * above - stiffnessPerLoad(below) * below) / (2 * step);
    }

    /** What a tyre gives over its load: max(least, atNoLoad - perLoad F), or a table of a model of one's own. */
    private record OverLoad(double atNoLoad, double perLoad, double least, CubicTable table) {
        static OverLoad of(LoadSensitivity law, double grip) {
            return new OverLoad(grip * law.atNoLoad(), grip * law.perLoad(), grip * law.least(), null);
        }

        static OverLoad read(DoubleUnaryOperator model, String what, double most) {
            CubicTable table = new CubicTable(0, most, TYRE_CELLS, load -> {
                double here = model.applyAsDouble(load);
                if (!(here > 0 && here < Double.POSITIVE_INFINITY)) {
                    throw new InvalidValueException(
                            what,
                            "at " + Check.text(load) + " N it is " + Check.text(here),
                            "a tyre model gives a finite value above 0 at every load from 0 N on");
                }
                return here;
            });
            return new OverLoad(0, 0, 0, table);
        }

        boolean is(OverLoad other) {
            return table == null && equals(other);
        }

        double at(double load) {
            if (table != null) {
                return table.value(load);
            }
            double here = atNoLoad - perLoad * load;
            return here > least ? here : least;
        }
    }
}
