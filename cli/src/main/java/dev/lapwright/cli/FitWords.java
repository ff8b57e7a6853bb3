package dev.lapwright.cli;

import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What a fit found, in words. */
final class FitWords {
    private static final int PERCENT = 100;

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

    static String joined(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }

    static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
