package dev.lapwright.chassis;

import dev.lapwright.fault.Check;

/**
 * Load that moves from the inner to the outer wheel of each axle, per newton of lateral force m·ay at the centre of gravity:
 * through the roll centre directly, and through roll by the axle's share of roll stiffness.
 *
 * <p>Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), section 6.4; Barton and Fieldhouse, Automotive Chassis
 * Engineering (2018), p. 174. Neglects the sideways shift of the centre of gravity in roll and jacking.
 *
 * @param front ΔZ of the front axle per newton
 * @param rear ΔZ of the rear axle per newton
 */
public record LateralTransfer(double front, double rear) {
    public LateralTransfer {
        Check.finite("front load transfer", front);
        Check.finite("rear load transfer", rear);
    }

    /**
     * @param frontShare share of the weight on the front axle, b/L
     * @param cgHeight m
     * @param frontRollCentre height, m
     * @param rearRollCentre height, m
     * @param frontTrack m
     * @param rearTrack m
     * @param frontRollShare share of the roll stiffness on the front axle, 0 to 1
     */
    public static LateralTransfer of(
            double frontShare,
            double cgHeight,
            double frontRollCentre,
            double rearRollCentre,
            double frontTrack,
            double rearTrack,
            double frontRollShare) {
        Check.inRange("share of weight at the front", frontShare, 0, 1);
        Check.positive("front track (m)", frontTrack);
        Check.positive("rear track (m)", rearTrack);
        Check.inRange("share of roll stiffness at the front", frontRollShare, 0, 1);
        double arm = cgHeight - frontShare * frontRollCentre - (1 - frontShare) * rearRollCentre;
        return new LateralTransfer(
                geometric(frontShare, frontRollCentre, frontTrack) + elastic(frontRollShare, arm, frontTrack),
                geometric(1 - frontShare, rearRollCentre, rearTrack) + elastic(1 - frontRollShare, arm, rearTrack));
    }

    /** The part that passes through the roll centre. */
    public static double geometric(double weightShare, double rollCentre, double track) {
        return weightShare * rollCentre / track;
    }

    /** The part that passes through springs and bars, {@code arm} being the centre of gravity's height over the roll axis. */
    public static double elastic(double rollShare, double arm, double track) {
        return rollShare * arm / track;
    }
}
