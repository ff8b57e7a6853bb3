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
import dev.lapwright.study.opinion.SecondOpinion;
import dev.lapwright.study.opinion.SecondOpinionResult;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.robust.AdjustmentVerdict;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.robust.JudgedAdjustments;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.robust.SettledVerdicts;
import dev.lapwright.track.StationSpacing;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** Answers on how sure the others are: the headline on drawn cars, and a band for every knob. */
final class DoubtAnswer {
    /** Cars drawn for the headline. */
    private static final int DRAWS = 60;
    /** Cars drawn for the knobs, which ask of many settings at once: the fewest that tell an interval. */
    private static final int DRAWS_FOR_KNOBS = Robustness.FEWEST_DRAWS;
    /** Stations for the knobs twice as far apart as usual: differences are off by 8 ms at the most (docs/performance.md). */
    private static final StationSpacing SPACING_FOR_KNOBS = StationSpacing.DEFAULT.scaled(2);

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
     * Tells of the headline, of the knob in hand, then of all others; of the knobs again with what can be said of each; last of the headline
     * again, with the fuller model's word.
     */
    void tell(StudyRun how, List<Landscape> landscapes, Consumer<Map<String, Object>> told) {
        Optional<Map<String, Object>> headline = headline(how);
        headline.ifPresent(told);
        List<Landscape> hand = new ArrayList<>();
        List<Landscape> others = new ArrayList<>();
        for (Landscape one : landscapes) {
            (one.name().equals(question.hand()) ? hand : others).add(one);
        }
        List<Band> bands = new ArrayList<>(bands(how, hand, told));
        bands.addAll(bands(how, others, told));
        settle(how, bands, told);
        headline.filter(tree -> tree.containsKey("lines"))
                .map(tree -> seconded(how, tree))
                .ifPresent(told);
    }

    private Map<String, Object> seconded(StudyRun how, Map<String, Object> headline) {
        Subject pinned = sheet.subject(question.reference());
        Subject now = answer.subject();
        SecondOpinionResult asked = SecondOpinion.of(pinned.car(), pinned.driven(), pinned.day())
                .on("this setup", now.car(), now.day())
                .run(how);
        List<Object> lines = new ArrayList<>((List<?>) headline.get("lines"));
        lines.set(
                lines.size() - 1,
                ReportBlocks.told(ModelCheck.of(asked, 0, drawn).line()));
        Map<String, Object> tree = new LinkedHashMap<>(headline);
        tree.put("lines", lines);
        return tree;
    }

    /** How the setup in hand stands beside the reference on the cars that this one may be, and that the driver's words leave. */
    private Optional<Map<String, Object>> headline(StudyRun how) {
        if (question.pins().isEmpty()) {
            return Optional.empty();
        }
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "doubt");
        try {
            Subject pinned = sheet.subject(question.reference());
            Subject now = answer.subject();
            List<DriverWord> words =
                    question.said().stream().map(DriverWordText::read).toList();
            if (pinned.car().settings().equals(now.car().settings())
                    && pinned.day().equals(now.day())) {
                return Optional.empty();
            }
            RobustnessResult found = Robustness.of(pinned.car(), pinned.driven(), pinned.day())
                    .against(now.car(), now.day(), Double.NaN)
                    .hearing(words)
                    .withDraws(DRAWS)
                    .run(how);
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

    /** One knob, and where in the study its settings begin. */
    private record Asked(Landscape landscape, List<Double> settings, int place) {}

    /** The band of one knob, and how its settings stand. */
    private record Band(Asked asked, List<RobustnessResult.Standing> standings) {}

    /** Tells the bands, without a word on those about which more drawn cars have to be asked. */
    private List<Band> bands(StudyRun how, List<Landscape> landscapes, Consumer<Map<String, Object>> told) {
        Car car = answer.subject().car();
        Conditions day = answer.subject().day();
        Robustness study = Robustness.of(car, answer.subject().driven(), SPACING_FOR_KNOBS, day)
                .withDraws(DRAWS_FOR_KNOBS);
        List<Asked> asked = new ArrayList<>();
        int place = 0;
        for (Landscape one : landscapes) {
            List<Landscape.Point> known = one.points().stream()
                    .filter(point -> point.figures().isPresent())
                    .toList();
            if (one.isFlat() || known.size() < 2) {
                continue;
            }
            Landscape.Point best = one.fastest().orElseThrow();
            List<Double> settings = AdjustmentVerdict.settings(
                    Sheet.standing(sheet.knob(one.name()), answer.subject()),
                    best.setting(),
                    one.difference(best),
                    known.get(0).setting(),
                    known.get(known.size() - 1).setting());
            asked.add(new Asked(one, settings, place));
            for (double setting : settings) {
                study = Conditions.isMeantBy(one.name())
                        ? study.against(car, day.with(one.name(), setting), Double.NaN)
                        : study.against(car.with(one.name(), setting));
                place++;
            }
        }
        List<Band> bands = new ArrayList<>();
        if (place > 0) {
            List<RobustnessResult.Standing> all = study.run(how).standings();
            for (Asked one : asked) {
                Band band = new Band(
                        one,
                        all.subList(one.place(), one.place() + one.settings().size()));
                bands.add(band);
                told.accept(told(band, undrawn(one.landscape())));
            }
        }
        return bands;
    }

    /** Says of each knob what `sensitivity` with as many drawn cars says of it. */
    private void settle(StudyRun how, List<Band> bands, Consumer<Map<String, Object>> told) {
        List<Band> open = bands.stream()
                .filter(band -> isAdjustment(band.asked().landscape())
                        && undrawn(band.asked().landscape()).isEmpty())
                .toList();
        if (open.isEmpty()) {
            return;
        }
        JudgedAdjustments judged = JudgedAdjustments.of(
                answer.subject().car(),
                open.stream()
                        .map(band -> new JudgedAdjustments.Known(
                                band.asked().landscape().name(),
                                Optional.empty(),
                                band.asked().landscape().range(),
                                gain(band.asked().landscape()),
                                band.asked().settings()))
                        .toList());
        List<AdjustmentVerdict> verdicts = SettledVerdicts.of(
                        answer.subject().car(),
                        answer.subject().driven(),
                        answer.subject().day(),
                        judged)
                .run(how.reporting(Progress.NONE))
                .verdicts();
        for (int i = 0; i < open.size(); i++) {
            told.accept(told(open.get(i), Optional.of(verdicts.get(i))));
        }
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
        Asked asked = band.asked();
        List<RobustnessResult.Standing> standings = band.standings();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "band");
        tree.put("name", asked.landscape().name());
        List<List<Double>> points = new ArrayList<>();
        for (int i = 0; i < standings.size(); i++) {
            if (standings.get(i).laps() > 0) {
                points.add(List.of(
                        asked.settings().get(i),
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
    private String words(Asked asked, List<RobustnessResult.Standing> standings, Optional<AdjustmentVerdict> verdict) {
        RobustnessResult.Standing first = standings.get(0);
        if (first.laps() == 0) {
            return "";
        }
        Landscape landscape = asked.landscape();
        Knob knob = sheet.knob(landscape.name());
        double setting = asked.settings().get(0);
        Landscape.Point best = landscape.fastest().orElseThrow();
        double gain = landscape.difference(best);
        String at = setting == best.setting() && LapTimeDifference.isFaster(gain)
                ? "; fastest at " + knob.told(setting) + ": " + Standings.said(gain, first)
                : "; at " + knob.told(setting);
        return "worth " + Numbers.fixed(landscape.range(), Standings.decimals(first.halfWidth()))
                + " s over its range" + at + ", " + Standings.interval(first) + " s in nine of ten of "
                + DRAWS_FOR_KNOBS + " cars that this one may be"
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
