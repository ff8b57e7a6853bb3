package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.advice.OverKerb;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.study.ride.RoadInput;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Part of a report on balance that answers a driver: one change, what it costs, what to try next, and what common practice would turn.
 *
 * @param result what was found
 */
public record AdviceReport(AdviceResult result) {
    private static final double MM_PER_M = 1000;

    /** Adds what people read, a paragraph each. */
    void addTo(Report report) {
        sentences().forEach(text -> report.paragraph(text));
    }

    /** All that is said, in order. */
    public List<String> sentences() {
        List<String> said = new ArrayList<>(
                result.words().assumed().stream().map(text -> text + ".").toList());
        if (!result.against().isEmpty()) {
            said.add(change());
            spoils().ifPresent(said::add);
            next().ifPresent(said::add);
        }
        result.overKerb().ifPresent(over -> kerb(said, over));
        result.bothWays().forEach(one -> said.add(bothWays(one)));
        said.add(practice());
        return said;
    }

    private String change() {
        if (result.choices().isEmpty()) {
            return Report.strong("Nothing to turn:")
                    + " no step of any adjustment of this car moves the balance there by " + inG(Remedies.NOTHING)
                    + " against what the driver says. " + missing();
        }
        AdviceResult.Choice choice = result.choices().get(0);
        return Report.strong("Turn first:") + " " + said(choice) + ": " + gains(choice) + "; " + cost(choice) + "."
                + (choice.gains().stream().allMatch(gain -> gain < Remedies.DISTURBING)
                        ? " That is hardly to be felt: no step helps by " + inG(Remedies.DISTURBING)
                                + ", so look at tyres, pressures and how it is driven first."
                        : "");
    }

    private void kerb(List<String> said, OverKerb over) {
        if (over.now().isEmpty()) {
            said.add("The ride over a kerb is not known: " + over.problem() + ".");
            return;
        }
        Kerb kerb = RoadInput.STANDARD.kerb();
        said.add("Over a kerb of " + Numbers.fixed(MM_PER_M * kerb.height(), 0) + " mm on "
                + Numbers.plain(kerb.length()) + " m at " + Numbers.kmh(over.speed())
                + " km/h, as 'lapwright ride' drives it: " + axles(over.now()) + ".");
        if (over.steps().isEmpty()) {
            said.add(Report.strong("Nothing to turn for the kerb:")
                    + " no step of any adjustment of this car eases it.");
            return;
        }
        List<String> steps = over.steps().stream()
                .map(step -> said(step.adjustment(), step.from(), step.to()) + ": " + axles(step.passes()) + "; "
                        + worse(step) + cost(step.difference(), step.doubt()))
                .toList();
        said.add(Report.strong("For the kerb turn first:") + " " + steps.get(0) + "."
                + (steps.size() > 1
                        ? " If that does not help, put it back and try "
                                + String.join("; then ", steps.subList(1, steps.size())) + "."
                        : ""));
    }

    /** What one thing cannot do for two complaints. */
    private String bothWays(AdviceResult.BothWays one) {
        Unit unit = car().unitOf(one.adjustment());
        return Report.strong("Both ways:") + " the balance asks for " + one.adjustment() + " "
                + Numbers.with(one.forBalance(), unit) + " and the kerb for " + Numbers.with(one.forKerb(), unit)
                + ". It cannot do both: say which of the two costs more, or turn something else for one of them.";
    }

    private static String axles(List<RidePass> passes) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < passes.size(); i++) {
            RidePass pass = passes.get(i);
            said.add((i == 0 ? "contact load varies by " : "") + Numbers.fixed(RideMeasure.LOAD.of(pass), 1) + " % "
                    + AxleEnd.values()[i].label());
        }
        return String.join(" and ", said);
    }

    private String missing() {
        List<String> moves = result.practice().stream()
                .filter(move -> move.view() == AdviceResult.PracticeMove.View.NOT_THERE)
                .map(AdviceResult.PracticeMove::move)
                .toList();
        return moves.isEmpty()
                ? "Look at tyres, pressures and how it is driven."
                : "It has no adjustment, or none left, for what would help in practice: " + String.join(", ", moves)
                        + ". List it in the car's document if there is one.";
    }

    private Car car() {
        return result.car();
    }

    private String said(AdviceResult.Choice choice) {
        return said(choice.adjustment(), choice.from(), choice.to());
    }

    private String said(String name, double from, double to) {
        Adjustment adjustment = car().adjustment(name);
        return name + " " + Numbers.plain(from) + " -> "
                + Numbers.with(to, car().unitOf(name))
                + " (" + (adjustment.label().isBlank() ? "" : Report.verbatim(adjustment.label()) + ", ") + "one "
                + (adjustment.clickSize() > 0 ? "click" : "step") + ")";
    }

    /** What a step for the kerb does to complaints of the balance that it makes worse. */
    private String worse(OverKerb.Step step) {
        boolean worse = step.gains().stream().anyMatch(gain -> gain <= -Remedies.NOTHING);
        return worse ? gains(step.gains()) + "; " : "";
    }

    private String gains(AdviceResult.Choice choice) {
        return gains(choice.gains());
    }

    /** Against each complaint. */
    private String gains(List<Double> gains) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < gains.size(); i++) {
            BalanceComplaint complaint = result.against().get(i).complaint();
            double gain = gains.get(i);
            String size = inG(Math.abs(gain));
            said.add((Math.abs(gain) < Remedies.NOTHING ? "nothing" : gain > 0 ? size : size + " the wrong way")
                    + " against " + complaint.label() + " in " + complaint.where());
        }
        return String.join(", ", said);
    }

    private static String inG(double acceleration) {
        return Numbers.fixed(LapTrace.g(acceleration), 3) + " g";
    }

    private static String cost(AdviceResult.Choice choice) {
        return cost(choice.difference(), choice.doubt());
    }

    private static String cost(double difference, Optional<RobustnessResult.Standing> doubt) {
        String nominal = "lap time " + Standings.said(difference, doubt.orElse(null));
        return doubt.map(standing -> nominal + ", " + Standings.interval(standing) + " s in nine of ten of "
                        + standing.laps() + " cars that this one may be ("
                        + standing.verdict().label() + ")")
                .orElse(nominal);
    }

    private Optional<String> spoils() {
        if (result.choices().isEmpty()) {
            return Optional.empty();
        }
        AdviceResult.Choice choice = result.choices().get(0);
        List<String> phases = new ArrayList<>(choice.disturbed().stream()
                .map(phase -> phase.label() + " by " + shift(choice, phase))
                .toList());
        if (choice.harsherOverKerb() > 0) {
            phases.add("the kerb, over which the contact load varies by " + Numbers.fixed(choice.harsherOverKerb(), 1)
                    + " % more");
        }
        return Optional.of(
                phases.isEmpty()
                        ? "It spoils no other phase by " + inG(Remedies.DISTURBING) + "."
                        : "It spoils: " + String.join(", ", phases) + ".");
    }

    /** Which way a phase goes, all corners. */
    private String shift(AdviceResult.Choice choice, BalancePhase phase) {
        double shift = result.against().stream()
                .filter(one -> one.complaint().phase() != phase)
                .flatMap(one -> one.steps().stream())
                .filter(step -> step.adjustment().equals(choice.adjustment()) && step.to() == choice.to())
                .mapToDouble(step -> step.shifts().getOrDefault(phase, Double.NaN))
                .findFirst()
                .orElse(Double.NaN);
        return inG(Math.abs(shift)) + " towards " + (shift > 0 ? "understeer" : "oversteer");
    }

    private Optional<String> next() {
        if (result.choices().size() < 2) {
            return Optional.empty();
        }
        List<String> others = result.choices().subList(1, result.choices().size()).stream()
                .map(choice -> said(choice) + ": " + gains(choice) + "; " + cost(choice))
                .toList();
        return Optional.of("If that does not help, put it back and try " + String.join("; then ", others) + ".");
    }

    private String practice() {
        List<String> said = new ArrayList<>();
        add(said, "the model agrees", AdviceResult.PracticeMove.View.AGREES);
        add(
                said,
                "the model says the opposite, so try it alone and believe the car",
                AdviceResult.PracticeMove.View.DISAGREES);
        add(said, "the model sees nothing of it", AdviceResult.PracticeMove.View.UNSEEN);
        add(said, "not on this car, or at its end", AdviceResult.PracticeMove.View.NOT_THERE);
        return Report.strong("Common practice (no source):") + " " + String.join("; ", said) + ".";
    }

    private void add(List<String> said, String verdict, AdviceResult.PracticeMove.View view) {
        List<String> moves = result.practice().stream()
                .filter(move -> move.view() == view)
                .map(move -> move.move()
                        + move.adjustment()
                                .map(name -> " (" + name + " " + Numbers.with(move.to(), car().unitOf(name)) + ")")
                                .orElse(""))
                .toList();
        if (!moves.isEmpty()) {
            said.add(String.join(", ", moves) + ": " + verdict);
        }
    }

    /** Where what is advised can hurt, and what practice turns too. */
    Set<Caution> cautions() {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        result.choices().forEach(choice -> cautions.addAll(choice.cautions()));
        result.overKerb().ifPresent(over -> over.steps().forEach(step -> cautions.addAll(step.cautions())));
        result.practice()
                .forEach(move -> move.adjustment()
                        .ifPresent(
                                name -> cautions.addAll(car().adjustment(name).cautions())));
        return cautions;
    }

    /** What was found, for machines. */
    Map<String, Object> fields() {
        Table<AdviceResult.Choice> choices = Table.<AdviceResult.Choice>of("Choices")
                .value("adjustment", AdviceResult.Choice::adjustment)
                .value("from", AdviceResult.Choice::from)
                .value("to", AdviceResult.Choice::to)
                .value(
                        "gainsG",
                        choice -> choice.gains().stream().map(LapTrace::g).toList())
                .value("differenceS", AdviceResult.Choice::difference)
                .value(
                        "differenceLowS",
                        choice -> choice.doubt().map(one -> one.low()).orElse(null))
                .value(
                        "differenceHighS",
                        choice -> choice.doubt().map(one -> one.high()).orElse(null))
                .value(
                        "standing",
                        choice ->
                                choice.doubt().map(one -> one.verdict().label()).orElse(null))
                .value("disturbs", choice -> labels(choice.disturbed()))
                .value(
                        "harsherOverKerbPercent",
                        choice -> Double.isNaN(choice.harsherOverKerb()) ? null : choice.harsherOverKerb());
        Table<AdviceResult.PracticeMove> practice = Table.<AdviceResult.PracticeMove>of("Common practice")
                .value("move", AdviceResult.PracticeMove::move)
                .value("adjustment", move -> move.adjustment().orElse(null))
                .value("to", move -> move.adjustment().isPresent() ? move.to() : null)
                .value(
                        "model",
                        move -> move.view().name().toLowerCase(Locale.ROOT).replace('_', ' '));
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("choices", choices.maps(result.choices()));
        tree.put("practice", practice.maps(result.practice()));
        tree.put("kerb", result.words().kerb());
        result.overKerb().ifPresent(over -> tree.put("overKerb", tree(over)));
        Table<AdviceResult.BothWays> bothWays = Table.<AdviceResult.BothWays>of("Both ways")
                .value("adjustment", AdviceResult.BothWays::adjustment)
                .value("forBalance", AdviceResult.BothWays::forBalance)
                .value("forKerb", AdviceResult.BothWays::forKerb);
        tree.put("bothWays", bothWays.maps(result.bothWays()));
        tree.put(
                "reading",
                sentences().stream()
                        .map(text -> Report.plain(Report.marked(text, "", "")))
                        .toList());
        return tree;
    }

    private static Map<String, Object> tree(OverKerb over) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("speedKmh", LapTrace.kmh(over.speed()));
        tree.put("loadVariationPercent", variations(over.now()));
        tree.put("problem", over.problem());
        Table<OverKerb.Step> steps = Table.<OverKerb.Step>of("Steps")
                .value("adjustment", OverKerb.Step::adjustment)
                .value("from", OverKerb.Step::from)
                .value("to", OverKerb.Step::to)
                .value("loadVariationPercent", step -> variations(step.passes()))
                .value("gainsG", step -> step.gains().stream().map(LapTrace::g).toList())
                .value("differenceS", OverKerb.Step::difference)
                .value(
                        "differenceLowS",
                        step -> step.doubt().map(one -> one.low()).orElse(null))
                .value(
                        "differenceHighS",
                        step -> step.doubt().map(one -> one.high()).orElse(null));
        tree.put("steps", steps.maps(over.steps()));
        return tree;
    }

    /** Front and rear. */
    private static List<Double> variations(List<RidePass> passes) {
        return passes.stream().map(RideMeasure.LOAD::of).toList();
    }

    private static List<String> labels(Collection<BalancePhase> phases) {
        return phases.stream().map(BalancePhase::label).toList();
    }
}
