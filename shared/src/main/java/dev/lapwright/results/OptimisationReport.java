package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.optimise.OptimisationLimits;
import dev.lapwright.study.optimise.OptimisationResult;
import dev.lapwright.study.robust.FirmChanges;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Report of an optimisation: the best setup on legal steps, how much faster it is and where, and what else is as good.
 *
 * @param subject the car as it stood, and where
 * @param result what was found
 * @param best lap in the best setup, on the first circuit and day
 * @param check of the best with the line found anew for each circuit and day; empty where it was not asked for
 * @param doubt how the best setup stands on drawn cars; empty if none were drawn
 * @param firm what of it may be recommended; empty if no cars were drawn
 * @param opinions of the fuller model on the best setup, on the first circuit and day; empty if it was not asked
 */
public record OptimisationReport(
        Subject subject,
        OptimisationResult result,
        Lap best,
        Optional<LineCheck> check,
        Optional<Standings> doubt,
        Optional<Recommended> firm,
        List<ModelCheck> opinions) {
    private static final String HANGS = "What the best setup gains";

    private static final int FRONT_ROWS = 8;
    private static final double SAME = 1e-9;
    private static final String DEFER = " Keep to the maker's limits and the rules of the event, change one thing at a"
            + " time, and try it with a margin where there is room.";

    private static final Table<OptimisationResult.Miss> MISSES = Table.<OptimisationResult.Miss>of("Limits missed")
            .value("limit", miss -> miss.limit().label())
            .value("unit", OptimisationResult.Miss::unit)
            .value("wanted", OptimisationResult.Miss::wanted)
            .value("reached", OptimisationResult.Miss::reached)
            .value("shortBy", OptimisationResult.Miss::shortfall)
            .value("bestAlone", OptimisationResult.Miss::bestAlone);

    private static final Table<OptimisationResult.SectorTimes> SECTORS = Table.<OptimisationResult.SectorTimes>of(
                    "Differences by sector")
            .value("circuit", times -> times.track().name())
            .value("sectorsBeforeS", OptimisationResult.SectorTimes::before)
            .value("sectorsAfterS", OptimisationResult.SectorTimes::after)
            .value("differenceBySectorS", OptimisationResult.SectorTimes::differences);

    /**
     * The report of an optimisation that found a setup within its limits; drives a lap in it.
     *
     * @throws InvalidValueException if it found none; says what is missed
     */
    public static OptimisationReport of(Subject subject, OptimisationResult result) {
        if (!result.isMet()) {
            throw missed(result);
        }
        Subject best = subject.in(result.setup("best", result.best()));
        return new OptimisationReport(
                subject,
                result,
                LapSolver.lap(best.car(), best.driven(), result.task().days().get(0)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of());
    }

    /**
     * What may be recommended of the best setup.
     *
     * @param changes those that stand, and those that are left out
     * @param standing of the car as it stood with those that stand alone, beside it as it was; empty if none does
     */
    public record Recommended(FirmChanges changes, Optional<Standings> standing) {}

    /** The same with the best setup checked on lines of their own. */
    public OptimisationReport checked(LineCheck found) {
        return new OptimisationReport(subject, result, best, Optional.of(found), doubt, firm, opinions);
    }

    /** The same with how the best setup stands on drawn cars. */
    public OptimisationReport doubted(Standings drawn, Recommended recommended) {
        return new OptimisationReport(
                subject, result, best, check, Optional.of(drawn), Optional.of(recommended), opinions);
    }

    /** The same with the fuller model's word on the best setup. */
    public OptimisationReport seconded(List<ModelCheck> found) {
        return new OptimisationReport(subject, result, best, check, doubt, firm, found);
    }

    /** How the best setup stands on drawn cars; empty if none were drawn. */
    public Optional<RobustnessResult.Standing> stands() {
        return Optional.ofNullable(standing());
    }

    private RobustnessResult.Standing standing() {
        return doubt.map(drawn -> drawn.result().standings().get(0)).orElse(null);
    }

    /** Decimals of a difference that doubt leaves. */
    private int digits() {
        return Standings.decimals(standing() == null ? 0 : standing().halfWidth());
    }

    /** What the best setup has elsewhere than the one that was there before, for people; empty if nothing. */
    public String moved() {
        return result.nearOptimal().ranges().stream()
                .filter(OptimisationResult.Range::isMoved)
                .map(range -> Subject.said(result.task().car(), range.name(), range.best()))
                .collect(Collectors.joining(", "));
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading();
        asked(report);
        report.gap()
                .item("Before", figures(result.before()) + before())
                .item(
                        "Best",
                        figures(result.best()) + ", difference "
                                + Standings.signed(result.difference(result.best()), standing()) + " s");
        doubt.ifPresent(drawn -> report.item("In doubt", drawn.told(standing())));
        check.ifPresent(one -> report.item("Own lines", one.text()));
        opinions.forEach(one -> report.item("Fuller model", one.text()));
        report.item(
                        "Unstepped",
                        Numbers.lapTime(result.search().between().lapTime())
                                + " would be possible between the legal steps")
                .gap()
                .rows(ranges(result, digits()), result.nearOptimal().ranges())
                .gap();
        result.sectors().forEach(times -> report.paragraph(bySector(times)));
        report.gap();
        front(report);
        report.paragraph(reading()).gap();
        firm.ifPresent(of -> report.paragraph(recommended(of)).gap());
        doubt.ifPresent(drawn -> {
            drawn.said(HANGS).forEach(sentence -> report.paragraph(sentence).gap());
            report.paragraph(drawn.drawn()).gap();
        });
        leftAlone(report);
        ModelCheck.addTo(report, opinions);
        cautions().forEach(report::caution);
        report.fields(fields(result));
        doubt.ifPresent(drawn -> {
            drawn.rehash(report);
            report.fields(drawn.fields(standing()))
                    .field("doubt", drawn.tree())
                    .field("doubtReading", drawn.said(HANGS));
        });
        firm.ifPresent(of -> report.field("recommended", tree(of)).field("recommendedReading", recommended(of)));
        return report.field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("ownLines", check.map(LineCheck::tree).orElse(null))
                .field("reading", reading())
                .field("cautions", cautions())
                .csv("setups.csv", setups(), result.search().met());
    }

    /** What was found, for machines. */
    static Map<String, Object> fields(OptimisationResult result) {
        OptimisationResult.Task task = result.task();
        Table<OptimisationResult.Candidate> points = points(result);
        Map<String, Object> kept = new LinkedHashMap<>();
        result.search().leftAlone().forEach(one -> kept.put(one.name(), one.reason()));
        Table<Optimisation.Circuit> circuits = Table.<Optimisation.Circuit>of("Circuits")
                .value("name", circuit -> circuit.track().name())
                .value("weight", Optimisation.Circuit::weight);
        Table<OptimisationResult.Axis> searched = Table.<OptimisationResult.Axis>of("Adjustments searched")
                .value("name", OptimisationResult.Axis::name)
                .value("unit", axis -> unit(result, axis.name()))
                .value("settings", OptimisationResult.Axis::settings);
        return new Report()
                .fields(ResultHeader.of(
                        "optimisation/2",
                        () -> hash(result),
                        task.car(),
                        task.circuits().get(0).track(),
                        task.days().get(0)))
                .field("circuits", circuits, task.circuits())
                .field("days", task.days().stream().map(ResultHeader::day).toList())
                .field("worstDay", task.forTheWorstDay())
                .field("seed", task.seed())
                .field("limits", limits(task.limits()))
                .field("searched", searched, result.search().axes())
                .field("leftAlone", kept)
                .field("setupsDriven", result.search().driven())
                .field("limitsKept", result.isMet())
                .field("misses", MISSES, result.misses())
                .field("before", points.map(result.before()))
                .field("missesBefore", MISSES, result.missesBefore())
                .field("betweenSteps", points.map(result.search().between()))
                .field("best", points.map(result.best()))
                .field("fewestChanges", points.map(result.nearOptimal().fewest()))
                .field("sectors", SECTORS, result.sectors())
                .field(
                        "ranges",
                        ranges(result, Standings.decimals(0)),
                        result.nearOptimal().ranges())
                .field("asGood", result.nearOptimal().setups().size())
                .field("asGoodComplete", result.nearOptimal().complete())
                .field("front", points, result.nearOptimal().front())
                .fields();
    }

    /** Hash of car as set up, circuits with their weights, days, what is searched, limits and seed. */
    private static String hash(OptimisationResult result) {
        OptimisationResult.Task task = result.task();
        List<Object> circuits = new ArrayList<>();
        for (Optimisation.Circuit circuit : task.circuits()) {
            Map<String, Object> one = new LinkedHashMap<>(DocumentWriter.tree(circuit.track()));
            one.put("weight", circuit.weight());
            circuits.add(one);
        }
        Map<String, Object> axes = new LinkedHashMap<>();
        result.search().axes().forEach(axis -> axes.put(axis.name(), axis.settings()));
        return new InputHash()
                .with("car", DocumentWriter.tree(task.car()))
                .with("settings", task.car().settings())
                .with("circuits", circuits)
                .with("days", task.days().stream().map(DocumentWriter::tree).toList())
                .with("worst", task.forTheWorstDay())
                .with("limits", task.limits().toString())
                .with("seed", task.seed())
                .with("axes", axes)
                .sha256();
    }

    private static Map<String, Object> limits(OptimisationLimits limits) {
        return new Report()
                .field("minTopSpeedKmh", orNull(limits.topSpeedKmh()))
                .field("minBalancePercent", orNull(limits.balanceLeastPercent()))
                .field("maxBalancePercent", orNull(limits.balanceMostPercent()))
                .field("minRideHeightMm", orNull(limits.rideHeightMm()))
                .field("noUpshiftInCorner", limits.withoutUpshiftInCorner())
                .fields();
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? (Double) value.getAsDouble() : null;
    }

    private static String unit(OptimisationResult result, String adjustment) {
        return result.task().car().unitOf(adjustment).symbol();
    }

    private static Table<OptimisationResult.Candidate> points(OptimisationResult result) {
        return Table.<OptimisationResult.Candidate>of("Setups")
                .value("settings", point -> settings(result, point))
                .all(figures(result), point -> point)
                .value(
                        "leastBalancePercent",
                        point -> limited(point, point.limited().balanceLeastPercent()))
                .value(
                        "greatestBalancePercent",
                        point -> limited(point, point.limited().balanceMostPercent()))
                .value(
                        "upshiftsInCorners",
                        point -> limited(point, point.limited().upshiftsInCorners()))
                .value("lapTimeByCircuitS", point -> result.task().circuits().size() > 1 ? point.circuitTimes() : null)
                .value("noLapBecause", point -> point.hasLap() ? null : point.failure());
    }

    private static Map<String, Object> settings(OptimisationResult result, OptimisationResult.Candidate point) {
        Map<String, Object> settings = new LinkedHashMap<>();
        List<OptimisationResult.Axis> axes = result.search().axes();
        for (int i = 0; i < axes.size(); i++) {
            settings.put(axes.get(i).name(), point.settings().get(i));
        }
        return settings;
    }

    /** A figure that is known only where a limit was set for it or its like; null elsewhere. */
    private static Object limited(OptimisationResult.Candidate point, Object figure) {
        return isCounted(point) ? figure : null;
    }

    private static boolean isCounted(OptimisationResult.Candidate point) {
        return point.limited().upshiftsInCorners() >= 0;
    }

    private static Table<OptimisationResult.Candidate> figures(OptimisationResult result) {
        return Table.<OptimisationResult.Candidate>of("Figures")
                .value("lapTimeS", OptimisationResult.Candidate::lapTime)
                .value("differenceS", result::difference)
                .value("topSpeedKmh", point -> LapTrace.kmh(point.topSpeed()))
                .value("rideHeightMm", point -> point.limited().rideHeightMm());
    }

    private static Table<OptimisationResult.Range> ranges(OptimisationResult result, int digits) {
        return Table.<OptimisationResult.Range>of("Adjustments")
                .words("name", "adjustment", OptimisationResult.Range::name)
                .words("", "unit", range -> unit(result, range.name()))
                .number("before", "before", "", Numbers::plain, OptimisationResult.Range::before)
                .number("best", "best", "", Numbers::plain, OptimisationResult.Range::best)
                .value("differencePutBackS", OptimisationResult.Range::putBack)
                .text("put back", "s", range -> range.isMoved() ? putBack(range.putBack(), digits) : "-")
                .value("aloneFrom", OptimisationResult.Range::aloneLeast)
                .value("aloneTo", OptimisationResult.Range::aloneMost)
                .text("alone as good", "from..to", range -> span(range.aloneLeast(), range.aloneMost()))
                .value("togetherFrom", OptimisationResult.Range::togetherLeast)
                .value("togetherTo", OptimisationResult.Range::togetherMost)
                .text("together as good", "from..to", range -> span(range.togetherLeast(), range.togetherMost()))
                .value("differenceRangeS", OptimisationResult.Range::range)
                .marking(OptimisationResult.Range::isMoved);
    }

    private static String putBack(double difference, int digits) {
        return Double.isNaN(difference) ? "limit" : Numbers.signed(difference, digits);
    }

    private static String span(double least, double most) {
        return least == most ? Numbers.plain(least) : Numbers.plain(least) + ".." + Numbers.plain(most);
    }

    /** The legal setups driven that keep the limits, the best first. */
    private Table<OptimisationResult.Candidate> setups() {
        Table<OptimisationResult.Candidate> table = Table.of("Setups that keep the limits");
        List<OptimisationResult.Axis> axes = result.search().axes();
        for (int i = 0; i < axes.size(); i++) {
            String name = axes.get(i).name();
            String symbol = unit(result, name);
            int place = i;
            table.value(
                    symbol.isEmpty() ? name : name + " (" + symbol + ")",
                    point -> point.settings().get(place));
        }
        Set<OptimisationResult.Candidate> good =
                new HashSet<>(result.nearOptimal().setups());
        Set<OptimisationResult.Candidate> front =
                new HashSet<>(result.nearOptimal().front());
        return table.all(figures(result), point -> point)
                .value("asGood", good::contains)
                .value("front", front::contains);
    }

    private void asked(Report report) {
        OptimisationResult.Task task = result.task();
        if (task.circuits().size() > 1) {
            String said = task.circuits().stream()
                    .map(circuit ->
                            Report.verbatim(circuit.track().name()) + " with weight " + Numbers.plain(circuit.weight()))
                    .collect(Collectors.joining(", "));
            report.item("Circuits", said + "; times are the weighted mean");
        }
        if (task.days().size() > 1) {
            String kind = task.forTheWorstDay()
                    ? "the day on which it makes the least faster counts"
                    : "times are their mean";
            report.item("Days", task.days().size() + ": " + days() + "; " + kind);
        }
        String limits = said(task.limits());
        report.item("Limits", limits.isEmpty() ? "none" : limits)
                .item("Driven", result.search().driven() + " setups, seed " + task.seed());
    }

    /** What differs from day to day. */
    private String days() {
        List<String> said = new ArrayList<>();
        for (String name : Conditions.NAMES) {
            List<String> values = result.task().days().stream()
                    .map(day -> Numbers.plain(day.value(name)))
                    .distinct()
                    .toList();
            if (values.size() > 1) {
                said.add(name + " " + String.join(", ", values));
            }
        }
        return String.join("; ", said);
    }

    private static String said(OptimisationLimits limits) {
        List<String> said = new ArrayList<>();
        limits.topSpeedKmh().ifPresent(v -> said.add("top speed at least " + Numbers.plain(v) + " km/h"));
        if (limits.balanceLeastPercent().isPresent()) {
            said.add("limit balance from "
                    + Numbers.plain(limits.balanceLeastPercent().getAsDouble()) + " to "
                    + Numbers.plain(limits.balanceMostPercent().orElse(Double.NaN)) + " %");
        }
        limits.rideHeightMm().ifPresent(v -> said.add("ride height at top speed at least " + Numbers.plain(v) + " mm"));
        if (limits.withoutUpshiftInCorner()) {
            said.add("no upshift in a corner");
        }
        return String.join(", ", said);
    }

    private static String figures(OptimisationResult.Candidate point) {
        OptimisationResult.Limited limited = point.limited();
        String text = Report.strong(Numbers.lapTime(point.lapTime())) + ", top speed " + Numbers.kmh(point.topSpeed())
                + " km/h, ride height there " + Numbers.fixed(limited.rideHeightMm(), 1) + " mm";
        if (Double.isFinite(limited.balanceLeastPercent())) {
            text += ", limit balance " + Numbers.signed(limited.balanceLeastPercent(), 2)
                    + (limited.balanceMostPercent() > limited.balanceLeastPercent()
                            ? " to " + Numbers.signed(limited.balanceMostPercent(), 2)
                            : "")
                    + " %";
        }
        return isCounted(point) ? text + ", upshifts in corners " + limited.upshiftsInCorners() : text;
    }

    private String before() {
        String missed =
                result.missesBefore().stream().map(miss -> miss.limit().label()).collect(Collectors.joining(", "));
        List<String> between = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            double was = result.before().settings().get(i);
            if (result.search().axes().get(i).settings().stream().noneMatch(legal -> Math.abs(legal - was) < SAME)) {
                between.add(result.search().axes().get(i).name());
            }
        }
        return (missed.isEmpty() ? "" : "; misses " + missed)
                + (between.isEmpty() ? "" : "; between legal steps: " + String.join(", ", between));
    }

    private String bySector(OptimisationResult.SectorTimes times) {
        String where = result.sectors().size() > 1
                ? " at " + Report.verbatim(times.track().name())
                : "";
        return times.differences().stream()
                .map(one -> Numbers.signed(one, digits()))
                .collect(Collectors.joining(", ", "Difference by sector" + where + ": ", " s."));
    }

    private void front(Report report) {
        List<OptimisationResult.Candidate> front = result.nearOptimal().front();
        int count = front.size();
        if (count < 2) {
            return;
        }
        Table<OptimisationResult.Candidate> table = Table.<OptimisationResult.Candidate>of("Lap time against top speed")
                .text("top speed", "km/h", point -> Numbers.kmh(point.topSpeed()))
                .number("", "lap time", "m:ss.mmm", Numbers::lapTime, OptimisationResult.Candidate::lapTime)
                .number(
                        "",
                        "delta",
                        "s",
                        Numbers.signed(digits()),
                        point -> point.cost() - result.best().cost())
                .words("", "settings other than the best's", this::difference);
        int rows = Math.min(FRONT_ROWS, count);
        report.line("For more top speed, the least time lost:")
                .rows(
                        table,
                        IntStream.range(0, rows)
                                .mapToObj(k -> front.get((int) Math.round((double) k * (count - 1) / (rows - 1))))
                                .toList())
                .gap();
    }

    private String difference(OptimisationResult.Candidate point) {
        List<String> said = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            if (!point.settings().get(i).equals(result.best().settings().get(i))) {
                said.add(result.search().axes().get(i).name() + " "
                        + Numbers.plain(point.settings().get(i)));
            }
        }
        return said.isEmpty() ? "(the best)" : String.join(", ", said);
    }

    private void leftAlone(Report report) {
        Map<String, List<String>> reasons = new LinkedHashMap<>();
        for (OptimisationResult.LeftAlone kept : result.search().leftAlone()) {
            reasons.computeIfAbsent(kept.reason(), reason -> new ArrayList<>()).add(kept.name());
        }
        reasons.forEach(
                (reason, names) -> report.paragraph("Left alone: " + String.join(", ", names) + " (" + reason + ")."));
    }

    /** What was found, in sentences. */
    private String reading() {
        return bestReading() + check.map(one -> " " + one.reading("it")).orElse("") + " " + fewestReading() + " "
                + asGoodReading() + endsReading() + unseenReading();
    }

    private String bestReading() {
        double difference = result.difference(result.best());
        String changes = moved();
        if (changes.isEmpty()) {
            return "No other legal setup found is faster than the one you have.";
        }
        String found = "The best legal setup found has " + changes + " and is ";
        return found
                + DifferenceWords.than(difference, "yours", digits())
                + (LapTimeDifference.isSlower(difference)
                        ? ": yours misses a limit, or stands between legal steps."
                        : ".");
    }

    private String fewestReading() {
        OptimisationResult.Candidate fewest = result.nearOptimal().fewest();
        if (fewest.equals(result.best())) {
            return "Fewer changes would cost more than " + DifferenceWords.least() + ".";
        }
        String changes = changes(fewest);
        String loss = Numbers.fixed(fewest.cost() - result.best().cost(), digits());
        return changes.isEmpty()
                ? "But all of it is worth " + loss + " s only: the setup you have is as good."
                : "With fewer changes, " + changes + ", it is " + loss + " s slower than that.";
    }

    /** What a setup has elsewhere than it was. */
    private String changes(OptimisationResult.Candidate point) {
        List<String> changes = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            double was = result.before().settings().get(i);
            double is = point.settings().get(i);
            if (Math.abs(is - was) > SAME * Math.max(1, Math.abs(was))) {
                changes.add(Subject.said(
                        result.task().car(), result.search().axes().get(i).name(), is));
            }
        }
        return String.join(", ", changes);
    }

    private String asGoodReading() {
        int count = result.nearOptimal().setups().size();
        return (result.nearOptimal().complete() ? "" : "At least ") + count
                + (count == 1 ? " legal setup is" : " legal setups are")
                + " within " + DifferenceWords.least() + " of the best"
                + (count == 1 ? ", itself" : ": choose among them by feel") + ".";
    }

    private String endsReading() {
        Map<Adjustment, Double> ends = new LinkedHashMap<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            List<Double> settings = result.search().axes().get(i).settings();
            double best = result.best().settings().get(i);
            if (result.nearOptimal().ranges().get(i).matters()
                    && (best == settings.get(0) || best == settings.get(settings.size() - 1))) {
                ends.put(
                        result.task()
                                .car()
                                .adjustment(result.search().axes().get(i).name()),
                        best);
            }
        }
        return (" " + Cautions.ends(ends)).stripTrailing();
    }

    /** What of the best setup may be recommended, by the one rule, and what is left out. */
    private String recommended(Recommended found) {
        if (found.changes().leftOut().isEmpty()) {
            return "Each of these changes is a gain on most cars that this one may be, held against the best setup without it.";
        }
        String kept = found.changes().kept().stream()
                .map(range -> Subject.said(result.task().car(), range.name(), range.best()))
                .collect(Collectors.joining(", "));
        String stands = found.standing()
                .map(drawn -> {
                    RobustnessResult.Standing one = drawn.result().standings().get(0);
                    return (drawn.result().isFirmGain(one)
                                    ? "Recommended: "
                                    : "None of these changes is recommended; what stands one by one is no gain of "
                                            + DifferenceWords.least() + " on most cars together: ")
                            + kept + ", in the middle "
                            + Numbers.signed(one.middle(), Standings.decimals(one.halfWidth())) + " s, "
                            + drawn.told(one) + ".";
                })
                .orElse("None of these changes is recommended.");
        return stands + " Left out, as no gain of " + DifferenceWords.least() + " on most cars that this one may be: "
                + found.changes().leftOut().stream().map(this::leftOut).collect(Collectors.joining(", ")) + ".";
    }

    private String leftOut(FirmChanges.LeftOut left) {
        RobustnessResult.Standing standing = left.standing();
        return Subject.said(
                        result.task().car(), left.range().name(), left.range().best())
                + (standing.laps() == 0
                        ? ""
                        : " (a gain on " + Numbers.fixed(100.0 * standing.gains() / standing.laps(), 0) + " %, "
                                + Standings.interval(standing) + " s)");
    }

    private static Map<String, Object> tree(Recommended found) {
        Map<String, Object> tree = new LinkedHashMap<>();
        Map<String, Object> kept = new LinkedHashMap<>();
        found.changes().kept().forEach(range -> kept.put(range.name(), range.best()));
        tree.put("changes", kept);
        found.standing()
                .ifPresent(drawn ->
                        tree.putAll(drawn.fields(drawn.result().standings().get(0))));
        tree.put(
                "leftOut",
                Table.<FirmChanges.LeftOut>of("Left out")
                        .value("name", left -> left.range().name())
                        .value("before", left -> left.range().before())
                        .value("best", left -> left.range().best())
                        .value("differenceLowS", left -> left.standing().low())
                        .value("differenceHighS", left -> left.standing().high())
                        .value("gainsOn", left -> left.standing().gains())
                        .maps(found.changes().leftOut()));
        return tree;
    }

    private String unseenReading() {
        String unseen = result.nearOptimal().ranges().stream()
                .filter(range -> !range.matters())
                .map(OptimisationResult.Range::name)
                .collect(Collectors.joining(", "));
        return unseen.isEmpty() ? "" : " It makes no difference to the lap time where these stand: " + unseen + ".";
    }

    /** What nobody should take over without thinking of it. */
    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        moved(cautions, "rideHeightMm", " ride heights: bumps, kerbs and pitching are not in the model.");
        moved(
                cautions,
                "brakes.frontSharePercent",
                " brake balance: the model never locks a wheel, a driver does; rear wheels that lock first spin the car.");
        moved(
                cautions,
                "hotPressureKpa",
                " tyre pressures: the model knows no heat build-up and no wear; never go below the tyre maker's least"
                        + " pressure.");
        cautions.addAll(Cautions.of(best));
        return cautions;
    }

    private void moved(List<String> cautions, String quantity, String danger) {
        List<String> names = result.nearOptimal().ranges().stream()
                .filter(range -> range.isMoved() && moves(result.task().car().adjustment(range.name()), quantity))
                .map(OptimisationResult.Range::name)
                .toList();
        if (!names.isEmpty()) {
            cautions.add(String.join(" and ", names) + (names.size() > 1 ? " move" : " moves") + danger + DEFER);
        }
    }

    private static boolean moves(Adjustment adjustment, String quantity) {
        return adjustment.effects().stream().map(Effect::quantity).anyMatch(name -> name.endsWith(quantity));
    }

    /** What is wrong where no setup keeps the limits. */
    private static InvalidValueException missed(OptimisationResult result) {
        List<String> said = new ArrayList<>();
        for (OptimisationResult.Miss miss : result.misses()) {
            said.add(
                    miss.limit() == OptimisationResult.Miss.Limit.LAP
                            ? "no lap: " + result.best().failure()
                            : missed(miss));
        }
        List<String> nearest = new ArrayList<>();
        for (int i = 0; i < result.search().axes().size(); i++) {
            nearest.add(Subject.said(
                    result.task().car(),
                    result.search().axes().get(i).name(),
                    result.best().settings().get(i)));
        }
        return new InvalidValueException(
                "limits",
                "none of the " + result.search().driven() + " setups driven keeps them all; the nearest, "
                        + String.join(", ", nearest) + ", misses " + String.join(", ", said),
                "loosen what is missed, or search more adjustments");
    }

    private static String missed(OptimisationResult.Miss miss) {
        String unit = miss.unit().isEmpty() ? "" : " " + miss.unit();
        boolean count = miss.limit() == OptimisationResult.Miss.Limit.UPSHIFTS;
        int digits = count ? 0 : 1;
        String alone = miss.isKeptAlone()
                ? "which can be kept, but not with the other limits"
                : "alone " + Numbers.fixed(miss.bestAlone(), digits) + unit + " was the best found";
        return miss.limit().label() + " " + Numbers.fixed(miss.reached(), digits) + unit + " for "
                + Numbers.plain(miss.wanted()) + unit + ", off by "
                + Numbers.fixed(miss.shortfall(), count ? 0 : 2) + unit + " (" + alone + ")";
    }
}
