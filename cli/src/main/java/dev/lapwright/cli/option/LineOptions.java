package dev.lapwright.cli.option;

import dev.lapwright.car.Car;
import dev.lapwright.car.Nearest;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ProgressBar;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.LineKind;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineSearch;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.lines.OwnLines;
import dev.lapwright.study.lines.OwnLinesResult;
import dev.lapwright.track.Track;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Options for the line that is driven. */
public final class LineOptions extends LineRoomOptions {
    public static final String REFRESH = ChosenLine.REFRESH;

    @Option(
            names = "--line",
            paramLabel = "LINE",
            completionCandidates = LineOptions.Words.class,
            description =
                    "smoothest, the least bending, driven on a road if left out; fastest, the least time for the car as"
                            + " set up above; middle, the circuit's own path; or a FILE that 'lapwright line' wrote. All laps are"
                            + " driven on this one line. With refresh each car drives the fastest line found anew for itself,"
                            + " which takes some seconds a lap.")
    public String line;

    /** The subject on its line, found or read; progress is shown. */
    public Subject drive(Subject subject, Console console) {
        return subject.on(find(subject, console));
    }

    /** The subject on the line that is driven where nothing is asked of lines. */
    public static Subject driveStandard(Subject subject, Console console) {
        return subject.on(ChosenLine.standard(subject.track(), subject.car(), console::remark));
    }

    private static LineKind usual(Track road) {
        return road.path() == Track.Path.ROAD ? LineKind.SMOOTHEST : LineKind.MIDDLE;
    }

    private ChosenLine find(Subject subject, Console console) {
        String word = line == null ? "" : line;
        Track road = subject.track();
        if (word.isEmpty() && !isRoomGiven()) {
            return ChosenLine.standard(road, subject.car(), console::remark);
        }
        // Room is asked for: a line that cannot be had is refused.
        word = word.isEmpty() ? usual(road).word() : word;
        if (word.equals(LineKind.MIDDLE.word())) {
            refuseRoom();
            return ChosenLine.of(road, word, null, choices());
        }
        if (word.equals(LineKind.SMOOTHEST.word())) {
            return ChosenLine.of(road, word, search(subject).smoothest(), choices());
        }
        if (word.equals(LineKind.FASTEST.word()) || word.equals(REFRESH)) {
            return ChosenLine.of(road, word, fastest(search(subject), subject, console), choices());
        }
        StoredLine stored = stored(word);
        Line read = stored.on(road, subject.car(), choices());
        return new ChosenLine(road, word, Optional.of(read), Optional.of(stored), choices());
    }

    /** The line anew for another car, from the one found; progress is shown. */
    public ChosenLine refresh(ChosenLine found, Subject subject, Console console) {
        LineSearch search = search(subject).from(found.line().orElseThrow());
        return found.with(fastest(search, subject, console));
    }

    /** Another line for the same car, with the same room; progress is shown. */
    public ChosenLine beside(String word, Subject subject, Console console) {
        LineOptions other = new LineOptions();
        other.line = word;
        other.noCache = noCache;
        if (!word.equals(LineKind.MIDDLE.word())) {
            other.marginM = marginM;
            other.marginRightM = marginRightM;
            other.spacingM = spacingM;
        }
        if (word.equals(REFRESH)) {
            throw new InvalidValueException(
                    "--beside " + word, "there is but one car beside it", "take --beside fastest");
        }
        return other.find(subject, console);
    }

    private LineSearch search(Subject subject) {
        return LineSearch.of(subject.track(), subject.car(), choices());
    }

    private Line fastest(LineSearch search, Subject subject, Console console) {
        try (ProgressBar progress = new ProgressBar(console, "steps")) {
            return finder(console).fastest(search.reporting(progress), Vehicle.of(subject.car(), subject.day()));
        }
    }

    /**
     * The car of a subject and others, each on the fastest line found anew for itself; progress is shown. Empty where no line is driven,
     * and where none can be found for one of them, which is said.
     */
    public Optional<OwnLinesResult> ownLines(Subject subject, List<Car> others, StudyRun how, Console console) {
        if (subject.line().line().isEmpty()) {
            return Optional.empty();
        }
        try (ProgressBar progress = new ProgressBar(console, "searches for lines")) {
            return Optional.of(OwnLines.of(subject.track(), subject.car(), subject.day())
                    .with(subject.line().choices())
                    .with(finder(console))
                    .against(others)
                    .run(how.reporting(progress)));
        } catch (InvalidValueException | NoLapException e) {
            console.remark(
                    "Note: what is recommended is not checked with the line found anew, as one could not be found: "
                            + e.getMessage());
            return Optional.empty();
        }
    }

    /** Refuses lines of their own where all laps of a study are driven on one. */
    public void refuseRefresh() {
        if (REFRESH.equals(line)) {
            throw new InvalidValueException(
                    "--line " + line,
                    "all laps of this study are driven on one line",
                    "take --line fastest, or sweep with --line refresh");
        }
    }

    private boolean isRoomGiven() {
        return marginM != null || marginRightM != null || spacingM != null;
    }

    private void refuseRoom() {
        if (isRoomGiven()) {
            throw new InvalidValueException(
                    marginM != null ? "--margin-m" : marginRightM != null ? "--margin-right-m" : "--spacing-m",
                    "it is for a line that is looked for, but the circuit's own path is driven",
                    "take --line smoothest or --line fastest, or leave it out");
        }
    }

    /** The line of a file; refuses what is neither a word for a line nor a file. */
    public static StoredLine stored(String word) {
        boolean file = word.contains("/") || word.endsWith(".json") || Files.exists(SafeFile.path(word));
        if (!file) {
            List<String> words = new Words();
            throw new InvalidValueException(
                    "--line " + word, "there is neither a line nor a file of that name", Nearest.remedy(word, words));
        }
        return Documents.line(word);
    }

    /** Words for lines, for shell completion. */
    public static final class Words extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        public Words() {
            for (LineKind kind : LineKind.values()) {
                add(kind.word());
            }
            add(REFRESH);
        }
    }
}
