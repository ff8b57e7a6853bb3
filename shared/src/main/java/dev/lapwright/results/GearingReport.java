package dev.lapwright.results;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.gearing.GearingAxes;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.Function;
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
 */
public record GearingReport(
        Subject subject,
        double beforeBraking,
        GearingResult result,
        List<LineCheck> checks,
        Map<String, Standings> doubts) {
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
    }

    /** The same, what it recommends not checked on other lines. */
    public GearingReport(Subject subject, double beforeBraking, GearingResult result) {
        this(subject, beforeBraking, result, List.of(), Map.of());
    }

    /** The same with what it recommends checked on lines of their own. */
    public GearingReport checked(List<LineCheck> found) {
        return new GearingReport(subject, beforeBraking, result, found, doubts);
    }

    /** The same with how the gearings of each axis that have a lap as given stand on drawn cars, in their order. */
    public GearingReport doubted(Map<String, Standings> drawn) {
        return new GearingReport(subject, beforeBraking, result, checks, drawn);
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
                .flatMap(axis -> recommended(result.asGiven(), axis).stream())
                .filter(choice -> !isFitted(choice))
                .toList();
    }

    /** A gearing as people say it. */
    public String said(GearingResult.Candidate choice) {
        SweepAxis axis = result.axes().stream()
                .filter(one -> one.name().equals(choice.axis()))
                .findFirst()
                .orElseThrow();
        return said(axis, choice);
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
        result.axes().stream()
                .map(axis -> doubts.get(axis.name()))
                .filter(Objects::nonNull)
                .findFirst()
                .ifPresent(drawn -> report.gap().paragraph(drawn.drawn()));
        report.fields(fields(result))
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("beforeBrakingS", beforeBraking)
                .field("ownLines", checks.stream().map(LineCheck::tree).toList())
                .field("reading", reading());
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

    /** What was found, for machines. */
    static Map<String, Object> fields(GearingResult result) {
        Map<String, Object> scenarios = new LinkedHashMap<>();
        result.scenarios().forEach(scenario -> scenarios.put(scenario.kind().name(), scenario.amount()));
        String hash = InputHash.of(result.car(), result.conditions(), result.track())
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
        if (isNoRatio(axis)) {
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
        List<String> paragraphs = new ArrayList<>();
        unusedGears().ifPresent(paragraphs::add);
        paragraphs.add(limiterReading());
        shiftReading().ifPresent(paragraphs::add);
        result.axes().forEach(axis -> paragraphs.add(axisReading(axis)));
        checks.forEach(check -> paragraphs.add(check.reading(check.what())));
        return paragraphs;
    }

    /** The fastest gearing of an axis, or the one that is fitted where that is as fast. */
    public Optional<GearingResult.Candidate> best(GearingResult.Scenario scenario, SweepAxis axis) {
        Optional<GearingResult.Candidate> fastest = scenario.fastest(axis.name());
        return scenario.choices(axis.name()).stream()
                .filter(this::isFitted)
                .filter(tried -> LapTimeDifference.isNone(
                        scenario.difference(tried) - scenario.difference(fastest.orElse(tried))))
                .findFirst()
                .or(() -> fastest);
    }

    /** The gearing to fit: one that is fitted, or chosen for the car as given, unless another is faster by what counts. */
    private Optional<GearingResult.Candidate> recommended(GearingResult.Scenario scenario, SweepAxis axis) {
        List<GearingResult.Candidate> kept = new ArrayList<>();
        scenario.choices(axis.name()).stream().filter(this::isFitted).forEach(kept::add);
        if (!scenario.equals(result.asGiven())) {
            recommended(result.asGiven(), axis)
                    .flatMap(chosen -> scenario.choices(axis.name()).stream()
                            .filter(tried -> tried.value() == chosen.value())
                            .findFirst())
                    .ifPresent(kept::add);
        }
        Optional<GearingResult.Candidate> fastest = scenario.fastest(axis.name());
        return kept.stream()
                .filter(tried -> tried.lap().isPresent())
                .filter(tried -> fastest.isEmpty()
                        || !LapTimeDifference.counts(scenario.difference(tried) - scenario.difference(fastest.get())))
                .findFirst()
                .or(() -> fastest);
    }

    /** Whether what is varied is no ratio itself, as the teeth of a sprocket. */
    private boolean isNoRatio(SweepAxis axis) {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        return result.asGiven().choices(axis.name()).stream().anyMatch(tried -> {
            double drive = tried.car().value(GearingAxes.FINAL_DRIVE);
            return drive != fitted && drive != tried.value();
        });
    }

    /** Whether a gearing is the one that is fitted. */
    public boolean isFitted(GearingResult.Candidate tried) {
        return tried.car().value(GearingAxes.FINAL_DRIVE) == result.car().value(GearingAxes.FINAL_DRIVE)
                && Arrays.equals(tried.car().gearRatios(), result.car().gearRatios());
    }

    private Optional<String> unusedGears() {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        List<Integer> unused = lap.gearsUnused();
        if (unused.isEmpty()) {
            return Optional.empty();
        }
        StringBuilder text = new StringBuilder();
        if (lap.topGearUnused()) {
            text.append("Top gear is never used here: top speed is reached in gear ")
                    .append(lap.top().gear())
                    .append(". ");
        }
        List<Integer> lower = unused.stream().filter(gear -> gear < lap.gears()).toList();
        if (!lower.isEmpty()) {
            text.append(lower.size() == 1 ? "Gear " : "Gears ")
                    .append(listed(lower))
                    .append(lower.size() == 1 ? " is" : " are")
                    .append(" never driven in.");
        }
        return Optional.of(text.toString().strip());
    }

    private String limiterReading() {
        GearingResult.GearedLap lap = result.asGiven().baseline();
        if (!(lap.limiter().time() > 0)) {
            String left = Numbers.fixed(lap.headroom(), 0);
            return left.equals("0")
                    ? "The rev limiter is just reached at top speed, and never held."
                    : "The rev limiter is never held: at top speed the engine is " + left + " rpm below it.";
        }
        String cost = LapTimeDifference.isNone(lap.limiter().without())
                ? "without it the lap would be as fast."
                : "without it, at up to " + Numbers.fixed(lap.limiter().freeRevLimit(), 0) + " rpm, the lap would be "
                        + DifferenceWords.said(lap.limiter().without())
                        + ", the most that it costs (a comparison, no advice: the limit is the engine maker's).";
        return costly(lap) + "the car is on it for "
                + Numbers.fixed(lap.limiter().time(), 2) + " s; " + cost + nextLonger();
    }

    private static String costly(GearingResult.GearedLap lap) {
        return LapTimeDifference.isNone(lap.limiter().without())
                ? "The limiter costs no time: "
                : "The limiter costs time: ";
    }

    /** What the next longer final drive of those tried is worth. */
    private String nextLonger() {
        double fitted = result.car().value(GearingAxes.FINAL_DRIVE);
        Optional<GearingResult.Candidate> next = result.asGiven().choices().stream()
                .filter(choice -> choice.lap().isPresent())
                .filter(choice -> choice.car().value(GearingAxes.FINAL_DRIVE) < fitted)
                .max(Comparator.comparingDouble(choice -> choice.car().value(GearingAxes.FINAL_DRIVE)));
        return next.map(choice -> " The next longer, " + Subject.said(result.car(), choice.axis(), choice.value())
                        + ", is " + DifferenceWords.said(result.asGiven().difference(choice)) + ".")
                .orElse("");
    }

    private Optional<String> shiftReading() {
        List<String> corner = new ArrayList<>();
        List<String> late = new ArrayList<>();
        for (GearingResult.Shift shift : result.asGiven().baseline().upshifts()) {
            shift.corner().ifPresent(c -> corner.add("to " + shift.to() + " in " + Report.verbatim(c.label())));
            if (shift.brakingWithin(beforeBraking)) {
                late.add("to " + shift.to() + " at " + Numbers.fixed(shift.at(), 0) + " m");
            }
        }
        List<String> said = new ArrayList<>();
        if (!corner.isEmpty()) {
            said.add("Upshifts in a corner: " + String.join(", ", corner) + ".");
        }
        if (!late.isEmpty()) {
            said.add("Upshifts within " + Numbers.plain(beforeBraking) + " s of braking, hardly worth making: "
                    + String.join(", ", late) + ".");
        }
        return said.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", said));
    }

    private String axisReading(SweepAxis axis) {
        Optional<GearingResult.Candidate> best = recommended(result.asGiven(), axis);
        if (best.isEmpty()) {
            return "None of the values of " + axis.name() + " gives a lap.";
        }
        double worth = result.scenarios().stream()
                .mapToDouble(scenario -> worth(scenario, axis))
                .max()
                .orElse(0);
        if (axis.count() > 1 && LapTimeDifference.isNone(worth)) {
            return axis.name() + " makes no difference here.";
        }
        if (axis.count() > 1 && !LapTimeDifference.counts(worth)) {
            return axis.name() + " makes no difference here that counts: " + DifferenceWords.size(worth)
                    + " between the fastest, "
                    + Numbers.plain(
                            result.asGiven().fastest(axis.name()).orElseThrow().value())
                    + ", and the slowest, less than "
                    + DifferenceWords.least() + ".";
        }
        StringBuilder text = new StringBuilder("For this circuit fit ");
        text.append(said(axis, best.get())).append(", ").append(against(result.asGiven(), best.get()));
        text.append(asGood(axis, best.get())).append(atTheEnd(axis, best.get()));
        for (GearingResult.Scenario scenario :
                result.scenarios().subList(1, result.scenarios().size())) {
            recommended(scenario, axis).ifPresent(other -> text.append(' ').append(elsewhere(axis, scenario, other)));
        }
        return text.toString();
    }

    /** Between the fastest and the slowest, s. */
    private static double worth(GearingResult.Scenario scenario, SweepAxis axis) {
        DoubleSummaryStatistics differences = scenario.choices(axis.name()).stream()
                .filter(choice -> choice.lap().isPresent())
                .mapToDouble(scenario::difference)
                .summaryStatistics();
        return differences.getCount() == 0 ? 0 : differences.getMax() - differences.getMin();
    }

    private String against(GearingResult.Scenario scenario, GearingResult.Candidate best) {
        String against =
                isFitted(best) ? "the one fitted" : DifferenceWords.than(scenario.difference(best), "the one fitted");
        return against + ": " + Numbers.lapTime(best.lap().orElseThrow().lapTime()) + ", "
                + engine(best.lap().orElseThrow()) + ".";
    }

    private String elsewhere(SweepAxis axis, GearingResult.Scenario scenario, GearingResult.Candidate other) {
        boolean same = recommended(result.asGiven(), axis).orElseThrow().value() == other.value();
        String text = where(scenario)
                + (same ? " the same: " : " fit " + said(axis, other) + ": ")
                + engine(other.lap().orElseThrow());
        if (same) {
            return text + ".";
        }
        GearingResult.Candidate kept = scenario.choices(axis.name()).stream()
                .filter(choice -> choice.value()
                        == recommended(result.asGiven(), axis).orElseThrow().value())
                .findFirst()
                .orElseThrow();
        if (kept.lap().isEmpty()) {
            return text + ".";
        }
        GearingResult.GearedLap lap = kept.lap().get();
        return text + "; with " + Numbers.plain(kept.value()) + " it would be "
                + DifferenceWords.said(scenario.difference(kept) - scenario.difference(other))
                + (lap.limiter().time() > 0
                        ? " and on the limiter for "
                                + Numbers.fixed(lap.limiter().time(), 2) + " s"
                        : "")
                + ".";
    }

    private String where(GearingResult.Scenario scenario) {
        if (scenario.kind() == GearingResult.Scenario.Kind.TOW) {
            return "In a tow that takes away " + Numbers.plain(100 * scenario.amount()) + " % of the drag";
        }
        String place = result.asGiven()
                .baseline()
                .top()
                .nextCorner()
                .map(Corner::label)
                .map(c -> " before " + Report.verbatim(c))
                .orElse("");
        return "With a wind of " + Numbers.kmh(Math.abs(scenario.amount())) + " km/h "
                + (scenario.amount() >= 0 ? "against" : "behind") + " the car" + place;
    }

    private static String engine(GearingResult.GearedLap lap) {
        String top = Numbers.kmh(lap.top().speed()) + " km/h"
                + lap.top()
                        .nextCorner()
                        .map(Corner::label)
                        .map(corner -> " before " + Report.verbatim(corner))
                        .orElse("");
        String held = lap.limiter().time() > 0
                ? "on the limiter for " + Numbers.fixed(lap.limiter().time(), 2) + " s"
                : lap.headroom() < 1 ? "just at the limit" : Numbers.fixed(lap.headroom(), 0) + " rpm below the limit";
        return top + " in gear " + lap.top().gear() + ", " + held;
    }

    /** Others so close that it makes no odds. */
    private String asGood(SweepAxis axis, GearingResult.Candidate best) {
        List<String> others = new ArrayList<>();
        for (GearingResult.Candidate choice : result.asGiven().choices(axis.name())) {
            boolean close = choice.lap().isPresent()
                    && !LapTimeDifference.counts(result.asGiven().difference(choice)
                            - result.asGiven().difference(best));
            if (close && !choice.equals(best)) {
                others.add(Numbers.plain(choice.value()));
            }
        }
        return others.isEmpty()
                ? ""
                : " Within " + DifferenceWords.least() + " of it: " + String.join(", ", others) + ".";
    }

    private String atTheEnd(SweepAxis axis, GearingResult.Candidate best) {
        double[] values = axis.values();
        boolean least = DoubleStream.of(values).min().orElseThrow() == best.value();
        boolean greatest = DoubleStream.of(values).max().orElseThrow() == best.value();
        return values.length > 1 && (least || greatest)
                ? " It is the " + (least ? "lowest" : "highest") + " of those tried; one beyond may be faster still."
                : "";
    }

    /** A gearing as people say it. */
    private String said(SweepAxis axis, GearingResult.Candidate choice) {
        String drive = isNoRatio(axis)
                ? " (final drive " + Numbers.fixed(choice.car().value(GearingAxes.FINAL_DRIVE), 3) + ")"
                : "";
        return Subject.said(result.car(), choice.axis(), choice.value()) + drive;
    }

    private static String listed(List<Integer> gears) {
        return String.join(" and ", gears.stream().map(String::valueOf).toList());
    }
}
