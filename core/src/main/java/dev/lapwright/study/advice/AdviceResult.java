package dev.lapwright.study.advice;

import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.DriverWords;
import dev.lapwright.study.balance.RemedyResult;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Advice found against what a driver says.
 *
 * @param words of the driver
 * @param balance of the lap looked at
 * @param against what was tried against each complaint of the balance, in their order
 * @param choices steps worth trying, the best first, at most {@link #MOST_CHOICES}; empty where none helps against any complaint
 * @param overKerb what eases a kerb; empty where none is complained of
 * @param practice what common practice would turn, in the order in which it is said
 */
public record AdviceResult(
        DriverWords words,
        BalanceResult balance,
        List<RemedyResult> against,
        List<Choice> choices,
        Optional<OverKerb> overKerb,
        List<PracticeMove> practice) {
    /** One to make, two to try next. */
    public static final int MOST_CHOICES = 3;

    public AdviceResult {
        against = List.copyOf(against);
        choices = List.copyOf(choices);
        practice = List.copyOf(practice);
    }

    /** Adjustments that are turned one way against a complaint of the balance and the other way for the kerb: none can do both. */
    public List<BothWays> bothWays() {
        List<OverKerb.Step> steps = overKerb.map(OverKerb::steps).orElse(List.of());
        return choices.stream()
                .flatMap(choice -> steps.stream()
                        .filter(step -> step.adjustment().equals(choice.adjustment())
                                && (step.to() - step.from()) * (choice.to() - choice.from()) < 0)
                        .map(step -> new BothWays(choice.adjustment(), choice.to(), step.to())))
                .toList();
    }

    /**
     * Adjustment that is asked to go both ways.
     *
     * @param forBalance setting that helps against a complaint of the balance
     * @param forKerb setting that eases the kerb
     */
    public record BothWays(String adjustment, double forBalance, double forKerb) {}

    /** The car as it stands. */
    public Car car() {
        return balance.lap().vehicle().car();
    }

    /**
     * Step of one adjustment that helps.
     *
     * @param adjustment its name
     * @param from setting now
     * @param to setting one step away
     * @param gains balance gained against each complaint, m/s² of lateral acceleration; negative where it makes one worse
     * @param difference of the lap time, s, minus where faster
     * @param doubt how that stands on drawn cars; empty where none were drawn
     * @param disturbed phases, other than those complained of, whose limits part further
     * @param harsherOverKerb by how much more the contact load varies over a kerb, mean of both axles, percent of the load; below nought where less;
     *     NaN where no kerb is complained of, it was not driven over, or the adjustment is no spring, bar or damper
     * @param cautions where it can hurt
     */
    public record Choice(
            String adjustment,
            double from,
            double to,
            List<Double> gains,
            double difference,
            Optional<RobustnessResult.Standing> doubt,
            List<BalancePhase> disturbed,
            double harsherOverKerb,
            Set<Caution> cautions) {
        public Choice {
            gains = List.copyOf(gains);
            disturbed = List.copyOf(disturbed);
            cautions = Set.copyOf(cautions);
        }
    }

    /**
     * Move of common practice (no source).
     *
     * @param move in words: "softer rear anti-roll bar"
     * @param adjustment of this car that makes it; empty where it has none
     * @param to setting one step away; NaN where there is none
     * @param view what the model makes of it
     */
    public record PracticeMove(String move, Optional<String> adjustment, double to, View view) {
        /** What the model makes of a move. */
        public enum View {
            /** It helps in the model too. */
            AGREES,
            /** It does the opposite in the model. */
            DISAGREES,
            /** The model sees next to nothing of it. */
            UNSEEN,
            /** This car has no such adjustment, or it stands at its end. */
            NOT_THERE
        }
    }
}
