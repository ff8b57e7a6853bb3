package dev.lapwright.cli.bench;

import dev.lapwright.car.Setup;
import dev.lapwright.cli.event.LoggedRuns;
import dev.lapwright.cli.event.RunEntry;
import dev.lapwright.cli.option.PredictedChange;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.results.Subject;
import dev.lapwright.results.event.EventReport;
import dev.lapwright.results.event.EventRuns;
import dev.lapwright.study.StudyRun;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Notebook of the event in whose folder the bench's car lies: read anew at each question, as others may write into it too. */
final class Notebook {
    private static final List<String> WORDS =
            List.of("laps", "fuel", "cold", "hot", "tread", "driver", "tyres", "remark");

    private final EventFolder folder;
    private final String car;
    private final String circuit;

    private Notebook(EventFolder folder, String car, String circuit) {
        this.folder = folder;
        this.car = car;
        this.circuit = circuit;
    }

    /** The notebook of the event that a car's and a circuit's documents are those of; empty if there is none, or it cannot be read. */
    static Optional<Notebook> of(String car, String circuit) {
        Path place = SafeFile.path(car).toAbsolutePath().normalize().getParent();
        Optional<EventFolder> folder = place == null ? Optional.empty() : EventFolder.about(place);
        if (folder.isEmpty()) {
            return Optional.empty();
        }
        Event event = folder.get().read();
        boolean isIts = isFile(event, event.papers().car(), car)
                && isFile(event, event.papers().circuit(), circuit);
        return isIts ? Optional.of(new Notebook(folder.get(), car, circuit)) : Optional.empty();
    }

    private static boolean isFile(Event event, String paper, String named) {
        return event.folder()
                .resolve(paper)
                .toAbsolutePath()
                .normalize()
                .equals(SafeFile.path(named).toAbsolutePath().normalize());
    }

    /** What there is to know of it at first: its name, and the documents that it is of. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", folder.read().name());
        tree.put("car", car);
        tree.put("circuit", circuit);
        return tree;
    }

    /** Its runs so far, as the studies of driven laps take them. */
    EventRuns runs(Question question, Sheet sheet) {
        check(question);
        Event event = folder.read();
        return EventRuns.of(event, folder, subject(event, sheet, event.settingsNow()));
    }

    private void check(Question question) {
        if (!question.car().equals(car) || !question.circuit().equals(circuit)) {
            throw new InvalidValueException(
                    "event",
                    "this sheet is not of the event's car and circuit",
                    "choose those before a run is noted, or note it with 'lapwright event run'");
        }
    }

    /** What its runs show, with the pressures to set next and the car fitted to laps with speeds; each run's setup can be taken over. */
    Map<String, Object> shown(Question question, Sheet sheet, StudyRun how) {
        EventRuns runs = runs(question, sheet);
        Event event = folder.read();
        return tree(event, EventReport.of(event, folder.texts()).inFull(runs, how));
    }

    /** Its runs and what they show, in the words of the command. */
    private Map<String, Object> shown() {
        Event event = folder.read();
        return tree(event, EventReport.of(event, folder.texts()));
    }

    private static Map<String, Object> tree(Event event, EventReport report) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "result");
        tree.put("study", "notebook");
        tree.put("blocks", ReportBlocks.of(report.report()));
        List<Map<String, Object>> take = new ArrayList<>();
        for (Event.Numbered numbered : event.runs()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("label", "the setup of run " + numbered.number());
            one.put("words", ReportBlocks.told(event.label(numbered.run())));
            one.put("setup", numbered.run().settings());
            take.add(one);
        }
        tree.put("take", take);
        return tree;
    }

    /**
     * Writes a run with the setup in hand, or adds to one that there is.
     *
     * @param said texts of the run, by the names that they have in its file
     * @param number of the run that is added to; 0 for a new one
     * @param sheet line that laps are driven on
     */
    Map<String, Object> note(Fields said, int number, Question question, Sheet sheet, StudyRun how) {
        check(question);
        Event event = folder.read();
        said.only(Set.copyOf(WORDS));
        RunEntry entry = entry(said);
        int given = number;
        EventRun.Expected expected = EventRun.Expected.NOTHING;
        if (number > 0) {
            folder.change(number, event.car(), run -> {
                EventRun changed = entry.on(run);
                check(event, changed, sheet);
                return changed;
            });
        } else {
            EventRun run = entry.on(EventRun.of(
                    RunEntry.onlyWhatDiffers(event.car(), question.now().set())));
            check(event, run, sheet);
            run = expecting(event, event.settingsNow(), run, sheet, how);
            expected = run.expected();
            given = folder.add(run, event.car());
        }
        Map<String, Object> tree = shown();
        String told = RunEntry.told(expected);
        tree.put("noted", given);
        tree.put(
                "saved",
                ReportBlocks.told(
                        "run " + given + " of " + event.name() + (told.isEmpty() ? "" : "; expected: " + told)));
        return tree;
    }

    /**
     * Makes runs of a log, or adds its pressures to a run.
     *
     * @param log as it was dropped
     * @param number of the run that pressures are of; 0 for the last
     */
    Map<String, Object> take(DocumentSource log, int number, Question question, Sheet sheet, StudyRun how) {
        check(question);
        Event event = folder.read();
        LoggedRuns logged = new LoggedRuns(log, List.of(), subject(event, sheet, event.settingsNow()));
        List<String> given = new ArrayList<>();
        if (logged.isOfPressures()) {
            int last =
                    event.runs().stream().mapToInt(Event.Numbered::number).max().orElse(0);
            int chosen = number > 0 ? number : last;
            folder.change(chosen, event.car(), logged::pressures);
            given.add("the pressures of run " + chosen);
        } else {
            // A log that names no setups was driven as the car stands on the sheet.
            Map<String, Double> before = logged.namesSetups()
                    ? event.settingsNow()
                    : RunEntry.onlyWhatDiffers(event.car(), question.now().set());
            List<EventRun> runs = logged.runs(event, before, Set.of(), run -> run);
            // All that takes long comes first: a log that is stopped has left no run.
            List<EventRun> asked = new ArrayList<>();
            Map<String, Double> last = event.settingsNow();
            for (EventRun run : runs) {
                asked.add(expecting(event, last, run, sheet, how));
                last = run.settings();
            }
            asked.forEach(run -> given.add("run " + folder.add(logged.kept(run, folder), event.car())));
        }
        Map<String, Object> tree = shown();
        tree.put("saved", ReportBlocks.told(String.join(", ", given) + " of " + event.name()));
        return tree;
    }

    private static RunEntry entry(Fields said) {
        Map<String, String> texts = new LinkedHashMap<>();
        for (String word : WORDS) {
            String text = said.entry(word);
            texts.put(word, text);
            try {
                entry(Map.of(word, text)).on(EventRun.of(Map.of()));
            } catch (InvalidValueException fault) {
                // By the field in which it stands.
                String inner = fault.place().equals(word) ? "" : fault.place() + ": ";
                throw new InvalidValueException(word, inner + fault.problem(), fault.remedy());
            }
        }
        return entry(texts);
    }

    private static RunEntry entry(Map<String, String> given) {
        Map<String, String> texts = new LinkedHashMap<>(given);
        texts.values().removeIf(String::isEmpty);
        return new RunEntry(
                texts.get("laps"),
                texts.get("fuel"),
                texts.get("cold"),
                texts.get("hot"),
                texts.get("tread"),
                texts.get("driver"),
                texts.get("tyres"),
                texts.get("remark"),
                null);
    }

    private static Subject subject(Event event, Sheet sheet, Map<String, Double> settings) {
        return sheet.subject(new Question.Stand("as noted", settings, Question.Stand.values(event.day())));
    }

    private static void check(Event event, EventRun run, Sheet sheet) {
        if (RunEntry.isTimed(run)) {
            Map<String, Double> day = Question.Stand.values(event.day());
            double model = sheet.lap(new Question.Stand("as noted", run.settings(), day))
                    .time();
            RunEntry.check(event, run, model);
        }
    }

    private static EventRun expecting(Event event, Map<String, Double> last, EventRun run, Sheet sheet, StudyRun how) {
        Map<String, Double> before = RunEntry.onlyWhatDiffers(event.car(), last);
        if (before.equals(run.settings())) {
            return run;
        }
        Subject from = subject(event, sheet, before);
        Subject to = from.in(new Setup("as noted", run.settings()));
        try {
            return RunEntry.expecting(run, PredictedChange.drawn(from, to, how));
        } catch (NoLapException none) {
            // A run that was driven is noted, whatever the model can say of it.
            return run;
        }
    }
}
