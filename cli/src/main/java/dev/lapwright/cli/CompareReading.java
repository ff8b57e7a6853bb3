package dev.lapwright.cli;

import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.compare.Comparison;
import java.util.Comparator;
import java.util.List;

/** Says in a sentence where a lap is won and lost. */
final class CompareReading {
    /** Lap times are given in thousandths; less than half of one is nothing. */
    private static final double NOTHING_S = 0.0005;

    private CompareReading() {}

    static String of(CompareOutcome outcome) {
        Comparison comparison = outcome.comparison();
        List<Comparison.Part> parts = comparison.parts();
        Comparison.Part lost = parts.stream()
                .max(Comparator.comparingDouble(Comparison.Part::difference))
                .orElseThrow();
        Comparison.Part gained = parts.stream()
                .min(Comparator.comparingDouble(Comparison.Part::difference))
                .orElseThrow();
        StringBuilder text = new StringBuilder();
        if (isNothing(lost.difference()) && isNothing(gained.difference())) {
            return outcome.name() + " drives the same lap.";
        }
        double difference = comparison.difference();
        text.append(outcome.name()).append(" is ");
        text.append(isNothing(difference) ? "as fast" : seconds(difference) + (difference > 0 ? " slower" : " faster"));
        boolean both = parts.stream().anyMatch(Comparison.Part::isCorner)
                && parts.stream().anyMatch(part -> !part.isCorner());
        if (both) {
            text.append(": ").append(moved("in corners", comparison.inCorners()));
            text.append(", ").append(moved("on straights", comparison.onStraights()));
        }
        text.append('.');
        if (!isNothing(lost.difference()) && lost.difference() > 0) {
            text.append(" It loses most in ").append(place(lost)).append('.');
        }
        if (!isNothing(gained.difference()) && gained.difference() < 0) {
            text.append(" It gains most in ").append(place(gained)).append('.');
        }
        return text.toString();
    }

    private static boolean isNothing(double seconds) {
        return Math.abs(seconds) < NOTHING_S;
    }

    private static String seconds(double difference) {
        return Numbers.fixed(Math.abs(difference), 3) + " s";
    }

    private static String moved(String where, double difference) {
        if (isNothing(difference)) {
            return "nothing " + where;
        }
        return seconds(difference) + (difference > 0 ? " lost " : " gained ") + where;
    }

    private static String place(Comparison.Part part) {
        String cause = part.mainCause().map(Limit::label).orElse("");
        return part.label() + ", " + seconds(part.difference())
                + (cause.isEmpty() ? "" : ", where " + cause + " limits");
    }
}
