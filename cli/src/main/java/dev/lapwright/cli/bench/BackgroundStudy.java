package dev.lapwright.cli.bench;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.BriefChoices;
import dev.lapwright.car.Adjustment;
import dev.lapwright.cli.brief.BriefPage;
import dev.lapwright.cli.brief.BriefReport;
import dev.lapwright.documents.LineKind;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.line.LineSearch;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.UnitSystem;
import dev.lapwright.results.BalanceReport;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.results.LapTrace;
import dev.lapwright.results.LineReport;
import dev.lapwright.results.OptimisationReport;
import dev.lapwright.results.SensitivityReport;
import dev.lapwright.results.Subject;
import dev.lapwright.results.event.EventRuns;
import dev.lapwright.study.Progress;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.advice.Advice;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.RemedyResult;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.sensitivity.Sensitivity;
import dev.lapwright.study.sensitivity.SensitivityResult;
import dev.lapwright.study.stint.RaceLength;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Studies that take seconds: they tell of their progress, can be stopped, and what they find can be taken over. */
final class BackgroundStudy {
    /** What may be asked for. */
    static final List<String> KINDS = List.of(
            "sensitivity",
            "optimise",
            "line",
            "complaint",
            "brief",
            "notebook",
            "run",
            "log",
            "begin",
            "card",
            "draft");

    private static final int MOST_REMEDIES = 8;
    private static final int SECONDS_PER_MINUTE = 60;

    private final Question question;
    private final Sheets sheets;
    private final StudyRun how;
    private final LineSearch.Progress steps;

    /**
     * @param how stopped when nobody waits any more
     * @param told how far it has come
     */
    BackgroundStudy(Question question, Sheets sheets, StudyRun how, Progress told) {
        this.question = question;
        this.sheets = sheets;
        this.how = how.reporting(told);
        steps = (done, difference) -> this.how.report(done, 0);
    }

    /** How it is run, for what else takes long. */
    StudyRun how() {
        return how;
    }

    /** Who is told of the steps of a search for a line. */
    LineSearch.Progress steps() {
        return steps;
    }

    /** Does it; the message for the page. */
    Map<String, Object> run(String kind, String complaint) {
        Sheet sheet = sheets.of(question, steps);
        Subject subject = sheet.subject(question.now());
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "result");
        tree.put("study", kind);
        switch (kind) {
            case "sensitivity" -> sensitivity(tree, subject);
            case "optimise" -> optimise(tree, subject);
            case "line" -> line(tree, sheet);
            case "complaint" -> complaint(tree, sheet, subject, complaint);
            default ->
                throw new InvalidValueException(
                        "study", "'" + kind + "' is none", "take one of " + String.join(", ", KINDS));
        }
        return tree;
    }

    /** The brief of the setup in hand. */
    BriefReport brief() {
        Subject subject = sheets.of(question, steps).subject(question.now());
        return new BriefReport(
                subject, Optional.empty(), List.of(), brief(subject).run(how), Optional.empty());
    }

    /** The same after all runs of an event: what they proved, the car fitted, and the next card. */
    BriefReport brief(Notebook event) {
        Sheet sheet = sheets.of(question, steps);
        EventRuns runs = event.runs(question, sheet);
        return BriefReport.after(runs, runs.after(brief(runs.stands())).run(how));
    }

    private Brief brief(Subject subject) {
        RaceLength usual = BriefChoices.DEFAULT.racing().length();
        return Brief.of(subject.car(), subject.driven(), subject.day())
                .withLaps(question.laps())
                .withScatter(question.scatter())
                .withRace(new RaceLength(
                        0,
                        question.minutes() * SECONDS_PER_MINUTE,
                        usual.formationLaps(),
                        usual.formationShare(),
                        usual.reserveLaps()));
    }

    /** The same as a page. */
    static String page(BriefReport brief, UnitSystem units) {
        return BriefPage.html(brief, units);
    }

    private void sensitivity(Map<String, Object> tree, Subject subject) {
        SensitivityResult result = Sensitivity.of(subject.car(), subject.driven(), subject.day())
                .withLaps(question.laps())
                .withScatter(question.scatter())
                .run(how);
        tree.put(
                "blocks",
                ReportBlocks.of(
                        new SensitivityReport(subject, result, List.of(), Optional.empty(), List.of()).report()));
        List<Map<String, Object>> take = new ArrayList<>();
        for (SensitivityResult.Worth worth : result.worths()) {
            double gain = worth.best().difference();
            if (worth.hasFaster() && LapTimeDifference.counts(gain)) {
                Adjustment adjustment = worth.adjustment();
                take.add(taken(
                        adjustment.name() + " "
                                + SensitivityReport.setting(worth, worth.best().setting()),
                        gain,
                        Map.of(adjustment.name(), worth.best().setting())));
            }
        }
        tree.put("take", take);
    }

    private void optimise(Map<String, Object> tree, Subject subject) {
        OptimisationResult result =
                Optimisation.of(subject.car(), subject.driven(), subject.day()).run(how);
        tree.put(
                "blocks", ReportBlocks.of(OptimisationReport.of(subject, result).report()));
        Map<String, Double> settings = result.setup("best", result.best()).settings();
        tree.put("take", List.of(taken("the best setup found", result.difference(result.best()), settings)));
    }

    private static Map<String, Object> taken(String label, double difference, Map<String, Double> settings) {
        return taken(label, DifferenceWords.said(difference), settings);
    }

    private static Map<String, Object> taken(String label, String words, Map<String, Double> settings) {
        Map<String, Object> one = new LinkedHashMap<>();
        one.put("label", ReportBlocks.told(label));
        one.put("words", ReportBlocks.told(words));
        one.put("set", settings);
        return one;
    }

    /** The fastest line for the setup in hand, held against the line driven so far. */
    private void line(Map<String, Object> tree, Sheet sheet) {
        Question.LineWish wish = new Question.LineWish(LineKind.FASTEST.word(), question.now());
        Question other = new Question(
                question.car(),
                question.circuit(),
                wish,
                question.now(),
                question.pins(),
                question.hand(),
                question.view(),
                question.zoom(),
                question.laps(),
                question.scatter(),
                question.minutes(),
                question.said(),
                question.units());
        Sheet found = sheets.of(other, steps);
        double difference =
                found.lap(question.now()).time() - sheet.lap(question.now()).time();
        Map<String, Object> paragraph = new LinkedHashMap<>();
        paragraph.put("kind", "paragraph");
        paragraph.put(
                "text",
                ReportBlocks.told("The fastest line found for this setup laps in "
                        + Numbers.lapTime(found.lap(question.now()).time()) + ", "
                        + DifferenceWords.than(difference, "the line driven so far")
                        + ". All laps of the sheet are then driven on it, those pinned as well."));
        Map<String, Object> caution = new LinkedHashMap<>();
        caution.put("kind", "caution");
        caution.put("name", "Caution:");
        caution.put("text", LineReport.CAUTION);
        tree.put("blocks", List.of(paragraph, caution));
        Map<String, Object> take = new LinkedHashMap<>();
        take.put("label", "this line");
        take.put("words", ReportBlocks.told(DifferenceWords.said(difference)));
        take.put("line", wish.tree());
        tree.put("take", List.of(take));
    }

    private void complaint(Map<String, Object> tree, Sheet sheet, Subject subject, String text) {
        DriverWords words =
                DriverWords.read(List.of(text), sheet.stations().corners(), Advice.isFrontDriven(subject.car()));
        BalanceResult result = Balance.of(sheet.lap(question.now())).run(how);
        AdviceResult advice = Advice.on(words, result).run(how);
        List<Map<String, Object>> blocks =
                ReportBlocks.of(new BalanceReport(subject, result, Optional.of(advice)).report());
        // The balance itself has a view of its own: here stands what is said of the complaint.
        int from = 0;
        while (from < blocks.size() && !isAnswer(String.valueOf(blocks.get(from).get("text")))) {
            from++;
        }
        tree.put("blocks", blocks.subList(from, blocks.size()));
        List<Map<String, Object>> take = new ArrayList<>();
        for (AdviceResult.Choice choice : advice.choices()) {
            taken(
                    take,
                    subject,
                    choice.adjustment(),
                    choice.to(),
                    choice.gains().get(0),
                    choice.difference());
        }
        for (RemedyResult one : advice.against()) {
            for (RemedyResult.Remedy remedy : one.remedies()) {
                taken(take, subject, remedy.adjustment(), remedy.to(), remedy.gain(), remedy.difference());
            }
        }
        tree.put("take", take);
    }

    private static boolean isAnswer(String text) {
        return Stream.of("Against ", "Common practice", "A kerb is", "does not say when")
                .anyMatch(text::contains);
    }

    /** Adds what can be taken over, each once. */
    private static void taken(
            List<Map<String, Object>> take,
            Subject subject,
            String adjustment,
            double to,
            double gain,
            double difference) {
        String label = adjustment + " " + Numbers.with(to, subject.bare().unitOf(adjustment));
        boolean known = take.stream().anyMatch(one -> label.equals(one.get("label")));
        if (take.size() < MOST_REMEDIES && !known) {
            String words = Numbers.signed(LapTrace.g(gain), 3) + " g against it, " + DifferenceWords.said(difference);
            take.add(taken(label, words, Map.of(adjustment, to)));
        }
    }
}
