package dev.lapwright.evidence;

import java.util.Optional;

/**
 * One setup against another on the timing screen.
 *
 * @param before the setup compared with
 * @param after the setup judged
 * @param scatter standard deviation of clean laps within the two, trend taken out, s; NaN if there are too few
 * @param tests empty if one setup has fewer than {@link Evidence#LEAST_LAPS} clean laps
 * @param returned whether the setup before came back, if it was run again; each time with two clean laps or more
 * @param verdict what it all says
 */
public record SetupComparison(
        SetupPace before,
        SetupPace after,
        double scatter,
        Optional<DifferenceTests> tests,
        Optional<ReturnCheck> returned,
        Verdict verdict) {}
