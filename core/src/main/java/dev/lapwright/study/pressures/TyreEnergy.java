package dev.lapwright.study.pressures;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.tyre.TyreModel;
import dev.lapwright.tyre.Wheel;
import java.util.EnumMap;
import java.util.Map;

/**
 * Energy that goes into each tyre on a lap, J: slip across, slip along, and rolling.
 *
 * <p>For wheel i of an axle with side force F, force along X, and slip stiffness C_i = c(N_i) N_i at the wheel's load, both
 * wheels of an axle at one slip angle F/ΣC and one slip X/ΣC:
 *
 * <pre>dE_i/ds = D w_i/Σw + C_i (X/ΣC)² + (r + r' v) N_i,  w_i = C_i (F/ΣC)²</pre>
 *
 * with D the lap's cornering drag (w is summed over four wheels, F is what the axle carries of the car's lateral force) and
 * r, r' the coefficients of rolling resistance. Slip stiffness along is taken like that across, as in the study of balance.
 *
 * <p>Ours, no source. Neglects toe, camber, the moment of a differential, and that slip grows faster than force near the
 * limit. It compares the sides of a car; it is no heat flow to a given degree.
 */
public final class TyreEnergy {
    private static final Channel[] LOADS = {
        Channel.LOAD_FRONT_LEFT, Channel.LOAD_FRONT_RIGHT, Channel.LOAD_REAR_LEFT, Channel.LOAD_REAR_RIGHT
    };

    private final Map<Wheel, Double> energy = new EnumMap<>(Wheel.class);

    private TyreEnergy(double[] sums) {
        for (Wheel wheel : Wheel.values()) {
            energy.put(wheel, sums[wheel.ordinal()]);
        }
    }

    /** The energies of a lap. */
    public static TyreEnergy of(Lap lap) {
        double[] sums = new double[LOADS.length];
        double[] before = forces(lap, 0);
        for (int k = 1; k < lap.count(); k++) {
            double[] here = forces(lap, k);
            double ds = lap.value(Channel.DISTANCE, k) - lap.value(Channel.DISTANCE, k - 1);
            for (int i = 0; i < sums.length; i++) {
                sums[i] += 0.5 * (before[i] + here[i]) * ds;
            }
            before = here;
        }
        return new TyreEnergy(sums);
    }

    /** Energy into one tyre per lap, J. */
    public double of(Wheel wheel) {
        return energy.get(wheel);
    }

    /** How much more goes into the left tyres of an axle than into the right ones, over the mean of the two. */
    public double leftExcess(boolean front) {
        double left = of(front ? Wheel.FRONT_LEFT : Wheel.REAR_LEFT);
        double right = of(front ? Wheel.FRONT_RIGHT : Wheel.REAR_RIGHT);
        double mean = (left + right) / 2;
        return mean > 0 ? (left - right) / mean : 0;
    }

    /** dE/ds of each wheel at a station, N. */
    private static double[] forces(Lap lap, int k) {
        Car car = lap.vehicle().car();
        TyreModel front = car.frontTyre();
        TyreModel rear = car.rearTyre();
        double[] load = new double[LOADS.length];
        double[] stiffness = new double[LOADS.length];
        for (int i = 0; i < load.length; i++) {
            load[i] = Math.max(0, lap.value(LOADS[i], k));
            stiffness[i] = (i < 2 ? front : rear).stiffness(load[i]) * load[i];
        }
        double frontWeight = car.value(Quantity.FRONT_WEIGHT) / 100;
        double side = lap.vehicle().mass() * Math.abs(lap.value(Channel.LATERAL_ACCELERATION, k));
        double drive = lap.value(Channel.DRIVE_FORCE, k);
        double brake = lap.value(Channel.BRAKE_FORCE, k);
        double frontAlong = car.value(Quantity.FRONT_DRIVE_SHARE) / 100 * drive
                + car.value(Quantity.BRAKE_FRONT_SHARE) / 100 * brake;
        double rearAlong = drive + brake - frontAlong;
        double v = lap.value(Channel.SPEED, k);
        double rolling = car.value(Quantity.ROLLING_RESISTANCE) + car.value(Quantity.ROLLING_RESISTANCE_PER_SPEED) * v;
        double[] across = new double[LOADS.length];
        double acrossSum = 0;
        double[] force = new double[LOADS.length];
        for (int i = 0; i < force.length; i++) {
            boolean ofFront = i < 2;
            double axle = ofFront ? stiffness[0] + stiffness[1] : stiffness[2] + stiffness[3];
            if (axle > 0) {
                double angle = (ofFront ? frontWeight : 1 - frontWeight) * side / axle;
                double slip = (ofFront ? frontAlong : rearAlong) / axle;
                across[i] = stiffness[i] * angle * angle;
                acrossSum += across[i];
                force[i] = stiffness[i] * slip * slip;
            }
            force[i] += rolling * load[i];
        }
        if (acrossSum > 0) {
            double drag = lap.value(Channel.CORNERING_DRAG, k);
            for (int i = 0; i < force.length; i++) {
                force[i] += drag * across[i] / acrossSum;
            }
        }
        return force;
    }
}
