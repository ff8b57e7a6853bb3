package dev.lapwright.cli.bench;

import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.Cautions;
import dev.lapwright.results.ComparisonReport;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.results.LapReport;
import dev.lapwright.results.LapTrace;
import dev.lapwright.results.Subject;
import dev.lapwright.study.compare.Comparison;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Answer to a question that comes first: the lap, held against the reference, and the headline. */
final class LapAnswer {
    /** Rows of a lap that the page is sent; a part looked at closely has all of its own beside. */
    private static final int ROWS = 900;

    private static final List<String> FACTS =
            List.of("Sectors", "Top speed", "Lowest speed", "Gears used", "Limited by", "Ride height");

    private final Question question;
    private final Sheet sheet;
    private final Subject subject;
    private final Lap lap;

    /** @throws LapwrightException if there is no such lap */
    LapAnswer(Question question, Sheet sheet) {
        this.question = question;
        this.sheet = sheet;
        subject = sheet.subject(question.now());
        lap = sheet.lap(question.now());
    }

    Lap lap() {
        return lap;
    }

    Subject subject() {
        return subject;
    }

    /** The least difference that the driver's laps show, s. */
    static double visible(Question question) {
        return LapsToSee.visible(question.laps() / 2, question.scatter());
    }

    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "lap");
        tree.put("timeS", lap.time());
        tree.put("time", Numbers.lapTime(lap.time()));
        tree.put("setup", Subject.setupText(subject.bare(), subject.setup()));
        tree.put("day", ReportBlocks.told(Subject.told(subject.day())));
        tree.put("notes", subject.notes().stream().map(ReportBlocks::told).toList());
        tree.put("visibleS", visible(question));
        tree.put("countsS", LapTimeDifference.COUNTS);
        int[] rows = Sheet.Rows.spread(sheet.stations().s(), ROWS, question.zoom());
        tree.put("columns", columns(rows));
        Report told = new LapReport(subject, lap, List.of(), List.of()).inShort();
        tree.put("facts", ReportBlocks.items(told, FACTS));
        tree.put("cautions", Cautions.of(lap).stream().map(ReportBlocks::told).toList());
        List<Map<String, Object>> pins = new ArrayList<>();
        Comparison comparison = null;
        for (int i = 0; i < question.pins().size(); i++) {
            Question.Stand pin = question.pins().get(i);
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", pin.name());
            Subject pinned = sheet.subject(pin);
            one.put("setup", Subject.setupText(pinned.bare(), pinned.setup()));
            one.put("day", ReportBlocks.told(Subject.told(pinned.day())));
            try {
                Lap held = sheet.lap(pin);
                one.put("timeS", held.time());
                one.put("time", Numbers.lapTime(held.time()));
                one.put("difference", ReportBlocks.told(Numbers.signed(held.time() - lap.time(), 3)));
                if (i == 0) {
                    comparison = Comparison.of(held, lap);
                    reference(tree, pinned, held, comparison, rows);
                }
            } catch (LapwrightException none) {
                one.put("failure", ReportBlocks.told(none.getMessage()));
            }
            pins.add(one);
        }
        tree.put("pins", pins);
        if (comparison == null) {
            tree.put("headline", List.of());
            tree.put("table", ReportBlocks.tables(told, "Corners of a lap"));
            tree.put("parts", parts(Comparison.of(lap, lap), true));
        }
        return tree;
    }

    private void reference(Map<String, Object> tree, Subject pinned, Lap held, Comparison comparison, int[] rows) {
        String name = question.reference().name();
        ComparisonReport report = new ComparisonReport(pinned, "This setup", subject, comparison);
        List<String> headline = new ArrayList<>();
        double difference = comparison.difference();
        boolean same = pinned.car().settings().equals(subject.car().settings())
                && pinned.day().equals(subject.day());
        headline.add(
                same
                        ? "This is " + name + ", as pinned. Turn a knob and watch the lap."
                        : DifferenceWords.than(difference, name));
        String where = report.where();
        if (!where.isEmpty()) {
            headline.add(where);
        }
        if (!same) {
            headline.add(shown(difference));
        }
        tree.put("headline", headline.stream().map(ReportBlocks::told).toList());
        Map<String, Object> reference = new LinkedHashMap<>();
        reference.put("v", speeds(held, rows));
        reference.put("gear", new Wire.Column(held.column(Channel.GEAR), rows, 0));
        tree.put("reference", reference);
        tree.put("behind", new Wire.Column(comparison.behind(), rows, 5));
        List<Map<String, Object>> table = ReportBlocks.tables(report.parts(), "Parts of the lap");
        table.forEach(one -> one.put(
                "caption",
                ReportBlocks.told("Parts of the lap: time, slowest and fastest of " + Report.verbatim(name)
                        + "; delta (minus is faster) and other are of this setup")));
        tree.put("table", table);
        tree.put("parts", parts(comparison, false));
    }

    /** Whether the driver's laps would show a difference. */
    private String shown(double difference) {
        double visible = visible(question);
        String laps = question.laps() + " laps, " + question.laps() / 2 + " with each, that scatter by "
                + Numbers.plain(question.scatter()) + " s show " + Numbers.fixed(visible, 2) + " s or more: ";
        return laps + (Math.abs(difference) >= visible ? "they would show this." : "they would not show this.");
    }

    private static List<Map<String, Object>> parts(Comparison comparison, boolean cornersOnly) {
        List<Map<String, Object>> parts = new ArrayList<>();
        for (Comparison.Part part : comparison.parts()) {
            if (cornersOnly && !part.isCorner()) {
                continue;
            }
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("label", part.label());
            one.put("corner", part.isCorner());
            one.put("from", part.corner().map(corner -> corner.entry()).orElse(part.from()));
            one.put("to", part.corner().map(corner -> corner.exit()).orElse(part.to()));
            parts.add(one);
        }
        return parts;
    }

    private static Wire.Column speeds(Lap lap, int[] rows) {
        double[] speeds = lap.column(Channel.SPEED);
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] *= 3.6;
        }
        return new Wire.Column(speeds, rows, 2);
    }

    private Map<String, Object> columns(int[] rows) {
        Map<String, Object> columns = new LinkedHashMap<>();
        columns.put("s", new Wire.Column(lap.column(Channel.DISTANCE), rows, 1));
        columns.put("t", new Wire.Column(lap.column(Channel.TIME), rows, 3));
        columns.put("v", speeds(lap, rows));
        columns.put("gear", new Wire.Column(lap.column(Channel.GEAR), rows, 0));
        columns.put("along", acceleration(Channel.LONGITUDINAL_ACCELERATION, rows));
        columns.put("across", acceleration(Channel.LATERAL_ACCELERATION, rows));
        columns.put("loadFL", new Wire.Column(lap.column(Channel.LOAD_FRONT_LEFT), rows, 0));
        columns.put("loadFR", new Wire.Column(lap.column(Channel.LOAD_FRONT_RIGHT), rows, 0));
        columns.put("loadRL", new Wire.Column(lap.column(Channel.LOAD_REAR_LEFT), rows, 0));
        columns.put("loadRR", new Wire.Column(lap.column(Channel.LOAD_REAR_RIGHT), rows, 0));
        columns.put("useF", new Wire.Column(lap.column(Channel.UTILISATION_FRONT), rows, 3));
        columns.put("useR", new Wire.Column(lap.column(Channel.UTILISATION_REAR), rows, 3));
        List<String> limits = new ArrayList<>();
        for (int row : rows) {
            limits.add(lap.limit(row).label());
        }
        columns.put("limit", limits);
        return columns;
    }

    private Wire.Column acceleration(Channel channel, int[] rows) {
        double[] values = lap.column(channel);
        for (int i = 0; i < values.length; i++) {
            values[i] = LapTrace.g(values[i]);
        }
        return new Wire.Column(values, rows, 3);
    }
}
