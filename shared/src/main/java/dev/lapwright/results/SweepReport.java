package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.EndStop;
import dev.lapwright.documents.SettingText;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.line.LineFinder;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;

/**
 * Report of a sweep: a lap for each setting, and what they are worth.
 *
 * @param subject the baseline
 * @param varied what was varied, as it was typed
 * @param result what was found
 * @param doubt how the settings that have a lap stand on drawn cars, in their order; empty if none were drawn
 */
public record SweepReport(Subject subject, List<Vary> varied, SweepResult result, Optional<Standings> doubt) {
    /** Name of the table's file. */
    public static final String TABLE = "sweep.csv";

    /** More rows than this nobody reads on a screen. */
    private static final int MOST_ROWS = 60;

    private static final int ROWS_OF_LONG_TABLE = 20;
    private static final int FAILURES_SHOWN = 3;
    private static final int MOST_DECIMALS = 3;
    private static final String LAP_TIME = "lapTimeS";
    private static final String DIFFERENCE = "differenceS";
    private static final String TOP_SPEED = "topSpeedKmh";
    private static final String SLOWEST_CORNER = "minimumCornerSpeedKmh";
    private static final String CORNER_MEAN = "meanCornerSpeedKmh";
    private static final String FAILURE = "noLapBecause";

    private static final Table<LapFigures> FIGURES = Table.<LapFigures>of("Lap in short")
            .value(LAP_TIME, LapFigures::lapTime)
            .value(TOP_SPEED, figures -> LapTrace.kmh(figures.topSpeed()))
            .value(SLOWEST_CORNER, figures -> LapTrace.kmh(figures.minimumCornerSpeed()))
            .value(CORNER_MEAN, figures -> LapTrace.kmh(figures.meanCornerSpeed()));

    /**
     * All that was found, for people, machines and files.
     *
     * @param tableFile where the whole table is written; empty if nowhere
     */
    public Report report(String tableFile) {
        Report report = subject.heading()
                .item(
                        "Baseline",
                        Report.strong(Numbers.lapTime(result.baseline().lapTime())) + " with " + baseline())
                .gap();
        Table<SweepResult.Point> table = table();
        List<SweepResult.Point> shown = shown();
        report.rows(table, shown).gap();
        if (shown.size() < result.points().size()) {
            String where = tableFile.isEmpty()
                    ? "add --out FILE.csv for all of them."
                    : "all of them are in " + tableFile + ".";
            report.paragraph("Of " + result.points().size() + " laps the fastest " + shown.size() + " are shown; "
                            + where)
                    .gap();
        }
        failures(report);
        fields(report);
        report.paragraph(reading());
        doubt.ifPresent(standings -> doubt(report, standings));
        return report.csv(TABLE, table, result.points());
    }

    /** What the answer leans on. */
    private void doubt(Report report, Standings standings) {
        doubted(standings).forEach(sentence -> report.gap().paragraph(sentence));
        standings.addMeasures(report);
        report.gap().paragraph(standings.drawn());
    }

    private List<String> doubted(Standings standings) {
        List<SweepResult.Point> lapped = lapped();
        List<String> names = lapped.stream().map(this::said).toList();
        List<String> said = new ArrayList<>();
        result.fastest().ifPresent(fastest -> {
            if (names.size() > 1) {
                int asked = lapped.indexOf(fastest);
                said.add(standings.best(asked, names) + " " + standings.cost(names));
                if (standings.result().before().isPresent()) {
                    said.add(standings.heard(asked, names.get(asked)));
                }
                said.add(standings.hangsOn(result.axes().size() == 1 ? "Which setting is best" : "What it is worth"));
            }
        });
        return said;
    }

    private List<SweepResult.Point> lapped() {
        return result.points().stream()
                .filter(point -> point.figures().isPresent())
                .toList();
    }

    /** How points stand on drawn cars; those without a lap do not. */
    private Map<SweepResult.Point, RobustnessResult.Standing> standings() {
        Map<SweepResult.Point, RobustnessResult.Standing> standings = new HashMap<>();
        doubt.ifPresent(drawn -> {
            List<SweepResult.Point> lapped = lapped();
            for (int i = 0; i < lapped.size(); i++) {
                standings.put(lapped.get(i), drawn.result().standings().get(i));
            }
        });
        return standings;
    }

    /** Decimals of what the whole range is worth: as the widest interval leaves them. */
    private int decimals() {
        return doubt.stream()
                .flatMap(drawn -> drawn.result().standings().stream())
                .mapToInt(standing -> Standings.decimals(standing.halfWidth()))
                .min()
                .orElse(MOST_DECIMALS);
    }

    private void fields(Report report) {
        Table<SweepResult.Point> points = points();
        Map<String, Object> baseline = new LinkedHashMap<>();
        result.axes().forEach(axis -> baseline.put(axis.name(), subject.valueOf(axis.name())));
        report.fields(ResultHeader.of("sweep/2", hash(), result.car(), result.track(), result.conditions()))
                .field("axes", axes(), result.axes())
                .field("baseline", FIGURES.map(result.baseline()))
                .field("points", points, result.points())
                .field("fastest", result.fastest().map(points::map).orElse(null))
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("baselineSettings", baseline)
                .field("reading", reading());
        doubt.ifPresent(drawn -> report.field("doubt", drawn.tree()).field("doubtReading", doubted(drawn)));
    }

    private String hash() {
        InputHash hash = inputs(result.car(), result.track(), result.conditions(), result.axes(), result.refresh());
        doubt.ifPresent(drawn -> drawn.addTo(hash));
        return hash.sha256();
    }

    private static InputHash inputs(
            Car car, Track track, Conditions day, List<SweepAxis> axes, Optional<SweepResult.LineRefresh> refreshed) {
        InputHash hash = InputHash.of(car, day, track).with("axes", InputHash.axes(axes));
        refreshed.ifPresent(refresh -> {
            hash.with("lineFoundFrom", InputHash.list(refresh.from().offsets()));
            ChosenLine.margins(refresh.choices()).forEach(hash::with);
            hash.with("spacingM", refresh.choices().spacing());
        });
        return hash;
    }

    /** SHA-256 of all that the laps of a sweep depend on, before they are driven. */
    public static String inputs(Subject subject, List<Vary> varied) {
        ChosenLine line = subject.line();
        Optional<SweepResult.LineRefresh> refresh = line.isRefreshed()
                ? Optional.of(new SweepResult.LineRefresh(line.line().orElseThrow(), line.choices(), LineFinder.SEARCH))
                : Optional.empty();
        return inputs(
                        subject.car(),
                        line.driven(),
                        subject.day(),
                        varied.stream().map(Vary::axis).toList(),
                        refresh)
                .sha256();
    }

    private Table<SweepAxis> axes() {
        return Table.<SweepAxis>of("What was varied")
                .value("name", SweepAxis::name)
                .value("unit", axis -> SettingText.unit(result.car(), axis.name()))
                .value("values", axis -> InputHash.list(axis.values()));
    }

    private Table<SweepResult.Point> points() {
        Table<SweepResult.Point> table = Table.of("Laps");
        for (int k = 0; k < result.axes().size(); k++) {
            int axis = k;
            table.value(result.axes().get(k).name(), point -> point.settings().get(axis));
        }
        table.all(FIGURES, point -> point.figures().orElse(null))
                .value(DIFFERENCE, point -> point.figures().isPresent() ? result.difference(point) : null);
        Map<SweepResult.Point, RobustnessResult.Standing> standings = standings();
        doubt.ifPresent(drawn -> drawn.addTo(table, standings::get, true));
        return table.value(FAILURE, point -> point.figures().isPresent() ? null : point.failure());
    }

    /** What people and files read, where an axis has its unit in its name. */
    private Table<SweepResult.Point> table() {
        Table<SweepResult.Point> table = Table.of("Laps of a sweep");
        for (int k = 0; k < varied.size(); k++) {
            int axis = k;
            Vary vary = varied.get(k);
            String name = vary.axis().name();
            if (!vary.typed().isEmpty()) {
                table.number(
                        "",
                        name,
                        vary.typedUnit(),
                        Numbers::plain,
                        point -> vary.typedFor(point.settings().get(axis)));
            }
            table.number(
                    column(name),
                    name,
                    Subject.unitOf(result.car(), name).symbol(),
                    Numbers::plain,
                    point -> point.settings().get(axis));
        }
        Map<SweepResult.Point, RobustnessResult.Standing> standings = standings();
        Optional<SweepResult.Point> fastest = result.fastest();
        table.number(LAP_TIME, "lap time", "m:ss.mmm", Numbers::lapTime, point -> figure(point, LapFigures::lapTime))
                .said(
                        DIFFERENCE,
                        "delta",
                        "s",
                        result::difference,
                        point -> Standings.signed(result.difference(point), standings.get(point)));
        doubt.ifPresent(drawn -> drawn.addTo(table, standings::get, true));
        return table.number(
                        TOP_SPEED, "top speed", "km/h", Numbers.fixed(1), point -> speed(point, LapFigures::topSpeed))
                .with(Table.Trait.LESSER)
                .number(
                        SLOWEST_CORNER,
                        "slowest corner",
                        "km/h",
                        Numbers.fixed(1),
                        point -> speed(point, LapFigures::minimumCornerSpeed))
                .with(Table.Trait.LESSER)
                .number(
                        CORNER_MEAN,
                        "corner mean",
                        "km/h",
                        Numbers.fixed(1),
                        point -> speed(point, LapFigures::meanCornerSpeed))
                .with(Table.Trait.LESSER)
                .value(FAILURE, SweepResult.Point::failure)
                .words(
                        "",
                        "",
                        point -> mark(point, fastest.filter(point::equals).isPresent()))
                .marking(point -> fastest.filter(point::equals).isPresent());
    }

    /** An adjustment's name says no unit; the path of a quantity ends in it. */
    private String column(String name) {
        String symbol = SettingText.unit(result.car(), name);
        return symbol.isEmpty() || name.contains(".") ? name : name + " (" + symbol + ")";
    }

    private static double figure(SweepResult.Point point, ToDoubleFunction<LapFigures> figure) {
        return point.figures().isPresent()
                ? figure.applyAsDouble(point.figures().get())
                : Double.NaN;
    }

    private static double speed(SweepResult.Point point, ToDoubleFunction<LapFigures> figure) {
        return LapTrace.kmh(figure(point, figure));
    }

    private List<SweepResult.Point> shown() {
        if (result.points().size() <= MOST_ROWS) {
            return result.points();
        }
        // Of millions no more than a few may be there at a time: points are made when they are asked for.
        Comparator<SweepResult.Point> byTime = Comparator.comparingDouble(
                point -> point.figures().map(LapFigures::lapTime).orElse(Double.POSITIVE_INFINITY));
        List<SweepResult.Point> fastest = new ArrayList<>();
        for (SweepResult.Point point : result.points()) {
            fastest.add(point);
            if (fastest.size() > MOST_ROWS) {
                fastest.sort(byTime);
                fastest.subList(ROWS_OF_LONG_TABLE, fastest.size()).clear();
            }
        }
        fastest.sort(byTime);
        return List.copyOf(fastest.subList(0, ROWS_OF_LONG_TABLE));
    }

    private String mark(SweepResult.Point point, boolean isFastest) {
        List<String> marks = new ArrayList<>();
        if (point.figures().isEmpty()) {
            marks.add("no lap");
        }
        if (result.points().size() > 1 && isFastest) {
            marks.add("fastest");
        }
        if (isBaseline(point)) {
            marks.add("baseline");
        }
        return String.join(", ", marks);
    }

    private void failures(Report report) {
        int failed = 0;
        for (SweepResult.Point point : result.points()) {
            if (point.figures().isEmpty() && ++failed <= FAILURES_SHOWN) {
                report.paragraph("No lap with " + said(point) + ": " + point.failure() + ".");
            }
        }
        if (failed > FAILURES_SHOWN) {
            report.line("No lap either with " + (failed - FAILURES_SHOWN) + " more.");
        }
        if (failed > 0) {
            report.gap();
        }
    }

    /** What was found, in a sentence. */
    private String reading() {
        Optional<SweepResult.Point> fastest = result.fastest();
        if (fastest.isEmpty()) {
            return "None of these settings gives a lap.";
        }
        DoubleSummaryStatistics times = result.points().stream()
                .flatMap(point -> point.figures().stream())
                .mapToDouble(LapFigures::lapTime)
                .summaryStatistics();
        double worth = times.getMax() - times.getMin();
        String range = ranges();
        if (times.getCount() == 1) {
            return "One lap only: " + range + " gives " + Numbers.lapTime(times.getMin()) + ", "
                    + against(fastest.get()) + ".";
        }
        if (LapTimeDifference.isNone(worth)) {
            return range + " makes no difference to the lap time.";
        }
        if (!LapTimeDifference.counts(worth)) {
            return range + " makes no difference that counts: " + DifferenceWords.size(worth)
                    + " a lap between the fastest, " + said(fastest.get()) + " at "
                    + Numbers.lapTime(times.getMin()) + ", and the slowest, less than " + DifferenceWords.least() + ".";
        }
        return range + " is worth " + Numbers.fixed(worth, decimals()) + " s a lap. The fastest is "
                + said(fastest.get()) + ": " + Numbers.lapTime(times.getMin()) + ", "
                + against(fastest.get()) + ends(fastest.get()) + ".";
    }

    private String against(SweepResult.Point point) {
        if (isBaseline(point)) {
            return "the baseline itself";
        }
        double difference = result.difference(point);
        RobustnessResult.Standing standing = standings().get(point);
        return standing == null
                ? DifferenceWords.than(difference, "the baseline")
                : Standings.signed(difference, standing) + " s beside the baseline, from "
                        + Standings.interval(standing) + " s in nine cars of ten: "
                        + standing.verdict().label();
    }

    private String ranges() {
        List<String> ranges = new ArrayList<>();
        Car car = subject.bare();
        for (SweepAxis axis : result.axes()) {
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
    private String ends(SweepResult.Point fastest) {
        List<String> said = new ArrayList<>();
        boolean open = false;
        boolean insideAll = true;
        List<SweepAxis> axes = result.axes();
        for (int k = 0; k < axes.size(); k++) {
            SweepAxis axis = axes.get(k);
            if (axis.count() > 1) {
                End end = End.of(subject.bare(), axis, fastest.settings().get(k));
                insideAll &= end == End.INSIDE;
                open |= end == End.LOWER || end == End.UPPER;
                said.add((axes.size() > 1 ? axis.name() + " " + end.text : end.text) + stopped(axis, end));
            }
        }
        if (said.size() > 1 && insideAll) {
            return "; inside both ranges";
        }
        return said.isEmpty()
                ? ""
                : "; " + String.join(", ", said) + (open ? ", so beyond that end it may be faster still" : "");
    }

    /** What stops an adjustment at an end of what it allows; empty anywhere else. */
    private String stopped(SweepAxis axis, End end) {
        if (end != End.LEAST && end != End.MOST) {
            return "";
        }
        Adjustment adjustment = subject.bare().adjustment(axis.name());
        List<Double> legal = adjustment.legalSettings();
        return ", where nothing in the model stops it"
                + EndStop.at(adjustment, legal.get(end == End.LEAST ? 0 : legal.size() - 1))
                        .map(stop -> " (on the car, by common practice: " + stop + ")")
                        .orElse("");
    }

    /** The settings of a point: rear-wing 6 deg, front-arb 2. */
    private String said(SweepResult.Point point) {
        List<String> said = new ArrayList<>();
        List<SweepAxis> axes = result.axes();
        for (int k = 0; k < axes.size(); k++) {
            said.add(Subject.said(
                    subject.bare(), axes.get(k).name(), point.settings().get(k)));
        }
        return String.join(", ", said);
    }

    /** The settings of the baseline on the axes of the sweep. */
    private String baseline() {
        List<String> said = new ArrayList<>();
        for (SweepAxis axis : result.axes()) {
            said.add(Subject.said(subject.bare(), axis.name(), subject.valueOf(axis.name())));
        }
        return String.join(", ", said);
    }

    /** Whether a point is the baseline's own setting. */
    private boolean isBaseline(SweepResult.Point point) {
        List<SweepAxis> axes = result.axes();
        for (int k = 0; k < axes.size(); k++) {
            double baseline = subject.valueOf(axes.get(k).name());
            double size = Math.max(Math.abs(baseline), 1e-9);
            if (!(Math.abs(point.settings().get(k) - baseline) <= 1e-9 * size)) {
                return false;
            }
        }
        return true;
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
}
