package dev.lapwright.study.advice;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.Progress;
import dev.lapwright.study.StudyMemory;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.study.balance.RemedyResult;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Search for steps that ease a kerb, by the study of ride. */
final class KerbSearch {
    /** Where a lap has no corner, m/s: 100 km/h, as the study of ride takes it. */
    private static final double USUAL = 100 / 3.6;

    private static final String HEIGHT = ".rideHeightMm";

    private final Lap lap;
    private final List<RemedyResult> against;
    private final StudyMemory memory;
    private final double speed;

    /**
     * @param against what was tried against complaints of the balance; may be empty
     * @param memory of its drawn cars
     */
    KerbSearch(Lap lap, List<RemedyResult> against, StudyMemory memory) {
        this.memory = memory;
        this.lap = lap;
        this.against = against;
        speed = lap.corners().stream()
                .mapToDouble(CornerFigures::minimumSpeed)
                .min()
                .orElse(USUAL);
    }

    private Car car() {
        return lap.vehicle().car();
    }

    private List<RidePass> passes(Car set) {
        return Ride.of(set, lap.vehicle().conditions(), speed).overKerb();
    }

    /**
     * Springs and dampers: a wing that presses the wheel down, or a softer tyre, eases a kerb too, but is not there for it; and what a ride
     * height is there for, that nothing strikes the kerb, the study of ride does not know.
     */
    private static boolean isForRide(Adjustment adjustment) {
        return adjustment.effects().stream()
                        .map(Effect::quantity)
                        .anyMatch(quantity -> quantity.startsWith("suspension."))
                && !isHeight(adjustment);
    }

    private static boolean isHeight(Adjustment adjustment) {
        return adjustment.effects().stream().map(Effect::quantity).anyMatch(quantity -> quantity.endsWith(HEIGHT));
    }

    /**
     * What eases it.
     *
     * @param draws cars drawn to tell what it costs; 0 for none
     */
    OverKerb search(int draws, StudyRun how) {
        List<RidePass> now;
        try {
            now = passes(car());
        } catch (LapwrightException unknown) {
            return new OverKerb(speed, List.of(), List.of(), unknown.problem() + "; " + unknown.remedy());
        }
        LapSolver solver = new LapSolver(lap.stations());
        List<OverKerb.Step> best = new ArrayList<>();
        for (Adjustment adjustment : car().adjustments()) {
            how.stopIfWanted();
            if (isForRide(adjustment)) {
                // Two steps of one adjustment are one idea.
                neighbours(adjustment).stream()
                        .flatMap(to -> step(adjustment, to, now, solver).stream())
                        .min(Comparator.comparingDouble(step -> OverKerb.variation(step.passes())))
                        .ifPresent(best::add);
            }
        }
        best.sort(Comparator.comparing(
                        (OverKerb.Step step) -> step.gains().stream().anyMatch(gain -> gain <= -Remedies.NOTHING))
                .thenComparing(step -> !LapTimeDifference.isNone(step.difference()))
                .thenComparing(step -> LapTimeDifference.counts(-step.difference()))
                .thenComparingDouble(step -> OverKerb.variation(step.passes())));
        List<OverKerb.Step> first = best.subList(0, Math.min(AdviceResult.MOST_CHOICES, best.size()));
        return new OverKerb(speed, now, doubted(first, draws, how), "");
    }

    private List<Double> neighbours(Adjustment adjustment) {
        double now = car().setting(adjustment.name());
        double below = Double.NaN;
        double above = Double.NaN;
        for (double legal : adjustment.legalSettings()) {
            below = legal < now ? legal : below;
            above = legal > now && Double.isNaN(above) ? legal : above;
        }
        return Stream.of(below, above).filter(setting -> !Double.isNaN(setting)).toList();
    }

    /** Empty where it does not ease it, or there is no such car. */
    private Optional<OverKerb.Step> step(Adjustment adjustment, double to, List<RidePass> now, LapSolver solver) {
        try {
            Car set = car().with(adjustment.name(), to);
            List<RidePass> passes = passes(set);
            if (OverKerb.change(now, passes) >= 0) {
                return Optional.empty();
            }
            double time = solver.lapTime(Vehicle.of(set, lap.vehicle().conditions()));
            return Optional.of(new OverKerb.Step(
                    adjustment.name(),
                    car().setting(adjustment.name()),
                    to,
                    passes,
                    gains(adjustment.name(), to),
                    time - lap.time(),
                    Optional.empty(),
                    adjustment.cautions()));
        } catch (LapwrightException noCar) {
            return Optional.empty();
        }
    }

    /** Against each complaint of the balance; nothing where its limits do not move with it. */
    private List<Double> gains(String adjustment, double to) {
        return against.stream()
                .map(one -> one.steps().stream()
                        .filter(step -> step.adjustment().equals(adjustment) && step.to() == to)
                        .map(RemedyResult.Remedy::gain)
                        .findFirst()
                        .orElse(0.0))
                .toList();
    }

    /** Drawn cars are asked only of what moves the lap time. */
    private List<OverKerb.Step> doubted(List<OverKerb.Step> steps, int draws, StudyRun how) {
        List<OverKerb.Step> asked = steps.stream()
                .filter(step -> draws > 0 && !LapTimeDifference.isNone(step.difference()))
                .toList();
        if (asked.isEmpty()) {
            return steps;
        }
        Robustness study = Robustness.of(car(), lap.track(), lap.vehicle().conditions())
                .withDraws(draws)
                .remembering(memory);
        for (OverKerb.Step step : asked) {
            study = study.against(car().with(step.adjustment(), step.to()));
        }
        RobustnessResult drawn = study.run(how.reporting(Progress.NONE));
        return steps.stream()
                .map(step -> new OverKerb.Step(
                        step.adjustment(),
                        step.from(),
                        step.to(),
                        step.passes(),
                        step.gains(),
                        step.difference(),
                        asked.contains(step)
                                ? Optional.of(drawn.standings().get(asked.indexOf(step)))
                                : Optional.empty(),
                        Set.copyOf(step.cautions())))
                .toList();
    }

    /**
     * How much more the contact load varies with an adjustment turned to a setting, percent of the load; NaN where the kerb was not driven over, or
     * the adjustment is not there for it.
     */
    double change(OverKerb found, String adjustment, double to) {
        if (found.now().isEmpty() || !isForRide(car().adjustment(adjustment))) {
            return Double.NaN;
        }
        try {
            return OverKerb.change(found.now(), passes(car().with(adjustment, to)));
        } catch (LapwrightException noCar) {
            return Double.NaN;
        }
    }

    /** What the study of ride makes of a move of practice. */
    AdviceResult.PracticeMove.View view(OverKerb found, String adjustment, double to) {
        double change = change(found, adjustment, to);
        return change < 0
                ? AdviceResult.PracticeMove.View.AGREES
                : change > 0 ? AdviceResult.PracticeMove.View.DISAGREES : AdviceResult.PracticeMove.View.UNSEEN;
    }
}
