package dev.lapwright.study.stint;

import java.util.List;

/**
 * Plans of stops for tyres, the best of each order of compounds, the best of all first.
 *
 * @param plans at least one
 * @param stopLoss time that a stop costs beside driving on, s
 * @param neutralised laps, if there are any
 * @param startFuel kg on board before the formation lap
 */
public record StopPlansResult(List<Plan> plans, double stopLoss, Neutralised neutralised, double startFuel) {
    public StopPlansResult {
        plans = List.copyOf(plans);
    }

    /**
     * Plan of a race.
     *
     * @param order compounds, one for each stint
     * @param after laps after which the car stops, one fewer
     * @param window first and last lap after which its only stop costs at most a second more; empty where it has none or several. Copied in
     *     and out
     * @param laps driven
     * @param time s
     */
    public record Plan(List<Compound> order, List<Integer> after, int[] window, int laps, double time) {
        public Plan {
            order = List.copyOf(order);
            after = List.copyOf(after);
            window = window.clone();
        }

        @Override
        public int[] window() {
            return window.clone();
        }

        /** The same with a window. */
        Plan between(int[] laps) {
            return new Plan(order, after, laps, this.laps, time);
        }
    }

    /** The plan that is the fastest. */
    public Plan best() {
        return plans.get(0);
    }

    /**
     * Time that a stop may cost for the best plan with a stop to be as fast as the best without, s; NaN where there is only one kind, or
     * they drive another number of laps.
     */
    public double breakEven() {
        Plan without = plans.stream()
                .filter(plan -> plan.after().isEmpty())
                .findFirst()
                .orElse(null);
        Plan with = plans.stream()
                .filter(plan -> plan.after().size() == 1)
                .findFirst()
                .orElse(null);
        if (without == null || with == null || without.laps() != with.laps()) {
            return Double.NaN;
        }
        boolean slow = neutralised.holds(with.after().get(0));
        return without.time() - with.time() + (slow ? neutralised.stopLoss() : stopLoss);
    }
}
