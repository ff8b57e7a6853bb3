package dev.lapwright.cli.bench;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.results.LapTrace;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.landscape.Landscape;
import dev.lapwright.study.landscape.Landscapes;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/** Answers about every knob: what the lap time would be at its other settings. */
final class LandscapeAnswer {
    /** Settings looked at on a knob in hand: a first look's five, and halfway between them twice. */
    private static final int IN_HAND = 17;

    /** On any other: halfway once. A strip drawn so is within a pixel of one of all settings (docs/performance.md). */
    private static final int AWAY = 9;

    private static final String NOT_SEEN = "not in this model";
    private static final String FLAT = "makes no difference";

    private final Question question;
    private final Sheet sheet;
    private final LapAnswer lap;

    LandscapeAnswer(Question question, Sheet sheet, LapAnswer lap) {
        this.question = question;
        this.sheet = sheet;
        this.lap = lap;
    }

    /** Tells each landscape when something of it is found: the knob in hand first. */
    List<Landscape> tell(StudyRun how, Consumer<Map<String, Object>> told) {
        sheet.knobs().stream().filter(knob -> !knob.traits().seen()).forEach(knob -> told.accept(unseen(knob)));
        Landscapes study = Landscapes.about(lap.lap());
        for (Knob knob : order(sheet.knobs(), question.hand())) {
            int most = knob.name().equals(question.hand()) ? IN_HAND : AWAY;
            study = study.over(knob.name(), knob.lookedAt(most, Sheet.standing(knob, lap.subject())), knob.settings());
        }
        return study.telling(found -> told.accept(tree(sheet.knob(found.name()), found)))
                .run(how);
    }

    /** The knobs that a lap sees, as they are looked at: the one in hand first. */
    static List<Knob> order(List<Knob> knobs, String hand) {
        return knobs.stream()
                .filter(knob -> knob.traits().seen())
                .sorted(Comparator.comparing(knob -> !knob.name().equals(hand)))
                .toList();
    }

    private static Map<String, Object> unseen(Knob knob) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "landscape");
        tree.put("name", knob.name());
        tree.put("complete", true);
        tree.put("verdict", NOT_SEEN);
        tree.put("words", NOT_SEEN + ": a lap of this model knows no dampers; see 'lapwright ride'");
        tree.put("points", List.of());
        return tree;
    }

    private static Map<String, Object> tree(Knob knob, Landscape found) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "landscape");
        tree.put("name", knob.name());
        tree.put("complete", found.complete());
        tree.put("rangeS", found.range());
        tree.put("verdict", found.isFlat() ? FLAT : "");
        tree.put("words", ReportBlocks.told(words(knob, found)));
        List<List<Object>> points = new ArrayList<>();
        for (Landscape.Point point : found.points()) {
            points.add(Arrays.asList(
                    point.setting(),
                    point.figures().isPresent() ? found.difference(point) : null,
                    point.figures()
                            .map(figures -> LapTrace.kmh(figures.topSpeed()))
                            .orElse(null),
                    point.figures()
                            .map(figures -> LapTrace.kmh(figures.meanCornerSpeed()))
                            .orElse(null)));
        }
        tree.put("points", points);
        found.points().stream()
                .filter(point -> point.figures().isEmpty())
                .findFirst()
                .ifPresent(point -> tree.put(
                        "failure",
                        ReportBlocks.told("No lap at " + knob.told(point.setting()) + ": " + point.failure())));
        return tree;
    }

    private static String words(Knob knob, Landscape found) {
        if (found.isFlat()) {
            return FLAT + " to the lap here";
        }
        Landscape.Point best = found.fastest().orElseThrow();
        double gain = found.difference(best);
        String worth = "worth " + Numbers.fixed(found.range(), 3) + " s over its range; ";
        if (!LapTimeDifference.isFaster(gain)) {
            return worth + "stands at its fastest";
        }
        return worth + "fastest at " + knob.told(best.setting()) + ": " + DifferenceWords.said(gain);
    }
}
