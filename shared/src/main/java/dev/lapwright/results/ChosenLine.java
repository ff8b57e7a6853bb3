package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.documents.LineKind;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Line that a study's laps were driven on, as it was asked for.
 *
 * @param road the circuit
 * @param word what was asked: a word or a file; empty if nothing was
 * @param line the line found or read; empty for the road's own path
 * @param stored the document it was read from, if it was
 * @param choices margin and nodes of the search
 */
public record ChosenLine(
        Track road, String word, Optional<Line> line, Optional<StoredLine> stored, LineChoices choices) {
    /** Word for a line of its own for each car. */
    public static final String REFRESH = "refresh";

    /** A line is moved by less than this when it is read, m. */
    private static final double UNMOVED = 1e-3;

    /** The road's own path, or a line that was looked for. */
    public static ChosenLine of(Track road, String word, Line line, LineChoices choices) {
        return new ChosenLine(road, word, Optional.ofNullable(line), Optional.empty(), choices);
    }

    /**
     * What is driven where nothing is asked of lines: the smoothest line of a road, which knows no car and favours no setup; a path that was driven as
     * it was.
     *
     * @param remark told why a road's own path is driven where no line is found
     */
    public static ChosenLine standard(Track road, Car car, Consumer<String> remark) {
        LineChoices choices = LineChoices.DEFAULT;
        if (road.path() == Track.Path.ROAD) {
            try {
                Line smoothest = LineSearch.of(road, car, choices).smoothest();
                return of(road, LineKind.SMOOTHEST.word(), smoothest, choices);
            } catch (InvalidValueException e) {
                remark.accept("Note: the circuit's own path is driven, as no line was found: " + e.getMessage());
            }
        }
        return of(road, LineKind.MIDDLE.word(), null, choices);
    }

    /** The same with another line, found for another car. */
    public ChosenLine with(Line other) {
        return new ChosenLine(road, word, Optional.of(other), stored, choices);
    }

    /** Whether each car drives a line of its own. */
    public boolean isRefreshed() {
        return word.equals(REFRESH);
    }

    /** Whether it is the line that bends least, which knows no car. */
    public boolean isSmoothest() {
        return line.isPresent() && word.equals(LineKind.SMOOTHEST.word());
    }

    /** What is driven: the line as a track of its own, or the road. */
    public Track driven() {
        return line.map(Line::driven).orElse(road);
    }

    /** Says which line is driven, if one was asked for. */
    public Report addTo(Report report) {
        return word.isEmpty() ? report : report.item("Line", text());
    }

    /** Which line is driven, for people. */
    public String text() {
        if (line.isEmpty()) {
            return shortText();
        }
        String length = ", " + Numbers.fixed(line.get().length(), 0) + " m; distances below are along it";
        return stored.map(read -> shortText() + length + foundFor(read) + moved())
                .orElse(shortText() + length);
    }

    /** The same without what there is to say of it. */
    String shortText() {
        if (line.isEmpty()) {
            return road.path() == Track.Path.DRIVEN
                    ? "the circuit's own path, as it was driven"
                    : "middle, the circuit's own path";
        }
        if (stored.isPresent()) {
            return Report.verbatim(stored.get().name()) + " (" + word + ")";
        }
        if (isRefreshed()) {
            return "the fastest, found anew for each car";
        }
        return word.equals(LineKind.FASTEST.word()) ? "the fastest for this car as set up" : "the smoothest";
    }

    /** The same after "on". */
    String besideText() {
        if (line.isEmpty()) {
            return road.path() == Track.Path.DRIVEN ? shortText() : "the " + shortText();
        }
        if (stored.isPresent()) {
            return shortText();
        }
        return word.equals(LineKind.SMOOTHEST.word())
                ? "the smoothest line"
                : "the fastest line for this car as set up";
    }

    private static String foundFor(StoredLine stored) {
        List<String> parts = new ArrayList<>();
        if (!stored.search().car().isEmpty()) {
            parts.add(Report.verbatim(stored.search().car()));
        }
        if (!stored.search().setup().isEmpty()) {
            parts.add(Report.verbatim(stored.search().setup()));
        }
        stored.search().lapTime().ifPresent(time -> parts.add(Numbers.lapTime(time)));
        return parts.isEmpty() ? "" : "; found for " + String.join(", ", parts);
    }

    /** By how much a line that was read lies elsewhere, because this car would not fit there. */
    private String moved() {
        double most = line.orElseThrow().moved();
        return most < UNMOVED ? "" : "; moved by up to " + Numbers.fixed(most, 2) + " m to keep this car on the road";
    }

    /** A short name: the word asked for, or that of the document read. */
    public String name() {
        return stored.map(StoredLine::name).orElse(isRefreshed() ? LineKind.FASTEST.word() : word);
    }

    /** Margins for machines: one, or one for each side. */
    static Map<String, Object> margins(LineChoices choices) {
        Map<String, Object> tree = new LinkedHashMap<>();
        if (choices.isEven()) {
            tree.put("marginM", choices.marginLeft());
        } else {
            tree.put("marginLeftM", choices.marginLeft());
            tree.put("marginRightM", choices.marginRight());
        }
        return tree;
    }

    /** Which line is driven, for machines. */
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("line", word.isEmpty() ? LineKind.MIDDLE.word() : word);
        tree.put("lengthM", driven().length());
        tree.put("roadLengthM", road.length());
        if (stored.isPresent()) {
            tree.put("name", stored.get().name());
        } else if (line.isPresent()) {
            tree.putAll(margins(choices));
        }
        return tree;
    }
}
