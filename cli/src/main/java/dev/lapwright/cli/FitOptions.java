package dev.lapwright.cli;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.ColumnChoice;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.results.FitTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** How the log is read, and what is fitted to it. */
final class FitOptions {
    private static final double PERCENT = 100;
    private static final double LEAST_CONFIDENCE = 50;
    private static final double MOST_CONFIDENCE = 99.9;

    @Option(
            names = "--column",
            paramLabel = "NAME=HEADING[:UNIT]",
            description = "Says which column of the log holds what: distance, time, speed, throttle, brake, gear,"
                    + " longitudinal_acceleration, lateral_acceleration or lap. May be repeated.")
    List<String> columns = new ArrayList<>();

    @Option(
            names = "--lap",
            paramLabel = "N",
            description = "Takes lap N as the log numbers them, or counted from 1; may be repeated. If left out: all"
                    + " whole laps at pace.")
    List<Integer> laps = new ArrayList<>();

    @Option(
            names = "--fit",
            paramLabel = "WHAT[,WHAT]...",
            split = ",",
            completionCandidates = ParameterWords.class,
            description = "What to fit: grip, drag-area, downforce-area, power, rolling-resistance; all if left out."
                    + " What is not named stays as the car has it.")
    List<String> parameters = new ArrayList<>();

    @Option(
            names = "--confidence-percent",
            paramLabel = "P",
            defaultValue = "95",
            description = "Confidence of the intervals; 95 if left out.")
    double confidencePercent;

    /** Words for {@code --fit}. */
    static final class ParameterWords extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        ParameterWords() {
            super(words());
        }
    }

    private static List<String> words() {
        return Arrays.stream(FitParameter.values()).map(FitTable::word).toList();
    }

    List<ColumnChoice> choices() {
        return columns.stream().map(DrivenLogs::column).toList();
    }

    /** A share. */
    double confidence() {
        return Check.inRange("--confidence-percent", confidencePercent, LEAST_CONFIDENCE, MOST_CONFIDENCE) / PERCENT;
    }

    Set<FitParameter> wanted() {
        if (parameters.isEmpty()) {
            return EnumSet.allOf(FitParameter.class);
        }
        return parameters.stream()
                .map(word -> parameter(word.trim()))
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(FitParameter.class)));
    }

    private static FitParameter parameter(String word) {
        return Arrays.stream(FitParameter.values())
                .filter(parameter -> FitTable.word(parameter).equals(word))
                .findFirst()
                .orElseThrow(() -> new InvalidValueException(
                        "--fit", "'" + word + "' is nothing that can be fitted", "use " + String.join(", ", words())));
    }
}
