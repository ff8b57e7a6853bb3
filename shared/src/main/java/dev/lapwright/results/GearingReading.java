package dev.lapwright.results;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * Sentences about a study of gearing: what is said of gears, limiter and shifts, and which gearing to fit.
 *
 * @param result what was found
 * @param beforeBraking how short before braking an upshift is pointed out, s
 * @param checks of what is recommended with the line found anew
 */
record GearingReading(GearingResult result, double beforeBraking, List<LineCheck> checks) {
    /** What was found in plain words: one paragraph for gears, limiter and shifts, then for each thing varied. */
    List<String> reading() {
        List<String> paragraphs = new ArrayList<>();
        unusedGears().ifPresent(paragraphs::add);
        paragraphs.add(limiterReading());
        shiftReading().ifPresent(paragraphs::add);
        result.axes().forEach(axis -> paragraphs.add(axisReading(axis)));
        checks.forEach(check -> paragraphs.add(check.reading(check.what())));
        return paragraphs;
    }

    /** The fastest gearing of an axis, or the one that is fitted where that is as fast. */
    Optional<GearingResult.Candidate> best(GearingResult.Scenario scenario, SweepAxis axis) {
        Optional<GearingResult.Candidate> fastest = scenario.fastest(axis.name());
        return scenario.choices(axis.name()).stream()
                .filter(this::isFitted)
                .filter(tried -> LapTimeDifference.isNone(
                        scenario.difference(tried) - scenario.difference(fastest.orElse(tried))))
                .findFirst()
                .or(() -> fastest);
    }

    /** The gearing to fit: one that is fitted, or chosen for the car as given, unless another is faster by what counts. */
    Optional<GearingResult.Candidate> recommended(GearingResult.Scenario scenario, SweepAxis axis) {
        List<GearingResult.Candidate> kept = new ArrayList<>();
        scenario.choices(axis.name()).stream().filter(this::isFitted).forEach(kept::add);
        if (!scenario.equals(result.asGiven())) {
            recommended(result.asGiven(), axis)
                    .flatMap(chosen -> scenario.choices(axis.name()).stream()
                            .filter(tried -> tried.value() == chosen.value())
                            .findFirst())
                    .ifPresent(kept::add);
        }
        Optional<GearingResult.Candidate> fastest = scenario.fastest(axis.name());
        return kept.stream()
                .filter(tried -> tried.lap().isPresent())
                .filter(tried -> fastest.isEmpty()
                        || !LapTimeDifference.counts(scenario.difference(tried) - scenario.difference(fastest.get())))
                .findFirst()
                .or(() -> fastest);
    }

    /** Whether what is varied is no ratio itself, as the teeth of a sprocket. */
    boolean isNoRatio(SweepAxis axis) {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        return result.asGiven().choices(axis.name()).stream().anyMatch(tried -> {
            double drive = tried.car().value(GearingAxes.FINAL_DRIVE);
            return drive != fitted && drive != tried.value();
        });
    }

    /** Whether a gearing is the one that is fitted. */
    boolean isFitted(GearingResult.Candidate tried) {
        return tried.car().value(GearingAxes.FINAL_DRIVE) == result.car().value(GearingAxes.FINAL_DRIVE)
                && Arrays.equals(tried.car().gearRatios(), result.car().gearRatios());
    }

    private Optional<String> unusedGears() {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        List<Integer> unused = lap.gearsUnused();
        if (unused.isEmpty()) {
            return Optional.empty();
        }
        StringBuilder text = new StringBuilder();
        if (lap.topGearUnused()) {
            text.append("Top gear is never used here: top speed is reached in gear ")
                    .append(lap.top().gear())
                    .append(". ");
        }
        List<Integer> lower = unused.stream().filter(gear -> gear < lap.gears()).toList();
        if (!lower.isEmpty()) {
            text.append(lower.size() == 1 ? "Gear " : "Gears ")
                    .append(listed(lower))
                    .append(lower.size() == 1 ? " is" : " are")
                    .append(" never driven in.");
        }
        return Optional.of(text.toString().strip());
    }

    private String limiterReading() {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        if (!(lap.limiter().time() > 0)) {
            String left = Numbers.fixed(lap.headroom(), 0);
            return left.equals("0")
                    ? "The rev limiter is just reached at top speed, and never held."
                    : "The rev limiter is never held: at top speed the engine is " + left + " rpm below it.";
        }
        String cost = LapTimeDifference.isNone(lap.limiter().without())
                ? "without it the lap would be as fast."
                : "without it, at up to " + Numbers.fixed(lap.limiter().freeRevLimit(), 0) + " rpm, the lap would be "
                        + DifferenceWords.said(lap.limiter().without())
                        + ", the most that it costs (a comparison, no advice: the limit is the engine maker's).";
        return costly(lap) + "the car is on it for "
                + Numbers.fixed(lap.limiter().time(), 2) + " s; " + cost + nextLonger();
    }

    private static String costly(GearingResult.GearedLap lap) {
        return LapTimeDifference.isNone(lap.limiter().without())
                ? "The limiter costs no time: "
                : "The limiter costs time: ";
    }

    /** What the next longer final drive of those tried is worth. */
    private String nextLonger() {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        Optional<GearingResult.Candidate> next = result.asGiven().choices().stream()
                .filter(choice -> choice.lap().isPresent())
                .filter(choice -> choice.car().value(GearingAxes.FINAL_DRIVE) < fitted)
                .max(Comparator.comparingDouble(choice -> choice.car().value(GearingAxes.FINAL_DRIVE)));
        return next.map(choice -> " The next longer, " + Subject.said(result.car(), choice.axis(), choice.value())
                        + ", is " + DifferenceWords.said(result.asGiven().difference(choice)) + ".")
                .orElse("");
    }

    private Optional<String> shiftReading() {
        List<String> corner = new ArrayList<>();
        List<String> late = new ArrayList<>();
        for (GearingResult.Shift shift : result.asGiven().baseline().upshifts()) {
            shift.corner().ifPresent(c -> corner.add("to " + shift.to() + " in " + Report.verbatim(c.label())));
            if (shift.brakingWithin(beforeBraking)) {
                late.add("to " + shift.to() + " at " + Numbers.fixed(shift.at(), 0) + " m");
            }
        }
        List<String> said = new ArrayList<>();
        if (!corner.isEmpty()) {
            said.add("Upshifts in a corner: " + String.join(", ", corner) + ".");
        }
        if (!late.isEmpty()) {
            said.add("Upshifts within " + Numbers.plain(beforeBraking) + " s of braking, hardly worth making: "
                    + String.join(", ", late) + ".");
        }
        return said.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", said));
    }

    private String axisReading(SweepAxis axis) {
        Optional<GearingResult.Candidate> best = recommended(result.asGiven(), axis);
        if (best.isEmpty()) {
            return "None of the values of " + axis.name() + " gives a lap.";
        }
        double worth = result.scenarios().stream()
                .mapToDouble(scenario -> worth(scenario, axis))
                .max()
                .orElse(0);
        if (axis.count() > 1 && LapTimeDifference.isNone(worth)) {
            return axis.name() + " makes no difference here.";
        }
        if (axis.count() > 1 && !LapTimeDifference.counts(worth)) {
            return axis.name() + " makes no difference here that counts: " + DifferenceWords.size(worth)
                    + " between the fastest, "
                    + Numbers.plain(
                            result.asGiven().fastest(axis.name()).orElseThrow().value())
                    + ", and the slowest, less than "
                    + DifferenceWords.least() + ".";
        }
        StringBuilder text = new StringBuilder("For this circuit fit ");
        text.append(said(axis, best.get())).append(", ").append(against(result.asGiven(), best.get()));
        text.append(asGood(axis, best.get())).append(atTheEnd(axis, best.get()));
        for (GearingResult.Scenario scenario :
                result.scenarios().subList(1, result.scenarios().size())) {
            recommended(scenario, axis).ifPresent(other -> text.append(' ').append(elsewhere(axis, scenario, other)));
        }
        return text.toString();
    }

    /** Between the fastest and the slowest, s. */
    private static double worth(GearingResult.Scenario scenario, SweepAxis axis) {
        DoubleSummaryStatistics differences = scenario.choices(axis.name()).stream()
                .filter(choice -> choice.lap().isPresent())
                .mapToDouble(scenario::difference)
                .summaryStatistics();
        return differences.getCount() == 0 ? 0 : differences.getMax() - differences.getMin();
    }

    private String against(GearingResult.Scenario scenario, GearingResult.Candidate best) {
        String against =
                isFitted(best) ? "the one fitted" : DifferenceWords.than(scenario.difference(best), "the one fitted");
        return against + ": " + Numbers.lapTime(best.lap().orElseThrow().lapTime()) + ", "
                + engine(best.lap().orElseThrow()) + ".";
    }

    private String elsewhere(SweepAxis axis, GearingResult.Scenario scenario, GearingResult.Candidate other) {
        boolean same = recommended(result.asGiven(), axis).orElseThrow().value() == other.value();
        String text = where(scenario)
                + (same ? " the same: " : " fit " + said(axis, other) + ": ")
                + engine(other.lap().orElseThrow());
        if (same) {
            return text + ".";
        }
        GearingResult.Candidate kept = scenario.choices(axis.name()).stream()
                .filter(choice -> choice.value()
                        == recommended(result.asGiven(), axis).orElseThrow().value())
                .findFirst()
                .orElseThrow();
        if (kept.lap().isEmpty()) {
            return text + ".";
        }
        GearingResult.GearedLap lap = kept.lap().get();
        return text + "; with " + Numbers.plain(kept.value()) + " it would be "
                + DifferenceWords.said(scenario.difference(kept) - scenario.difference(other))
                + (lap.limiter().time() > 0
                        ? " and on the limiter for "
                                + Numbers.fixed(lap.limiter().time(), 2) + " s"
                        : "")
                + ".";
    }

    private String where(GearingResult.Scenario scenario) {
        if (scenario.kind() == GearingResult.Scenario.Kind.TOW) {
            return "In a tow that takes away " + Numbers.plain(100 * scenario.amount()) + " % of the drag";
        }
        String place = result.asGiven()
                .baseline()
                .top()
                .nextCorner()
                .map(Corner::label)
                .map(c -> " before " + Report.verbatim(c))
                .orElse("");
        return "With a wind of " + Numbers.kmh(Math.abs(scenario.amount())) + " km/h "
                + (scenario.amount() >= 0 ? "against" : "behind") + " the car" + place;
    }

    private static String engine(GearingResult.GearedLap lap) {
        String top = Numbers.kmh(lap.top().speed()) + " km/h"
                + lap.top()
                        .nextCorner()
                        .map(Corner::label)
                        .map(corner -> " before " + Report.verbatim(corner))
                        .orElse("");
        String held = lap.limiter().time() > 0
                ? "on the limiter for " + Numbers.fixed(lap.limiter().time(), 2) + " s"
                : lap.headroom() < 1 ? "just at the limit" : Numbers.fixed(lap.headroom(), 0) + " rpm below the limit";
        return top + " in gear " + lap.top().gear() + ", " + held;
    }

    /** Others so close that it makes no odds. */
    private String asGood(SweepAxis axis, GearingResult.Candidate best) {
        List<String> others = new ArrayList<>();
        for (GearingResult.Candidate choice : result.asGiven().choices(axis.name())) {
            boolean close = choice.lap().isPresent()
                    && !LapTimeDifference.counts(result.asGiven().difference(choice)
                            - result.asGiven().difference(best));
            if (close && !choice.equals(best)) {
                others.add(Numbers.plain(choice.value()));
            }
        }
        return others.isEmpty()
                ? ""
                : " Within " + DifferenceWords.least() + " of it: " + String.join(", ", others) + ".";
    }

    private String atTheEnd(SweepAxis axis, GearingResult.Candidate best) {
        double[] values = axis.values();
        boolean least = DoubleStream.of(values).min().orElseThrow() == best.value();
        boolean greatest = DoubleStream.of(values).max().orElseThrow() == best.value();
        return values.length > 1 && (least || greatest)
                ? " It is the " + (least ? "lowest" : "highest") + " of those tried; one beyond may be faster still."
                : "";
    }

    /** A gearing as people say it. */
    String said(SweepAxis axis, GearingResult.Candidate choice) {
        String drive = isNoRatio(axis)
                ? " (final drive " + Numbers.fixed(choice.car().value(GearingAxes.FINAL_DRIVE), 3) + ")"
                : "";
        return Subject.said(result.car(), choice.axis(), choice.value()) + drive;
    }

    private static String listed(List<Integer> gears) {
        return String.join(" and ", gears.stream().map(String::valueOf).toList());
    }
}
