package dev.lapwright.cli;

import dev.lapwright.fit.FitResult;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;

/** Where the values of a fitted car come from, for the description in its document. */
final class FitOrigin {
    /** As long as a description may be. */
    private static final int LONGEST = 2000;
    /** More laps than this are counted, not named. */
    private static final int LAPS_NAMED = 6;

    private FitOrigin() {}

    static String description(FitOutcome outcome) {
        String origin = origin(outcome);
        String own = outcome.subject().bare().description();
        int room = LONGEST - origin.length() - 1;
        String kept = own.length() <= room ? own : own.substring(0, Math.max(0, room - 1)) + "…";
        return kept.isEmpty() ? origin : kept + " " + origin;
    }

    private static String origin(FitOutcome outcome) {
        FitResult result = outcome.result();
        List<String> fitted = new ArrayList<>();
        List<String> kept = new ArrayList<>();
        for (FitResult.Estimate estimate : result.estimates()) {
            if (estimate.identifiability() == FitResult.Identifiability.HELD) {
                kept.add(estimate.parameter().title());
            } else {
                fitted.add(FitWords.value(estimate)
                        + FitWords.interval(estimate, result.confidence())
                        + (estimate.determined() ? "" : " (not told by itself)"));
            }
        }
        return "Fitted to " + laps(result) + " at " + result.track().name() + " ("
                + outcome.subject().day().name() + "; setup "
                + outcome.subject().setupText() + "): "
                + (fitted.isEmpty() ? "nothing" : String.join(", ", fitted))
                + (kept.isEmpty() ? "" : "; not told and kept: " + String.join(", ", kept))
                + ". Root mean square of logged less simulated speed "
                + Numbers.kmh(result.residuals().rmsAfter())
                + " km/h, before "
                + Numbers.kmh(result.residuals().rmsBefore()) + " km/h.";
    }

    private static String laps(FitResult result) {
        List<String> names =
                result.laps().stream().map(fitted -> fitted.lap().name()).toList();
        return names.size() <= LAPS_NAMED ? String.join(", ", names) : names.size() + " laps";
    }
}
