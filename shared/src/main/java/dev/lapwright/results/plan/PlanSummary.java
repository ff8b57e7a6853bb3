package dev.lapwright.results.plan;

import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.plan.LapPlan;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Summary of the laps of a plan, case by case: the fastest of each, and how many have no lap. Grows lap by lap and keeps none. */
public final class PlanSummary {
    private final LapPlan plan;
    private final List<OfCase> cases = new ArrayList<>();

    /** What one case comes to so far. */
    private static final class OfCase {
        private final String name;
        private long laps;
        private long none;
        private double fastest = Double.POSITIVE_INFINITY;
        private double slowest = Double.NEGATIVE_INFINITY;
        private double[] settings = {};

        OfCase(String name) {
            this.name = name;
        }
    }

    /** Of a plan of which nothing was driven. */
    public PlanSummary(LapPlan plan) {
        this.plan = plan;
        plan.cases().forEach(one -> cases.add(new OfCase(one.name())));
    }

    /** Adds a lap; its time in s, NaN where there is none. */
    void add(int ofCase, double[] values, double time) {
        OfCase one = cases.get(ofCase);
        one.laps++;
        if (Double.isNaN(time)) {
            one.none++;
            return;
        }
        one.slowest = Math.max(one.slowest, time);
        if (time < one.fastest) {
            one.fastest = time;
            one.settings = values.clone();
        }
    }

    /** Adds a lap. */
    public void add(LapPlan.PlannedLap lap) {
        add(
                plan.caseOf(lap.number()),
                lap.values(),
                lap.figures().map(LapFigures::lapTime).orElse(Double.NaN));
    }

    private String settings(OfCase one) {
        StringBuilder text = new StringBuilder();
        for (int k = 0; k < one.settings.length; k++) {
            SweepAxis axis = plan.design().axes().get(k);
            text.append(k == 0 ? "" : ", ").append(axis.name()).append(' ').append(CsvText.number(one.settings[k]));
        }
        return text.isEmpty() ? "-" : text.toString();
    }

    private Map<String, Double> values(OfCase one) {
        Map<String, Double> values = new LinkedHashMap<>();
        for (int k = 0; k < one.settings.length; k++) {
            values.put(plan.design().axes().get(k).name(), one.settings[k]);
        }
        return values;
    }

    private static Double known(double time) {
        return Double.isFinite(time) ? (Double) time : Table.NOT_KNOWN;
    }

    /**
     * All of it, for people and machines.
     *
     * @param name of the plan
     */
    public Report report(String name) {
        Table<OfCase> table = Table.<OfCase>of("Cases")
                .names("case", "case", one -> one.name)
                .number("laps", "laps", "", Numbers.fixed(0), one -> (double) one.laps)
                .number("withoutLap", "without lap", "", Numbers.fixed(0), one -> (double) one.none)
                .said(
                        "fastestS",
                        "fastest",
                        "m:ss.mmm",
                        one -> known(one.fastest),
                        one -> one.laps > one.none ? Numbers.lapTime(one.fastest) : "-")
                .said(
                        "slowestS",
                        "slowest",
                        "m:ss.mmm",
                        one -> known(one.slowest),
                        one -> one.laps > one.none ? Numbers.lapTime(one.slowest) : "-")
                .words("", "fastest with", this::settings)
                .value("fastestWith", this::values);
        return new Report()
                .field("lapwright", "plan-summary/1")
                .field("name", name)
                .title(name, "")
                .rows(table, cases)
                .field("cases", table, cases);
    }
}
