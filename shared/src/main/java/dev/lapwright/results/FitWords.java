package dev.lapwright.results;

import dev.lapwright.fit.FitNuisance;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.report.Numbers;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Result of a fit, in words. */
final class FitWords {
    /** What a log says of its columns where it has what a line takes, beside speed. */
    private static final String LATERAL = "lateral_acceleration from";

    private static final int PERCENT = 100;

    /** As long as a description may be. */
    private static final int LONGEST = 2000;

    /** More laps than this are counted, not named. */
    private static final int LAPS_NAMED = 6;

    /** Other oddities named behind the first. */
    private static final int OTHERS = 3;

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

    /** Unit of a nuisance, and what it counts. */
    static String unit(FitResult.Nuisance nuisance) {
        return nuisance.nuisance().meaning(nuisance.run());
    }

    static String doubt(FitResult.Nuisance nuisance) {
        return Numbers.plain(nuisance.doubt());
    }

    static String found(FitResult.Nuisance nuisance) {
        return Numbers.signed(nuisance.found(), decimals(nuisance.nuisance()));
    }

    static String error(FitResult.Nuisance nuisance) {
        return Numbers.fixed(nuisance.standardError(), decimals(nuisance.nuisance()));
    }

    static String standing(FitResult.Nuisance nuisance) {
        return nuisance.told() ? "told" : "as it was";
    }

    private static int decimals(FitNuisance nuisance) {
        double usual = nuisance.usual();
        return usual < 1 ? 2 : usual < 10 ? 1 : 0;
    }

    /** Names of what an estimate leans on, joined. */
    static String leans(FitResult.Estimate estimate) {
        return joined(estimate.leans().stream().map(FitNuisance::title).toList());
    }

    /** Which is the likeliest culprit of what is odd, and why; empty if nothing is. */
    static Optional<String> culprits(FitResult result) {
        List<FitResult.Suspicion> all = result.doubts().suspicions();
        if (all.isEmpty()) {
            return Optional.empty();
        }
        FitResult.Suspicion first = all.get(0);
        List<String> others = all.stream()
                .skip(1)
                .map(suspicion -> suspicion.cause().label() + " (" + sign(suspicion) + ")")
                .limit(OTHERS)
                .toList();
        return Optional.of("Likelier culprit: " + first.cause().label() + ". " + capital(sign(first)) + "."
                + (others.isEmpty() ? "" : " Odd as well: " + joined(others) + "."));
    }

    /** What a word on the axle that gives up first moved. */
    static String word(FitResult.Word word) {
        String where = word.word().corner().isEmpty()
                ? "in the corners"
                : "in " + word.word().corner();
        String said = switch (word.word().first()) {
            case FRONT -> "the front gives up first";
            case REAR -> "the rear gives up first";
            case BOTH -> "both axles give up at once";
        };
        return (word.bySteering() ? "The steering angle says that " : "Said is that ") + where + " " + said
                + ", which counts as " + (word.bySteering() ? "told to " : "felt to ")
                + Numbers.plain(PERCENT * word.word().error()) + " % of an axle's grip. By the laps alone "
                + margin(word.before()) + "; with the word " + margin(word.after()) + ".";
    }

    private static String margin(double margin) {
        return (margin < 0 ? "the front has " : "the rear has ") + Numbers.fixed(PERCENT * Math.abs(margin), 1)
                + " % of its grip left when the other gives up";
    }

    private static String sign(FitResult.Suspicion suspicion) {
        return switch (suspicion.sign()) {
            case CORNER_RADII ->
                "radii driven scatter from corner to corner by " + Numbers.fixed(suspicion.value(), 1) + " %";
            case CORNER_PLACES ->
                "corners lie " + Numbers.fixed(suspicion.value(), 0) + " m off where the circuit has them";
            case PARAMETER -> suspicion.what() + " changed by " + Numbers.signed(suspicion.value(), 3);
            case NUISANCE -> nuisance(suspicion);
        };
    }

    private static String nuisance(FitResult.Suspicion suspicion) {
        for (FitNuisance nuisance : FitNuisance.values()) {
            if (nuisance.title().equals(suspicion.what())) {
                return nuisance.title() + " is off by "
                        + Numbers.signed(suspicion.value(), decimals(nuisance)) + " "
                        + nuisance.unit().symbol();
            }
        }
        return suspicion.what();
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
                + Numbers.kmh(result.agreement().residuals().rmsAfter())
                + " km/h, before "
                + Numbers.kmh(result.agreement().residuals().rmsBefore()) + " km/h.";
    }

    private static String laps(FitResult result) {
        List<String> names =
                result.laps().stream().map(fitted -> fitted.lap().name()).toList();
        return names.size() <= LAPS_NAMED ? String.join(", ", names) : names.size() + " laps";
    }

    /** How to fit on the line that was driven; empty where no line is to blame, it was driven, or the log does not hold it. */
    static Optional<String> drivenLine(FitResult result, List<DrivenLog> logs) {
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
