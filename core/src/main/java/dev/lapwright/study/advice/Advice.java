package dev.lapwright.study.advice;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Lap;
import dev.lapwright.study.Progress;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.study.balance.RemedyResult;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Study of advice against what a driver says: one step of one adjustment that helps against all complaints, or else against as many as
 * any does, at no cost of lap time that counts if there is one, and none that is harsher over a kerb that is complained of, if another
 * helps as well; what it costs on drawn cars; what to try next; and what common practice
 * would turn, with what the model makes of that.
 *
 * <pre>{@code
 * DriverWords words = DriverWords.read(List.of("loose on power out of T3"), balance.lap().stations().corners());
 * AdviceResult advice = Advice.on(words, balance).run();
 * }</pre>
 */
public final class Advice implements Study<AdviceResult> {
    /** Cars drawn if nothing is said. */
    public static final int DRAWS = 40;

    /** What moves the balance too, but is not there to set it. */
    private static final Set<String> NOT_FOR_BALANCE = Set.of(
            Quantity.FUEL_MASS.path(),
            Quantity.MASS.path(),
            Quantity.POWER_SCALE.path(),
            Quantity.COMPOUND_GRIP.path(),
            Quantity.TYRE_TEMPERATURE.path());

    /** Percent of the drive. */
    private static final double FRONT_ALONE = 100;

    private static final String BAR = ".antiRollBarNmPerDeg";
    private static final String SPRING = ".springNPerMm";

    private final DriverWords words;
    private final BalanceResult balance;
    private final int draws;
    private final StudyMemory memory;

    private Advice(DriverWords words, BalanceResult balance, int draws, StudyMemory memory) {
        this.words = words;
        this.balance = balance;
        this.draws = draws;
        this.memory = memory;
    }

    /** Advice on the lap of a balance. */
    public static Advice on(DriverWords words, BalanceResult balance) {
        return new Advice(words, balance, DRAWS, StudyMemory.NONE);
    }

    /** The same with so many cars drawn to tell what a change costs; 0 for none. */
    public Advice withDraws(int count) {
        return new Advice(words, balance, count == 0 ? 0 : Robustness.checkedDraws("draws", count), memory);
    }

    /** The same, going on from what a memory recalls of the drawn cars of this very advice, and keeping there what it drives. */
    public Advice remembering(StudyMemory drives) {
        return new Advice(words, balance, draws, drives);
    }

    /** @throws InvalidValueException if no corner complained of has the phase, two complaints contradict each other, or the car has nothing to turn */
    @Override
    public AdviceResult run(StudyRun how) {
        for (BalanceComplaint one : words.complaints()) {
            words.complaints().forEach(other -> one.refuseOpposite(other, balance));
        }
        List<RemedyResult> against = new ArrayList<>();
        for (BalanceComplaint complaint : words.complaints()) {
            against.add(Remedies.against(complaint, balance).run(how));
        }
        KerbSearch kerb = new KerbSearch(balance.lap(), against, memory.of("kerb"));
        Optional<OverKerb> over = words.kerb() ? Optional.of(kerb.search(draws, how)) : Optional.empty();
        List<AdviceResult.Choice> choices = against.isEmpty()
                ? List.of()
                : choices(
                        against,
                        (adjustment, to) -> over.map(found -> kerb.change(found, adjustment, to))
                                .orElse(Double.NaN),
                        how);
        return new AdviceResult(words, balance, against, choices, over, practice(against, kerb, over));
    }

    private Car car() {
        return balance.lap().vehicle().car();
    }

    /** How much more the contact load varies over a kerb with an adjustment turned to a setting, percent of the load; NaN where nobody asks. */
    @FunctionalInterface
    private interface Harsher {
        double by(String adjustment, double to);
    }

    private List<AdviceResult.Choice> choices(List<RemedyResult> against, Harsher kerb, StudyRun how) {
        List<AdviceResult.Choice> all = new ArrayList<>();
        List<RemedyResult.Remedy> first = against.get(0).steps();
        for (int i = 0; i < first.size(); i++) {
            AdviceResult.Choice choice = choice(against, i, kerb);
            if (isForBalance(choice.adjustment())) {
                all.add(choice);
            }
        }
        List<AdviceResult.Choice> helping = new ArrayList<>(all.stream()
                .filter(choice -> best(choice) >= Remedies.DISTURBING)
                .toList());
        if (helping.isEmpty()) {
            // Next to nothing is better than none; but one idea of that kind is enough.
            all.stream()
                    .filter(choice -> best(choice) >= Remedies.NOTHING)
                    .max(Comparator.comparingDouble(Advice::best))
                    .ifPresent(helping::add);
        }
        helping.sort(Comparator.comparing((AdviceResult.Choice choice) -> -helps(choice))
                .thenComparing(choice -> worsens(choice) + (choice.harsherOverKerb() > 0 ? 1 : 0))
                .thenComparing(choice -> !first.get(indexOf(first, choice)).isFree())
                .thenComparing(choice ->
                        -choice.gains().stream().mapToDouble(gain -> gain).sum()));
        barsBeforeSprings(helping);
        // Two steps of one adjustment are one idea.
        List<AdviceResult.Choice> best = new ArrayList<>();
        Set<String> taken = new LinkedHashSet<>();
        for (AdviceResult.Choice choice : helping) {
            if (best.size() < AdviceResult.MOST_CHOICES && taken.add(choice.adjustment())) {
                best.add(choice);
            }
        }
        return draws == 0 || best.isEmpty() ? best : doubted(best, how);
    }

    /** Where bars help as well, springs come behind the first of them (common practice, no source): a bar is turned in a minute. */
    private void barsBeforeSprings(List<AdviceResult.Choice> helping) {
        int bar = 0;
        while (bar < helping.size() && !moves(helping.get(bar), BAR)) {
            bar++;
        }
        if (bar == helping.size()) {
            return;
        }
        List<AdviceResult.Choice> ahead = new ArrayList<>(helping.subList(0, bar + 1));
        List<AdviceResult.Choice> springs =
                ahead.stream().filter(choice -> moves(choice, SPRING)).toList();
        ahead.removeAll(springs);
        ahead.addAll(springs);
        for (int i = 0; i <= bar; i++) {
            helping.set(i, ahead.get(i));
        }
    }

    private boolean moves(AdviceResult.Choice choice, String ending) {
        return car().adjustment(choice.adjustment()).effects().stream()
                .anyMatch(effect -> effect.quantity().endsWith(ending));
    }

    private static double best(AdviceResult.Choice choice) {
        return choice.gains().stream().mapToDouble(gain -> gain).max().orElse(Double.NEGATIVE_INFINITY);
    }

    private static int indexOf(List<RemedyResult.Remedy> steps, AdviceResult.Choice choice) {
        for (int i = 0; i < steps.size(); i++) {
            if (steps.get(i).adjustment().equals(choice.adjustment())
                    && steps.get(i).to() == choice.to()) {
                return i;
            }
        }
        throw new IllegalStateException("no step of " + choice.adjustment());
    }

    /** All complaints are asked of the same steps in the same order. */
    private static AdviceResult.Choice choice(List<RemedyResult> against, int step, Harsher kerb) {
        RemedyResult.Remedy remedy = against.get(0).steps().get(step);
        Set<BalancePhase> disturbed = EnumSet.noneOf(BalancePhase.class);
        List<Double> gains = new ArrayList<>();
        for (RemedyResult one : against) {
            RemedyResult.Remedy same = one.steps().get(step);
            gains.add(same.gain());
            disturbed.addAll(same.disturbed());
        }
        against.forEach(one -> disturbed.remove(one.complaint().phase()));
        Set<Caution> cautions = remedy.cautions();
        return new AdviceResult.Choice(
                remedy.adjustment(),
                remedy.from(),
                remedy.to(),
                gains,
                remedy.difference(),
                Optional.empty(),
                List.copyOf(disturbed),
                kerb.by(remedy.adjustment(), remedy.to()),
                cautions);
    }

    private static long helps(AdviceResult.Choice choice) {
        return choice.gains().stream().filter(gain -> gain >= Remedies.NOTHING).count();
    }

    private static long worsens(AdviceResult.Choice choice) {
        return choice.gains().stream().filter(gain -> gain <= -Remedies.NOTHING).count();
    }

    private boolean isForBalance(String name) {
        return car().adjustment(name).effects().stream()
                .noneMatch(effect -> NOT_FOR_BALANCE.contains(effect.quantity()));
    }

    private List<AdviceResult.Choice> doubted(List<AdviceResult.Choice> best, StudyRun how) {
        Lap lap = balance.lap();
        Robustness study = Robustness.of(car(), lap.track(), lap.vehicle().conditions())
                .withDraws(draws)
                .remembering(memory.of("choices"));
        for (AdviceResult.Choice choice : best) {
            study = study.against(car().with(choice.adjustment(), choice.to()));
        }
        RobustnessResult drawn = study.run(how.reporting(Progress.NONE));
        List<AdviceResult.Choice> told = new ArrayList<>();
        for (int i = 0; i < best.size(); i++) {
            AdviceResult.Choice choice = best.get(i);
            told.add(new AdviceResult.Choice(
                    choice.adjustment(),
                    choice.from(),
                    choice.to(),
                    choice.gains(),
                    choice.difference(),
                    Optional.of(drawn.standings().get(i)),
                    choice.disturbed(),
                    choice.harsherOverKerb(),
                    choice.cautions()));
        }
        return told;
    }

    private List<AdviceResult.PracticeMove> practice(
            List<RemedyResult> against, KerbSearch kerb, Optional<OverKerb> over) {
        List<AdviceResult.PracticeMove> moves = new ArrayList<>();
        Set<Practice> said = new LinkedHashSet<>();
        for (RemedyResult one : against) {
            for (Practice practice :
                    Practice.against(one.complaint(), one.complaint().isOfSlow(balance), isFrontDriven(car()))) {
                if (said.add(practice)) {
                    moves.add(move(practice, (adjustment, to) -> view(adjustment, to, one)));
                }
            }
        }
        over.ifPresent(found -> Practice.KERB.stream()
                .filter(said::add)
                .forEach(practice -> moves.add(move(practice, (adjustment, to) -> kerb.view(found, adjustment, to)))));
        return moves;
    }

    /** Whether the front axle alone is driven, so that it is the one whose wheels spin. */
    public static boolean isFrontDriven(Car car) {
        return car.value(Quantity.FRONT_DRIVE_SHARE) >= FRONT_ALONE;
    }

    /** What the model makes of an adjustment turned to a setting. */
    @FunctionalInterface
    private interface Look {
        AdviceResult.PracticeMove.View of(String adjustment, double to);
    }

    private AdviceResult.PracticeMove move(Practice practice, Look look) {
        for (Adjustment adjustment : car().adjustments()) {
            List<String> paths =
                    adjustment.effects().stream().map(Effect::quantity).toList();
            Optional<String> quantity = practice.isMadeBy(paths)
                    ? paths.stream().filter(practice::moves).findFirst()
                    : Optional.empty();
            double to = quantity.map(path -> step(adjustment, path, practice.more()))
                    .orElse(Double.NaN);
            if (!Double.isNaN(to)) {
                return new AdviceResult.PracticeMove(
                        practice.words(), Optional.of(adjustment.name()), to, look.of(adjustment.name(), to));
            }
        }
        return new AdviceResult.PracticeMove(
                practice.words(), Optional.empty(), Double.NaN, AdviceResult.PracticeMove.View.NOT_THERE);
    }

    /** The legal setting nearest to now that moves a quantity as practice has it; NaN if there is none. */
    private double step(Adjustment adjustment, String quantity, boolean more) {
        double now = car().setting(adjustment.name());
        double nearest = Double.NaN;
        for (double legal : adjustment.legalSettings()) {
            boolean nearer = Double.isNaN(nearest) || Math.abs(legal - now) < Math.abs(nearest - now);
            if (legal != now && nearer && isRight(adjustment, legal, quantity, more)) {
                nearest = legal;
            }
        }
        return nearest;
    }

    private boolean isRight(Adjustment adjustment, double setting, String quantity, boolean more) {
        try {
            double change = car().with(adjustment.name(), setting).value(quantity) - car().value(quantity);
            return more ? change > 0 : change < 0;
        } catch (LapwrightException noCar) {
            return false;
        }
    }

    private static AdviceResult.PracticeMove.View view(String adjustment, double to, RemedyResult one) {
        return one.steps().stream()
                .filter(step -> step.adjustment().equals(adjustment) && step.to() == to)
                .findFirst()
                .map(step -> step.gain() >= Remedies.NOTHING
                        ? AdviceResult.PracticeMove.View.AGREES
                        : step.gain() <= -Remedies.NOTHING
                                ? AdviceResult.PracticeMove.View.DISAGREES
                                : AdviceResult.PracticeMove.View.UNSEEN)
                .orElse(AdviceResult.PracticeMove.View.UNSEEN);
    }
}
