package dev.lapwright.cli;

import dev.lapwright.car.Nearest;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.LineKind;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.track.Track;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The line that was asked for.
 *
 * @param road the circuit
 * @param word what was asked: a word or a file; empty if nothing was
 * @param line the line found or read; empty for the road's own path
 * @param stored the document it was read from, if it was
 * @param choices margin and nodes of the search
 */
record ChosenLine(Track road, String word, Optional<Line> line, Optional<StoredLine> stored, LineChoices choices) {
    /** A line is moved by less than this when it is read, m. */
    private static final double UNMOVED = 1e-3;

    /** Finds or reads the line for a subject. */
    static ChosenLine of(LineOptions options, Subject subject, Console console) {
        String word = options.line == null ? "" : options.line;
        LineChoices choices = options.choices();
        Track road = subject.track();
        if (word.isEmpty() || word.equals(LineKind.MIDDLE.word())) {
            refuseRoom(options);
            return new ChosenLine(road, word, Optional.empty(), Optional.empty(), choices);
        }
        if (word.equals(LineKind.SMOOTHEST.word())) {
            Line line = LineSearch.of(road, subject.car(), choices).smoothest();
            return new ChosenLine(road, word, Optional.of(line), Optional.empty(), choices);
        }
        if (word.equals(LineKind.FASTEST.word()) || word.equals(LineOptions.REFRESH)) {
            return new ChosenLine(
                    road, word, Optional.of(fastest(subject, choices, console)), Optional.empty(), choices);
        }
        checkFile(word);
        StoredLine stored = Documents.line(word);
        return new ChosenLine(
                road, word, Optional.of(stored.on(road, subject.car(), choices)), Optional.of(stored), choices);
    }

    private static void refuseRoom(LineOptions options) {
        if (options.marginM != null || options.spacingM != null) {
            throw new InvalidValueException(
                    options.marginM != null ? "--margin-m" : "--spacing-m",
                    "it is for a line that is looked for, but the circuit's own path is driven",
                    "add --line smoothest or --line fastest, or leave it out");
        }
    }

    private static void checkFile(String word) {
        boolean file = word.contains("/") || word.endsWith(".json") || Files.exists(SafeFile.path(word));
        if (!file) {
            List<String> words = new LineWords();
            throw new InvalidValueException(
                    "--line " + word, "there is neither a line nor a file of that name", Nearest.remedy(word, words));
        }
    }

    /** The fastest line of a car; its progress is shown. */
    static Line fastest(Subject subject, LineChoices choices, Console console) {
        LineSearch search = LineSearch.of(subject.track(), subject.car(), choices);
        try (SearchProgress progress = new SearchProgress(console)) {
            return search.reporting(progress).fastest(Vehicle.of(subject.car(), subject.day()));
        }
    }

    /** Whether each car drives a line of its own. */
    boolean isRefreshed() {
        return word.equals(LineOptions.REFRESH);
    }

    /** What is driven: the line as a track of its own, or the road. */
    Track driven() {
        return line.map(Line::driven).orElse(road);
    }

    /** The line anew for another car, from this one. */
    ChosenLine refreshed(Subject subject, Console console) {
        LineSearch search = LineSearch.of(road, subject.car(), choices);
        try (SearchProgress progress = new SearchProgress(console)) {
            Line found = search.from(line.orElseThrow())
                    .reporting(progress)
                    .fastest(Vehicle.of(subject.car(), subject.day()));
            return new ChosenLine(road, word, Optional.of(found), stored, choices);
        }
    }

    /** Prints which line is driven, if one was asked for. */
    void print(Console console) {
        if (!word.isEmpty()) {
            Lines.item(console, "Line", text());
        }
    }

    private String text() {
        if (line.isEmpty()) {
            return "middle, the circuit's own path";
        }
        String length = ", " + Numbers.fixed(line.get().length(), 0) + " m; distances below are along it";
        if (stored.isPresent()) {
            return stored.get().name() + " (" + word + ")" + length + foundFor(stored.get()) + moved();
        }
        if (isRefreshed()) {
            return "the fastest, found anew for each car" + length;
        }
        String car = word.equals(LineKind.FASTEST.word()) ? "the fastest for this car as set up" : "the smoothest";
        return car + length;
    }

    private static String foundFor(StoredLine stored) {
        List<String> parts = new ArrayList<>();
        if (!stored.car().isEmpty()) {
            parts.add(stored.car());
        }
        if (!stored.setup().isEmpty()) {
            parts.add(stored.setup());
        }
        stored.lapTime().ifPresent(time -> parts.add(Numbers.lapTime(time)));
        return parts.isEmpty() ? "" : "; found for " + String.join(", ", parts);
    }

    /** By how much a line that was read lies elsewhere, because this car would not fit there. */
    private String moved() {
        StoredLine read = stored.orElseThrow();
        double[] asked = read.offsets();
        double[] driven = line.orElseThrow().offsets();
        double most = 0;
        for (int i = 0; i < driven.length && asked.length == driven.length; i++) {
            most = Math.max(most, Math.abs(asked[i] - driven[i]));
        }
        return most < UNMOVED ? "" : "; moved by up to " + Numbers.fixed(most, 2) + " m to keep this car on the road";
    }

    /** A short name: the word asked for, or that of the document read. */
    String name() {
        return stored.map(StoredLine::name).orElse(isRefreshed() ? LineKind.FASTEST.word() : word);
    }

    /** The same for JSON. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("line", word.isEmpty() ? LineKind.MIDDLE.word() : word);
        tree.put("lengthM", driven().length());
        tree.put("roadLengthM", road.length());
        if (stored.isPresent()) {
            tree.put("name", stored.get().name());
        } else if (line.isPresent()) {
            tree.put("marginM", choices.margin());
        }
        return tree;
    }
}
