package dev.lapwright.results;

import dev.lapwright.car.Unit;
import dev.lapwright.logs.GaugeText;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * Report of a study of tyre pressures: the next cold setting of each tyre, what other weather and a miss do, and how the
 * circuit works the tyres. Gauge pressures.
 *
 * @param subject the car, set up, and where
 * @param result what was found
 * @param unit to say pressures in
 * @param columns which heading of a log was taken for what; empty without a log
 * @param doubt how the pressures logged, and those that are costed, stand on drawn cars; empty if none were drawn
 */
public record PressuresReport(
        Subject subject, PressureResult result, Unit unit, String columns, Optional<Standings> doubt) {
    /** What rules over every number. */
    public static final String CAUTION =
            "The least and the most cold and hot pressures of the tyre's maker, and the rules of the"
                    + " event, rule over every number here. A tyre run below its least pressure can come apart, one above its"
                    + " most can burst. If the setting would fall below the least, keep to the least; if the tyre then passes"
                    + " the most when hot, do not run it.";

    /** Hot pressures nearer to the target than this agree with it, kPa: some gauges are no better. */
    private static final double GAUGE_KPA = 2;

    /** Sides that differ by less in sum over both axles are alike: far below what the formula knows. */
    private static final double EVEN = 0.02;

    private static final double KILO = 1000;

    private static final Table<PressurePair> PAIRS = Table.<PressurePair>of("Pairs of cold and hot")
            .value("coldKpaGauge", PressurePair::coldKpa)
            .value("hotKpaGauge", PressurePair::hotKpa)
            .value("airTempC", pair -> pair.day().airTempC())
            .value("trackTempC", pair -> pair.day().trackTempC())
            .value("airPressureHpa", pair -> pair.day().airPressureHpa())
            .value("coldTempC", PressurePair::coldTempC)
            .value("hotGasC", PressurePair::hotTempC)
            .value("riseK", PressurePair::rise);

    private static final Table<TreadTemperatures> TREAD = Table.<TreadTemperatures>of("Across a tread")
            .value("innerC", TreadTemperatures::innerC)
            .value("middleC", TreadTemperatures::middleC)
            .value("outerC", TreadTemperatures::outerC)
            .value("innerLessOuterK", TreadTemperatures::camberSpread)
            .value("middleLessEdgesK", TreadTemperatures::crown)
            .value("negativeCamber", tread -> tread.negativeCamber().name().toLowerCase(Locale.ROOT))
            .value("pressure", tread -> tread.pressure().name().toLowerCase(Locale.ROOT));

    private static final Table<PressureResult.Cost> COSTS = Table.<PressureResult.Cost>of("What a miss costs")
            .number("awayKpa", "off by", "kPa", Numbers.fixed(0), PressureResult.Cost::awayKpa)
            .number("", "off by", "psi", Numbers.fixed(1), cost -> Unit.KILOPASCAL.convert(cost.awayKpa(), Unit.PSI))
            .number("gripLostPercent", "grip lost", "%", Numbers.fixed(2), cost -> 100 * cost.gripLost())
            .value("differenceFrontS", PressureResult.Cost::front)
            .value("differenceRearS", PressureResult.Cost::rear)
            .value("differenceBothS", PressureResult.Cost::both);

    /** The same with how it stands on drawn cars. */
    public PressuresReport with(Optional<Standings> drawn) {
        return new PressuresReport(subject, result, unit, columns, drawn);
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading()
                .item(
                        "Pressures",
                        "gauge, " + unit.symbol() + ": above the air's "
                                + Numbers.fixed(result.next().airPressureHpa() / 10, 1) + " kPa");
        if (!columns.isEmpty()) {
            report.item("Log", "taken as " + columns);
        }
        report.item(
                "Lap time",
                Report.strong(Numbers.lapTime(result.lap().time())) + " with all hot pressures at the car's ideal; as"
                        + " logged last " + Standings.signed(result.measuredCost(), logged()) + " s");
        doubt.ifPresent(drawn -> report.item("In doubt", "as logged last " + drawn.told(logged())));
        settings(report.gap());
        weather(report.gap());
        energy(report.gap());
        costs(report.gap());
        if (!result.tread().isEmpty()) {
            treads(report.gap());
        }
        doubt.ifPresent(drawn -> {
            report.gap();
            drawn.said("What the pressures logged last cost").forEach(report::paragraph);
            report.paragraph(drawn.drawn());
        });
        report.caution(CAUTION).fields(fields(result));
        doubt.ifPresent(drawn -> {
            drawn.rehash(report);
            report.field("costs", costs(true), result.costs())
                    .field("logged", drawn.fields(logged()))
                    .field("doubt", drawn.tree());
        });
        return report.field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("cautions", List.of(CAUTION))
                .csv("pressures.csv", tyres(result), result.tyres());
    }

    /** What was found, for machines. */
    static Map<String, Object> fields(PressureResult result) {
        Map<String, Object> energy = new LinkedHashMap<>();
        Map<String, Object> tread = new LinkedHashMap<>();
        for (Wheel wheel : Wheel.values()) {
            energy.put(wheel.code(), result.energy().of(wheel));
            if (result.tread().containsKey(wheel)) {
                tread.put(wheel.code(), TREAD.map(result.tread().get(wheel)));
            }
        }
        Table<PressureResult.Tyre> tyres = tyres(result)
                .rows("pairs", PAIRS, PressureResult.Tyre::pairs)
                .value("weather", tyre -> days(result, tyre).maps(result.weather()));
        return new Report()
                .fields(ResultHeader.later("pressures/2", result.lap()))
                .field("lapTimeAtIdealS", result.lap().time())
                .field("next", day(result).map(result.next()))
                .field("tyres", tyres, result.tyres())
                .field("energyPerLapJ", energy)
                .field("costs", COSTS, result.costs())
                .field("differenceMeasuredS", result.measuredCost())
                .field("tread", tread)
                .fields();
    }

    /** One row for each tyre. */
    private static Table<PressureResult.Tyre> tyres(PressureResult result) {
        return Table.<PressureResult.Tyre>of("Tyres")
                .value("tyre", tyre -> tyre.wheel().code())
                .value("coldKpaGauge", tyre -> tyre.last().coldKpa())
                .value("hotKpaGauge", tyre -> tyre.last().hotKpa())
                .value("hotGasC", tyre -> tyre.last().hotTempC())
                .value("riseK", PressureResult.Tyre::rise)
                .value("riseSpreadK", PressureResult.Tyre::riseSpread)
                .value("targetKpaGauge", PressureResult.Tyre::targetKpa)
                .value("nextColdKpaGauge", result::nextCold)
                .value("nextColdTempC", tyre -> result.coldTempC())
                .value("hotPerCold", tyre -> tyre.hotPerCold(result.next(), result.coldTempC()));
    }

    /** A day, with the temperature of cold tyres moved with its air. */
    private static Table<PressureDay> day(PressureResult result) {
        return Table.<PressureDay>of("Day")
                .value("airTempC", PressureDay::airTempC)
                .value("trackTempC", PressureDay::trackTempC)
                .value("airPressureHpa", PressureDay::airPressureHpa)
                .value("coldTempC", day -> coldTempC(result, day));
    }

    private static Table<PressureDay> days(PressureResult result, PressureResult.Tyre tyre) {
        return day(result)
                .value("hotIfSetBeforeKpaGauge", day -> tyre.hotFrom(result.nextCold(tyre), result.coldTempC(), day))
                .value("hotIfSetThenKpaGauge", day -> tyre.hotFrom(result.nextCold(tyre), coldTempC(result, day), day))
                .value("coldForTargetKpaGauge", day -> tyre.coldFor(day, coldTempC(result, day)));
    }

    private static double coldTempC(PressureResult result, PressureDay day) {
        return result.coldTempC() + (day.airTempC() - result.next().airTempC());
    }

    private String pressure(double kpa) {
        return pressure(kpa, unit);
    }

    private static String pressure(double kpa, Unit in) {
        return Numbers.fixed(Unit.KILOPASCAL.convert(kpa, in), decimals(in));
    }

    private String change(double kpa) {
        return Numbers.signed(Unit.KILOPASCAL.convert(kpa, unit), decimals(unit));
    }

    private static int decimals(Unit in) {
        return in == Unit.BAR ? 2 : 1;
    }

    private static String day(PressureDay day) {
        return "air " + Numbers.fixed(day.airTempC(), 0) + " degC, track " + Numbers.fixed(day.trackTempC(), 0)
                + " degC";
    }

    private void settings(Report report) {
        Table<PressureResult.Tyre> table = Table.<PressureResult.Tyre>of("Next cold setting")
                .words("", "tyre", tyre -> tyre.wheel().code())
                .text("was cold", unit.symbol(), tyre -> pressure(tyre.last().coldKpa()))
                .text("was hot", unit.symbol(), tyre -> pressure(tyre.last().hotKpa()))
                .number(
                        "",
                        "gas hot",
                        "degC",
                        Numbers.fixed(1),
                        tyre -> tyre.last().hotTempC())
                .number("", "rise", "K", Numbers.fixed(1), PressureResult.Tyre::rise)
                .text("hot wanted", unit.symbol(), tyre -> pressure(tyre.targetKpa()))
                .text("next cold", unit.symbol(), tyre -> pressure(result.nextCold(tyre)))
                .text(
                        "change",
                        unit.symbol(),
                        tyre -> change(result.nextCold(tyre) - tyre.last().coldKpa()));
        for (Unit other : GaugeText.UNITS) {
            if (other != unit) {
                table.text("next cold", other.symbol(), tyre -> pressure(result.nextCold(tyre), other));
            }
        }
        PressureResult.Tyre first = result.tyres().get(0);
        report.paragraph("Next cold setting at " + Numbers.fixed(result.coldTempC(), 1) + " degC, for "
                        + day(result.next())
                        + ". The gas is taken to run as much hotter than the mean of air and track as it did:")
                .rows(table, result.tyres())
                .paragraph("One " + unit.symbol() + " more cold adds "
                        + Numbers.fixed(first.hotPerCold(result.next(), result.coldTempC()), 2) + " " + unit.symbol()
                        + " hot (" + first.wheel().code() + ").");
        for (PressureResult.Tyre tyre : result.tyres()) {
            if (tyre.pairs().size() > 1) {
                report.paragraph(tyre.wheel().code() + ": rise is the mean of "
                        + tyre.pairs().size() + " runs that differ by " + Numbers.fixed(tyre.riseSpread(), 1)
                        + " K.");
            }
        }
    }

    /** A tyre in other weather. */
    private record OtherWeather(PressureResult.Tyre tyre, PressureDay day) {}

    private void weather(Report report) {
        List<OtherWeather> rows = new ArrayList<>();
        for (PressureResult.Tyre tyre : result.tyres()) {
            result.weather().forEach(day -> rows.add(new OtherWeather(tyre, day)));
        }
        Table<OtherWeather> table = Table.<OtherWeather>of("Other weather")
                .words("", "tyre", row -> row.tyre().wheel().code())
                .words("", "weather", row -> day(row.day()))
                .text(
                        "hot, set before",
                        unit.symbol(),
                        row -> pressure(row.tyre().hotFrom(result.nextCold(row.tyre()), result.coldTempC(), row.day())))
                .text(
                        "hot, set then",
                        unit.symbol(),
                        row -> pressure(row.tyre()
                                .hotFrom(result.nextCold(row.tyre()), coldTempC(result, row.day()), row.day())))
                .text(
                        "cold for wanted",
                        unit.symbol(),
                        row -> pressure(row.tyre().coldFor(row.day(), coldTempC(result, row.day()))));
        report.paragraph(
                        "Other weather: hot if that setting was made before the weather changed; hot if that number is set"
                                + " afresh then; and the cold setting that gives the hot pressure wanted then.")
                .rows(table, rows);
    }

    private void energy(Report report) {
        Table<Boolean> table = Table.<Boolean>of("Energy into each tyre")
                .words("", "axle", front -> front ? "front" : "rear")
                .number(
                        "",
                        "left",
                        "kJ",
                        Numbers.fixed(0),
                        front -> kilojoules(front ? Wheel.FRONT_LEFT : Wheel.REAR_LEFT))
                .number(
                        "",
                        "right",
                        "kJ",
                        Numbers.fixed(0),
                        front -> kilojoules(front ? Wheel.FRONT_RIGHT : Wheel.REAR_RIGHT))
                .number(
                        "",
                        "left over right",
                        "%",
                        Numbers.signed(0),
                        front -> 100 * result.energy().leftExcess(front));
        double excess = result.energy().leftExcess(true) + result.energy().leftExcess(false);
        report.paragraph("Energy into each tyre per lap, by slip and rolling: where more goes in, it runs hotter.")
                .rows(table, List.of(true, false))
                .paragraph("This circuit works "
                        + (Math.abs(excess) < EVEN
                                ? "both sides much alike."
                                : "the " + (excess > 0 ? "left" : "right")
                                        + " tyres harder: read, and set, left and right apart."));
    }

    private double kilojoules(Wheel wheel) {
        return result.energy().of(wheel) / KILO;
    }

    private void costs(Report report) {
        PressureResult.Cost most = result.costs().get(result.costs().size() - 1);
        if (most.gripLost() > 0) {
            report.paragraph("What hot pressures off the car's ideal cost on a lap, too high or too low alike:")
                    .rows(costs(false), result.costs());
            if (doubt.isPresent()) {
                report.line("The interval is of all four too high, beside an ideal that may lie elsewhere.");
            }
        } else {
            report.paragraph("This car's document has no loss of grip with pressure (tyres.pressureLossPerKpa2 is 0).");
        }
    }

    /** How the pressures logged last stand beside the ideal; null if no cars were drawn. */
    private RobustnessResult.Standing logged() {
        return doubt.map(drawn -> drawn.result().standings().get(0)).orElse(null);
    }

    /** How a distance from the ideal stands; null if no cars were drawn. */
    private RobustnessResult.Standing standing(PressureResult.Cost cost) {
        return doubt.map(drawn ->
                        drawn.result().standings().get(1 + result.costs().indexOf(cost)))
                .orElse(null);
    }

    /** What a miss costs, with the digits that its doubt leaves. */
    private Table<PressureResult.Cost> costs(boolean machines) {
        Table<PressureResult.Cost> table =
                Table.<PressureResult.Cost>of("What a miss costs").all(COSTS, cost -> cost);
        if (machines) {
            return doubt.map(drawn -> drawn.addTo(table, this::standing, false)).orElse(table);
        }
        table.text("front", "s", cost -> Standings.signed(cost.front(), standing(cost)))
                .text("rear", "s", cost -> Standings.signed(cost.rear(), standing(cost)))
                .text("all four", "s", cost -> Standings.signed(cost.both(), standing(cost)));
        return doubt.map(drawn -> drawn.addTo(table, this::standing, false)).orElse(table);
    }

    private void treads(Report report) {
        report.paragraph("Across the treads (common practice, no source: inner "
                + Numbers.plain(TreadTemperatures.LEAST_CAMBER_SPREAD) + " to "
                + Numbers.plain(TreadTemperatures.MOST_CAMBER_SPREAD)
                + " K above outer, middle within " + Numbers.plain(TreadTemperatures.MOST_CROWN)
                + " K of the mean of the edges):");
        for (Wheel wheel : Wheel.values()) {
            TreadTemperatures tread = result.tread().get(wheel);
            if (tread != null) {
                report.item(wheel.code(), tread(wheel, tread));
            }
        }
    }

    private String tread(Wheel wheel, TreadTemperatures tread) {
        String camber = switch (tread.negativeCamber()) {
            case KEEP -> "camber fits";
            case LESS -> "less negative camber";
            case MORE -> "more negative camber";
        };
        String pressure = switch (tread.pressure()) {
            case KEEP -> "pressure fits";
            case LESS -> "less pressure";
            case MORE -> "more pressure";
        };
        return "inner " + Numbers.signed(tread.camberSpread(), 1) + " K over outer: " + camber + "; middle "
                + Numbers.signed(tread.crown(), 1) + " K: " + pressure + gauge(wheel, tread.pressure());
    }

    /** Whether the gauge says the same as the tread. */
    private String gauge(Wheel wheel, TreadTemperatures.Way way) {
        Optional<PressureResult.Tyre> tyre =
                result.tyres().stream().filter(t -> t.wheel() == wheel).findFirst();
        if (tyre.isEmpty()) {
            return "";
        }
        double over = tyre.get().last().hotKpa() - tyre.get().targetKpa();
        TreadTemperatures.Way gauge = over > GAUGE_KPA
                ? TreadTemperatures.Way.LESS
                : over < -GAUGE_KPA ? TreadTemperatures.Way.MORE : TreadTemperatures.Way.KEEP;
        if (gauge == way) {
            return ", as the gauge says";
        }
        return ", but the gauge was " + change(over) + " " + unit.symbol()
                + " off the pressure wanted: look at gauge, probe and target before you turn anything";
    }
}
