package dev.lapwright.cli;

import dev.lapwright.car.Unit;
import dev.lapwright.logs.GaugeText;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.TreadTemperatures.Way;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A study of pressures for people. */
final class PressuresReport {
    static final String CAUTION =
            "The least and the most cold and hot pressures of the tyre's maker, and the rules of the"
                    + " event, rule over every number here. A tyre run below its least pressure can come apart, one above its"
                    + " most can burst. If the setting would fall below the least, keep to the least; if the tyre then passes"
                    + " the most when hot, do not run it.";

    /** Hot pressures nearer to the target than this agree with it, kPa: some gauges are no better. */
    private static final double GAUGE_KPA = 2;

    /** Sides that differ by less in sum over both axles are alike: far below what the formula knows. */
    private static final double EVEN = 0.02;

    private static final double KILO = 1000;

    private final Console console;
    private final PressuresOutcome outcome;
    private final PressureResult result;
    private final Unit unit;

    PressuresReport(Console console, PressuresOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.result = outcome.result();
        this.unit = outcome.unit();
    }

    void print() {
        TerminalReport.print(console, outcome.subject().heading());
        Lines.item(
                console,
                "Pressures",
                "gauge, " + unit.symbol() + ": above the air's "
                        + Numbers.fixed(result.next().airPressureHpa() / 10, 1) + " kPa");
        if (!outcome.columns().isEmpty()) {
            Lines.item(console, "Log", "taken as " + outcome.columns());
        }
        Lines.item(
                console,
                "Lap time",
                console.bold(Numbers.lapTime(result.lap().time())) + " with all hot pressures at the car's ideal; as"
                        + " logged last " + Numbers.signed(result.measuredCost(), 3) + " s");
        console.line();
        settings();
        console.line();
        weather();
        console.line();
        energy();
        console.line();
        costs();
        if (!result.tread().isEmpty()) {
            console.line();
            treads();
        }
        console.line();
        Lines.paragraph(console, console.bold("Caution:") + " " + CAUTION);
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
        return "air " + Numbers.fixed(day.airTempC(), 0) + ", track " + Numbers.fixed(day.trackTempC(), 0) + " degC";
    }

    private void settings() {
        Lines.paragraph(
                console,
                "Next cold setting at " + Numbers.fixed(result.coldTempC(), 1) + " degC, for " + day(result.next())
                        + ". The gas is taken to run as much hotter than the mean of air and track as it did:");
        Table table = new Table()
                .words("tyre")
                .numbers("was cold", unit.symbol())
                .numbers("was hot", unit.symbol())
                .numbers("gas hot", "degC")
                .numbers("rise", "K")
                .numbers("hot wanted", unit.symbol())
                .numbers("next cold", unit.symbol())
                .numbers("change", unit.symbol());
        for (Unit other : GaugeText.UNITS) {
            if (other != unit) {
                table.numbers("next cold", other.symbol());
            }
        }
        for (PressureResult.Tyre tyre : result.tyres()) {
            double next = result.nextCold(tyre);
            List<String> cells = new ArrayList<>(List.of(
                    tyre.wheel().code(),
                    pressure(tyre.last().coldKpa()),
                    pressure(tyre.last().hotKpa()),
                    Numbers.fixed(tyre.last().hotTempC(), 1),
                    Numbers.fixed(tyre.rise(), 1),
                    pressure(tyre.targetKpa()),
                    pressure(next),
                    change(next - tyre.last().coldKpa())));
            for (Unit other : GaugeText.UNITS) {
                if (other != unit) {
                    cells.add(pressure(next, other));
                }
            }
            table.row(cells, false);
        }
        table.printTo(console);
        PressureResult.Tyre first = result.tyres().get(0);
        Lines.paragraph(
                console,
                "One " + unit.symbol() + " more cold adds "
                        + Numbers.fixed(first.hotPerCold(result.next(), result.coldTempC()), 2) + " " + unit.symbol()
                        + " hot (" + first.wheel().code() + ").");
        for (PressureResult.Tyre tyre : result.tyres()) {
            if (tyre.pairs().size() > 1) {
                Lines.paragraph(
                        console,
                        tyre.wheel().code() + ": rise is the mean of "
                                + tyre.pairs().size() + " runs that differ by " + Numbers.fixed(tyre.riseSpread(), 1)
                                + " K.");
            }
        }
    }

    private void weather() {
        Lines.paragraph(
                console,
                "Other weather: hot if that setting was made before the weather changed; hot if that number is set"
                        + " afresh then; and the cold setting that gives the hot pressure wanted then.");
        Table table = new Table()
                .words("tyre")
                .words("weather")
                .numbers("hot, set before", unit.symbol())
                .numbers("hot, set then", unit.symbol())
                .numbers("cold for wanted", unit.symbol());
        for (PressureResult.Tyre tyre : result.tyres()) {
            for (PressureDay day : result.weather()) {
                double coldTempC =
                        result.coldTempC() + day.airTempC() - result.next().airTempC();
                double set = result.nextCold(tyre);
                table.row(
                        tyre.wheel().code(),
                        day(day),
                        pressure(tyre.hotFrom(set, result.coldTempC(), day)),
                        pressure(tyre.hotFrom(set, coldTempC, day)),
                        pressure(tyre.coldFor(day, coldTempC)));
            }
        }
        table.printTo(console);
    }

    private void energy() {
        Lines.paragraph(
                console, "Energy into each tyre per lap, by slip and rolling: where more goes in, it runs hotter.");
        Table table = new Table()
                .words("axle")
                .numbers("left", "kJ")
                .numbers("right", "kJ")
                .numbers("left over right", "%");
        for (boolean front : new boolean[] {true, false}) {
            table.row(
                    front ? "front" : "rear",
                    Numbers.fixed(result.energy().of(front ? Wheel.FRONT_LEFT : Wheel.REAR_LEFT) / KILO, 0),
                    Numbers.fixed(result.energy().of(front ? Wheel.FRONT_RIGHT : Wheel.REAR_RIGHT) / KILO, 0),
                    Numbers.signed(100 * result.energy().leftExcess(front), 0));
        }
        table.printTo(console);
        double excess = result.energy().leftExcess(true) + result.energy().leftExcess(false);
        boolean even = Math.abs(excess) < EVEN;
        Lines.paragraph(
                console,
                "This circuit works "
                        + (even
                                ? "both sides much alike."
                                : "the " + (excess > 0 ? "left" : "right") + " tyres harder:")
                        + (even ? "" : " read, and set, left and right apart."));
    }

    private void costs() {
        PressureResult.Cost most = result.costs().get(result.costs().size() - 1);
        if (!(most.gripLost() > 0)) {
            Lines.paragraph(
                    console, "This car's document has no loss of grip with pressure (tyres.pressureLossPerKpa2 is 0).");
            return;
        }
        Lines.paragraph(console, "What hot pressures off the car's ideal cost on a lap, too high or too low alike:");
        Table table = new Table()
                .numbers("off by", "kPa")
                .numbers("off by", "psi")
                .numbers("grip lost", "%")
                .numbers("front", "s")
                .numbers("rear", "s")
                .numbers("all four", "s");
        for (PressureResult.Cost cost : result.costs()) {
            table.row(
                    Numbers.fixed(cost.awayKpa(), 0),
                    Numbers.fixed(Unit.KILOPASCAL.convert(cost.awayKpa(), Unit.PSI), 1),
                    Numbers.fixed(100 * cost.gripLost(), 2),
                    Numbers.signed(cost.front(), 3),
                    Numbers.signed(cost.rear(), 3),
                    Numbers.signed(cost.both(), 3));
        }
        table.printTo(console);
    }

    private void treads() {
        Lines.paragraph(
                console,
                "Across the treads (common practice, no source: inner "
                        + Numbers.plain(TreadTemperatures.LEAST_CAMBER_SPREAD) + " to "
                        + Numbers.plain(TreadTemperatures.MOST_CAMBER_SPREAD)
                        + " K above outer, middle within " + Numbers.plain(TreadTemperatures.MOST_CROWN)
                        + " K of the mean of the edges):");
        for (Wheel wheel : Wheel.values()) {
            TreadTemperatures tread = result.tread().get(wheel);
            if (tread != null) {
                Lines.item(console, wheel.code(), tread(wheel, tread));
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
    private String gauge(Wheel wheel, Way way) {
        Optional<PressureResult.Tyre> tyre =
                result.tyres().stream().filter(t -> t.wheel() == wheel).findFirst();
        if (tyre.isEmpty()) {
            return "";
        }
        double over = tyre.get().last().hotKpa() - tyre.get().targetKpa();
        Way gauge = over > GAUGE_KPA ? Way.LESS : over < -GAUGE_KPA ? Way.MORE : Way.KEEP;
        if (gauge == way) {
            return ", as the gauge says";
        }
        return ", but the gauge was " + change(over) + " " + unit.symbol()
                + " off the pressure wanted: look at gauge, probe and target before you turn anything";
    }
}
