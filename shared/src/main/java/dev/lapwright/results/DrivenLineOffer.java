package dev.lapwright.results;

import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Optional;

/** Offer of the line that a log holds, for a fit whose own line is to blame for its misfit. */
final class DrivenLineOffer {
    /** What a log says of its columns where it has what a line takes, beside speed. */
    private static final String LATERAL = "lateral_acceleration from";

    private DrivenLineOffer() {}

    /** How to fit on the line that was driven; empty where no line is to blame, it was driven, or the log does not hold it. */
    static Optional<String> of(FitResult result, List<DrivenLog> logs) {
        boolean blamed = result.doubts().suspicions().stream()
                .limit(1)
                .anyMatch(suspicion -> suspicion.cause() == FitResult.Cause.LINE);
        if (!blamed || result.track().path() == Track.Path.DRIVEN) {
            return Optional.empty();
        }
        return logs.stream()
                .filter(log -> log.columns().contains(LATERAL))
                .findFirst()
                .map(
                        log -> "The log holds the line that was driven: 'lapwright circuit import " + log.name()
                                + " --log --out driven.json' makes a circuit of it, and a fit on that circuit drives it as it was.");
    }
}
