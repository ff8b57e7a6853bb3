package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Report of a lap, and of others that it is compared with: time, sectors, speeds, corners, what limited the car.
 *
 * @param subject what was driven
 * @param lap how
 * @param others in the order they were asked for
 * @param beside the same car on other lines
 */
public record LapReport(Subject subject, Lap lap, List<Other> others, List<Beside> beside) {
    /** Name of the trace's file. */
    public static final String TRACE = "trace.csv";

    private static final Table<CornerFigures> CORNERS = Table.<CornerFigures>of("Corners of a lap")
            .value("number", figures -> figures.corner().number())
            .value("name", figures -> figures.corner().name())
            .names("", "corner", figures -> figures.corner().label())
            .words("turn", "turn", figures -> figures.corner().left() ? "left" : "right")
            .with(Table.Trait.LESSER)
            .value("entryM", figures -> figures.corner().entry())
            .value("apexM", figures -> figures.corner().apex())
            .value("exitM", figures -> figures.corner().exit())
            .number("", "at", "m", Numbers.fixed(0), CornerFigures::minimumSpeedAt)
            .number(
                    "minimumRadiusM",
                    "radius",
                    "m",
                    Numbers.fixed(0),
                    figures -> figures.corner().minimumRadius())
            .with(Table.Trait.LESSER)
            .number("entrySpeedKmh", "entry", "km/h", Numbers.fixed(1), figures -> LapTrace.kmh(figures.entrySpeed()))
            .number(
                    "minimumSpeedKmh",
                    "minimum",
                    "km/h",
                    Numbers.fixed(1),
                    figures -> LapTrace.kmh(figures.minimumSpeed()))
            .value("minimumSpeedAtM", CornerFigures::minimumSpeedAt)
            .number("exitSpeedKmh", "exit", "km/h", Numbers.fixed(1), figures -> LapTrace.kmh(figures.exitSpeed()))
            .number(
                    "peakLateralAccelerationG",
                    "lateral",
                    "g",
                    Numbers.fixed(2),
                    figures -> LapTrace.g(figures.peakLateralAcceleration()))
            .with(Table.Trait.LESSER)
            .value("timeS", CornerFigures::time)
            .number("gear", "gear", "", Numbers.fixed(0), CornerFigures::gear)
            .words("limitedBy", "limited by", figures -> figures.limit().label());

    public LapReport {
        others = List.copyOf(others);
        beside = List.copyOf(beside);
    }

    /** A lap of the same car on another line. */
    public record Beside(ChosenLine line, Lap lap) {}

    /** A lap to compare. */
    public record Other(String name, Subject subject, Lap lap) {
        /** Difference of this lap to the reference in each sector, s, minus where faster. */
        double[] bySector(Lap reference) {
            double[] own = lap.sectorTimes();
            double[] theirs = reference.sectorTimes();
            double[] differences = new double[own.length];
            for (int i = 0; i < own.length; i++) {
                differences[i] = own[i] - theirs[i];
            }
            return differences;
        }

        /** Difference of this lap to the reference, s, minus where faster. */
        double difference(Lap reference) {
            return lap.time() - reference.time();
        }
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading().gap();
        items(report);
        report.gap();
        if (lap.corners().isEmpty()) {
            report.line("The track has no corners.");
        } else {
            report.rows(CORNERS, lap.corners());
        }
        report.fields(ResultHeader.of("lap/2", InputHash.of(lap), lap))
                .fields(figures(lap))
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("model", LapModel.of(lap).word())
                .field("uncheckedAtM", LapModel.unchecked(lap))
                .field("beside", besideTable(), beside)
                .field("cautions", Cautions.of(lap));
        if (!others.isEmpty()) {
            comparison(report);
        }
        Cautions.of(lap).forEach(report::caution);
        for (Other other : others) {
            Cautions.of(other.lap())
                    .forEach(caution -> report.caution("Caution with " + Report.verbatim(other.name()) + ":", caution));
        }
        return report.csv(TRACE, LapTrace.table(lap, subject.line().line()), Table.places(lap.count()));
    }

    /** The same with laps on other lines. */
    public LapReport beside(List<Beside> others) {
        return new LapReport(subject, lap, this.others, others);
    }

    /** What other lines give, for people: it may be found when all the rest has been said. */
    public Report besides() {
        Report report = new Report();
        if (!beside.isEmpty()) {
            report.gap();
        }
        beside.forEach(other -> report.item("Beside", said(other)));
        return report;
    }

    /** The figures and the corners of the lap alone, for people. */
    public Report inShort() {
        Report report = new Report();
        items(report);
        return lap.corners().isEmpty() ? report : report.rows(CORNERS, lap.corners());
    }

    /** The lap station by station: a list for each column. */
    public Report trace() {
        return LapTrace.report(lap, subject.line().line());
    }

    /** What a lap gave, for machines; unrounded. */
    static Map<String, Object> figures(Lap lap) {
        LapFigures figures = lap.figures();
        Extreme fastest = Extreme.greatest(lap, Channel.SPEED);
        Extreme slowest = Extreme.least(lap, Channel.SPEED);
        Extreme front = Extreme.least(lap, Channel.RIDE_HEIGHT_FRONT);
        Extreme rear = Extreme.least(lap, Channel.RIDE_HEIGHT_REAR);
        Map<String, Object> shares = new LinkedHashMap<>();
        lap.limitShares().forEach((limit, share) -> shares.put(limit.label(), Unit.NONE.convert(share, Unit.PERCENT)));
        return new Report()
                .field("lapTimeS", figures.lapTime())
                .field("sectorEndsM", InputHash.list(lap.track().sectorEnds()))
                .field("sectorTimesS", InputHash.list(lap.sectorTimes()))
                .field("meanSpeedKmh", LapTrace.kmh(figures.meanSpeed()))
                .field("topSpeedKmh", LapTrace.kmh(fastest.value()))
                .field("topSpeedAtM", fastest.at())
                .field("minimumSpeedKmh", LapTrace.kmh(slowest.value()))
                .field("minimumSpeedAtM", slowest.at())
                .field("minimumCornerSpeedKmh", LapTrace.kmh(figures.minimumCornerSpeed()))
                .field("meanCornerSpeedKmh", LapTrace.kmh(figures.meanCornerSpeed()))
                .field("gearsUsed", List.copyOf(lap.gearsUsed()))
                .field("limitedByPercentOfTime", shares)
                .field("minimumFrontRideHeightMm", front.value())
                .field("minimumFrontRideHeightAtM", front.at())
                .field("minimumRearRideHeightMm", rear.value())
                .field("minimumRearRideHeightAtM", rear.at())
                .field("corners", CORNERS, lap.corners())
                .fields();
    }

    private Table<Beside> besideTable() {
        return Table.<Beside>of("On other lines")
                .value("line", other -> other.line().tree())
                .value("lapTimeS", other -> other.lap().time())
                .value("differenceS", other -> other.lap().time() - lap.time());
    }

    /** The lap on another line in a few words. */
    private String said(Beside other) {
        return Numbers.lapTime(other.lap().time()) + ", "
                + DifferenceWords.said(other.lap().time() - lap.time()) + ", on "
                + other.line().besideText();
    }

    private void items(Report report) {
        LapFigures figures = lap.figures();
        Extreme top = Extreme.greatest(lap, Channel.SPEED);
        Extreme front = Extreme.least(lap, Channel.RIDE_HEIGHT_FRONT);
        Extreme rear = Extreme.least(lap, Channel.RIDE_HEIGHT_REAR);
        report.item(
                lap.track().isClosed() ? "Lap time" : "Run time",
                Report.strong(Numbers.lapTime(lap.time())) + " (" + Numbers.fixed(lap.time(), 3) + " s), mean speed "
                        + Numbers.kmh(figures.meanSpeed()) + " km/h");
        if (lap.isByAnotherModel()) {
            report.item("Model", LapModel.told(lap));
        }
        report.item("Sectors", sectors())
                // The highest speed lies between stations, its place is told to the nearest one.
                .item("Top speed", Numbers.kmh(figures.topSpeed()) + " km/h at " + Numbers.fixed(top.at(), 0) + " m")
                .item("Lowest speed", lowest())
                .item("Gears used", gears())
                .item("Limited by", shares() + " (share of the time)")
                .item(
                        "Ride height",
                        "at least " + Numbers.fixed(front.value(), 1) + " mm front, " + Numbers.fixed(rear.value(), 1)
                                + " mm rear");
    }

    private String sectors() {
        List<String> times = new ArrayList<>();
        for (double time : lap.sectorTimes()) {
            times.add(Numbers.fixed(time, 3));
        }
        return String.join(" + ", times) + " s";
    }

    private String lowest() {
        CornerFigures slowest = null;
        for (CornerFigures corner : lap.corners()) {
            slowest = slowest == null || corner.minimumSpeed() < slowest.minimumSpeed() ? corner : slowest;
        }
        if (slowest == null) {
            Extreme least = Extreme.least(lap, Channel.SPEED);
            return Numbers.kmh(least.value()) + " km/h at " + Numbers.fixed(least.at(), 0) + " m";
        }
        return Numbers.kmh(slowest.minimumSpeed()) + " km/h at " + Numbers.fixed(slowest.minimumSpeedAt(), 0) + " m in "
                + Report.verbatim(slowest.corner().label());
    }

    private String gears() {
        List<String> gears = new ArrayList<>();
        lap.gearsUsed().forEach(gear -> gears.add(gear.toString()));
        return String.join(", ", gears);
    }

    private String shares() {
        List<Map.Entry<Limit, Double>> shares =
                new ArrayList<>(lap.limitShares().entrySet());
        shares.sort((a, b) -> Double.compare(b.getValue(), a.getValue()));
        List<String> said = new ArrayList<>();
        shares.forEach(share -> said.add(share.getKey().label() + " " + Numbers.percent(share.getValue()) + " %"));
        return String.join(", ", said);
    }

    private void comparison(Report report) {
        Table<Other> table = Table.<Other>of("Laps against the setup above")
                .names("name", "setup", Other::name)
                .value("settings", other -> other.subject().car().settings())
                .number(
                        "",
                        "time",
                        "m:ss.mmm",
                        Numbers::lapTime,
                        other -> other.lap().time())
                .number("differenceS", "delta", "s", Numbers.signed(3), other -> other.difference(lap))
                .value("differenceBySectorS", other -> InputHash.list(other.bySector(lap)));
        for (int i = 0; i < lap.track().sectorEnds().length; i++) {
            int sector = i;
            table.number("", "sector " + (i + 1), "s", Numbers.signed(3), other -> other.bySector(lap)[sector]);
        }
        table.text(
                        "top speed",
                        "km/h",
                        other -> Numbers.kmh(other.lap().figures().topSpeed()))
                .with(Table.Trait.LESSER)
                .text(
                        "slowest",
                        "km/h",
                        other -> Numbers.kmh(other.lap().figures().minimumCornerSpeed()))
                .with(Table.Trait.LESSER);
        List<Map<String, Object>> against = new ArrayList<>();
        for (Other other : others) {
            Map<String, Object> one = table.map(other);
            one.putAll(figures(other.lap()));
            one.put("cautions", Cautions.of(other.lap()));
            against.add(one);
        }
        report.gap()
                .line("Against the setup above (minus is faster):")
                .rows(table, others)
                .field("against", against);
    }
}
