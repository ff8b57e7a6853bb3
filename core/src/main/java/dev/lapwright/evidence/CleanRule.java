package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;

/**
 * Which laps count. Those that the log flags do not; nor do the first of each run; nor, of the rest, those slower than their
 * setup's median by more than so many robust standard deviations, MAD/0.6745 with MAD the median absolute deviation.
 *
 * @param warmUpLaps how many laps at the beginning of each run do not count, 0 or more
 * @param slowLimit robust standard deviations, 1 to 100
 */
public record CleanRule(int warmUpLaps, double slowLimit) {
    /**
     * One lap, and 3.5: the modified z score of B. Iglewicz and D. Hoaglin (1993), in NIST/SEMATECH, <i>e-Handbook of
     * Statistical Methods</i>, 1.3.5.17; here towards the slow side only.
     */
    public static final CleanRule DEFAULT = new CleanRule(1, 3.5);

    /** Share of a normal distribution's standard deviation that is its MAD, as that handbook rounds it. */
    static final double MAD_SHARE = 0.6745;

    /** The limit lies at least so far above the median, as a share of it: common practice, no source. */
    static final double LEAST_ROOM = 0.005;

    /** @throws InvalidValueException if one is outside its range */
    public CleanRule {
        if (warmUpLaps < 0) {
            throw new InvalidValueException("warm-up laps", warmUpLaps + " is below nought", "give 0 or more");
        }
        Check.inRange("slow limit (robust standard deviations)", slowLimit, 1, 100);
    }
}
