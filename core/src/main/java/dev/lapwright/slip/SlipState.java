package dev.lapwright.slip;

import dev.lapwright.lap.Limit;
import java.util.List;

/**
 * Equilibrium of a car at a place by the slips of its four wheels. Signs are those of ISO 8855 for a turn to the left: where {@link #left} is not
 * true, all is seen in the mirror, so that steer into the turn is positive on either side.
 *
 * @param speed m/s
 * @param acceleration dv/dt, m/s²
 * @param lateral what the tyres supply across the path, m/s², not negative
 * @param left whether they push to the left
 * @param steer mean angle of the front wheels to the car's axis, rad
 * @param sideslip angle from the car's axis to its velocity, rad; negative with the tail out
 * @param inner front and rear wheel on the inside of the turn
 * @param outer front and rear wheel on the outside
 * @param yawMoment of unequal forces along the wheels of the axles, Nm, positive into the turn
 * @param frontStiffness share of the front axle's cornering stiffness that is left, 1 far below the limit, 0 at the peak
 * @param rearStiffness the same of the rear axle
 * @param staticMargin how far the point where a little more force across turns the car neither way lies behind its centre of gravity, over the
 *     wheelbase: positive steadies the car, negative turns it further
 * @param limit what ends here, {@code POWER} where nothing does
 */
public record SlipState(
        double speed,
        double acceleration,
        double lateral,
        boolean left,
        double steer,
        double sideslip,
        List<SlipWheel> inner,
        List<SlipWheel> outer,
        double yawMoment,
        double frontStiffness,
        double rearStiffness,
        double staticMargin,
        Limit limit) {
    public SlipState {
        inner = List.copyOf(inner);
        outer = List.copyOf(outer);
    }

    /** Force of all tyres along their wheels, N. */
    public double force() {
        return inner.get(0).along()
                + outer.get(0).along()
                + inner.get(1).along()
                + outer.get(1).along();
    }

    /**
     * One wheel.
     *
     * @param load N
     * @param slip how much faster it turns than it rolls, over that
     * @param slipAngle from its own axis to its way, seen so that a force across to the inside goes with a positive one, rad
     * @param along force along the wheel, N
     * @param across force across it, to the inside, N
     * @param use combined slip over that of its peak
     */
    public record SlipWheel(double load, double slip, double slipAngle, double along, double across, double use) {}
}
