package dev.lapwright.slip;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.FourWheels;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Place;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Stations;
import java.util.List;
import java.util.Optional;

/**
 * Fuller model of a car at one place: steer, sideslip and the slips of four wheels at which forces along and across the path, the yaw moment, the
 * differentials and the brakes agree, and how far that can be driven. Section 14 of docs/theory.md has the equations.
 *
 * <p>It has from the lap's own model what both must share: aero, loads, peaks over load and lean, stiffness, the laws of differentials. Loads
 * are taken in the car's own axes, drag and rolling resistance along the path. An equilibrium counts that is met on the way from a
 * straight into the turn and from low speed or none of drive and brakes upwards, until it first ends; so a faster one with the tail out,
 * beyond that end, is none, nor is one in which more slip angle at the rear gives less force.
 *
 * <p>It stands for tyres with a friction ellipse, exponent 2, whose slip stiffness falls as the tyre curve does and whose cornering stiffness is
 * at most a hundred times the load per radian. Neglects compliance,
 * Ackermann steering, aligning torque, aero by sideslip, and whatever takes time. Owns scratch: use one for each thread.
 */
public final class SlipModel {
    /** Cornering stiffness over load, 1/rad, beyond which a peak lies at so little slip that searches step over it; tyres have some 10 to 40. */
    private static final double STIFFEST = 100;

    private final FourWheels wheels;
    private final SlipLimits limits;

    private SlipModel(Vehicle vehicle) {
        wheels = new FourWheels(vehicle);
        check(wheels);
        limits = new SlipLimits(wheels, SlipSoftness.DEFAULT);
    }

    /**
     * Of a car on its day.
     *
     * @throws InvalidValueException for a car that it does not stand for
     */
    public static SlipModel of(Vehicle vehicle) {
        return new SlipModel(vehicle);
    }

    /**
     * A solver of laps by this model: the same line, engine, gears, shifts, integration and driver as the fast one. Columns of the lap that are
     * no matter of limits (loads, drag, heights) are the same law at its speeds; cornering drag and the uses of axles are the fast
     * model's words on what this one drives, so that a use may exceed 1. Where no equilibrium is found the fast answer stands, and
     * {@link dev.lapwright.lap.Lap#isUnchecked} says so.
     *
     * @throws InvalidValueException when it solves for a car that the model does not stand for
     */
    public static LapSolver laps(Stations stations) {
        return laps(stations, SlipSoftness.DEFAULT);
    }

    /** The same, rounded off otherwise. */
    static LapSolver laps(Stations stations, SlipSoftness softness) {
        return LapSolver.asking(
                wheels -> {
                    check(wheels);
                    return new SlipLimits(wheels, softness);
                },
                stations);
    }

    private static void check(FourWheels wheels) {
        stands("tyres.frictionExponent", wheels.ellipseExponent(), wheels.ellipseExponent() == 2, "2, the ellipse");
        double fall = 100 * wheels.slipStiffnessFall();
        stands("tyres.slipStiffnessFallPercent", fall, fall == 100, "100, as the tyre curve falls");
        double stiffness = wheels.stiffnessPerLoad();
        stands("tyres.corneringStiffnessPerRad", stiffness, stiffness <= STIFFEST, "at most " + Check.text(STIFFEST));
    }

    private static void stands(String field, double value, boolean stands, String remedy) {
        if (!stands) {
            throw new InvalidValueException(
                    field,
                    "the fuller model has no tyre with " + Check.text(value) + " here",
                    "give " + remedy + ", or keep to the fast model");
        }
    }

    /** The state at a speed (m/s) and dv/dt (m/s²), tyres alone counting; none where there is no equilibrium. */
    public Optional<SlipState> at(Place place, double speed, double acceleration) {
        Check.positive("speed (m/s)", speed);
        Check.finite("acceleration (m/s²)", acceleration);
        wheels.at(place);
        return limits.settle(speed, acceleration) ? Optional.of(state(Limit.POWER)) : Optional.empty();
    }

    /** The state at the highest speed that is held, up to a speed (m/s); none where the car holds none. */
    public Optional<SlipState> fastest(Place place, double most) {
        Check.positive("speed (m/s)", most);
        wheels.at(place);
        // A point mass on tyres that hold twice their load: an upper bound to begin below, no more.
        double bend = Math.abs(place.lateralCurvature());
        double near = Math.min(most, bend > 0 ? Math.sqrt(2 * StandardAtmosphere.GRAVITY / bend) : most);
        double found = limits.highest(most, near);
        return Double.isNaN(found)
                ? Optional.empty()
                : Optional.of(state(found >= most ? Limit.POWER : limits.limit()));
    }

    /** The state of greatest dv/dt at a speed (m/s) with an engine that gives this at the wheels, N; none where nothing is found. */
    public Optional<SlipState> drive(Place place, double speed, double engine) {
        Check.positive("speed (m/s)", speed);
        Check.positive("engine (N)", engine);
        wheels.at(place);
        limits.forget();
        return Double.isNaN(limits.drive(speed, engine, 1)) ? Optional.empty() : Optional.of(state(limits.limit()));
    }

    /** The state of lowest dv/dt under brakes at a speed (m/s), with no engine drag; none where nothing is found. */
    public Optional<SlipState> brake(Place place, double speed) {
        Check.positive("speed (m/s)", speed);
        wheels.at(place);
        limits.forget();
        return Double.isNaN(limits.brake(speed, 0, 1)) ? Optional.empty() : Optional.of(state(limits.limit()));
    }

    private SlipState state(Limit limit) {
        SlipForces forces = limits.forces();
        double[] y = limits.tracer().state;
        forces.linearise(y);
        SlipState.SlipWheel[] wheel = new SlipState.SlipWheel[FourWheels.WHEELS];
        for (int w = 0; w < wheel.length; w++) {
            wheel[w] = new SlipState.SlipWheel(
                    wheels.wheelLoad(w),
                    y[SlipForces.SLIP + w],
                    Math.atan(forces.drift[w]),
                    forces.along[w],
                    forces.across[w],
                    forces.use[w]);
        }
        return new SlipState(
                forces.speed,
                forces.acceleration,
                wheels.lateral(),
                wheels.left(),
                y[SlipForces.STEER],
                y[SlipForces.SIDESLIP],
                List.of(wheel[0], wheel[2]),
                List.of(wheel[1], wheel[3]),
                forces.differenceMoment(),
                forces.answer(0),
                forces.answer(2),
                forces.staticMargin(),
                limit);
    }
}
