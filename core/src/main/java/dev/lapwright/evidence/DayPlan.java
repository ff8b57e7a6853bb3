package dev.lapwright.evidence;

import dev.lapwright.fault.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Plan of runs with two setups by turns: orders, lengths and numbers of runs, and what each buys, by the model of a day that
 * judges the laps afterwards. Of all orders of so many runs that one is taken in which the difference is known best, drift
 * and runs considered.
 *
 * @param target change looked for, s, above zero
 * @param lap standard deviation from lap to lap, s
 * @param options by number of runs, then laps; unmodifiable
 */
public record DayPlan(double target, double lap, List<Option> options) {
    /** A plan does if it shows the change looked for at least so often. */
    public static final double CHANCE = LapsToSee.POWER;

    private static final int[] LENGTHS = {5, 8, 12};
    private static final int[] FRESH = {2, 3, 4, 6, 8, 10};
    private static final int[] FURTHER = {2, 4, 6, 8};
    /** Levels and drift cost so many runs of what the runs tell of their own spread. */
    private static final int SPENT = 4;

    /**
     * A way to spend the day.
     *
     * @param order one letter for each run: A the setup before, B the one after
     * @param lapsPerRun clean laps of each
     * @param laps all that are driven, an out lap and an in lap with each run
     * @param half expected half width of the 95 % interval, looked at once, s
     * @param chance that the change looked for is called real
     */
    public record Option(String order, int lapsPerRun, int laps, double half, double chance) {
        public int runs() {
            return order.length();
        }
    }

    public DayPlan {
        options = List.copyOf(options);
    }

    /** The option of the fewest laps that shows the change often enough. */
    public Optional<Option> recommended() {
        return options.stream()
                .filter(option -> option.chance >= CHANCE)
                .min(Comparator.comparingInt(Option::laps).thenComparingInt(Option::runs));
    }

    /**
     * The plan of a day before the first lap.
     *
     * @param target change looked for, s, above zero
     * @param lap standard deviation from lap to lap, s, above zero
     * @param how priors, and how often the laps will be looked at
     */
    public static DayPlan fresh(double target, double lap, Evidence how) {
        Check.positive("change looked for (s)", target);
        Check.positive("lap-to-lap scatter (s)", lap);
        Evidence.Prior prior = how.prior();
        DayModel day = DayModel.fresh(prior);
        MixedModel.Variances[] variances = MixedModel.allowed(day.variances(), lap, prior.mostCorrelation() / 2);
        double[] weight = MixedModel.weights(day.variances());
        return plan(day, List.of("A", "B"), target, variances, weight, how, FRESH);
    }

    /** The plan of further runs after those that were driven. */
    static DayPlan further(DayModel day, List<String> setups, double target, MixedModel.Posterior known, Evidence how) {
        // Laps and correlation at their means; of the runs' spread all that it may be.
        double lap = known.mean(MixedModel.Variances::lap);
        double correlation = known.mean(MixedModel.Variances::correlation);
        double[] runs = Arrays.stream(known.variances())
                .mapToDouble(MixedModel.Variances::run)
                .distinct()
                .toArray();
        double[] weight = new double[runs.length];
        for (int i = 0; i < known.weight().length; i++) {
            double run = known.variances()[i].run();
            weight[
                            IntStream.range(0, runs.length)
                                    .filter(k -> runs[k] == run)
                                    .findFirst()
                                    .orElseThrow()] +=
                    known.weight()[i];
        }
        MixedModel.Variances[] variances = Arrays.stream(runs)
                .mapToObj(run -> new MixedModel.Variances(lap, run, correlation))
                .toArray(MixedModel.Variances[]::new);
        return plan(day, setups, target, variances, weight, how, FURTHER);
    }

    private static DayPlan plan(
            DayModel day,
            List<String> setups,
            double target,
            MixedModel.Variances[] variances,
            double[] weight,
            Evidence how,
            int... numbers) {
        MixedModel.Variances middle = variances[variances.length / 2];
        List<Option> options = new ArrayList<>();
        for (int runs : numbers) {
            for (int laps : LENGTHS) {
                String best = "";
                double least = Double.POSITIVE_INFINITY;
                for (String order : orders(runs, day.runs() == 0)) {
                    double[] difference = day.difference(setups.get(0), setups.get(1));
                    double variance = day.with(named(order, setups), laps)
                            .model()
                            .at(middle)
                            .variance(difference);
                    // The first of several as good ones, rounding aside.
                    if (variance < least * (1 - 1e-9)) {
                        least = variance;
                        best = order;
                    }
                }
                DayModel planned = day.with(named(best, setups), laps);
                options.add(option(planned, setups, target, variances, weight, how, best, laps));
            }
        }
        return new DayPlan(target, middle.lap(), options);
    }

    private static Option option(
            DayModel planned,
            List<String> setups,
            double target,
            MixedModel.Variances[] variances,
            double[] weight,
            Evidence how,
            String order,
            int laps) {
        double[] difference = planned.difference(setups.get(0), setups.get(1));
        double[] deviation = Arrays.stream(variances)
                .mapToDouble(v -> Math.sqrt(planned.model().at(v).variance(difference)))
                .toArray();
        double freedom = Math.max(0, planned.runs() - SPENT);
        double half = 0;
        double chance = 0;
        for (int truth = 0; truth < variances.length; truth++) {
            if (weight[truth] == 0) {
                continue;
            }
            // What the runs will have told of their spread: their likelihood where it is as expected.
            double[] logWeight = new double[variances.length];
            for (int i = 0; i < variances.length; i++) {
                double ratio = Math.pow(deviation[truth] / deviation[i], 2);
                logWeight[i] = Math.log(weight[i]) - freedom / 2 * (ratio - Math.log(ratio));
            }
            NormalMixture known = NormalMixture.of(logWeight, new double[variances.length], deviation);
            half += weight[truth] * known.interval(LapsToSee.SIGNIFICANCE).half();
            double limit = known.interval(how.share()).half();
            chance += weight[truth]
                    * NormalMixture.of(new double[1], new double[] {-target}, deviation[truth])
                            .below(-limit);
        }
        return new Option(order, laps, order.length() * (laps + 2), half, chance);
    }

    private static List<String> named(String order, List<String> setups) {
        return order.chars().mapToObj(c -> setups.get(c - 'A')).toList();
    }

    /** All orders of so many runs that have both setups as often, or one of them once more; alternating ones first. */
    private static List<String> orders(int runs, boolean beginWithA) {
        List<String> orders = new ArrayList<>();
        for (int pattern = 0; pattern < 1 << runs; pattern++) {
            int seconds = Integer.bitCount(pattern);
            if ((seconds == runs / 2) && !(beginWithA && (pattern & 1) != 0)) {
                StringBuilder order = new StringBuilder();
                for (int k = 0; k < runs; k++) {
                    order.append((pattern >> k & 1) == 0 ? 'A' : 'B');
                }
                orders.add(order.toString());
            }
        }
        return orders;
    }
}
