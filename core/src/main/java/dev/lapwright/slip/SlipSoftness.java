package dev.lapwright.slip;

/**
 * Small numbers by which the fuller model rounds off jumps in the laws of differentials, brakes and loads, so that equilibria can be followed. They are ours, and
 * worth as much as docs/limits.md says.
 *
 * @param creep difference of speeds of two shafts, over the car's, at which a differential's friction is at 0.71 of its full force: instead of a
 *     jump from sticking to slipping
 * @param release share of the weight by which a wheel's brake is eased for slip beyond that of the other, over the slip of its peak: which of
 *     two like wheels locks first would be chance
 * @param leastGrip share of the weight that a wheel off the road is left with, so that its slip still has an equation
 * @param change total force over the weight, either way, between which drive goes over into brakes
 * @param stuck friction over the weight of what does not slip at all
 */
record SlipSoftness(double creep, double release, double leastGrip, double change, double stuck) {
    /** Those of the model. */
    static final SlipSoftness DEFAULT = new SlipSoftness(0.002, 0.02, 1e-4, 0.015, 10);
}
