package dev.lapwright.cli;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;

/** Says in a sentence what a sweep found. */
final class SweepReading {
    /** Lap times are given in thousandths; less than half of one is nothing. */
    private static final double NOTHING_S = 0.0005;

    private SweepReading() {}

    static String of(SweepOutcome outcome) {
        SweepResult result = outcome.result();
        Optional<SweepResult.Point> fastest = result.fastest();
        if (fastest.isEmpty()) {
            return "None of these settings gives a lap.";
        }
        DoubleSummaryStatistics times = result.points().stream()
                .flatMap(point -> point.figures().stream())
                .mapToDouble(LapFigures::lapTime)
                .summaryStatistics();
        double worth = times.getMax() - times.getMin();
        String range = ranges(outcome);
        if (times.getCount() == 1) {
            return "One lap only: " + range + " gives " + Numbers.lapTime(times.getMin()) + ", "
                    + gain(outcome, fastest.get()) + ".";
        }
        if (worth < NOTHING_S) {
            return range + " makes no difference to the lap time.";
        }
        return range + " is worth " + Numbers.fixed(worth, 3) + " s a lap. The fastest is "
                + said(outcome, fastest.get()) + ": " + Numbers.lapTime(times.getMin()) + ", "
                + gain(outcome, fastest.get()) + ends(outcome, fastest.get()) + ".";
    }

    private static String gain(SweepOutcome outcome, SweepResult.Point point) {
        if (isBaseline(outcome, point)) {
            return "the baseline itself";
        }
        double gain = outcome.result().gain(point);
        if (Math.abs(gain) < NOTHING_S) {
            return "as fast as the baseline";
        }
        return Numbers.fixed(Math.abs(gain), 3) + " s " + (gain > 0 ? "faster" : "slower") + " than the baseline";
    }

    private static String ranges(SweepOutcome outcome) {
        List<String> ranges = new ArrayList<>();
        Car car = outcome.subject().bare();
        for (SweepAxis axis : outcome.result().axes()) {
            double first = axis.value(0);
            double last = axis.value(axis.count() - 1);
            String values = axis.count() == 1
                    ? Numbers.with(first, Subject.unitOf(car, axis.name()))
                    : "from " + Numbers.plain(first) + " to " + Numbers.with(last, Subject.unitOf(car, axis.name()));
            ranges.add(axis.name() + " " + values);
        }
        return String.join(" with ", ranges);
    }

    /** Where the fastest setting lies: inside what was swept, or at an end, and so maybe not the best there is. */
    private static String ends(SweepOutcome outcome, SweepResult.Point fastest) {
        List<String> said = new ArrayList<>();
        boolean open = false;
        boolean insideAll = true;
        List<SweepAxis> axes = outcome.result().axes();
        for (int k = 0; k < axes.size(); k++) {
            SweepAxis axis = axes.get(k);
            if (axis.count() > 1) {
                End end = End.of(
                        outcome.subject().bare(), axis, fastest.settings().get(k));
                insideAll &= end == End.INSIDE;
                open |= end == End.LOWER || end == End.UPPER;
                said.add(axes.size() > 1 ? axis.name() + " " + end.text : end.text);
            }
        }
        if (said.size() > 1 && insideAll) {
            return "; inside both ranges";
        }
        return said.isEmpty()
                ? ""
                : "; " + String.join(", ", said) + (open ? ", so beyond that end it may be faster still" : "");
    }

    /** Where a setting lies on an axis. */
    private enum End {
        INSIDE("inside the range"),
        LOWER("at the lower end of the range"),
        UPPER("at the upper end of the range"),
        LEAST("at the lower end of what the adjustment allows"),
        MOST("at the upper end of what the adjustment allows");

        private final String text;

        End(String text) {
            this.text = text;
        }

        static End of(Car car, SweepAxis axis, double setting) {
            DoubleSummaryStatistics swept = DoubleStream.of(axis.values()).summaryStatistics();
            if (setting > swept.getMin() && setting < swept.getMax()) {
                return INSIDE;
            }
            boolean upper = setting > swept.getMin();
            if (Subject.isAdjustment(car, axis.name())) {
                Adjustment adjustment = car.adjustment(axis.name());
                if (setting <= adjustment.min() || setting >= adjustment.max()) {
                    return upper ? MOST : LEAST;
                }
            }
            return upper ? UPPER : LOWER;
        }
    }

    /** The settings of a point: rear-wing 6 deg, front-arb 2. */
    static String said(SweepOutcome outcome, SweepResult.Point point) {
        List<String> said = new ArrayList<>();
        List<SweepAxis> axes = outcome.result().axes();
        for (int k = 0; k < axes.size(); k++) {
            said.add(Subject.said(
                    outcome.subject().bare(),
                    axes.get(k).name(),
                    point.settings().get(k)));
        }
        return String.join(", ", said);
    }

    /** The settings of the baseline on the axes of the sweep. */
    static String baseline(SweepOutcome outcome) {
        List<String> said = new ArrayList<>();
        for (SweepAxis axis : outcome.result().axes()) {
            said.add(Subject.said(
                    outcome.subject().bare(), axis.name(), outcome.subject().valueOf(axis.name())));
        }
        return String.join(", ", said);
    }

    /** Whether a point is the baseline's own setting. */
    static boolean isBaseline(SweepOutcome outcome, SweepResult.Point point) {
        List<SweepAxis> axes = outcome.result().axes();
        for (int k = 0; k < axes.size(); k++) {
            double baseline = outcome.subject().valueOf(axes.get(k).name());
            double size = Math.max(Math.abs(baseline), 1e-9);
            if (!(Math.abs(point.settings().get(k) - baseline) <= 1e-9 * size)) {
                return false;
            }
        }
        return true;
    }
}
