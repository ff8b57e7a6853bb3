package dev.lapwright.evidence;

/**
 * What the laps say, and how many it takes.
 *
 * @param finding what they say
 * @param target the change looked for, s, without sign: what a model predicted, or else the change seen, but no less than
 *     what is worth knowing
 * @param needed clean laps with each setup to see that change; {@link Integer#MAX_VALUE} for more than a million; 0 if the
 *     scatter is not known
 * @param moreBefore laps still to run with the setup before, to have as many
 * @param moreAfter laps still to run with the setup after
 */
public record Verdict(Finding finding, double target, int needed, int moreBefore, int moreAfter) {
    static Verdict of(Finding finding, double target, int needed, int before, int after) {
        return new Verdict(finding, target, needed, Math.max(0, needed - before), Math.max(0, needed - after));
    }
}
