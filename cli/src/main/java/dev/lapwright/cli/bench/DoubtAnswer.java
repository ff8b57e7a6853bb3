package dev.lapwright.cli.bench;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.EndStop;
import dev.lapwright.cli.option.DriverWordText;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.ComparisonReport;
import dev.lapwright.results.ModelCheck;
import dev.lapwright.results.Standings;
import dev.lapwright.results.Subject;
import dev.lapwright.study.Progress;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.landscape.Landscape;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.robust.AdjustmentVerdict;
import dev.lapwright.study.robust.DrawnCars;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.robust.JudgedAdjustments;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.robust.SettledVerdicts;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Answers on how sure the others are: the headline on drawn cars, and a band for every knob. */
final class DoubtAnswer {
    /** Cars on which all knobs' settings are driven, the first of those that settle their words: the fewest that tell an interval. */
    private static final int DRAWS_FOR_BANDS = Robustness.FEWEST_DRAWS;

    private final Question question;
    private final Sheet sheet;
    private final LapAnswer answer;
    /** The headline's setup on drawn cars; empty before it was told. */
    private Optional<RobustnessResult.Standing> drawn = Optional.empty();

    DoubtAnswer(Question question, Sheet sheet, LapAnswer answer) {
        this.question = question;
        this.sheet = sheet;
        this.answer = answer;
    }

    /**
     * Tells of the headline, of the knob in hand, then of all others; then of the knobs again with what can be said of each, and of the headline with
     * the fuller model's word.
     */
    void tell(StudyRun how, List<Landscape> landscapes, Consumer<Map<String, Object>> told) {
        if (question.pins().isEmpty()) {
            ofKnobs(how, landscapes, told, () -> {});
        } else {
            sheet.against(question.reference(), reference -> {
                Optional<Map<String, Object>> headline = headline(reference, how);
                headline.ifPresent(told);
                ofKnobs(
                        how,
                        landscapes,
                        told,
                        () -> headline.filter(tree -> tree.containsKey("lines"))
                                .map(tree -> seconded(reference, how, tree))
                                .ifPresent(told));
                return null;
            });
        }
    }

    /** Tells of the knobs; something else is done beside their words. */
    private void ofKnobs(
            StudyRun how, List<Landscape> landscapes, Consumer<Map<String, Object>> told, Runnable beside) {
        Asked asked = asked(landscapes);
        DrawnCars cars = SettledVerdicts.cars(
                answer.subject().car(),
                answer.subject().driven(),
                answer.subject().day());
        List<Band> bands = new ArrayList<>();
        for (boolean inHand : new boolean[] {true, false}) {
            List<AskedKnob> some = asked.knobs().stream()
                    .filter(one -> one.landscape().name().equals(question.hand()) == inHand)
                    .toList();
            bands.addAll(bands(how, cars, some, told));
        }
        told.accept(Map.of("type", "bands", "laps", cars.driven()));
        // A lap of the fuller model is one thread's, and leaves the other cores to the words.
        List<Runnable> parts = List.of(() -> settle(how, cars, asked.judged(), bands, told), beside);
        how.inParallel(
                parts.size(),
                () -> parts,
                (all, i) -> {
                    all.get(i).run();
                    return null;
                },
                done -> {});
    }

    private Map<String, Object> seconded(Reference reference, StudyRun how, Map<String, Object> headline) {
        SecondOpinionResult asked = reference.seconded(answer.subject(), how.reporting(Progress.NONE));
        List<Object> lines = new ArrayList<>((List<?>) headline.get("lines"));
        lines.set(
                lines.size() - 1,
                ReportBlocks.told(ModelCheck.of(asked, 0, drawn).line()));
        Map<String, Object> tree = new LinkedHashMap<>(headline);
        tree.put("lines", lines);
        return tree;
    }

    /** How the setup in hand stands beside the reference on the cars that this one may be, and that the driver's words leave. */
    private Optional<Map<String, Object>> headline(Reference reference, StudyRun how) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "doubt");
        try {
            Subject pinned = reference.subject();
            Subject now = answer.subject();
            List<DriverWord> words =
                    question.said().stream().map(DriverWordText::read).toList();
            if (pinned.car().settings().equals(now.car().settings())
                    && pinned.day().equals(now.day())) {
                return Optional.empty();
            }
            RobustnessResult found = reference.drawn(now, words, how);
            drawn = Optional.of(found.standings().get(0));
            Comparison comparison = Comparison.of(sheet.lap(question.reference()), answer.lap());
            ComparisonReport report = new ComparisonReport(
                    pinned, "This setup", now, comparison, Optional.of(new Standings(found)), Optional.empty());
            tree.put("first", ReportBlocks.told(report.than(question.reference().name())));
            tree.put("where", ReportBlocks.told(report.where()));
            // Its line is there from the first, so that nothing below moves under the hand once it is known.
            tree.put(
                    "lines",
                    Stream.concat(
                                    report.inDoubt().stream(),
                                    Stream.of("Second opinion: the fuller model is being asked."))
                            .map(ReportBlocks::told)
                            .toList());
        } catch (StudyStoppedException stopped) {
            throw stopped;
        } catch (LapwrightException none) {
            tree.put("failure", ReportBlocks.told(none.getMessage()));
        }
        return Optional.of(tree);
    }

    /** One setting of a knob, as it is driven. */
    private record Setting(double value, Car car, Conditions day) {}

    /**
     * One knob, and what is asked of it.
     *
     * @param judged its place among what drawn cars decide; negative where they decide nothing
     */
    private record AskedKnob(Landscape landscape, List<Setting> settings, int judged) {}

    /**
     * What is asked of all knobs.
     *
     * @param judged what drawn cars decide
     */
    private record Asked(List<AskedKnob> knobs, JudgedAdjustments judged) {}

    /** The band of one knob, and how its settings stand. */
    private record Band(AskedKnob asked, List<RobustnessResult.Standing> standings) {}

    private Asked asked(List<Landscape> landscapes) {
        Car car = answer.subject().car();
        Conditions day = answer.subject().day();
        Map<Landscape, List<Double>> settings = new LinkedHashMap<>();
        for (Landscape one : landscapes) {
            List<Landscape.Point> known = one.points().stream()
                    .filter(point -> point.figures().isPresent())
                    .toList();
            if (!one.isFlat() && known.size() > 1) {
                Landscape.Point best = one.fastest().orElseThrow();
                settings.put(
                        one,
                        AdjustmentVerdict.settings(
                                Sheet.standing(sheet.knob(one.name()), answer.subject()),
                                best.setting(),
                                one.difference(best),
                                known.get(0).setting(),
                                known.get(known.size() - 1).setting()));
            }
        }
        List<Landscape> open = settings.keySet().stream().filter(this::isOpen).toList();
        JudgedAdjustments judged = JudgedAdjustments.of(
                car,
                open.stream()
                        .map(one -> new JudgedAdjustments.Known(
                                one.name(), Optional.empty(), one.range(), gain(one), settings.get(one)))
                        .toList());
        List<AskedKnob> knobs = new ArrayList<>();
        settings.forEach((one, values) -> {
            int place = open.indexOf(one);
            List<Setting> driven = new ArrayList<>();
            for (int i = 0; i < values.size(); i++) {
                double value = values.get(i);
                if (place >= 0) {
                    // The very car that is judged: what its band drives counts for the word.
                    int judgedAt = judged.asked().get(place).first() + i;
                    driven.add(new Setting(value, judged.cars().get(judgedAt), day));
                } else if (Conditions.isMeantBy(one.name())) {
                    driven.add(new Setting(value, car, day.with(one.name(), value)));
                } else {
                    driven.add(new Setting(value, car.with(one.name(), value), day));
                }
            }
            knobs.add(new AskedKnob(one, driven, place));
        });
        return new Asked(knobs, judged);
    }

    /** Tells the bands, without a word on those about which more drawn cars have to be asked. */
    private List<Band> bands(StudyRun how, DrawnCars cars, List<AskedKnob> knobs, Consumer<Map<String, Object>> told) {
        if (knobs.isEmpty()) {
            return List.of();
        }
        Robustness study = Robustness.of(answer.subject().car(), cars.first(DRAWS_FOR_BANDS));
        for (AskedKnob one : knobs) {
            for (Setting setting : one.settings()) {
                study = study.against(setting.car(), setting.day(), Double.NaN);
            }
        }
        List<RobustnessResult.Standing> all = study.run(how).standings();
        List<Band> bands = new ArrayList<>();
        int place = 0;
        for (AskedKnob one : knobs) {
            Band band = new Band(one, all.subList(place, place + one.settings().size()));
            bands.add(band);
            told.accept(told(band, undrawn(one.landscape())));
            place += one.settings().size();
        }
        return bands;
    }

    /** Says of each knob what `sensitivity` with as many drawn cars says of it. */
    private void settle(
            StudyRun how,
            DrawnCars cars,
            JudgedAdjustments judged,
            List<Band> bands,
            Consumer<Map<String, Object>> told) {
        List<AdjustmentVerdict> verdicts = SettledVerdicts.of(answer.subject().car(), cars, judged)
                .run(how.reporting(Progress.NONE))
                .verdicts();
        for (Band band : bands) {
            if (band.asked().judged() >= 0) {
                told.accept(told(band, Optional.of(verdicts.get(band.asked().judged()))));
            }
        }
        told.accept(Map.of("type", "words", "laps", cars.driven()));
    }

    /** Whether drawn cars decide what is said of it. */
    private boolean isOpen(Landscape landscape) {
        return isAdjustment(landscape) && undrawn(landscape).isEmpty();
    }

    private static double gain(Landscape landscape) {
        return landscape.difference(landscape.fastest().orElseThrow());
    }

    /** Whether it can be chosen; the day cannot. */
    private boolean isAdjustment(Landscape landscape) {
        return answer.subject().bare().adjustments().stream()
                .anyMatch(one -> one.name().equals(landscape.name()));
    }

    private Map<String, Object> told(Band band, Optional<AdjustmentVerdict> verdict) {
        AskedKnob asked = band.asked();
        List<RobustnessResult.Standing> standings = band.standings();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "band");
        tree.put("name", asked.landscape().name());
        List<List<Double>> points = new ArrayList<>();
        for (int i = 0; i < standings.size(); i++) {
            if (standings.get(i).laps() > 0) {
                points.add(List.of(
                        asked.settings().get(i).value(),
                        standings.get(i).low(),
                        standings.get(i).high()));
            }
        }
        tree.put("points", points);
        // What is flat, or not in the model, the landscape says itself; a gain shows.
        tree.put(
                "verdict",
                verdict.filter(one -> one != AdjustmentVerdict.GAIN && one != AdjustmentVerdict.UNSEEN)
                        .map(AdjustmentVerdict::label)
                        .orElse(""));
        tree.put("counts", verdict.filter(one -> one == AdjustmentVerdict.ALIKE).isEmpty());
        tree.put("words", ReportBlocks.told(words(asked, standings, verdict)));
        return tree;
    }

    /** What is said by the one rule without drawn cars; empty where they decide, and for the day, which is no choice. */
    private Optional<AdjustmentVerdict> undrawn(Landscape landscape) {
        if (!isAdjustment(landscape)) {
            return Optional.empty();
        }
        boolean delicate = Optimisation.leftAlone(answer.subject().bare()).stream()
                .anyMatch(kept -> kept.name().equals(landscape.name()));
        return AdjustmentVerdict.undrawn(landscape.range(), delicate);
    }

    /** What the landscape says, with no more digits than drawn cars leave, and what they say. */
    private String words(
            AskedKnob asked, List<RobustnessResult.Standing> standings, Optional<AdjustmentVerdict> verdict) {
        RobustnessResult.Standing first = standings.get(0);
        if (first.laps() == 0) {
            return "";
        }
        Landscape landscape = asked.landscape();
        Knob knob = sheet.knob(landscape.name());
        double setting = asked.settings().get(0).value();
        Landscape.Point best = landscape.fastest().orElseThrow();
        double gain = landscape.difference(best);
        String at = setting == best.setting() && LapTimeDifference.isFaster(gain)
                ? "; fastest at " + knob.told(setting) + ": " + Standings.said(gain, first)
                : "; at " + knob.told(setting);
        return "worth " + Numbers.fixed(landscape.range(), Standings.decimals(first.halfWidth()))
                + " s over its range" + at + ", " + Standings.interval(first) + " s in nine of ten of "
                + DRAWS_FOR_BANDS + " cars that this one may be"
                + verdict.map(told -> told == AdjustmentVerdict.UNSEEN
                                ? "; the model knows too little of it to choose by"
                                : "; of " + SettledVerdicts.DRAWS + " of them: " + told.label()
                                        + (told == AdjustmentVerdict.GAIN ? stopped(setting, landscape) : ""))
                        .orElse("");
    }

    /** What stops a gain at an end of its range. */
    private String stopped(double setting, Landscape landscape) {
        Adjustment adjustment = answer.subject().bare().adjustment(landscape.name());
        return EndStop.isEnd(adjustment, setting)
                ? "; at the end of its range, where nothing in the model stops it"
                        + EndStop.at(adjustment, setting)
                                .map(stop -> ": on the car " + stop)
                                .orElse("")
                : "";
    }
}
