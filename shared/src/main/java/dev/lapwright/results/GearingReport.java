package dev.lapwright.results;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.gearing.RatioBoxResult;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * Report of a study of gearing: what a lap makes of the gears, and which final drive and ratios to fit.
 *
 * @param subject the car as it stands
 * @param beforeBraking how short before braking an upshift is pointed out, s
 * @param result what was found
 * @param checks of what is recommended with the line found anew; empty where nothing is, or it was not asked for
 * @param doubts by axis, how its gearings that have a lap as given stand on drawn cars, in their order; empty if none were drawn
 * @param together best combinations of all that was tried, on all circuits asked for; empty if it was not
 * @param opinions on what is recommended, of the fuller model; empty where nothing is, or it was not asked
 */
public record GearingReport(
        Subject subject,
        double beforeBraking,
        GearingResult result,
        List<LineCheck> checks,
        Map<String, Standings> doubts,
        Optional<RatioBoxResult> together,
        List<ModelCheck> opinions) {
    private static final int THOUSAND = 1000;

    private static final Table<GearingResult.Gear> GEARS = Table.<GearingResult.Gear>of("Gears")
            .value("gear", GearingResult.Gear::gear)
            .value("ratio", GearingResult.Gear::ratio)
            .value("overallRatio", GearingResult.Gear::overallRatio)
            .value("rpmPerKmh", gear -> gear.engineSpeedPerSpeed() / LapTrace.kmh(1))
            .value("fromKmh", gear -> LapTrace.kmh(gear.fromSpeed()))
            .value("toKmh", gear -> LapTrace.kmh(gear.toSpeed()))
            .value("limitKmh", gear -> LapTrace.kmh(gear.limitSpeed()));

    private static final Table<GearingResult.Shift> SHIFTS = Table.<GearingResult.Shift>of("Shifts")
            .value("from", GearingResult.Shift::from)
            .value("to", GearingResult.Shift::to)
            .value("atM", GearingResult.Shift::at)
            .value("timeS", GearingResult.Shift::time)
            .value("speedKmh", shift -> LapTrace.kmh(shift.speed()))
            .value("rpmBefore", GearingResult.Shift::engineSpeedBefore)
            .value("rpmAfter", GearingResult.Shift::engineSpeedAfter)
            .value("corner", shift -> label(shift.corner()))
            .value("timeToBrakingS", GearingResult.Shift::timeToBraking);

    private static final Table<GearingResult.GearedLap> LAP = Table.<GearingResult.GearedLap>of("Lap")
            .value("lapTimeS", GearingResult.GearedLap::lapTime)
            .value("topSpeedKmh", lap -> LapTrace.kmh(lap.top().speed()))
            .value("topSpeedAtM", lap -> lap.top().at())
            .value("topSpeedBefore", lap -> label(lap.top().nextCorner()))
            .value("gearAtTopSpeed", lap -> lap.top().gear())
            .value("engineSpeedAtTopSpeedRpm", lap -> lap.top().engineSpeed())
            .value("revLimitRpm", lap -> lap.limiter().revLimit())
            .value("headroomRpm", GearingResult.GearedLap::headroom)
            .value("gearsUsed", GearingResult.GearedLap::gearsUsed)
            .value("gearsUnused", GearingResult.GearedLap::gearsUnused)
            .value("timeInGearS", lap -> InputHash.list(lap.timeInGear()))
            .value("timeOnLimiterS", lap -> lap.limiter().time())
            .value("differenceWithoutLimiterS", lap -> lap.limiter().without())
            .value("freeRevLimitRpm", lap -> lap.limiter().freeRevLimit())
            .rows("shifts", SHIFTS, GearingResult.GearedLap::shifts);

    public GearingReport {
        checks = List.copyOf(checks);
        doubts = Map.copyOf(doubts);
        opinions = List.copyOf(opinions);
    }

    /** The same, what it recommends not checked on other lines. */
    public GearingReport(Subject subject, double beforeBraking, GearingResult result) {
        this(subject, beforeBraking, result, List.of(), Map.of(), Optional.empty(), List.of());
    }

    /** The same with what it recommends checked on lines of their own. */
    public GearingReport checked(List<LineCheck> found) {
        return new GearingReport(subject, beforeBraking, result, found, doubts, together, opinions);
    }

    /** The same with how the gearings of each axis that have a lap as given stand on drawn cars, in their order. */
    public GearingReport doubted(Map<String, Standings> drawn) {
        return new GearingReport(subject, beforeBraking, result, checks, drawn, together, opinions);
    }

    /** The same with all combinations of what was tried. */
    public GearingReport together(RatioBoxResult box) {
        return new GearingReport(subject, beforeBraking, result, checks, doubts, Optional.of(box), opinions);
    }

    /** The same with the fuller model's word on what it recommends. */
    public GearingReport seconded(List<ModelCheck> found) {
        return new GearingReport(subject, beforeBraking, result, checks, doubts, together, found);
    }

    /** How a gearing stands on drawn cars; empty if none were drawn. */
    public Optional<RobustnessResult.Standing> stands(GearingResult.Candidate choice) {
        Standings drawn = doubts.get(choice.axis());
        List<GearingResult.Candidate> lapped = result.asGiven().choices(choice.axis()).stream()
                .filter(one -> one.lap().isPresent())
                .toList();
        return Optional.ofNullable(drawn).map(of -> of.result().standings().get(lapped.indexOf(choice)));
    }

    /** What of it stands on drawn cars, axis by axis. */
    private List<String> doubted() {
        List<String> said = new ArrayList<>();
        for (SweepAxis axis : result.axes()) {
            Standings drawn = doubts.get(axis.name());
            List<GearingResult.Candidate> lapped = result.asGiven().choices(axis.name()).stream()
                    .filter(choice -> choice.lap().isPresent())
                    .toList();
            if (drawn != null && lapped.size() > 1) {
                List<String> names = lapped.stream().map(this::said).toList();
                int fastest = IntStream.range(0, lapped.size())
                        .boxed()
                        .min(Comparator.comparingDouble(k -> result.asGiven().difference(lapped.get(k))))
                        .orElseThrow();
                said.add(drawn.best(fastest, names) + " " + drawn.cost(names) + " " + drawn.hangsOn("Which is best"));
            }
        }
        return said;
    }

    /** The gearings that it tells to fit in place of the one fitted, for the car and day as given. */
    public List<GearingResult.Candidate> toFit() {
        return result.axes().stream()
                .flatMap(axis -> sentences().recommended(result.asGiven(), axis).stream())
                .filter(choice -> !isFitted(choice))
                .toList();
    }

    /** A gearing as people say it. */
    public String said(GearingResult.Candidate choice) {
        SweepAxis axis = result.axes().stream()
                .filter(one -> one.name().equals(choice.axis()))
                .findFirst()
                .orElseThrow();
        return sentences().said(axis, choice);
    }

    /** A gearing in a situation. */
    private record Tried(GearingResult.Scenario scenario, GearingResult.Candidate candidate) {
        Object ofLap(Function<GearingResult.GearedLap, Object> figure) {
            return candidate.lap().map(figure).orElse(Table.NOT_KNOWN);
        }
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading().gap();
        figures(report);
        report.gap().rows(gears(), result.gears());
        for (SweepAxis axis : result.axes()) {
            report.gap();
            axis(report, axis);
        }
        if (!others().isEmpty()) {
            report.line("  * fastest of its column");
        }
        reading().forEach(paragraph -> report.gap().paragraph(paragraph));
        doubted().forEach(paragraph -> report.gap().paragraph(paragraph));
        ModelCheck.addTo(report, opinions);
        result.axes().stream()
                .map(axis -> doubts.get(axis.name()))
                .filter(Objects::nonNull)
                .findFirst()
                .ifPresent(drawn -> report.gap().paragraph(drawn.drawn()));
        together.ifPresent(box -> together(report, box));
        report.fields(fields(result))
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("beforeBrakingS", beforeBraking)
                .field("ownLines", checks.stream().map(LineCheck::tree).toList())
                .field("reading", reading());
        together.ifPresent(
                box -> report.field("together", box(box), box.choices()).field("togetherCombinations", box.driven()));
        if (!doubts.isEmpty()) {
            Map<String, Object> trees = new LinkedHashMap<>();
            result.axes().stream()
                    .map(SweepAxis::name)
                    .filter(doubts::containsKey)
                    .forEach(axis -> {
                        doubts.get(axis).rehash(report);
                        trees.put(axis, doubts.get(axis).tree());
                    });
            report.field("doubts", trees).field("doubtReading", doubted());
        }
        return tables(report);
    }

    /** The best of all combinations for each number of things changed. */
    private void together(Report report, RatioBoxResult box) {
        report.gap()
                .paragraph(
                        "All together: the best of " + box.driven() + " combinations for each number of things changed"
                                + (box.circuits().size() > 1 ? ", by the mean of the circuits' differences" : "") + ":")
                .rows(box(box), box.choices())
                .gap()
                .paragraph(said(box));
    }

    private static Table<RatioBoxResult.Choice> box(RatioBoxResult box) {
        Table<RatioBoxResult.Choice> table = Table.<RatioBoxResult.Choice>of("Ratios together")
                .number(
                        "",
                        "changes",
                        "",
                        Numbers.fixed(0),
                        choice -> choice.changed().size())
                .value("changed", RatioBoxResult.Choice::changed)
                .words("", "fit", GearingReport::fit)
                .number("minutes", "work", "min", Numbers.fixed(0), RatioBoxResult.Choice::minutes)
                .number(
                        "differenceS",
                        box.circuits().size() > 1 ? "mean" : "delta",
                        "s",
                        Numbers.signed(3),
                        RatioBoxResult.Choice::mean)
                .value("differencesS", RatioBoxResult.Choice::lapTimes);
        for (int i = 0; i < box.circuits().size() && box.circuits().size() > 1; i++) {
            int place = i;
            table.number(
                    "",
                    Report.verbatim(box.circuits().get(i)),
                    "s",
                    Numbers.signed(3),
                    choice -> choice.lapTimes().get(place));
        }
        return table;
    }

    private static String fit(RatioBoxResult.Choice choice) {
        return choice.changed().isEmpty()
                ? "as it stands"
                : choice.changed().entrySet().stream()
                        .map(one -> one.getKey() + " " + Numbers.plain(one.getValue()))
                        .collect(Collectors.joining(", "));
    }

    /** The fewest changes after which another gains nothing that counts. */
    private static String said(RatioBoxResult box) {
        RatioBoxResult.Choice best = box.best();
        RatioBoxResult.Choice enough = box.choices().stream()
                .filter(choice -> !LapTimeDifference.counts(choice.mean() - best.mean()))
                .findFirst()
                .orElse(best);
        if (enough.changed().isEmpty()) {
            return "Leave it as it stands: no combination is faster by as much as counts.";
        }
        String minutes = enough.minutes() > 0
                ? ", " + Numbers.fixed(enough.minutes(), 0) + " minutes of work: "
                        + Numbers.fixed(-1000 * enough.mean() / enough.minutes(), 1) + " ms a lap for each minute"
                : "";
        return "Fit " + fit(enough) + ": " + Numbers.signed(enough.mean(), 3) + " s a lap"
                + (box.circuits().size() > 1 ? " on average" : "") + minutes + "."
                + (enough.equals(best) ? "" : " More changes gain nothing that counts.");
    }

    /** What was found, for machines. */
    static Map<String, Object> fields(GearingResult result) {
        Map<String, Object> scenarios = new LinkedHashMap<>();
        result.scenarios().forEach(scenario -> scenarios.put(scenario.kind().name(), scenario.amount()));
        Supplier<String> hash = () -> InputHash.of(result.car(), result.conditions(), result.track())
                .with("axes", InputHash.axes(result.axes()))
                .with("scenarios", scenarios)
                .sha256();
        Table<SweepAxis> axes = Table.<SweepAxis>of("What was varied")
                .value("name", SweepAxis::name)
                .value("values", axis -> InputHash.list(axis.values()));
        return new Report()
                .fields(ResultHeader.of("gearing/2", hash, result.car(), result.track(), result.conditions()))
                .field("gears", GEARS, result.gears())
                .field("axes", axes, result.axes())
                .field("scenarios", scenarios(), result.scenarios())
                .field("traction", traction(result.traction()))
                .fields();
    }

    private static Table<GearingResult.Scenario> scenarios() {
        Table<Tried> choices = Table.<Tried>of("Gearings tried")
                .value("axis", tried -> tried.candidate().axis())
                .value("value", tried -> tried.candidate().value())
                .value("finalDrive", tried -> finalDrive(tried.candidate()))
                .value("ratios", tried -> InputHash.list(tried.candidate().car().gearRatios()))
                .value(
                        "differenceS",
                        tried -> tried.candidate().lap().isPresent()
                                ? tried.scenario().difference(tried.candidate())
                                : null)
                .all(LAP, tried -> tried.candidate().lap().orElse(null))
                .value(
                        "noLapBecause",
                        tried -> tried.candidate().lap().isPresent()
                                ? null
                                : tried.candidate().failure());
        return Table.<GearingResult.Scenario>of("Situations")
                .value("name", scenario -> name(scenario.kind()))
                .value(
                        "dragTakenAwayPercent",
                        scenario -> is(scenario, GearingResult.Scenario.Kind.TOW, 100 * scenario.amount()))
                .value(
                        "headWindKmh",
                        scenario ->
                                is(scenario, GearingResult.Scenario.Kind.HEAD_WIND, LapTrace.kmh(scenario.amount())))
                .value(
                        "windFromDeg",
                        scenario -> is(
                                scenario,
                                GearingResult.Scenario.Kind.HEAD_WIND,
                                scenario.conditions().windFromDeg()))
                .value("baseline", scenario -> LAP.map(scenario.baseline()))
                .rows("choices", choices, GearingReport::tried);
    }

    private static Double is(GearingResult.Scenario scenario, GearingResult.Scenario.Kind kind, double value) {
        return scenario.kind() == kind ? (Double) value : null;
    }

    private static List<Tried> tried(GearingResult.Scenario scenario) {
        return scenario.choices().stream()
                .map(candidate -> new Tried(scenario, candidate))
                .toList();
    }

    private static Object label(Optional<Corner> corner) {
        return corner.<Object>map(Corner::label).orElse(Table.NOT_KNOWN);
    }

    /** A short name of a situation. */
    private static String name(GearingResult.Scenario.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    private static Map<String, Object> traction(GearingResult.Traction traction) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("speedKmh", rounded(DoubleStream.of(traction.speeds()).map(LapTrace::kmh)));
        tree.put("resistanceN", rounded(DoubleStream.of(traction.resistance())));
        tree.put(
                "forceByGearN",
                traction.forces().stream()
                        .map(force -> rounded(DoubleStream.of(force)))
                        .toList());
        return tree;
    }

    private static List<Double> rounded(DoubleStream values) {
        return values.map(CsvText::rounded).boxed().toList();
    }

    private Report tables(Report report) {
        List<Tried> all = result.scenarios().stream()
                .flatMap(scenario -> tried(scenario).stream())
                .toList();
        GearingResult.Traction traction = result.traction();
        List<Integer> speeds =
                IntStream.range(0, traction.speeds().length).boxed().toList();
        return report.csv("gearing.csv", choiceRows(result), all)
                .csv("shifts.csv", shiftRows(), result.asGiven().baseline().shifts())
                .csv("traction.csv", tractionRows(result), speeds);
    }

    /** All gearings in all situations, one row for each lap. */
    private static Table<Tried> choiceRows(GearingResult result) {
        Table<Tried> table = Table.<Tried>of("Gearings in all situations")
                .value("scenario", tried -> name(tried.scenario().kind()))
                .value("axis", tried -> tried.candidate().axis())
                .value("value", tried -> tried.candidate().value())
                .value("finalDrive", tried -> finalDrive(tried.candidate()))
                .value("lapTimeS", tried -> tried.ofLap(GearingResult.GearedLap::lapTime))
                .value(
                        "differenceS",
                        tried -> tried.ofLap(lap -> tried.scenario().difference(tried.candidate())))
                .value(
                        "topSpeedKmh",
                        tried -> tried.ofLap(lap -> LapTrace.kmh(lap.top().speed())))
                .value("topSpeedAtM", tried -> tried.ofLap(lap -> lap.top().at()))
                .value(
                        "topSpeedBefore",
                        tried -> tried.ofLap(lap -> label(lap.top().nextCorner())))
                .value("gearAtTopSpeed", tried -> tried.ofLap(lap -> lap.top().gear()))
                .value(
                        "engineSpeedAtTopSpeedRpm",
                        tried -> tried.ofLap(lap -> lap.top().engineSpeed()))
                .value("headroomRpm", tried -> tried.ofLap(GearingResult.GearedLap::headroom))
                .value(
                        "gearsUsed",
                        tried -> tried.ofLap(lap ->
                                lap.gearsUsed().stream().map(String::valueOf).collect(Collectors.joining(" "))))
                .value(
                        "timeOnLimiterS",
                        tried -> tried.ofLap(lap -> lap.limiter().time()))
                .value(
                        "differenceWithoutLimiterS",
                        tried -> tried.ofLap(lap -> lap.limiter().without()))
                .value("upshifts", tried -> tried.ofLap(lap -> lap.upshifts().size()))
                .value(
                        "upshiftsInCorners",
                        tried -> tried.ofLap(lap -> lap.upshiftsInCorners().size()));
        for (GearingResult.Gear gear : result.gears()) {
            table.value(
                    "timeInGear" + gear.gear() + "S", tried -> tried.ofLap(lap -> lap.timeInGear()[gear.gear() - 1]));
        }
        return table.value("noLapBecause", tried -> tried.candidate().failure());
    }

    /** The shifts of the car as it stood, in driving order. */
    private static Table<GearingResult.Shift> shiftRows() {
        return Table.<GearingResult.Shift>of("Shifts of the car as it stands")
                .value("atM", GearingResult.Shift::at)
                .value("timeS", GearingResult.Shift::time)
                .value("from", GearingResult.Shift::from)
                .value("to", GearingResult.Shift::to)
                .value("speedKmh", shift -> LapTrace.kmh(shift.speed()))
                .value("rpmBefore", GearingResult.Shift::engineSpeedBefore)
                .value("rpmAfter", GearingResult.Shift::engineSpeedAfter)
                .value("corner", shift -> label(shift.corner()))
                .value("timeToBrakingS", GearingResult.Shift::timeToBraking);
    }

    /** Over road speed: resistance, and engine speed and force at the wheels in each gear, empty above its rev limit. */
    private static Table<Integer> tractionRows(GearingResult result) {
        double[] speeds = result.traction().speeds();
        double[] resistance = result.traction().resistance();
        List<double[]> forces = result.traction().forces();
        Table<Integer> table = Table.<Integer>of("Force over road speed")
                .value("speedKmh", i -> LapTrace.kmh(speeds[i]))
                .value("resistanceN", i -> resistance[i]);
        for (GearingResult.Gear gear : result.gears()) {
            double[] force = forces.get(gear.gear() - 1);
            table.value(
                    "engineSpeedGear" + gear.gear() + "Rpm",
                    i -> Double.isNaN(force[i]) ? Table.NOT_KNOWN : gear.engineSpeed(speeds[i]));
            table.value("forceGear" + gear.gear() + "N", i -> force[i]);
        }
        return table;
    }

    private void figures(Report report) {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        String name = result.track().isClosed() ? "Lap time" : "Run time";
        long late = lap.upshifts().stream()
                .filter(shift -> shift.brakingWithin(beforeBraking))
                .count();
        report.item(name, Report.strong(Numbers.lapTime(lap.lapTime())))
                .item(
                        "Top speed",
                        Numbers.kmh(lap.top().speed()) + " km/h at "
                                + Numbers.fixed(lap.top().at(), 0) + " m"
                                + lap.top()
                                        .nextCorner()
                                        .map(Corner::label)
                                        .map(c -> ", before " + Report.verbatim(c))
                                        .orElse("")
                                + ", in gear " + lap.top().gear() + " at "
                                + Numbers.fixed(lap.top().engineSpeed(), 0)
                                + " rpm of " + Numbers.fixed(lap.limiter().revLimit(), 0) + " rpm")
                .item(
                        "Gears used",
                        joined(lap.gearsUsed())
                                + (lap.gearsUnused().isEmpty() ? "" : "; never " + joined(lap.gearsUnused())))
                .item(
                        "Limiter",
                        lap.limiter().time() > 0
                                ? "held for " + Numbers.fixed(lap.limiter().time(), 2) + " s"
                                : "never held")
                .item(
                        "Upshifts",
                        lap.upshifts().size() + ": " + lap.upshiftsInCorners().size() + " in corners, " + late
                                + " within " + Numbers.plain(beforeBraking) + " s of braking");
    }

    private static String joined(List<Integer> gears) {
        return String.join(", ", gears.stream().map(String::valueOf).toList());
    }

    private Table<GearingResult.Gear> gears() {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        double[] times = lap.timeInGear();
        return Table.<GearingResult.Gear>of("Gears")
                .number("", "gear", "", Numbers.fixed(0), GearingResult.Gear::gear)
                .number("", "ratio", "", Numbers.fixed(3), GearingResult.Gear::ratio)
                .number("", "overall", "", Numbers.fixed(3), GearingResult.Gear::overallRatio)
                .with(Table.Trait.LESSER)
                .number(
                        "",
                        "per 1000 rpm",
                        "km/h",
                        Numbers.fixed(2),
                        gear -> LapTrace.kmh(THOUSAND / gear.engineSpeedPerSpeed()))
                .number("", "shift up at", "km/h", Numbers::kmh, gear -> isTop(gear) ? null : gear.toSpeed())
                .number(
                        "",
                        "engine speed",
                        "rpm",
                        Numbers.fixed(0),
                        gear -> isTop(gear) ? null : gear.engineSpeed(gear.toSpeed()))
                .number(
                        "",
                        "falls to",
                        "rpm",
                        Numbers.fixed(0),
                        gear -> isTop(gear)
                                ? null
                                : result.gears().get(gear.gear()).engineSpeed(gear.toSpeed()))
                .number("", "at the limit", "km/h", Numbers::kmh, GearingResult.Gear::limitSpeed)
                .number("", "upshifts", "", Numbers.fixed(0), gear -> upshiftsFrom(gear.gear()))
                .number("", "time", "s", Numbers.fixed(2), gear -> times[gear.gear() - 1])
                .number("", "share", "%", Numbers::percent, gear -> times[gear.gear() - 1] / lap.lapTime());
    }

    private boolean isTop(GearingResult.Gear gear) {
        return gear.gear() == result.gears().size();
    }

    private long upshiftsFrom(int gear) {
        return result.asGiven().baseline().upshifts().stream()
                .filter(shift -> shift.from() == gear)
                .count();
    }

    private void axis(Report report, SweepAxis axis) {
        List<GearingResult.Candidate> choices = result.asGiven().choices(axis.name());
        Table<Integer> table = Table.<Integer>of("Values of " + axis.name())
                .number(
                        "",
                        axis.name(),
                        Subject.unitOf(result.car(), axis.name()).symbol(),
                        Numbers::plain,
                        k -> choices.get(k).value());
        if (sentences().isNoRatio(axis)) {
            table.number("", "final drive", "", Numbers.fixed(3), k -> finalDrive(choices.get(k)));
        }
        lapColumn(table, choices, "lap time", "m:ss.mmm", Numbers::lapTime, GearingResult.GearedLap::lapTime);
        table.text("delta", "s", k -> difference(result.asGiven(), axis, choices.get(k)));
        lapColumn(
                table,
                choices,
                "top speed",
                "km/h",
                Numbers::kmh,
                lap -> lap.top().speed());
        lapColumn(
                table,
                choices,
                "in gear",
                "",
                Numbers.fixed(0),
                lap -> lap.top().gear());
        table.with(Table.Trait.LESSER);
        lapColumn(table, choices, "rpm left", "", Numbers.fixed(0), GearingResult.GearedLap::headroom);
        table.with(Table.Trait.LESSER);
        lapColumn(
                table,
                choices,
                "on limiter",
                "s",
                Numbers.fixed(2),
                lap -> lap.limiter().time());
        lapColumn(
                table,
                choices,
                "up shifts",
                "",
                Numbers.fixed(0),
                lap -> lap.upshifts().size());
        table.with(Table.Trait.LESSER);
        for (GearingResult.Scenario scenario : others()) {
            table.text(
                    "delta in " + (scenario.kind() == GearingResult.Scenario.Kind.TOW ? "tow" : "wind"),
                    "s",
                    k -> difference(
                            scenario, axis, scenario.choices(axis.name()).get(k)));
        }
        table.words("", "", k -> marks(axis, choices.get(k)))
                .marking(k -> isBest(result.asGiven(), axis, choices.get(k)));
        report.rows(table, IntStream.range(0, choices.size()).boxed().toList());
        for (GearingResult.Candidate choice : choices) {
            if (choice.lap().isEmpty()) {
                report.paragraph("No lap with " + Subject.said(result.car(), choice.axis(), choice.value()) + ": "
                        + choice.failure() + ".");
            }
        }
    }

    private static void lapColumn(
            Table<Integer> table,
            List<GearingResult.Candidate> choices,
            String title,
            String unit,
            DoubleFunction<String> digits,
            Function<GearingResult.GearedLap, Number> figure) {
        table.number(
                "", title, unit, digits, k -> choices.get(k).lap().map(figure).orElse(null));
    }

    private static double finalDrive(GearingResult.Candidate choice) {
        return choice.car().value(GearingAxes.FINAL_DRIVE);
    }

    private List<GearingResult.Scenario> others() {
        return result.scenarios().subList(1, result.scenarios().size());
    }

    /** With a star where it is the best of several columns. */
    private String difference(GearingResult.Scenario scenario, SweepAxis axis, GearingResult.Candidate choice) {
        String star = others().isEmpty() ? "" : isBest(scenario, axis, choice) ? "*" : " ";
        return Numbers.signed(scenario.difference(choice), 3) + star;
    }

    private String marks(SweepAxis axis, GearingResult.Candidate choice) {
        List<String> marks = new ArrayList<>();
        if (choice.lap().isEmpty()) {
            marks.add("no lap");
        }
        if (others().isEmpty() && isBest(result.asGiven(), axis, choice)) {
            marks.add("fastest");
        }
        if (isFitted(choice)) {
            marks.add("fitted");
        }
        return String.join(", ", marks);
    }

    private boolean isBest(GearingResult.Scenario scenario, SweepAxis axis, GearingResult.Candidate choice) {
        return axis.count() > 1 && best(scenario, axis).filter(choice::equals).isPresent();
    }

    /** What was found in plain words: one paragraph for gears, limiter and shifts, then for each thing varied. */
    public List<String> reading() {
        return sentences().reading();
    }

    /** The fastest gearing of an axis, or the one that is fitted where that is as fast. */
    public Optional<GearingResult.Candidate> best(GearingResult.Scenario scenario, SweepAxis axis) {
        return sentences().best(scenario, axis);
    }

    /** Whether a gearing is the one that is fitted. */
    public boolean isFitted(GearingResult.Candidate tried) {
        return sentences().isFitted(tried);
    }

    private GearingReading sentences() {
        return new GearingReading(result, beforeBraking, checks);
    }
}
