package dev.lapwright.cli;

import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Says in sentences what a study of gearing found. */
final class GearingReading {
    /** Gearings this close to the fastest are as good, s: our choice, far below what a driver repeats. */
    private static final double AS_GOOD_S = 0.05;

    private final GearingOutcome outcome;
    private final GearingResult result;
    private final GearingResult.Scenario given;

    private GearingReading(GearingOutcome outcome) {
        this.outcome = outcome;
        result = outcome.result();
        given = result.asGiven();
    }

    /** One paragraph for each subject: gears, limiter, shifts, then each thing varied. */
    static List<String> of(GearingOutcome outcome) {
        GearingReading reading = new GearingReading(outcome);
        List<String> paragraphs = new ArrayList<>();
        reading.gears().ifPresent(paragraphs::add);
        paragraphs.add(reading.limiter());
        reading.shifts().ifPresent(paragraphs::add);
        for (SweepAxis axis : reading.result.axes()) {
            paragraphs.add(reading.axis(axis));
        }
        return paragraphs;
    }

    private Optional<String> gears() {
        GearingResult.GearedLap lap = given.baseline();
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

    private String limiter() {
        GearingResult.GearedLap lap = given.baseline();
        if (!(lap.limiter().time() > 0)) {
            return "The rev limiter is never held: at top speed the engine is " + Numbers.fixed(lap.headroom(), 0)
                    + " rpm below it.";
        }
        String cost = lap.limiter().cost() < GearingOutcome.NOTHING_S
                ? "without it the lap would gain nothing."
                : "without it, at up to " + Numbers.fixed(lap.limiter().freeRevLimit(), 0) + " rpm, the lap would gain "
                        + seconds(lap.limiter().cost())
                        + ", the most that it costs (a comparison, no advice: the limit is the engine maker's).";
        return costly(lap) + "the car is on it for "
                + Numbers.fixed(lap.limiter().time(), 2) + " s; " + cost + nextLonger();
    }

    private static String costly(GearingResult.GearedLap lap) {
        return lap.limiter().cost() < GearingOutcome.NOTHING_S
                ? "The limiter costs no time: "
                : "The limiter costs time: ";
    }

    /** What the next longer final drive of those tried is worth. */
    private String nextLonger() {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        Optional<GearingResult.Candidate> next = given.choices().stream()
                .filter(choice -> choice.lap().isPresent())
                .filter(choice -> choice.car().value(GearingAxes.FINAL_DRIVE) < fitted)
                .max(Comparator.comparingDouble(choice -> choice.car().value(GearingAxes.FINAL_DRIVE)));
        return next.map(choice -> " The next longer, " + Subject.said(result.car(), choice.axis(), choice.value())
                        + ", is " + slowerOrFaster(given.gain(choice)) + ".")
                .orElse("");
    }

    private Optional<String> shifts() {
        List<String> corner = new ArrayList<>();
        List<String> late = new ArrayList<>();
        for (GearingResult.Shift shift : given.baseline().upshifts()) {
            shift.corner().ifPresent(c -> corner.add("to " + shift.to() + " in " + c.label()));
            if (shift.brakingWithin(outcome.beforeBraking())) {
                late.add("to " + shift.to() + " at " + Numbers.fixed(shift.at(), 0) + " m");
            }
        }
        List<String> said = new ArrayList<>();
        if (!corner.isEmpty()) {
            said.add("Upshifts in a corner: " + String.join(", ", corner) + ".");
        }
        if (!late.isEmpty()) {
            said.add("Upshifts within " + Numbers.plain(outcome.beforeBraking())
                    + " s of braking, hardly worth making: " + String.join(", ", late) + ".");
        }
        return said.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", said));
    }

    private String axis(SweepAxis axis) {
        Optional<GearingResult.Candidate> best = outcome.best(given, axis);
        if (best.isEmpty()) {
            return "None of the values of " + axis.name() + " gives a lap.";
        }
        double worth = result.scenarios().stream()
                .mapToDouble(scenario -> worth(scenario, axis))
                .max()
                .orElse(0);
        if (axis.count() > 1 && worth < GearingOutcome.NOTHING_S) {
            return axis.name() + " makes no difference here.";
        }
        if (axis.count() > 1 && worth < AS_GOOD_S && !outcome.isFinalDrive(axis)) {
            return axis.name() + " makes next to no difference here: " + seconds(worth) + " between the fastest, "
                    + Numbers.plain(best.get().value()) + ", and the slowest, less than a driver's own laps differ.";
        }
        StringBuilder text = new StringBuilder("For this circuit fit ");
        text.append(said(axis, best.get())).append(", ").append(against(given, best.get()));
        text.append(asGood(axis, best.get())).append(atTheEnd(axis, best.get()));
        for (GearingResult.Scenario scenario :
                result.scenarios().subList(1, result.scenarios().size())) {
            outcome.best(scenario, axis).ifPresent(other -> text.append(' ').append(elsewhere(axis, scenario, other)));
        }
        return text.toString();
    }

    /** Between the fastest and the slowest, s. */
    private static double worth(GearingResult.Scenario scenario, SweepAxis axis) {
        DoubleSummaryStatistics gains = scenario.choices(axis.name()).stream()
                .filter(choice -> choice.lap().isPresent())
                .mapToDouble(scenario::gain)
                .summaryStatistics();
        return gains.getCount() == 0 ? 0 : gains.getMax() - gains.getMin();
    }

    private String against(GearingResult.Scenario scenario, GearingResult.Candidate best) {
        String against = outcome.isFitted(best)
                ? "the one fitted"
                : slowerOrFaster(scenario.gain(best)) + (isNothing(scenario.gain(best)) ? " as" : " than")
                        + " the one fitted";
        return against + ": " + Numbers.lapTime(best.lap().orElseThrow().lapTime()) + ", "
                + engine(best.lap().orElseThrow()) + ".";
    }

    private String elsewhere(SweepAxis axis, GearingResult.Scenario scenario, GearingResult.Candidate other) {
        boolean same = outcome.best(given, axis).orElseThrow().value() == other.value();
        String text = where(scenario)
                + (same ? " the same: " : " fit " + said(axis, other) + ": ")
                + engine(other.lap().orElseThrow());
        if (same) {
            return text + ".";
        }
        GearingResult.Candidate kept = scenario.choices(axis.name()).stream()
                .filter(choice -> choice.value()
                        == outcome.best(given, axis).orElseThrow().value())
                .findFirst()
                .orElseThrow();
        if (kept.lap().isEmpty()) {
            return text + ".";
        }
        GearingResult.GearedLap lap = kept.lap().get();
        return text + "; with " + Numbers.plain(kept.value()) + " it would be "
                + seconds(scenario.gain(other) - scenario.gain(kept)) + " slower"
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
        String place = given.baseline()
                .top()
                .nextCorner()
                .map(Corner::label)
                .map(c -> " before " + c)
                .orElse("");
        return "With a wind of " + Numbers.kmh(Math.abs(scenario.amount())) + " km/h "
                + (scenario.amount() >= 0 ? "against" : "behind") + " the car" + place;
    }

    private static String engine(GearingResult.GearedLap lap) {
        String top = Numbers.kmh(lap.top().speed()) + " km/h"
                + lap.top()
                        .nextCorner()
                        .map(Corner::label)
                        .map(corner -> " before " + corner)
                        .orElse("");
        String held = lap.limiter().time() > 0
                ? "on the limiter for " + Numbers.fixed(lap.limiter().time(), 2) + " s"
                : lap.headroom() < 1 ? "just at the limit" : Numbers.fixed(lap.headroom(), 0) + " rpm below the limit";
        return top + " in gear " + lap.top().gear() + ", " + held;
    }

    /** Others so close that it makes no odds. */
    private String asGood(SweepAxis axis, GearingResult.Candidate best) {
        List<String> others = new ArrayList<>();
        for (GearingResult.Candidate choice : given.choices(axis.name())) {
            boolean close = choice.lap().isPresent() && given.gain(best) - given.gain(choice) < AS_GOOD_S;
            if (close && !choice.equals(best)) {
                others.add(Numbers.plain(choice.value()));
            }
        }
        return others.isEmpty()
                ? ""
                : " Within " + Numbers.plain(AS_GOOD_S) + " s of it: " + String.join(", ", others) + ".";
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
    private String said(SweepAxis axis, GearingResult.Candidate choice) {
        String drive = outcome.isNoRatio(axis)
                ? " (final drive " + Numbers.fixed(choice.car().value(GearingAxes.FINAL_DRIVE), 3) + ")"
                : "";
        return Subject.said(result.car(), choice.axis(), choice.value()) + drive;
    }

    private static boolean isNothing(double seconds) {
        return Math.abs(seconds) < GearingOutcome.NOTHING_S;
    }

    private static String slowerOrFaster(double gain) {
        if (isNothing(gain)) {
            return "as fast";
        }
        return seconds(gain) + (gain > 0 ? " faster" : " slower");
    }

    private static String seconds(double difference) {
        return Numbers.fixed(Math.abs(difference), 3) + " s";
    }

    private static String listed(List<Integer> gears) {
        return String.join(" and ", gears.stream().map(String::valueOf).toList());
    }
}
