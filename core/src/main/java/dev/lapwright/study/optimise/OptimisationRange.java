package dev.lapwright.study.optimise;

/**
 * How far one adjustment can be moved without harm. Bounds are legal settings in the adjustment's unit; between them every
 * legal setting is within the band of {@link Optimisation#FLAT_S} and keeps the limits.
 *
 * @param name of the adjustment
 * @param before setting of the setup that was there before
 * @param best setting of the best setup
 * @param aloneLeast least setting, all others at their best
 * @param aloneMost greatest setting, all others at their best
 * @param togetherLeast least setting in any of the equally good setups found
 * @param togetherMost the greatest
 * @param effect difference between its best and its worst legal setting, all others at their best, s
 * @param worth what is lost when this one goes back to the legal setting nearest to where it was, s; 0 where it has not
 *     moved, NaN where a limit is then missed
 */
public record OptimisationRange(
        String name,
        double before,
        double best,
        double aloneLeast,
        double aloneMost,
        double togetherLeast,
        double togetherMost,
        double effect,
        double worth) {
    /** Times are given in thousandths; less than half of one is nothing. */
    static final double NOTHING_S = 0.0005;

    /** Whether the model sees the adjustment at all. */
    public boolean matters() {
        return !(effect < NOTHING_S);
    }

    /** Whether the best setup has it elsewhere than it was. */
    public boolean isMoved() {
        return Math.abs(best - before) > 1e-9 * Math.max(1, Math.abs(before));
    }
}
