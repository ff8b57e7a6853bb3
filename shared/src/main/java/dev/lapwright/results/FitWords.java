package dev.lapwright.results;

import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What a fit found, in words. */
final class FitWords {
    private static final int PERCENT = 100;

    /** As long as a description may be. */
    private static final int LONGEST = 2000;

    /** More laps than this are counted, not named. */
    private static final int LAPS_NAMED = 6;

    private FitWords() {}

    /** Decimals in which a parameter's values are worth telling. */
    static int decimals(FitParameter parameter) {
        return parameter == FitParameter.ROLLING_RESISTANCE ? 4 : 3;
    }

    /** A value with its unit. */
    static String value(FitParameter parameter, double value) {
        return withUnit(parameter, Numbers.fixed(value, decimals(parameter)));
    }

    /** As {@code drag area 1.071 m²}. */
    static String value(FitResult.Estimate estimate) {
        return estimate.parameter().title() + " " + value(estimate.parameter(), estimate.value());
    }

    /** As {@code  (95 %: 1.052 to 1.090)}. */
    static String interval(FitResult.Estimate estimate, double confidence) {
        int decimals = decimals(estimate.parameter());
        return " (" + Numbers.plain(PERCENT * confidence) + " %: " + Numbers.fixed(estimate.lower(), decimals) + " to "
                + Numbers.fixed(estimate.upper(), decimals) + ")";
    }

    private static String withUnit(FitParameter parameter, String number) {
        String unit = parameter.unit().symbol();
        return unit.isEmpty() ? number : number + " " + unit;
    }

    /** What a tie means, in whole sentences. */
    static String tie(FitResult.Collinearity tie) {
        List<String> titles = tie.parameters().stream().map(FitParameter::title).toList();
        if (titles.size() == 1) {
            return capital(titles.get(0)) + " is not told by these laps: it stays as the car has it.";
        }
        List<String> changes = new ArrayList<>();
        tie.together()
                .forEach((parameter, change) -> changes.add(
                        parameter.title() + " by " + withUnit(parameter, Numbers.signed(change, decimals(parameter)))));
        String together = " Changing " + joined(changes) + " together would hardly change the speeds.";
        if (tie.held().isEmpty()) {
            return capital(joined(titles)) + " are told apart only loosely (correlation "
                    + Numbers.signed(tie.correlation(), 2) + ")." + together;
        }
        List<String> held = tie.held().stream().map(FitParameter::title).toList();
        return capital(joined(titles)) + " cannot be told apart from these laps." + together + " "
                + capital(joined(held)) + (held.size() == 1 ? " was" : " were")
                + " held as the car has it; the others are right as far as that is.";
    }

    private static String joined(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }

    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** Where the values of a fitted car come from, behind its own description. */
    static String description(Subject subject, FitResult result) {
        String origin = origin(subject, result);
        String own = subject.bare().description();
        int room = LONGEST - origin.length() - 1;
        String kept = own.length() <= room ? own : own.substring(0, Math.max(0, room - 1)) + "…";
        return kept.isEmpty() ? origin : kept + " " + origin;
    }

    private static String origin(Subject subject, FitResult result) {
        List<String> fitted = new ArrayList<>();
        List<String> kept = new ArrayList<>();
        for (FitResult.Estimate estimate : result.estimates()) {
            if (estimate.identifiability() == FitResult.Identifiability.HELD) {
                kept.add(estimate.parameter().title());
            } else {
                fitted.add(value(estimate)
                        + interval(estimate, result.confidence())
                        + (estimate.determined() ? "" : " (not told by itself)"));
            }
        }
        return "Fitted to " + laps(result) + " at " + result.track().name() + " ("
                + subject.day().name() + "; setup "
                + subject.setupText() + "): "
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
